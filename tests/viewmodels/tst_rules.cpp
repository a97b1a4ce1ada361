// The rules of thumb as a list: shown with where each comes from, and the keeper's own among them.
#include <QAbstractItemModelTester>
#include <QSignalSpy>

#include "viewmodels/rule_bench.h"
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
            QCOMPARE(bench.model.data(index, RulesModel::FromRole).toString(),
                     QString("as shipped"));
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

    void theKeepersOwnStandAmongThem() {
        Bench bench;
        QSignalSpy resets(&bench.model, &QAbstractItemModel::modelReset);
        setRule(bench.at, juveniles.toStdString(), "3-4");
        QCOMPARE(bench.text(juveniles, RulesModel::ValueRole), QString("3 to 4 days"));
        QCOMPARE(bench.text(juveniles, RulesModel::FromRole), QString("from you"));
        QVERIFY(bench.text(juveniles, RulesModel::SourceRole).isEmpty());
        QVERIFY(bench.model.summary().endsWith("one from you"));
        setRule(bench.at, juveniles.toStdString() + "@place:Nursery", "2-3");
        setRule(bench.at, juveniles.toStdString() + "@animal:" + bench.at.hamorii.text(), "5");
        QCOMPARE(bench.text(juveniles, RulesModel::AlsoRole),
                 QString("2 to 3 days, from place Nursery\n5 to 5 days, from animal 214"));
        QVERIFY(bench.model.summary().endsWith("3 from you"));
        QCOMPARE(resets.count(), 0);  // the list keeps its place
    }

    void aValueForOneIsNoneForEveryone() {
        Bench bench;
        setRule(bench.at, juveniles.toStdString() + "@species:Grammostola pulchra", "2-3");
        QCOMPARE(bench.text(juveniles, RulesModel::ValueRole), QString("7 to 10 days"));
        QCOMPARE(bench.text(juveniles, RulesModel::FromRole), QString("as shipped"));
        QCOMPARE(bench.text(juveniles, RulesModel::OwnRole), QString("true"));
    }

    void withoutARoomThereAreNone() {
        Bench bench;
        bench.at.desk.close();
        QCOMPARE(bench.model.rowCount(), 0);
    }
};

QTEST_GUILESS_MAIN(TestRules)
#include "tst_rules.moc"
