// Finding animals from a shell.
#include <QtTest>

#include "programs/burrow.h"

using burrow::test::Shell;
using nlohmann::json;

class TestFindCommand : public QObject {
    Q_OBJECT

private slots:
    void somebodyIsFoundByWhatIsWritten() {
        const Shell burrow;
        QCOMPARE(burrow("new kiln.book --room Kiln --code KR").status, 0);
        burrow.write("animals.csv",
                     "code,species,place\n214,Brachypelma hamorii,A / 1\n"
                     "087,Haplopelma lividum,C / 2\n");
        QCOMPARE(burrow("bring kiln.book --animals animals.csv").status, 0);
        QCOMPARE(burrow("log kiln.book 214 note", {"text=webbed over the \"dish\""}).status, 0);

        const auto old = burrow("--json find kiln.book", {"Cyriopagopus lividus"}).json();
        QCOMPARE(old["all"].get<int>(), 1);
        const auto& one = old["found"][0];
        QCOMPARE(one["code"].get<std::string>(), std::string("087"));
        QCOMPARE(one["by"].get<std::string>(), std::string("species"));
        QCOMPARE(one["text"].get<std::string>(), std::string("Cyriopagopus lividus"));
        QVERIFY(one["entry"].is_null() && one["kept"].get<bool>());

        const auto note = burrow("--json find kiln.book webbed di").json()["found"][0];
        QCOMPARE(note["by"].get<std::string>(), std::string("note"));
        QCOMPARE(note["text"].get<std::string>(), std::string("webbed over the \"dish\""));
        QCOMPARE(note["marks"], json({{0, 6}, {17, 21}}));
        QVERIFY(note["entry"].is_string() && note["day"].is_string());

        const auto text = burrow("find kiln.book shelf c");
        QCOMPARE(text.status, 0);
        QVERIFY2(text.out.contains("087") && text.out.contains("place: C / 2"),
                 qPrintable(text.out));
        QVERIFY(text.out.contains("1 found"));
    }

    void nobodyIsNoTrouble() {
        const Shell burrow;
        QCOMPARE(burrow("new kiln.book --room Kiln --code KR").status, 0);
        for (const char* typed :
             {"zzqx", "\"", "a* OR (", "NEAR(", "{note}:", "'; DROP TABLE entry"}) {
            const auto run = burrow("find kiln.book", {typed});
            QCOMPARE(run.status, 0);
            QVERIFY(run.out.contains("0 found"));
        }
        QCOMPARE(burrow("find kiln.book").status, 2);
        QCOMPARE(burrow("check kiln.book").status, 0);
    }
};

QTEST_GUILESS_MAIN(TestFindCommand)
#include "tst_find_command.moc"
