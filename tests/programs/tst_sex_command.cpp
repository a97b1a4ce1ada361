// The evidence for the sex from a shell, sizes over the moults, and second opinions between two books.
#include <QtTest>

#include "programs/burrow.h"
#include "support/moult_photo.h"

using burrow::test::Shell;
using nlohmann::json;

namespace {

/// A room with one animal, two measured moults, and a photo of the last.
class Room : public Shell {
public:
    Room() {
        write("animals.csv", "code,species\n214,Brachypelma hamorii\n215,Brachypelma hamorii\n");
        write("moult.jpg", burrow::test::moultPhoto({640, 480}));
        if ((*this)("new r.book --room Kiln --code KR").status != 0 ||
            (*this)("bring r.book --animals animals.csv").status != 0) {
            qFatal("The room can't be made");
        }
        first = moult("214 moulted carapace_mm=9 span_mm=55 --at 2026-01-10");
        last = moult("214 moulted carapace_mm=12 span_mm=74 --at 2026-04-10");
        const auto photo = (*this)(
            "--json log r.book 214 photo file=moult.jpg role=moult --at "
            "2026-04-10 about=" +
            last);
        if (photo.status != 0) qFatal("%s", qPrintable(photo.err));
    }
    QString first;
    QString last;

private:
    QString moult(const QString& words) const {
        const auto logged = (*this)("--json log r.book " + words);
        if (logged.status != 0) qFatal("%s", qPrintable(logged.err));
        return QString::fromStdString(logged.json()["id"].get<std::string>());
    }
};

void isNear(const json& value, double wanted) {
    QVERIFY2(value.is_number(), value.dump().c_str());
    QVERIFY2(std::abs(value.get<double>() - wanted) < 1e-9, value.dump().c_str());
}

}  // namespace

class TestSexCommand : public QObject {
    Q_OBJECT

private slots:
    /// None seen at 9 mm, fairly: 0.4. Then a plate at 12 mm, clearly: 30. 12 to 1, P = 12 / 13.
    void theLedgerAddsUp() {
        const Room burrow;
        const auto before = burrow("--json sex r.book 214").json();
        isNear(before["p_female"], 0.5);
        QVERIFY(before["stop"].is_null() && before["ledger"].empty());
        QCOMPARE(before["would_settle"][0]["what"].get<std::string>(),
                 std::string("waiting_moult"));
        isNear(before["would_settle"][0]["p_if_female"], 30.0 / 31.0);

        QCOMPARE(
            burrow("log r.book 214 sexed sex=male look=moult clarity=fairly about=" + burrow.first)
                .status,
            0);
        QCOMPARE(burrow("log r.book 214 sexed sex=female look=moult clarity=clearly about=" +
                        burrow.last)
                     .status,
                 0);
        const auto after = burrow("--json sex r.book 214").json();
        isNear(after["p_female"], 12.0 / 13.0);
        QCOMPARE(after["verdict"].get<std::string>(), std::string("female"));
        QCOMPARE(after["stop"].get<std::string>(), std::string("fairly"));
        QCOMPARE(after["conflicts"][0]["kind"].get<std::string>(), std::string("looks"));
        QCOMPARE(after["ledger"].size(), std::size_t{2});
        isNear(after["ledger"][0]["ratio"], 0.4);
        isNear(after["ledger"][1]["p_after"], 12.0 / 13.0);
        QCOMPARE(after["ledger"][1]["row"].get<std::string>(), std::string("11_to_16.clearly"));
        isNear(after["ledger"][1]["carapace_mm"], 12);
        QVERIFY(!after["ledger"][1]["source"].get<std::string>().empty());
        const auto text = burrow("sex r.book 214");
        QVERIFY2(text.out.contains("92 in 100 that it is a female"), qPrintable(text.out));

        QCOMPARE(burrow("log r.book 214 moulted ultimate=yes").status, 0);
        const auto grown = burrow("--json sex r.book 214").json();
        QCOMPARE(grown["verdict"].get<std::string>(), std::string("male"));
        QVERIFY(grown["decisive"].get<bool>() && grown["settled"].get<bool>());
        QCOMPARE(grown["ledger"][1]["part"].get<std::string>(), std::string("corrected"));
        QVERIFY(grown["would_settle"].empty());
        QCOMPARE(burrow("check r.book").status, 0);
    }

    void whoWaitsIsListed() {
        const Room burrow;
        const auto waiting = burrow("--json sex r.book").json();
        QCOMPARE(waiting.size(), std::size_t{1});
        QCOMPARE(waiting[0]["code"].get<std::string>(), std::string("214"));
        QCOMPARE(waiting[0]["moult"].get<std::string>(), burrow.last.toStdString());
        QCOMPARE(waiting[0]["day"].get<std::string>(), std::string("2026-04-10"));
        QVERIFY(burrow("sex r.book").out.contains("214"));
        QCOMPARE(burrow("sex r.book 999").status, 1);
        QCOMPARE(burrow("log r.book 214 sexed sex=female look=tail").status, 1);
    }

    void sizesOverTheMoults() {
        const Room burrow;
        auto sizes = burrow("--json sizes r.book 214").json();
        QCOMPARE(sizes["carapace"].size(), std::size_t{2});
        isNear(sizes["carapace"][1]["factor"], 12.0 / 9.0);
        QVERIFY(sizes["span_by_carapace"].is_null());
        QVERIFY(sizes["text"].get<std::string>().find("it takes 3") != std::string::npos);
        QCOMPARE(burrow("log r.book 215 measured carapace_mm=15 span_mm=95").status, 0);
        sizes = burrow("--json sizes r.book 214").json();
        QCOMPARE(sizes["pairs"].get<int>(), 3);
        QVERIFY(std::abs(sizes["estimate"]["span_mm"].get<double>() - 74) < 2);
        QVERIFY(burrow("sizes r.book 214").out.contains("carapace"));
    }

    void anotherKeepersAnswerComesBack() {
        const Room burrow;
        const auto asked = burrow("--json ask r.book 214 --out q.burrowask");
        QVERIFY2(asked.status == 0, qPrintable(asked.err));
        QCOMPARE(asked.json()["photos"].get<int>(), 1);
        const auto bytes = burrow.read("q.burrowask");
        QVERIFY(!bytes.contains("214") || !bytes.contains("Kiln"));
        const auto question = burrow("--json judge q.burrowask --photos look").json();
        QCOMPARE(question["species"].get<std::string>(), std::string("Brachypelma hamorii"));
        QCOMPARE(QDir(burrow.path("look")).entryList({"*.jpg"}).size(), 1);
        QCOMPARE(burrow("judge q.burrowask --sex female --clarity clearly --name Wren --out "
                        "a.burrowsaid")
                     .status,
                 0);
        const auto taken = burrow("--json answer r.book a.burrowsaid").json();
        QCOMPARE(taken["code"].get<std::string>(), std::string("214"));
        QVERIFY(!taken["known"].get<bool>());
        QVERIFY(burrow("--json answer r.book a.burrowsaid").json()["known"].get<bool>());
        const auto ledger = burrow("--json sex r.book 214").json()["ledger"];
        QCOMPARE(ledger.size(), std::size_t{1});
        QCOMPARE(ledger[0]["judge"].get<std::string>(), std::string("Wren"));
        QCOMPARE(burrow("undo r.book").status, 0);
        QVERIFY(burrow("--json sex r.book 214").json()["ledger"].empty());
    }

    void whatCannotBeReadChangesNothing() {
        const Room burrow;
        burrow.write("bad.burrowsaid", "no answer at all");
        const auto before = burrow.bookBytes("r.book");
        const auto bad = burrow("--json answer r.book bad.burrowsaid");
        QCOMPARE(bad.status, 1);
        QVERIFY(bad.err.contains("opinion.neither"));
        QCOMPARE(burrow("ask r.book 215 --out q.burrowask").status, 1);
        QVERIFY(burrow.read("q.burrowask").isEmpty());
        QCOMPARE(burrow("judge bad.burrowsaid").status, 1);
        QCOMPARE(burrow("judge none.burrowask").status, 1);
        QCOMPARE(burrow("ask r.book 214 --out q.burrowask").status, 0);
        QCOMPARE(burrow("answer r.book q.burrowask").status, 1);
        QCOMPARE(burrow("judge q.burrowask --sex female --clarity clearly --out a").status, 2);
        QCOMPARE(burrow("judge q.burrowask --sex both --clarity clearly --name W --out a").status,
                 1);
        QCOMPARE(burrow.bookBytes("r.book"), before);
    }
};

QTEST_GUILESS_MAIN(TestSexCommand)
#include "tst_sex_command.moc"
