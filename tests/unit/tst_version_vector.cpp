// What a book has in few words, and what another one is sent.
#include <QtTest>

#include "journal/check.h"
#include "journal/fields.h"
#include "journal/migration.h"
#include "storage/schema.h"
#include "support/joined.h"

using namespace burrow;
using namespace burrow::test;
using nlohmann::json;

namespace {

SubjectId addAnimal(Book& book, const std::string& number) {
    const SubjectId id{book.newId()};
    book.record(SetDraft{ThingType::subject, id.uuid, {{"number", number}}}).value();
    return id;
}

void logMany(Book& book, SubjectId animal, int count) {
    auto act = book.beginAct().value();
    for (int i = 0; i < count; ++i) must(act.add(FactDraft{animal, FactKind::watered, {}, {}}));
    act.commit().value();
}

void logSecret(Book& book, SubjectId animal) {
    FactBody body;
    body.text = "between us";
    body.confidential = true;
    book.record(FactDraft{animal, FactKind::note, body, {}}).value();
}

}  // namespace

class TestVersionVector : public QObject {
    Q_OBJECT

private slots:
    void sendsOnlyWhatIsLacking() {
        auto room = roomOf(3, 1);
        auto& a = *room[0];
        auto& b = *room[1];
        const auto animal = addAnimal(a.book(), "001");
        logMany(a.book(), animal, 3000);
        QCOMPARE(lacking(a.book(), b.book()).size(), 3002U);
        sendAll(a, b);
        QVERIFY(lacking(a.book(), b.book()).empty());
        // A few more: only those, not the block they are in.
        logMany(a.book(), animal, 5);
        QCOMPARE(lacking(a.book(), b.book()).size(), 5U);
        // One who has more than we is sent at most the blocks in which ours end.
        logMany(b.book(), animal, 1500);
        sendAll(b, *room[2]);
        logMany(b.book(), animal, 3000);
        sendAll(b, a);
        const auto sent = lacking(room[2]->book(), a.book());
        QCOMPARE(sent.size(), (3002U - 2048U) + (1500U - 1024U));
        QCOMPARE(merged(a.book(), sent).added, 0);
        QCOMPARE(lacking(a.book(), room[2]->book()).size(), 3005U);
    }

    /// What was left out leaves gaps that are never closed; what was passed on is not sent again.
    void gapsOfWhatIsConfidentialCostNothing() {
        auto room = roomOf(2, 1);
        auto& a = *room[0];
        auto& b = *room[1];
        const auto animal = addAnimal(a.book(), "001");
        for (int i = 0; i < 3; ++i) {
            logMany(a.book(), animal, 600);
            logSecret(a.book(), animal);
        }
        const Selection open{{}, false};
        QCOMPARE(sendAll(a, b, open).added, 1802);
        QVERIFY(lacking(a.book(), b.book(), open).empty());
        logSecret(a.book(), animal);
        QVERIFY(lacking(a.book(), b.book(), open).empty());
        logMany(a.book(), animal, 2);
        QCOMPARE(lacking(a.book(), b.book(), open).size(), 2U);
        // Asked for, the confidential ones come along; then nothing is lacking either way.
        sendAll(a, b);
        QVERIFY(lacking(a.book(), b.book(), open).empty());
        QVERIFY(lacking(a.book(), b.book()).empty());
        QCOMPARE(dumpOf(a.book()), dumpOf(b.book()));
    }

    void aBlockThatCannotBeComparedIsSentWhole() {
        auto room = roomOf(2, 1);
        auto& a = *room[0];
        const auto animal = addAnimal(a.book(), "001");
        logMany(a.book(), animal, 3000);
        auto entries = lacking(a.book(), room[1]->book());
        entries.erase(entries.begin() + 1500);
        merged(room[1]->book(), entries);
        const auto missing = lacking(a.book(), room[1]->book());
        QCOMPARE(missing.size(), 1024U);
        QCOMPARE(merged(room[1]->book(), missing).added, 1);
        QCOMPARE(versionVector(a.book().connection()).value(),
                 versionVector(room[1]->book().connection()).value());
    }

    void isReadBackAndNeverTrusted() {
        auto room = roomOf(1, 1);
        auto& a = *room[0];
        logMany(a.book(), addAnimal(a.book(), "001"), 2000);
        const auto vector = versionVector(a.book().connection()).value();
        QCOMPARE(vector.devices.at(a.book().device()).at(0).count, 1024);
        QCOMPARE(versionVectorFrom(toJson(vector)), vector);
        const auto device = a.book().device().text();
        for (const auto& strange : std::vector<json>{
                 nullptr,
                 json::array(),
                 {{"block", 512}, {"devices", toJson(vector)["devices"]}},
                 {{"block", 1024}, {"devices", {{"x", json::array()}}}},
                 {{"block", 1024}, {"devices", {{device, {{{"a", 1}}, {0, 1}, {0, "1", device}}}}}},
                 {{"block", 1024}, {"devices", {{device, {{-5, INT64_MIN, device}}}}}}}) {
            const auto read = versionVectorFrom(strange);
            std::size_t sent = 0;
            must(forEachEntryLacking(a.book().connection(), read, {},
                                     [&](const StoredEntry&) -> Done {
                                         ++sent;
                                         return {};
                                     }));
            QCOMPARE(sent, 2002U);
        }
    }

    void chosenAnimalsComeWithWhatBelongsToThem() {
        auto room = roomOf(2, 1);
        auto& book = room[0]->book();
        const auto chosen = addAnimal(book, "001");
        const auto other = addAnimal(book, "002");
        const EnclosureId home{book.newId()};
        const EnclosureId before{book.newId()};
        const EnclosureId elsewhere{book.newId()};
        for (const auto& each : {home, before, elsewhere}) {
            book.record(SetDraft{ThingType::enclosure, each.uuid, {{"name", each.text()}}}).value();
        }
        FactBody rehoused;
        rehoused.enclosure = before;
        book.record(FactDraft{chosen, FactKind::rehoused, rehoused, {}}).value();
        rehoused.enclosure = home;
        book.record(FactDraft{chosen, FactKind::rehoused, rehoused, {}}).value();
        const auto bind = [&](const char* code, const char* what, const std::string& target) {
            book.record(SetDraft{ThingType::tag, tagThing(code), {{"code", code}, {what, target}}})
                .value();
        };
        bind("AAAAAAAA", "subject", chosen.text());
        bind("BBBBBBBB", "enclosure", home.text());
        bind("CCCCCCCC", "subject", other.text());
        bind("DDDDDDDD", "enclosure", elsewhere.text());
        const auto watered =
            book.record(FactDraft{chosen, FactKind::watered, {}, {}}).value().entries[0];
        book.record(RetractDraft{watered}).value();
        logSecret(book, chosen);
        logMany(book, other, 3);

        sendAll(*room[0], *room[1], {std::set{chosen}, false});
        auto& got = room[1]->book();
        QCOMPARE(roster(got)->size(), 1U);
        QCOMPARE(roster(got)->front().tagCode, std::optional<std::string>("AAAAAAAA"));
        QCOMPARE(enclosures(got)->size(), 2U);
        QVERIFY(tag(got, "BBBBBBBB").value().has_value());
        QVERIFY(!tag(got, "CCCCCCCC").value().has_value());
        QVERIFY(!tag(got, "DDDDDDDD").value().has_value());
        QCOMPARE(history(got, chosen, 100)->size(), 2U);  // no water, nothing confidential
        QVERIFY(roomInfo(got)->name.empty());
        sendAll(*room[0], *room[1], {std::set{chosen}, true});
        QCOMPARE(history(got, chosen, 100)->size(), 3U);
        // What is sent stops where the receiver says so.
        int sent = 0;
        const auto stopped =
            forEachEntryLacking(book.connection(), {}, {}, [&](const StoredEntry&) -> Done {
                if (++sent == 3) return fail(Trouble::full, {"book.noRoom"});
                return {};
            });
        QCOMPARE(stopped.error().trouble, Trouble::full);
        QCOMPARE(sent, 3);
    }

    /// A book of the first version, filled, opens with its values as they were.
    void theFirstVersionComesAlong() {
        auto room = roomOf(1, 1);
        auto& a = *room[0];
        const auto path = a.folder.path() / "old.book";
        const auto thing = a.book().newId();
        {
            auto old = storage::Connection::open(path, storage::Access::create).value();
            must(old.execute(std::string(storage::schemaSteps().front())));
            must(old.execute("PRAGMA user_version = 1; PRAGMA application_id = " +
                             std::to_string(bookApplicationId)));
            must(
                old.execute("INSERT INTO device VALUES (1, randomblob(16));"
                            "INSERT INTO book VALUES (1, randomblob(16), 1, 0)"));
            const auto write = [&](int seq, const char* kind, const json& body) {
                auto insert = old.query(
                                     "INSERT INTO entry (id, device, seq, act, hlc, kind, thing, "
                                     "body, recorded_at, happened_at, day, zone) VALUES "
                                     "(randomblob(16), 1, ?, ?, ?, ?, ?, ?, 0, ?, 0, 'UTC')")
                                  .value();
                const auto text = body.dump();
                must(insert.bind(seq, seq, 1000 - seq, kind, thing.bytes, text, seq).run());
            };
            // Stamps that run backwards, as after a clock was set right: the later number counts.
            write(1, "set", {{"type", "subject"}, {"fields", {{"number", "1"}, {"note", "old"}}}});
            write(2, "set", {{"type", "subject"}, {"fields", {{"note", "new"}}}});
            write(3, "watered", json::object());
            write(4, "sold", {{"party", "Marl Hollow"}, {"price", "40"}});
        }
        auto book = Book::open(path, storage::Access::readWrite, a.surroundings()).value();
        const auto animal = kept(book, SubjectId{thing}).value();
        QCOMPARE(animal->subject.note, std::string("new"));
        QVERIFY(animal->digest.lastWatered.has_value());
        QVERIFY(differences(book)->empty());
        QVERIFY(isRebuiltTheSame(book));
        QVERIFY(check(book)->isSound());
        // A sale of the first version names the buyer in itself; so it is not passed on as it is.
        std::vector<std::string> kinds;
        must(forEachEntryLacking(book.connection(), {}, {}, [&](const StoredEntry& entry) -> Done {
            kinds.emplace_back(entry.kind);
            return {};
        }));
        QCOMPARE(kinds, (std::vector<std::string>{"set", "set", "watered"}));
    }
};

QTEST_APPLESS_MAIN(TestVersionVector)
#include "tst_version_vector.moc"
