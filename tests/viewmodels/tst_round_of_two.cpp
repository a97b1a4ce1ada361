// A round that is begun on one phone and goes on at another: what was done follows from the records alone.
#include "viewmodels/roundmodel.h"
#include "viewmodels/takeinmodel.h"
#include "viewmodels/two_phones.h"

using namespace burrow;
using namespace burrow::test;
using Task = RoundModel::Task;

namespace {

/// Two phones with a shelf of four to feed, and the first one's round.
struct Round {
    Round() {
        for (const char* number : {"401", "402", "403", "404"}) {
            Subject subject;
            subject.number = number;
            subject.species = "Brachypelma hamorii";
            subject.place = Place::parse(std::string("R / ") + number);
            const SubjectId id{phones.other->newId()};
            phones.other->record(SetDraft{ThingType::subject, id.uuid, toFields(subject)}).value();
            const auto back = [](int days) { return Instant{fridayEvening.ms - days * msPerDay}; };
            log(id, FactKind::measured, {.span = Millimetres{140}}, back(60));
            log(id, FactKind::watered, {}, back(1));
            log(id, FactKind::dampened, {}, back(1));
            log(id, FactKind::offered, {.outcome = Outcome::ate}, back(40));
            ids.push_back(id);
        }
        takeIn();
        model.setDesk(&phones.at.desk);
    }

    /// Something written on the other phone.
    void log(SubjectId id, FactKind kind, FactBody body = {},
             std::optional<Instant> at = std::nullopt) {
        phones.other->record(FactDraft{id, kind, std::move(body), at}).value();
    }
    /// What the other phone has comes here, as a file.
    void takeIn() {
        exchange::ExportOptions all;
        const auto path = phones.at.folder.path() / ("r" + std::to_string(++files) + ".burrow");
        exchange::exportBundle(*phones.other, path, all).value();
        Deed deed;
        deed.write = [this, path](Book& book) -> Result<ChangeSet> {
            BURROW_TRY(auto report, exchange::mergeBundle(book, path, phones.files, {}));
            return std::move(report.merge.changes);
        };
        phones.at.desk.act(&phones.at.desk, std::move(deed));
        phones.at.settle();
    }
    /// What this phone has goes to the other one.
    void giveAway() {
        const auto path = phones.at.folder.path() / ("g" + std::to_string(++files) + ".burrow");
        phones.at.desk.ask<exchange::Manifest>(
            &phones.at.desk, [path](Book& book) { return exchange::exportBundle(book, path, {}); },
            [](const Result<exchange::Manifest>& made) { made.value(); });
        phones.at.settle();
        exchange::mergeBundle(*phones.other, path, phones.files, {}).value();
    }

    TwoPhones phones;
    std::vector<SubjectId> ids;
    RoundModel model;
    int files = 0;
};

}  // namespace

class TestRoundOfTwo : public QObject {
    Q_OBJECT

private slots:
    void goesOnWhereTheOtherPhoneStopped() {
        Round round;
        for (int done = 0; done < 2; ++done) {
            round.log(round.ids[static_cast<std::size_t>(done)], FactKind::offered,
                      {.outcome = done == 0 ? Outcome::ate : Outcome::refused});
        }
        round.takeIn();
        round.model.start("Shelf R");
        QCOMPARE(round.model.tag(), QString("403"));
        QCOMPARE(round.model.progress(), QString("3 of 4"));
        QCOMPARE(round.model.holes(), (QStringList{"done", "done", "current", "open"}));
        round.model.doMain();
        round.phones.at.settle();
        round.model.next();
        QCOMPARE(round.model.tag(), QString("404"));
        // And back: the other phone finds three of them done.
        round.giveAway();
        const auto room =
            Room::load(*round.phones.other,
                       {round.phones.at.reference.profiles, round.phones.at.reference.rules},
                       PlanDay::at(fridayEvening, Zone::utc()))
                .value();
        std::vector<bool> open;
        std::vector<bool> seen;
        for (const auto id : round.ids) {
            open.push_back(room.stub(id)->glance().isOfRound());
            seen.push_back(room.stub(id)->glance().isSeenToday);
        }
        QCOMPARE(open, (std::vector<bool>{false, false, false, true}));
        QCOMPARE(seen, (std::vector<bool>{true, true, true, false}));
    }

    void whatTheOtherDoesMeanwhileIsDone() {
        Round round;
        round.model.start("Shelf R");
        QCOMPARE(round.model.tag(), QString("401"));
        QCOMPARE(round.model.holes(), (QStringList{"current", "open", "open", "open"}));
        // The other phone begins at the other end, and feeds this one too.
        for (const std::size_t at : {3U, 2U, 0U}) {
            round.log(round.ids[at], FactKind::offered, {.outcome = Outcome::ate});
        }
        round.takeIn();
        QCOMPARE(round.model.tag(), QString("401"));  // the hand is at this tub
        QCOMPARE(round.model.task(), Task::Waiting);
        QCOMPARE(round.model.holes(), (QStringList{"current", "open", "done", "done"}));
        round.model.next();
        QCOMPARE(round.model.tag(), QString("402"));
        round.model.doMain();
        round.phones.at.settle();
        round.model.next();
        QCOMPARE(round.model.task(), Task::Finished);
        QCOMPARE(round.model.holes(), (QStringList{"done", "done", "done", "done"}));
    }

    void theProgramWasClosed() {
        Round round;
        round.model.start("Shelf R");
        round.model.doMain();
        round.phones.at.settle();
        round.phones.at.desk.close();
        round.phones.at.desk.open(round.phones.at.path);
        round.phones.at.settle();
        RoundModel again;
        again.setDesk(&round.phones.at.desk);
        again.start("Shelf R");
        QCOMPARE(again.tag(), QString("402"));
        QCOMPARE(again.progress(), QString("2 of 4"));
        QCOMPARE(again.holes(), (QStringList{"done", "current", "open", "open"}));
    }

    void whatWasTakenBackIsOpenAgain() {
        Round round;
        round.model.start("Shelf R");
        round.model.doMain();
        round.phones.at.settle();
        round.model.next();
        round.phones.at.desk.undo();
        round.phones.at.settle();
        QCOMPARE(round.model.holes(), (QStringList{"open", "current", "open", "open"}));
    }
};

QTEST_MAIN(TestRoundOfTwo)
#include "tst_round_of_two.moc"
