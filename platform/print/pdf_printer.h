// The printer of the app: writes PDF files and draws with the application's own fonts.
#pragma once

#include "ports/printer.h"
#include "print/measure.h"
#include "print/pdfwriter.h"

namespace burrow {

/// The fonts must be registered before the first use.
class PdfPrinter final : public Printer {
    Q_OBJECT

public:
    /// Does not own the files; they are used in the printer's thread only.
    explicit PdfPrinter(Files& files, QObject* parent = nullptr)
        : Printer(parent), writer_(files) {}
    ~PdfPrinter() override { finish(); }

    void paint(const documents::Page& page, QPainter& painter) const override;

private:
    [[nodiscard]] const documents::TextMeasure& measure() const override { return measure_; }
    Done writePdf(const std::filesystem::path& path, std::span<const documents::Page> pages,
                  const std::string& title) override;

    print::QtTextMeasure measure_;
    print::PdfWriter writer_;
};

}  // namespace burrow
