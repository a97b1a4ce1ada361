// What two devices said without knowing of each other: all of it is kept, one counts, the keeper settles.
#include <QtTest>

#include "journal/check.h"
#include "journal/past.h"
#include "support/joined.h"

using namespace burrow;
using namespace burrow::test;
using nlohmann::json;
using Kind = Difference::Kind;

namespace {

SetDraft field(SubjectId animal, const std::string& name, json value) {
    return {ThingType::subject, animal.uuid, {{name, std::move(value)}}};
}

FactBody note(const std::string& text) {
    FactBody body;
    body.text = text;
    return body;
}

FactBody sale(const std::string& party, std::optional<std::string> price) {
    FactBody body;
    body.party = party;
    body.price = std::move(price);
    return body;
}

/// Two devices with one animal on both.
struct Pair {
    Pair() : room(roomOf(2, 1)), a(*room[0]), b(*room[1]), animal{a.book().newId()} {
        a.book()
            .record(SetDraft{ThingType::subject,
                             animal.uuid,
                             {{"number", "001"}, {"species", "Grammostola pulchra"}}})
            .value();
        sendAll(a, b);
        b.clock.set({fridayEvening.ms + 1000});  // b's values win where nothing else says
    }
    void exchange(const Selection& selection = {{}, true}) {
        sendAll(a, b, selection);
        sendAll(b, a, selection);
    }
    static std::string noteOf(Device& device, SubjectId animal) {
        return kept(device.book(), animal).value()->subject.note;
    }
    std::string noteOnA() { return noteOf(a, animal); }
    std::string noteOnB() { return noteOf(b, animal); }
    FactBody bodyOn(Device& device, const EntryId& id) {
        return fact(device.book(), id).value()->body;
    }

    std::vector<std::unique_ptr<Device>> room;
    Device& a;
    Device& b;
    SubjectId animal;
};

bool says(Device& device, const char* word) {
    return dumpOf(device.book()).find(word) != std::string::npos;
}

Said said(int entry, int device, int seq, std::optional<std::vector<int>> over = {},
          bool retracted = false) {
    const auto id = [](int number) {
        Uuid uuid;
        uuid.bytes[15] = static_cast<std::uint8_t>(number);
        return uuid;
    };
    Said made{EntryId{id(entry)}, id(100 + device), seq, entry, retracted, std::nullopt};
    if (over) {
        made.over.emplace();
        for (const int each : *over) made.over->push_back(EntryId{id(each)});
    }
    return made;
}

}  // namespace

class TestDifferences : public QObject {
    Q_OBJECT

private slots:
    /// Values are numbered by their stamp; a head is one that nobody replaced.
    void headsAreWhatNobodyReplaced_data() {
        QTest::addColumn<std::vector<Said>>("values");
        QTest::addColumn<std::vector<std::size_t>>("heads");
        const auto row = [](const char* name, std::vector<Said> values,
                            std::vector<std::size_t> heads) {
            QTest::newRow(name) << values << heads;
        };
        using Over = std::vector<int>;
        row("none", {}, {});
        row("one", {said(1, 1, 1, Over{})}, {0});
        row("one retracted", {said(1, 1, 1, Over{}, true)}, {});
        row("replaced", {said(1, 1, 1, Over{}), said(2, 2, 1, Over{1})}, {1});
        row("replaced by an earlier stamp", {said(1, 2, 1, Over{2}), said(2, 1, 1, Over{})}, {0});
        row("side by side", {said(1, 1, 1, Over{}), said(2, 2, 1, Over{})}, {1, 0});
        row("settled", {said(1, 1, 1, Over{}), said(2, 2, 1, Over{}), said(3, 1, 2, Over{1, 2})},
            {2});
        row("what replaced it was taken back",
            {said(1, 1, 1, Over{}), said(2, 2, 1, Over{1}, true)}, {0});
        row("replaced through one that was taken back",
            {said(1, 1, 1, Over{}), said(2, 2, 1, Over{1}, true), said(3, 3, 1, Over{2})}, {2});
        row("replaced through one that is not here",
            {said(1, 1, 1, Over{}), said(3, 3, 1, Over{2})}, {1, 0});
        row("first version, same device", {said(1, 1, 2), said(2, 1, 1)}, {0});
        row("first version, two devices", {said(1, 1, 1), said(2, 1, 2), said(3, 2, 1)}, {2, 1});
        row("first version, then known", {said(1, 1, 1), said(2, 2, 1), said(3, 2, 2, Over{1, 2})},
            {2});
        row("forked, the same number", {said(1, 1, 5, Over{}), said(2, 1, 5, Over{})}, {1, 0});
        row("forked, other numbers", {said(1, 1, 5, Over{}), said(2, 1, 9, Over{})}, {1, 0});
        row("a circle", {said(1, 1, 1, Over{2}), said(2, 2, 1, Over{1})}, {1, 0});
        row("a circle beside another",
            {said(1, 1, 1, Over{2}), said(2, 2, 1, Over{1}), said(3, 3, 1, Over{})}, {2});
        row("itself", {said(1, 1, 1, Over{1}), said(2, 2, 1, Over{1})}, {1});
    }
    void headsAreWhatNobodyReplaced() {
        QFETCH(std::vector<Said>, values);
        QFETCH(std::vector<std::size_t>, heads);
        QCOMPARE(headsOf(values), heads);
    }

    void theLosingValueIsKeptAndShown() {
        Pair pair;
        pair.a.book().record(field(pair.animal, "note", "calm")).value();
        pair.b.book().record(field(pair.animal, "note", "defensive")).value();
        pair.exchange();
        QCOMPARE(pair.noteOnA(), std::string("defensive"));
        QCOMPARE(pair.noteOnB(), std::string("defensive"));
        const auto open = differences(pair.a.book()).value();
        QCOMPARE(open.size(), 1U);
        QCOMPARE(open[0].kind, Kind::field);
        QCOMPARE(open[0].name, std::string("note"));
        QCOMPARE(open[0].choices.size(), 2U);
        QCOMPARE(open[0].choices[0].value, json("defensive"));
        QCOMPARE(open[0].choices[1].value, json("calm"));
        QCOMPARE(open[0].choices[1].device, pair.a.book().device());
        QCOMPARE(differences(pair.b.book())->front().key(), open[0].key());

        settle(pair.a.book(), open[0], 1).value();
        QVERIFY(differences(pair.a.book())->empty());
        QCOMPARE(settle(pair.a.book(), open[0], 1).error().message.id,
                 std::string("difference.gone"));
        pair.exchange();
        QCOMPARE(pair.noteOnB(), std::string("calm"));
        QVERIFY(differences(pair.b.book())->empty());
        pair.a.book().undo().value();
        QCOMPARE(differences(pair.a.book())->size(), 1U);
        QCOMPARE(pair.noteOnA(), std::string("defensive"));
    }

    void theSameValueIsNoDifference() {
        Pair pair;
        pair.a.book().record(field(pair.animal, "note", "calm")).value();
        pair.b.book().record(field(pair.animal, "note", "calm")).value();
        pair.b.book().record(field(pair.animal, "species", "Grammostola pulchripes")).value();
        pair.exchange();
        QVERIFY(differences(pair.a.book())->empty());
        QCOMPARE(kept(pair.a.book(), pair.animal).value()->subject.species,
                 std::string("Grammostola pulchripes"));
    }

    void takingBackBringsTheReplacedValueBack() {
        Pair pair;
        pair.a.book().record(field(pair.animal, "note", "calm")).value();
        pair.exchange();
        pair.b.book().record(field(pair.animal, "note", "defensive")).value();
        pair.exchange();
        QCOMPARE(pair.noteOnA(), std::string("defensive"));
        QVERIFY(differences(pair.a.book())->empty());
        pair.b.book().undo().value();
        pair.exchange();
        QCOMPARE(pair.noteOnA(), std::string("calm"));
        QCOMPARE(pair.noteOnB(), std::string("calm"));
    }

    void amendmentsOfTwoDevicesAreSettledAsWritten() {
        Pair pair;
        const auto id = pair.a.book()
                            .record(FactDraft{pair.animal, FactKind::note, note("first"), {}})
                            .value()
                            .entries[0];
        pair.exchange();
        const Instant earlier{fridayEvening.ms - 3 * msPerDay};
        pair.a.book().record(AmendDraft{id, note("by a"), earlier}).value();
        pair.b.book().record(AmendDraft{id, note("by b"), {}}).value();
        // One of a newer version, with a field that this one does not know.
        const auto newer = foreign(pair.b, "amend", pair.animal.uuid,
                                   {{"entry", id.text()},
                                    {"over", json::array()},
                                    {"body", {{"text", "newer"}, {"mood", "calm"}}}});
        merged(pair.b.book(), {newer});
        pair.exchange();
        const auto open = differences(pair.a.book()).value();
        QCOMPARE(open.size(), 1U);
        QCOMPARE(open[0].kind, Kind::amendment);
        QCOMPARE(open[0].fact, std::optional(id));
        QCOMPARE(open[0].factKind, std::optional(FactKind::note));
        QCOMPARE(open[0].choices.size(), 3U);
        const auto find = [&](const Difference& difference, const char* text) {
            for (std::size_t i = 0; i < difference.choices.size(); ++i) {
                if (difference.choices[i].value["text"] == text) return i;
            }
            return difference.choices.size();
        };
        const auto& byA = open[0].choices[find(open[0], "by a")];
        QCOMPARE(byA.happenedAt, std::optional(earlier));
        settle(pair.a.book(), open[0], find(open[0], "newer")).value();
        pair.exchange();
        QCOMPARE(pair.bodyOn(pair.b, id).text, std::optional<std::string>("newer"));
        QVERIFY(differences(pair.b.book())->empty());
        const auto rows = entriesAfter(pair.b.book().connection(), 0, 100).value();
        QCOMPARE(rows.back().second.body["body"], newer.body["body"]);
        // Settled by the one with a time, it happened then.
        pair.a.book().undo().value();
        settle(pair.a.book(), differences(pair.a.book())->front(),
               find(differences(pair.a.book())->front(), "by a"))
            .value();
        QCOMPARE(fact(pair.a.book(), id).value()->happenedAt, earlier);
    }

    void theSameNumberGivenTwiceIsShownAndSettled() {
        Pair pair;
        const auto add = [](Device& device, const char* species) {
            const SubjectId id{device.book().newId()};
            device.book()
                .record(SetDraft{
                    ThingType::subject, id.uuid, {{"number", "002"}, {"species", species}}})
                .value();
            return id;
        };
        const auto first = add(pair.a, "Avicularia avicularia");
        const auto second = add(pair.b, "Caribena versicolor");
        pair.exchange();
        QCOMPARE(subjectsNumbered(pair.a.book(), "2")->size(), 2U);
        const auto open = differences(pair.a.book()).value();
        QCOMPARE(open.size(), 1U);
        QCOMPARE(open[0].kind, Kind::number);
        QCOMPARE(open[0].name, std::string("002"));
        const auto keeps = open[0].choices[0].subject == first ? 0U : 1U;
        settle(pair.a.book(), open[0], keeps).value();
        pair.exchange();
        QCOMPARE(kept(pair.b.book(), first).value()->subject.number, std::string("002"));
        QCOMPARE(kept(pair.b.book(), second).value()->subject.number, std::string("003"));
        QVERIFY(differences(pair.b.book())->empty());
        // The dead may share their number with the living.
        pair.a.book().record(field(second, "number", "002")).value();
        QCOMPARE(differences(pair.a.book())->size(), 1U);
        pair.a.book().record(FactDraft{second, FactKind::died, {}, {}}).value();
        QVERIFY(differences(pair.a.book())->empty());
    }

    void aRestoredCopyForksAndGoesOnUnderItsOwnName() {
        Pair pair;
        const auto old = pair.a.book().device();
        pair.a.backUp();
        pair.a.book().record(field(pair.animal, "note", "before the fall")).value();
        pair.exchange();
        pair.a.restore();
        QCOMPARE(pair.a.book().device(), old);
        pair.a.book().record(field(pair.animal, "note", "after it")).value();
        const auto report = sendAll(pair.b, pair.a);
        QVERIFY(report.isNewDevice);
        QCOMPARE(report.forked, std::vector{old});
        QVERIFY(pair.a.book().device() != old);
        QVERIFY(check(pair.a.book())->isSound());
        QCOMPARE(sendAll(pair.a, pair.b).forked, std::vector{old});
        QCOMPARE(dumpOf(pair.a.book()), dumpOf(pair.b.book()));
        // Both values stand side by side, though the same device wrote them.
        auto open = differences(pair.b.book()).value();
        QCOMPARE(open.size(), 2U);
        QCOMPARE(open[0].kind, Kind::field);
        QCOMPARE(open[1].kind, Kind::fork);
        QCOMPARE(open[1].device, std::optional(old));
        QCOMPARE(open[1].times, 1);
        settle(pair.b.book(), open[1], 0).value();
        settle(pair.b.book(), open[0], 0).value();
        pair.exchange();
        QVERIFY(differences(pair.a.book())->empty());
        const auto written = pair.a.book().record(field(pair.animal, "note", "on")).value();
        QCOMPARE(findEntry(pair.a.book().connection(), written.entries[0]).value()->seq, 1);
        QVERIFY(pair.a.book().undo());
    }

    /// Nothing of its own was lost, so the copy only takes up what it had already written.
    void aRestoredCopyThatWroteNothingGetsItsOwnBack() {
        Pair pair;
        pair.a.backUp();
        pair.a.book().record(field(pair.animal, "note", "calm")).value();
        pair.exchange();
        const auto before = dumpOf(pair.b.book());
        pair.a.restore();
        const auto report = sendAll(pair.b, pair.a);
        QVERIFY(report.isNewDevice);
        QVERIFY(report.forked.empty());
        QCOMPARE(dumpOf(pair.a.book()), before);
        QVERIFY(differences(pair.a.book())->empty());
    }

    void whoAndForHowMuchStandsBesideTheFact() {
        Pair pair;
        auto& book = pair.a.book();
        const auto changes =
            book.record(FactDraft{pair.animal, FactKind::lent, sale("Marl Hollow", {}), {}})
                .value();
        const auto id = changes.entries[0];
        QCOMPARE(changes.entries.size(), 2U);
        QVERIFY(!findEntry(book.connection(), id).value()->body.contains("party"));
        QCOMPARE(pair.bodyOn(pair.a, id).party, std::optional<std::string>("Marl Hollow"));
        QCOMPARE(readingsOf(book, id)->size(), 1U);  // no correction by the keeper
        QCOMPARE(readingsOf(book, id)->front().body.party,
                 std::optional<std::string>("Marl Hollow"));
        auto body = pair.bodyOn(pair.a, id);
        body.party = "Fenwick Reach";
        body.text = "for the season";
        book.record(AmendDraft{id, body, {}}).value();
        const auto readings = readingsOf(book, id).value();
        QCOMPARE(readings.size(), 2U);
        QCOMPARE(readings[0].body.party, std::optional<std::string>("Marl Hollow"));
        QCOMPARE(readings[1].body, body);

        sendAll(pair.a, pair.b, {{}, false});
        QVERIFY(!says(pair.b, "Marl"));
        QVERIFY(!says(pair.b, "Fenwick"));
        QCOMPARE(pair.bodyOn(pair.b, id).text, std::optional<std::string>("for the season"));
        QCOMPARE(kept(pair.b.book(), pair.animal).value()->subject.standing, Standing::onLoan);
        // Who does not know it can amend the fact, and it stays.
        pair.b.book().record(AmendDraft{id, note("until autumn"), {}}).value();
        sendAll(pair.b, pair.a);
        QCOMPARE(pair.bodyOn(pair.a, id).text, std::optional<std::string>("until autumn"));
        QCOMPARE(pair.bodyOn(pair.a, id).party, std::optional<std::string>("Fenwick Reach"));
        QVERIFY(differences(pair.a.book())->empty());
        // What is emptied is empty, and undo brings it back.
        book.record(AmendDraft{id, note("until autumn"), {}}).value();
        QVERIFY(!pair.bodyOn(pair.a, id).party);
        book.undo().value();
        QCOMPARE(pair.bodyOn(pair.a, id).party, std::optional<std::string>("Fenwick Reach"));
        // Of the last two acts others get the amendment and its retraction, and that of its part.
        QCOMPARE(lacking(pair.a.book(), pair.b.book(), {{}, false}).size(), 3U);
    }

    void twoPricesAreADifferenceOfTheirOwn() {
        Pair pair;
        const auto id =
            pair.a.book()
                .record(FactDraft{pair.animal, FactKind::sold, sale("Marl Hollow", "40"), {}})
                .value()
                .entries[0];
        pair.exchange();
        pair.a.book().record(AmendDraft{id, sale("Marl Hollow", "45"), {}}).value();
        pair.b.book().record(AmendDraft{id, sale("Marl Hollow", "50"), {}}).value();
        pair.exchange();
        const auto open = differences(pair.a.book()).value();
        QCOMPARE(open.size(), 1U);
        QCOMPARE(open[0].kind, Kind::confidentialPart);
        const auto is45 = open[0].choices[0].value["price"] == "45" ? 0U : 1U;
        settle(pair.a.book(), open[0], is45).value();
        pair.exchange();
        QCOMPARE(pair.bodyOn(pair.b, id).price, std::optional<std::string>("45"));
        QVERIFY(differences(pair.b.book())->empty());
    }

    void whatIsConfidentialAsAWholeStaysHere() {
        Pair pair;
        auto& book = pair.a.book();
        auto body = note("between us");
        body.confidential = true;
        const auto id =
            book.record(FactDraft{pair.animal, FactKind::note, body, {}}).value().entries[0];
        body.text = "between you and me";
        const auto was = fact(book, id).value().value();
        book.record(amending(book, was, body, was.happenedAt).value()).value();
        sendAll(pair.a, pair.b, {{}, false});
        QVERIFY(!says(pair.b, "between"));
        // What is no longer confidential is an entry of its own: its first words were.
        const auto now = fact(book, id).value().value();
        book.record(amending(book, now, note("for all"), now.happenedAt).value()).value();
        QVERIFY(!fact(book, id).value().has_value());
        sendAll(pair.a, pair.b, {{}, false});
        QVERIFY(!says(pair.b, "between"));
        const auto facts = history(pair.b.book(), pair.animal, 10).value();
        QCOMPARE(facts.size(), 1U);
        QCOMPARE(facts[0].body.text, std::optional<std::string>("for all"));
        QCOMPARE(facts[0].day, now.day);
    }
};

QTEST_APPLESS_MAIN(TestDifferences)
#include "tst_differences.moc"
