// Species files: what is shipped, how a keeper's spelling finds it, and what is refused.
#include <QTest>
#include <nlohmann/json.hpp>
#include <set>

#include "husbandry/profile_file.h"
#include "husbandry/profiles.h"
#include "support/assets.h"

using namespace burrow;
using namespace burrow::test;
using nlohmann::json;

namespace {

const Profiles& shippedProfiles() {
    static const auto shared = Profiles::fromJson(assetFiles("species")).value();
    return shared;
}

json goodFile() {
    const auto text = slurp(std::string(BURROW_ASSETS_DIR) + "/species/brachypelma-hamorii.json");
    return json::parse(text);
}

Result<Profiles> load(const std::vector<json>& files) {
    std::vector<std::string> texts;
    for (const auto& file : files) texts.push_back(file.dump());
    return Profiles::fromJson(texts);
}

QString said(const Result<Profiles>& result) {
    return QString::fromStdString(englishWords().say(result.error().message, {}));
}

}  // namespace

class TestProfiles : public QObject {
    Q_OBJECT

private slots:
    void everyShippedFileLoads() {
        const auto files = assetFiles("species");
        QVERIFY(files.size() >= 85);
        const auto profiles = Profiles::fromJson(files);
        if (!profiles) QFAIL(qPrintable(said(profiles)));
        QCOMPARE(profiles->all().size(), files.size());
        std::set<Order> orders;
        std::set<Habit> habits;
        for (const auto& profile : profiles->all()) {
            orders.insert(profile.order);
            habits.insert(profile.habit.value);
        }
        QCOMPARE(orders.size(), std::size_t{5});
        QCOMPARE(habits.size(), std::size_t{3});
    }

    void everySourceIsACitationOrSaysThatThereIsNone() {
        for (const auto& text : assetFiles("species")) {
            const auto file = json::parse(text);
            for (const auto& [field, value] : file.items()) {
                if (!value.is_object() || field == "authority") continue;
                const auto source = value.at("source").get<std::string>();
                const bool cites = source.find("19") != std::string::npos ||
                                   source.find("20") != std::string::npos;
                const bool isOpen = field == "listing" && value.at("value") == "not_checked" &&
                                    source == "not checked";
                QVERIFY2(cites || isOpen || source == "common practice, no source",
                         qPrintable(QString::fromStdString(file.at("name").get<std::string>() +
                                                           " " + field + ": " + source)));
            }
        }
    }

    void aNameFindsItsSpecies_data() {
        QTest::addColumn<QString>("typed");
        QTest::addColumn<QString>("valid");
        const auto row = [](const char* typed, const char* valid) {
            QTest::newRow(typed) << typed << valid;
        };
        // Valid names and the names they had before, as in the taxonomic literature.
        row("Brachypelma hamorii", "Brachypelma hamorii");
        row("Haplopelma lividum", "Cyriopagopus lividus");
        row("Avicularia versicolor", "Caribena versicolor");
        row("Avicularia laeta", "Caribena laeta");
        row("Grammostola porteri", "Grammostola rosea");
        row("Grammostola aureostriata", "Grammostola pulchripes");
        row("Brachypelma vagans", "Tliltocatl vagans");
        row("Brachypelma albopilosum", "Tliltocatl albopilosus");
        row("Tliltocatl albopilosum", "Tliltocatl albopilosus");
        row("Ceratogyrus bechuanicus", "Ceratogyrus darlingi");
        row("Citharischius crawshayi", "Pelinobius muticus");
        row("Holothele incei", "Neoholothele incei");
        row("Oligoxystre diamantinensis", "Dolichothele diamantinensis");
        row("Pandinus dictator", "Pandinopsis dictator");
        // The trade's names and the keeper's ways of writing.
        row("mexican RED knee", "Brachypelma hamorii");
        row("  brachypelma   hamorii ", "Brachypelma hamorii");
        row("brachypelma_hamorii", "Brachypelma hamorii");
        row("B. hamorii", "Brachypelma hamorii");
        row("b.hamorii", "Brachypelma hamorii");
        row("B hamorii", "Brachypelma hamorii");
        row("Poec. regalis", "Poecilotheria regalis");
        row("P. regalis", "Poecilotheria regalis");
        row("H. lividum", "Cyriopagopus lividus");
        row("A. versicolor", "Caribena versicolor");
        row("emperor scorpion", "Pandinus imperator");
        row("OBT", "Pterinochilus murinus");
        row("gbb", "Chromatopelma cyaneopubescens");
        row("Pandinus cavimanus", "Pandinoides cavimanus");
        row("Heterometrus swammerdami", "Gigantometrus swammerdami");
        row("Phrynus diadema", "Damon diadema");
        row("Lycosa carolinensis", "Hogna carolinensis");
    }
    void aNameFindsItsSpecies() {
        QFETCH(QString, typed);
        QFETCH(QString, valid);
        const auto* found = shippedProfiles().find(typed.toStdString());
        QVERIFY(found != nullptr);
        QCOMPARE(QString::fromStdString(found->name), valid);
    }

    void whatFitsNoneOrSeveralIsNotGuessed() {
        const auto& profiles = shippedProfiles();
        QVERIFY(profiles.find("") == nullptr);
        QVERIFY(profiles.find("   ") == nullptr);
        QVERIFY(profiles.find("Brachypelma") == nullptr);
        QVERIFY(profiles.find("B. hamori i") == nullptr);
        QVERIFY(profiles.find(". hamorii") == nullptr);
        auto other = goodFile();
        other["name"] = "Bonnetina hamorii";
        other["other_names"] = json::array();
        other["trade_names"] = json::array();
        const auto two = load({goodFile(), other}).value();
        QVERIFY(two.find("B. hamorii") == nullptr);
        QCOMPARE(two.find("Bra. hamorii")->name, std::string("Brachypelma hamorii"));
    }

    void aTypingErrorIsAnsweredWithCloseNames() {
        const auto& profiles = shippedProfiles();
        QCOMPARE(profiles.suggest("Brachypelma hamoiri", 3).at(0),
                 std::string("Brachypelma hamorii"));
        QCOMPARE(profiles.suggest("Grammostola pulcrha", 1),
                 std::vector<std::string>{"Grammostola pulchra"});
        QCOMPARE(profiles.suggest("caribbena versicolr", 1),
                 std::vector<std::string>{"Caribena versicolor"});
        QCOMPARE(profiles.suggest("G. pulcra", 1), std::vector<std::string>{"Grammostola pulchra"});
        QCOMPARE(profiles.suggest("P. met", 1),
                 std::vector<std::string>{"Poecilotheria metallica"});
        QVERIFY(profiles.suggest("Poecelotheria", 1).at(0).starts_with("Poecilotheria "));
        QVERIFY(profiles.suggest("goldfish", 5).empty());
        QVERIFY(profiles.suggest("Poecilotheria", 2).size() <= 2);
    }

    void twoSwappedLettersAreOneSlip() {
        auto other = goodFile();
        other["name"] = "Brachypelma hamoaai";
        other["other_names"] = json::array();
        other["trade_names"] = json::array();
        auto right = goodFile();
        right["other_names"] = json::array();
        const auto two = load({right, other}).value();
        const std::vector<std::string> expected{"Brachypelma hamorii", "Brachypelma hamoaai"};
        QCOMPARE(two.suggest("Brachypelma hamoiri", 2), expected);
    }

    // Urticating setae in the New World only (Bertani & Guadanucci 2013).
    void noOldWorldSpeciesHasUrticatingHairs() {
        for (const auto& profile : shippedProfiles().all()) {
            const bool isOldWorld = profile.region.value == Region::oldWorld;
            QVERIFY(!isOldWorld || profile.hairs.value == Hairs::none);
        }
    }

    // Fuchs et al. 2014 (Poecilotheria); Hauke & Herzig 2021 (Poecilotheriinae, Harpactirinae,
    // Stromatopelminae have the most reports of pronounced cramps).
    void theGeneraNamedInTheBiteReportsCarryAWarning_data() {
        QTest::addColumn<QString>("genus");
        QTest::addColumn<bool>("isSignificant");
        QTest::newRow("Poecilotheria") << "Poecilotheria" << true;
        QTest::newRow("Stromatopelma") << "Stromatopelma" << true;
        QTest::newRow("Heteroscodra") << "Heteroscodra" << true;
        QTest::newRow("Pterinochilus murinus") << "Pterinochilus murinus" << true;
        QTest::newRow("Ceratogyrus") << "Ceratogyrus" << false;
    }
    void theGeneraNamedInTheBiteReportsCarryAWarning() {
        QFETCH(QString, genus);
        QFETCH(bool, isSignificant);
        int seen = 0;
        for (const auto& profile : shippedProfiles().all()) {
            const auto name = QString::fromStdString(profile.name);
            if (name != genus && !name.startsWith(genus + " ")) continue;
            ++seen;
            QCOMPARE(profile.venom.value == Venom::significant, isSignificant);
            QVERIFY(profile.venom.value != Venom::mild);
            QVERIFY(profile.venom.source.find("Toxicon") != std::string::npos);
        }
        QVERIFY(seen > 0);
    }

    // CITES Appendix II: Brachypelma, Poecilotheria (CoP18 Prop. 46), Tliltocatl as former
    // Brachypelma (Mendoza & Francke 2020), Pandinus imperator and Pandinopsis dictator (Rossi
    // 2015).
    void theListedGeneraAreMarkedAsListed() {
        const std::set<std::string> listedGenera{"Brachypelma", "Tliltocatl", "Poecilotheria",
                                                 "Pandinus", "Pandinopsis"};
        const auto words = englishWords();
        for (const auto& profile : shippedProfiles().all()) {
            const auto genus = profile.name.substr(0, profile.name.find(' '));
            const bool isListed = profile.listing.value == Listing::citesAppendixII;
            QCOMPARE(isListed, listedGenera.contains(genus));
            const auto note = QString::fromStdString(
                words.say(listingNote(profile), parseIsoDate("2026-05-08").value()));
            if (profile.listing.value == Listing::notChecked) {
                QVERIFY2(note.contains("not looked up"), qPrintable(note));
                continue;
            }
            QCOMPARE(isoDate(profile.listingAsOf), std::string("2019-11-26"));
            QVERIFY2(note.contains("26 November 2019"), qPrintable(note));
            QVERIFY2(note.contains("not checked"), qPrintable(note));
        }
    }

    // Sizes from encyclopaedia pages that cite the species descriptions: T. blondi span to 30 cm,
    // O. schioedtei 22 cm, G. rosea to 15 cm, P. regalis sometimes above 18 cm.
    void theLargestSizesAgreeWithWhatIsPublished() {
        const auto& profiles = shippedProfiles();
        const auto most = [&](const char* species) {
            return profiles.find(species)->adultSpan.value.most.value;
        };
        QCOMPARE(most("Theraphosa blondi"), 300.0);
        QCOMPARE(most("Omothymus schioedtei"), 220.0);
        QCOMPARE(most("Grammostola rosea"), 150.0);
        QVERIFY(most("Poecilotheria regalis") > 180.0);
    }

    // Brackets around the authority mean that the genus changed since the description (ICZN,
    // art. 51.3).
    void bracketsAgreeWithTheGenusOfTheFirstDescription_data() {
        QTest::addColumn<QString>("species");
        QTest::addColumn<bool>("changed");
        QTest::newRow("hamorii") << "Brachypelma hamorii" << false;
        QTest::newRow("vagans") << "Tliltocatl vagans" << true;
        QTest::newRow("lividus") << "Cyriopagopus lividus" << true;
        QTest::newRow("regalis") << "Poecilotheria regalis" << false;
        QTest::newRow("diamantinensis") << "Dolichothele diamantinensis" << true;
    }
    void bracketsAgreeWithTheGenusOfTheFirstDescription() {
        QFETCH(QString, species);
        QFETCH(bool, changed);
        const auto& profiles = shippedProfiles();
        QCOMPARE(profiles.find(species.toStdString())->authority.starts_with('('), changed);
    }

    void everyLineFitsACareSheet() {
        for (const auto& profile : shippedProfiles().all()) {
            QVERIFY(profile.housing.size() <= longestProfileLine);
            QVERIFY(profile.handling.size() <= longestProfileLine);
        }
    }

    void aBadFileIsRefusedWithItsPlaceAndField_data() {
        QTest::addColumn<QString>("field");
        QTest::addColumn<QString>("value");  // JSON; empty removes the field
        QTest::addColumn<QString>("expected");
        const auto row = [](const char* name, const char* field, const char* value,
                            const char* expected) {
            QTest::newRow(name) << field << value << expected;
        };
        row("no habit", "habit", "", "needs habit");
        row("bare value", "habit", R"("arboreal")", "needs habit");
        row("no source", "habit", R"({"value": "arboreal"})", "no source for habit");
        row("empty source", "damp", R"({"value": "dry", "source": " "})", "no source for damp");
        row("unknown word", "venom", R"({"value": "deadly", "source": "x"})", "value for venom");
        row("wrong type", "fast", R"({"value": "yes", "source": "x"})", "value for fast");
        row("one number", "adult_span_mm", R"({"value": [140], "source": "x"})",
            "needs adult_span_mm");
        row("wrong order", "adult_span_mm", R"({"value": [150, 130], "source": "x"})",
            "range for adult_span_mm");
        row("too large", "adult_span_mm", R"({"value": [130, 1500], "source": "x"})",
            "range for adult_span_mm");
        row("too warm", "warmth_c", R"({"value": [22, 72], "source": "x"})", "range for warmth_c");
        row("no day", "listing", R"({"value": "not_found", "source": "x"})", "needs as_of");
        row("no such day", "listing",
            R"({"value": "not_found", "source": "x", "as_of": "2019-02-30"})", "value for as_of");
        row("no binomial", "name", R"("Red Knee")", "no genus and epithet");
        row("names no list", "other_names", R"("Euathlus")", "needs other_names");
        row("no moults", "moults", "", "needs moults");
        row("two lines", "handling", R"("Never.\nSometimes.")", "line end");
        row("turned writing", "housing", R"("tub \u202e but")", "can't be shown");
        row("unknown field", "lifespan", "12", "a field lifespan");
        row("long line", "housing",
            R"("Far too much is written here for one line of a care sheet that is printed on A5 paper")",
            "longer than one line");
    }
    void aBadFileIsRefusedWithItsPlaceAndField() {
        QFETCH(QString, field);
        QFETCH(QString, value);
        QFETCH(QString, expected);
        auto good = goodFile();
        auto bad = goodFile();
        good["name"] = "Brachypelma emilia";
        good["other_names"] = json::array();
        good["trade_names"] = json::array();
        bad.erase(field.toStdString());
        if (!value.isEmpty()) bad[field.toStdString()] = json::parse(value.toStdString());
        const auto result = load({good, bad});
        QVERIFY(!result);
        QVERIFY2(said(result).contains(expected), qPrintable(said(result)));
        QVERIFY2(said(result).startsWith("Species profile 2"), qPrintable(said(result)));
    }

    void whatIsNoJsonIsRefused() {
        for (const std::string text : {"", "[]", "{", "\xff\xfe"}) {
            const auto result = Profiles::fromJson(std::vector<std::string>{text});
            QVERIFY(!result);
            QVERIFY(said(result).contains("can't be read"));
        }
    }

    void whatIsMeasuredByItsBody() {
        const auto& profiles = shippedProfiles();
        const auto isLong = [&](const char* species) {
            return isMeasuredByBody(profiles.find(species)->order);
        };
        QVERIFY(isLong("Pandinus imperator") && isLong("Mastigoproctus giganteus"));
        QVERIFY(!isLong("Damon diadema") && !isLong("Phidippus regius"));
        QVERIFY(!isLong("Brachypelma hamorii"));
    }

    // Eisner, Meinwald, Monro & Ghent 1961, J. Insect Physiol. 6:272-298: the spray is mostly acetic
    // acid. Weygoldt 2000, Whip Spiders: no venom glands; they go on moulting when grown.
    void vinegaroonsSprayAndWhipSpidersHaveNoVenom() {
        const auto& profiles = shippedProfiles();
        const std::vector<Caution> sprays{Caution::spray};
        QCOMPARE(cautions(*profiles.find("Mastigoproctus giganteus")), sprays);
        const auto& whip = *profiles.find("Damon diadema");
        QCOMPARE(cautions(whip), std::vector<Caution>{Caution::fast});
        QVERIFY(whip.venom.value == Venom::none && whip.moults.value == Moults::goOn);
        QVERIFY(profiles.find("Hadrurus arizonensis")->moults.value == Moults::untilGrown);
        QVERIFY(profiles.find("Grammostola rosea")->moults.value == Moults::femalesGoOn);
    }

    void oneNameCannotStandForTwoSpecies() {
        auto other = goodFile();
        other["name"] = "Brachypelma emilia";
        const auto result = load({goodFile(), other});
        QVERIFY(!result);
        QVERIFY2(said(result).contains("both"), qPrintable(said(result)));
    }
};

QTEST_APPLESS_MAIN(TestProfiles)
#include "tst_profiles.moc"
