// Differences, settling them and taking a merge back, from a shell.
#include <QtTest>

#include "programs/burrow.h"
#include "support/joined.h"

using namespace burrow;
using namespace burrow::test;
using burrow::test::Shell;
using nlohmann::json;

namespace {

SetDraft field(SubjectId animal, const std::string& name, json value) {
    return {ThingType::subject, animal.uuid, {{name, std::move(value)}}};
}

/// Two devices that gave the same number twice and wrote two notes about one animal.
struct TwoBooks {
    TwoBooks() : room(roomOf(2, 7)), a(*room[0]), b(*room[1]), animal{a.book().newId()} {
        a.book()
            .record(SetDraft{ThingType::subject,
                             animal.uuid,
                             {{"number", "214"}, {"species", "Brachypelma hamorii"}}})
            .value();
        sendAll(a, b);
        b.clock.set({fridayEvening.ms + 1000});
        a.book().record(field(animal, "note", "calm")).value();
        b.book().record(field(animal, "note", "defensive\x1B[2J")).value();
        for (auto* each : {&a, &b}) {
            each->book()
                .record(SetDraft{ThingType::subject,
                                 each->book().newId(),
                                 {{"number", "300"}, {"species", "Caribena versicolor"}}})
                .value();
        }
        sendAll(b, a);
        path = QString::fromStdString(a.path.string());
    }

    std::vector<std::unique_ptr<Device>> room;
    Device& a;
    Device& b;
    SubjectId animal;
    QString path;
};

json ofKind(const json& list, const std::string& kind) {
    for (const auto& each : list["differences"]) {
        if (each["kind"] == kind) return each;
    }
    return {};
}

}  // namespace

class TestSettle : public QObject {
    Q_OBJECT

private slots:
    void listsWhatDiffers() {
        const TwoBooks books;
        const Shell burrow;
        const auto said = burrow("differences " + books.path);
        QCOMPARE(said.status, 0);
        QVERIFY2(said.out.contains("214 Brachypelma hamorii: note"), qPrintable(said.out));
        QVERIFY(said.out.contains("2 animals have the number 300"));
        QVERIFY(said.out.contains("2 differences to settle."));
        QVERIFY(!said.out.contains('\x1B'));

        const auto list = burrow("--json differences " + books.path).json();
        const auto note = ofKind(list, "field");
        QCOMPARE(note["field"], json("note"));
        QCOMPARE(note["thing"], json(books.animal.text()));
        QCOMPARE(note["choices"].size(), 2U);
        QCOMPARE(note["choices"][0]["counts"], json(true));
        QCOMPARE(note["choices"][1]["value"], json("calm"));
        QCOMPARE(note["choices"][1]["device"], json(books.a.book().device().text()));
        QCOMPARE(ofKind(list, "number")["number"], json("300"));
    }

    void settlesOneAfterTheOther() {
        const TwoBooks books;
        const Shell burrow;
        const auto list = burrow("--json differences " + books.path).json();
        const auto note = QString::fromStdString(ofKind(list, "field")["key"]);
        const auto number = QString::fromStdString(ofKind(list, "number")["key"]);
        QCOMPARE(burrow("settle " + books.path + " " + note + " 3").status, 1);
        QCOMPARE(burrow("settle " + books.path + " " + note + " 0").status, 1);
        QCOMPARE(burrow("settle " + books.path + " 00000000 1").status, 1);
        const auto settled = burrow("settle " + books.path + " " + note + " 2");
        QCOMPARE(settled.status, 0);
        QVERIFY(settled.out.contains("Settled."));
        QCOMPARE(kept(books.a.book(), books.animal).value()->subject.note, std::string("calm"));
        const auto again = burrow("settle " + books.path + " " + note + " 2");
        QCOMPARE(again.status, 1);
        QVERIFY(again.err.contains("settled already"));
        QCOMPARE(burrow("--json settle " + books.path + " " + number + " 1").json()["left"],
                 json(0));
        QVERIFY(burrow("differences " + books.path).out.contains("nothing to settle"));
        QCOMPARE(subjectsNumbered(books.a.book(), "300")->size(), 1U);
        QCOMPARE(subjectsNumbered(books.a.book(), "301")->size(), 1U);
    }

    void takesTheNewestMergeBack() {
        const TwoBooks books;
        const Shell burrow;
        const auto taken = burrow("--json take-back " + books.path).json();
        QCOMPARE(taken["entries"], json(2));
        QCOMPARE(taken["source"], json("room.burrow"));
        QVERIFY(differences(books.a.book())->empty());
        const auto again = burrow("take-back " + books.path);
        QCOMPARE(again.status, 1);
        QVERIFY(again.err.contains("Nothing was merged"));
        QCOMPARE(burrow("check " + books.path).status, 0);
        sendAll(books.b, books.a);
        QVERIFY(burrow("take-back " + books.path).out.contains("2 entries that came from room"));
    }

    void whatStandsBesideASaleIsNoEventOfItsOwn() {
        const TwoBooks books;
        const Shell burrow;
        const auto log = burrow("log " + books.path + " 214 sold party=Marl price=40");
        QCOMPARE(log.status, 0);
        QVERIFY(burrow("show " + books.path + " 214").out.contains("price=40"));
        const auto undone = burrow("--json undo " + books.path).json();
        QCOMPARE(undone["undone"].size(), 1U);
        QCOMPARE(undone["undone"][0]["event"], json("sold"));
        QVERIFY(!burrow("show " + books.path + " 214").out.contains("price=40"));
    }
};

QTEST_GUILESS_MAIN(TestSettle)
#include "tst_settle.moc"
