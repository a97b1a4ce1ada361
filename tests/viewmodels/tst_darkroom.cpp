// The darkroom: pictures looked over and kept in a thread of its own.
#include <QBuffer>

#include "fake/fake_files.h"
#include "files/developer.h"
#include "files/picture_file.h"
#include "ports/darkroom.h"
#include "support/book.h"
#include "support/moult_photo.h"

#include <QtTest>

using namespace burrow;
using namespace burrow::test;

namespace {

Bytes bytesOf(const QByteArray& data) { return {data.begin(), data.end()}; }

class Bench {
public:
    Bench() : darkroom(files, developer) {}

    Result<Negative> lookOver(const QByteArray& data) {
        std::optional<Result<Negative>> answer;
        darkroom.lookOver(&context, bytesOf(data),
                          [&](Result<Negative> negative) { answer = std::move(negative); });
        return QTest::qWaitFor([&] { return answer.has_value(); })
                   ? *std::move(answer)
                   : Result<Negative>(fail(Trouble::inputOutput, {"no answer"}));
    }
    Darkroom::Kept keep(std::vector<Negative> negatives) {
        std::optional<Darkroom::Kept> answer;
        darkroom.keep(&context, folder.path() / "photos", std::move(negatives),
                      [&](Darkroom::Kept kept) { answer = std::move(kept); });
        return QTest::qWaitFor([&] { return answer.has_value(); }) ? *std::move(answer)
                                                                   : Darkroom::Kept();
    }
    [[nodiscard]] pictures::Store store() { return {folder.path() / "photos", files}; }

    ScratchFolder folder;
    FakeFiles files;
    QtDeveloper developer;
    QObject context;
    Darkroom darkroom;
};

/// The picture turned by a quarter, and an EXIF segment that says so and where it was taken: CIPA
/// DC-008, tags 0x0112 and 0x8825.
QByteArray turnedPhoto(const QImage& upright) {
    auto jpeg = jpegOf(upright.transformed(QTransform().rotate(-90)));
    QByteArray exif("Exif\0\0II*\0\x08\0\0\0", 14);
    exif += QByteArray("\x02\0", 2);
    exif += QByteArray("\x12\x01\x03\0\x01\0\0\0\x06\0\0\0", 12);  // turn right
    exif += QByteArray("\x25\x88\x04\0\x01\0\0\0\0\0\0\0", 12);    // where
    exif += QByteArray(4, '\0');
    const auto length = static_cast<int>(exif.size()) + 2;
    QByteArray segment("\xFF\xE1");
    segment += static_cast<char>(length >> 8);
    segment += static_cast<char>(length & 0xFF);
    return jpeg.insert(2, segment + exif);
}

}  // namespace

class TestDarkroom : public QObject {
    Q_OBJECT

private slots:
    void thumbnailsFitAndKeepTheirShape() {
        Bench bench;
        const auto negative = bench.lookOver(moultPhoto({1200, 900}));
        QVERIFY(negative);
        QCOMPARE(QImage::fromData(negative->thumbnail, "JPEG").size(), QSize(320, 240));
    }

    void turnedPhotosAreKeptUprightAndWithoutAPlace() {
        Bench bench;
        const auto upright = moultPicture({800, 600});
        const auto photo = turnedPhoto(upright);
        QVERIFY(pictures::inspect(bytesOf(photo))->hasLocation);
        const auto negative = bench.lookOver(photo).value();
        QCOMPARE(QImage::fromData(negative.thumbnail, "JPEG").size(), QSize(320, 240));
        const auto kept = bench.keep({negative}).at(0).value();
        const auto copy =
            bench.files.read(bench.store().picturePath(kept.picture), 9'000'000).value();
        const auto info = pictures::inspect(copy).value();
        QCOMPARE(info.orientation, 1);
        QCOMPARE(info.width, 800);
        QVERIFY(!info.hasLocation);
        const auto original =
            bench.files.read(bench.store().originalPath(kept.original), 9'000'000);
        QVERIFY(original.value() == bytesOf(photo));
    }

    void answersKeepTheirOrder() {
        Bench bench;
        std::vector<Negative> negatives;
        std::vector<Sha256> originals;
        for (int i = 0; i < 4; ++i) {
            const auto photo = moultPhoto({200, 150}, 60 + 20 * i);
            originals.push_back(Sha256::of(bytesOf(photo)));
            negatives.push_back(bench.lookOver(photo).value());
        }
        const auto kept = bench.keep(negatives);
        QCOMPARE(kept.size(), 4U);
        for (std::size_t i = 0; i < kept.size(); ++i) QCOMPARE(kept[i]->original, originals[i]);
    }

    void thatOneCannotBeKeptIsSaidOfThatOne() {
        Bench bench;
        const auto good = bench.lookOver(moultPhoto({200, 150})).value();
        auto cut = good;
        cut.bytes = std::make_shared<const Bytes>(good.bytes->begin(), good.bytes->begin() + 900);
        const auto kept = bench.keep({cut, good});
        QVERIFY(!kept.at(0));
        QCOMPARE(kept.at(0).error().message.id, std::string("picture.cut"));
        QVERIFY(kept.at(1) && bench.store().isIntact(kept.at(1)->picture));
    }

    void aFullDeviceLeavesNoPicture() {
        Bench bench;
        const auto negative = bench.lookOver(moultPhoto({200, 150})).value();
        bench.files.setWeather(FakeFiles::Weather::noRoom);
        const auto kept = bench.keep({negative});
        QCOMPARE(kept.at(0).error().trouble, Trouble::full);
        QVERIFY(!std::filesystem::exists(bench.folder.path() / "photos"));
        bench.files.setWeather(FakeFiles::Weather::fair);
        QVERIFY(bench.keep({negative}).at(0));
    }

    void whoHasGoneIsNotTold() {
        Bench bench;
        bool told = false;
        {
            QObject gone;
            bench.darkroom.lookOver(&gone, bytesOf(moultPhoto({200, 150})),
                                    [&](const Result<Negative>&) { told = true; });
        }
        QVERIFY(bench.lookOver(moultPhoto({200, 150})));  // comes after it
        QVERIFY(!told);
    }

    void endsWhileBusy() {
        QObject context;
        for (int i = 0; i < 5; ++i) {
            Bench bench;
            bench.darkroom.lookOver(&context, bytesOf(moultPhoto({600, 400})),
                                    [](const Result<Negative>&) { QFAIL("nobody is there"); });
        }
        QCoreApplication::processEvents();
    }
};

QTEST_MAIN(TestDarkroom)
#include "tst_darkroom.moc"
