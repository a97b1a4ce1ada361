#include "print/pdf_printer.h"

#include "print/painter.h"

namespace burrow {

void PdfPrinter::paint(const documents::Page& page, QPainter& painter) const {
    print::paint(page, painter);
}

Done PdfPrinter::writePdf(const std::filesystem::path& path, std::span<const documents::Page> pages,
                          const std::string& title) {
    return writer_.write(path, pages, title);
}

}  // namespace burrow
