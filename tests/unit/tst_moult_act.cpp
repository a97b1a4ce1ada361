// A moult and its photos in one act, and examinations that could not tell.
#include <QtTest>

#include <algorithm>

#include "base/files.h"
#include "journal/past.h"
#include "support/book.h"

using namespace burrow;
using test::TestBook;

namespace {

FactBody photoOf(const EntryId& moult) {
    FactBody body;
    body.picture = Sha256::of(bytesOf("a picture"));
    body.role = PhotoRole::moult;
    body.about = moult;
    return body;
}

/// How many photos the animal has of that moult.
int photosOf(TestBook& room, SubjectId animal, const EntryId& moult) {
    const auto facts = history(room.book, animal, wholeHistory).value();
    return int(std::ranges::count_if(facts, [&](const Fact& fact) {
        return fact.kind == FactKind::photo && fact.body.about == moult;
    }));
}

FactBody examined(Sex sex) {
    FactBody body;
    body.sex = sex;
    return body;
}

}  // namespace

class TestMoultAct : public QObject {
    Q_OBJECT

private slots:
    void photosNameTheMoultOfTheirAct() {
        TestBook room;
        const auto animal = room.add("001", "Grammostola pulchra");
        const EntryId moult{room.book.newId()};
        const std::vector<Draft> act{
            FactDraft{animal, FactKind::moulted, {}, std::nullopt, moult},
            FactDraft{animal, FactKind::photo, photoOf(moult), std::nullopt},
            FactDraft{animal, FactKind::photo, photoOf(moult), std::nullopt}};
        const auto entries = room.book.record(act).value().entries;
        QCOMPARE(entries.front(), moult);
        QVERIFY(entries[1] != entries[2]);
        QCOMPARE(photosOf(room, animal, moult), 2);

        room.book.undo().value();  // one tap
        QVERIFY(!fact(room.book, moult).value());
        QCOMPARE(photosOf(room, animal, moult), 0);
    }

    void anIdIsGivenOnce() {
        TestBook room;
        const auto animal = room.add("001", "Grammostola pulchra");
        const EntryId id{room.book.newId()};
        const FactDraft moult{animal, FactKind::moulted, {}, std::nullopt, id};
        room.book.record(moult).value();
        QVERIFY(!room.book.record(moult));
        QCOMPARE(room.kept(animal).digest.moultCount, 1);
    }

    void cannotTellLeavesTheSexStanding() {
        TestBook room;
        const auto animal = room.add("001", "Grammostola pulchra");
        const auto seen = room.log(animal, FactKind::sexed, examined(Sex::female)).entries.front();
        QCOMPARE(room.kept(animal).subject.sex, Sex::female);
        room.log(animal, FactKind::sexed, examined(Sex::unknown));
        QCOMPARE(room.kept(animal).subject.sex, Sex::female);

        // An examination that is corrected to this takes back what it had set.
        const auto before = fact(room.book, seen).value().value();
        const auto later = room.book.undo();
        QVERIFY(later);
        room.book
            .record(amending(room.book, before, examined(Sex::unknown), before.happenedAt).value())
            .value();
        QCOMPARE(room.kept(animal).subject.sex, Sex::unknown);
    }
};

QTEST_APPLESS_MAIN(TestMoultAct)
#include "tst_moult_act.moc"
