// A spreadsheet of the keeper's own: asked about, shown, and brought in as it was answered.
#include <QFile>

#include "viewmodels/desk_fixture.h"
#include "viewmodels/mappingmodel.h"

using namespace burrow;
using namespace burrow::test;
using Step = BringModel::Step;

namespace {

const QByteArray list =
    "Nr.,Scientific name,Sex,Born,Size (in),Last fed,Colour\n"
    "501,B. hamorii,F,14.3.2021,5 1/2,2.5.2026,red\n"
    "502,Brachypelma hamorei,neither,2.3.2022,,3.5.2026,\n";

class Bench {
public:
    Bench() {
        at.openRoom();
        std::filesystem::create_directories(inbox());
        bring.setDesk(&at.desk);
    }
    [[nodiscard]] std::filesystem::path inbox() const { return at.folder.path() / "inbox"; }
    QUrl file(const std::string& name, const QByteArray& bytes) {
        const auto path = QString::fromStdString((inbox() / name).string());
        QFile file(path);
        if (!file.open(QIODevice::WriteOnly)) return {};
        file.write(bytes);
        return QUrl::fromLocalFile(path);
    }
    void choose(const QList<QUrl>& files) {
        bring.addFiles(files);
        at.settle();
        mapping.setBring(&bring);
        mapping.setFile(0);
    }
    [[nodiscard]] ResidentPtr numbered(const char* number) const {
        for (const auto& resident : at.desk.room()->residents()) {
            if (resident->subject().number == number) return resident;
        }
        return nullptr;
    }
    [[nodiscard]] QVariantMap question(const QString& start) const {
        for (const auto& each : mapping.questions()) {
            if (each.toMap()["text"].toString().startsWith(start)) return each.toMap();
        }
        return {};
    }
    void answer(const QString& start, const QString& word) {
        for (int i = 0; i < mapping.questions().size(); ++i) {
            const auto asked = mapping.questions().at(i).toMap();
            if (!asked["text"].toString().startsWith(start)) continue;
            const auto options = asked["options"].toList();
            for (int k = 0; k < options.size(); ++k) {
                if (options.at(k).toMap()["word"] == word) return mapping.answer(i, k);
            }
        }
        QFAIL(qPrintable("No such question or answer: " + start + word));
    }
    [[nodiscard]] QVariantMap column(int which) const {
        return mapping.columns().at(which).toMap();
    }
    void finish() {
        mapping.finish();
        at.settle();
    }

    DeskFixture at;
    BringModel bring;
    MappingModel mapping;
};

}  // namespace

class TestMappingModel : public QObject {
    Q_OBJECT

private slots:
    void asksWhatIsOpenAndBringsInWhatWasSaid() {
        Bench bench;
        bench.choose({bench.file("mine.csv", list)});
        QCOMPARE(bench.bring.step(), Step::Asking);
        QVERIFY(bench.bring.files().at(0).toMap()["open"].toBool());
        QVERIFY(bench.bring.contents().isEmpty());
        QCOMPARE(bench.mapping.name(), QString("mine.csv"));
        QVERIFY(bench.mapping.isOpen());
        QCOMPARE(bench.mapping.summary(),
                 QString("One question has to be answered before the list can be brought in."));
        // "2.5." and "3.5." may be read either way; "14.3." may not.
        bench.answer("The dates under Last fed", "Day first");
        QVERIFY(!bench.mapping.isOpen());
        bench.answer("\"neither\" under Sex", "unknown");
        const auto species = bench.question("\"Brachypelma hamorei\"");
        QCOMPARE(species["options"].toList().first().toMap()["word"].toString(),
                 QString("Brachypelma hamorii"));
        bench.answer("\"Brachypelma hamorei\"", "Brachypelma hamorii");
        QCOMPARE(bench.mapping.summary(), QString("Nothing is left to be asked."));
        bench.finish();
        QCOMPARE(bench.bring.step(), Step::Ready);
        QCOMPARE(bench.bring.contents(),
                 QString("2 animals, 0 enclosures and 3 events can be brought in."));
        bench.bring.bringAll();
        bench.at.settle();
        QCOMPARE(bench.bring.step(), Step::Finished);
        const auto first = bench.numbered("501");
        QCOMPARE(first->subject().species, std::string("Brachypelma hamorii"));
        QCOMPARE(first->kept.digest.span->value, 139.7);
        QCOMPARE(first->kept.digest.lastAccepted->day, *civilDay({2026, 5, 2}));
        QCOMPARE(first->subject().note, std::string("Colour: red"));
        QCOMPARE(bench.numbered("502")->subject().sex, Sex::unknown);
    }

    void showsWhatBecomesOfColumns() {
        Bench bench;
        bench.choose({bench.file("mine.csv", list)});
        QCOMPARE(bench.column(0)["target"].toString(), QString("Number or name"));
        QCOMPARE(bench.column(4)["samples"].toString(), QString("5 1/2 \u2192 139.7"));
        QCOMPARE(bench.column(4)["unit"].toString(), QString("inches"));
        QCOMPARE(bench.column(3)["dates"].toString(), QString("Day first"));
        QVERIFY(bench.column(5)["dates"].toString().isEmpty());  // still open
        QCOMPARE(bench.column(6)["target"].toString(), QString("Kept in the note"));
        QCOMPARE(bench.column(2)["trouble"].toString(),
                 QString("One cell can't be read like this"));
    }

    void columnsCanBePutRight() {
        Bench bench;
        bench.choose({bench.file("mine.csv", list)});
        const auto targets = bench.mapping.targets();
        const auto at = [&](const char* word) {
            for (int i = 0; i < targets.size(); ++i) {
                if (targets.at(i).toMap()["word"] == word) return i;
            }
            return -1;
        };
        bench.mapping.chooseTarget(6, at("Left out"));
        QCOMPARE(bench.column(6)["target"].toString(), QString("Left out"));
        bench.mapping.chooseTarget(5, at("Kept in the note"));
        QVERIFY(!bench.mapping.isOpen());
        bench.mapping.chooseUnit(4, 1);
        QCOMPARE(bench.column(4)["samples"].toString(), QString("5 1/2 \u2192 55"));
        bench.mapping.chooseOrder(3, 1);
        QCOMPARE(bench.column(3)["trouble"].toString(),
                 QString("One cell can't be read like this"));
        // Another column for the number, and nothing for the first: what is needed is asked for.
        bench.mapping.chooseTarget(0, at("Left out"));
        QVERIFY(bench.mapping.isOpen());
        bench.answer("No column gives each animal", "Nr.");
        QVERIFY(!bench.mapping.isOpen());
        bench.mapping.chooseTarget(0, at("Left out"));
        bench.answer("No column gives each animal", "Number them from 001");
        QVERIFY(!bench.mapping.isOpen());
        // What is out of range is passed over.
        bench.mapping.chooseTarget(99, 0);
        bench.mapping.chooseTarget(0, 99);
        bench.mapping.chooseOrder(-1, 0);
        bench.mapping.chooseUnit(0, 9);
        bench.mapping.answer(99, 0);
    }

    void aListOfAnotherKind() {
        Bench bench;
        bench.choose({bench.file("log.csv", "Nr,Date,Remarks,Sex\n214,2026-05-02,calm,f\n")});
        QCOMPARE(bench.mapping.kinds().size(), 3);
        bench.mapping.chooseKind(2);
        QCOMPARE(bench.mapping.kind(), 2);
        bench.answer("No column says what happened", "note");
        bench.finish();
        bench.bring.bringAll();
        bench.at.settle();
        const auto newest = bench.at.history(bench.at.hamorii);
        QVERIFY(std::any_of(newest.begin(), newest.end(), [](const Fact& fact) {
            return fact.kind == FactKind::note && fact.body.text == "calm; sex: female";
        }));
    }

    /// What was said once need not be said again.
    void aSavedMappingGoesToTheNextListLikeIt() {
        Bench bench;
        bench.choose({bench.file("mine.csv", list)});
        bench.answer("The dates under Last fed", "Month first");
        bench.mapping.saveTo(QUrl::fromLocalFile(QString::fromStdString(bench.inbox().string())));
        QCOMPARE(bench.mapping.savedText(), QString("Saved as mine.map.json in inbox."));
        bench.bring.removeFile(0);
        bench.at.settle();
        const auto saved =
            QUrl::fromLocalFile(QString::fromStdString((bench.inbox() / "mine.map.json").string()));
        bench.bring.addFiles({saved, bench.file("next.csv", list)});
        bench.at.settle();
        QCOMPARE(bench.bring.step(), Step::Ready);
        QCOMPARE(bench.bring.files().size(), 1);
        bench.bring.bringGood();
        bench.at.settle();
        QCOMPARE(bench.numbered("501")->kept.digest.lastAccepted->day, *civilDay({2026, 2, 5}));
        // The rows that were left out keep the keeper's own columns.
        QFile left(QString::fromStdString((bench.inbox() / "next.bad.csv").string()));
        QVERIFY(left.open(QIODevice::ReadOnly));
        QVERIFY(left.readAll().startsWith("Nr.,Scientific name,Sex,Born"));
    }

    void mappingsThatFitNothingAreSaid() {
        Bench bench;
        bench.bring.addFiles({bench.file("odd.json", "{}")});
        bench.at.settle();
        QVERIFY2(bench.bring.trouble().contains("no mapping"), qPrintable(bench.bring.trouble()));
        Bench other;
        other.choose({other.file("mine.csv", list)});
        other.mapping.saveTo(QUrl::fromLocalFile("/proc/nowhere"));
        QVERIFY(!other.mapping.trouble().isEmpty());
        other.mapping.saveTo(QUrl("content://provider/folder"));
        QVERIFY(other.mapping.trouble().contains("not on this device"));
    }
};

QTEST_GUILESS_MAIN(TestMappingModel)
#include "tst_mapping_model.moc"
