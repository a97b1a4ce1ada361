#include "tour/film.h"

#include <QPainter>
#include <QProcess>
#include <algorithm>
#include <functional>

#include "documents/mat.h"
#include "documents/tagsheet.h"
#include "print/measure.h"
#include "print/pdfwriter.h"
#include "room/sheets.h"
#include "tour/scenery.h"

namespace burrow::demo {
namespace {

constexpr int framesPerSecond = 25;

tl::unexpected<Error> toolMissing(const char* tool) {
    return fail(Trouble::notFound, {"tour.tool", {{"tool", std::string(tool)}}});
}

/// Packs frames of one size as H.264 where ffmpeg has it.
Done pack(const QSize& size, int frames, const std::function<QImage(int)>& frame,
          const std::filesystem::path& file) {
    QProcess ffmpeg;
    ffmpeg.start("ffmpeg", {"-v",       "error",
                            "-f",       "rawvideo",
                            "-pix_fmt", "bgra",
                            "-s",       QString("%1x%2").arg(size.width()).arg(size.height()),
                            "-r",       QString::number(framesPerSecond),
                            "-i",       "-",
                            "-c:v",     "libx264",
                            "-preset",  "ultrafast",
                            "-pix_fmt", "yuv420p",
                            "-y",       QString::fromStdString(file)});
    if (!ffmpeg.waitForStarted()) return toolMissing("ffmpeg");
    for (int number = 0; number < frames; ++number) {
        const auto picture = frame(number).convertToFormat(QImage::Format_RGB32);
        ffmpeg.write(reinterpret_cast<const char*>(picture.constBits()), picture.sizeInBytes());
        while (ffmpeg.bytesToWrite() > 0 && ffmpeg.waitForBytesWritten()) {
        }
    }
    ffmpeg.closeWriteChannel();
    const bool isPacked = ffmpeg.waitForFinished(60'000) && ffmpeg.exitCode() == 0;
    if (!isPacked) return toolMissing("ffmpeg");
    return {};
}

constexpr int dotsPerInch = 300;

/// The first of the pages as it comes out of a printer.
Result<QImage> printed(std::span<const documents::Page> pages, const std::filesystem::path& pdf) {
    DeviceFiles files;
    BURROW_DO(print::PdfWriter(files).write(pdf, pages, "Kiln Row"));
    QProcess raster;
    raster.start("pdftoppm", {"-r", QString::number(dotsPerInch), "-f", "1", "-l", "1", "-png",
                              QString::fromStdString(pdf)});
    const bool isRastered = raster.waitForFinished(60'000) && raster.exitCode() == 0;
    auto sheet = QImage::fromData(raster.readAllStandardOutput(), "PNG");
    if (!isRastered || sheet.isNull()) return toolMissing("pdftoppm");
    return sheet;
}

}  // namespace

Result<std::vector<QImage>> printedTags(const std::vector<ResidentPtr>& residents,
                                        const Words& words, const std::filesystem::path& folder) {
    constexpr double dotsPerMm = dotsPerInch / 25.4;
    std::vector<documents::TagLabel> labels;
    for (const auto& resident : residents) labels.push_back(tagLabelFor(*resident));
    BURROW_TRY(const auto pages, documents::tagSheets("Kiln Row", documents::Paper::a4, labels,
                                                      words, print::QtTextMeasure()));
    BURROW_TRY(const auto sheet, printed(pages, folder / "tags.pdf"));
    std::vector<QImage> cut;
    for (const auto& command : pages.front().commands) {
        const auto* mark = std::get_if<documents::SymbolMark>(&command);
        if (mark == nullptr) continue;
        // Where the square stands on its label of 62 by 29 mm.
        const QRectF box(mark->corner.x.value - 38.5, mark->corner.y.value - 4.5, 62, 29);
        cut.push_back(
            sheet.copy(QRectF(box.topLeft() * dotsPerMm, box.size() * dotsPerMm).toRect()));
    }
    return cut;
}

Result<QImage> printedMat(const Words& words, const std::filesystem::path& folder) {
    BURROW_TRY(const auto page,
               documents::matPage(measure::MatPaper::a5, "7Q2M", words, print::QtTextMeasure()));
    return printed(std::span(&page, 1), folder / "mat.pdf");
}

Done filmTag(const QImage& tag, const std::filesystem::path& file) {
    constexpr int frames = 3 * framesPerSecond;
    const auto lid = tubLid();
    return pack(
        lid.size(), frames,
        [&](int number) {
            const double near = std::min(1.0, number / (1.4 * framesPerSecond));
            const double width = 470 + 60 * near;
            auto picture = lid;
            QPainter painter(&picture);
            painter.setRenderHint(QPainter::SmoothPixmapTransform);
            painter.setRenderHint(QPainter::Antialiasing);
            painter.translate(frameSize.width() / 2.0 + 240 * (1 - near),
                              frameSize.height() * 0.42 + 160 * (1 - near));
            painter.rotate(-14 + 10 * near);
            const QRectF paper(-width / 2, -width * tag.height() / tag.width() / 2, width,
                               width * tag.height() / tag.width());
            painter.drawImage(paper, tag);
            painter.fillRect(paper, QColor(120, 70, 20, 60));  // in the light of the room
            painter.end();
            return picture;
        },
        file);
}

Done filmStill(const QImage& picture, const std::filesystem::path& file) {
    return pack(
        picture.size(), 10 * framesPerSecond, [&](int) { return picture; }, file);
}

}  // namespace burrow::demo
