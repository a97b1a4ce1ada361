// Species and own profiles from a shell: listed, shown, given away in a file, taken in, taken out.
#include <QtTest>

#include "programs/burrow.h"

using burrow::test::Shell;
using nlohmann::json;

class TestOwnSpecies : public QObject {
    Q_OBJECT

private slots:
    void allAreListed() {
        const auto& burrow = withBook();
        const auto list = burrow("--json profiles kiln.book").json();
        QVERIFY(list.size() >= 85);
        for (const auto& each : list) {
            QCOMPARE(each["origin"].get<std::string>(), std::string("shipped"));
            for (const char* fact : {"habit", "adult_span_mm", "venom", "moults", "listing"}) {
                QVERIFY(!each[fact]["source"].get<std::string>().empty());
            }
        }
        const auto text = burrow("profiles kiln.book OBT");
        QCOMPARE(text.status, 0);
        QVERIFY2(text.out.startsWith("Pterinochilus murinus"), qPrintable(text.out));
    }

    void oneIsShownWithItsCautionsAndSources() {
        const auto& burrow = withBook();
        const auto shown = burrow("profile kiln.book", {"leiurus quinquestriatus"});
        QCOMPARE(shown.status, 0);
        QVERIFY(shown.out.contains("medical care") && shown.out.contains("ask your authority"));
        QVERIFY(shown.out.contains("Body length") && shown.out.contains("Acta Trop."));
        const auto value = burrow("--json profile kiln.book", {"G. pulchra"}).json();
        QCOMPARE(value["name"].get<std::string>(), std::string("Grammostola pulchra"));
        QCOMPARE(value["cautions"], json({"hairs"}));
    }

    void aSlipIsAnsweredWithCloseNames() {
        const auto& burrow = withBook();
        const auto close = burrow("profile kiln.book", {"grammostola pulchrra"});
        QCOMPARE(close.status, 1);
        QVERIFY2(close.err.contains("Did you mean Grammostola pulchra"), qPrintable(close.err));
        const auto none = burrow("--json profile kiln.book goldfish");
        QCOMPARE(none.status, 1);
        const auto error = json::parse(none.err.toStdString())["error"];
        QCOMPARE(error["id"].get<std::string>(), std::string("profile.unknown"));
    }

    void aProfileIsChangedThroughAFile() {
        const auto& burrow = withBook();
        const auto own = burrow("profiles kiln.book --export own.json");
        QCOMPARE(own.status, 1);
        QVERIFY(own.err.contains("no species profile of your own"));
        QVERIFY(!QFile::exists(burrow.path("own.json")));

        QCOMPARE(burrow("profiles kiln.book --export rosea.json", {"Grammostola porteri"}).status,
                 0);
        auto file = json::parse(burrow.read("rosea.json").toStdString());
        QCOMPARE(file["profiles"].size(), std::size_t{1});
        file["profiles"][0]["temperament"] = {{"value", "skittish"}, {"source", "seen here"}};
        burrow.write("mine.json", QByteArray::fromStdString(file.dump()));
        const auto taken = burrow("--json profiles kiln.book --import mine.json").json();
        QCOMPARE(taken["added"], json({"Grammostola rosea"}));
        const auto again = burrow("--json profiles kiln.book --import mine.json").json();
        QCOMPARE(again["same"], json({"Grammostola rosea"}));

        auto shown = burrow("--json profile kiln.book", {"G. rosea"}).json();
        QCOMPARE(shown["origin"].get<std::string>(), std::string("you"));
        QCOMPARE(shown["temperament"]["source"].get<std::string>(), std::string("seen here"));
        QCOMPARE(burrow("check kiln.book").status, 0);

        // Another keeper takes it in.
        QCOMPARE(burrow("new other.book --room Other --code OT").status, 0);
        QCOMPARE(burrow("profiles kiln.book --export own.json").status, 0);
        QCOMPARE(burrow("profiles other.book --import own.json").status, 0);
        shown = burrow("--json profile other.book", {"G. rosea"}).json();
        QCOMPARE(shown["temperament"]["source"].get<std::string>(), std::string("seen here"));

        QCOMPARE(burrow("profile kiln.book --remove", {"Grammostola rosea"}).status, 0);
        QCOMPARE(burrow("profile kiln.book --remove", {"Grammostola rosea"}).status, 1);
        shown = burrow("--json profile kiln.book", {"G. rosea"}).json();
        QCOMPARE(shown["origin"].get<std::string>(), std::string("shipped"));
        QCOMPARE(burrow("undo kiln.book").status, 0);
        shown = burrow("--json profile kiln.book", {"G. rosea"}).json();
        QCOMPARE(shown["origin"].get<std::string>(), std::string("you"));
    }

    void badFilesChangeNothing_data() {
        QTest::addColumn<QByteArray>("text");
        QTest::addColumn<QString>("says");
        QTest::newRow("no JSON") << QByteArray("Brachypelma") << "holds no species profiles";
        QTest::newRow("other JSON")
            << QByteArray("{\"animals\": []}") << "holds no species profiles";
        QTest::newRow("later") << QByteArray(R"({"burrowbook": "species profiles", "version": 9})")
                               << "later version";
        QTest::newRow("half") << QByteArray(R"({"name": "Novagenus nova", "other_names": []})")
                              << "needs authority";
    }
    void badFilesChangeNothing() {
        QFETCH(QByteArray, text);
        QFETCH(QString, says);
        const auto& burrow = withBook();
        burrow.write("bad.json", text);
        const auto before = burrow.bookBytes("kiln.book");
        const auto run = burrow("profiles kiln.book --import bad.json");
        QCOMPARE(run.status, 1);
        QVERIFY2(run.err.contains(says), qPrintable(run.err));
        QCOMPARE(burrow.bookBytes("kiln.book"), before);
    }

    void theBookItselfIsNeverWrittenOver() {
        const auto& burrow = withBook();
        const auto run = burrow("profiles kiln.book --export kiln.book", {"G. rosea"});
        QCOMPARE(run.status, 1);
        QVERIFY(run.err.contains("the book itself"));
        QCOMPARE(burrow("check kiln.book").status, 0);
        QCOMPARE(burrow("profiles kiln.book --export a.json --import b.json").status, 2);
    }

private:
    static const Shell& withBook() {
        static std::vector<std::unique_ptr<Shell>> shells;
        shells.push_back(std::make_unique<Shell>());
        const auto& shell = *shells.back();
        if (shell("new kiln.book --room Kiln --code KR").status != 0) qFatal("no book");
        return shell;
    }
};

QTEST_GUILESS_MAIN(TestOwnSpecies)
#include "tst_own_species.moc"
