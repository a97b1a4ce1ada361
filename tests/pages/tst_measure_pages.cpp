// The mat, a moult photographed on it, filed by its tag and measured: by real clicks, drags and keys.
#include <QAccessible>
#include <QtTest>

#include "journal/fields.h"
#include "pages/stage.h"
#include "support/mat_jpeg.h"
#include "support/moult_photo.h"

using namespace burrow::test;
using burrow::Book;
using burrow::Deed;
using burrow::Draft;
using burrow::Fact;
using burrow::FactKind;
using burrow::Method;
using burrow::Millimetres;
using burrow::Result;
using burrow::SetDraft;
using burrow::Tag;
using burrow::ThingType;

namespace {

const QByteArray& taggedPhoto() {
    static const auto photo = matJpeg({.hasTag = true});
    return photo;
}

void act(Stage& stage, std::vector<Draft> drafts) {
    Deed deed;
    deed.compose = [drafts](Book&) -> Result<std::vector<Draft>> { return drafts; };
    stage.desk->act(stage.desk.get(), std::move(deed));
    stage.settle();
}

std::vector<Fact> measured(Stage& stage, const QString& number) {
    std::vector<Fact> facts;
    const auto subject = stage.resident(number)->subject().id;
    stage.desk->ask<std::vector<Fact>>(
        stage.desk.get(), [subject](Book& book) { return burrow::history(book, subject, 50); },
        [&](const Result<std::vector<Fact>>& found) { facts = found.value(); });
    stage.settle();
    std::erase_if(facts, [](const Fact& fact) {
        return fact.kind != FactKind::measured || !fact.body.about;
    });
    return facts;
}

QObject* modelOf(Stage& stage) {
    return stage.first("MeasurePhoto")->property("model").value<QObject*>();
}
/// "15.2 mm"
double length(Stage& stage) {
    return modelOf(stage)->property("length").toString().section(' ', 0, 0).toDouble();
}

/// Where a part of the picture is in the window.
QPoint placeOf(Stage& stage, const QPointF& part) {
    auto* view = stage.named("measured");
    const auto rect = view->property("contentRect").toRectF();
    return view
        ->mapToScene({rect.x() + part.x() * rect.width(), rect.y() + part.y() * rect.height()})
        .toPoint();
}

QPoint middleOf(QQuickItem* item) {
    return item->mapToScene({item->width() / 2, item->height() / 2}).toPoint();
}

/// A finger takes the end, goes there in small steps, and lets go. Says whether the loupe was up.
bool drag(Stage& stage, const QString& end, const QPoint& to, QRectF* shown = nullptr) {
    const auto from = middleOf(stage.named(end));
    QTest::mousePress(stage.window, Qt::LeftButton, {}, from);
    constexpr int steps = 8;
    for (int i = 1; i <= steps; ++i) {
        QTest::mouseMove(stage.window, from + (to - from) * i / steps);
        QTest::qWait(5);
    }
    auto* loupe = stage.first("MeasurePhoto")->findChild<QQuickItem*>("loupe");
    const bool wasUp = loupe != nullptr && loupe->isVisible() &&
                       loupe->mapToScene({0, loupe->height()}).y() <= to.y();
    if (shown != nullptr && loupe != nullptr && loupe->isVisible()) {
        *shown = loupe->mapRectToScene({0, 0, loupe->width(), loupe->height()});
    }
    QTest::mouseRelease(stage.window, Qt::LeftButton, {}, to);
    stage.settle();
    return wasUp;
}

/// To the page that measures the moult, with a photo on the mat that was saved by hand.
void measureOnTheMat(Stage& stage) {
    stage.photographer.prepare(taggedPhoto());
    stage.scanner.showPicture(QImage::fromData(taggedPhoto(), "JPEG"));
    stage.go("MoultPage", {{"subject", stage.id("044")}});
    stage.click("Photo");
    stage.click("Take the photo");
    QTRY_VERIFY(stage.has("Done"));
    stage.click("Done");
    stage.click("Save moult");
    QTRY_VERIFY(stage.has("The moult is saved."));
    stage.click("Measure it in the photo");
    QCOMPARE(stage.page(), QString("MeasurePage"));
    QTRY_VERIFY_WITH_TIMEOUT(stage.has("Drag both ends"), 30'000);
    stage.settle();
}

}  // namespace

class MeasurePages : public QObject {
    Q_OBJECT

private slots:
    void aMoultIsFiledByTheTagInItsPhoto() {
        Stage stage;
        const Tag tag{enclosureCode, burrow::tags::printedSide, stage.resident("044")->subject().id,
                      std::nullopt};
        act(stage, {SetDraft{ThingType::tag, burrow::tagThing(tag.code), burrow::toFields(tag)}});
        stage.photographer.prepare(taggedPhoto());
        stage.go("ScanPage");
        stage.click("Photograph a moult");
        QCOMPARE(stage.page(), QString("MoultPage"));
        QVERIFY2(stage.has("Whose moult is it?"), qPrintable(stage.words()));
        stage.click("Photo");
        QCOMPARE(stage.page(), QString("MoultCameraPage"));
        const auto frame = QImage::fromData(taggedPhoto(), "JPEG");
        stage.scanner.showPicture(frame.copy(0, 0, frame.width(), frame.height() / 2));
        QVERIFY2(stage.has("2 corners show of four"), qPrintable(stage.words()));
        stage.scanner.showPicture(frame);
        QVERIFY2(stage.has("Ready."), qPrintable(stage.words()));
        stage.click("Take the photo");
        QTRY_VERIFY_WITH_TIMEOUT(stage.has("Filed under 044"), 30'000);
        stage.click("Done");
        QVERIFY2(stage.has("Can be measured"), qPrintable(stage.words()));
        stage.click("Save moult");
        QTRY_VERIFY(stage.has("The moult is saved."));
    }

    /// Sent from another phone and opened with this program: filed by the tag like any other.
    void photosHandedOverOpenAMoult() {
        Stage stage;
        const Tag tag{enclosureCode, burrow::tags::printedSide, stage.resident("044")->subject().id,
                      std::nullopt};
        act(stage, {SetDraft{ThingType::tag, burrow::tagThing(tag.code), burrow::toFields(tag)}});
        QFile file(QString::fromStdString((stage.folder.path() / "sent.jpg").string()));
        QVERIFY(file.open(QIODevice::WriteOnly));
        file.write(taggedPhoto());
        file.close();
        stage.window->setProperty(
            "photos", QVariant::fromValue(QList<QUrl>{QUrl::fromLocalFile(file.fileName())}));
        stage.settle();
        QCOMPARE(stage.page(), QString("MoultPage"));
        QTRY_VERIFY_WITH_TIMEOUT(stage.has("Filed under 044"), 30'000);
        stage.click("Save moult");
        QTRY_VERIFY(stage.has("The moult is saved."));
    }

    /// A tag beside it was the wrong one: the filing is taken back and the number typed.
    void aWrongFilingIsTakenBack() {
        Stage stage;
        const Tag tag{enclosureCode, burrow::tags::printedSide, stage.resident("044")->subject().id,
                      std::nullopt};
        act(stage, {SetDraft{ThingType::tag, burrow::tagThing(tag.code), burrow::toFields(tag)}});
        stage.photographer.prepare(taggedPhoto());
        stage.scanner.showPicture(QImage::fromData(taggedPhoto(), "JPEG"));
        stage.go("MoultPage", {{"subject", ""}});
        stage.click("Photo");
        stage.click("Take the photo");
        QTRY_VERIFY_WITH_TIMEOUT(stage.has("Filed under 044"), 30'000);
        stage.click("Done");
        stage.click("Not this one");
        QVERIFY2(!stage.has("Filed under 044"), qPrintable(stage.words()));
        const auto before = stage.resident("001")->kept.digest.moultCount;
        stage.fill("Or type its number", "001");
        stage.click("It is this one's");
        stage.click("Save moult");
        QTRY_VERIFY(stage.has("The moult is saved."));
        QCOMPARE(stage.resident("001")->kept.digest.moultCount, before + 1);
    }

    void theNumberIsTypedWhereNoTagSaysIt() {
        Stage stage;
        stage.go("MoultPage", {{"subject", ""}});
        stage.fill("Or type its number", "9999");
        stage.click("It is this one's");
        QVERIFY2(stage.has("No animal has the number 9999"), qPrintable(stage.words()));
        stage.fill("Or type its number", "044");
        stage.click("It is this one's");
        QVERIFY(!stage.has("Whose moult is it?"));
        stage.click("Save moult");
        QTRY_VERIFY(stage.has("The moult is saved."));
    }

    /// The dried skin is photographed too, and no second moult is logged.
    void photosAreAddedToAMoult() {
        Stage stage;
        const auto before = stage.resident("044")->kept.digest.moultCount;
        measureOnTheMat(stage);
        stage.go("EntryPage", {{"entry", modelOf(stage)->property("moult")}});
        stage.click("Add photos");
        QCOMPARE(stage.page(), QString("MoultPage"));
        QVERIFY2(stage.has("More photos of the moult of"), qPrintable(stage.words()));
        QVERIFY(!stage.has("Leg span"));
        stage.photographer.prepare(moultPhoto({400, 300}));
        stage.click("Photo");
        stage.click("Take the photo");
        QTRY_VERIFY(stage.has("Done"));
        stage.click("Done");
        stage.click("Save the photos");
        QTRY_VERIFY2(stage.has("The photos are saved."), qPrintable(stage.words()));
        QCOMPARE(stage.resident("044")->kept.digest.moultCount, before + 1);
        stage.click("Measure it in the photo");
        QTRY_COMPARE(modelOf(stage)->property("photos").toList().size(), 2);
    }

    void endsAreDraggedUnderALoupe() {
        Stage stage;
        measureOnTheMat(stage);
        const auto ends = carapaceEnds();
        QVERIFY(drag(stage, "firstEnd", placeOf(stage, ends[0])));
        QVERIFY(drag(stage, "secondEnd", placeOf(stage, ends[1])));
        modelOf(stage)->setProperty("height", 0);
        // A window of 412 units shows a millimetre on some three of them.
        QVERIFY2(std::abs(length(stage) - 15) < 0.8, qPrintable(stage.words()));

        // The end that was dragged last has the keys.
        const double before = length(stage);
        for (int i = 0; i < 10; ++i) QTest::keyClick(stage.window, Qt::Key_Down);
        QVERIFY2(std::abs(length(stage) - before - 1) < 0.15, qPrintable(stage.words()));
        for (int i = 0; i < 10; ++i) QTest::keyClick(stage.window, Qt::Key_VolumeDown);
        QVERIFY2(std::abs(length(stage) - before) < 0.15, qPrintable(stage.words()));

        stage.click("Save the length");
        const auto facts = measured(stage, "044");
        QCOMPARE(facts.size(), std::size_t{1});
        QVERIFY(facts[0].body.carapace && facts[0].body.low && facts[0].body.high);
        QVERIFY2(stage.has("mm, from a photo"), qPrintable(stage.words()));
        stage.click("Undo");
        QVERIFY(measured(stage, "044").empty());
    }

    /// In the upper third there is no room above the finger: the loupe stands beside it.
    void theLoupeNeverLiesUnderTheFinger() {
        Stage stage;
        measureOnTheMat(stage);
        auto* view = stage.named("measured");
        for (const double across : {0.25, 0.5, 0.75}) {
            const auto to =
                view->mapToScene({across * view->width(), 0.2 * view->height()}).toPoint();
            QRectF shown;
            drag(stage, "firstEnd", to, &shown);
            QVERIFY(!shown.isEmpty());
            QVERIFY(QRectF(0, 0, 412, 915).contains(shown));
            QVERIFY2(!shown.marginsAdded(QMarginsF(20, 20, 20, 20)).contains(to),
                     qPrintable(QString("%1, %2").arg(to.x()).arg(shown.x())));
        }
    }

    /// Without hands on the screen: a screen reader's actions make the length longer and shorter.
    void aScreenReaderMovesTheEnds() {
        Stage stage;
        measureOnTheMat(stage);
        for (const auto* end : {"firstEnd", "secondEnd"}) {
            auto* actions =
                QAccessible::queryAccessibleInterface(stage.named(end))->actionInterface();
            QVERIFY(actions);
            actions->doAction(QAccessibleActionInterface::increaseAction());
            stage.settle();
        }
        const double before = length(stage);
        QVERIFY(before > 0);
        auto* last = QAccessible::queryAccessibleInterface(stage.named("secondEnd"));
        for (int i = 0; i < 10; ++i) {
            last->actionInterface()->doAction(QAccessibleActionInterface::decreaseAction());
        }
        stage.settle();
        QVERIFY2(std::abs(before - length(stage) - 1) < 0.15, qPrintable(stage.words()));
        const auto said = last->text(QAccessible::Description);
        QVERIFY2(said.startsWith(modelOf(stage)->property("length").toString()), qPrintable(said));
    }

    void theBarIsWrittenDownFromThePhoto() {
        Stage stage;
        measureOnTheMat(stage);
        stage.click("Write down its bar");
        QCOMPARE(stage.page(), QString("MatPage"));
        stage.fill("Length of the bar", "99.6");
        stage.click("Keep");
        QTRY_VERIFY2(stage.has("Its bar measures 99.6 mm"), qPrintable(stage.words()));
    }

    /// Dragging beside the ends moves the picture, not what is measured in it.
    void thePhotoIsMovedBesideTheEnds() {
        Stage stage;
        measureOnTheMat(stage);
        stage.click("Larger");
        stage.click("Larger");
        const auto before = stage.named("measured")->property("contentRect").toRectF();
        const auto from = modelOf(stage)->property("from").toPointF();
        const auto start = stage.named("measured")->mapToScene({40, 60}).toPoint();
        QTest::mousePress(stage.window, Qt::LeftButton, {}, start);
        for (int i = 1; i <= 6; ++i) QTest::mouseMove(stage.window, start + QPoint(8, 6) * i);
        QTest::mouseRelease(stage.window, Qt::LeftButton, {}, start + QPoint(48, 36));
        stage.settle();
        QVERIFY(stage.named("measured")->property("contentRect").toRectF() != before);
        QCOMPARE(modelOf(stage)->property("from").toPointF(), from);
    }

    void aPhotoWithoutMatIsRefusedAndALengthTyped() {
        Stage stage;
        stage.photographer.prepare(moultPhoto());
        stage.scanner.showPicture(moultPicture({1280, 960}));
        stage.go("MoultPage", {{"subject", stage.id("044")}});
        stage.click("Photo");
        stage.click("Take the photo");
        QTRY_VERIFY(stage.has("Done"));
        // Another photo can be taken at once: the camera page says so too.
        QTRY_VERIFY_WITH_TIMEOUT(stage.has("No mat and no tag can be read"), 30'000);
        QCOMPARE(stage.page(), QString("MoultCameraPage"));
        stage.click("Done");
        QTRY_VERIFY_WITH_TIMEOUT(stage.has("No mat and no tag can be read"), 30'000);
        stage.click("Save moult");
        QTRY_VERIFY(stage.has("The moult is saved."));
        stage.click("Measure it in the photo");
        QTRY_VERIFY_WITH_TIMEOUT(stage.has("This photo can't be measured."), 30'000);
        stage.fill("Or measured with a ruler", "12.4");
        stage.click("Save the length");
        const auto facts = measured(stage, "044");
        QCOMPARE(facts.size(), std::size_t{1});
        QVERIFY(facts[0].body.method == Method::ruler);
        QCOMPARE(facts[0].body.carapace, Millimetres{12.4});
    }

    void aLegSegmentAsksWhichOne() {
        Stage stage;
        measureOnTheMat(stage);
        QVERIFY(!stage.has("Of which leg"));
        stage.click("Leg segment");
        stage.click("Leg 4");
        stage.click("Tibia");
        QVERIFY2(stage.has("Drag both ends"), qPrintable(stage.words()));
        drag(stage, "firstEnd", placeOf(stage, carapaceEnds()[0]));
        drag(stage, "secondEnd", placeOf(stage, carapaceEnds()[1]));
        stage.click("Save the length");
        QCOMPARE(measured(stage, "044").at(0).body.segment, std::string("leg 4 tibia"));
    }

    void sizesAreShownOverTheMoults() {
        Stage stage;
        const auto subject = stage.resident("044")->subject().id;
        burrow::FactBody fang;
        fang.fang = Millimetres{4.1};
        fang.method = Method::ruler;
        act(stage, {burrow::FactDraft{subject, FactKind::measured, fang, std::nullopt}});
        stage.go("AnimalPage", {{"subject", stage.id("044")}});
        stage.click("Its sizes");
        QCOMPARE(stage.page(), QString("SizesPage"));
        QVERIFY2(stage.has("Fang") && stage.has("4.1 mm"), qPrintable(stage.words()));
        QVERIFY2(stage.has("by ruler"), qPrintable(stage.words()));
    }

    void aMatIsPrintedAndItsBarMeasured() {
        Stage stage;
        const auto folder = stage.folder.path() / "to print";
        std::filesystem::create_directories(folder);
        stage.go("RoomPage");
        stage.click("Mat for moults");
        QCOMPARE(stage.page(), QString("MatPage"));
        QVERIFY(stage.has("Why a mat"));
        stage.click("A4");
        stage.click("Save PDF");
        stage.chooseFolder(folder);
        QTRY_VERIFY2(stage.has("Saved as mat-A4-"), qPrintable(stage.words()));
        stage.click("Mat ");
        stage.fill("Length of the bar", "12");
        stage.click("Keep");
        QVERIFY2(stage.has("100 mm but for"), qPrintable(stage.words()));
        stage.fill("Length of the bar", "99.6");
        stage.click("Keep");
        QTRY_VERIFY2(stage.has("Its bar measures 99.6 mm"), qPrintable(stage.words()));
    }
};

QTEST_MAIN(MeasurePages)
#include "tst_measure_pages.moc"
