// `burrow backup`, `backups` and `restore` as a script uses them.
#include <QtTest>

#include "programs/burrow.h"

using burrow::test::Shell;

namespace {

void makeRoom(const Shell& burrow) {
    QCOMPARE(burrow("new room.book --room Kiln --code KR").status, 0);
    burrow.write("a.csv", "code,species\n214,Brachypelma hamorii\n");
    QCOMPARE(burrow("bring room.book --animals a.csv").status, 0);
}

QString nameOf(const nlohmann::json& backup) {
    return QFileInfo(QString::fromStdString(backup["file"])).fileName();
}

}  // namespace

class TestGoingBack : public QObject {
    Q_OBJECT

private slots:
    void thereAndBack() {
        const Shell burrow;
        makeRoom(burrow);
        const auto made = burrow("backup room.book --json").json()["made"];
        QCOMPARE(made["reason"], "asked");
        QCOMPARE(made["entries"], 3);
        QCOMPARE(burrow("log room.book 214 watered").status, 0);
        QCOMPARE(burrow("log room.book 214 dampened").status, 0);

        // Without --yes it only tells what would be.
        const auto name = nameOf(made);
        const auto preview = burrow("restore room.book --json " + name).json();
        QCOMPARE(preview["done"], false);
        QCOMPARE(preview["lost"]["entries"], 2);
        QCOMPARE(preview["gained"]["entries"], 0);
        const auto said = burrow("restore room.book " + name);
        QCOMPARE(said.status, 0);
        QVERIFY2(said.out.contains("2 entries") && said.out.contains("--yes"),
                 qPrintable(said.out));
        QCOMPARE(burrow("check room.book --json").json()["entries"], 5);

        // The name goes without its ending, too.
        const auto back = burrow("restore room.book --yes --json " + name.chopped(5)).json();
        QCOMPARE(back["done"], true);
        QCOMPARE(burrow("check room.book --json").json()["entries"], 3);
        const auto kept = QString::fromStdString(back["kept"]);
        QVERIFY(QFile::exists(burrow.path(kept)));
        QCOMPARE(burrow("log room.book 214 watered").status, 0);
        QCOMPARE(burrow("check room.book").status, 0);

        // And a file by its path: all that was logged is still to be had.
        QCOMPARE(burrow("restore room.book --yes", {kept}).status, 0);
        QCOMPARE(burrow("check room.book --json").json()["entries"], 5);
    }

    void listsWhatThereIs() {
        const Shell burrow;
        makeRoom(burrow);
        const auto before = burrow("backups room.book --json").json();
        QCOMPARE(before.size(), 1U);  // bringing in made one
        QCOMPARE(before[0]["reason"], "before-import");
        QCOMPARE(before[0]["entries"], 1);
        QCOMPARE(burrow("backup room.book --if-due --json").json()["made"]["reason"], "weekly");
        QVERIFY(burrow("backup room.book --if-due --json").json()["made"].is_null());
        // Nothing was written since: what is about to be tried again makes no more of them.
        burrow.write("b.csv", "code,species,sex\n215,Brachypelma hamorii,both\n");
        for (int i = 0; i < 3; ++i) QCOMPARE(burrow("bring room.book --animals b.csv").status, 1);
        burrow.write("room.book-backups/20250101T000000Z-daily.book", "rubbish");
        const auto list = burrow("backups room.book --json").json();
        QCOMPARE(list.size(), 3U);
        QCOMPARE(list[0]["readable"], true);
        QCOMPARE(list[0]["subjects"].get<int>() + list[1]["subjects"].get<int>(), 1);
        QCOMPARE(list[2]["readable"], false);
        const auto said = burrow("backups room.book");
        QCOMPARE(said.out.count('\n'), 3);
        QVERIFY2(said.out.contains("3 entries, one subject"), qPrintable(said.out));
        QVERIFY(!said.out.contains('['));
    }

    void refused_data() {
        QTest::addColumn<QString>("words");
        for (const char* words :
             {"backup none.book", "backup a.csv", "restore room.book none", "restore room.book .",
              "restore room.book a.csv --yes", "restore room.book other.book --yes",
              "restore room.book ../room.book-backups --yes"}) {
            QTest::newRow(words) << words;
        }
    }
    void refused() {
        QFETCH(QString, words);
        const Shell burrow;
        makeRoom(burrow);
        QCOMPARE(burrow("new other.book --room Other --code OT").status, 0);
        const auto before = burrow.bookBytes("room.book");
        const auto run = burrow(words);
        QVERIFY2(run.status == 1, qPrintable(run.out + run.err));
        QVERIFY2(run.err.trimmed().endsWith('.') && !run.err.contains('['), qPrintable(run.err));
        QVERIFY(burrow.bookBytes("room.book") == before);
        QCOMPARE(burrow("check room.book").status, 0);
    }

    void aLostBookComesBack() {
        const Shell burrow;
        makeRoom(burrow);
        const auto name = nameOf(burrow("backup room.book --json").json()["made"]);
        burrow.write("room.book", "coffee was spilt");
        QCOMPARE(burrow("check room.book").status, 1);
        const auto run = burrow("restore room.book --yes " + name);
        QVERIFY2(run.status == 0, qPrintable(run.err));
        QCOMPARE(burrow("check room.book --json").json()["entries"], 3);
        // What was there is put aside, not thrown away.
        const auto aside =
            QDir(burrow.path("room.book-backups")).entryList({"*-damaged.book"}, QDir::Files);
        QCOMPARE(aside.size(), 1);
        QCOMPARE(burrow.read("room.book-backups/" + aside[0]), QByteArray("coffee was spilt"));
    }
};

QTEST_GUILESS_MAIN(TestGoingBack)
#include "tst_going_back.moc"
