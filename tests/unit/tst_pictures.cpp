// Pictures are looked over before they are decoded. The bytes are put together here from the
// standards: JPEG marker segments (ISO/IEC 10918-1, annex B), EXIF (CIPA DC-008), PNG chunks
// (ISO/IEC 15948).
#include <QtTest>

#include "pictures/inspect.h"
#include "pictures/store.h"
#include "support/book.h"

using namespace burrow;
using namespace burrow::pictures;

namespace {

void append(Bytes& bytes, std::initializer_list<int> more) {
    for (const int byte : more) bytes.push_back(static_cast<std::uint8_t>(byte));
}

/// APP1 with a TIFF directory of orientation and, if wanted, a GPS directory; either byte order.
Bytes exifSegment(int orientation, bool location, bool little) {
    Bytes tiff;
    const auto two = [&](int value) {
        little ? append(tiff, {value & 0xFF, value >> 8})
               : append(tiff, {value >> 8, value & 0xFF});
    };
    const auto four = [&](int value) {
        if (little) {
            two(value & 0xFFFF);
            two(value >> 16);
        } else {
            two(value >> 16);
            two(value & 0xFFFF);
        }
    };
    append(tiff, {little ? 'I' : 'M', little ? 'I' : 'M'});
    two(42);
    four(8);
    two(location ? 2 : 1);
    two(0x0112), two(3), four(1), two(orientation), two(0);
    if (location) two(0x8825), two(4), four(1), four(200);
    four(0);
    Bytes segment;
    const auto length = static_cast<int>(tiff.size()) + 8;
    append(segment, {0xFF, 0xE1, length >> 8, length & 0xFF, 'E', 'x', 'i', 'f', 0, 0});
    segment.insert(segment.end(), tiff.begin(), tiff.end());
    return segment;
}

Bytes jpeg(int width, int height, const Bytes& exif = {}) {
    Bytes bytes;
    append(bytes, {0xFF, 0xD8});
    bytes.insert(bytes.end(), exif.begin(), exif.end());
    append(bytes, {0xFF, 0xC0, 0, 11, 8, height >> 8, height & 0xFF, width >> 8, width & 0xFF, 1, 1,
                   0x11, 0});
    append(bytes, {0xFF, 0xDA, 0, 8, 1, 1, 0, 0, 63, 0});
    append(bytes, {0x12, 0xFF, 0x00, 0x34, 0xFF, 0xD0, 0x56});  // stuffing and a restart marker
    append(bytes, {0xFF, 0xD9});
    return bytes;
}

Bytes png(int width, int height) {
    Bytes bytes;
    append(bytes, {0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n'});
    append(bytes, {0,   0,   0,           13,
                   'I', 'H', 'D',         'R',
                   0,   0,   width >> 8,  width & 0xFF,
                   0,   0,   height >> 8, height & 0xFF,
                   8,   0,   0,           0,
                   0,   0,   0,           0,
                   0});
    append(bytes, {0, 0, 0, 0, 'I', 'E', 'N', 'D', 0xAE, 0x42, 0x60, 0x82});
    return bytes;
}

/// Stands in for the platform's decoder.
class EchoDeveloper final : public Developer {
public:
    Result<Developed> develop(std::span<const std::uint8_t> bytes,
                              const PictureInfo& info) override {
        if (isBroken) return fail(Trouble::badInput, {"picture.damaged"});
        return Developed{Bytes(bytes.begin(), bytes.end()), Bytes{1, 2, 3}, info.width,
                         info.height};
    }
    Result<Bytes> reduce(std::span<const std::uint8_t> bytes, const PictureInfo& /*info*/,
                         int /*side*/) override {
        return Bytes(bytes.begin(), bytes.end());
    }
    bool isBroken = false;
};

}  // namespace

class TestPictures : public QObject {
    Q_OBJECT

private slots:
    void readsJpeg() {
        for (const bool little : {true, false}) {
            const auto info = inspect(jpeg(4000, 3000, exifSegment(6, true, little))).value();
            QCOMPARE(info.width, 4000);
            QCOMPARE(info.height, 3000);
            QCOMPARE(info.orientation, 6);
            QVERIFY(info.hasLocation);
        }
        const auto plain = inspect(jpeg(640, 480)).value();
        QCOMPARE(plain.orientation, 1);
        QVERIFY(!plain.hasLocation);
        QCOMPARE(inspect(jpeg(640, 480, exifSegment(99, false, true)))->orientation, 1);
    }

    void readsPng() {
        const auto info = inspect(png(300, 200)).value();
        QCOMPARE(info.format, Format::png);
        QCOMPARE(info.width, 300);
        QCOMPARE(info.height, 200);
    }

    /// Cut anywhere, the file is refused and never read past its end (the sanitizers watch).
    void everyCutIsNoticed() {
        for (const auto& whole : {jpeg(640, 480, exifSegment(3, true, true)), png(30, 20)}) {
            for (std::size_t size = 0; size < whole.size(); ++size) {
                QVERIFY(!inspect(std::span(whole).first(size)));
            }
        }
    }

    void everyFlippedByteIsSurvived() {
        const auto whole = jpeg(640, 480, exifSegment(3, true, true));
        for (std::size_t at = 0; at < whole.size(); ++at) {
            for (const int value : {0x00, 0xFF, 0x7F}) {
                auto bytes = whole;
                bytes[at] = static_cast<std::uint8_t>(value);
                const auto info = inspect(bytes);
                QVERIFY(!info || info->pixels() > 0);
            }
        }
    }

    void limits() {
        QCOMPARE(inspect(jpeg(10'000, 10'000)).error().message.id,
                 std::string("picture.tooManyPixels"));
        QCOMPARE(inspect(jpeg(640, 480), Limits{10, 1'000'000}).error().message.id,
                 std::string("picture.tooManyBytes"));
        QCOMPARE(inspect(bytesOf("GIF89a and so on")).error().message.id,
                 std::string("picture.none"));
        QCOMPARE(inspect(Bytes{}).error().message.id, std::string("picture.none"));
    }

    void storeKeepsBothCopies() {
        const test::ScratchFolder folder;
        DeviceFiles files;
        EchoDeveloper developer;
        Store store(Store::folderFor(folder.path() / "a.book"), files);
        const auto bytes = jpeg(64, 48);
        const auto photo = store.keep(bytes, developer).value();
        QCOMPARE(photo.original, Sha256::of(bytes));
        QVERIFY(store.isIntact(photo.picture));
        QVERIFY(files.exists(store.originalPath(photo.original)));
        QVERIFY(files.exists(store.thumbnailPath(photo.picture)));
        QVERIFY(files.write(store.picturePath(photo.picture), Bytes{1}));
        QVERIFY(!store.isIntact(photo.picture));
    }

    void storeKeepsNothingOfWhatItRefuses() {
        const test::ScratchFolder folder;
        DeviceFiles files;
        EchoDeveloper developer;
        developer.isBroken = true;
        Store store(folder.path() / "photos", files);
        QVERIFY(!store.keep(jpeg(64, 48), developer));
        QVERIFY(!store.keep(bytesOf("no picture"), developer));
        QVERIFY(!files.exists(folder.path() / "photos"));
    }
};

QTEST_APPLESS_MAIN(TestPictures)
#include "tst_pictures.moc"
