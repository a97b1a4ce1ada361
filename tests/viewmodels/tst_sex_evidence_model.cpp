// The ledger as a page shows it, and second opinions asked, given and taken in.
#include <cmath>

#include "fake/fake_sharer.h"
#include "support/photos.h"
#include "viewmodels/judgemodel.h"
#include "viewmodels/opinionmodel.h"
#include "viewmodels/other_hand.h"
#include "viewmodels/sexevidencemodel.h"

using namespace burrow;
using namespace burrow::test;

namespace {

FactBody sized(double carapace) {
    FactBody body;
    body.carapace = Millimetres{carapace};
    return body;
}

FactDraft examination(SubjectId subject, const EntryId& moult, Sex sex, Clarity clarity,
                      const char* judge = nullptr) {
    FactDraft draft{subject, FactKind::sexed, {}, std::nullopt};
    draft.body.sex = sex;
    draft.body.look = Look::moult;
    draft.body.clarity = clarity;
    draft.body.about = moult;
    if (judge != nullptr) draft.body.judge = judge;
    return draft;
}

/// A room with a moult whose photo is on the device.
class Bench {
public:
    Bench() {
        at.openRoom();
        hand.emplace(at);
        moult = hand->moult(at.hamorii, 5, 0, sized(12));
        const auto bytes = jpegSaying("a moult");
        const auto picture = Sha256::of(bytes);
        const pictures::Store store(pictures::Store::folderFor(at.path), files);
        must(files.write(store.picturePath(picture), bytes));
        FactDraft photo{at.hamorii, FactKind::photo, {}, std::nullopt};
        photo.body.role = PhotoRole::moult;
        photo.body.picture = picture;
        photo.body.about = moult;
        hand->record({photo});
    }
    std::vector<Fact> sexings() {
        auto facts = at.history(at.hamorii);
        std::erase_if(facts, [](const Fact& fact) { return fact.kind != FactKind::sexed; });
        return facts;
    }
    [[nodiscard]] std::filesystem::path found(const char* ending) const {
        for (const auto& entry : std::filesystem::directory_iterator(at.folder.path())) {
            if (entry.path().extension() == ending) return entry.path();
        }
        return {};
    }
    [[nodiscard]] QUrl folder() const {
        return QUrl::fromLocalFile(QString::fromStdString(at.folder.path().string()));
    }

    DeskFixture at;
    DeviceFiles files;
    std::optional<OtherHand> hand;
    EntryId moult;
};

QUrl urlOf(const std::filesystem::path& path) {
    return QUrl::fromLocalFile(QString::fromStdString(path.string()));
}

}  // namespace

class TestSexEvidenceModel : public QObject {
    Q_OBJECT

private slots:
    /// A plate at 12 mm: fairly (9), and by another keeper, barely, which is of the same skin.
    void theLedgerIsShown() {
        Bench bench;
        bench.hand->record(
            {examination(bench.at.hamorii, bench.moult, Sex::female, Clarity::fairly),
             examination(bench.at.hamorii, bench.moult, Sex::male, Clarity::barely, "Wren")});
        SexEvidenceModel model;
        model.setDesk(&bench.at.desk);
        model.setSubject(bench.at.id(bench.at.hamorii));
        bench.at.settle();
        QVERIFY(model.isReady());
        QCOMPARE(model.verdict(), QString("Female"));
        QCOMPARE(model.chance(), QString("90 in 100 that it is a female"));
        QVERIFY(std::abs(model.female() - 0.9) < 1e-12);
        QCOMPARE(model.stops().at(model.stop()), QString("Fairly"));
        QCOMPARE(model.ledger().size(), 2);
        const auto first = model.ledger().at(0).toMap();
        QVERIFY(first.value("counts").toBool());
        QCOMPARE(first.value("counted").toString(), QString("9 times likelier in a female"));
        QCOMPARE(model.ledger().at(1).toMap().value("judge").toString(), QString("Judged by Wren"));
        QVERIFY(model.ledger().at(1).toMap().value("head").toString().endsWith(". Judged by Wren"));
        QCOMPARE(model.conflicts(),
                 QStringList{"Two looks at the same skin say different things."});
        QVERIFY(!model.wouldSettle().isEmpty());
        QVERIFY(model.writeText().isEmpty());  // not settled, and on record already
        QCOMPARE(model.askable(), QString::fromStdString(bench.moult.text()));
    }

    void whatIsSettledByOthersCanBeWrittenDown() {
        Bench bench;
        SexEvidenceModel model;
        model.setDesk(&bench.at.desk);
        model.setSubject(bench.at.id(bench.at.hamorii));
        bench.hand->record({examination(bench.at.hamorii, bench.moult, Sex::female,
                                        Clarity::beyondDoubt, "Wren")});
        bench.at.settle();
        QCOMPARE(model.writeText(), QString("Write it down as female"));
        QVERIFY(model.wouldSettle().isEmpty());
        model.write();
        bench.at.settle();
        QCOMPARE(bench.at.desk.room()->find(bench.at.hamorii)->subject().sex, Sex::female);
        QCOMPARE(bench.at.desk.doneText(), QString("female, by all evidence"));
        bench.at.settle();
        QVERIFY(model.writeText().isEmpty());
        bench.at.desk.undo();
        bench.at.settle();
        QCOMPARE(bench.at.desk.room()->find(bench.at.hamorii)->subject().sex, Sex::unknown);
    }

    void nothingSeenSaysSo() {
        Bench bench;
        SexEvidenceModel model;
        model.setDesk(&bench.at.desk);
        model.setSubject(bench.at.id(bench.at.hamorii));
        bench.at.settle();
        QCOMPARE(model.note(), QString("Nothing on record tells the sex yet."));
        QCOMPARE(model.stop(), -1);
        const auto first = model.wouldSettle().at(0).toMap();
        QCOMPARE(first.value("moult").toString(), QString::fromStdString(bench.moult.text()));
        QVERIFY(first.value("range").toString().startsWith("97 in 100"));
    }

    void aQuestionIsAskedJudgedAndAnswered() {
        Bench bench;
        FakeSharer sharer(bench.at.folder.path() / "shared");
        OpinionModel asking;
        asking.setDesk(&bench.at.desk);
        asking.setSharer(&sharer);
        asking.setMoult(QString::fromStdString(bench.moult.text()));
        asking.setNote("Is that a fold?");
        asking.saveTo(bench.folder());
        bench.at.settle();
        QVERIFY2(asking.trouble().isEmpty(), qPrintable(asking.trouble()));
        QVERIFY(!asking.doneText().isEmpty());

        JudgeModel judging;
        judging.setDesk(&bench.at.desk);
        judging.setSharer(&sharer);
        judging.read(urlOf(bench.found(".burrowask")));
        bench.at.settle();
        QVERIFY2(judging.isOpen(), qPrintable(judging.trouble()));
        QCOMPARE(judging.asked(), QString("Is that a fold?"));
        QVERIFY(judging.about().contains("Brachypelma hamorii"));
        QCOMPARE(judging.photos().size(), 1);
        QVERIFY(QFile::exists(judging.photos().at(0).toMap().value("url").toUrl().toLocalFile()));
        QVERIFY(!judging.isComplete());
        judging.setChoice(0);
        judging.setClarity(3);
        judging.setName(" Wren ");
        QVERIFY(judging.isComplete());
        judging.saveTo(bench.folder());
        QVERIFY2(judging.trouble().isEmpty(), qPrintable(judging.trouble()));

        asking.takeIn(urlOf(bench.found(".burrowsaid")));
        bench.at.settle();
        QVERIFY2(asking.trouble().isEmpty(), qPrintable(asking.trouble()));
        QVERIFY(asking.doneText().startsWith("Wren sees a female"));
        QCOMPARE(bench.sexings().size(), 1U);
        QCOMPARE(bench.sexings().at(0).body.judge, std::string("Wren"));
        asking.takeIn(urlOf(bench.found(".burrowsaid")));
        bench.at.settle();
        QCOMPARE(asking.doneText(),
                 QString("This answer is in the book already. Nothing was changed."));
        QCOMPARE(bench.sexings().size(), 1U);
    }

    /// What is missing is said, and the name is known the next time.
    void anAnswerSaysWhatItLacks() {
        Bench bench;
        Settings settings(QString::fromStdString((bench.at.folder.path() / "a.ini").string()));
        OpinionModel asking;
        asking.setDesk(&bench.at.desk);
        asking.setMoult(QString::fromStdString(bench.moult.text()));
        asking.saveTo(bench.folder());
        bench.at.settle();
        const auto question = urlOf(bench.found(".burrowask"));
        JudgeModel judging;
        judging.setDesk(&bench.at.desk);
        judging.setSettings(&settings);
        QVERIFY(judging.missing().isEmpty());  // nothing is open yet
        judging.read(question);
        bench.at.settle();
        QVERIFY(judging.missing().contains("what the photos show"));
        QCOMPARE(judging.closeMm(), 0.6 * 12);
        judging.setChoice(0);
        QVERIFY(judging.missing().contains("how clearly"));
        judging.setClarity(3);
        QVERIFY(judging.missing().contains("how you want to be called"));
        judging.setName(" Wren ");
        QVERIFY(judging.missing().isEmpty() && judging.isComplete());
        QVERIFY(settings.judgeName().isEmpty());  // typed, and not given yet
        judging.saveTo(bench.folder());
        QCOMPARE(settings.judgeName(), QString("Wren"));

        JudgeModel next;
        next.setDesk(&bench.at.desk);
        next.setSettings(&settings);
        QCOMPARE(next.name(), QString("Wren"));
        // Another question in the same place begins anew, but for the name.
        judging.read(question);
        bench.at.settle();
        QVERIFY(judging.doneText().isEmpty());
        QCOMPARE(judging.choice(), -1);
        QCOMPARE(judging.name(), QString(" Wren "));
    }

    void badFilesAreRefusedInWords() {
        Bench bench;
        const auto path = bench.at.folder.path() / "bad.burrowsaid";
        must(bench.files.write(path, bytesOf("no answer")));
        OpinionModel asking;
        asking.setDesk(&bench.at.desk);
        asking.takeIn(urlOf(path));
        bench.at.settle();
        QVERIFY(asking.trouble().contains("Nothing was changed"));
        QVERIFY(asking.doneText().isEmpty());
        JudgeModel judging;
        judging.setDesk(&bench.at.desk);
        judging.read(urlOf(path));
        bench.at.settle();
        QVERIFY(judging.trouble().contains("Nothing was changed"));
        QVERIFY(!judging.isOpen() && judging.photos().isEmpty());
        judging.saveTo(bench.folder());  // there is nothing to answer
        QVERIFY(bench.sexings().empty());
    }
};

QTEST_GUILESS_MAIN(TestSexEvidenceModel)
#include "tst_sex_evidence_model.moc"
