// The numbers of the tables: shown with where each comes from, changed a row at a time, and shipped again.
#include <QAbstractItemModelTester>
#include <QSignalSpy>

#include "room/number_words.h"
#include "viewmodels/keeping.h"
#include "viewmodels/numberform.h"
#include "viewmodels/numbersmodel.h"

using namespace burrow;
using namespace burrow::test;

namespace {

// As shipped: where a plate shows 12, where none shows 0.18, of carapaces from 7 to below 11 mm.
const QString clearly = "sexing/moult/7_to_11.clearly";

/// As another phone would, or a later version; null takes it out.
void setNumber(DeskFixture& at, const QString& place, const nlohmann::json& value) {
    const auto name = std::string(setting::number) + place.toStdString();
    Deed deed;
    deed.compose = [name, value](Book& book) -> Result<std::vector<Draft>> {
        return std::vector<Draft>{SetDraft{ThingType::book, book.id().uuid, {{name, value}}}};
    };
    at.desk.act(&at.desk, std::move(deed));
    at.settle();
    QVERIFY2(at.desk.trouble().isEmpty(), qPrintable(at.desk.trouble()));
}

/// The keeper's own numbers as the book holds them, "sexing/...=10".
QStringList numbersIn(const DeskFixture& at) {
    QStringList own;
    const std::string first(setting::number);
    for (const auto& [name, value] : at.desk.room()->info().others) {
        if (!name.starts_with(first)) continue;
        own.append(QString::fromStdString(name.substr(first.size()) + "=" + value));
    }
    return own;
}

class ListBench {
public:
    ListBench() {
        at.openRoom();
        model.setDesk(&at.desk);
    }
    [[nodiscard]] QString text(const QString& row, int role) const {
        for (int i = 0; i < model.rowCount(); ++i) {
            const auto index = model.index(i);
            if (model.data(index, NumbersModel::PlaceRole) == row) {
                return model.data(index, role).toString();
            }
        }
        return "no such row";
    }

    DeskFixture at;
    NumbersModel model;
    const QAbstractItemModelTester tester{&model};
};

class FormBench {
public:
    explicit FormBench(const QString& row = clearly) {
        at.openRoom();
        form.setRow(row);
        form.setDesk(&at.desk);
    }
    void enter(const char* field, const QString& text) { form.field(field)->enter(text); }
    [[nodiscard]] QString text(const char* field) const { return form.field(field)->text(); }
    [[nodiscard]] QString error(const char* field) const { return form.field(field)->error(); }
    /// Whether it was written.
    bool save() {
        QSignalSpy spy(&form, &NumberForm::saved);
        form.save();
        at.settle();
        return spy.count() == 1;
    }

    DeskFixture at;
    NumberForm form;
};

}  // namespace

class TestNumbers : public QObject {
    Q_OBJECT

private slots:
    void eachRowSaysWhereItComesFrom() {
        ListBench bench;
        QVERIFY(bench.model.rowCount() > 100);
        QSet<QString> headings;
        for (int i = 0; i < bench.model.rowCount(); ++i) {
            const auto index = bench.model.index(i);
            for (const auto role :
                 {NumbersModel::TitleRole, NumbersModel::ValueRole, NumbersModel::SourceRole}) {
                QVERIFY(!bench.model.data(index, role).toString().isEmpty());
            }
            QCOMPARE(bench.model.data(index, NumbersModel::FromRole).toString(),
                     QString("as shipped"));
            QVERIFY(!bench.model.data(index, NumbersModel::OwnRole).toBool());
            const auto heading = bench.model.data(index, NumbersModel::HeadingRole).toString();
            QVERIFY2(heading.isEmpty() || !headings.contains(heading), qPrintable(heading));
            headings.insert(heading);
        }
        QVERIFY(headings.contains("Sexing: a moult looked at for a plate"));
        QCOMPARE(bench.text(clearly, NumbersModel::TitleRole), QString("7 to 11, clearly"));
        QCOMPARE(bench.text(clearly, NumbersModel::ValueRole),
                 QString("where a plate shows 12, where none shows 0.18"));
        // Less than two decimals can show.
        QCOMPARE(bench.text("sexing/decisive/sperm_web", NumbersModel::ValueRole),
                 QString("ratio 0.0001"));
        QVERIFY2(bench.model.summary().endsWith("numbers, all as shipped"),
                 qPrintable(bench.model.summary()));
    }

    void everythingHasItsWord() {
        DeskFixture at;
        at.openRoom();
        const auto& words = at.desk.knowledge().words;
        int count = 0;
        for (const auto& table : at.desk.knowledge().numbers.list(at.desk.room()->info())) {
            const auto place = table.file + "." + table.table;
            QVERIFY2(words.knows("numbers.file." + table.file), table.file.c_str());
            QVERIFY2(words.knows("numbers.table." + place), place.c_str());
            for (const auto& row : table.rows) {
                for (const auto& number : row.numbers) {
                    const auto id = "numbers.column." + place + "." + number.key.column;
                    QVERIFY2(words.knows(id), id.c_str());
                    // It shows its number once, and what remains without it is a name.
                    const auto shown = columnText(number.key, 1234.5, words);
                    QVERIFY2(shown.find("1234.5") != std::string::npos, shown.c_str());
                    const auto name = columnName(number.key, words);
                    QVERIFY2(!name.empty() && name.find("  ") == std::string::npos, name.c_str());
                    ++count;
                }
            }
        }
        QVERIFY(count > 150);
    }

    void ownNumbersStandAmongThem() {
        ListBench bench;
        QSignalSpy resets(&bench.model, &QAbstractItemModel::modelReset);
        setNumber(bench.at, clearly + "/plate_ratio", "10");
        QCOMPARE(bench.text(clearly, NumbersModel::ValueRole),
                 QString("where a plate shows 10, where none shows 0.18"));
        QCOMPARE(bench.text(clearly, NumbersModel::AlsoRole),
                 QString("where a plate shows 10, yours; shipped 12"));
        QCOMPARE(bench.text(clearly, NumbersModel::FromRole), QString("in part from you"));
        QCOMPARE(bench.text(clearly, NumbersModel::SourceRole),
                 QString("common practice, no source"));
        QCOMPARE(bench.text(clearly, NumbersModel::OwnRole), QString("true"));
        QVERIFY(bench.model.summary().endsWith("one of them your own"));
        setNumber(bench.at, clearly + "/none_ratio", "0.2");
        QCOMPARE(bench.text(clearly, NumbersModel::FromRole), QString("from you"));
        QVERIFY(bench.text(clearly, NumbersModel::SourceRole).isEmpty());
        QVERIFY(bench.model.summary().endsWith("2 of them your own"));
        setNumber(bench.at, clearly + "/plate_ratio", nullptr);
        setNumber(bench.at, clearly + "/none_ratio", nullptr);
        QCOMPARE(bench.text(clearly, NumbersModel::FromRole), QString("as shipped"));
        QCOMPARE(resets.count(), 0);  // the list keeps its place
    }

    void whatCantBeIsPassedOver() {
        ListBench bench;
        setNumber(bench.at, clearly + "/plate_ratio", "much");
        setNumber(bench.at, clearly + "/none_ratio", "-5");
        setNumber(bench.at, "sexing/moult/of_a_later_version/plate_ratio", "3");
        QCOMPARE(bench.text(clearly, NumbersModel::ValueRole),
                 QString("where a plate shows 12, where none shows 0.18"));
        QVERIFY(bench.model.summary().endsWith("all as shipped"));
    }

    void aFormStartsWithTheShippedNumbers() {
        FormBench bench;
        QVERIFY(bench.form.isReady());
        QCOMPARE(bench.form.title(), QString("7 to 11, clearly"));
        QCOMPARE(bench.form.table(), QString("Sexing: a moult looked at for a plate"));
        QCOMPARE(bench.form.all().size(), 2);  // the limits of the band are no lines
        QCOMPARE(bench.form.field("plate_ratio")->label(), QString("Where a plate shows"));
        QCOMPARE(bench.form.field("plate_ratio")->hint(),
                 QString("Shipped 12: common practice, no source"));
        QCOMPARE(bench.text("plate_ratio"), QString());
        QVERIFY2(bench.form.bound().contains("from 7"), qPrintable(bench.form.bound()));
        QVERIFY(!bench.form.isOwn());
    }

    void aNumberIsChangedAndUndone() {
        FormBench bench;
        bench.enter("plate_ratio", " 10,5 ");
        QVERIFY(bench.save());
        QCOMPARE(numbersIn(bench.at), QStringList{clearly + "/plate_ratio=10.5"});
        QCOMPARE(bench.at.desk.doneText(), QString("changed 1 number"));
        QCOMPARE(bench.text("plate_ratio"), QString("10.5"));
        QVERIFY(bench.form.isOwn());
        QVERIFY(!bench.form.isTouched());
        bench.at.desk.undo();
        bench.at.settle();
        QVERIFY(numbersIn(bench.at).isEmpty());
        QCOMPARE(bench.text("plate_ratio"), QString());
        QVERIFY(!bench.form.isOwn());
    }

    void anEmptyLineIsTheShippedNumber() {
        FormBench bench;
        setNumber(bench.at, clearly + "/plate_ratio", "10");
        setNumber(bench.at, clearly + "/none_ratio", "0.2");
        bench.enter("plate_ratio", "");
        QVERIFY(bench.save());
        QCOMPARE(numbersIn(bench.at), QStringList{clearly + "/none_ratio=0.2"});
        // Typed out, the shipped number is no number of one's own.
        bench.enter("none_ratio", "0.18");
        QVERIFY(bench.save());
        QVERIFY(numbersIn(bench.at).isEmpty());
    }

    void aRowIsShippedAgain() {
        FormBench bench;
        bench.enter("plate_ratio", "10");
        bench.enter("none_ratio", "0.2");
        QVERIFY(bench.save());
        QCOMPARE(bench.at.desk.doneText(), QString("changed 2 numbers"));
        bench.form.shipAgain();
        bench.at.settle();
        QVERIFY(numbersIn(bench.at).isEmpty());
        QVERIFY(!bench.form.isOwn());
        bench.at.desk.undo();
        bench.at.settle();
        QCOMPARE(numbersIn(bench.at).size(), 2);
        QVERIFY(bench.form.isOwn());
    }

    void whatCantStandThereIsSaid_data() {
        QTest::addColumn<QString>("typed");
        QTest::addColumn<QString>("words");
        QTest::newRow("words") << "much"
                               << "\"much\" is no number";
        QTest::newRow("two") << "1 2"
                             << "\"1 2\" is no number";
        QTest::newRow("no end") << "inf"
                                << "is no number";
        QTest::newRow("below nothing") << "-5"
                                       << "-5 can't stand here: it takes numbers from";
        QTest::newRow("far too much") << "1e300"
                                      << "it takes numbers from";
    }
    void whatCantStandThereIsSaid() {
        QFETCH(QString, typed);
        QFETCH(QString, words);
        FormBench bench;
        setNumber(bench.at, clearly + "/none_ratio", "0.2");
        const auto before = numbersIn(bench.at);
        bench.enter("plate_ratio", typed);
        bench.enter("none_ratio", "0.3");  // this one could
        QVERIFY(!bench.save());
        QVERIFY2(bench.error("plate_ratio").contains(words),
                 qPrintable(bench.error("plate_ratio")));
        QVERIFY(bench.error("none_ratio").isEmpty());
        QVERIFY(bench.form.error().startsWith("Something above can't be used yet."));
        QCOMPARE(numbersIn(bench.at), before);
        QCOMPARE(bench.text("plate_ratio"), typed);
    }

    void whatDoesNotHoldTogetherIsSaid() {
        // The stops rise: what is "barely" can't need more than what is "clearly".
        FormBench bench("sexing/stops/barely");
        bench.enter("least", "0.97");
        QVERIFY(!bench.save());
        QVERIFY2(bench.form.error().contains("0.97"), qPrintable(bench.form.error()));
        QVERIFY(bench.error("least").isEmpty());
        QVERIFY(numbersIn(bench.at).isEmpty());
    }

    void theSameNumbersAreNoChange() {
        FormBench bench;
        QVERIFY(!bench.save());
        QVERIFY(bench.form.error().startsWith("These are its numbers already."));
        bench.enter("plate_ratio", "12");
        QVERIFY(!bench.save());
        bench.form.shipAgain();
        bench.at.settle();
        QVERIFY(bench.at.desk.doneText().isEmpty());
    }

    void whatIsTypedIsNotLostToOthersEntries() {
        FormBench bench;
        bench.enter("plate_ratio", "10");
        log(bench.at, bench.at.hamorii, FactKind::watered, 0);
        QCOMPARE(bench.text("plate_ratio"), QString("10"));
        setNumber(bench.at, clearly + "/plate_ratio", "9");
        QCOMPARE(bench.text("plate_ratio"), QString("9"));  // the number itself is another
    }

    void whatALaterVersionWroteStays() {
        FormBench bench;
        setNumber(bench.at, clearly + "/none_ratio", "a third");
        bench.enter("plate_ratio", "10");
        QVERIFY(bench.save());
        QCOMPARE(numbersIn(bench.at),
                 (QStringList{clearly + "/none_ratio=a third", clearly + "/plate_ratio=10"}));
    }

    void everyRowOpens() {
        ListBench bench;
        NumberForm form;
        form.setDesk(&bench.at.desk);
        for (int i = 0; i < bench.model.rowCount(); ++i) {
            const auto row =
                bench.model.data(bench.model.index(i), NumbersModel::PlaceRole).toString();
            form.setRow(row);
            QVERIFY2(form.isReady(), qPrintable(row));
            QVERIFY2(!form.all().isEmpty() || !form.bound().isEmpty(), qPrintable(row));
        }
    }

    void whatIsFixedIsShownAlone() {
        // Frames of the running camera are judged where no book is at hand.
        FormBench bench("measure/numbers/hint_contrast");
        QVERIFY(bench.form.isReady());
        QVERIFY(bench.form.isFixed());
        QVERIFY2(bench.form.bound().startsWith("Value 40: fixed."), qPrintable(bench.form.bound()));
        QVERIFY(!bench.save());
        QVERIFY(bench.form.error().isEmpty());
        FormBench other;
        QVERIFY(!other.form.isFixed());
    }

    void settingsHaveTheirWords() {
        DeskFixture at;
        const auto& words = at.desk.knowledge().words;
        const auto key = numberOfSetting("number." + clearly.toStdString() + "/plate_ratio");
        QVERIFY(key.has_value());
        QCOMPARE(
            placeText(*key, words),
            std::string(
                "Sexing, a moult looked at for a plate, 7 to 11, clearly: where a plate shows"));
        QCOMPARE(placeText({"far", "away", "some_row", "some_column"}, words),
                 std::string("far, away, Some row: some_column"));
        QVERIFY(!numberOfSetting("rule.feed.interval.adult"));
        QVERIFY(!numberOfSetting("number.sexing/moult"));
    }

    void withoutARoomThereIsNone() {
        ListBench list;
        list.at.desk.close();
        QCOMPARE(list.model.rowCount(), 0);
        FormBench bench;
        bench.at.desk.close();
        QVERIFY(bench.form.isMissing());
        bench.form.save();
        bench.form.shipAgain();
        FormBench stray("sexing/moult/no_such_row");
        QVERIFY(stray.form.isMissing());
        stray.form.save();
    }
};

QTEST_GUILESS_MAIN(TestNumbers)
#include "tst_numbers.moc"
