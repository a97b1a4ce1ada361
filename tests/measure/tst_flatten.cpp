// Photos made flat: right places, right colours, and files that lie or are cut.
#include <QtTest>

#include "measure/contrast.h"
#include "measure/flatten.h"
#include "support/ciede2000.h"
#include "support/mat_photo.h"

using namespace burrow;
using namespace burrow::measure;
using namespace burrow::test;

namespace {

constexpr auto a5 = MatPaper::a5;

Sheet sheetWithEdge() {
    SheetOptions options;
    options.perMm = 16;
    return matSheet(a5, options);
}

/// The mean colour of a square millimetre.
std::array<std::uint8_t, 3> colourAt(const pictures::Raster& flat, double perMm, MatPoint place) {
    std::array<double, 3> sum{};
    int count = 0;
    for (int y = static_cast<int>((place.y.value - 0.5) * perMm); y < (place.y.value + 0.5) * perMm;
         ++y) {
        for (int x = static_cast<int>((place.x.value - 0.5) * perMm);
             x < (place.x.value + 0.5) * perMm; ++x) {
            for (std::size_t c = 0; c < 3; ++c) sum[c] += flat.row(y)[3 * x + static_cast<int>(c)];
            ++count;
        }
    }
    std::array<std::uint8_t, 3> colour{};
    for (std::size_t c = 0; c < 3; ++c)
        colour[c] = static_cast<std::uint8_t>(std::lround(sum[c] / count));
    return colour;
}

Bytes withExif(const Bytes& jpeg, int orientation) {
    const std::vector<std::uint8_t> exif{
        0xFF, 0xE1, 0, 34, 'E', 'x', 'i', 'f', 0, 0,
        'M',  'M',  0, 42, 0,   0,   0,   8,   0, 1,
        0x01, 0x12, 0, 3,  0,   0,   0,   1,   0, static_cast<std::uint8_t>(orientation),
        0,    0,    0, 0,  0,   0};
    Bytes result(jpeg.begin(), jpeg.begin() + 2);
    result.insert(result.end(), exif.begin(), exif.end());
    result.insert(result.end(), jpeg.begin() + 2, jpeg.end());
    return result;
}

}  // namespace

class TestFlatten : public QObject {
    Q_OBJECT

    const Sheet sheet = sheetWithEdge();

    static Shot usualShot() {
        Shot shot;
        shot.megapixels = 3;
        shot.tilt = 15;
        shot.azimuth = 200;
        shot.noise = 1;
        shot.radial = -0.03;
        return shot;
    }
    pictures::Raster photo(const Shot& shot) const {
        return photographed(sheet, shot, cameraOf(shot, seenOf(a5)));
    }

private slots:
    /// The carapace is an ellipse of 12 by 15 mm about the middle of its place: where it begins and
    /// ends along its axes, at half of the brightness.
    void everythingIsWhereItIs_data() {
        QTest::addColumn<double>("perMm");
        for (const double perMm : {4.0, 10.0, 20.0}) QTest::addRow("%g", perMm) << perMm;
    }
    void everythingIsWhereItIs() {
        QFETCH(double, perMm);
        const auto taken = photo(usualShot());
        const auto found = survey(taken).value();
        FlattenOptions options;
        options.pixelsPerMm = perMm;
        const auto flat = flatten(taken, found, options).value();
        QCOMPARE(flat.width(), static_cast<int>(std::lround(148 * perMm)));
        QCOMPARE(flat.height(), static_cast<int>(std::lround(210 * perMm)));
        const auto middle = layoutOf(a5).moult.centre();
        const int row = static_cast<int>(middle.y.value * perMm - 5 * perMm);
        const double half = 6 * std::sqrt(1 - 5.0 * 5.0 / (7.5 * 7.5));
        const auto* line = flat.row(row);
        const auto value = [&](int x) { return int{line[3 * x + 1]}; };
        const int dark = value(static_cast<int>(middle.x.value * perMm));
        const int light = value(static_cast<int>((middle.x.value - 6.6) * perMm));
        const double level = 0.5 * (dark + light);
        for (const int step : {-1, 1}) {
            int x = static_cast<int>(middle.x.value * perMm);
            while (value(x) < level) x += step;
            const double share = (level - value(x - step)) / (value(x) - value(x - step));
            const double at = (x - step + 0.5 + step * share) / perMm;
            QVERIFY2(std::abs(at - (middle.x.value + step * half)) < 0.06 + 0.1 / perMm,
                     qPrintable(QString::number(at - middle.x.value)));
        }
    }
    void onlyARegion() {
        const auto taken = photo(usualShot());
        const auto found = survey(taken).value();
        const auto whole = flatten(taken, found, {.pixelsPerMm = 10}).value();
        const auto part =
            flatten(taken, found, {.pixelsPerMm = 10, .region = layoutOf(a5).moult}).value();
        QCOMPARE(part.width(), 1280);
        long difference = 0;
        for (int y = 0; y < part.height(); y += 7) {
            for (int x = 0; x < part.width(); x += 7) {
                difference += std::abs(part.row(y)[3 * x] - whole.row(y + 420)[3 * (x + 100)]);
            }
        }
        QVERIFY(difference < 2L * (part.height() / 7) * (part.width() / 7));
    }
    void outsideIsWhite() {
        const auto taken = photo(usualShot());
        const auto found = survey(taken).value();
        const MatBox beyond{{-300}, {-300}, {50}, {50}};
        const auto flat = flatten(taken, found, {.pixelsPerMm = 2, .region = beyond}).value();
        QCOMPARE(int{flat.row(50)[150]}, 255);
        QVERIFY(!flatten(taken, found, {.pixelsPerMm = 0}));
        QVERIFY(!flatten(taken, found, {.pixelsPerMm = 500}));
        QVERIFY(!flatten(taken, found, {.pixelsPerMm = std::nan("")}));
    }

    /// A sheet that came out at 97 percent: its picture is smaller, and a millimetre of it is one.
    void thePrintersScaleCounts() {
        const auto taken = photo(usualShot());
        const auto found = survey(taken).value();
        const auto print = PrintScale::fromBar(Millimetres{97}).value();
        const auto plain = flatten(taken, found, {.pixelsPerMm = 10}).value();
        const auto copy = flatten(taken, found, {.pixelsPerMm = 10, .print = print}).value();
        QCOMPARE(plain.width(), 1480);
        QCOMPARE(copy.width(), 1436);  // 148 mm at 97 percent
        QCOMPARE(copy.height(), 2037);
        // The same places in both: the ends of the picture are those of the sheet.
        long difference = 0;
        for (int y = 5; y < copy.height(); y += 97) {
            for (int x = 5; x < copy.width(); x += 97) {
                const int column = static_cast<int>((x + 0.5) / 0.97);
                const int row = static_cast<int>((y + 0.5) / 0.97);
                difference += std::abs(copy.row(y)[3 * x] - plain.row(row)[3 * column]);
            }
        }
        QVERIFY(difference < 4L * (copy.height() / 97) * (copy.width() / 97));
    }
    /// The scale that is offered is taken, and the next one is not.
    void tooLargeSaysHowLarge() {
        Survey found;
        found.mat = MatMark{MatPaper::a4, MatCorner::topLeft, "7Q2M"};
        found.photoWidth = 4000;
        found.photoHeight = 3000;
        const pictures::Raster taken(40, 30);
        const auto refused = flatten(taken, found, {.pixelsPerMm = 40});
        QCOMPARE(refused.error().message, (Message{"measure.badScale", {{"most", 31.0}}}));
        // 210 by 297 mm at 31 to a millimetre, and 12 megapixels beside them.
        QVERIFY(210.0 * 31 * 297 * 31 + 12e6 <= mostPixelsHeld);
        QVERIFY(210.0 * 32 * 297 * 32 + 12e6 > mostPixelsHeld);
        QCOMPARE(largestScale(found, {.print = PrintScale::fromBar(Millimetres{90}).value()}),
                 35.0);
    }

    /// Greys of the sheet as they are, whatever the colour of the light: by CIEDE2000, 2.3 being a
    /// difference that is just noticed (common practice, no source).
    void coloursAreThoseOfTheSheet() {
        for (const auto& cast : {std::array{1.0, 1.0, 1.0}, {1.0, 0.75, 0.5}, {0.6, 0.75, 1.0}}) {
            auto shot = usualShot();
            shot.cast = cast;
            shot.unevenness = 0;
            shot.exposure = 0.9;
            const auto taken = photo(shot);
            const auto found = survey(taken).value();
            FlattenOptions options;
            options.pixelsPerMm = 8;
            options.balance = balanceOf(taken, found).value();
            const auto flat = flatten(taken, found, options).value();
            const auto middle = layoutOf(a5).moult.centre();
            const struct {
                MatPoint at;
                double reflectance;
            } greys[]{{middle, 50},
                      {{middle.x, middle.y + Millimetres{18}}, 70},
                      {layoutOf(a5).grey.centre(), 34}};
            for (const auto& grey : greys) {
                const auto value = codedLight(grey.reflectance / 255);
                const std::array<std::uint8_t, 3> wanted{value, value, value};
                const auto seen = colourAt(flat, 8, grey.at);
                const double difference = ciede2000(labOf(seen.data()), labOf(wanted.data()));
                QVERIFY2(difference < 2.3, qPrintable(QString::number(difference)));
            }
        }
    }
    void aShadowOnThePatchIsSaid() {
        const auto shot = usualShot();
        auto taken = photo(shot);
        const auto found = survey(taken).value();
        const auto grey = layoutOf(a5).grey;
        const auto from = photoOf(found.projection(), {grey.x, grey.y});
        const auto to =
            photoOf(found.projection(), {grey.x + 0.5 * grey.width, grey.y + grey.height});
        for (int y = static_cast<int>(from.y); y < to.y; ++y) {
            for (int x = static_cast<int>(from.x); x < to.x; ++x)
                std::fill_n(taken.row(y) + 3 * x, 3, std::uint8_t{5});
        }
        QCOMPARE(balanceOf(taken, found).error().message.id, std::string("measure.greyPatch"));
    }
    void contrastKeepsColour() {
        pictures::Raster picture(64, 64);
        for (int y = 0; y < 64; ++y) {
            for (int x = 0; x < 64; ++x) {
                const auto base = static_cast<std::uint8_t>(80 + (x + y) / 8);
                picture.row(y)[3 * x] = static_cast<std::uint8_t>(base + 20);
                picture.row(y)[3 * x + 1] = base;
                picture.row(y)[3 * x + 2] = base;
            }
        }
        const auto better = withLocalContrast(picture, {3, 2, 2});
        int least = 255, most = 0;
        for (int y = 0; y < 64; ++y) {
            for (int x = 0; x < 64; ++x) {
                const auto* p = better.row(y) + 3 * x;
                least = std::min<int>(least, p[1]);
                most = std::max<int>(most, p[1]);
                if (p[0] < 255 && p[1] > 0) QCOMPARE(p[0] - p[1], 20);
            }
        }
        QVERIFY(most - least > 30);
    }

    /// What EXIF says of the way up changes nothing: points are those of the stored pixels.
    void exifMayLie() {
        const auto jpeg = pictures::encodeJpeg(photo(usualShot()), 85).value();
        const auto plain = pictures::decode(jpeg).value();
        for (const int orientation : {1, 3, 6, 8, 77}) {
            const auto lying = pictures::decode(withExif(jpeg, orientation)).value();
            QCOMPARE(lying.width(), plain.width());
            QVERIFY(std::equal(lying.row(7), lying.row(8), plain.row(7)));
        }
    }
    /// Brands of ISO/IEC 23008-12, at the head or among those that the file is compatible with.
    void heicInAllItsBrands() {
        const auto id = [](const std::string& head, const std::string& compatible) {
            Bytes bytes{0, 0, 0, static_cast<std::uint8_t>(16 + compatible.size())};
            const std::string box = "ftyp" + head + std::string(4, '\0') + compatible;
            bytes.insert(bytes.end(), box.begin(), box.end());
            const std::string rest = "xxxxheic";  // beyond the box
            bytes.insert(bytes.end(), rest.begin(), rest.end());
            return pictures::decode(bytes).error().message.id;
        };
        for (const char* brand :
             {"heic", "heix", "heim", "heis", "hevc", "hevx", "hevm", "hevs", "mif1", "msf1"}) {
            QCOMPARE(id(brand, ""), std::string("picture.heic"));
            QCOMPARE(id("xyz1", std::string("abcd") + brand), std::string("picture.heic"));
        }
        QCOMPARE(id("isom", "isomavc1"), std::string("picture.none"));
        QCOMPARE(id("isom", "isomaheica.."), std::string("picture.none"));  // not on a word of four
        QCOMPARE(pictures::decode(Bytes{0, 0, 0, 200, 'f', 't', 'y', 'p', 'i', 's', 'o', 'm'})
                     .error()
                     .message.id,
                 std::string("picture.none"));
    }
    /// The lens stands in a directory of its own, which the first one names.
    void theLensOfExif() {
        const auto jpeg = pictures::encodeJpeg(photo(usualShot()), 85).value();
        const auto with = [&](int pointer, int focal) {
            std::vector<std::uint8_t> exif{0xFF, 0xE1, 0, 52, 'E', 'x', 'i', 'f', 0, 0};
            const std::vector<std::uint8_t> tiff{
                'M', 'M', 0, 42, 0, 0, 0, 8,
                // One entry: the other directory.
                0, 1, 0x87, 0x69, 0, 4, 0, 0, 0, 1, 0, 0, 0, static_cast<std::uint8_t>(pointer), 0,
                0, 0, 0,
                // And its one entry, at 26.
                0, 1, 0xA4, 0x05, 0, 3, 0, 0, 0, 1, static_cast<std::uint8_t>(focal >> 8),
                static_cast<std::uint8_t>(focal & 255), 0, 0, 0, 0};
            exif.insert(exif.end(), tiff.begin(), tiff.end());
            exif[3] = static_cast<std::uint8_t>(exif.size() - 2);
            Bytes bytes(jpeg.begin(), jpeg.begin() + 2);
            bytes.insert(bytes.end(), exif.begin(), exif.end());
            bytes.insert(bytes.end(), jpeg.begin() + 2, jpeg.end());
            return pictures::inspect(bytes).value().focal35;
        };
        QCOMPARE(with(26, 52).value(), 52);
        QVERIFY(!with(26, 0));
        QVERIFY(!with(26, 60000));
        QVERIFY(!with(250, 52));  // beyond the segment
        QVERIFY(!with(8, 52));    // the first one again
        QVERIFY(!pictures::inspect(jpeg).value().focal35);
    }
    void filesThatAreNotWhole() {
        const auto jpeg = pictures::encodeJpeg(photo(usualShot()), 85).value();
        const auto id = [](const Bytes& bytes) {
            return pictures::decode(bytes).error().message.id;
        };
        const Bytes cut(jpeg.begin(), jpeg.begin() + static_cast<std::ptrdiff_t>(jpeg.size() / 2));
        QCOMPARE(id(cut), std::string("picture.cut"));
        auto closed = cut;
        closed.insert(closed.end(), {0xFF, 0xD9});
        QCOMPARE(id(closed), std::string("picture.damaged"));
        const Bytes heic{0,   0,   0, 24, 'f', 't', 'y', 'p', 'h', 'e',
                         'i', 'c', 0, 0,  0,   0,   'm', 'i', 'f', '1'};
        QCOMPARE(id(heic), std::string("picture.heic"));
        QCOMPARE(id({}), std::string("picture.none"));
        // A header that promises 300 megapixels.
        auto huge = jpeg;
        for (std::size_t i = 0; i + 9 < huge.size(); ++i) {
            if (huge[i] == 0xFF && huge[i + 1] == 0xC0) {
                huge[i + 5] = 0x40, huge[i + 6] = 0, huge[i + 7] = 0x49, huge[i + 8] = 0x3E;
                break;
            }
        }
        QCOMPARE(id(huge), std::string("picture.tooManyPixels"));
    }
    /// 64 megapixels in several scans would need 400 MB for their parts: refused before they are asked for.
    void aProgressivePictureIsBounded() {
        const auto jpeg = pictures::encodeJpeg(photo(usualShot()), 85).value();
        const auto header = [](const Bytes& bytes) {
            std::size_t i = 0;
            while (bytes[i] != 0xFF || bytes[i + 1] != 0xC0) ++i;
            return i;
        };
        auto progressive = jpeg;
        const auto at = header(jpeg);
        progressive[at + 1] = 0xC2;
        progressive[at + 5] = 0x1F, progressive[at + 6] = 0x40;
        progressive[at + 7] = 0x1F, progressive[at + 8] = 0x40;
        QCOMPARE(pictures::decode(progressive).error().message.id,
                 std::string("picture.progressive"));
        // A plain one holds a few rows at a time, and may have nothing to spare.
        pictures::Limits tight;
        tight.memory = 0;
        QVERIFY(pictures::decode(jpeg, tight));
    }
    void pngAndBack() {
        const auto taken = photo(usualShot());
        const auto back = pictures::decode(pictures::encodePng(taken).value()).value();
        QCOMPARE(back.width(), taken.width());
        for (int y = 0; y < taken.height(); y += 50) {
            QVERIFY(std::equal(back.row(y), back.row(y) + back.stride(), taken.row(y)));
        }
        QVERIFY(!pictures::encodePng({}));
        // A sink that is full is not a picture that cannot be written.
        struct Full final : ByteSink {
            Done write(std::span<const std::uint8_t>) override {
                return fail(Trouble::full, {"file.noRoom", {{"file", std::string("x.png")}}});
            }
        } full;
        QCOMPARE(pictures::writePng(taken, full).error().message.id, std::string("file.noRoom"));
        QVERIFY(!pictures::encodeJpeg({}, 90));
    }
};

QTEST_APPLESS_MAIN(TestFlatten)
#include "tst_flatten.moc"
