// Whose moult a photo shows: by the tag that lies in it, or as the keeper says.
#include <QSignalSpy>

#include "journal/fields.h"
#include "support/mat_jpeg.h"
#include "viewmodels/mathintmodel.h"
#include "viewmodels/moult_bench.h"

using namespace burrow;
using namespace burrow::test;

namespace {

/// An enclosure's tag beside a moult on the mat.
const QByteArray& taggedPhoto() {
    static const auto photo = matJpeg({.hasTag = true});
    return photo;
}

void hang(DeskFixture& at, const Tag& tag) {
    Deed deed;
    deed.compose = [tag](Book&) -> Result<std::vector<Draft>> {
        return std::vector<Draft>{SetDraft{ThingType::tag, tagThing(tag.code), toFields(tag)}};
    };
    at.desk.act(&at.desk, std::move(deed));
    at.settle();
}
void hangOn(DeskFixture& at, SubjectId subject) {
    hang(at, {enclosureCode, tags::printedSide, subject, std::nullopt});
}

/// Photographs with the camera, and waits until the photo was read for tags.
void photograph(MoultBench& bench, const QByteArray& photo) {
    bench.photographer.prepare(photo);
    const auto before = bench.model.photos().size();
    bench.model.takePhoto();
    QTRY_COMPARE(bench.model.photos().size(), before + 1);
    QTRY_VERIFY_WITH_TIMEOUT(
        bench.model.photos().last().toMap()["state"].toString() != "Reading it", 30'000);
    bench.at.settle();
}

}  // namespace

class TestMoultFiling : public QObject {
    Q_OBJECT

private slots:
    void aTagInViewFilesThePhoto() {
        MoultBench bench;
        hangOn(bench.at, bench.at.pulchra);
        bench.model.setSubject({});
        QVERIFY(bench.model.isUnfiled() && !bench.model.isMissing());
        photograph(bench, taggedPhoto());
        QCOMPARE(bench.model.tag(), QString("118"));
        QCOMPARE(bench.model.filing()->note(), QString("Filed under 118 by the tag in the photo."));
        QCOMPARE(bench.model.photos().first().toMap()["state"].toString(),
                 QString("Can be measured"));
        bench.save();
        QCOMPARE(bench.facts(FactKind::photo, bench.at.pulchra).size(), 1U);
        QVERIFY(bench.facts(FactKind::photo).empty());
        QCOMPARE(bench.model.toMeasure(), bench.model.toSex());
    }

    /// The tag of a tub that only stood beside it.
    void aFilingIsTakenBack() {
        MoultBench bench;
        hangOn(bench.at, bench.at.pulchra);
        bench.model.setSubject({});
        photograph(bench, taggedPhoto());
        QCOMPARE(bench.model.tag(), QString("118"));
        bench.model.filing()->release();
        QVERIFY(bench.model.isUnfiled() && bench.model.filing()->note().isEmpty());
        photograph(bench, matJpeg({.hasTag = true}, smallShot(12)));
        QVERIFY(bench.model.isUnfiled() && bench.model.filing()->error().isEmpty());
        bench.model.filing()->whose("214");
        bench.at.settle();
        QCOMPARE(bench.model.tag(), QString("214"));
        bench.save();
        QCOMPARE(bench.facts(FactKind::photo).size(), 2U);
    }

    void nothingIsSavedForNobody() {
        MoultBench bench;
        bench.model.setSubject({});
        photograph(bench, moultPhoto({400, 300}));
        bench.model.save();
        QVERIFY(!bench.model.isBusy());
        QCOMPARE(bench.model.photos().size(), 1);
    }

    void anotherAnimalsTagIsAsked() {
        MoultBench bench;
        hangOn(bench.at, bench.at.pulchra);
        photograph(bench, taggedPhoto());
        QVERIFY2(bench.model.filing()->question().contains("118"),
                 qPrintable(bench.model.filing()->question()));
        QCOMPARE(bench.model.filing()->choices().size(), 2);
        QCOMPARE(bench.model.tag(), QString("214"));
        bench.model.filing()->choose(1);  // it is 214's
        QVERIFY(bench.model.filing()->question().isEmpty());
        QCOMPARE(bench.model.tag(), QString("214"));
        photograph(bench, taggedPhoto());
        QVERIFY(bench.model.filing()->question().isEmpty());  // that was answered

        MoultBench other;
        hangOn(other.at, other.at.pulchra);
        photograph(other, taggedPhoto());
        other.model.filing()->choose(0);
        QCOMPARE(other.model.tag(), QString("118"));
    }

    void itsOwnTagAsksNothing() {
        MoultBench bench;
        hangOn(bench.at, bench.at.hamorii);
        photograph(bench, taggedPhoto());
        QVERIFY(bench.model.filing()->question().isEmpty());
        QVERIFY(bench.model.filing()->note().isEmpty());
    }

    void aTagThatIsNotInTheBookSaysSo() {
        MoultBench bench;
        bench.model.setSubject({});
        photograph(bench, taggedPhoto());
        QVERIFY2(bench.model.filing()->error().contains("not in this book"),
                 qPrintable(bench.model.filing()->error()));
        bench.model.filing()->whose("999");
        bench.at.settle();
        QVERIFY2(bench.model.filing()->error().contains("No animal has the number 999"),
                 qPrintable(bench.model.filing()->error()));
        bench.model.filing()->whose(" 118 ");
        bench.at.settle();
        QCOMPARE(bench.model.tag(), QString("118"));
        QVERIFY(bench.model.filing()->error().isEmpty());
    }

    void whyAPhotoCannotBeMeasuredIsSaid() {
        MoultBench bench;
        photograph(bench, moultPhoto({400, 300}));
        const auto shown = bench.model.photos().first().toMap();
        QCOMPARE(shown["state"].toString(), QString("Can't be measured"));
        QVERIFY2(shown["trouble"].toString().contains("No mat and no tag"),
                 qPrintable(shown["trouble"].toString()));
    }

    void driedPhotosAreMarked() {
        MoultBench bench;
        bench.photograph();
        bench.model.setDried(true);
        bench.photograph(2);
        bench.model.turnDried(2);
        bench.model.turnDried(9);
        QCOMPARE(bench.model.photos().at(1).toMap()["dried"].toBool(), true);
        bench.save();
        int dried = 0;
        for (const auto& photo : bench.facts(FactKind::photo)) {
            dried += photo.body.dried.value_or(false);
        }
        QCOMPARE(bench.facts(FactKind::photo).size(), 3U);
        QCOMPARE(dried, 1);
    }

    /// The camera's frames, from an empty table to the whole mat.
    void theHintSaysWhatIsMissing() {
        DeskFixture at;
        at.openRoom();
        FakeScanner scanner;
        const auto frame = QImage::fromData(taggedPhoto(), "JPEG");
        {
            MatHintModel hint;
            hint.setDesk(&at.desk);
            hint.setScanner(&scanner);
            QVERIFY(scanner.matWanted());
            scanner.start();
            QVERIFY(hint.text().isEmpty());
            scanner.showPicture(frame);
            QCOMPARE(hint.corners(), QList<bool>({true, true, true, true}));
            QVERIFY2(hint.isGood(), qPrintable(hint.text()));
            // The lower half of the sheet is out of view.
            scanner.showPicture(frame.copy(0, 0, frame.width(), frame.height() / 2));
            QCOMPARE(hint.corners(), QList<bool>({true, true, false, false}));
            QVERIFY(!hint.isGood());
            QVERIFY2(hint.text().contains("2 corners show"), qPrintable(hint.text()));
            hint.setActive(false);
            QVERIFY(hint.text().isEmpty());
            QVERIFY(!scanner.matWanted());
            hint.setActive(true);
            scanner.showPicture(moultPicture({640, 480}));
            QVERIFY2(hint.text().contains("Show the whole mat"), qPrintable(hint.text()));
            scanner.stop();
            QVERIFY(hint.text().isEmpty());
        }
        QVERIFY(!scanner.matWanted());
    }
};

QTEST_MAIN(TestMoultFiling)
#include "tst_moult_filing.moc"
