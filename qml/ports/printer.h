// Lays documents out, draws them, and writes them as PDF files.
//
// Lives in the thread of the interface. What takes its time is done in a thread of its own, one thing
// after the other, and answered in the thread of the interface, unless the asker has gone by then.
#pragma once

#include <QtQml/qqmlregistration.h>
#include <filesystem>
#include <span>

#include "base/result.h"
#include "documents/fit.h"
#include "ports/errands.h"
#include "ports/sheet.h"

class QPainter;

namespace burrow {

class Printer : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("The program makes the printer.")

public:
    using Pages = std::vector<Sheet>;
    using Compose =
        std::function<Result<std::vector<documents::Page>>(const documents::TextMeasure&)>;

    explicit Printer(QObject* parent = nullptr) : QObject(parent) {}

    /// Calls `compose` in the printer's thread.
    void layOut(QObject* context, Compose compose, std::function<void(Result<Pages>)> answer);
    /// All or nothing: the file is there as a whole, or what was there before still is.
    void write(QObject* context, std::filesystem::path path, Pages pages, std::string title,
               std::function<void(Done)> answer);

    /// Draws a page as it will be printed. The painter is scaled to millimetres, with the page's top
    /// left corner at its origin; it is left as it was. Safe from any thread.
    virtual void paint(const documents::Page& page, QPainter& painter) const = 0;

protected:
    /// Waits for what is under way: whoever implements the two below calls it before going.
    void finish() { errands_.finish(); }

private:
    /// Both are called in the printer's thread.
    [[nodiscard]] virtual const documents::TextMeasure& measure() const = 0;
    virtual Done writePdf(const std::filesystem::path& path, std::span<const documents::Page> pages,
                          const std::string& title) = 0;

    Errands errands_;
};

}  // namespace burrow
