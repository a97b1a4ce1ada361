// Tags as they come out of a printer: a sheet drawn by platform/print and rasterised by poppler's
// pdftoppm, one label cut out of it. Invented animals of real species.
#pragma once

#include <QByteArray>
#include <QImage>
#include <QList>
#include <QPainter>
#include <string>

#include "tags/code.h"
#include "tags/symbol.h"

namespace burrow::test {

/// The first two are good tags.
inline const std::string regalis = "7Q2MZX89";
inline const std::string hamorii = "3KD84TRW";

inline QByteArray payloadOf(const std::string& code) {
    return QByteArray::fromStdString(tags::payload(code, Millimetres{20}));
}

/// The labels of both tags, 62 by 29 mm at 150 dots per inch; none where a tool is missing.
QList<QImage> printedLabels();

/// A symbol on white paper with its quiet zone, six dots a module. `isDark(column, row)` says where.
template <class IsDark>
QImage paperWith(int modules, IsDark isDark) {
    constexpr int dots = 6;
    QImage paper((modules + 8) * dots, (modules + 8) * dots, QImage::Format_Grayscale8);
    paper.fill(255);
    QPainter painter(&paper);
    for (int row = 0; row < modules; ++row) {
        for (int column = 0; column < modules; ++column) {
            if (!isDark(column, row)) continue;
            painter.fillRect((column + 4) * dots, (row + 4) * dots, dots, dots, Qt::black);
        }
    }
    return paper;
}

inline QImage paperWith(const std::string& text) {
    const auto symbol = tags::encode(text).value();
    return paperWith(symbol.size(),
                     [&](int column, int row) { return symbol.isDark(column, row); });
}

}  // namespace burrow::test
