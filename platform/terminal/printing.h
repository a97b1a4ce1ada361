// What commands that make PDF files need: fonts, and a Qt application without a window.
#pragma once

#include <QGuiApplication>
#include <filesystem>
#include <memory>
#include <span>

#include "base/files.h"
#include "fonts.h"
#include "print/measure.h"
#include "print/pdfwriter.h"

namespace burrow::terminal {

/// One at a time. No window is ever opened, so it works without a display.
class Printing {
public:
    Printing() {
        qputenv("QT_QPA_PLATFORM", "offscreen");
        static int argc = 1;
        static char name[] = "burrow";
        static char* argv[] = {name, nullptr};
        application_ = std::make_unique<QGuiApplication>(argc, argv);
    }
    [[nodiscard]] Done start() const {
        if (loadFonts()) return {};
        return fail(Trouble::inputOutput, {"print.fonts"});
    }
    Done write(const std::filesystem::path& out, std::span<const documents::Page> pages,
               const std::string& title) {
        DeviceFiles files;
        return print::PdfWriter(files).write(out, pages, title);
    }
    [[nodiscard]] const documents::TextMeasure& measure() const { return measure_; }

private:
    std::unique_ptr<QGuiApplication> application_;
    print::QtTextMeasure measure_;
};

}  // namespace burrow::terminal
