// Uniting books: all or nothing, in any order, any number of times, and back again.
#include <QtTest>

#include "journal/check.h"
#include "journal/hlc.h"
#include "support/joined.h"

using namespace burrow;
using namespace burrow::test;
using nlohmann::json;

namespace {

SubjectId addAnimal(Book& book, const std::string& number) {
    const SubjectId id{book.newId()};
    book
        .record(SetDraft{
            ThingType::subject, id.uuid, {{"number", number}, {"species", "Grammostola pulchra"}}})
        .value();
    return id;
}

FactBody note(const std::string& text) {
    FactBody body;
    body.text = text;
    return body;
}

std::int64_t entriesIn(Book& book) {
    return book.connection().integer("SELECT count(*) FROM entry").value();
}

Entry subjectSet(Device& near, const Uuid& thing) {
    return foreign(
        near, "set", thing,
        {{"type", "subject"}, {"fields", {{"number", "900"}}}, {"over", json::object()}});
}

std::string refusalOf(Book& book, const Entry& entry) {
    auto merge = Merge::begin(book, {}).value();
    const auto done = merge.add(entry);
    return done ? std::string() : done.error().message.id;
}

}  // namespace

class TestMerge : public QObject {
    Q_OBJECT

private slots:
    void bringsWhatIsMissingOnce() {
        auto room = roomOf(2, 1);
        auto& a = *room[0];
        auto& b = *room[1];
        const auto animal = addAnimal(a.book(), "001");
        a.book().record(FactDraft{animal, FactKind::watered, {}, {}}).value();
        const auto first = sendAll(a, b);
        QCOMPARE(first.added, 3);
        QVERIFY(first.arrival.has_value());
        QCOMPARE(first.changes.subjects, std::vector{animal});
        QVERIFY(first.changes.settings);
        QVERIFY(kept(b.book(), animal).value()->digest.lastWatered.has_value());
        QCOMPARE(roomInfo(b.book())->name, std::string("Kiln Row"));

        const auto again = merged(b.book(), lacking(a.book(), a.book()));
        QCOMPARE(again.added, 0);
        const auto all = entriesAfter(a.book().connection(), 0, 100).value();
        std::vector<Entry> entries;
        for (const auto& [n, entry] : all) entries.push_back(entry);
        const auto twice = merged(b.book(), entries);
        QCOMPARE(twice.known, 3);
        QVERIFY(!twice.arrival.has_value());
        QCOMPARE(dumpOf(a.book()), dumpOf(b.book()));
        QVERIFY(lacking(a.book(), b.book()).empty());
    }

    void knownEntriesAreComparedWholly() {
        auto room = roomOf(2, 1);
        auto& a = *room[0];
        const auto animal = addAnimal(a.book(), "001");
        for (int i = 0; i < 5; ++i) {
            a.book().record(FactDraft{animal, FactKind::note, note("dug in"), {}}).value();
        }
        const auto before = dumpOf(a.book());
        std::vector<Entry> own;
        const auto all = entriesAfter(a.book().connection(), 0, 100).value();
        for (const auto& [n, entry] : all) own.push_back(entry);
        // The last one is met on the walk along our own entries, the first one by itself.
        for (const std::size_t at : {std::size_t{0}, own.size() - 1}) {
            for (int what = 0; what < 7; ++what) {
                auto entries = own;
                auto& changed = entries[at];
                if (what == 0) changed.body["text"] = "another";
                if (what == 1) changed.seq += 100;
                if (what == 2) changed.hlc += 1;
                if (what == 3) changed.kind = "seen";
                if (what == 4) changed.thing = a.book().newId();
                if (what == 5) changed.day = changed.day + 1;
                if (what == 6) changed.device = DeviceId{a.book().newId()};
                auto merge = Merge::begin(a.book(), {}).value();
                Done outcome;
                for (const auto& entry : entries) {
                    if (outcome) outcome = merge.add(entry);
                }
                QVERIFY2(!outcome, qPrintable(QString::number(what)));
                QCOMPARE(outcome.error().message.id, std::string("merge.otherContent"));
                QCOMPARE(outcome.error().trouble, Trouble::badInput);
                QCOMPARE(merge.commit().error().message.id, std::string("merge.broken"));
            }
        }
        QCOMPARE(dumpOf(a.book()), before);
    }

    void oneImpossibleEntryKeepsNothing() {
        auto room = roomOf(1, 1);
        auto& a = *room[0];
        const auto before = dumpOf(a.book());
        const auto good = subjectSet(a, a.book().newId());
        const std::vector<std::function<void(Entry&)>> spoil{
            [](Entry& e) { e.id = {}; },
            [](Entry& e) { e.device = {}; },
            [](Entry& e) { e.seq = 0; },
            [](Entry& e) { e.seq = INT64_MAX; },
            [](Entry& e) { e.act = 2; },
            [](Entry& e) { e.act = 0; },
            [](Entry& e) { e.hlc = -1; },
            [](Entry& e) { e.kind.clear(); },
            [](Entry& e) { e.kind.assign(65, 'k'); },
            [](Entry& e) { e.kind = "no\xFFkind"; },
            [](Entry& e) { e.zone = std::string("U\0C", 3); },
            [](Entry& e) { e.body = json::array(); },
            [](Entry& e) { e.body = json(json::value_t::discarded); },
            [](Entry& e) { e.body["text"] = std::string(70'000, 'x'); },
            [](Entry& e) { e.body["text"] = "\xC3\x28"; },
            [](Entry& e) {
                for (int i = 0; i < 20'000; ++i) e.body = json{{"a", std::move(e.body)}};
            },
            [](Entry& e) { e.day = {INT32_MAX}; },
            [](Entry& e) { e.happenedAt = {INT64_MAX}; },
            [](Entry& e) { e.recordedAt = {INT64_MIN}; },
        };
        for (std::size_t i = 0; i < spoil.size(); ++i) {
            auto bad = good;
            bad.id = EntryId{a.book().newId()};
            spoil[i](bad);
            auto merge = Merge::begin(a.book(), {}).value();
            must(merge.add(good));
            const auto refused = merge.add(bad);
            QVERIFY2(!refused, qPrintable(QString::number(i)));
            QCOMPARE(refused.error().message.id, std::string("merge.impossible"));
            QCOMPARE(merge.add(good).error().message.id, std::string("merge.broken"));
        }
        QCOMPARE(dumpOf(a.book()), before);
        QCOMPARE(refusalOf(a.book(), good), std::string());
    }

    /// Bodies whose members are not what they should be change nothing, and nothing fails over them.
    void strangeBodiesAreKept() {
        auto room = roomOf(1, 1);
        auto& a = *room[0];
        const auto animal = addAnimal(a.book(), "001");
        const auto fact =
            a.book().record(FactDraft{animal, FactKind::watered, {}, {}}).value().entries.front();
        const std::vector<std::pair<std::string, json>> strange{
            {"set", {{"type", 5}, {"fields", {{"number", "7"}}}}},
            {"set", {{"type", "subject"}, {"fields", "number"}}},
            {"set", {{"type", "subject"}, {"fields", {{"number", {1, 2}}}}, {"over", 5}}},
            {"set", {{"type", "subject"}, {"fields", {{"", ""}}}, {"over", {{"", {1, "x"}}}}}},
            {"amend", {{"entry", 5}}},
            {"amend", {{"entry", fact.text()}, {"body", "none"}}},
            {"amend",
             {{"entry", fact.text()},
              {"body", json::object()},
              {"happened_at", INT64_MAX},
              {"day", "today"},
              {"over", {{"a", 1}}}}},
            {"amend", {{"entry", fact.text()}, {"confidential", "yes"}, {"body", json::object()}}},
            {"retract", {{"entry", "not an id"}}},
            {"retract", json::object()},
            {"offered", {{"outcome", 7}}},
            {"sold", {{"count", 1e300}, {"party", {1}}}},
            {"note", {{"text", {{"deep", {{"deeper", true}}}}}}},
        };
        std::vector<Entry> entries;
        for (const auto& [kind, body] : strange) {
            entries.push_back(foreign(a, kind, animal.uuid, body));
            entries.push_back(foreign(a, kind, std::nullopt, body));
        }
        QCOMPARE(merged(a.book(), entries).added, static_cast<qint64>(entries.size()));
        QVERIFY(isRebuiltTheSame(a.book()));
        QVERIFY(check(a.book())->isSound());
        QVERIFY(kept(a.book(), animal).value()->digest.lastWatered.has_value());
        QVERIFY(differences(a.book()));
    }

    void unknownKindsAreKeptAndPassedOn() {
        auto room = roomOf(2, 1);
        auto& a = *room[0];
        const auto animal = addAnimal(a.book(), "001");
        const auto newer = foreign(a, "levitated", animal.uuid, {{"mm", 3}, {"why", nullptr}});
        QCOMPARE(merged(a.book(), {newer}).unknown, 1);
        sendAll(a, *room[1]);
        QCOMPARE(findEntry(room[1]->book().connection(), newer.id).value()->body, newer.body);
    }

    void correctionsMayComeBeforeWhatTheyCorrect() {
        auto room = roomOf(2, 1);
        auto& a = *room[0];
        auto& book = a.book();
        const auto animal = addAnimal(book, "001");
        const auto kept1 =
            book.record(FactDraft{animal, FactKind::note, note("first"), {}}).value().entries[0];
        const auto gone =
            book.record(FactDraft{animal, FactKind::watered, {}, {}}).value().entries[0];
        book.record(AmendDraft{kept1, note("second"), {}}).value();
        const auto third = book.record(AmendDraft{kept1, note("third"), {}}).value().entries[0];
        book.record(RetractDraft{third}).value();
        book.record(RetractDraft{gone}).value();
        auto entries = lacking(book, room[1]->book());
        std::reverse(entries.begin(), entries.end());
        for (const auto& entry : entries) merged(room[1]->book(), {entry});
        const auto facts = history(room[1]->book(), animal, 10).value();
        QCOMPARE(facts.size(), 1U);
        QCOMPARE(facts.front().body.text, std::optional<std::string>("second"));
        QCOMPARE(dumpOf(room[1]->book()), dumpOf(book));
    }

    void theNewestArrivalCanGoAgain() {
        auto room = roomOf(3, 1);
        auto& a = *room[0];
        auto& b = *room[1];
        auto& c = *room[2];
        QCOMPARE(takeBackArrival(a.book()).error().message.id,
                 std::string("merge.nothingToTakeBack"));
        sendAll(a, b);
        const auto animal = addAnimal(a.book(), "001");
        sendAll(a, b);
        b.book().record(SetDraft{ThingType::subject, animal.uuid, {{"note", "b"}}}).value();
        const auto before = dumpOf(b.book());
        // What comes in corrects what is here, and what is written after it names what came.
        a.book().record(SetDraft{ThingType::subject, animal.uuid, {{"note", "a"}}}).value();
        a.book().record(FactDraft{animal, FactKind::watered, {}, {}}).value();
        a.book().undo().value();
        addAnimal(a.book(), "002");
        QCOMPARE(sendAll(a, b).added, 4);
        QCOMPARE(arrivals(b.book())->front().entries, 4);
        QCOMPARE(arrivals(b.book())->front().source, std::string("room.burrow"));
        const auto taken = takeBackArrival(b.book()).value();
        QCOMPARE(taken.arrival.entries, 4);
        QCOMPARE(dumpOf(b.book()), before);
        QVERIFY(isRebuiltTheSame(b.book()));
        QVERIFY(check(b.book())->isSound());
        QVERIFY(!takeBackArrival(b.book()));
        QCOMPARE(arrivals(b.book())->front().takenBack, std::optional(b.clock.now()));
        // Only one; and it may come again.
        QCOMPARE(sendAll(a, b).added, 4);
        b.book().record(FactDraft{animal, FactKind::watered, {}, {}}).value();
        QCOMPARE(takeBackArrival(b.book())->arrival.entries, 4);
        QVERIFY(kept(b.book(), animal).value()->digest.lastWatered.has_value());
        sendAll(b, c);
        sendAll(a, c);
        sendAll(a, b);
        QCOMPARE(dumpOf(b.book()), dumpOf(c.book()));
    }

    void entriesGoOnlyWhileAnArrivalIsTakenBack() {
        auto room = roomOf(2, 1);
        addAnimal(room[0]->book(), "001");
        sendAll(*room[0], *room[1]);
        auto& connection = room[1]->book().connection();
        addAnimal(room[1]->book(), "002");
        QVERIFY(!connection.execute("DELETE FROM entry"));
        must(connection.execute("UPDATE book SET taking_back = 1"));
        QVERIFY(!connection.execute("DELETE FROM entry"));  // one of them did not come
        QVERIFY(!connection.execute("UPDATE entry SET body = '{}'"));
        QCOMPARE(entriesIn(room[1]->book()), 3);
        must(connection.execute("DELETE FROM entry WHERE n <= 2"));
    }

    void oneClockFarAheadTakesNobodyAlong() {
        auto room = roomOf(2, 1);
        auto& a = *room[0];
        auto& b = *room[1];
        const auto animal = addAnimal(a.book(), "001");
        sendAll(a, b);
        b.clock.set({fridayEvening.ms + 26'000 * msPerDay});
        b.book().record(SetDraft{ThingType::subject, animal.uuid, {{"note", "from 2097"}}}).value();
        const auto report = sendAll(b, a);
        QCOMPARE(report.ahead.size(), 1U);
        QCOMPARE(report.ahead.front().device, b.book().device());
        QCOMPARE(report.ahead.front().days, 26'000);
        QCOMPARE(kept(a.book(), animal).value()->subject.note, std::string("from 2097"));
        // An edit by someone who saw it replaces it, whatever the clocks say, on both.
        const auto edit =
            a.book().record(SetDraft{ThingType::subject, animal.uuid, {{"note", "now"}}}).value();
        const auto entry = findEntry(a.book().connection(), edit.entries.front()).value();
        QCOMPARE(hlc::milliseconds(entry->hlc), fridayEvening.ms);
        sendAll(a, b);
        QCOMPARE(kept(b.book(), animal).value()->subject.note, std::string("now"));
        QVERIFY(differences(b.book())->empty());
        // Its own clock set right, the device writes in the present again and still replaces its own.
        b.clock.set({fridayEvening.ms + 60'000});
        b.book().record(SetDraft{ThingType::subject, animal.uuid, {{"note", "b again"}}}).value();
        QCOMPARE(kept(b.book(), animal).value()->subject.note, std::string("b again"));
        QVERIFY(sendAll(b, a).ahead.empty());
        QCOMPARE(kept(a.book(), animal).value()->subject.note, std::string("b again"));
    }

    /// A clock that is a little ahead is followed, so that what is written after it sorts after it.
    void aLittleAheadIsFollowed() {
        auto room = roomOf(2, 1);
        auto& a = *room[0];
        auto& b = *room[1];
        b.clock.set({fridayEvening.ms + 3'600'000});
        const auto animal = addAnimal(b.book(), "001");
        QVERIFY(sendAll(b, a).ahead.empty());
        const auto written =
            a.book().record(FactDraft{animal, FactKind::watered, {}, {}}).value().entries[0];
        QVERIFY(hlc::milliseconds(findEntry(a.book().connection(), written).value()->hlc) >=
                fridayEvening.ms + 3'600'000);
    }

    void settingsOfAnotherRoomStayThere() {
        auto room = roomOf(1, 1);
        auto& a = *room[0];
        const auto elsewhere = foreign(a, "set", a.book().newId(),
                                       {{"type", "book"}, {"fields", {{"room", "Elsewhere"}}}});
        merged(a.book(), {elsewhere});
        QCOMPARE(roomInfo(a.book())->name, std::string("Kiln Row"));
        QVERIFY(isRebuiltTheSame(a.book()));
    }

    void undoTakesOnlyWhatThisDeviceWrote() {
        auto room = roomOf(2, 1);
        auto& a = *room[0];
        auto& b = *room[1];
        const auto animal = addAnimal(a.book(), "001");
        sendAll(a, b);
        QCOMPARE(b.book().undo().error().message.id, std::string("book.nothingToUndo"));
        // The first act of a joined device is like any other, also when it renames the room.
        b.book()
            .record(SetDraft{ThingType::book, b.book().id().uuid, {{setting::room, "Reed Row"}}})
            .value();
        QCOMPARE(b.book().undo()->second.size(), 1U);
        QCOMPARE(roomInfo(b.book())->name, std::string("Kiln Row"));
        QVERIFY(kept(b.book(), animal).value().has_value());
    }

    void onlyGapsOfThisDeviceAreFindings() {
        auto room = roomOf(2, 1);
        auto& a = *room[0];
        const auto animal = addAnimal(a.book(), "001");
        for (int i = 0; i < 3; ++i) {
            a.book().record(FactDraft{animal, FactKind::watered, {}, {}}).value();
        }
        auto entries = lacking(a.book(), room[1]->book());
        entries.erase(entries.begin() + 2);
        merged(room[1]->book(), entries);
        QVERIFY(check(room[1]->book())->isSound());
    }
};

QTEST_APPLESS_MAIN(TestMerge)
#include "tst_merge.moc"
