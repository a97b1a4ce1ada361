// What a photo of a mat is measured as, and the words with which one that cannot be is refused.
#include <QtTest>

#include "measure/hint.h"
#include "measure/length.h"
#include "measure/screen.h"
#include "measure/survey.h"
#include "support/assets.h"
#include "support/mat_photo.h"

using namespace burrow;
using namespace burrow::measure;
using namespace burrow::test;

namespace {

constexpr auto a5 = MatPaper::a5;

const Sheet& usualSheet() {
    static const auto sheet = taggedSheet();
    return sheet;
}

pictures::Raster photoOfMat(const Shot& shot) { return photoOfMat(usualSheet(), shot); }

std::string refusal(const pictures::Raster& photo) {
    const auto found = survey(photo);
    return found ? std::string("measured") : found.error().message.id;
}

pictures::Raster beside(const pictures::Raster& a, const pictures::Raster& b) {
    pictures::Raster result(a.width() + b.width(), a.height());
    for (int y = 0; y < a.height(); ++y) {
        std::copy_n(a.row(y), a.stride(), result.row(y));
        std::copy_n(b.row(y), b.stride(), result.row(y) + a.stride());
    }
    return result;
}

std::vector<std::uint8_t> greyOf(const pictures::Raster& photo) {
    std::vector<std::uint8_t> grey;
    for (int y = 0; y < photo.height(); ++y) {
        for (int x = 0; x < photo.width(); ++x) grey.push_back(photo.row(y)[3 * x + 1]);
    }
    return grey;
}

Hint hintOf(const Shot& shot) {
    auto frame = shot;
    frame.megapixels = 0.92;
    frame.quality = 0;
    const auto photo = photoOfMat(frame);
    const auto grey = greyOf(photo);
    return hintFor({grey.data(), photo.width(), photo.height(), photo.width()}).hint;
}

}  // namespace

class TestMatPhoto : public QObject {
    Q_OBJECT

    /// 15 mm across the carapace.
    static double carapace(const Survey& found, const Projection& camera) {
        const auto middle = layoutOf(a5).moult.centre();
        const auto from = photoOf(camera, {middle.x, middle.y - Millimetres{7.5}});
        const auto to = photoOf(camera, {middle.x, middle.y + Millimetres{7.5}});
        return lengthBetween(found, from, to)->value.value;
    }

private slots:
    void aMatIsMeasured() {
        const auto shot = usualShot();
        const auto found = survey(photoOfMat(shot)).value();
        QCOMPARE(found.scale, ScaleKind::mat);
        QCOMPARE(found.mat->name, std::string("7Q2M"));
        QCOMPARE(found.code.value(), std::string(enclosureCode));
        QVERIFY(found.residual < 0.5);
        QVERIFY(!found.hasRadial);
        const auto camera = cameraOf(shot, seenOf(a5));
        QVERIFY(std::abs(carapace(found, camera) - 15) < 0.02);
        // Every place of the sheet comes out where it is.
        for (double x = 5; x < 148; x += 20) {
            const auto back = matOf(found.projection(), photoOf(camera, {{x}, {x}})).value();
            QVERIFY(std::hypot(back.x.value - x, back.y.value - x) < 0.05);
        }
    }
    void anyWayUp() {
        for (const double roll : {90.0, 180.0, 270.0}) {
            auto shot = usualShot();
            shot.roll = roll;
            shot.isPortrait = roll == 180;
            const auto found = survey(photoOfMat(shot)).value();
            QVERIFY(std::abs(carapace(found, cameraOf(shot, seenOf(a5))) - 15) < 0.02);
        }
    }
    void theLensIsAskedForWhereItShows() {
        auto shot = usualShot();
        shot.radial = -0.05;
        const auto found = survey(photoOfMat(shot)).value();
        QVERIFY(found.hasRadial);
        QVERIFY(std::abs(found.parameters[8] + 0.05) < 0.005);
        QVERIFY(std::abs(carapace(found, cameraOf(shot, seenOf(a5))) - 15) < 0.03);
    }
    /// A little is measured, and said to be less sure by as much as it is.
    void aSlightCurlIsInTheInterval() {
        const auto flat = survey(photoOfMat(usualShot())).value();
        auto shot = usualShot();
        shot.fill = 0.85;
        shot.curl = {2, 90, CurlShape::arch};
        const auto camera = cameraOf(shot, seenOf(a5));
        const auto sheet = matSheet(a5);
        const auto found = survey(photographed(sheet, shot, camera)).value();
        QVERIFY(found.curl > 3 * flat.curl);
        const auto curled = curledSheet(sheet, shot, camera);
        const auto middle = layoutOf(a5).moult.centre();
        for (const double side : {-7.5, 7.5}) {
            const MatPoint from{middle.x + Millimetres{side}, middle.y};
            for (const double reach : {15.0, 30.0}) {
                const MatPoint to{from.x, from.y + Millimetres{reach}};
                const auto length =
                    lengthBetween(found, curled.photoOf(from), curled.photoOf(to)).value();
                const double truth = curled.between(from, to);
                QVERIFY(length.low.value < truth && truth < length.high.value);
                QVERIFY(length.deviations.sheet > length.deviations.plane);
                QVERIFY(length.deviation().value < 0.02 * truth);
            }
        }
    }
    void aTagAloneGivesAScale() {
        Shot shot = usualShot();
        const MatBox seen{{25}, {18}, {50}, {44}};
        const auto camera = cameraOf(shot, seen);
        const auto found = survey(photographed(tagOnly(), shot, camera)).value();
        QCOMPARE(found.scale, ScaleKind::tag);
        QCOMPARE(found.code.value(), std::string(enclosureCode));
        QVERIFY(!found.mat);
        const auto length =
            lengthBetween(found, photoOf(camera, {{42}, {55}}), photoOf(camera, {{57}, {55}}))
                .value();
        QVERIFY(length.low.value < 15 && 15 < length.high.value);
        QVERIFY(length.deviation().value < 0.2);
        // The farther from the tag, the less is known.
        const auto far =
            lengthBetween(found, photoOf(camera, {{26}, {20}}), photoOf(camera, {{41}, {20}}))
                .value();
        QVERIFY(far.deviations.plane > length.deviations.plane);
    }

    /// Nobody who photographed a tag is told about a mat.
    void aTagIsRefusedInItsOwnWords() {
        const MatBox seen{{25}, {18}, {50}, {44}};
        auto shot = usualShot();
        const auto photo = photographed(tagOnly(), shot, cameraOf(shot, seen));
        const auto said = [&](const MeasureRules& limits) {
            const auto found = survey(photo, std::nullopt, limits);
            return found ? std::string("measured") : found.error().message.id;
        };
        auto strict = shippedRules();
        strict.leastPixelsPerMm = 1000;
        QCOMPARE(said(strict), std::string("measure.tag.far"));
        strict = shippedRules();
        strict.leastLevel = 0.9999;
        QCOMPARE(said(strict), std::string("measure.tag.tilted"));
        shot.tilt = 47;
        QCOMPARE(refusal(photographed(tagOnly(), shot, cameraOf(shot, seen))),
                 std::string("measure.tag.tilted"));
        const auto words = englishWords();
        for (const char* id : {"tilted", "far", "hidden", "unfit"}) {
            const Message message{std::string("measure.tag.") + id};
            QVERIFY2(words.knows(message.id), id);
            QVERIFY2(words.say(message, {}).find("tag") != std::string::npos, id);
        }
    }

    void refusedWithWords_data() {
        QTest::addColumn<QString>("id");
        QTest::addColumn<std::function<void(Shot&)>>("spoil");
        const auto row = [](const char* title, const char* id, std::function<void(Shot&)> spoil) {
            QTest::newRow(title) << QString(id) << std::move(spoil);
        };
        row("from the side", "measure.tilted", [](Shot& s) {
            s.tilt = 50;
            s.megapixels = 5;
        });
        row("blurred", "measure.blurred", [](Shot& s) { s.blur = 9; });
        row("half of it", "measure.corners", [](Shot& s) { s.cut = 0.35; });
        row("hardly any light", "measure.dim", [](Shot& s) {
            s.exposure = 0.005;
            s.noise = 1;
        });
        row("from across the table", "measure.far", [](Shot& s) {
            s.fill = 0.22;
            s.blur = 0.3;
        });
        row("as it comes off the roll", "measure.notFlat", [](Shot& s) {
            s.fill = 0.8;
            s.curl = {35, 90, CurlShape::trough};
        });
        row("arched by a centimetre", "measure.notFlat", [](Shot& s) {
            s.fill = 0.8;
            s.curl = {10, 0, CurlShape::arch};
        });
    }
    void refusedWithWords() {
        QFETCH(QString, id);
        QFETCH(std::function<void(Shot&)>, spoil);
        auto shot = usualShot();
        spoil(shot);
        const auto given = refusal(photoOfMat(shot));
        QCOMPARE(QString::fromStdString(given), id);
    }
    void fromTooFarAway() {
        // Where it is so small that nothing can be read, that is said.
        auto shot = usualShot();
        shot.fill = 0.15;
        QCOMPARE(QString::fromStdString(refusal(photoOfMat(shot))), QString("measure.nothing"));
    }
    /// Something lies on the fourth square, which is in the photo: moving back would not help.
    void aCoveredSquareIsSaid() {
        auto photo = photoOfMat(usualShot());
        for (int y = photo.height() / 2; y < photo.height(); ++y) {
            std::fill_n(photo.row(y) + photo.stride() / 2, photo.stride() / 2, std::uint8_t{120});
        }
        QCOMPARE(refusal(photo), std::string("measure.hidden"));
        QVERIFY(englishWords()
                    .say(Message{"measure.hidden"}, {})
                    .starts_with("One square of the mat is covered"));
    }
    /// The fourth square is cut through by the photo's edge.
    void countsTheCorners() {
        auto shot = usualShot();
        shot.roll = 25;
        const auto whole = photoOfMat(shot);
        const auto camera = cameraOf(shot, seenOf(a5));
        double right = 0;
        for (const auto corner : matCorners) {
            right = std::max(right, photoOf(camera, layoutOf(a5).square(corner).centre()).x);
        }
        pictures::Raster photo(static_cast<int>(right), whole.height());
        for (int y = 0; y < photo.height(); ++y) {
            std::copy_n(whole.row(y), photo.stride(), photo.row(y));
        }
        const auto found = survey(photo);
        QVERIFY(!found);
        QCOMPARE(found.error().message, (Message{"measure.corners", {{"count", 3}}}));
        QCOMPARE(englishWords().say(found.error().message, {}),
                 std::string("Only 3 corners of the mat show. The photo is untouched. Move back a "
                             "hand's width."));
    }
    void mirrored() {
        QCOMPARE(QString::fromStdString(refusal(turnedOver(photoOfMat(usualShot())))),
                 QString("measure.mirrored"));
    }
    void mirroredWhileTheCameraRuns() {
        auto shot = usualShot();
        shot.megapixels = 0.92;
        const auto photo = turnedOver(photoOfMat(shot));
        const auto grey = greyOf(photo);
        const auto live = hintFor({grey.data(), photo.width(), photo.height(), photo.width()});
        QVERIFY(live.hint == Hint::mirrored || live.hint == Hint::noMat);
        // A single tag may be read in a mirror, where lengths are the same; else it is said.
        const auto camera = cameraOf(usualShot(), {{25}, {18}, {50}, {44}});
        const auto said = refusal(turnedOver(photographed(tagOnly(), usualShot(), camera)));
        QVERIFY2(said == "measure.mirrored" || said == "measured", said.c_str());
    }
    void twoMats() {
        const auto photo = photoOfMat(usualShot());
        QCOMPARE(refusal(beside(photo, photo)), std::string("measure.twoMats"));
    }
    void twoMatsOfTwoNames() {
        SheetOptions options;
        options.perMm = 16;
        options.name = "0A1B";
        const auto shot = usualShot();
        const auto camera = cameraOf(shot, seenOf(a5));
        const auto other = photographed(matSheet(a5, options), shot, camera);
        const auto photo = photoOfMat(shot);
        QCOMPARE(refusal(other), std::string("measured"));
        QCOMPARE(refusal(beside(photo, other)), std::string("measure.twoMats"));
        QCOMPARE(refusal(beside(other, photo)), std::string("measure.twoMats"));
    }
    /// Each limit is asked: what is good enough is refused where more is wanted.
    void everyLimitCounts() {
        const auto photo = photoOfMat(usualShot());
        const auto said = [&](double MeasureRules::*limit, double value) {
            auto strict = shippedRules();
            strict.*limit = value;
            const auto found = survey(photo, std::nullopt, strict);
            return found ? std::string("measured") : found.error().message.id;
        };
        QCOMPARE(said(&MeasureRules::leastContrast, 255), std::string("measure.dim"));
        QCOMPARE(said(&MeasureRules::mostBlur, 0.001), std::string("measure.blurred"));
        QCOMPARE(said(&MeasureRules::mostCurl, 1e-6), std::string("measure.notFlat"));
        QCOMPARE(said(&MeasureRules::leastLevel, 0.9999), std::string("measure.tilted"));
        QCOMPARE(said(&MeasureRules::leastPixelsPerMm, 50), std::string("measure.far"));
        QCOMPARE(said(&MeasureRules::leastLevel, 0.5), std::string("measured"));
    }
    void edgesThatSayTooLittle() {
        const auto fit = fitEdges({}, 1, Homography{1, 0, 0, 0, 1, 0, 0, 0, 1}, Radial{}, {});
        QCOMPARE(fit.error().message.id, std::string("measure.unfit"));
    }
    /// Pale as a sheet behind milk glass: read or not, it is never measured.
    void aPalePhoto() {
        auto photo = photoOfMat(usualShot());
        for (int y = 0; y < photo.height(); ++y) {
            auto* row = photo.row(y);
            for (std::size_t x = 0; x < photo.stride(); ++x) {
                row[x] = static_cast<std::uint8_t>(120 + row[x] / 16);
            }
        }
        const auto said = refusal(photo);
        QVERIFY2(said != "measured" && said != "measure.screen", said.c_str());
    }
    void nothingThere() {
        pictures::Raster photo(800, 600);
        for (int y = 0; y < 600; ++y) {
            for (int x = 0; x < 2400; ++x) {
                photo.row(y)[x] = static_cast<std::uint8_t>((x / 60 + y / 20) % 2 * 200);
            }
        }
        QCOMPARE(refusal(photo), std::string("measure.nothing"));
        QCOMPARE(refusal(pictures::Raster(0, 0)), std::string("measure.nothing"));
    }
    void aScreen_data() {
        QTest::addColumn<double>("pitch");
        for (const double pitch : {0.2, 0.25, 0.3}) QTest::addRow("%g mm", pitch) << pitch;
    }
    void aScreen() {
        QFETCH(double, pitch);
        auto shot = usualShot();
        shot.megapixels = 8;
        SheetOptions options;
        options.perMm = 16;
        auto sheet = matSheet(a5, options);
        // Dots with dark lines between them.
        for (double x = 0; x < 148; x += pitch) sheet.fill(x, 0, x + 0.0625, 210, 60);
        for (double y = 0; y < 210; y += pitch) sheet.fill(0, y, 148, y + 0.0625, 60);
        const auto camera = cameraOf(shot, seenOf(a5));
        QCOMPARE(refusal(photographed(sheet, shot, camera)), std::string("measure.screen"));
    }
    void everyRefusalHasWords() {
        const auto words = englishWords();
        for (const char* id :
             {"noPlane",  "unfit",    "nothing",   "corners",  "hidden",   "twoMats",
              "mirrored", "tilted",   "blurred",   "dim",      "far",      "notFlat",
              "screen",   "outside",  "samePoint", "unsure",   "badPoint", "badBar",
              "badName",  "badScale", "greyPatch", "badEnding"}) {
            QVERIFY2(words.knows(std::string("measure.") + id), id);
        }
    }

    void hintsWhileTheCameraRuns() {
        auto shot = usualShot();
        QCOMPARE(hintOf(shot), Hint::ready);
        shot.cut = 0.3;
        QCOMPARE(hintOf(shot), Hint::corners);
        shot = usualShot();
        shot.fill = 0.45;
        QVERIFY(hintOf(shot) == Hint::far || hintOf(shot) == Hint::noMat);
        shot = usualShot();
        shot.tilt = 48;
        const auto tilted = hintOf(shot);
        QVERIFY(tilted == Hint::tilted || tilted == Hint::corners);
        shot = usualShot();
        shot.blur = 1.6;
        QVERIFY(hintOf(shot) != Hint::ready);
        QCOMPARE(hintFor({}).hint, Hint::noMat);
        const auto words = englishWords();
        for (int i = 0; i <= static_cast<int>(Hint::ready); ++i) {
            LiveHint live;
            live.hint = static_cast<Hint>(i);
            QVERIFY(words.knows(live.message().id));
        }
    }
};

QTEST_APPLESS_MAIN(TestMatPhoto)
#include "tst_mat_photo.moc"
