// Bringing records in from CSV files: looked at first, written when the keeper says so, and taken
// back.
#include <QFile>
#include <QSignalSpy>

#include "viewmodels/bringmodel.h"
#include "viewmodels/other_hand.h"

using namespace burrow;
using namespace burrow::test;
using Step = BringModel::Step;

namespace {

const QByteArray animals =
    "code,species,sex,place,enclosure,mother\n"
    "501,Brachypelma hamorii,female,,E1,502\n"
    "502,Brachypelma hamorii,f,D / 2,,\n";
const QByteArray homesText = "code,length_mm,width_mm,height_mm,place\nE1,300,200,200,D / 1\n";
const QByteArray events =
    "code,at,event,prey,outcome,span_mm\n"
    "501,2026-04-20,moulted,,,140\n"
    "501,2026-05-01T20:00,offered,cricket,ate,\n"
    "214,2026-05-02,watered,,,\n";
const QByteArray mixed =
    "code,species,hatched_on\n"
    "501,Brachypelma hamorii,2021-03-01\n"
    "502,Brachypelma hamorii,1.3.2021\n"
    "503,,2021-03-01\n"
    "504,Grammostola pulchra\n"
    "505,Grammostola pulchra,\n";

class Bench {
public:
    Bench() {
        at.openRoom();
        std::filesystem::create_directories(inbox());
        model.setDesk(&at.desk);
    }
    [[nodiscard]] std::filesystem::path inbox() const { return at.folder.path() / "inbox"; }

    QUrl file(const std::string& name, const QByteArray& bytes) {
        const auto path = QString::fromStdString((inbox() / name).string());
        QFile file(path);
        if (!file.open(QIODevice::WriteOnly)) return {};
        file.write(bytes);
        return QUrl::fromLocalFile(path);
    }
    [[nodiscard]] QByteArray read(const std::filesystem::path& path) const {
        QFile file(QString::fromStdString(path.string()));
        return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
    }
    void add(const QList<QUrl>& files) {
        model.addFiles(files);
        at.settle();
    }
    void bringGood() {
        model.bringGood();
        at.settle();
    }
    [[nodiscard]] std::size_t residents() const { return at.desk.room()->residents().size(); }
    [[nodiscard]] ResidentPtr numbered(const char* number) const {
        for (const auto& resident : at.desk.room()->residents()) {
            if (resident->subject().number == number) return resident;
        }
        return nullptr;
    }

    /// Animal 214, on that day of May.
    bool wasWatered(int day) {
        const auto facts = at.history(at.hamorii);
        return std::any_of(facts.begin(), facts.end(), [day](const Fact& fact) {
            return fact.kind == FactKind::watered && fact.day == civilDay({2026, 5, day});
        });
    }

    DeskFixture at;
    BringModel model;
};

QString cell(const BringModel& model, int row, const char* name) {
    return model.badRows().at(row).toMap().value(name).toString();
}

}  // namespace

class TestBring : public QObject {
    Q_OBJECT

private slots:
    void threeFilesThatNameEachOther() {
        Bench bench;
        bench.add({bench.file("events.csv", events), bench.file("animals.csv", animals),
                   bench.file("homes.csv", homesText)});
        QCOMPARE(bench.model.step(), Step::Ready);
        QCOMPARE(bench.model.contents(),
                 QString("2 animals, one enclosure and 3 events can be brought in."));
        QVERIFY(bench.model.badText().isEmpty() && bench.model.trouble().isEmpty());
        QCOMPARE(bench.model.files().at(0).toMap().value("kind").toString(),
                 QString("What happened"));
        QCOMPARE(bench.residents(), 4U);  // nothing is written by looking

        bench.model.bringAll();
        QCOMPARE(bench.model.step(), Step::Writing);
        bench.at.settle();
        QCOMPARE(bench.model.step(), Step::Finished);
        QCOMPARE(bench.residents(), 6U);
        QCOMPARE(bench.at.desk.doneText(), QString("6 records brought in"));
        const auto young = bench.numbered("501");
        QCOMPARE(young->subject().mother, bench.numbered("502")->subject().id);
        QCOMPARE(young->kept.place.text(), std::string("D / 1"));
        QCOMPARE(young->kept.digest.span->value, 140.0);
        QVERIFY(young->kept.tagCode);
        QVERIFY(bench.wasWatered(2));
        QVERIFY(bench.model.leftOut().isEmpty() && !bench.model.needsFolder());
    }

    void filesAreLookedAtTogetherWheneverOneIsAdded() {
        Bench bench;
        const auto tubs = bench.file("homes.csv", homesText);
        bench.add({bench.file("animals.csv", animals)});
        QCOMPARE(bench.model.badRows().size(), 1);
        QCOMPARE(cell(bench.model, 0, "where"), QString("animals.csv, line 2, column enclosure"));
        bench.add({tubs});
        QVERIFY(bench.model.badRows().isEmpty());
        bench.add({tubs});  // the same one again
        QCOMPARE(bench.model.files().size(), 2);
        QVERIFY(bench.model.badRows().isEmpty());
        bench.model.removeFile(1);
        bench.at.settle();
        QCOMPARE(bench.model.badRows().size(), 1);
        bench.model.removeFile(0);
        bench.at.settle();
        QCOMPARE(bench.model.step(), Step::Choosing);
        QVERIFY(bench.model.contents().isEmpty());
    }

    void badRowsAreListedByLineAndColumn() {
        Bench bench;
        bench.add({bench.file("list.csv", mixed)});
        QCOMPARE(bench.model.badText(), QString("3 rows can't be read"));
        QCOMPARE(cell(bench.model, 0, "where"), QString("list.csv, line 3, column hatched_on"));
        QCOMPARE(cell(bench.model, 0, "raw"), QString("502,Brachypelma hamorii,1.3.2021"));
        QVERIFY(cell(bench.model, 0, "reason").contains("1.3.2021"));
        QCOMPARE(cell(bench.model, 1, "where"), QString("list.csv, line 4, column species"));
        QCOMPARE(cell(bench.model, 2, "where"), QString("list.csv, line 5"));
        QCOMPARE(cell(bench.model, 2, "reason"), QString("2 cells where the header has 3"));
        QVERIFY(bench.model.moreBad().isEmpty());
    }

    void nothingIsWrittenWhileRowsAreBad() {
        Bench bench;
        bench.add({bench.file("list.csv", mixed)});
        bench.model.bringAll();
        bench.at.settle();
        QCOMPARE(bench.model.step(), Step::Ready);
        QCOMPARE(bench.residents(), 4U);
        QVERIFY(!std::filesystem::exists(bench.inbox() / "list.bad.csv"));
    }

    void goodRowsComeInAndBadOnesStandBesideTheirFile() {
        Bench bench;
        bench.add({bench.file("list.csv", mixed)});
        bench.bringGood();
        QCOMPARE(bench.model.step(), Step::Finished);
        QCOMPARE(bench.residents(), 6U);
        QVERIFY(bench.numbered("501") && bench.numbered("505") && !bench.numbered("502"));
        QVERIFY(bench.model.leftOut().contains("list.bad.csv"));
        QVERIFY(!bench.model.needsFolder());
        const auto lines = bench.read(bench.inbox() / "list.bad.csv").split('\n');
        QCOMPARE(lines.at(0), QByteArray("code,species,hatched_on,reason"));
        QVERIFY(lines.at(1).startsWith("502,Brachypelma hamorii,1.3.2021,"));
        QCOMPARE(lines.at(2), QByteArray("503,,2021-03-01,\"species: empty, but needed\""));
        QVERIFY(lines.at(3).startsWith("504,Grammostola pulchra,"));
    }

    void rowsThatAreBeingCorrectedAreNotWrittenOver() {
        Bench bench;
        const QByteArray corrected = "code,species,reason\n502,Brachypelma hamorii,\n";
        bench.file("list.bad.csv", corrected);
        bench.add({bench.file("list.csv", mixed)});
        bench.bringGood();
        QCOMPARE(bench.read(bench.inbox() / "list.bad.csv"), corrected);
        QVERIFY(bench.model.leftOut().contains("list.bad-2.csv"));
        QVERIFY(bench.read(bench.inbox() / "list.bad-2.csv").contains("1.3.2021"));
    }

    void filesOfOneNameKeepTheirRowsApart() {
        Bench bench;
        bench.add({bench.file("list.csv", "code,species\n601,Grammostola pulchra\n602,\n"),
                   bench.file("list.txt", "code,species\n603,Grammostola pulchra\n604,\n")});
        bench.bringGood();
        QVERIFY(bench.read(bench.inbox() / "list.bad.csv").contains("602,"));
        QVERIFY(bench.read(bench.inbox() / "list.bad-2.csv").contains("604,"));
    }

    void aFolderIsAskedForWhereTheRowsCannotStandBesideTheirFile() {
        Bench bench;
        // A folder of that name is in the way, as a write-protected one would be.
        bench.add({bench.file("list.csv", mixed)});
        std::filesystem::remove_all(bench.inbox());
        QFile blocker(QString::fromStdString(bench.inbox().string()));
        QVERIFY(blocker.open(QIODevice::WriteOnly));
        bench.bringGood();
        QCOMPARE(bench.model.step(), Step::Finished);
        QVERIFY(bench.model.needsFolder());
        QVERIFY(bench.model.leftOut().isEmpty());

        bench.model.keepLeftOutIn(QUrl("content://provider/tree/lists"));
        QVERIFY(bench.model.trouble().contains("not on this device"));
        bench.model.keepLeftOutIn(QUrl::fromLocalFile(blocker.fileName()));
        bench.at.settle();
        QVERIFY(!bench.model.trouble().isEmpty() && bench.model.needsFolder());

        const auto place = bench.at.folder.path() / "elsewhere";
        bench.model.keepLeftOutIn(QUrl::fromLocalFile(QString::fromStdString(place.string())));
        bench.at.settle();
        QVERIFY(bench.model.trouble().isEmpty() && !bench.model.needsFolder());
        QVERIFY(bench.read(place / "list.bad.csv").contains("1.3.2021"));
        QVERIFY(bench.model.leftOut().contains("elsewhere/list.bad.csv"));
    }

    void manyBadRowsAreCounted() {
        Bench bench;
        QByteArray text = "code,species\n";
        for (int i = 0; i < 60; ++i) text += QByteArray::number(600 + i) + ",\n";
        text += "700,Grammostola pulchra\n701," + QByteArray(400, 'x') + ",too many cells\n";
        bench.add({bench.file("list.csv", text)});
        QCOMPARE(bench.model.badRows().size(), 50);
        QCOMPARE(bench.model.moreBad(), QString("And 11 more."));
        bench.bringGood();
        QCOMPARE(bench.read(bench.inbox() / "list.bad.csv").count('\n'), 62);
    }

    void filesThatAreNoneOfTheThreeAreLeftOut_data() {
        QTest::addColumn<QByteArray>("bytes");
        QTest::addColumn<QString>("words");
        QTest::newRow("other columns")
            << QByteArray("name,price\nshelf,12\n") << "columns of odd.csv are none";
        QTest::newRow("no text") << pictureBytes() << "odd.csv is no CSV file";
        QTest::newRow("NUL in the header")
            << QByteArray("code,spe\0cies\n", 14) << "odd.csv is no CSV file";
        QTest::newRow("UTF-16") << QByteArray(
                                       "\xFF\xFE"
                                       "c\0o\0",
                                       6)
                                << "odd.csv is no CSV file";
        QTest::newRow("empty") << QByteArray() << "odd.csv is no CSV file";
    }
    void filesThatAreNoneOfTheThreeAreLeftOut() {
        QFETCH(QByteArray, bytes);
        QFETCH(QString, words);
        Bench bench;
        bench.add({bench.file("odd.csv", bytes), bench.file("homes.csv", homesText)});
        QVERIFY2(bench.model.trouble().contains(words), qPrintable(bench.model.trouble()));
        QCOMPARE(bench.model.step(), Step::Ready);  // with the other one
        QCOMPARE(bench.model.files().size(), 1);
        QVERIFY(bench.model.contents().contains("one enclosure"));
    }

    void filesThatAreNotThereAreSaid() {
        Bench bench;
        bench.add({QUrl("content://provider/list.csv"), QUrl("file:///nowhere/list.csv")});
        QVERIFY(bench.model.trouble().contains("not on this device"));
        QVERIFY(bench.model.trouble().contains("no file list.csv"));
        QCOMPARE(bench.model.step(), Step::Choosing);
    }

    void nulBytesSpoilTheirRowOnly() {
        Bench bench;
        bench.add({bench.file(
            "list.csv", QByteArray("code,species\n601,Gram\0mostola\n602,Caribena laeta\n", 49))});
        QCOMPARE(bench.model.badRows().size(), 1);
        QCOMPARE(cell(bench.model, 0, "where"), QString("list.csv, line 2"));
        QVERIFY(cell(bench.model, 0, "reason").contains("NUL"));
        bench.bringGood();
        QVERIFY(bench.numbered("602") && !bench.numbered("601"));
    }

    void eventsAloneSpeakOfThoseInTheBook() {
        Bench bench;
        bench.add({bench.file("events.csv", events)});
        QCOMPARE(bench.model.badText(), QString("2 rows can't be read"));
        QVERIFY(cell(bench.model, 0, "reason").contains("no animal has the code \"501\""));
        bench.bringGood();
        QCOMPARE(bench.residents(), 4U);
        QVERIFY(bench.wasWatered(2));
    }

    void withoutAGoodRowThereIsNothingToBring() {
        Bench bench;
        bench.add({bench.file("list.csv", "code,species\n601,\n")});
        QVERIFY(!bench.model.hasGood());
        bench.bringGood();
        QCOMPARE(bench.model.step(), Step::Ready);
        QVERIFY(!std::filesystem::exists(bench.inbox() / "list.bad.csv"));
    }

    void aFileThatChangesMeanwhileIsBroughtInAsItWasLookedAt() {
        Bench bench;
        bench.add({bench.file("list.csv", "code,species\n601,Grammostola pulchra\n")});
        bench.file("list.csv", "code,species\n777,Grammostola pulchra\n");
        bench.model.bringAll();
        bench.at.settle();
        QVERIFY(bench.numbered("601") && !bench.numbered("777"));
    }

    void aBookThatChangesMeanwhileIsNotWrittenTo() {
        Bench bench;
        bench.add({bench.file("list.csv", "code,species\n601,Grammostola pulchra\n")});
        OtherHand(bench.at).add("601", "Caribena laeta");
        bench.model.bringAll();
        bench.at.settle();
        QCOMPARE(bench.model.step(), Step::Ready);
        QVERIFY(bench.model.trouble().contains("changed since the files were looked at"));
        QVERIFY(bench.at.desk.trouble().isEmpty());  // it is said once
        QCOMPARE(bench.residents(), 5U);
    }

    void readingCanBeStopped() {
        Bench bench;
        auto held = bench.at.holdBook();
        bench.model.addFiles({bench.file("events.csv", manyEvents())});
        bench.model.stop();
        held.reset();
        bench.at.settle();
        QCOMPARE(bench.model.step(), Step::Choosing);
        QVERIFY(bench.model.trouble().contains("stopped. Nothing was changed"));
        QVERIFY(bench.model.files().isEmpty());
    }

    void writingCanBeStopped() {
        Bench bench;
        QSignalSpy progress(&bench.model, &BringModel::progressChanged);
        bench.add({bench.file("events.csv", manyEvents())});
        QCOMPARE(bench.model.step(), Step::Ready);
        QVERIFY(progress.count() > 1);
        const auto before = bench.at.history(bench.at.hamorii);
        auto held = bench.at.holdBook();
        bench.model.bringAll();
        bench.model.stop();
        held.reset();
        bench.at.settle();
        QCOMPARE(bench.model.step(), Step::Ready);
        QVERIFY(bench.model.trouble().contains("stopped"));
        QVERIFY(bench.at.history(bench.at.hamorii) == before);
        bench.model.bringAll();  // and taken up again
        bench.at.settle();
        QCOMPARE(bench.model.step(), Step::Finished);
    }

    void allOfItIsTakenBack_data() {
        QTest::addColumn<bool>("alsoFromTheBar");
        QTest::newRow("from the page") << false;
        QTest::newRow("after an undo from the bar") << true;
    }
    void allOfItIsTakenBack() {
        QFETCH(bool, alsoFromTheBar);
        Bench bench;
        const auto before = bench.at.history(bench.at.hamorii);
        bench.add({bench.file("events.csv", events), bench.file("animals.csv", animals),
                   bench.file("homes.csv", homesText)});
        bench.model.bringAll();
        bench.at.settle();
        if (alsoFromTheBar) {
            bench.at.desk.undo();
            bench.at.settle();
            QCOMPARE(bench.residents(), 4U);
        }
        bench.model.undoAll();
        bench.at.settle();
        bench.at.settle();
        QCOMPARE(bench.residents(), 4U);
        QVERIFY(bench.at.history(bench.at.hamorii) == before);
        QVERIFY(bench.at.desk.doneText().isEmpty());
        // The files are still chosen: once more, and all is there again.
        QCOMPARE(bench.model.step(), Step::Ready);
        bench.model.bringAll();
        bench.at.settle();
        QCOMPARE(bench.residents(), 6U);
    }

private:
    static QByteArray pictureBytes() { return QByteArray("\xFF\xD8\xFF\xE0\0\x10JFIF", 10); }
    static QByteArray manyEvents() {
        QByteArray text = "code,at,event\n";
        for (int i = 0; i < 12'000; ++i) text += "214,2026-05-01,watered\n";
        return text;
    }
};

QTEST_GUILESS_MAIN(TestBring)
#include "tst_bring.moc"
