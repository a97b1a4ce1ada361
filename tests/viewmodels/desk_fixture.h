// A desk with a small book of its own, for tests of view-models.
#pragma once

#include <QtTest>
#include <future>

#include "files/reference.h"
#include "support/book.h"
#include "viewmodels/desk.h"

namespace burrow::test {

class DeskFixture {
public:
    DeskFixture()
        : reference(loadReference().value()),
          desk({reference.words, reference.profiles, reference.rules, reference.numbers, clock,
                random, Zone::utc()}) {}

    /// Starts a book with four subjects: one to feed, one hardening, a group with prey left in, and one
    /// that was sold.
    void openRoom() {
        path = folder.path() / "room.book";
        {
            SeededRandom seeded(1);
            auto book = Book::create(path, "Kiln Row", "KR", {clock, seeded, Zone::utc()}).value();
            hamorii = add(book, "214", "Brachypelma hamorii", "A / 1");
            pulchra = add(book, "118", "Grammostola pulchra", "A / 2");
            group = add(book, "260", "Neoholothele incei", "C / 1", Form::group, 12);
            gone = add(book, "331", "Caribena versicolor", "C / 2");
            log(book, hamorii, FactKind::offered, -14, {.outcome = Outcome::ate});
            log(book, hamorii, FactKind::measured, -60, {.span = Millimetres{140}});
            log(book, pulchra, FactKind::moulted, -4, {.span = Millimetres{160}});
            log(book, group, FactKind::offered, -1, {.count = 6, .outcome = Outcome::leftIn});
            log(book, gone, FactKind::sold, -10, {});
            for (const auto id : {hamorii, pulchra, group}) {
                log(book, id, FactKind::watered, -1, {});
                log(book, id, FactKind::dampened, -1, {});
            }
        }
        desk.open(path);
        settle();
    }

    /// Lets the book's thread finish what it was given.
    void settle() {
        for (int round = 0; round < 2; ++round) {
            bool answered = false;
            desk.ask<int>(
                &desk, [](Book&) -> Result<int> { return 1; },
                [&](const Result<int>&) { answered = true; });
            QVERIFY(QTest::qWaitFor([&] { return answered; }));
        }
    }

    /// Keeps the book's thread busy until the returned promise is set or gone: what is asked meanwhile waits.
    [[nodiscard]] std::unique_ptr<std::promise<void>> holdBook() {
        auto promise = std::make_unique<std::promise<void>>();
        const auto held = std::make_shared<std::future<void>>(promise->get_future());
        desk.ask<int>(
            &desk,
            [held](Book&) -> Result<int> {
                held->wait();
                return 1;
            },
            [](const Result<int>&) {});
        return promise;
    }

    [[nodiscard]] QString id(SubjectId subject) const {
        return QString::fromStdString(subject.text());
    }
    /// What stands in the book about a subject, newest first.
    std::vector<Fact> history(SubjectId subject) {
        std::vector<Fact> facts;
        desk.ask<std::vector<Fact>>(
            &desk, [subject](Book& book) { return burrow::history(book, subject, 100); },
            [&](const Result<std::vector<Fact>>& found) { facts = found.value(); });
        settle();
        return facts;
    }

    FixedClock clock{fridayEvening};
    SystemRandom random;
    ScratchFolder folder;
    std::filesystem::path path;
    Reference reference;
    Desk desk;
    SubjectId hamorii;
    SubjectId pulchra;
    SubjectId group;
    SubjectId gone;

private:
    static SubjectId add(Book& book, const char* number, const char* species, const char* place,
                         Form form = Form::animal, int count = 1) {
        Subject subject;
        subject.number = number;
        subject.species = species;
        subject.place = Place::parse(place);
        subject.form = form;
        subject.headcount = count;
        const SubjectId id{book.newId()};
        const std::string code = std::string("TAG00") + number;
        const Tag tag{code, Millimetres{20}, id, std::nullopt};
        book.record(std::vector<Draft>{SetDraft{ThingType::subject, id.uuid, toFields(subject)},
                                       SetDraft{ThingType::tag, tagThing(code), toFields(tag)}})
            .value();
        return id;
    }

    static void log(Book& book, SubjectId id, FactKind kind, int daysFromNow, FactBody body) {
        const Instant at{fridayEvening.ms + daysFromNow * msPerDay};
        book.record(FactDraft{id, kind, std::move(body), at}).value();
    }
};

}  // namespace burrow::test
