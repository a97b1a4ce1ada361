// Photos of moults side by side: at the same scale where mats say it, and in words where nothing does.
#include <QFile>
#include <QtTest>
#include <cmath>

#include "fake/fake_files.h"
#include "files/developer.h"
#include "ports/picture_view.h"
#include "ports/scale_link.h"
#include "room/mats.h"
#include "support/mat_jpeg.h"
#include "support/moult_photo.h"
#include "viewmodels/desk_fixture.h"
#include "viewmodels/lookmoultmodel.h"

using namespace burrow;
using namespace burrow::test;

namespace {

const QByteArray& nearPhoto() {
    static const auto photo = matJpeg({.name = "7Q2M"});
    return photo;
}

/// The same sheet by a camera that sees it larger and from another side.
const QByteArray& largerPhoto() {
    static const auto photo = [] {
        auto shot = smallShot(4);
        shot.megapixels = 2.4;
        shot.fill = 0.8;
        shot.azimuth = 120;
        return matJpeg({.name = "7Q2M"}, shot);
    }();
    return photo;
}

const QByteArray& a4Photo() {
    static const auto photo = [] {
        auto shot = smallShot();
        shot.megapixels = 2.4;
        SheetOptions coarse{.name = "8K3N"};
        coarse.perMm = 12;
        return bytesFrom(developed(matSheet(measure::MatPaper::a4, coarse), shot,
                                   cameraOf(shot, seenOf(measure::MatPaper::a4))));
    }();
    return photo;
}

/// The model between two views, as the page has it.
class Bench {
public:
    Bench() : darkroom(files, developer) {
        at.openRoom();
        for (auto* view : {&left, &right}) view->setSize({400, 300});
        link.setFirst(&left);
        link.setSecond(&right);
        QObject::connect(&model, &LookMoultModel::keyChanged, &model, [this] { show(); });
        QObject::connect(&model, &LookMoultModel::changed, &model, [this] { show(); });
    }

    QVariantMap photo(const char* name, const QByteArray& bytes) {
        const auto path = QString::fromStdString((at.folder.path() / name).string());
        QFile file(path);
        if (file.open(QIODevice::WriteOnly)) file.write(bytes);
        return {{"files", QStringList{path}}, {"name", QString(name)}};
    }
    void open(const QVariantList& photos, const QVariantList& earlier = {},
              const QVariantList& drawings = {}) {
        model.setPhotos(photos);
        model.setEarlier(earlier);
        model.setDrawings(drawings);
        model.setDarkroom(&darkroom);
        model.setDesk(&at.desk);
        wait();
    }
    void wait() { QTRY_VERIFY_WITH_TIMEOUT(!model.isLooking(), 30'000); }

    DeskFixture at;
    FakeFiles files;
    QtDeveloper developer;
    Darkroom darkroom;
    PictureView left;
    PictureView right;
    ScaleLink link;
    LookMoultModel model;

private:
    void show() {
        left.setKey(model.key());
        left.setPicture(model.picture());
        left.setUnit(model.unit());
        right.setKey(model.besideKey());
        right.setPicture(model.besidePicture());
        right.setUnit(model.besideUnit());
    }
};

/// How long the drawn carapace is across, in units of the view: 12 mm of the sheet. Edges lie half-way
/// between its grey and the paper, between pixels by straight lines.
double acrossOnScreen(const PictureView& view, measure::MatPaper paper) {
    const auto& image = view.picture().image();
    const auto& place = measure::layoutOf(paper).moult;
    // Half a millimetre below the middle no leg is in the way.
    const double perMm = image.width() / (place.width.value + 8);
    const int y = static_cast<int>((place.height.value / 2 + 4 + 0.6) * perMm);
    const int middle = image.width() / 2;
    const auto grey = [&](int x) { return static_cast<double>(qGreen(image.pixel(x, y))); };
    const double edge = (grey(middle) + grey(middle + static_cast<int>(9 * perMm))) / 2;
    const auto crossing = [&](int step) {
        int x = middle;
        while (x > 0 && x + 1 < image.width() && grey(x) < edge) x += step;
        const double inner = grey(x - step), outer = grey(x);
        return x - step + step * (edge - inner) / (outer - inner);
    };
    return (crossing(1) - crossing(-1)) * view.pixelSize();
}

void isNear(double value, double wanted, double part) {
    QVERIFY2(std::abs(value - wanted) <= part * wanted,
             qPrintable(QString("%1 and not %2").arg(value).arg(wanted)));
}

}  // namespace

class TestLookMoult : public QObject {
    Q_OBJECT

private slots:
    void matsFromTwoDistancesAreEquallyLarge() {
        Bench bench;
        bench.open({bench.photo("new", nearPhoto())}, {bench.photo("old", largerPhoto())});
        QVERIFY(bench.model.unit() > 0 && bench.model.besideUnit() > 0);
        QVERIFY(std::abs(bench.model.unit() - bench.model.besideUnit()) > 1);
        QVERIFY(bench.link.isLinked());
        QCOMPARE(bench.model.scaleText(), QString("Both at the same scale"));
        isNear(bench.left.perMm(), bench.right.perMm(), 1e-9);
        const auto across = [&](const PictureView& view) {
            return acrossOnScreen(view, measure::MatPaper::a5);
        };
        isNear(across(bench.left), across(bench.right), 0.01);
        // Whichever is moved, the other goes along; and 12 mm are 12 mm by the bar.
        bench.right.setZoom(3);
        isNear(bench.left.perMm(), bench.right.perMm(), 1e-9);
        isNear(across(bench.left), across(bench.right), 0.01);
        bench.left.closer();
        isNear(bench.right.perMm(), bench.left.perMm(), 1e-9);
        isNear(across(bench.left), 12.0 / 5 * bench.left.barLength(), 0.02);
    }

    void aLargeSheetBesideASmallOne() {
        Bench bench;
        bench.open({bench.photo("a5", nearPhoto())}, {bench.photo("a4", a4Photo())});
        QVERIFY2(bench.model.besideUnit() > 0, qPrintable(bench.model.scaleText()));
        bench.link.whole();
        // All of both is seen: the small sheet does not fill its pane then.
        isNear(bench.left.perMm(), bench.right.perMm(), 1e-9);
        QVERIFY(bench.left.zoom() < 1);
        QCOMPARE(bench.right.zoom(), 1.0);
        isNear(acrossOnScreen(bench.left, measure::MatPaper::a5),
               acrossOnScreen(bench.right, measure::MatPaper::a4), 0.015);
        bench.left.showMm(9);
        isNear(bench.left.perMm(), 300.0 / 9, 1e-9);
        isNear(bench.right.perMm(), 300.0 / 9, 1e-9);
    }

    void oneWithoutAMatSaysSo() {
        Bench bench;
        bench.open({bench.photo("plain", moultPhoto({400, 300}))},
                   {bench.photo("mat", nearPhoto()), bench.photo("plain too", moultPhoto())});
        QVERIFY2(bench.model.scaleText().startsWith("This photo has no mat"),
                 qPrintable(bench.model.scaleText()));
        QCOMPARE(bench.model.unit(), 0.0);
        QVERIFY(!bench.link.isLinked());
        // Each by itself.
        bench.right.setZoom(4);
        QCOMPARE(bench.left.zoom(), 1.0);
        QCOMPARE(bench.left.barLength(), 0.0);
        bench.model.next();
        bench.wait();
        QVERIFY(bench.model.scaleText().startsWith("Neither photo"));
    }

    /// 97.5 mm instead of 100: what is 1 mm on that sheet is 0.975 mm of the world.
    void theBarOfAMatCounts() {
        Bench bench;
        bench.open({bench.photo("new", nearPhoto())}, {bench.photo("old", largerPhoto())});
        const double before = bench.model.unit();
        const PrintedMat mat{"7Q2M", measure::MatPaper::a5, Millimetres{97.5}};
        Deed deed;
        deed.compose = [mat](Book& book) -> Result<std::vector<Draft>> {
            return std::vector<Draft>{SetDraft{ThingType::book, book.id().uuid, matFields(mat)}};
        };
        bench.at.desk.act(&bench.at.desk, std::move(deed));
        bench.at.settle();
        isNear(bench.model.unit(), before / 0.975, 1e-9);
        QVERIFY(bench.link.isLinked());
        isNear(bench.left.perMm(), bench.right.perMm(), 1e-9);
    }

    void printersOfTwoMatsMayDiffer() {
        Bench bench;
        bench.open({bench.photo("new", nearPhoto())}, {bench.photo("old", a4Photo())});
        // Two percent for either printer, as the rules have it: 1.96 times their root of squares.
        QVERIFY2(bench.model.scaleText().startsWith("Both at the same scale, to 6 %"),
                 qPrintable(bench.model.scaleText()));
        Deed deed;
        deed.compose = [](Book& book) -> Result<std::vector<Draft>> {
            auto fields = matFields({"7Q2M", measure::MatPaper::a5, Millimetres{99.6}});
            fields.merge(matFields({"8K3N", measure::MatPaper::a4, Millimetres{100.1}}));
            return std::vector<Draft>{SetDraft{ThingType::book, book.id().uuid, fields}};
        };
        bench.at.desk.act(&bench.at.desk, std::move(deed));
        bench.at.settle();
        QCOMPARE(bench.model.scaleText(), QString("Both at the same scale"));
    }

    void aTagAloneTellsItAboutRight() {
        Bench bench;
        auto shot = smallShot();
        const MatBox seen{{20}, {15}, {60}, {50}};
        const auto photo = bytesFrom(developed(tagOnly(7, 14), shot, cameraOf(shot, seen)));
        bench.open({bench.photo("tag", photo)}, {bench.photo("mat", nearPhoto())});
        QVERIFY2(bench.model.scaleText().startsWith("Both at about the same scale"),
                 qPrintable(bench.model.scaleText()));
        // The camera's own pixels in a millimetre, in the middle of the tag.
        const auto stretch = measure::stretchAt(cameraOf(shot, seen), {{50}, {40}});
        isNear(bench.model.unit(), std::sqrt(stretch.most * stretch.least), 0.01);
    }

    void whatStandsBesideItIsSteppedThrough() {
        Bench bench;
        const auto plain = [&](const char* name, int shade) {
            return bench.photo(name, moultPhoto({400, 300}, shade));
        };
        const QVariantMap drawing{{"drawing", "where"}, {"name", "Where to look"}};
        bench.model.setEarlierAt(0);
        bench.open({plain("fresh", 90), plain("dried", 120)}, {plain("old", 150)}, {drawing});
        QVERIFY(bench.model.hasSeveralPhotos() && bench.model.hasSeveralBeside());
        QCOMPARE(bench.model.name(), QString("fresh"));
        QCOMPARE(bench.model.besideName(), QString("old"));
        bench.model.next();
        QCOMPARE(bench.model.besideName(), QString("dried"));  // and never beside itself
        bench.model.next();
        QCOMPARE(bench.model.drawing(), QString("where"));
        QVERIFY(bench.model.isDrawing() && bench.model.scaleText().isEmpty());
        QVERIFY(bench.model.besidePicture().isEmpty());
        bench.model.before();
        bench.model.nextPhoto();
        QCOMPARE(bench.model.name(), QString("dried"));
        QVERIFY(bench.model.besideName() != QString("dried"));
        bench.wait();
        QVERIFY(!bench.model.picture().isEmpty());
    }

    void aPhotoIsLookedAtAgainWhereItWasLeft() {
        Bench bench;
        bench.open({bench.photo("fresh", moultPhoto({400, 300}, 90)),
                    bench.photo("dried", moultPhoto({400, 300}, 120))});
        bench.left.zoomAt(4, {100, 80});
        const auto was = bench.left.contentRect();
        bench.model.nextPhoto();
        bench.wait();
        QCOMPARE(bench.left.zoom(), 1.0);
        bench.model.nextPhoto();
        bench.wait();
        QCOMPARE(bench.left.contentRect(), was);
    }

    void contrastIsMadeBesideTheInterface() {
        Bench bench;
        bench.open({bench.photo("fresh", moultPhoto({400, 300}))});
        const auto plain = bench.model.picture();
        bench.left.setZoom(2);
        bench.model.setContrast(true);
        QVERIFY(bench.model.picture() == plain);  // as it is, until it is made
        bench.wait();
        QVERIFY(!(bench.model.picture() == plain));
        QCOMPARE(bench.model.picture().image().size(), plain.image().size());
        QCOMPARE(bench.left.zoom(), 2.0);  // the same photo in another light
        bench.model.setContrast(false);
        QVERIFY(bench.model.picture() == plain);
    }

    void aPhotoThatIsGoneSaysSo() {
        Bench bench;
        auto photo = bench.photo("fresh", moultPhoto({400, 300}));
        photo["files"] = QStringList{"/nowhere/fresh.jpg"};
        bench.open({photo});
        QVERIFY(bench.model.picture().isEmpty());
        QVERIFY2(bench.model.trouble().contains("not on this device"),
                 qPrintable(bench.model.trouble()));
    }
};

QTEST_MAIN(TestLookMoult)
#include "tst_look_moult.moc"
