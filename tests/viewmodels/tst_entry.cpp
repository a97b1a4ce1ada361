// One entry: what it says, how it came to say it, and taking it out.
#include <QSignalSpy>

#include "viewmodels/entrymodel.h"
#include "viewmodels/keeping.h"

using namespace burrow;
using namespace burrow::test;

namespace {

Fact newest(DeskFixture& at, SubjectId id) { return at.history(id).front(); }

class Page : public EntryModel {
public:
    Page(DeskFixture& at, const Fact& fact) {
        setDesk(&at.desk);
        setEntry(QString::fromStdString(fact.id.text()));
        at.settle();
    }
};

}  // namespace

class TestEntry : public QObject {
    Q_OBJECT

private slots:
    void saysAllThatWasWritten() {
        DeskFixture at;
        at.openRoom();
        log(at, at.hamorii, FactKind::lent, 400,
            {.party = "the keeper of 031",
             .until = civilDay({2025, 8, 1}),
             .text = "half the young",
             .confidential = true});
        log(at, at.hamorii, FactKind::returned, 300);
        const auto facts = at.history(at.hamorii);
        QCOMPARE(facts.back().kind, FactKind::lent);
        const Page page(at, facts.back());
        QCOMPARE(page.tag(), QString("214"));
        QCOMPARE(page.title(), QString("Lent out"));
        QCOMPARE(page.day(), QString("3 April 2025"));
        QCOMPARE(column(page.lines(), "name"), (QStringList{"Who", "Until", "Note", "Private"}));
        QCOMPARE(column(page.lines(), "value"),
                 (QStringList{"the keeper of 031", "1 August 2025", "half the young", "Yes"}));
        QVERIFY(page.readings().isEmpty());  // nothing was amended
        QVERIFY(page.picture().isEmpty());
    }

    void everyReadingIsKept() {
        DeskFixture at;
        at.openRoom();
        log(at, at.hamorii, FactKind::measured, 1, {.span = Millimetres{150}});
        const auto fact = newest(at, at.hamorii);
        Page page(at, fact);
        at.clock.set({fridayEvening.ms + msPerDay});
        write(at, {AmendDraft{
                      fact.id, {.span = Millimetres{145}, .method = Method::ruler}, daysAgo(2)}});
        QCOMPARE(page.day(), QString("6 May 2026"));
        QCOMPARE(column(page.lines(), "value"), (QStringList{"145 mm", "Ruler"}));
        QCOMPARE(column(page.readings(), "name"),
                 (QStringList{"Written 8 May", "Amended Saturday"}));
        QCOMPARE(column(page.readings(), "value"), (QStringList{"7 May 2026", "6 May 2026"}));
        QCOMPARE(column(page.readings(), "sub"),
                 (QStringList{"Measured, 150 mm leg span", "Measured, 145 mm leg span"}));
        at.desk.undo();
        at.settle();
        QVERIFY(page.readings().isEmpty());
        QCOMPARE(column(page.lines(), "value"), (QStringList{"150 mm"}));
    }

    void whatIsTakenOutNoLongerCounts() {
        DeskFixture at;
        at.openRoom();
        log(at, at.hamorii, FactKind::sexed, 1, {.sex = Sex::male});
        Page page(at, newest(at, at.hamorii));
        QSignalSpy out(&page, &EntryModel::takenOut);
        page.takeOut();
        QVERIFY(page.isBusy());
        page.takeOut();  // a second tap meanwhile
        at.settle();
        QCOMPARE(out.count(), 1);
        QVERIFY2(at.desk.trouble().isEmpty(), qPrintable(at.desk.trouble()));
        QVERIFY(page.isMissing() && !page.isBusy() && page.title().isEmpty());
        QCOMPARE(resident(at, at.hamorii)->subject().sex, Sex::unknown);
        QCOMPARE(at.desk.doneText(), QString("taken out of the history"));
        at.desk.undo();
        at.settle();
        QCOMPARE(newest(at, at.hamorii).kind, FactKind::sexed);
        QCOMPARE(newest(at, at.hamorii).day, at.desk.today() - 1);
        QCOMPARE(resident(at, at.hamorii)->subject().sex, Sex::male);
    }

    void aDeathThatWasNoneBringsItBack() {
        DeskFixture at;
        at.openRoom();
        log(at, at.hamorii, FactKind::died, 0, {.cause = "stuck moult"});
        QVERIFY(!resident(at, at.hamorii)->subject().isKept());
        Page(at, newest(at, at.hamorii)).takeOut();
        at.settle();
        QVERIFY(resident(at, at.hamorii)->subject().isKept());
    }

    void thoseWhoDiedInAGroupAreCountedAgain() {
        DeskFixture at;
        at.openRoom();
        log(at, at.group, FactKind::died, 0, {.count = 3});
        Page page(at, newest(at, at.group));
        QCOMPARE(column(page.lines(), "value"), (QStringList{"3"}));
        page.takeOut();
        at.settle();
        QCOMPARE(resident(at, at.group)->subject().headcount, 12);
        at.desk.undo();
        at.settle();
        QCOMPARE(resident(at, at.group)->subject().headcount, 9);
    }

    void aPhotoIsShown() {
        DeskFixture at;
        at.openRoom();
        const auto picture = Sha256::of("a moult");
        log(at, at.hamorii, FactKind::photo, 0, {.role = PhotoRole::moult, .picture = picture});
        const Page page(at, newest(at, at.hamorii));
        QVERIFY(page.picture().isLocalFile());
        QVERIFY(page.picture().path().contains(QString::fromStdString(picture.hex())));
        QCOMPARE(column(page.lines(), "name"), (QStringList{"Shows"}));  // no hash, no identifiers
    }

    void theEntryBeforeIsNotTakenForThisOne() {
        DeskFixture at;
        at.openRoom();
        const auto facts = at.history(at.hamorii);
        EntryModel page;
        page.setDesk(&at.desk);
        page.setEntry(QString::fromStdString(facts.front().id.text()));
        page.setEntry(QString::fromStdString(facts.back().id.text()));
        QStringList titles;
        connect(&page, &EntryModel::changed, &page, [&] { titles.append(page.title()); });
        at.settle();
        QCOMPARE(titles, (QStringList{"Measured"}));
    }

    /// The moult, its photo, and what was said of either lead back to it; one without a photo does not.
    void aMoultWithAPhotoCanBeLookedAtForTheSex() {
        DeskFixture at;
        at.openRoom();
        const auto last = [&](FactKind kind) {
            for (const auto& fact : at.history(at.hamorii)) {
                if (fact.kind == kind) return fact;
            }
            return Fact();
        };
        const auto toSex = [&](const Fact& fact) { return Page(at, fact).toSex(); };
        log(at, at.hamorii, FactKind::moulted, 5);
        const auto moult = last(FactKind::moulted);
        const auto id = QString::fromStdString(moult.id.text());
        QVERIFY(toSex(moult).isEmpty());
        FactBody shot;
        shot.role = PhotoRole::moult;
        shot.picture = Sha256::of(std::string("a photo"));
        shot.about = moult.id;
        log(at, at.hamorii, FactKind::photo, 4, shot);
        const auto photo = last(FactKind::photo);
        FactBody seen;
        seen.sex = Sex::female;
        seen.about = moult.id;
        log(at, at.hamorii, FactKind::sexed, 3, seen);
        const auto look = last(FactKind::sexed);
        seen.about = photo.id;
        log(at, at.hamorii, FactKind::sexed, 2, seen);
        const auto lookAtPhoto = last(FactKind::sexed);
        for (const auto& fact : {moult, photo, look, lookAtPhoto}) QCOMPARE(toSex(fact), id);
        QVERIFY(toSex(last(FactKind::offered)).isEmpty());
    }

    void whatIsNotInTheBookIsMissing() {
        DeskFixture at;
        at.openRoom();
        EntryModel page;
        page.setDesk(&at.desk);
        QVERIFY(!page.isMissing());  // nothing was asked for yet
        page.setEntry("no id at all");
        QVERIFY(page.isMissing());
        Fact nothing;
        nothing.id = EntryId{Uuid::named("nothing")};
        Page other(at, nothing);
        QVERIFY(other.isMissing() && other.lines().isEmpty() && other.picture().isEmpty());
        other.takeOut();
        at.settle();
        QVERIFY(at.desk.doneText().isEmpty());
    }
};

QTEST_GUILESS_MAIN(TestEntry)
#include "tst_entry.moc"
