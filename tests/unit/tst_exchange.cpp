// CSV in: RFC 4180, spreadsheets' habits, and files that are none.
#include <QtTest>

#include "exchange/bad_rows.h"
#include "journal/check.h"
#include "support/book.h"

using namespace burrow;
using namespace burrow::exchange;
using namespace burrow::test;

namespace {

constexpr std::string_view animals =
    "code,species,sex,hatched_on,acquired_on,source,status,place,enclosure,mother,father,count,"
    "colour\n"
    "214,Brachypelma hamorii,female,2021-03-01,2021-06-01,Bred at Kiln Row,here,,E1,118,,,red\n"
    "118,Brachypelma hamorii,f,,,,on loan,A / 2,,,,,\n"
    "260,Neoholothele incei,,,,,quarantine,C/1,,,,20,\n";
constexpr std::string_view homes =
    "code,length_mm,width_mm,height_mm,substrate_mm,place\nE1,300,200,200,80,A / 1\n";
constexpr std::string_view events =
    "code,at,event,prey,prey_mm,count,outcome,span_mm,note,carapace_mm\n"
    "214,2026-04-20,moulted,,,,,140,found in the dish,24.1\n"
    "214,2026-05-01T20:00,offered,cricket,14,1,ate,,,\n"
    "260,2026-05-02,seen,,,14,,,,\n";

CsvSource source(CsvKind kind, std::string_view text) { return {kind, text}; }

std::vector<BadRow> badOf(std::string_view text, CsvKind kind = CsvKind::animals) {
    TestBook room;
    room.add("001", "Grammostola pulchra");
    const auto report = bring(room.book, {source(kind, text)}, {});
    return report ? report->bad : std::vector<BadRow>{};
}

}  // namespace

class TestExchange : public QObject {
    Q_OBJECT

private slots:
    void readsRfc4180() {
        // RFC 4180, section 2, rules 5 to 7, in one row.
        auto reader =
            CsvReader::open("a,b,c,d,e\r\naaa,\"b \"\"q\"\" bb\",\"c,c\",\"d\r\ne\",\r\n").value();
        const auto row = reader.next().value();
        QVERIFY(!row.problem);
        QCOMPARE(row.cells, (std::vector<std::string>{"aaa", "b \"q\" bb", "c,c", "d\r\ne", ""}));
        QCOMPARE(row.line, 2);
        QVERIFY(!reader.next());
        QCOMPARE(csvCell("b \"q\" bb", ','), std::string("\"b \"\"q\"\" bb\""));
        QCOMPARE(csvCell("plain", ','), std::string("plain"));
    }

    void delimiters_data() {
        QTest::addColumn<QByteArray>("text");
        QTest::newRow("comma") << QByteArray("code,species\n1,A b\n");
        QTest::newRow("semicolon") << QByteArray("code;species\n1;A b\n");
        QTest::newRow("tab") << QByteArray("code\tspecies\n1\tA b\n");
        QTest::newRow("mark") << QByteArray(
            "\xEF\xBB\xBF"
            "code,species\n1,A b\n");
        QTest::newRow("crlf, no end") << QByteArray("code,species\r\n\r\n1,A b");
        QTest::newRow("quoted header") << QByteArray("\"code\",\"Species\"\n1,\"A b\"\n");
    }
    void delimiters() {
        QFETCH(QByteArray, text);
        auto reader = CsvReader::open(text.toStdString()).value();
        QCOMPARE(reader.header(), (std::vector<std::string>{"code", "species"}));
    }

    void bringsARoom() {
        TestBook room;
        const auto report =
            bring(room.book,
                  {source(CsvKind::events, events), source(CsvKind::animals, animals),
                   source(CsvKind::enclosures, homes)},
                  {})
                .value();
        QVERIFY(report.isDone);
        QCOMPARE(report.animals, 3);
        QCOMPARE(report.enclosures, 1);
        QCOMPARE(report.events, 3);
        const auto hamorii = room.kept(subjectsNumbered(room.book, "214")->front());
        QCOMPARE(hamorii.subject.sex, Sex::female);
        QCOMPARE(hamorii.subject.note, std::string("colour: red"));
        QCOMPARE(hamorii.subject.mother, subjectsNumbered(room.book, "118")->front());
        QCOMPARE(hamorii.place.text(), std::string("A / 1"));
        QCOMPARE(hamorii.digest.carapace->value, 24.1);
        QCOMPARE(hamorii.digest.lastAccepted->preyLength->value, 14.0);
        QVERIFY(hamorii.tagCode.has_value());
        const auto group = room.kept(subjectsNumbered(room.book, "260")->front());
        QCOMPARE(group.subject.form, Form::group);
        QVERIFY(group.subject.quarantined);
        QCOMPARE(group.digest.lastSeenCount, 14);
        QCOMPARE(room.kept(subjectsNumbered(room.book, "118")->front()).subject.standing,
                 Standing::onLoan);
        QVERIFY(check(room.book)->isSound());
    }

    void badRowsAreNamed_data() {
        QTest::addColumn<QByteArray>("row");
        QTest::addColumn<QString>("column");
        QTest::addColumn<QString>("reason");
        const QByteArray header = "code,species,sex,hatched_on,status,mother,enclosure,count\n";
        const auto add = [&](const char* title, const char* row, const char* column,
                             const char* reason) {
            QTest::newRow(title) << header + "7,A b,,,,,,\n" + row << column << reason;
        };
        add("no code", ",A b,,,,,,\n", "code", "cell.empty");
        add("no species", "8,,,,,,,\n", "species", "cell.empty");
        add("sex", "8,A b,both,,,,,\n", "sex", "cell.word");
        add("date", "8,A b,,1.3.2021,,,,\n", "hatched_on", "cell.date");
        add("status", "8,A b,,,flying,,,\n", "status", "cell.word");
        add("mother", "8,A b,,,,99,,\n", "mother", "cell.unknownAnimal");
        add("own mother", "8,A b,,,,8,,\n", "mother", "cell.ownParent");
        add("enclosure", "8,A b,,,,,E9,\n", "enclosure", "cell.unknownEnclosure");
        add("count", "8,A b,,,,,,0\n", "count", "cell.count");
        add("taken in the file", "7,A b,,,,,,\n", "code", "cell.taken");
        add("taken in the book", "001,A b,,,,,,\n", "code", "cell.taken");
        add("too few cells", "8,A b\n", "", "csv.cellCount");
        add("too many cells", "8,A b,,,,,,,\n", "", "csv.cellCount");
        add("open quote", "8,\"A b,,,,,,\n", "", "csv.quote");
        add("stray quote", "8,A \"b\",,,,,,\n", "", "csv.quote");
        add("bytes", "8,A \xFF,,,,,,\n", "", "csv.notUtf8");
        QTest::newRow("nul") << header + "7,A b,,,,,,\n" + QByteArray("8,A\0b,,,,,,\n", 12) << ""
                             << "csv.nul";
    }
    void badRowsAreNamed() {
        QFETCH(QByteArray, row);
        QFETCH(QString, column);
        QFETCH(QString, reason);
        const auto bad = badOf(row.toStdString());
        QCOMPARE(bad.size(), 1U);
        QCOMPARE(bad[0].line, 3);
        QCOMPARE(QString::fromStdString(bad[0].column), column);
        QCOMPARE(QString::fromStdString(bad[0].reason.id), reason);
    }

    void badEventsAreNamed_data() {
        QTest::addColumn<QByteArray>("row");
        QTest::addColumn<QString>("column");
        QTest::addColumn<QString>("reason");
        QTest::newRow("animal") << QByteArray("9,2026-05-01,watered,,") << "code"
                                << "cell.unknownAnimal";
        QTest::newRow("when") << QByteArray("001,yesterday,watered,,") << "at"
                              << "cell.date";
        QTest::newRow("event") << QByteArray("001,2026-05-01,danced,,") << "event"
                               << "cell.event";
        QTest::newRow("outcome") << QByteArray("001,2026-05-01,offered,,") << "outcome"
                                 << "field.missing";
        QTest::newRow("word") << QByteArray("001,2026-05-01,offered,maybe,") << "outcome"
                              << "field.unreadable";
        QTest::newRow("size") << QByteArray("001,2026-05-01,moulted,,999") << "span_mm"
                              << "field.range";
        QTest::newRow("note") << QByteArray("001,2026-05-01,note,,") << "note"
                              << "field.missing";
    }
    void badEventsAreNamed() {
        QFETCH(QByteArray, row);
        QFETCH(QString, column);
        QFETCH(QString, reason);
        const auto bad =
            badOf("code,at,event,outcome,span_mm\n" + row.toStdString() + "\n", CsvKind::events);
        QCOMPARE(bad.size(), 1U);
        QCOMPARE(QString::fromStdString(bad[0].column), column);
        QCOMPARE(QString::fromStdString(bad[0].reason.id), reason);
    }

    void nothingUnlessAllOrSkipping() {
        TestBook room;
        const std::string text = "code,species\n1,A b\n,A b\n3,A b\n";
        auto report = bring(room.book, {source(CsvKind::animals, text)}, {}).value();
        QVERIFY(!report.isDone);
        QVERIFY(roster(room.book)->empty());
        BringOptions skipping;
        skipping.skipBad = true;
        std::string handedBack;
        skipping.onBadRow = [&](const BadRow& bad) { handedBack += bad.raw; };
        report = bring(room.book, {source(CsvKind::animals, text)}, skipping).value();
        QVERIFY(report.isDone);
        QCOMPARE(report.animals, 2);
        QCOMPARE(handedBack, std::string(",A b"));
        QCOMPARE(roster(room.book)->size(), 2U);
        room.book.undo().value();  // one act
        QVERIFY(roster(room.book)->empty());
    }

    void badRowsCanBeCorrectedAndBroughtInAgain() {
        TestBook room;
        const std::string first = "code;species\n1;A b\n;\"C; d\"\n";
        const std::string second = "code,species\n2,A b\n2,E f\n";
        std::vector<std::vector<BadRow>> bad(2);
        BringOptions skipping;
        skipping.skipBad = true;
        skipping.onBadRow = [&](const BadRow& row) { bad[row.source].push_back(row); };
        bring(room.book, {source(CsvKind::animals, first), source(CsvKind::animals, second)},
              skipping)
            .value();
        const auto say = [](const Message& message) { return message.id; };
        QCOMPARE(badRowsFile(first, bad[0], say),
                 std::string("code;species;reason\n;\"C; d\";code: cell.empty\n"));
        QCOMPARE(badRowsFile(second, bad[1], say),
                 std::string("code,species,reason\n2,E f,code: cell.taken\n"));
        QCOMPARE(badRowsPath("a/animals.csv"), std::filesystem::path("a/animals.bad.csv"));
    }

    void filesThatAreNone_data() {
        QTest::addColumn<QByteArray>("text");
        QTest::addColumn<QString>("reason");
        QTest::newRow("empty") << QByteArray() << "csv.noHeader";
        QTest::newRow("one column") << QByteArray("animals\n1\n2\n") << "csv.columnMissing";
        QTest::newRow("picture") << QByteArray("\x89PNG\r\n\x1A\n\0\0\0\rIHDR", 16) << "csv.binary";
        QTest::newRow("utf-16") << QByteArray(
                                       "\xFF\xFE"
                                       "c\0o\0",
                                       6)
                                << "csv.utf16";
        QTest::newRow("twice") << QByteArray("code,species,species\n") << "csv.columnTwice";
    }
    void filesThatAreNone() {
        QFETCH(QByteArray, text);
        QFETCH(QString, reason);
        TestBook room;
        const auto bytes = text.toStdString();
        const auto report = bring(room.book, {source(CsvKind::animals, bytes)}, {});
        QVERIFY(!report);
        QCOMPARE(QString::fromStdString(report.error().message.id), reason);
    }

    void decimalCommas() {
        TestBook room;
        room.add("001", "Grammostola pulchra");
        const std::string text = "code;at;event;span_mm\n001;2026-05-01;measured;62,5\n";
        QVERIFY(bring(room.book, {source(CsvKind::events, text)}, {})->isDone);
        QCOMPARE(room.kept(subjectsNumbered(room.book, "001")->front()).digest.span->value, 62.5);
    }

    void knowsWhatAFileIs() {
        QCOMPARE(*recogniseCsv(animals), CsvKind::animals);
        QCOMPARE(*recogniseCsv(homes), CsvKind::enclosures);
        QCOMPARE(*recogniseCsv(events), CsvKind::events);
        QVERIFY(!recogniseCsv("name,telephone\n"));
    }

    void stopsWhenAsked() {
        TestBook room;
        std::string text = "code,species\n";
        for (int i = 0; i < 6000; ++i) text += std::to_string(i) + ",A b\n";
        BringOptions impatient;
        impatient.onProgress = [](std::int64_t) { return false; };
        const auto report = bring(room.book, {source(CsvKind::animals, text)}, impatient);
        QCOMPARE(report.error().message.id, std::string("bring.stopped"));
        QVERIFY(roster(room.book)->empty());
    }
};

QTEST_APPLESS_MAIN(TestExchange)
#include "tst_exchange.moc"
