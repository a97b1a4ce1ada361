#include "print/pdfwriter.h"

#include <QBuffer>
#include <QPageLayout>
#include <QPainter>
#include <QPdfWriter>

#include "print/painter.h"

namespace burrow::print {
namespace {

/// Fine enough that a module of 0.8 mm is a whole number of dots to 1 in 38.
constexpr int dotsPerInch = 1200;

QPageSize sizeOf(const documents::Page& page) {
    return QPageSize(QSizeF(page.width.value, page.height.value), QPageSize::Millimeter);
}

}  // namespace

Result<Bytes> renderPdf(std::span<const documents::Page> pages, const std::string& title) {
    if (pages.empty()) return fail(Trouble::badInput, {"print.nothing"});
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    {
        QPdfWriter writer(&buffer);
        writer.setTitle(QString::fromStdString(title));
        writer.setCreator(QStringLiteral("Burrowbook"));
        writer.setResolution(dotsPerInch);
        writer.setPageLayout({sizeOf(pages.front()), QPageLayout::Portrait, {}});
        QPainter painter;
        if (!painter.begin(&writer)) return fail(Trouble::inputOutput, {"print.trouble"});
        for (const auto& page : pages) {
            if (&page != &pages.front()) {
                writer.setPageSize(sizeOf(page));
                if (!writer.newPage()) return fail(Trouble::inputOutput, {"print.trouble"});
            }
            painter.resetTransform();
            painter.scale(dotsPerInch / 25.4, dotsPerInch / 25.4);
            paint(page, painter);
        }
        if (!painter.end()) return fail(Trouble::inputOutput, {"print.trouble"});
    }
    return Bytes(bytes.begin(), bytes.end());
}

Done PdfWriter::write(const std::filesystem::path& path, std::span<const documents::Page> pages,
                      const std::string& title) {
    BURROW_TRY(const auto bytes, renderPdf(pages, title));
    return files_.write(path, bytes);
}

}  // namespace burrow::print
