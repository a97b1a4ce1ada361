// Finding animals by number, name, tag, place and notes.
#include <QtTest>

#include "journal/check.h"
#include "journal/merge.h"
#include "room/own_profiles.h"
#include "room/search.h"
#include "support/assets.h"
#include "support/joined.h"

using namespace burrow;
using namespace burrow::test;

namespace {

const Profiles& profiles() {
    static const auto shipped = Profiles::fromJson(assetFiles("species")).value();
    return shipped;
}

SearchOptions english() { return {200, placeWords(englishWords())}; }

/// "214 species, 087 note": who was found, and by what.
QString shown(const Findings& findings) {
    QStringList all;
    for (const auto& found : findings.found) {
        all.append(QString::fromStdString(found.number + " " + std::string(name(found.by))));
    }
    return all.join(", ");
}

QString found(TestBook& room, const char* typed) {
    const auto findings = search(room.book, profiles(), typed, english());
    return findings ? shown(*findings) : QString::fromStdString(findings.error().message.id);
}

void set(TestBook& room, SubjectId id, FieldValues fields) {
    room.book.record(SetDraft{ThingType::subject, id.uuid, std::move(fields)}).value();
}

EntryId note(TestBook& room, SubjectId id, const char* text) {
    FactBody body;
    body.text = text;
    return room.log(id, FactKind::note, body).entries.front();
}

/// Four animals with something of everything.
struct SearchedRoom : TestBook {
    SearchedRoom()
        : hamorii(add("214", "Brachypelma hamorii")),
          lividus(add("087", "Haplopelma lividum")),
          pulchra(add("21", "Grammostola pulchra")),
          incei(add("260", "Neoholothele incei", Form::group, 12)) {
        set(*this, hamorii, {{"place", "A / 1"}, {"source", "Saltmarsh Invert Fair"}});
        set(*this, lividus, {{"place", "Nursery / B / C / 3"}, {"note", "webbed over the dish"}});
        book.record(SetDraft{ThingType::tag, tagThing("7Q2MZX89"),
                             toFields(Tag{"7Q2MZX89", Millimetres{20}, pulchra, std::nullopt})})
            .value();
    }
    SubjectId hamorii;
    SubjectId lividus;
    SubjectId pulchra;
    SubjectId incei;
};

}  // namespace

class TestSearch : public QObject {
    Q_OBJECT

private slots:
    void somebodyIsFound_data() {
        QTest::addColumn<QString>("typed");
        QTest::addColumn<QString>("expected");
        const auto row = [](const char* typed, const char* expected) {
            QTest::newRow(typed) << typed << expected;
        };
        row("214", "214 number");
        row("KR-214", "214 number");
        row("kr-0087", "087 number");
        row("87", "087 number");
        row("21", "21 number, 214 number_start");
        row("2", "21 number_start, 214 number_start, 260 number_start");
        row("14", "");
        row("hamorii", "214 species");
        row("HAMO", "214 species");
        row("brachypelma hamorii", "214 species");
        row("B. hamorii", "214 species");
        row("red knee", "214 species");
        // Transferred to Cyriopagopus: Smith & Jacobi 2015 (from memory). Found by either name.
        row("cyriopagopus lividus", "087 species");
        row("Haplopelma lividum", "087 species");
        row("h lividum", "087 species");
        row("7Q2M ZX89", "21 tag");
        row("7q2m", "21 tag");
        row("7q2mzx89", "21 tag");
        row("7q2", "");
        row("dish", "087 note");
        row("webbed di", "087 note");
        row("web dish", "");  // only of the last word the start is enough
        row("dish lividus", "087 note");
        row("saltmarsh", "214 note");
        row("shelf c", "087 place");
        row("shelf a hamorii", "214 place");
        row("rack b", "087 place");
        row("nursery", "087 place");
        row("tub 3", "087 place");
        row("shelf", "087 place, 214 place");
        row("zzqx", "");
        row("   ", "");
        row("", "");
    }
    void somebodyIsFound() {
        QFETCH(QString, typed);
        QFETCH(QString, expected);
        SearchedRoom room;
        QCOMPARE(found(room, qPrintable(typed)), expected);
    }

    void accentsAndCaseDoNotMatter() {
        SearchedRoom room;
        note(room, room.hamorii, "Geh\u00E4use \u00DCBERSPONNEN, caf\u00E9");
        for (const char* typed :
             {"gehause", "Geh\u00E4use", "\u00FCbersponnen", "UBERSP", "cafe"}) {
            QCOMPARE(found(room, typed), QString("214 note"));
        }
    }

    void picturesStandBetweenWords() {
        SearchedRoom room;
        note(room, room.hamorii, "web🕸bed🕷lid🦂door");
        for (const char* typed : {"bed lid", "door", "🕷lid", "web🕸bed"}) {
            QCOMPARE(found(room, typed), QString("214 note"));
        }
    }

    void theFormerComeFirst() {
        SearchedRoom room;
        const auto named = room.add("dish", "Nhandu chromatus");
        const auto starts = room.add("dish-2", "Nhandu chromatus");
        set(room, starts, {{"standing", "dead"}});
        note(room, named, "no dish");
        const auto placed = room.add("300", "Nhandu chromatus");
        set(room, placed, {{"place", "Dish / 1"}});
        QCOMPARE(found(room, "dish"),
                 QString("dish number, dish-2 number_start, 300 place, 087 note"));
        // Those gone come after those kept.
        set(room, room.lividus, {{"standing", "sold"}});
        note(room, room.incei, "dish");
        QCOMPARE(found(room, "dish"),
                 QString("dish number, dish-2 number_start, 300 place, 260 note, 087 note"));
    }

    void aNoteIsShownWhereTheWordStands() {
        SearchedRoom room;
        std::string text;
        for (int i = 0; i < 40; ++i) text += "quiet evening, ";
        const auto entry = note(room, room.incei,
                                (text + "then\nit \u202E bolted under the bark. " + text).c_str());
        const auto findings = search(room.book, profiles(), "bolt", english()).value();
        QCOMPARE(findings.all, std::size_t{1});
        const auto& one = findings.found.front();
        QCOMPARE(one.entry, std::optional(entry));
        QCOMPARE(one.day, std::optional(room.surroundings().today()));
        QVERIFY2(one.what.text.find("then it   bolted under the bark") != std::string::npos,
                 one.what.text.c_str());
        QVERIFY(one.what.text.size() < 120);
        QCOMPARE(one.what.text.find('\n'), std::string::npos);
        QVERIFY(one.what.text.starts_with("\u2026") && one.what.text.ends_with("\u2026"));
        QCOMPARE(one.what.marks.size(), std::size_t{1});
        const auto [from, to] = one.what.marks.front();
        QCOMPARE(one.what.text.substr(from, to - from), std::string("bolted"));
    }

    void aWordWithoutAGapIsCut() {
        SearchedRoom room;
        const std::string endless(3900, 'y');
        note(room, room.incei, endless.c_str());
        const auto findings = search(room.book, profiles(), "yyy", english()).value();
        QVERIFY(findings.found.front().what.text.size() < 400);
    }

    void theNewestNoteWithMostOfTheWordsIsShown() {
        SearchedRoom room;
        note(room, room.incei, "dug by the cork");
        const auto both = note(room, room.incei, "dug under the bark");
        const auto newest = note(room, room.incei, "bark");
        auto findings = search(room.book, profiles(), "dug bark", english()).value();
        QCOMPARE(findings.found.front().entry, std::optional(both));
        room.clock.set({room.clock.now().ms + 1000});
        const auto later = note(room, room.incei, "bark again");
        findings = search(room.book, profiles(), "bark", english()).value();
        QCOMPARE(findings.found.front().entry, std::optional(later));
        QVERIFY(newest != later);
    }

    void correctionsAreFollowed() {
        SearchedRoom room;
        const auto entry = note(room, room.incei, "webbed the lid");
        QCOMPARE(found(room, "lid"), QString("260 note"));
        FactBody body;
        body.text = "webbed the door";
        room.book.record(AmendDraft{entry, body, std::nullopt}).value();
        QCOMPARE(found(room, "lid"), QString());
        QCOMPARE(found(room, "door"), QString("260 note"));
        room.book.undo().value();
        QCOMPARE(found(room, "door"), QString());
        QCOMPARE(found(room, "lid"), QString("260 note"));
        room.book.record(RetractDraft{entry}).value();
        QCOMPARE(found(room, "lid"), QString());
        set(room, room.lividus, {{"note", "quiet"}, {"number", "999"}});
        QCOMPARE(found(room, "dish"), QString());
        QCOMPARE(found(room, "087"), QString());
        QCOMPARE(found(room, "999"), QString("999 number"));
        QVERIFY(check(room.book)->isSound());
    }

    void whatAnEnclosureSaysIsSaidOfThoseInIt() {
        SearchedRoom room;
        Enclosure home;
        home.name = "E12";
        home.place = Place::parse("Attic / 2");
        home.note = "cork bark";
        const EnclosureId id{room.book.newId()};
        const auto write = [&] {
            room.book.record(SetDraft{ThingType::enclosure, id.uuid, toFields(home)}).value();
        };
        write();
        QCOMPARE(found(room, "cork"), QString());
        set(room, room.hamorii, {{"enclosure", id.uuid.text()}});
        set(room, room.incei, {{"enclosure", id.uuid.text()}});
        QCOMPARE(found(room, "cork"), QString("214 note, 260 note"));
        QCOMPARE(found(room, "E12"), QString("214 place, 260 place"));
        QCOMPARE(found(room, "attic"), QString("214 place, 260 place"));
        QCOMPARE(found(room, "shelf a"), QString());  // its own place no longer counts
        home.place = Place::parse("Cellar / 2");
        write();
        QCOMPARE(found(room, "attic"), QString());
        QCOMPARE(found(room, "cellar"), QString("214 place, 260 place"));
        room.book.record(SetDraft{ThingType::enclosure, id.uuid, {{"place", nullptr}}}).value();
        QCOMPARE(found(room, "shelf a"), QString("214 place"));
        // A tag on the enclosure leads to both.
        room.book
            .record(SetDraft{ThingType::tag, tagThing("8Q2MZX89"),
                             toFields(Tag{"8Q2MZX89", Millimetres{20}, std::nullopt, id})})
            .value();
        QCOMPARE(found(room, "8Q2M"), QString("214 tag, 260 tag"));
    }

    void ownProfilesGiveTheirNamesToo() {
        SearchedRoom room;
        room.add("400", "Novagenus nova");
        QCOMPARE(found(room, "ember"), QString());
        auto profile = *profiles().find("Brachypelma hamorii");
        profile.name = "Novagenus nova";
        profile.otherNames = {"Vetagenus nova"};
        profile.tradeNames = {"Ember Cr\u00E8me"};
        QVERIFY(keepProfiles(room.book, profiles(), std::span(&profile, 1)));
        const auto own = withOwnProfiles(profiles(), roomInfo(room.book).value());
        for (const char* typed : {"ember", "creme", "V. nova", "vetagenus"}) {
            QCOMPARE(shown(search(room.book, *own, typed).value()), QString("400 species"));
        }
    }

    void whatIsConfidentialIsFoundHereOnly() {
        auto devices = roomOf(2, 7);
        auto& here = devices[0]->book();
        auto& there = devices[1]->book();
        const SubjectId animal{here.newId()};
        here.record(SetDraft{ThingType::subject, animal.uuid, {{"number", "214"}}}).value();
        FactBody body;
        body.text = "paid in March";
        body.confidential = true;
        here.record(FactDraft{animal, FactKind::note, body, std::nullopt}).value();
        sendAll(*devices[0], *devices[1], {{}, false});
        QCOMPARE(search(here, profiles(), "paid").value().all, std::size_t{1});
        QCOMPARE(search(there, profiles(), "214").value().all, std::size_t{1});
        QCOMPARE(search(there, profiles(), "paid").value().all, std::size_t{0});
    }

    void whatAMergeBroughtGoesWithIt() {
        auto devices = roomOf(2, 11);
        auto& here = devices[0]->book();
        const SubjectId animal{here.newId()};
        here.record(SetDraft{ThingType::subject, animal.uuid, {{"number", "214"}}}).value();
        sendAll(*devices[0], *devices[1]);
        FactBody body;
        body.text = "webbed over the dish";
        devices[1]->book().record(FactDraft{animal, FactKind::note, body, std::nullopt}).value();
        sendAll(*devices[1], *devices[0]);
        QCOMPARE(search(here, profiles(), "dish").value().all, std::size_t{1});
        QVERIFY(takeBackArrival(here));
        QCOMPARE(search(here, profiles(), "dish").value().all, std::size_t{0});
        QVERIFY(check(here)->isSound());
    }

    void anIndexThatIsWrongIsNoticedAndRepaired() {
        SearchedRoom room;
        auto& connection = room.book.connection();
        must(connection.execute("INSERT INTO word_index (rowid, note) VALUES (77, 'phantom')"));
        const auto report = check(room.book).value();
        QVERIFY(!report.isSound());
        QCOMPARE(report.findings.front().id, std::string("check.projection"));
        must(repair(room.book));
        QVERIFY(check(room.book)->isSound());
        must(connection.execute("DELETE FROM searchable WHERE note <> ''"));
        QVERIFY(!check(room.book)->isSound());
        must(repair(room.book));
        QCOMPARE(found(room, "dish"), QString("087 note"));
    }

    void aBookThatIsOnlyReadIsSearchedToo() {
        SearchedRoom room;
        auto reader =
            Book::open(room.book.path(), storage::Access::readOnly, room.surroundings()).value();
        QCOMPARE(shown(search(reader, profiles(), "dish").value()), QString("087 note"));
    }

    void onlySoManyAreShown() {
        SearchedRoom room;
        for (int i = 0; i < 20; ++i) room.add("9" + std::to_string(10 + i), "Nhandu chromatus");
        const auto findings = search(room.book, profiles(), "chromatus", {5, {}}).value();
        QCOMPARE(findings.all, std::size_t{20});
        QCOMPARE(findings.found.size(), std::size_t{5});
        QCOMPARE(findings.found.front().number, std::string("910"));
    }

    void aNumberIsExactBeforeItIsAlike() {
        const TypedNumber plain("214", "KR");
        QCOMPARE(plain.fit("214"), NumberFit::whole);
        QCOMPARE(plain.fit("0214"), NumberFit::bare);
        QCOMPARE(plain.fit("KR-214"), NumberFit::none);
        const TypedNumber coded("kr-0214", "KR");
        QCOMPARE(coded.fit("KR-0214"), NumberFit::wholeNoCase);
        QCOMPARE(coded.fit("0214"), NumberFit::withoutCode);
        QCOMPARE(coded.fit("214"), NumberFit::bare);
        QCOMPARE(TypedNumber("0", "KR").fit("000"), NumberFit::bare);
        QCOMPARE(TypedNumber("KR-", "KR").fit(""), NumberFit::none);
        QVERIFY(TypedNumber("kr-2", "KR").starts("214") && TypedNumber("8", "KR").starts("087"));
        QVERIFY(!TypedNumber("14", "KR").starts("214") && !TypedNumber("", "").starts("1"));
    }
};

QTEST_APPLESS_MAIN(TestSearch)
#include "tst_search.moc"
