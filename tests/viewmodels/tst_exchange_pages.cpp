// Files between two phones: made, looked at, taken in, settled, and taken back.
#include <QSignalSpy>

#include "fake/fake_sharer.h"
#include "viewmodels/differencesmodel.h"
#include "viewmodels/joinmodel.h"
#include "viewmodels/makefilemodel.h"
#include "viewmodels/takeinmodel.h"
#include "viewmodels/two_phones.h"

using namespace burrow;
using namespace burrow::test;

namespace {

QString valueOf(const QVariantList& facts, const QString& name) {
    for (const auto& fact : facts) {
        if (fact.toMap()["name"] == name) return fact.toMap()["value"].toString();
    }
    return "no " + name;
}

QStringList wordsOf(const QVariantList& choices) {
    QStringList words;
    for (const auto& choice : choices) words.append(choice.toMap()["word"].toString());
    return words;
}

class TakingIn {
public:
    TakingIn() {
        model.setProperty("darkroom", QVariant::fromValue(&phones.darkroom));
        model.setDesk(&phones.at.desk);
        phones.at.settle();
    }
    void look(const QUrl& file) {
        model.look(file);
        phones.at.settle();
    }
    void takeIn(const QUrl& file) {
        look(file);
        model.takeIn();
        phones.at.settle();
    }
    [[nodiscard]] std::size_t residents() { return phones.at.desk.room()->residents().size(); }

    TwoPhones phones;
    TakeInModel model;
};

}  // namespace

class TestExchangePages : public QObject {
    Q_OBJECT

private slots:
    void aFileIsMadeReadBackAndHandedOver() {
        TwoPhones phones;
        FakeSharer sharer(phones.at.folder.path() / "shared");
        MakeFileModel model;
        model.setProperty("darkroom", QVariant::fromValue(&phones.darkroom));
        model.setProperty("sharer", QVariant::fromValue<Sharer*>(&sharer));
        model.setDesk(&phones.at.desk);
        phones.at.settle();
        QCOMPARE(model.animals(), QString("4"));
        QCOMPARE(model.step(), MakeFileModel::Step::Choosing);
        model.setPhotos(MakeFileModel::Photos::Out);
        model.make();
        QCOMPARE(model.step(), MakeFileModel::Step::Making);
        phones.at.settle();
        QCOMPARE(model.step(), MakeFileModel::Step::Made);
        QCOMPARE(model.trouble(), QString());
        QVERIFY2(model.madeTitle().startsWith("Kiln Row, "), qPrintable(model.madeTitle()));
        QVERIFY2(model.madeText().endsWith("entries, no photos"), qPrintable(model.madeText()));
        QVERIFY2(model.madeSize().endsWith("kB"), qPrintable(model.madeSize()));
        model.handOver();
        QCOMPARE(sharer.shared().size(), std::size_t{1});
        const auto contents = exchange::peek(sharer.shared().front()).value();
        QVERIFY(!contents.manifest.withConfidential);
        // Beside what is there.
        const auto folder = phones.at.folder.path() / "kept";
        std::filesystem::create_directories(folder);
        const auto url = QUrl::fromLocalFile(QString::fromStdString(folder.string()));
        model.keepIn(url);
        model.keepIn(url);
        QVERIFY2(model.savedText().contains("-2.burrow"), qPrintable(model.savedText()));
        // What is chosen anew has to be made anew.
        model.setConfidential(true);
        QCOMPARE(model.step(), MakeFileModel::Step::Choosing);
        QCOMPARE(model.madeText(), QString());
    }

    void onlyTheChosenAnimals() {
        TwoPhones phones;
        FakeSharer sharer(phones.at.folder.path() / "shared");
        MakeFileModel model;
        model.setProperty("darkroom", QVariant::fromValue(&phones.darkroom));
        model.setProperty("sharer", QVariant::fromValue<Sharer*>(&sharer));
        model.setSubjects({phones.at.id(phones.at.hamorii)});
        model.setDesk(&phones.at.desk);
        phones.at.settle();
        QCOMPARE(model.animals(), QString("1"));
        model.setPassphrase("moulted on a Tuesday");
        model.make();
        phones.at.settle();
        model.handOver();
        QVERIFY(!exchange::peek(sharer.shared().front()));
        exchange::PeekOptions options;
        options.passphrase = "moulted on a Tuesday";
        const auto contents = exchange::peek(sharer.shared().front(), options).value();
        QCOMPARE(contents.manifest.totals.animals, std::int64_t{1});
        QVERIFY(contents.manifest.extent == exchange::Extent::chosen);
    }

    void aStoppedFileLeavesNothing() {
        TwoPhones phones;
        FakeSharer sharer(phones.at.folder.path() / "shared");
        MakeFileModel model;
        model.setProperty("darkroom", QVariant::fromValue(&phones.darkroom));
        model.setProperty("sharer", QVariant::fromValue<Sharer*>(&sharer));
        model.setDesk(&phones.at.desk);
        phones.at.settle();
        auto held = phones.at.holdBook();
        model.make();
        model.work()->stop();
        held.reset();
        phones.at.settle();
        QCOMPARE(model.step(), MakeFileModel::Step::Choosing);
        QCOMPARE(model.trouble(), QString());
        QVERIFY(!model.work()->isActive());
        QVERIFY(std::filesystem::is_empty(phones.at.folder.path() / "shared"));
    }

    void whatIsInAFileIsShownBeforeAnythingIsTakenIn() {
        TakingIn in;
        in.phones.addThere("501", "Grammostola pulchra");
        in.look(in.phones.fileOfTheOther());
        QCOMPARE(in.model.step(), TakeInModel::Step::Looked);
        QCOMPARE(in.residents(), std::size_t{4});
        QCOMPARE(valueOf(in.model.contents(), "Animals"), QString("5"));
        QCOMPARE(valueOf(in.model.contents(), "Prices, buyers"), QString("Left out"));
        QVERIFY(!in.model.isForeign());
        in.model.takeIn();
        in.phones.at.settle();
        QCOMPARE(in.model.step(), TakeInModel::Step::TakenIn);
        QCOMPARE(in.model.before(), 4);
        QCOMPARE(in.model.inFile(), 5);
        QCOMPARE(in.model.now(), 5);
        QCOMPARE(valueOf(in.model.outcome(), "New animals"), QString("1"));
        QCOMPARE(valueOf(in.model.outcome(), "New entries"), QString("1"));
        QVERIFY(in.model.warnings().isEmpty());
        in.model.undoAll();
        in.phones.at.settle();
        QCOMPARE(in.residents(), std::size_t{4});
        QCOMPARE(in.model.step(), TakeInModel::Step::Looked);
        QCOMPARE(in.model.last(), QString());
    }

    void theLastFileCanBeTakenBackLater() {
        TakingIn in;
        in.phones.addThere("501", "Grammostola pulchra");
        in.takeIn(in.phones.fileOfTheOther());
        TakeInModel later;
        later.setProperty("darkroom", QVariant::fromValue(&in.phones.darkroom));
        later.setDesk(&in.phones.at.desk);
        in.phones.at.settle();
        QVERIFY2(later.last().startsWith("other1.burrow, One entry") ||
                     later.last().startsWith("other1.burrow, one entry"),
                 qPrintable(later.last()));
        later.undoAll();
        in.phones.at.settle();
        QCOMPARE(in.residents(), std::size_t{4});
        QCOMPARE(later.step(), TakeInModel::Step::Choosing);
    }

    void aSealedFileAsksForItsPassphrase() {
        TakingIn in;
        exchange::ExportOptions options;
        options.passphrase = "spermatheca";
        in.look(in.phones.fileOfTheOther(options));
        QCOMPARE(in.model.step(), TakeInModel::Step::Locked);
        QCOMPARE(in.model.trouble(), QString());
        in.model.unlock("wrong");
        in.phones.at.settle();
        QCOMPARE(in.model.step(), TakeInModel::Step::Locked);
        QVERIFY(!in.model.trouble().isEmpty());
        in.model.unlock("spermatheca");
        in.phones.at.settle();
        QCOMPARE(in.model.step(), TakeInModel::Step::Looked);
        in.model.takeIn();
        in.phones.at.settle();
        QCOMPARE(in.model.step(), TakeInModel::Step::TakenIn);
    }

    void whatIsNoFileOfOursIsRefusedInWords() {
        TakingIn in;
        const auto path = in.phones.at.folder.path() / "holiday.zip";
        QVERIFY(DeviceFiles().write(path, bytesOf("PK\x03\x04 nothing of ours")));
        in.look(QUrl::fromLocalFile(QString::fromStdString(path.string())));
        QCOMPARE(in.model.step(), TakeInModel::Step::Choosing);
        QVERIFY2(in.model.trouble().contains("Nothing was changed"),
                 qPrintable(in.model.trouble()));
        in.look(QUrl("https://example.org/a.burrow"));
        QVERIFY(!in.model.trouble().isEmpty());
    }

    void differencesAreSettledOneByOne() {
        TakingIn in;
        const auto& hamorii = in.phones.at.hamorii;
        // The same animal, on both phones, without knowing of each other.
        in.phones.other
            ->record(
                SetDraft{ThingType::subject, hamorii.uuid, {{"note", "calm"}, {"sex", "female"}}})
            .value();
        in.phones.at.clock.set(Instant{fridayEvening.ms + 3'600'000});
        in.phones.at.desk.act(
            &in.phones.at.desk,
            {[hamorii](Book&) -> Result<std::vector<Draft>> {
                 return std::vector<Draft>{SetDraft{
                     ThingType::subject, hamorii.uuid, {{"note", "bolts"}, {"sex", "female"}}}};
             },
             {},
             {}});
        in.takeIn(in.phones.fileOfTheOther());
        DifferencesModel model;
        model.setDesk(&in.phones.at.desk);
        in.phones.at.settle();
        QCOMPARE(model.count(), 1);  // both said female
        QCOMPARE(model.summary(), QString("One differs, you choose"));
        QCOMPARE(model.position(), QString("1 of 1"));
        QCOMPARE(model.tag(), QString("214"));
        QCOMPARE(model.title(), QString("note"));
        QCOMPARE(wordsOf(model.choices()), (QStringList{"bolts", "calm"}));
        QCOMPARE(model.choice(), 0);
        model.setChoice(1);
        model.settle();
        in.phones.at.settle();
        QCOMPARE(model.count(), 0);
        QCOMPARE(model.summary(), QString("Nothing differs"));
        const auto resident = in.phones.at.desk.room()->find(hamorii);
        QCOMPARE(QString::fromStdString(resident->subject().note), QString("calm"));
    }

    void aPhotoIsBetterEvidenceThanARuler() {
        TakingIn in;
        const auto facts = in.phones.at.history(in.phones.at.hamorii);
        const auto measured = std::find_if(facts.begin(), facts.end(), [](const Fact& fact) {
            return fact.kind == FactKind::measured;
        });
        QVERIFY(measured != facts.end());
        const auto amend = [&](double span, Method method) {
            return AmendDraft{measured->id, {.span = Millimetres{span}, .method = method}, {}};
        };
        in.phones.other->record(amend(141, Method::photo)).value();
        in.phones.at.clock.set(Instant{fridayEvening.ms + 3'600'000});
        in.phones.at.desk.act(
            &in.phones.at.desk,
            {[draft = amend(143, Method::ruler)](Book&) -> Result<std::vector<Draft>> {
                 return std::vector<Draft>{draft};
             },
             {},
             {}});
        in.takeIn(in.phones.fileOfTheOther());
        DifferencesModel model;
        model.setDesk(&in.phones.at.desk);
        in.phones.at.settle();
        QCOMPARE(model.count(), 1);
        QVERIFY2(model.title().startsWith("Leg span"), qPrintable(model.title()));
        QCOMPARE(wordsOf(model.choices()).size(), 2);
        QVERIFY2(wordsOf(model.choices())[0].contains("143"),
                 qPrintable(wordsOf(model.choices()).join('|')));
        QCOMPARE(model.choice(), 1);
        QCOMPARE(model.stays(), QString("The other value stays in the history of 214."));
    }

    void aNumberOfATableIsNamedInWords() {
        TakingIn in;
        const std::string field = "number.sexing/moult/7_to_11.clearly/plate_ratio";
        auto& other = *in.phones.other;
        other.record(SetDraft{ThingType::book, other.id().uuid, {{field, "10"}}}).value();
        in.phones.at.clock.set(Instant{fridayEvening.ms + 3'600'000});
        in.phones.at.desk.act(&in.phones.at.desk,
                              {[field](Book& book) -> Result<std::vector<Draft>> {
                                   return std::vector<Draft>{SetDraft{
                                       ThingType::book, book.id().uuid, {{field, nullptr}}}};
                               },
                               {},
                               {}});
        in.takeIn(in.phones.fileOfTheOther());
        DifferencesModel model;
        model.setDesk(&in.phones.at.desk);
        in.phones.at.settle();
        QCOMPARE(model.count(), 1);
        QCOMPARE(
            model.title(),
            QString(
                "Sexing, a moult looked at for a plate, 7 to 11, clearly: where a plate shows"));
        QCOMPARE(wordsOf(model.choices()), (QStringList{"as shipped", "10"}));
    }

    void twoAnimalsWithOneNumberBothLive() {
        TakingIn in;
        in.phones.addThere("300", "Grammostola pulchra");
        Subject here;
        here.number = "300";
        here.species = "Brachypelma hamorii";
        in.phones.at.desk.act(&in.phones.at.desk,
                              {[here](Book& book) -> Result<std::vector<Draft>> {
                                   return std::vector<Draft>{
                                       SetDraft{ThingType::subject, book.newId(), toFields(here)}};
                               },
                               {},
                               {}});
        in.takeIn(in.phones.fileOfTheOther());
        DifferencesModel model;
        model.setDesk(&in.phones.at.desk);
        in.phones.at.settle();
        QCOMPARE(model.count(), 1);
        QCOMPARE(model.title(), QString("2 animals have the number 300"));
        QCOMPARE(model.choices().size(), 2);
        model.settle();
        in.phones.at.settle();
        QCOMPARE(model.count(), 0);
        QCOMPARE(in.residents(), std::size_t{6});
    }

    void aSecondPhoneStartsFromAFile() {
        TwoPhones phones;
        phones.addThere("501", "Grammostola pulchra");
        const auto file = phones.fileOfTheOther();
        Desk desk({phones.at.reference.words, phones.at.reference.profiles,
                   phones.at.reference.rules, phones.at.reference.numbers, phones.at.clock,
                   phones.random, Zone::utc()});
        Settings settings(QString::fromStdString((phones.at.folder.path() / "s.ini").string()));
        Bookcase bookcase(desk, settings, phones.at.folder.path() / "third",
                          [](const std::filesystem::path&) -> Done { return {}; });
        JoinModel model;
        model.setProperty("bookcase", QVariant::fromValue(&bookcase));
        model.setProperty("darkroom", QVariant::fromValue(&phones.darkroom));
        model.setDesk(&desk);
        QSignalSpy joined(&model, &JoinModel::joined);
        model.look(file);
        QTRY_COMPARE(model.step(), JoinModel::Step::Looked);
        QVERIFY2(model.title().startsWith("Kiln Row"), qPrintable(model.title()));
        model.join();
        QTRY_COMPARE(joined.size(), 1);
        QCOMPARE(desk.room()->residents().size(), std::size_t{5});
        QCOMPARE(desk.roomName(), QString("Kiln Row"));
        QVERIFY(desk.bookPath().string().find("kiln-row.book") != std::string::npos);
    }
};

QTEST_MAIN(TestExchangePages)
#include "tst_exchange_pages.moc"
