// From a symbol to the animal it hangs on, or to the right words.
#include <QSignalSpy>

#include "fake/fake_scanner.h"
#include "viewmodels/desk_fixture.h"
#include "viewmodels/scanmodel.h"

using namespace burrow;
using namespace burrow::test;
using Sight = ScanModel::Sight;

namespace {

QByteArray payload(const char* code) {
    return QByteArray::fromStdString(tags::payload(code, tags::printedSide));
}

}  // namespace

class TestScan : public QObject {
    Q_OBJECT

private slots:
    void opensWhoseTagItIs() {
        DeskFixture at;
        at.openRoom();
        FakeScanner scanner;
        ScanModel scan;
        scan.setDesk(&at.desk);
        scan.setScanner(&scanner);
        QSignalSpy found(&scan, &ScanModel::found);
        scan.start();
        scanner.showTag(payloadOf(at, at.hamorii));
        at.settle();
        QCOMPARE(scan.sight(), Sight::Found);
        QCOMPARE(scan.tag(), QString("214"));
        QCOMPARE(scan.verb(), QString("Feed."));
        QCOMPARE(found.value(0).value(0).toString(), at.id(at.hamorii));
        scanner.hideTag();
        scanner.showTag(payloadOf(at, at.gone));
        at.settle();
        QVERIFY2(scan.verb().startsWith("Sold"), qPrintable(scan.verb()));
        QCOMPARE(scan.punch(), QString("sold"));
    }

    void strangersGetTheRightWords_data() {
        QTest::addColumn<QByteArray>("bytes");
        QTest::addColumn<QString>("word");
        auto forged = payload("7Q2MZX89");
        forged[forged.indexOf('/') - 1] = forged[forged.indexOf('/') - 1] == 'A' ? 'B' : 'A';
        QTest::newRow("forged") << forged << "Can't read this tag";
        QTest::newRow("web") << QByteArray("https://example.org/x") << "web address";
        QTest::newRow("text") << QByteArray("Best before May") << "no tag";
        QTest::newRow("binary") << QByteArray(3000, '\x01') << "something else";
        QTest::newRow("markup") << QByteArray("<b>bold</b>") << "<b>bold</b>";
    }
    void strangersGetTheRightWords() {
        QFETCH(QByteArray, bytes);
        QFETCH(QString, word);
        DeskFixture at;
        at.openRoom();
        FakeScanner scanner;
        ScanModel scan;
        scan.setDesk(&at.desk);
        scan.setScanner(&scanner);
        scan.start();
        scanner.showTag(bytes);
        at.settle();
        QCOMPARE(scan.sight(), Sight::Message);
        QVERIFY2(scan.message().contains(word), qPrintable(scan.message()));
        scan.clear();
        QCOMPARE(scan.sight(), Sight::Nothing);
    }

    void blankTagsAreHungUp() {
        DeskFixture at;
        at.openRoom();
        FakeScanner scanner;
        ScanModel scan;
        scan.setDesk(&at.desk);
        scan.setScanner(&scanner);
        QSignalSpy bound(&scan, &ScanModel::bound);
        scan.start();
        scanner.showTag(payload("7Q2MZX89"));
        at.settle();
        QCOMPARE(scan.sight(), Sight::Unbound);
        QCOMPARE(scan.unboundCode(), QString("7Q2M ZX89 K"));
        scan.hangOn("999");
        at.settle();
        QCOMPARE(scan.sight(), Sight::Message);
        QVERIFY(scan.message().contains("999"));
        scanner.hideTag();
        scanner.showTag(payload("7Q2MZX89"));
        at.settle();
        scan.hangOn("118");
        at.settle();
        QCOMPARE(bound.value(0).value(0).toString(), at.id(at.pulchra));
        scanner.hideTag();
        scanner.showTag(payload("7Q2MZX89"));
        at.settle();
        QCOMPARE(scan.tag(), QString("118"));
    }

    void typedNumbersAndCodes_data() {
        QTest::addColumn<QString>("typed");
        QTest::addColumn<QString>("tag");
        QTest::newRow("number") << "214"
                                << "214";
        QTest::newRow("with the room") << "kr-118"
                                       << "118";
        QTest::newRow("unknown number") << "999"
                                        << "";
        QTest::newRow("code too short") << "7Q2MZX"
                                        << "";
        QTest::newRow("nothing") << "  "
                                 << "";
    }
    void typedNumbersAndCodes() {
        QFETCH(QString, typed);
        QFETCH(QString, tag);
        DeskFixture at;
        at.openRoom();
        ScanModel scan;
        scan.setDesk(&at.desk);
        scan.typed(typed);
        at.settle();
        QCOMPARE(scan.tag(), tag);
        if (tag.isEmpty() && !typed.trimmed().isEmpty()) QVERIFY(!scan.message().isEmpty());
    }

    void saysWhyThereIsNoPicture() {
        DeskFixture at;
        at.openRoom();
        FakeScanner scanner;
        scanner.setOutcome(Scanner::State::NoCamera);
        ScanModel scan;
        scan.setDesk(&at.desk);
        scan.setScanner(&scanner);
        scan.start();
        QVERIFY(scan.cameraTrouble().contains("no camera"));
        scan.stop();
        QCOMPARE(scanner.stops(), 1);
    }

private:
    static QByteArray payloadOf(DeskFixture& at, SubjectId id) {
        return payload(at.desk.room()->find(id)->kept.tagCode->c_str());
    }
};

QTEST_GUILESS_MAIN(TestScan)
#include "tst_scan.moc"
