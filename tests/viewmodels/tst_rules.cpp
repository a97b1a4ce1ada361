// The rules of thumb: shown with their sources, changed by the keeper, and as shipped again.
#include <QAbstractItemModelTester>
#include <QSignalSpy>

#include "viewmodels/other_hand.h"
#include "viewmodels/rulesmodel.h"

using namespace burrow;
using namespace burrow::test;

namespace {

class Bench {
public:
    Bench() {
        at.openRoom();
        model.setDesk(&at.desk);
    }
    void change(const QString& rule, const QString& text) {
        model.choose(rule);
        model.change(text);
        at.settle();
    }
    [[nodiscard]] QString text(const QString& rule, int role) const {
        for (int i = 0; i < model.rowCount(); ++i) {
            const auto index = model.index(i);
            if (model.data(index, RulesModel::RuleRole) == rule) {
                return model.data(index, role).toString();
            }
        }
        return "no such rule";
    }

    DeskFixture at;
    RulesModel model;
    const QAbstractItemModelTester tester{&model};
};

const QString juveniles = "feed.interval.juvenile";

}  // namespace

class TestRules : public QObject {
    Q_OBJECT

private slots:
    void eachRuleSaysWhereItComesFrom() {
        Bench bench;
        QVERIFY(bench.model.rowCount() > 50);
        QSet<QString> headings;
        for (int i = 0; i < bench.model.rowCount(); ++i) {
            const auto index = bench.model.index(i);
            for (const auto role :
                 {RulesModel::SaysRole, RulesModel::ValueRole, RulesModel::SourceRole}) {
                QVERIFY(!bench.model.data(index, role).toString().isEmpty());
            }
            QVERIFY(!bench.model.data(index, RulesModel::OwnRole).toBool());
            const auto heading = bench.model.data(index, RulesModel::HeadingRole).toString();
            QVERIFY2(heading.isEmpty() || !headings.contains(heading), qPrintable(heading));
            headings.insert(heading);
        }
        QCOMPARE(bench.text(juveniles, RulesModel::ValueRole), QString("7 to 10 days"));
        QCOMPARE(bench.text(juveniles, RulesModel::SourceRole),
                 QString("common practice, no source"));
        QVERIFY(bench.model.summary().endsWith("rules, all as shipped"));
    }

    void theKeepersOwnCounts() {
        Bench bench;
        QSignalSpy resets(&bench.model, &QAbstractItemModel::modelReset);
        QSignalSpy kept(&bench.model, &RulesModel::kept);
        QCOMPARE(bench.at.desk.room()->find(bench.at.hamorii)->plan.of(Care::feed).state,
                 State::due);
        bench.change("feed.interval.adult", " 20 to 30 ");
        QCOMPARE(kept.count(), 1);
        QCOMPARE(bench.text("feed.interval.adult", RulesModel::ValueRole),
                 QString("20 to 30 days"));
        QVERIFY(bench.model.isOwn());
        QCOMPARE(bench.model.typed(), QString("20-30"));
        QVERIFY(bench.model.summary().endsWith("one from you"));
        QVERIFY(bench.model.shipped().startsWith("Shipped with 10 to 14 days. Source: "));
        QCOMPARE(bench.at.desk.doneText(), QString("rule changed"));
        // It was fed 14 days ago: by this rule it waits.
        QCOMPARE(bench.at.desk.room()->find(bench.at.hamorii)->plan.of(Care::feed).state,
                 State::waiting);
        QCOMPARE(resets.count(), 0);  // the list keeps its place
    }

    void isAsShippedAgain_data() {
        QTest::addColumn<QString>("way");
        QTest::newRow("reset") << "reset";
        QTest::newRow("typed") << "typed";
        QTest::newRow("undone") << "undone";
    }
    void isAsShippedAgain() {
        QFETCH(QString, way);
        Bench bench;
        bench.change(juveniles, "3-4");
        if (way == "reset") bench.model.reset();
        if (way == "typed") bench.model.change("7-10");
        if (way == "undone") bench.at.desk.undo();
        bench.at.settle();
        QVERIFY(!bench.model.isOwn());
        QCOMPARE(bench.text(juveniles, RulesModel::ValueRole), QString("7 to 10 days"));
        QVERIFY(bench.model.summary().endsWith("all as shipped"));
        const auto serial = bench.at.desk.doneSerial();
        bench.model.reset();  // is no entry
        bench.at.settle();
        QCOMPARE(bench.at.desk.doneSerial(), serial);
    }

    void valuesThatCantBeAreSaid_data() {
        QTest::addColumn<QString>("rule");
        QTest::addColumn<QString>("typed");
        QTest::addColumn<QString>("words");
        QTest::newRow("none") << juveniles << "0"
                              << "takes numbers from 1 to 4000";
        QTest::newRow("too many") << juveniles << "5-9999"
                                  << "from 1 to 4000";
        QTest::newRow("the wrong way round") << juveniles << "10-7"
                                             << "the smaller one first";
        QTest::newRow("half a day") << juveniles << "2.5-3"
                                    << "from 1 to 4000";
        QTest::newRow("words") << juveniles << "weekly"
                               << "weekly";
        QTest::newRow("three") << juveniles << "1-2-3"
                               << "1-2-3";
        QTest::newRow("nothing") << juveniles << " "
                                 << "from 1 to 4000";
        QTest::newRow("more than all") << "prey.fraction.adult"
                                       << "1.5"
                                       << "from 0.01 to 1";
        QTest::newRow("no feeder") << "prey.kind.adult"
                                   << ""
                                   << "needs the name of a feeder";
    }
    void valuesThatCantBeAreSaid() {
        QFETCH(QString, rule);
        QFETCH(QString, typed);
        QFETCH(QString, words);
        Bench bench;
        QSignalSpy kept(&bench.model, &RulesModel::kept);
        const auto before = bench.text(rule, RulesModel::ValueRole);
        bench.change(rule, typed);
        QVERIFY2(bench.model.error().contains(words), qPrintable(bench.model.error()));
        QVERIFY(!bench.model.error().contains(rule));  // it is named by its sentence
        QCOMPARE(kept.count(), 0);
        QCOMPARE(bench.text(rule, RulesModel::ValueRole), before);
        bench.model.change(bench.model.typed());  // as it was
        QVERIFY(bench.model.error().isEmpty());
    }

    void feedersAreTakenByAnyName() {
        Bench bench;
        bench.change("prey.kind.adult", "woodlouse");
        QCOMPARE(bench.text("prey.kind.adult", RulesModel::ValueRole), QString("woodlouse"));
        QCOMPARE(bench.model.hint(), QString("The name of a feeder, such as cricket"));
    }

    void hintsSayWhatFits_data() {
        QTest::addColumn<QString>("rule");
        QTest::addColumn<QString>("hint");
        QTest::newRow("range") << juveniles << "Days from and to, such as 5-7, from 1 to 4000";
        QTest::newRow("days") << "look.silent.adult"
                              << "Whole days, from 1 to 4000";
        QTest::newRow("hours") << "leftovers.within"
                               << "Whole hours, from 1 to 240";
        QTest::newRow("mm") << "prey.length.adult"
                            << "Millimetres, from 0.5 to 350";
        QTest::newRow("part") << "prey.fraction.adult"
                              << "A part of one, from 0.01 to 1";
        QTest::newRow("times") << "size.span_per_carapace"
                               << "How many times, from 1 to 20";
        QTest::newRow("count") << "prey.count.adult"
                               << "A whole number, from 1 to 100";
    }
    void hintsSayWhatFits() {
        QFETCH(QString, rule);
        QFETCH(QString, hint);
        Bench bench;
        bench.model.choose(rule);
        QCOMPARE(bench.model.hint(), hint);
        // What the line to type in starts with is taken as it stands.
        bench.model.change(bench.model.typed());
        QVERIFY2(bench.model.error().isEmpty(), qPrintable(bench.model.error()));
    }

    void withoutARoomThereAreNone() {
        Bench bench;
        bench.model.choose(juveniles);
        bench.at.desk.close();
        QCOMPARE(bench.model.rowCount(), 0);
        QVERIFY(bench.model.says().isEmpty() && bench.model.hint().isEmpty());
        bench.model.choose("no.such.rule");
        bench.model.change("5");
        bench.at.settle();
        QVERIFY(bench.at.desk.trouble().isEmpty());
    }
};

QTEST_GUILESS_MAIN(TestRules)
#include "tst_rules.moc"
