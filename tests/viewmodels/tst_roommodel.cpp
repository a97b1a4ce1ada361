// The room as a whole: its name, finding somebody by number, and whether its book is in order.
#include <QSignalSpy>

#include "storage/sqlite.h"
#include "viewmodels/other_hand.h"
#include "viewmodels/roommodel.h"

using namespace burrow;
using namespace burrow::test;
using Check = RoomModel::Check;

namespace {

class Bench {
public:
    Bench() {
        at.openRoom();
        model.setDesk(&at.desk);
        at.settle();
    }
    void check() {
        model.checkBook();
        at.settle();
    }
    /// As a failing device might.
    void spoil(const char* sql) {
        must(storage::Connection::open(at.path, storage::Access::readWrite)->execute(sql));
    }

    DeskFixture at;
    RoomModel model;
};

}  // namespace

class TestRoomModel : public QObject {
    Q_OBJECT

private slots:
    void saysWhatItHolds() {
        Bench bench;
        QCOMPARE(bench.model.name(), QString("Kiln Row"));
        QCOMPARE(bench.model.summary(), QString("KR. 3 kept"));
        QVERIFY(bench.model.file().endsWith("room.book"));
        QCOMPARE(bench.model.toSex(), QString("No moult waits"));
        OtherHand hand(bench.at);
        hand.moult(bench.at.hamorii, 5, 2);
        hand.moult(bench.at.group, 5, 1);  // it belongs to none in particular
        bench.at.settle();
        QCOMPARE(bench.model.toSex(), QString("One moult waits"));
        bench.at.desk.close();
        bench.at.settle();
        QVERIFY(bench.model.name().isEmpty() && bench.model.summary().isEmpty());
        QCOMPARE(bench.model.toSex(), QString("No moult waits"));
    }

    void isRenamed() {
        Bench bench;
        QSignalSpy saved(&bench.model, &RoomModel::saved);
        bench.model.save("  Kiln Row North ", " krn ", "table 12");
        bench.at.settle();
        QCOMPARE(saved.count(), 1);
        QCOMPARE(bench.model.name(), QString("Kiln Row North"));
        QCOMPARE(bench.model.code(), QString("KRN"));
        QCOMPARE(bench.model.contact(), QString("table 12"));
        QCOMPARE(bench.at.desk.doneText(), QString("room changed"));
        bench.at.desk.undo();
        bench.at.settle();
        QCOMPARE(bench.model.name(), QString("Kiln Row"));
        QVERIFY(bench.model.contact().isEmpty());
    }

    void whatIsAsBeforeIsNoEntry() {
        Bench bench;
        QSignalSpy saved(&bench.model, &RoomModel::saved);
        const auto serial = bench.at.desk.doneSerial();
        bench.model.save("Kiln Row", "kr", "");
        bench.at.settle();
        QCOMPARE(saved.count(), 1);
        QCOMPARE(bench.at.desk.doneSerial(), serial);
    }

    void namesAndCodesThatDoNotFitAreSaid_data() {
        QTest::addColumn<QString>("name");
        QTest::addColumn<QString>("code");
        QTest::addColumn<QString>("nameError");
        QTest::addColumn<QString>("codeError");
        QTest::newRow("no name") << " "
                                 << "KR"
                                 << "needs a name"
                                 << "";
        QTest::newRow("long name") << QString(41, 'n') << "KR"
                                   << "up to 40"
                                   << "";
        QTest::newRow("no code") << "Kiln Row"
                                 << ""
                                 << ""
                                 << "1 to 6 letters";
        QTest::newRow("long code") << "Kiln Row"
                                   << "KILNROW"
                                   << ""
                                   << "1 to 6 letters";
        QTest::newRow("space") << "Kiln Row"
                               << "K R"
                               << ""
                               << "1 to 6 letters";
        QTest::newRow("hyphen") << "Kiln Row"
                                << "K-R"
                                << ""
                                << "1 to 6 letters";
        QTest::newRow("umlaut") << "Kiln Row"
                                << "\u00DC1"
                                << ""
                                << "1 to 6 letters";
        QTest::newRow("both") << ""
                              << ""
                              << "needs a name"
                              << "1 to 6 letters";
    }
    void namesAndCodesThatDoNotFitAreSaid() {
        QFETCH(QString, name);
        QFETCH(QString, code);
        QFETCH(QString, nameError);
        QFETCH(QString, codeError);
        Bench bench;
        QSignalSpy saved(&bench.model, &RoomModel::saved);
        bench.model.save(name, code, "table 12");
        bench.at.settle();
        QCOMPARE(saved.count(), 0);
        QCOMPARE(bench.model.nameError().isEmpty(), nameError.isEmpty());
        QVERIFY(bench.model.nameError().contains(nameError));
        QCOMPARE(bench.model.codeError().isEmpty(), codeError.isEmpty());
        QVERIFY(bench.model.codeError().contains(codeError));
        QVERIFY(bench.model.contact().isEmpty());  // all of it or nothing
        bench.model.clearErrors();
        QVERIFY(bench.model.nameError().isEmpty() && bench.model.codeError().isEmpty());
    }

    void findsByNumber_data() {
        QTest::addColumn<QString>("typed");
        QTest::newRow("number") << "214";
        QTest::newRow("with the room's code") << "kr-214";
        QTest::newRow("with spaces") << " 214 ";
        QTest::newRow("with zeros") << "0214";
    }
    void findsByNumber() {
        QFETCH(QString, typed);
        Bench bench;
        QSignalSpy found(&bench.model, &RoomModel::found);
        bench.model.find(typed);
        bench.at.settle();
        QCOMPARE(found.value(0).value(0).toString(), bench.at.id(bench.at.hamorii));
        QVERIFY(bench.model.findTrouble().isEmpty());
    }

    void saysWhyNobodyWasFound() {
        Bench bench;
        QSignalSpy found(&bench.model, &RoomModel::found);
        bench.model.find("999");
        bench.at.settle();
        QVERIFY(bench.model.findTrouble().startsWith("No animal has tag 999"));
        bench.model.find("  ");
        QVERIFY(bench.model.findTrouble().isEmpty());
        OtherHand(bench.at).add("214", "Caribena laeta");
        bench.model.find("214");
        bench.at.settle();
        QVERIFY(bench.model.findTrouble().startsWith("More than one animal has the number 214"));
        QCOMPARE(found.count(), 0);
    }

    void aWholeBookIsSaidToBeWhole() {
        Bench bench;
        QCOMPARE(bench.model.check(), Check::NotYet);
        bench.model.checkBook();
        QCOMPARE(bench.model.check(), Check::UnderWay);
        bench.at.settle();
        QCOMPARE(bench.model.check(), Check::Sound);
        QVERIFY2(bench.model.checkText().startsWith("The book is whole: "),
                 qPrintable(bench.model.checkText()));
        QVERIFY(bench.model.checkText().endsWith("4 subjects."));
        QVERIFY(bench.model.findings().isEmpty() && !bench.model.canRepair());
        bench.model.repairBook();  // there is nothing to do
        QCOMPARE(bench.model.check(), Check::Sound);
        bench.at.desk.close();
        QCOMPARE(bench.model.check(), Check::NotYet);
    }

    void whatCanBeRebuiltIsRepaired() {
        Bench bench;
        bench.spoil("UPDATE subject SET species = 'Nobody nullus'");
        bench.check();
        QCOMPARE(bench.model.check(), Check::Unsound);
        QVERIFY(bench.model.checkText().startsWith("One thing is not in order"));
        QCOMPARE(bench.model.findings().size(), 1);
        QVERIFY(bench.model.findings().at(0).contains("subject"));
        QVERIFY(bench.model.canRepair());
        bench.model.repairBook();
        QCOMPARE(bench.model.check(), Check::UnderWay);
        bench.at.settle();
        bench.at.settle();
        QCOMPARE(bench.model.check(), Check::Sound);
        const auto resident = bench.at.desk.room()->find(bench.at.hamorii);
        QCOMPARE(resident->subject().species, std::string("Brachypelma hamorii"));
    }

    void lostEntriesAreSaidAndNotGlossedOver() {
        Bench bench;
        loseAnEntry(bench.at.path);
        bench.check();
        QCOMPARE(bench.model.check(), Check::Unsound);
        QVERIFY2(bench.model.findings().join('\n').contains("missing from a device's sequence"),
                 qPrintable(bench.model.findings().join('\n')));
        QVERIFY(!bench.model.canRepair());
    }

private:
    /// The book itself refuses that, so its guards go first.
    static void loseAnEntry(const std::filesystem::path& path) {
        auto connection = storage::Connection::open(path, storage::Access::readWrite).value();
        std::vector<std::string> triggers;
        {
            auto rows =
                connection.query("SELECT name FROM sqlite_master WHERE type = 'trigger'").value();
            while (rows.next().value()) triggers.emplace_back(rows.text(0));
        }
        for (const auto& trigger : triggers) must(connection.execute("DROP TRIGGER " + trigger));
        must(connection.execute("DELETE FROM entry WHERE seq = 5"));
    }
};

QTEST_GUILESS_MAIN(TestRoomModel)
#include "tst_roommodel.moc"
