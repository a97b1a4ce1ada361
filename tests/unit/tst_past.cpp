// How entries came to read as they do, and taking them out and putting them back.
#include <QtTest>

#include "journal/past.h"
#include "support/book.h"

using namespace burrow;
using namespace burrow::test;

class TestPast : public QObject {
    Q_OBJECT

private slots:
    void readsEveryWriting() {
        TestBook room;
        const auto animal = room.add("001", "Grammostola pulchra");
        FactBody body;
        body.span = Millimetres{62};
        const auto entry = room.log(animal, FactKind::measured, body).entries.front();
        room.clock.set({fridayEvening.ms + msPerDay});
        body.span = Millimetres{64};
        room.book.record(AmendDraft{entry, body, Instant{fridayEvening.ms - msPerDay}}).value();
        body.span = Millimetres{640};
        QVERIFY(!factBody(FactKind::measured, toJson(body)));
        body.span = Millimetres{66};
        room.book.record(AmendDraft{entry, body, fridayEvening}).value();
        room.book.undo().value();

        const auto readings = readingsOf(room.book, entry).value();
        QCOMPARE(readings.size(), std::size_t{2});
        QCOMPARE(readings[0].body.span, Millimetres{62});
        QCOMPARE(readings[0].writtenAt.ms, fridayEvening.ms);
        QCOMPARE(isoDate(readings[0].day), std::string("2026-05-08"));
        QCOMPARE(readings[1].body.span, Millimetres{64});
        QCOMPARE(isoDate(readings[1].day), std::string("2026-05-07"));
        const auto now = fact(room.book, entry).value().value();
        QCOMPARE(now.body.span, readings.back().body.span);
        QCOMPARE(now.day, readings.back().day);
    }

    void knowsNoReadingOfOthers() {
        TestBook room;
        const auto animal = room.add("001", "Grammostola pulchra");
        QVERIFY(readingsOf(room.book, EntryId{animal.uuid}).value().empty());
    }

    /// A rehousing that is written down late does not move the animal back.
    void latecomersKeepWhatStands() {
        TestBook room;
        const auto animal = room.add("001", "Grammostola pulchra");
        const auto first = home(room, "E-1");
        const auto second = home(room, "E-2");
        room.log(animal, FactKind::rehoused, into(second));
        const FactDraft late{animal, FactKind::rehoused, into(first), daysAgo(3)};
        room.book.record(logging(room.book, late).value()).value();
        QCOMPARE(room.kept(animal).subject.enclosure, second);
        const FactDraft now{animal, FactKind::rehoused, into(first), Instant{fridayEvening.ms + 1}};
        room.book.record(logging(room.book, now).value()).value();
        QCOMPARE(room.kept(animal).subject.enclosure, first);
    }

    void amendmentsFollowThrough() {
        TestBook room;
        const auto animal = room.add("001", "Grammostola pulchra");
        const auto first = home(room, "E-1");
        const auto second = home(room, "E-2");
        const auto old = room.log(animal, FactKind::rehoused, into(first), daysAgo(9));
        const auto last = room.log(animal, FactKind::rehoused, into(first), daysAgo(2));
        amend(room, old, into(second));
        QCOMPARE(room.kept(animal).subject.enclosure, first);
        amend(room, last, into(second));
        QCOMPARE(room.kept(animal).subject.enclosure, second);

        FactBody ultimate;
        ultimate.ultimate = true;
        const auto moult = room.log(animal, FactKind::moulted, ultimate);
        amend(room, moult, {});
        QVERIFY(!room.kept(animal).subject.mature);
        room.book.undo().value();
        QVERIFY(room.kept(animal).subject.mature);
    }

    /// Its photos and the sizes of its skin stand with the moult; what was seen at another time stays.
    void aMoultTakesItsPhotosAndSizesAlong() {
        TestBook room;
        const auto animal = room.add("001", "Grammostola pulchra");
        const auto moult = room.log(animal, FactKind::moulted, {}, daysAgo(9));
        const auto id = moult.entries.front();
        FactBody size;
        size.carapace = Millimetres{15.2};
        size.about = id;
        const auto measured = room.log(animal, FactKind::measured, size, daysAgo(9));
        FactBody photo;
        photo.picture = Sha256{};
        photo.role = PhotoRole::moult;
        photo.about = id;
        const auto taken = room.log(animal, FactKind::photo, photo, daysAgo(9));
        FactBody look;
        look.sex = Sex::female;
        look.about = id;
        const auto sexed = room.log(animal, FactKind::sexed, look, daysAgo(2));

        const auto was = fact(room.book, id).value().value();
        room.book.record(amending(room.book, was, was.body, daysAgo(20)).value()).value();
        const auto dayOf = [&](const ChangeSet& change) {
            return fact(room.book, change.entries.front()).value()->day;
        };
        QCOMPARE(dayOf(measured), dayOf(moult));
        QCOMPARE(dayOf(taken), dayOf(moult));
        QCOMPARE(dayOf(moult), was.day - 11);
        QCOMPARE(dayOf(sexed), was.day + 7);
        QCOMPARE(room.kept(animal).digest.recentMoults.back().carapace, Millimetres{15.2});
        QCOMPARE(fact(room.book, measured.entries.front()).value()->body.about, id);
        room.book.undo().value();  // one act
        QCOMPARE(dayOf(measured), was.day);
        QCOMPARE(dayOf(taken), was.day);
    }

    // Friday evening in Europe is Saturday in Auckland, where the keeper is by now.
    void aDayOnceWrittenStaysAbroad() {
        TestBook room;
        const auto animal = room.add("001", "Grammostola pulchra");
        FactBody body;
        body.text = "Restless";
        const auto entry = room.log(animal, FactKind::note, body);
        auto abroad = room.surroundings();
        abroad.zone = Zone::named("Pacific/Auckland").value();
        auto book = Book::open(room.book.path(), storage::Access::readWrite, abroad).value();
        const auto was = fact(book, entry.entries.front()).value().value();
        body.text = "Restless, at the lid";
        book.record(amending(book, was, body, was.happenedAt).value()).value();
        const auto now = fact(book, was.id).value().value();
        QCOMPARE(now.body.text, body.text);
        QCOMPARE(now.day, was.day);
        book.record(amending(book, now, body, Instant{was.happenedAt.ms + 60'000}).value()).value();
        QCOMPARE(fact(book, was.id).value().value().day, was.day + 1);  // another time was given
    }

    /// Other facts of the same tap, and what followed from them, stay.
    void takesOutWithConsequences() {
        TestBook room;
        const auto animal = room.add("001", "Grammostola pulchra");
        FactBody moult;
        moult.ultimate = true;
        FactBody sexed;
        sexed.sex = Sex::male;
        const std::vector<Draft> tap{FactDraft{animal, FactKind::moulted, moult, std::nullopt},
                                     FactDraft{animal, FactKind::sexed, sexed, std::nullopt}};
        const auto entries = room.book.record(tap).value().entries;
        QCOMPARE(entries.size(), std::size_t{4});
        QVERIFY(room.kept(animal).subject.mature);
        const auto taken = takingOut(room.book, entries.front()).value().value();
        QCOMPARE(taken.drafts.size(), std::size_t{2});
        room.book.record(taken.drafts).value();
        QVERIFY(!room.kept(animal).subject.mature);
        QCOMPARE(room.kept(animal).subject.sex, Sex::male);
        QCOMPARE(room.kept(animal).digest.moultCount, 0);
        QVERIFY(!takingOut(room.book, entries.front()).value());
    }

    void putsBackWithWhatBelongedToIt() {
        TestBook room;
        const auto animal = room.add("001", "Grammostola pulchra");
        FactBody moult;
        moult.ultimate = true;
        moult.span = Millimetres{140};
        const auto entry = room.log(animal, FactKind::moulted, moult, daysAgo(3)).entries.front();
        FactBody photo;
        photo.picture = Sha256{};
        photo.role = PhotoRole::moult;
        photo.about = entry;
        const auto photoEntry = room.log(animal, FactKind::photo, photo).entries.front();
        const auto before = room.kept(animal);

        const auto taken = takingOut(room.book, entry).value().value();
        room.book.record(taken.drafts).value();
        QVERIFY(room.kept(animal).digest != before.digest);
        const auto again = putBack(room.book, taken).value().entries.front();
        QVERIFY(again != entry);
        QVERIFY(room.kept(animal).digest == before.digest);
        QCOMPARE(room.kept(animal).subject.mature, true);
        QCOMPARE(fact(room.book, again).value()->happenedAt.ms, daysAgo(3).ms);
        QCOMPARE(fact(room.book, photoEntry).value()->body.about, again);
    }

    /// An old rehousing that comes back says where it was, not where it is.
    void putsBackWithoutMoving() {
        TestBook room;
        const auto animal = room.add("001", "Grammostola pulchra");
        const auto first = home(room, "E-1");
        const auto second = home(room, "E-2");
        const auto old = room.log(animal, FactKind::rehoused, into(first), daysAgo(9));
        room.log(animal, FactKind::rehoused, into(second), daysAgo(2));
        const auto taken = takingOut(room.book, old.entries.front()).value().value();
        room.book.record(taken.drafts).value();
        putBack(room.book, taken).value();
        QCOMPARE(room.kept(animal).subject.enclosure, second);
        QCOMPARE(history(room.book, animal, 10).value().size(), std::size_t{2});
    }

private:
    static Instant daysAgo(int days) { return {fridayEvening.ms - days * msPerDay}; }

    static EnclosureId home(TestBook& room, const std::string& name) {
        Enclosure enclosure;
        enclosure.name = name;
        const EnclosureId id{room.book.newId()};
        room.book.record(SetDraft{ThingType::enclosure, id.uuid, toFields(enclosure)}).value();
        return id;
    }

    static FactBody into(EnclosureId enclosure) {
        FactBody body;
        body.enclosure = enclosure;
        return body;
    }

    static void amend(TestBook& room, const ChangeSet& entry, const FactBody& body) {
        const auto was = fact(room.book, entry.entries.front()).value().value();
        room.book.record(amending(room.book, was, body, was.happenedAt).value()).value();
    }
};

QTEST_APPLESS_MAIN(TestPast)
#include "tst_past.moc"
