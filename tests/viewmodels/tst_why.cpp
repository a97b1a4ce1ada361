// Why, and why not: every kind of care of one subject with its verdict, its working and its rules.
#include <QAbstractItemModelTester>
#include <QSignalSpy>

#include "viewmodels/keeping.h"
#include "viewmodels/rule_bench.h"
#include "viewmodels/whymodel.h"

using namespace burrow;
using namespace burrow::test;

namespace {

class Bench {
public:
    Bench() { at.openRoom(); }
    void open(SubjectId subject, const QString& care = {}) {
        model.setDesk(&at.desk);
        model.setSubject(at.id(subject));
        model.setCare(care);
    }
    [[nodiscard]] QVariant role(const QString& care, int role) const {
        for (int row = 0; row < model.rowCount(); ++row) {
            const auto index = model.index(row);
            if (model.data(index, WhyModel::CareRole) == care) return model.data(index, role);
        }
        return "no such care";
    }
    [[nodiscard]] QString text(const QString& care, int of) const {
        return role(care, of).toString();
    }

    DeskFixture at;
    WhyModel model;
    const QAbstractItemModelTester tester{&model};
};

}  // namespace

class TestWhy : public QObject {
    Q_OBJECT

private slots:
    void everyKindHasAVerdictInWords() {
        Bench bench;
        for (const auto subject : {bench.at.hamorii, bench.at.pulchra, bench.at.group}) {
            bench.open(subject);
            QCOMPARE(bench.model.rowCount(), static_cast<int>(allCare.size()));
            for (int row = 0; row < bench.model.rowCount(); ++row) {
                const auto index = bench.model.index(row);
                for (const auto role :
                     {WhyModel::NameRole, WhyModel::StateRole, WhyModel::ReasonRole}) {
                    const auto words = bench.model.data(index, role).toString();
                    QVERIFY2(!words.isEmpty() && !words.contains('['), qPrintable(words));
                }
                QVERIFY(!bench.model.data(index, WhyModel::OpenRole).toBool());
            }
        }
    }

    void verdictsAreThoseOfThePlan() {
        Bench bench;
        bench.open(bench.at.hamorii);
        QCOMPARE(bench.text("feed", WhyModel::StateRole), QString("Due"));
        QVERIFY(bench.role("feed", WhyModel::DueRole).toBool());
        QCOMPARE(bench.text("water", WhyModel::StateRole), QString("Waiting"));
        QCOMPARE(bench.text("quarantine", WhyModel::StateRole), QString("Not needed"));
        QVERIFY(bench.model.stage().startsWith("Adult"));
        bench.open(bench.at.pulchra);
        QCOMPARE(bench.text("feed", WhyModel::StateRole), QString("Held"));
        QCOMPARE(bench.text("feed", WhyModel::PunchRole), QString("hold"));
    }

    void opensToItsWorking() {
        Bench bench;
        bench.open(bench.at.hamorii, "feed");
        QVERIFY(bench.role("feed", WhyModel::OpenRole).toBool());
        QVERIFY2(bench.text("feed", WhyModel::WindowRole).startsWith("Open since"),
                 qPrintable(bench.text("feed", WhyModel::WindowRole)));
        const auto working = bench.role("feed", WhyModel::WorkingRole).toStringList().join('\n');
        QVERIFY2(working.contains("Usual gap between meals"), qPrintable(working));
        QVERIFY(!working.contains('['));
        const auto rules = bench.role("feed", WhyModel::RulesRole).toList();
        const auto ids = column(rules, "rule");
        QVERIFY2(ids.contains("feed.interval.adult"), qPrintable(ids.join(' ')));
        for (const auto& from : column(rules, "from")) {
            QVERIFY2(from.startsWith("as shipped") || from.startsWith("from "), qPrintable(from));
        }
        for (const auto& source : column(rules, "source")) QVERIFY(!source.isEmpty());
        QSignalSpy resets(&bench.model, &QAbstractItemModel::modelReset);
        bench.model.toggle("feed");
        QVERIFY(!bench.role("feed", WhyModel::OpenRole).toBool());
        QVERIFY(bench.role("feed", WhyModel::RulesRole).toList().isEmpty());
        bench.model.toggle("water");
        QVERIFY(bench.role("water", WhyModel::OpenRole).toBool());
        QCOMPARE(resets.count(), 0);  // the list keeps its place
    }

    void everyKindOpensForEveryone() {
        Bench bench;
        for (const auto subject :
             {bench.at.hamorii, bench.at.pulchra, bench.at.group, bench.at.gone}) {
            bench.open(subject);
            for (const auto care : allCare) {
                const auto key = QString::fromStdString(std::string(name(care)));
                bench.model.toggle(key);
                for (const auto& line : bench.role(key, WhyModel::WorkingRole).toStringList()) {
                    QVERIFY2(!line.contains('['), qPrintable(line));
                }
                bench.model.toggle(key);
            }
        }
    }

    void valuesSayWhereTheyComeFrom() {
        Bench bench;
        bench.open(bench.at.hamorii, "feed");
        const auto from = [&] {
            for (const auto& rule : bench.role("feed", WhyModel::RulesRole).toList()) {
                const auto row = rule.toMap();
                if (row["rule"] == "feed.interval.adult") return row["from"].toString();
            }
            return QString("not asked");
        };
        const auto animal = "feed.interval.adult@animal:" + bench.at.hamorii.text();
        for (const auto& [key, words] :
             {std::pair<std::string, QString>{"feed.interval.adult", "from you"},
              {"feed.interval.adult@species:Brachypelma hamorii",
               "from species Brachypelma hamorii"},
              {"feed.interval.adult@place:A", "from place A"},
              {animal, "from animal 214"}}) {
            setRule(bench.at, key, "9-11");
            QCOMPARE(from(), words);
        }
        const auto rules = bench.role("feed", WhyModel::RulesRole).toList();
        QVERIFY(std::any_of(rules.begin(), rules.end(),
                            [](const QVariant& rule) { return rule.toMap()["own"].toBool(); }));
    }

    void whoIsGoneHasNoStage() {
        Bench bench;
        bench.open(bench.at.gone, "feed");
        QVERIFY(bench.model.stage().isEmpty());
        QCOMPARE(bench.text("feed", WhyModel::StateRole), QString("Not needed"));
        QVERIFY(bench.role("feed", WhyModel::WorkingRole).toList().isEmpty());
    }

    void nobodyIsMissing() {
        Bench bench;
        QVERIFY(!bench.model.isMissing());  // nobody was asked about yet
        bench.model.setSubject("0");
        bench.model.setDesk(&bench.at.desk);
        QVERIFY(bench.model.isMissing());
        QCOMPARE(bench.model.rowCount(), 0);
        QVERIFY(bench.model.tag().isEmpty() && bench.model.binomial().isEmpty());
        bench.open(bench.at.hamorii);
        bench.at.desk.close();
        QCOMPARE(bench.model.rowCount(), 0);
    }
};

QTEST_GUILESS_MAIN(TestWhy)
#include "tst_why.moc"
