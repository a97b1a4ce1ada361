// What a change of a rule would do, shown before it is saved; saved and undone.
#include <QAbstractItemModelTester>
#include <QSignalSpy>

#include "viewmodels/keeping.h"
#include "viewmodels/rule_bench.h"
#include "viewmodels/rulepreviewmodel.h"

using namespace burrow;
using namespace burrow::test;

namespace {

const QString adults = "feed.interval.adult";

class Bench {
public:
    Bench() { at.openRoom(); }
    void show(const QString& key, const QString& value) {
        model.setDesk(&at.desk);
        model.setKey(key);
        model.setValue(value);
        QVERIFY(QTest::qWaitFor([this] { return !model.isWorking(); }));
    }
    [[nodiscard]] QString saysOf(const QString& tag) const {
        for (int row = 0; row < model.rowCount(); ++row) {
            const auto index = model.index(row);
            if (model.data(index, RulePreviewModel::TagRole) == tag) {
                return model.data(index, RulePreviewModel::SaysRole).toString();
            }
        }
        return "no line";
    }

    DeskFixture at;
    RulePreviewModel model;
    const QAbstractItemModelTester tester{&model};
};

}  // namespace

class TestRulePreview : public QObject {
    Q_OBJECT

private slots:
    void saysWhatChangesAndWritesNothing() {
        Bench bench;
        bench.show(adults, "20-30");
        QCOMPARE(bench.model.change(),
                 QString("20 to 30 days, from you, instead of 10 to 14 days, as shipped"));
        QVERIFY2(bench.saysOf("214").startsWith("Feeding "), qPrintable(bench.saysOf("214")));
        QVERIFY(bench.model.summary().startsWith("It concerns "));
        const auto feeding = lineNamed(bench.model.totals(), "Feeding")["value"].toString();
        QVERIFY2(feeding.contains(" instead of "), qPrintable(feeding));
        QVERIFY(rulesIn(bench.at).empty());
        QVERIFY(bench.at.desk.doneText().isEmpty());
    }

    /// The days are those that the plan gives once it is saved.
    void theDaysAreThoseThatCome() {
        Bench bench;
        bench.show(adults, "20-30");
        // Fed 14 days ago: by 20 to 30 days the best day is 25 days after the meal, in 11 days. (By
        // the rule as it stands it is due today.)
        const auto words = bench.saysOf("214");
        const auto day = QString::fromStdString(
            bench.at.reference.words.day(bench.at.desk.today() + 11, bench.at.desk.today()));
        QVERIFY2(words.contains(day), qPrintable(words + " / " + day));
        QSignalSpy kept(&bench.model, &RulePreviewModel::kept);
        bench.model.save();
        bench.at.settle();
        QCOMPARE(kept.count(), 1);
        const auto& feed = resident(bench.at, bench.at.hamorii)->plan.of(Care::feed);
        QCOMPARE(feed.window->best, bench.at.desk.today() + 11);
    }

    void concernsOnlyThoseItIsFor() {
        Bench bench;
        bench.show(adults + "@species:Brachypelma hamorii", "20-30");
        QCOMPARE(bench.model.rowCount(), 1);
        QVERIFY(bench.model.summary().startsWith("It concerns one animal."));
        bench.show(adults + "@place:Nowhere", "20-30");
        QCOMPARE(bench.model.rowCount(), 0);
        QCOMPARE(bench.model.summary(), QString("It concerns nobody who is here now"));
        QVERIFY(bench.model.totals().isEmpty());
        // A rule that no plan of theirs asks for.
        bench.show("breeding.charged@animal:" + bench.at.id(bench.at.hamorii), "50-60");
        QCOMPARE(bench.model.rowCount(), 0);
        QVERIFY(bench.model.summary().contains("nothing changes"));
    }

    void savesAndIsUndone() {
        Bench bench;
        bench.show(adults, "20-30");
        bench.model.save();
        bench.at.settle();
        QCOMPARE(rulesIn(bench.at), (std::vector<OwnRule>{{"feed.interval.adult", "20-30"}}));
        QCOMPARE(bench.at.desk.doneText(), QString("rule changed"));
        QCOMPARE(resident(bench.at, bench.at.hamorii)->plan.of(Care::feed).state, State::waiting);
        bench.at.desk.undo();
        bench.at.settle();
        QVERIFY(rulesIn(bench.at).empty());
    }

    void takesAValueBack() {
        Bench bench;
        setRule(bench.at, adults.toStdString() + "@species:brachypelma HAMORII", "20-30");
        bench.show(adults + "@species:Brachypelma hamorii", "");
        QVERIFY2(bench.model.change().startsWith("10 to 14 days, as shipped, instead of 20 to 30"),
                 qPrintable(bench.model.change()));
        QCOMPARE(bench.model.rowCount(), 1);
        bench.model.save();
        bench.at.settle();
        QVERIFY(rulesIn(bench.at).empty());  // under whatever spelling it stood
        QCOMPARE(bench.at.desk.doneText(), QString("own value taken back"));
        setRule(bench.at, adults.toStdString(), "20-30");
        bench.show(adults, "");
        bench.model.save();
        bench.at.settle();
        QCOMPARE(bench.at.desk.doneText(), QString("rule as shipped again"));
    }

    void oneSpellingIsKept() {
        Bench bench;
        setRule(bench.at, adults.toStdString() + "@species:brachypelma HAMORII", "20-30");
        bench.show(adults + "@species:Brachypelma hamorii", "15-16");
        bench.model.save();
        bench.at.settle();
        QCOMPARE(
            rulesIn(bench.at),
            (std::vector<OwnRule>{{"feed.interval.adult@species:Brachypelma hamorii", "15-16"}}));
    }

    void followsWhatIsWrittenMeanwhile() {
        Bench bench;
        bench.show(adults, "20-30");
        QVERIFY(bench.saysOf("214") != "no line");
        log(bench.at, bench.at.hamorii, FactKind::died, 0);
        QVERIFY(QTest::qWaitFor([&] { return !bench.model.isWorking(); }));
        QCOMPARE(bench.saysOf("214"), QString("no line"));
    }

    void moreThanAreLookedAtAtOnce() {
        Bench bench;
        bench.show(adults, "20-30");
        const int before = bench.model.rowCount();
        bench.model.setValue({});
        std::vector<Draft> drafts;
        for (int i = 0; i < 100; ++i) {
            Subject subject;
            subject.number = std::to_string(1000 + i);
            subject.species = "Brachypelma hamorii";
            const SubjectId id{Uuid::named("subject " + subject.number)};
            drafts.emplace_back(SetDraft{ThingType::subject, id.uuid, toFields(subject)});
            drafts.emplace_back(
                FactDraft{id, FactKind::measured, {.span = Millimetres{140}}, daysAgo(60)});
            drafts.emplace_back(
                FactDraft{id, FactKind::offered, {.outcome = Outcome::ate}, daysAgo(14)});
        }
        write(bench.at, std::move(drafts));
        bench.show(adults, "20-30");
        QCOMPARE(bench.model.rowCount(), before + 100);
        const auto all = QString("change for %1 of them").arg(before + 100);
        QVERIFY2(bench.model.summary().endsWith(all), qPrintable(bench.model.summary()));
    }

    void whatIsNoKeyShowsNothing() {
        Bench bench;
        for (const auto* key : {"", "no.such.rule", "feed.factor@nobody:x"}) {
            bench.show(key, "1");
            QCOMPARE(bench.model.rowCount(), 0);
            QVERIFY(bench.model.says().isEmpty());
            bench.model.save();
            bench.at.settle();
        }
        QVERIFY(rulesIn(bench.at).empty());
    }
};

QTEST_GUILESS_MAIN(TestRulePreview)
#include "tst_rule_preview.moc"
