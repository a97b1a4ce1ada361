// A PDF file as dots, by poppler's command line tools.
#pragma once

#include <QDir>
#include <QImage>
#include <QImageReader>
#include <QProcess>
#include <QRect>
#include <QString>
#include <QStringList>
#include <cmath>

#include "documents/page.h"
#include "tags/symbol.h"

namespace burrow::test {

/// What a program writes to standard output; empty where it fails.
inline QByteArray run(const QString& program, const QStringList& arguments) {
    QProcess process;
    process.start(program, arguments);
    if (!process.waitForFinished(120'000) || process.exitCode() != 0) return {};
    return process.readAllStandardOutput();
}

/// One page in grey, pages counted from 1; null where pdftoppm fails.
inline QImage rasterised(const QString& pdf, int page, int dotsPerInch, bool smooth = true) {
    QStringList arguments{"-gray",
                          "-r",
                          QString::number(dotsPerInch),
                          "-f",
                          QString::number(page),
                          "-l",
                          QString::number(page)};
    if (!smooth)
        arguments << "-aa"
                  << "no"
                  << "-aaVector"
                  << "no";
    QImageReader::setAllocationLimit(
        0);  // a sheet at 600 dpi is larger than Qt expects of pictures
    const auto image = QImage::fromData(run("pdftoppm", arguments << pdf), "PGM");
    return image.convertToFormat(QImage::Format_Grayscale8);
}

/// A part of a page at some resolution.
class Patch {
public:
    Patch(const QImage& page, const documents::Box& box, int dotsPerInch)
        : perMm_(dotsPerInch / 25.4),
          image_(page.copy(QRect(QPoint(dot(box.x), dot(box.y)),
                                 QPoint(dot(box.right()) - 1, dot(box.bottom()) - 1)))) {}

    [[nodiscard]] tags::LumaView view() const {
        return {image_.constBits(), image_.width(), image_.height(),
                static_cast<int>(image_.bytesPerLine())};
    }

    /// The smallest rectangle around all dots darker than half.
    [[nodiscard]] QRect ink() const {
        QRect ink;
        for (int y = 0; y < image_.height(); ++y) {
            for (int x = 0; x < image_.width(); ++x) {
                if (image_.constScanLine(y)[x] < 128) ink |= QRect(x, y, 1, 1);
            }
        }
        return ink;
    }
    /// Whether everything but `inner` is white paper.
    [[nodiscard]] bool isWhiteAround(const QRect& inner) const {
        for (int y = 0; y < image_.height(); ++y) {
            for (int x = 0; x < image_.width(); ++x) {
                if (!inner.contains(x, y) && image_.constScanLine(y)[x] != 255) return false;
            }
        }
        return true;
    }
    [[nodiscard]] double millimetres(int dots) const { return dots / perMm_; }

private:
    [[nodiscard]] int dot(Millimetres place) const {
        return static_cast<int>(std::lround(place.value * perMm_));
    }

    double perMm_;
    QImage image_;
};

}  // namespace burrow::test
