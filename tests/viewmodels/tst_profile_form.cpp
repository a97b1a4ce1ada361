// Species of the keeper's own in a form: added, changed, marked as from the keeper, and what is refused.
#include <QSignalSpy>

#include "husbandry/profile_file.h"
#include "room/own_profiles.h"
#include "viewmodels/keeping.h"
#include "viewmodels/profileform.h"
#include "viewmodels/profilemodel.h"
#include "viewmodels/speciesmodel.h"

using namespace burrow;
using namespace burrow::test;

namespace {

class Bench {
public:
    explicit Bench(const QString& species = {}) {
        at.openRoom();
        form.setSpecies(species);
        form.setDesk(&at.desk);
    }
    void enter(const char* field, const QString& text) { form.field(field)->enter(text); }
    [[nodiscard]] QString text(const char* field) const { return form.field(field)->text(); }
    [[nodiscard]] QString error(const char* field) const { return form.field(field)->error(); }
    void enterPorteri() {
        enter("name", "Grammostola porteri");
        enter("authority", "Mello-Leitao, 1936");
        enter("trade_names", "own rose, northern rose");
        enter("order", "tarantula");
        enter("region", "new_world");
        enter("habit", "terrestrial");
        enter("adult_span_mm", "120 to 140");
        enter("warmth_c", "18,5-25");
        enter("damp", "dry");
        enter("temperament", "calm");
        enter("fast", "no");
        enter("venom", "mild");
        enter("hairs", "abdomen");
        enter("groups", "no");
        enter("moults", "females_go_on");
        enter("listing", "not_checked");
        enter("housing", "Floor three leg spans long, dry soil, cork hide.");
        enter("handling", "Better not: a fall can kill it. Wash hands.");
    }
    /// Whether it was saved.
    bool save() {
        QSignalSpy saved(&form, &FormModel::saved);
        form.save();
        at.settle();
        return saved.count() == 1;
    }
    [[nodiscard]] const Profile* known(const char* name) const {
        return at.desk.profiles().find(name);
    }

    DeskFixture at;
    ProfileForm form;
};

}  // namespace

class TestProfileForm : public QObject {
    Q_OBJECT

private slots:
    void aNewOneIsAdded() {
        Bench bench;
        bench.enterPorteri();
        QVERIFY2(bench.save(), qPrintable(bench.form.error()));
        const auto* profile = bench.known("northern rose");
        QVERIFY(profile != nullptr);
        QCOMPARE(profile->name, std::string("Grammostola porteri"));
        QCOMPARE(profile->origin, ProfileOrigin::keeper);
        QCOMPARE(profile->adultSpan.value.least.value, 120.0);
        QCOMPARE(profile->warmth.value.least.value, 18.5);
        QCOMPARE(profile->fast.value, false);
        for (const auto* source : {&profile->venom.source, &profile->hairs.source,
                                   &profile->adultSpan.source, &profile->authoritySource}) {
            QCOMPARE(*source, std::string("from you"));
        }
        QCOMPARE(bench.at.desk.doneText(), QString("species added"));
        bench.at.desk.undo();
        bench.at.settle();
        QVERIFY(bench.known("northern rose") == nullptr);
    }

    void nothingThatCanHurtIsAssumed() {
        Bench bench;
        for (const auto* fact : {"venom", "hairs", "fast", "temperament", "listing"}) {
            QVERIFY(bench.text(fact).isEmpty());
        }
        bench.enterPorteri();
        bench.form.field("venom")->enter("");
        bench.form.field("fast")->enter("");
        QVERIFY(!bench.save());
        QCOMPARE(bench.error("venom"), QString("Choose one."));
        QCOMPARE(bench.error("fast"), QString("Still needed."));
        QVERIFY(bench.known("Grammostola porteri") == nullptr ||
                bench.known("Grammostola porteri")->origin == ProfileOrigin::assets);
    }

    void allThatIsWrongShowsAtOnce() {
        Bench bench;
        QVERIFY(!bench.save());
        QVERIFY(bench.form.error().startsWith("Something above"));
        for (const auto& fact : profileFacts()) {
            const bool mayBeEmpty = fact.shape == FactShape::names;
            QVERIFY2(bench.error(fact.name).isEmpty() == mayBeEmpty, fact.name);
            QVERIFY(!bench.error(fact.name).contains("profile"));
        }
    }

    void valuesThatCantBeAreSaid_data() {
        QTest::addColumn<QString>("field");
        QTest::addColumn<QString>("typed");
        QTest::addColumn<QString>("words");
        QTest::newRow("no epithet") << "name"
                                    << "Grammostola"
                                    << "A genus and an epithet";
        QTest::newRow("small genus") << "name"
                                     << "grammostola porteri"
                                     << "A genus";
        QTest::newRow("huge") << "adult_span_mm"
                              << "120-4000"
                              << "This can't be";
        QTest::newRow("wrong way round") << "adult_span_mm"
                                         << "140-120"
                                         << "This can't be";
        QTest::newRow("words") << "warmth_c"
                               << "warm"
                               << "Type two numbers";
        QTest::newRow("long") << "housing" << QString(90, 'x') << "Longer than one line";
        QTest::newRow("two lines") << "handling"
                                   << "one\ntwo"
                                   << "signs that can't be shown";
        QTest::newRow("names") << "trade_names" << QString("a,").repeated(30) << "Too many names";
        QTest::newRow("no source") << "venom_source"
                                   << " "
                                   << "Say where it comes from";
        QTest::newRow("long source") << "venom_source" << QString(300, 'x') << "Shorten it";
    }
    void valuesThatCantBeAreSaid() {
        QFETCH(QString, field);
        QFETCH(QString, typed);
        QFETCH(QString, words);
        Bench bench;
        bench.enterPorteri();
        bench.enter("sources", "yes");
        bench.enter(qPrintable(field), typed);
        QVERIFY(!bench.save());
        QVERIFY2(bench.error(qPrintable(field)).contains(words),
                 qPrintable(bench.error(qPrintable(field))));
        QStringList wrong;
        for (const auto* each : bench.form.all()) {
            if (!each->error().isEmpty()) wrong.append(each->name());
        }
        QCOMPARE(wrong.join(" "), field);
    }

    void aShippedOneBecomesTheKeepers() {
        Bench bench("Mexican red knee");
        const auto before = *bench.known("Brachypelma hamorii");
        QCOMPARE(bench.text("name"), QString("Brachypelma hamorii"));
        QCOMPARE(bench.text("adult_span_mm"), QString("130-150"));
        QVERIFY(!bench.form.field("venom_source")->isWanted());
        bench.enter("adult_span_mm", "135-155");
        QCOMPARE(bench.text("adult_span_mm_source"), QString("from you"));
        QCOMPARE(bench.text("hairs_source"), QString::fromStdString(before.hairs.source));
        bench.enter("adult_span_mm", "130 to 150");  // as it was
        QCOMPARE(bench.text("adult_span_mm_source"),
                 QString::fromStdString(before.adultSpan.source));
        bench.enter("adult_span_mm", "135-155");
        QVERIFY(bench.save());
        const auto& now = *bench.known("Mexican red knee");
        QCOMPARE(now.origin, ProfileOrigin::keeper);
        QCOMPARE(now.adultSpan.value.most.value, 155.0);
        auto otherwise = now;
        otherwise.adultSpan = before.adultSpan;
        otherwise.origin = before.origin;
        QVERIFY(otherwise == before);  // nothing else was touched
        // Those who are kept here know of it.
        QCOMPARE(resident(bench.at, bench.at.hamorii)->profile->origin, ProfileOrigin::keeper);
    }

    void everyShippedOneIsReadAndWrittenAsItIs() {
        Bench bench;
        for (const auto& profile : bench.at.reference.profiles.all()) {
            const auto object = nlohmann::json::parse(profileText(profile));
            auto again = nlohmann::json::object();
            for (const auto& fact : profileFacts()) {
                again[fact.name] = factFrom(fact, enteredOf(fact, object), sourceOf(fact, object));
                if (object[fact.name].is_object() && object[fact.name].contains("as_of")) {
                    again[fact.name]["as_of"] = object[fact.name]["as_of"];
                }
            }
            QVERIFY2(again == object, profile.name.c_str());
        }
    }

    void anotherSourceCanBeGiven() {
        Bench bench("Brachypelma hamorii");
        bench.enter("sources", "yes");
        QVERIFY(bench.form.field("venom_source")->isWanted());
        bench.enter("warmth_c", "20-26");
        bench.enter("warmth_c_source", "my own logger, 2025");
        bench.enter("sources", "");
        QVERIFY(bench.save());
        QCOMPARE(bench.known("Brachypelma hamorii")->warmth.source,
                 std::string("my own logger, 2025"));
    }

    void startsFromOneThatIsLikeIt() {
        Bench bench;
        bench.enter("like", "red knee");
        QVERIFY(bench.form.field("like")->suggestions().contains("Brachypelma hamorii"));
        QVERIFY(bench.text("habit").isEmpty());
        bench.enter("like", "Brachypelma hamorii");
        QCOMPARE(bench.text("habit"), QString("terrestrial"));
        QCOMPARE(bench.text("habit_source"), QString("from you, as for Brachypelma hamorii"));
        for (const auto* itsOwn : {"name", "authority", "trade_names", "listing"}) {
            QVERIFY(bench.text(itsOwn).isEmpty());
        }
        bench.enter("habit", "fossorial");
        bench.enter("name", "Brachypelma novum");
        QCOMPARE(bench.text("habit"), QString("fossorial"));  // is not filled in again
    }

    void oneIsRenamed() {
        Bench bench;
        bench.enterPorteri();
        QVERIFY(bench.save());
        ProfileForm form;
        form.setSpecies("Grammostola porteri");
        form.setDesk(&bench.at.desk);
        form.field("name")->enter("Grammostola northi");
        form.save();
        bench.at.settle();
        QVERIFY(bench.known("Grammostola northi") != nullptr);
        const auto own = ownProfiles(bench.at.desk.room()->info()).profiles;
        QCOMPARE(own.size(), std::size_t{1});
    }

    void aNameOfTwoSpeciesIsRefused() {
        Bench bench;
        bench.enterPorteri();
        bench.enter("trade_names", "Mexican red knee");
        QVERIFY(!bench.save());
        QVERIFY2(bench.form.error().contains("stands for both"), qPrintable(bench.form.error()));
    }

    void listingsHaveTheirDay() {
        Bench bench;
        bench.enterPorteri();
        QVERIFY(!bench.form.field("as_of")->isWanted());
        bench.enter("listing", "not_found");
        QVERIFY(bench.form.field("as_of")->isWanted());
        QVERIFY(bench.save());
        QCOMPARE(bench.known("Grammostola porteri")->listingAsOf, bench.at.desk.today());
    }

    void isDroppedAgain() {
        Bench bench("Brachypelma hamorii");
        bench.enter("damp", "moist");
        QVERIFY(bench.save());
        ProfileModel page;
        page.setDesk(&bench.at.desk);
        page.setSpecies("Brachypelma hamorii");
        QVERIFY(page.isOwn() && page.isOverShipped());
        QCOMPARE(page.origin(), QString("from you"));
        SpeciesModel list;
        list.setDesk(&bench.at.desk);
        list.setFilter("Brachypelma hamorii");
        QVERIFY(list.data(list.index(0), SpeciesModel::NoteRole).toString().contains("From you"));
        page.drop();
        bench.at.settle();
        QVERIFY(!page.isOwn());
        QCOMPARE(page.origin(), QString("shipped"));
        QCOMPARE(bench.at.desk.doneText(), QString("species as shipped again"));
        bench.at.desk.undo();
        bench.at.settle();
        QVERIFY(page.isOwn());
    }

    void strangersAreMissing() {
        Bench bench("Nobody nullus");
        QVERIFY(bench.form.isMissing());
        bench.form.save();
        ProfileModel page;
        page.drop();
        QVERIFY(page.origin().isEmpty());
    }
};

QTEST_GUILESS_MAIN(TestProfileForm)
#include "tst_profile_form.moc"
