// What the book says of an animal's sex, and whose moults wait.
#include <QtTest>

#include "room/sex_case.h"
#include "room/sex_words.h"
#include "support/assets.h"
#include "support/book.h"

using namespace burrow;
using namespace burrow::test;

namespace {

const sexing::SexingRules& rules() {
    static const auto rules =
        sexing::SexingRules::fromJson(
            slurp(std::filesystem::path(BURROW_ASSETS_DIR) / "rules/tables/sexing.json"))
            .value();
    return rules;
}

const Profiles& profiles() {
    static const auto profiles = Profiles::fromJson(assetFiles("species")).value();
    return profiles;
}

class MoultRoom : public TestBook {
public:
    /// A moult so many days ago with so many photos.
    EntryId moult(SubjectId subject, int daysAgo, double carapace, int photos = 1) {
        const Instant at{fridayEvening.ms - daysAgo * msPerDay};
        const EntryId id{book.newId()};
        FactBody sized;
        if (carapace > 0) sized.carapace = Millimetres{carapace};
        std::vector<Draft> drafts{FactDraft{subject, FactKind::moulted, sized, at, id}};
        for (int i = 0; i < photos; ++i) {
            FactDraft photo{subject, FactKind::photo, {}, at};
            photo.body.role = PhotoRole::moult;
            photo.body.picture = Sha256::of(id.text() + std::to_string(i));
            photo.body.about = id;
            drafts.emplace_back(std::move(photo));
        }
        book.record(drafts).value();
        return id;
    }
    void look(SubjectId subject, const EntryId& moult, Sex sex, std::optional<Clarity> clarity) {
        FactBody body;
        body.sex = sex;
        body.about = moult;
        body.clarity = clarity;
        log(subject, FactKind::sexed, body);
    }
    /// A carapace taken of that skin afterwards, as the page that measures writes it.
    void measure(SubjectId subject, const EntryId& moult, double carapace) {
        FactBody body;
        body.carapace = Millimetres{carapace};
        body.method = Method::photo;
        body.about = moult;
        log(subject, FactKind::measured, body);
    }
    std::vector<ToBeSexed> waiting() { return toBeSexed(book, rules(), profiles()).value(); }
    SexCase caseOf(SubjectId subject) {
        return sexCase(book, subject, rules(), profiles()).value().value();
    }
};

}  // namespace

class TestSexCase : public QObject {
    Q_OBJECT

private slots:
    void thoseThatTellMostComeFirst() {
        MoultRoom at;
        const auto small = at.add("1", "Brachypelma hamorii");
        const auto large = at.add("2", "Brachypelma hamorii");
        const auto bare = at.add("3", "Brachypelma hamorii");
        const auto older = at.add("4", "Brachypelma hamorii");
        at.moult(small, 500, 3);
        at.moult(large, 5, 20, 2);
        at.moult(bare, 3, 30, 0);
        at.moult(older, 50, 20);
        const auto rows = at.waiting();
        QCOMPARE(rows.size(), std::size_t{3});
        QCOMPARE(rows[0].subject, older);
        QCOMPARE(rows[1].subject, large);
        QCOMPARE(rows[1].moult.pictures.size(), std::size_t{2});
        QCOMPARE(rows[2].subject, small);
        QVERIFY(rows[0].bits > rows[2].bits);
    }

    void oneRowForEachAnimalWithItsBestMoult() {
        MoultRoom at;
        const auto animal = at.add("1", "Brachypelma hamorii");
        at.moult(animal, 300, 6);
        const auto best = at.moult(animal, 100, 12);
        at.moult(animal, 5, 0);
        const auto rows = at.waiting();
        QCOMPARE(rows.size(), std::size_t{1});
        QCOMPARE(rows[0].moult.moult, best);
        QCOMPARE(rows[0].waiting, 3);
    }

    void aCarapaceMeasuredInThePhotoIsTheMoults() {
        MoultRoom at;
        const auto animal = at.add("1", "Brachypelma hamorii");
        const auto other = at.add("2", "Brachypelma hamorii");
        const auto moult = at.moult(animal, 5, 0);
        at.moult(other, 50, 10);
        QCOMPARE(at.waiting()[0].subject, other);  // 10 mm tell more than a size that is not known
        at.measure(animal, moult, 12);
        const auto rows = at.waiting();
        QCOMPARE(rows[0].subject, animal);
        QCOMPARE(rows[0].moult.carapace, Millimetres{12});
        at.look(animal, moult, Sex::female, Clarity::fairly);
        QCOMPARE(at.caseOf(animal).finding.ledger.at(0).row, std::string("11_to_16.fairly"));
        // Measured again: the last one counts, in what was looked at before as well.
        at.clock.set({fridayEvening.ms + 1000});
        at.measure(animal, moult, 18);
        QCOMPARE(at.caseOf(animal).sightings.at(0).carapace, Millimetres{18});
        QVERIFY(at.caseOf(animal).finding.ledger.at(0).row != "11_to_16.fairly");
    }

    void whoIsSettledOrOnRecordDoesNotWait() {
        MoultRoom at;
        const auto animal = at.add("1", "Brachypelma hamorii");
        const auto group = at.add("2", "Neoholothele incei", Form::group, 12);
        const auto sold = at.add("3", "Brachypelma hamorii");
        const auto told = at.add("4", "Brachypelma hamorii");
        const auto moult = at.moult(animal, 5, 20);
        at.moult(group, 5, 5);
        at.moult(sold, 5, 20);
        at.log(sold, FactKind::sold);
        at.moult(told, 5, 20);
        at.look(told, at.moult(told, 50, 18), Sex::male, Clarity::clearly);
        QCOMPARE(at.waiting().size(), std::size_t{1});
        // Another keeper is beyond doubt: nothing is on record, and yet it is settled.
        FactBody body;
        body.sex = Sex::female;
        body.about = moult;
        body.judge = "Wren";
        body.clarity = Clarity::beyondDoubt;
        at.log(animal, FactKind::sexed, body);
        QCOMPARE(at.kept(animal).subject.sex, Sex::unknown);
        QVERIFY(at.caseOf(animal).finding.isSettled());
        QVERIFY(at.waiting().empty());
    }

    /// A sex that somebody else wrote down is worth a look, after those of whom nothing is known.
    void asSoldComesAfterThoseUnknown() {
        MoultRoom at;
        const auto sold = at.add("1", "Brachypelma hamorii");
        const auto fresh = at.add("2", "Brachypelma hamorii");
        at.book.record(SetDraft{ThingType::subject, sold.uuid, {{"sex", "female"}}}).value();
        const auto moult = at.moult(sold, 5, 20);
        at.moult(fresh, 5, 5);
        auto rows = at.waiting();
        QCOMPARE(rows.size(), std::size_t{2});
        QCOMPARE(rows[0].subject, fresh);
        QVERIFY(rows[1].isRecorded);
        at.look(sold, moult, Sex::female, Clarity::partly);
        QCOMPARE(at.waiting().size(), std::size_t{1});
    }

    void lookedAtWithoutAnEndComesLast() {
        MoultRoom at;
        const auto looked = at.add("1", "Brachypelma hamorii");
        const auto fresh = at.add("2", "Brachypelma hamorii");
        at.look(looked, at.moult(looked, 100, 20), Sex::unknown, std::nullopt);
        at.moult(fresh, 1, 2);
        const auto rows = at.waiting();
        QCOMPARE(rows.size(), std::size_t{2});
        QCOMPARE(rows[0].subject, fresh);
        QCOMPARE(rows[1].waiting, 0);
        QVERIFY(rows[1].moult.isLooked);
    }

    /// What is only evidence sets nothing on the animal's record, and takes nothing from it.
    void onlyWhatTellsSetsTheSex() {
        MoultRoom at;
        const auto animal = at.add("1", "Brachypelma hamorii");
        const auto moult = at.moult(animal, 5, 9);
        at.look(animal, moult, Sex::female, Clarity::partly);
        QCOMPARE(at.kept(animal).subject.sex, Sex::unknown);
        at.look(animal, moult, Sex::female, Clarity::fairly);
        QCOMPARE(at.kept(animal).subject.sex, Sex::female);
        QCOMPARE(at.kept(animal).digest.sexed, Sex::female);
        FactBody colour;
        colour.sex = Sex::male;
        colour.look = Look::colour;
        at.log(animal, FactKind::sexed, colour);
        FactBody other;
        other.sex = Sex::unknown;
        other.judge = "Wren";
        at.log(animal, FactKind::sexed, other);
        QCOMPARE(at.kept(animal).subject.sex, Sex::female);
        QCOMPARE(at.kept(animal).digest.sexed, Sex::female);
    }

    void aMaleThatMaturesCorrectsThePlate() {
        MoultRoom at;
        const auto animal = at.add("1", "Brachypelma hamorii");
        at.look(animal, at.moult(animal, 200, 9), Sex::female, Clarity::clearly);
        at.clock.set({fridayEvening.ms + msPerDay});
        FactBody last;
        last.ultimate = true;
        at.log(animal, FactKind::moulted, last);
        const auto found = at.caseOf(animal);
        QCOMPARE(found.finding.verdict, Sex::male);
        QCOMPARE(found.finding.ledger[0].part, sexing::Part::corrected);
        QCOMPARE(found.finding.conflicts[0].kind, sexing::ConflictKind::recorded);
        QCOMPARE(englishWords().say(found.finding.conflicts[0].why, {}),
                 std::string("The animal is recorded as female, and the evidence says otherwise."));
    }

    void chancesAreSaidWithoutFalsePrecision() {
        const auto words = englishWords();
        const auto say = [&](double p) { return words.say(chanceMessage(p), {}); };
        QCOMPARE(say(0.9677), std::string("97 in 100 that it is a female"));
        QCOMPARE(say(0.5), std::string("50 in 100 that it is a female"));
        QCOMPARE(say(0.994), std::string("More than 99 in 100 that it is a female"));
        QCOMPARE(say(0.0001), std::string("Less than 1 in 100 that it is a female"));
    }
};

QTEST_APPLESS_MAIN(TestSexCase)
#include "tst_sex_case.moc"
