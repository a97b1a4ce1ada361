#include "printed_tags.h"

#include <QDir>
#include <QFontDatabase>
#include <QTemporaryDir>
#include <cmath>

#include "../documents/raster.h"
#include "../support/assets.h"
#include "documents/tagsheet.h"
#include "print/measure.h"
#include "print/pdfwriter.h"

namespace burrow::test {

QList<QImage> printedLabels() {
    const QDir fonts(QStringLiteral(BURROW_ASSETS_DIR "/fonts"));
    for (const auto& file : fonts.entryInfoList({"*.ttf"})) {
        QFontDatabase::addApplicationFont(file.filePath());
    }
    const std::vector<documents::TagLabel> labels{
        {regalis, "087", "Poecilotheria regalis", Form::animal, Sex::female, {}},
        {hamorii, "214", "Brachypelma hamorii", Form::animal, Sex::male, {}}};
    const Words words = englishWords();
    const auto pages = documents::tagSheets("Kiln Row", documents::Paper::a4, labels, words,
                                            print::QtTextMeasure());
    if (!pages) return {};
    QTemporaryDir folder;
    const auto pdf = folder.filePath("tags.pdf");
    DeviceFiles files;
    if (!print::PdfWriter(files).write(pdf.toStdString(), *pages, "Kiln Row")) return {};
    constexpr int dotsPerInch = 150;
    const auto sheet = rasterised(pdf, 1, dotsPerInch);
    QList<QImage> cut;
    for (const auto& command : pages->front().commands) {
        const auto* mark = std::get_if<documents::SymbolMark>(&command);
        if (mark == nullptr) continue;
        // Three labels abreast in the middle of 210 mm; the square stands at half height.
        const double column = std::floor((mark->corner.x.value - 12) / 62);
        const double top = mark->corner.y.value + mark->side.value / 2 - 14.5;
        const double dotsPerMm = dotsPerInch / 25.4;
        const QRectF box(12 + 62 * column, top, 62, 29);
        cut.append(sheet.copy(QRectF(box.topLeft() * dotsPerMm, box.size() * dotsPerMm).toRect()));
    }
    return cut;
}

}  // namespace burrow::test
