// How large things are: how far away the camera was, and what a tag on the mat says of a copied sheet.
#include <QtTest>

#include "measure/beside.h"
#include "measure/length.h"
#include "support/assets.h"
#include "support/mat_photo.h"

using namespace burrow;
using namespace burrow::measure;
using namespace burrow::test;

namespace {

constexpr auto a5 = MatPaper::a5;

pictures::Raster photoOfMat(const Shot& shot, double copiedAt = 1) {
    return photoOfMat(taggedSheet(copiedAt), shot);
}

}  // namespace

class TestMatScale : public QObject {
    Q_OBJECT

private slots:
    /// Height of the camera from the photo, against where the camera was: by another lens than most phones
    /// have, too, where EXIF tells which.
    void sameAsCamera() {
        for (const double focal : {13.0, 26.0, 60.0}) {
            auto shot = usualShot();
            shot.tilt = 0;
            shot.focal = focal;
            auto found = survey(photoOfMat(shot)).value();
            const double perMm = stretchAt(cameraOf(shot, seenOf(a5)), found.middle).most;
            const double truth = focal / 36.0 * shot.longSide() / perMm;
            // EXIF goes by the diagonal, that of a picture of 4:3 here.
            found.focal35 = std::hypot(36, 24) * focal / (36 * 1.25);
            QVERIFY(std::abs(cameraHeight(found).value / truth - 1) < 0.01);
            // 4 mm above the mat things look larger: put right, and nearly for sure.
            const auto camera = cameraOf(shot, seenOf(a5));
            const auto middle = layoutOf(a5).moult.centre();
            const double larger = truth / (truth - 4);
            const auto from = photoOf(camera, {middle.x, middle.y - Millimetres{7.5 * larger}});
            const auto to = photoOf(camera, {middle.x, middle.y + Millimetres{7.5 * larger}});
            const LengthOptions raised{.height = {{4}, {0}}};
            const auto told = lengthBetween(found, from, to, raised).value();
            QVERIFY(std::abs(told.value.value - 15) < 0.03);
            // Where it is not told the usual lens is believed, and the interval holds for others.
            found.focal35.reset();
            const auto guessed = lengthBetween(found, from, to, raised).value();
            QVERIFY(guessed.deviations.height > 5 * told.deviations.height);
            QVERIFY(guessed.low.value < 15 && 15 < guessed.high.value);
        }
    }
    /// The bar was measured before the sheet was copied: the tag that lies on it knows better.
    void aCopyIsNoticedByTheTagOnIt() {
        const auto bar = PrintScale::fromBar(Millimetres{100}).value();
        const auto surveyed = [](double copiedAt) {
            return survey(photoOfMat(usualShot(), copiedAt)).value();
        };
        const auto camera = cameraOf(usualShot(), seenOf(a5));
        const auto middle = layoutOf(a5).moult.centre();
        const auto from = photoOf(camera, {middle.x, middle.y - Millimetres{7.5}});
        const auto to = photoOf(camera, {middle.x, middle.y + Millimetres{7.5}});

        const auto honest = surveyed(1);
        QCOMPARE(honest.beside.value().code, std::string(enclosureCode));
        QVERIFY(std::abs(honest.beside->ratio - 1) < 0.004);
        QVERIFY(!copyWarning(honest, bar));
        const auto sure = lengthBetween(honest, from, to, {.print = bar}).value();
        QVERIFY(sure.deviation() < Millimetres{0.05});

        // What looks like 15 mm is 14.55 on the copy: said, and within the interval.
        const auto copy = surveyed(0.97);
        QVERIFY(std::abs(copy.beside.value().ratio - 1 / 0.97) < 0.004);
        const auto warning = copyWarning(copy, bar);
        QVERIFY(warning && warning->id == "measure.copied");
        QVERIFY(englishWords().say(*warning, {}).find("disagree by 3") != std::string::npos);
        const auto unsure = lengthBetween(copy, from, to, {.print = bar}).value();
        QVERIFY(unsure.low.value < 0.97 * 15 && 0.97 * 15 < unsure.high.value);
        // With the copy's own bar all is well.
        const auto own = PrintScale::fromBar(Millimetres{97}).value();
        QVERIFY(!copyWarning(copy, own));
        const auto right = lengthBetween(copy, from, to, {.print = own}).value();
        QVERIFY(std::abs(right.value.value - 0.97 * 15) < 0.03);

        // No two printers disagree by a tenth.
        const auto small = surveyed(0.9);
        QCOMPARE(lengthBetween(small, from, to, {.print = bar}).error().message.id,
                 std::string("measure.copied"));
    }
    /// A tag beside the mat may stand higher, so it says nothing of the sheet.
    void aTagElsewhereSaysNothingOfTheSheet() {
        auto found = survey(photoOfMat(usualShot())).value();
        QVERIFY(found.beside);
        FoundTag tag;
        tag.tag = {enclosureCode, tags::printedSide};
        const auto at = photoOf(found.projection(), layoutOf(a5).moult.centre());
        tag.symbol.corners = {at, at, at, at};
        QVERIFY(!tagBeside(photoOfMat(usualShot()), found, {tag}));
    }
};

QTEST_APPLESS_MAIN(TestMatScale)
#include "tst_mat_scale.moc"
