// The editor of a rule: for whom, the value, its layers, and what is refused.
#include <QSignalSpy>

#include "viewmodels/keeping.h"
#include "viewmodels/rule_bench.h"
#include "viewmodels/ruleform.h"

using namespace burrow;
using namespace burrow::test;

namespace {

const QString adults = "feed.interval.adult";

class Bench {
public:
    explicit Bench(const QString& rule = adults, bool forHamorii = false) {
        at.openRoom();
        if (forHamorii) form.setSubject(at.id(at.hamorii));
        form.setRule(rule);
        form.setDesk(&at.desk);
    }
    void enter(const char* field, const QString& text) { form.field(field)->enter(text); }
    /// What would be shown before it is written, "key = value"; empty where nothing would.
    QString wanted() {
        QSignalSpy spy(&form, &RuleForm::previewWanted);
        form.save();
        if (spy.isEmpty()) return {};
        return spy.first().at(0).toString() + " = " + spy.first().at(1).toString();
    }
    [[nodiscard]] QString error(const char* field) const { return form.field(field)->error(); }
    [[nodiscard]] QStringList layers(const char* key) const { return column(form.layers(), key); }

    DeskFixture at;
    RuleForm form;
};

}  // namespace

class TestRuleForm : public QObject {
    Q_OBJECT

private slots:
    void startsWithWhatHolds() {
        Bench bench;
        QVERIFY(bench.form.isReady());
        QVERIFY(!bench.form.title().isEmpty());
        QCOMPARE(bench.form.field("value")->text(), QString("10-14"));
        QCOMPARE(bench.form.holding(), QString("10 to 14 days for everyone, as shipped"));
        QCOMPARE(bench.layers("from"), QStringList{"as shipped"});
        QCOMPARE(bench.layers("key"), QStringList{""});
        QVERIFY(!bench.form.field("animal")->isWanted());
    }

    void scopesGiveTheirKeys_data() {
        QTest::addColumn<QString>("scope");
        QTest::addColumn<QString>("of");
        QTest::addColumn<QString>("key");
        QTest::newRow("everyone") << "everyone"
                                  << ""
                                  << "feed.interval.adult";
        QTest::newRow("species") << "species"
                                 << "Mexican red knee"
                                 << "feed.interval.adult@species:Brachypelma hamorii";
        QTest::newRow("unknown species") << "species"
                                         << "Nobody nullus"
                                         << "feed.interval.adult@species:Nobody nullus";
        QTest::newRow("place") << "place"
                               << " Nursery "
                               << "feed.interval.adult@place:Nursery";
    }
    void scopesGiveTheirKeys() {
        QFETCH(QString, scope);
        QFETCH(QString, of);
        QFETCH(QString, key);
        Bench bench;
        bench.enter("scope", scope);
        if (!of.isEmpty()) bench.enter(qPrintable(scope), of);
        bench.enter("value", "9 to 11");
        QCOMPARE(bench.wanted(), key + " = 9 to 11");
    }

    void opensForTheAnimalItCameFrom() {
        Bench bench(adults, true);
        const auto key = "feed.interval.adult@animal:" + bench.at.id(bench.at.hamorii);
        QCOMPARE(bench.form.field("animal")->text(), QString("214"));
        QVERIFY(bench.form.holding().startsWith("10 to 14 days for 214, "));
        bench.enter("value", "9-11");
        QCOMPARE(bench.wanted(), key + " = 9-11");
        // Turned to another scope, that is filled in too.
        bench.enter("scope", "species");
        QCOMPARE(bench.form.field("species")->text(), QString("Brachypelma hamorii"));
        QCOMPARE(bench.form.field("species")->hint(), QString("One is kept here that it is for"));
        bench.enter("scope", "place");
        QCOMPARE(bench.form.field("place")->text(), QString("A"));
        QCOMPARE(bench.form.field("place")->hint(), QString("2 are kept here that it is for"));
    }

    void whomMustBeKnown() {
        Bench bench;
        for (const auto* scope : {"species", "place", "animal"}) {
            bench.enter("scope", scope);
            QVERIFY(bench.form.layers().isEmpty());
            QVERIFY(!bench.form.field("value")->isWanted());
            QVERIFY(bench.wanted().isEmpty());
            QCOMPARE(bench.error(scope), QString("Say whom it is for."));
        }
        bench.enter("animal", "999");
        QVERIFY(bench.wanted().isEmpty());
        QVERIFY(bench.error("animal").startsWith("Nobody here has this number."));
        bench.enter("scope", "place");
        bench.enter("place", QString(300, 'x'));
        bench.enter("value", "9-11");
        QVERIFY(bench.wanted().isEmpty());
        QVERIFY(bench.error("place").contains("too long"));
    }

    void layersSayWhatWouldHoldWithoutThem() {
        Bench bench(adults, true);
        setRule(bench.at, adults.toStdString(), "20-30");
        setRule(bench.at, adults.toStdString() + "@species:Mexican red knee", "15-16");
        setRule(bench.at, adults.toStdString() + "@place:A", "12-13");
        QCOMPARE(bench.layers("from"), (QStringList{"from place A", "from species Mexican red knee",
                                                    "from you", "as shipped"}));
        QCOMPARE(bench.layers("note").first(),
                 QString("Without it: 15 to 16 days, from species Mexican red knee"));
        QCOMPARE(bench.layers("note").at(1), QString("A narrower value holds instead"));
        QCOMPARE(bench.layers("note").last(), QString());
        QCOMPARE(bench.layers("holds"), (QStringList{"true", "false", "false", "false"}));
        QSignalSpy spy(&bench.form, &RuleForm::previewWanted);
        bench.form.takeBack(bench.layers("key").first());
        QCOMPARE(spy.first().at(0).toString(), QString("feed.interval.adult@place:A"));
        QCOMPARE(spy.first().at(1).toString(), QString());
        QCOMPARE(bench.form.field("value")->text(), QString("12-13"));  // follows the book
    }

    void othersAreShownAndTurnedTo() {
        Bench bench;
        const auto key = adults + "@place:Nursery";
        setRule(bench.at, key.toStdString(), "4-5");
        QVERIFY2(column(bench.form.others(), "key").contains(key),
                 qPrintable(column(bench.form.others(), "key").join(' ')));
        bench.form.turnTo(key);
        QCOMPARE(bench.form.field("scope")->text(), QString("place"));
        QCOMPARE(bench.form.field("place")->text(), QString("Nursery"));
        QCOMPARE(bench.layers("key").first(), key);
        bench.form.turnTo("no key");
        bench.form.turnTo("feed.factor");  // of another rule
        QCOMPARE(bench.form.field("place")->text(), QString("Nursery"));
    }

    void whatIsTypedIsNotLostToOthersEntries() {
        Bench bench;
        bench.enter("value", "8-9");
        log(bench.at, bench.at.hamorii, FactKind::watered, 0);
        QCOMPARE(bench.form.field("value")->text(), QString("8-9"));
        bench.enter("scope", "species");
        QCOMPARE(bench.form.field("value")->text(), QString("8-9"));
    }

    void theSameValueIsNoChange() {
        Bench bench;
        QVERIFY(bench.wanted().isEmpty());
        QVERIFY(bench.error("value").startsWith("That is its value already."));
        setRule(bench.at, adults.toStdString(), "20-30");
        bench.enter("value", "20 to 30");
        QVERIFY(bench.wanted().isEmpty());
        // For everyone the shipped value is no value of one's own.
        bench.enter("value", "10-14");
        QCOMPARE(bench.wanted(), adults + " = ");
    }

    void valuesThatCantBeAreSaid_data() {
        QTest::addColumn<QString>("rule");
        QTest::addColumn<QString>("typed");
        QTest::addColumn<QString>("words");
        const QString juveniles = "feed.interval.juvenile";
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
        Bench bench(rule);
        bench.enter("value", typed);
        QVERIFY(bench.wanted().isEmpty());
        QVERIFY2(bench.error("value").contains(words), qPrintable(bench.error("value")));
        QVERIFY(!bench.error("value").contains(rule));  // it is named by its sentence
    }

    void hintsSayWhatFits_data() {
        QTest::addColumn<QString>("rule");
        QTest::addColumn<QString>("hint");
        QTest::newRow("range") << "feed.interval.juvenile"
                               << "Days from and to, such as 5-7, from 1 to 4000";
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
        QTest::newRow("feeder") << "prey.kind.adult"
                                << "The name of a feeder, such as cricket";
    }
    void hintsSayWhatFits() {
        QFETCH(QString, rule);
        QFETCH(QString, hint);
        Bench bench(rule);
        QCOMPARE(bench.form.field("value")->hint(), hint);
    }

    void kindsThatAreShippedAreSaid() {
        // Somewhere a rule is shipped for an order, a habit or a region.
        DeskFixture at;
        at.openRoom();
        bool isFound = false;
        for (const auto* rule : at.reference.rules.all()) {
            RuleForm form;
            form.setRule(QString::fromStdString(rule->id));
            form.setDesk(&at.desk);
            for (const auto& from : column(form.others(), "from")) {
                QVERIFY2(!from.contains("ruleKind") && from.startsWith("from "), qPrintable(from));
                isFound = true;
            }
        }
        QVERIFY(isFound);
    }

    void withoutARoomThereIsNone() {
        Bench bench;
        bench.at.desk.close();
        QVERIFY(bench.form.isMissing());
        QVERIFY(bench.form.layers().isEmpty());
        RuleForm stray;
        stray.setRule("no.such.rule");
        QVERIFY(!stray.isReady());
        stray.save();
    }
};

QTEST_GUILESS_MAIN(TestRuleForm)
#include "tst_rule_form.moc"
