// Second opinions by file: what leaves, what comes back, and files that nobody should take in.
#include <QtTest>

#include <fstream>
#include <set>

#include "exchange/opinion.h"
#include "exchange/opinion_text.h"
#include "support/assets.h"
#include "support/book.h"
#include "support/photos.h"
#include "support/zip_bytes.h"

using namespace burrow;
using namespace burrow::test;
using namespace burrow::exchange;
using nlohmann::json;
namespace fs = std::filesystem;

namespace {

/// A room with one moult and two photos of it, full of what is nobody else's business.
class Asking {
public:
    explicit Asking(std::uint64_t seed = 1) : room(seed) {
        Subject subject;
        subject.number = "KR-PRIVATE-214";
        subject.species = "Brachypelma hamorii";
        subject.place = Place::parse("Secretroom / 1");
        subject.source = "Secretseller";
        subject.note = "Secretnote";
        animal = SubjectId{room.book.newId()};
        room.book.record(SetDraft{ThingType::subject, animal.uuid, toFields(subject)}).value();
        FactBody sized;
        sized.carapace = Millimetres{12.5};
        sized.span = Millimetres{70};
        sized.text = "Secretmoult";
        moult = EntryId{room.book.newId()};
        room.book.record(FactDraft{animal, FactKind::moulted, sized, std::nullopt, moult}).value();
        for (const char* text : {"one", "two"}) photo(text);
    }

    Sha256 photo(const char* text, bool isHere = true) {
        const auto bytes = jpegSaying(text);
        const auto picture = Sha256::of(bytes);
        if (isHere) {
            const pictures::Store store(pictures::Store::folderFor(room.book.path()), files);
            must(files.write(store.picturePath(picture), bytes));
        }
        FactBody body;
        body.role = PhotoRole::moult;
        body.picture = picture;
        body.about = moult;
        body.text = "Secretphoto";
        room.log(animal, FactKind::photo, body);
        return picture;
    }

    [[nodiscard]] fs::path file(const char* name) const { return room.folder.path() / name; }
    std::vector<Fact> sexings() {
        auto facts = history(room.book, animal, wholeHistory).value();
        std::erase_if(facts, [](const Fact& fact) { return fact.kind != FactKind::sexed; });
        return facts;
    }

    TestBook room;
    DeviceFiles files;
    SubjectId animal;
    EntryId moult;
};

OpinionAnswer answerTo(const OpinionQuestion& question) {
    return {question.id, Sex::female, Clarity::clearly, "Wren", "both lobes show"};
}

void write(const fs::path& path, const std::string& bytes) {
    std::ofstream out(path, std::ios::binary);
    out.write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
}

std::string text(const Bytes& bytes) { return {bytes.begin(), bytes.end()}; }

/// What a question is made of, put together without the writer.
struct Parts {
    Bytes photo = jpegSaying("a moult");
    std::string name = "photos/" + Sha256::of(photo).hex() + ".jpg";
    json question{{"burrowbook", "second opinion asked"},
                  {"version", 1},
                  {"question", "0195aaaa-0000-8000-8000-00000000000a"},
                  {"species", "Brachypelma hamorii"},
                  {"carapace_mm", 12.5},
                  {"photos", {{{"sha256", Sha256::of(photo).hex()}, {"bytes", photo.size()}}}}};

    [[nodiscard]] std::vector<ZipPart> zip() const {
        return {ZipPart{name, text(photo)}, deflatedPart("question.json", question.dump())};
    }
};

}  // namespace

class TestOpinion : public QObject {
    Q_OBJECT

private slots:
    void aQuestionGoesOutAndAnAnswerComesBack() {
        Asking at;
        const auto file = at.file("214.burrowask");
        const auto asked = askOpinion(at.room.book, at.moult, file, "Is that a fold?").value();
        QCOMPARE(asked.photos.size(), std::size_t{2});
        QCOMPARE(opinionKind(file), OpinionKind::question);

        const auto folder = at.room.folder.path() / "looked";
        const auto opened = openQuestion(file, folder, at.files).value();
        QCOMPARE(opened, asked);
        QCOMPARE(opened.species, std::string("Brachypelma hamorii"));
        QCOMPARE(opened.carapace, Millimetres{12.5});
        QCOMPARE(opened.note, std::string("Is that a fold?"));
        QCOMPARE(
            at.files.read(folder / (Sha256::of(jpegSaying("two")).hex() + ".jpg"), 10'000).value(),
            jpegSaying("two"));

        const auto back = at.file("214.burrowsaid");
        must(writeAnswer(answerTo(opened), back));
        QCOMPARE(opinionKind(back), OpinionKind::answer);
        const auto taken = takeAnswer(at.room.book, back).value();
        QVERIFY(!taken.isKnown);
        QCOMPARE(taken.subject, at.animal);
        QCOMPARE(taken.moult, at.moult);
        const auto said = at.sexings();
        QCOMPARE(said.size(), std::size_t{1});
        QCOMPARE(said[0].body.judge, std::string("Wren"));
        QCOMPARE(said[0].body.clarity, Clarity::clearly);
        QCOMPARE(said[0].body.look, Look::moult);
        QCOMPARE(said[0].body.about, at.moult);
        // It is evidence: the animal's own record stays as it is.
        QCOMPARE(at.room.kept(at.animal).subject.sex, Sex::unknown);

        // Once more, and nothing is written.
        QVERIFY(takeAnswer(at.room.book, back).value().isKnown);
        QCOMPARE(at.sexings().size(), std::size_t{1});
    }

    /// What was measured of the skin afterwards stands in the question, not what was guessed before.
    void measuredSizesAreAsked() {
        Asking at;
        FactBody body;
        body.carapace = Millimetres{13.1};
        body.method = Method::photo;
        body.about = at.moult;
        at.room.log(at.animal, FactKind::measured, body);
        const auto asked = askOpinion(at.room.book, at.moult, at.file("q")).value();
        QCOMPARE(asked.carapace, Millimetres{13.1});
        QCOMPARE(asked.span, Millimetres{70});
        QCOMPARE(peekQuestion(at.file("q")).value().carapace, Millimetres{13.1});
    }

    void nothingPrivateLeaves() {
        Asking at;
        const auto file = at.file("214.burrowask");
        askOpinion(at.room.book, at.moult, file).value();
        const auto bytes = slurp(file);
        auto question = toText(peekQuestion(file).value());
        for (const auto* secret : {"PRIVATE", "Secret", "Kiln", "KR"}) {
            QVERIFY2(question.find(secret) == std::string::npos, secret);
            QVERIFY2(bytes.find(secret) == std::string::npos, secret);
        }
        for (const auto& id : {at.moult.text(), at.animal.text(), at.room.book.id().text(),
                               at.room.book.device().text()}) {
            QVERIFY(question.find(id) == std::string::npos);
        }
        QVERIFY(peekQuestion(file).value().note.empty());
    }

    void onlyPhotosThatAreHereAndWholeGo() {
        Asking at;
        at.photo("three", false);
        const auto torn = at.photo("four");
        const pictures::Store store(pictures::Store::folderFor(at.room.book.path()), at.files);
        must(at.files.write(store.picturePath(torn), jpegSaying("something else")));
        QCOMPARE(askOpinion(at.room.book, at.moult, at.file("q")).value().photos.size(),
                 std::size_t{2});
        for (int i = 0; i < 10; ++i) at.photo(("more " + std::to_string(i)).c_str());
        QCOMPARE(askOpinion(at.room.book, at.moult, at.file("q")).value().photos.size(),
                 opinionlimit::photos);
    }

    void whatCannotBeAskedWritesNothing() {
        Asking at;
        const auto refusal = [&](const EntryId& moult, const std::string& note = {}) {
            const auto asked = askOpinion(at.room.book, moult, at.file("q"), note);
            return asked ? std::string() : asked.error().message.id;
        };
        FactBody body;
        const EntryId bare{at.room.book.newId()};
        at.room.book.record(FactDraft{at.animal, FactKind::moulted, body, std::nullopt, bare})
            .value();
        QCOMPARE(refusal(bare), std::string("opinion.noPhotoHere"));
        QCOMPARE(refusal(EntryId{at.room.book.newId()}), std::string("opinion.noMoult"));
        QCOMPARE(refusal(at.moult, std::string(1001, 'a')), std::string("opinion.longNote"));
        QCOMPARE(refusal(at.moult, "\xE2\x80\xAE backwards"), std::string("opinion.longNote"));
        QVERIFY(!fs::exists(at.file("q")));
        const auto onBook = askOpinion(at.room.book, at.moult, at.room.book.path());
        QVERIFY(!onBook);
        QCOMPARE(onBook.error().message.id, std::string("bundle.ontoBook"));
    }

    void anAnswerNeedsAName() {
        Asking at;
        auto answer = answerTo({});
        for (const auto& [name, id] : std::vector<std::pair<std::string, std::string>>{
                 {"  ", "opinion.noName"},
                 {std::string(81, 'a'), "opinion.longName"},
                 {"a\tc", "opinion.longName"},
                 {"a\nb", "opinion.longName"},
                 {"\xE2\x80\xAE", "opinion.longName"}}) {
            answer.judge = name;
            const auto written = writeAnswer(answer, at.file("a"));
            QVERIFY(!written);
            QCOMPARE(written.error().message.id, id);
        }
        QVERIFY(!fs::exists(at.file("a")));
    }

    void anAnswerOfAnotherBookIsRefused() {
        Asking at;
        Asking other(2);
        const auto asked = askOpinion(other.room.book, other.moult, other.file("q")).value();
        must(writeAnswer(answerTo(asked), at.file("a")));
        QCOMPARE(refusedAnswer(at), std::string("opinion.notOurs"));
        // The moult was taken out meanwhile.
        const auto own = askOpinion(at.room.book, at.moult, at.file("q")).value();
        must(writeAnswer(answerTo(own), at.file("a")));
        at.room.book.record(RetractDraft{at.moult}).value();
        QCOMPARE(refusedAnswer(at), std::string("opinion.notOurs"));
        QVERIFY(at.sexings().empty());
    }

    void oneIsNotTakenForTheOther() {
        Asking at;
        const auto asked = askOpinion(at.room.book, at.moult, at.file("q")).value();
        must(writeAnswer(answerTo(asked), at.file("a")));
        QCOMPARE(peekQuestion(at.file("a")).error().message.id, std::string("opinion.isAnswer"));
        fs::copy_file(at.file("q"), at.file("a"), fs::copy_options::overwrite_existing);
        QCOMPARE(refusedAnswer(at), std::string("opinion.isQuestion"));
    }

    void hostileQuestions_data() {
        QTest::addColumn<QString>("what");
        QTest::addColumn<QString>("id");
        const auto row = [](const char* what, const char* id) {
            QTest::newRow(what) << what << id;
        };
        row("no zip", "opinion.neither");
        row("empty", "opinion.neither");
        row("cut", "bundle.cut");
        row("a bundle", "opinion.neither");
        row("no JSON", "opinion.unreadable");
        row("another kind", "opinion.unreadable");
        row("a later version", "opinion.newer");
        row("no version", "opinion.unreadable");
        row("no question", "opinion.unreadable");
        row("no photos", "opinion.noPhoto");
        row("nine photos", "opinion.tooMany");
        row("photos of 10 GB", "opinion.tooMany");
        row("a photo twice", "opinion.unreadable");
        row("a photo too many", "opinion.otherFiles");
        row("a photo too few", "opinion.otherFiles");
        row("another size", "opinion.otherFiles");
        row("another photo", "bundle.wrongHash");
        row("no picture", "opinion.noPicture");
        row("a size of a house", "opinion.unreadable");
        row("a size in words", "opinion.unreadable");
        row("a long species", "opinion.unreadable");
        row("a steering species", "opinion.unreadable");
        row("deep", "opinion.unreadable");
        row("long", "bundle.tooLarge");
        row("a way out", "bundle.strangeName");
        row("a bomb", "bundle.tooDense");
        row("a hundred files", "bundle.tooManyFiles");
    }
    void hostileQuestions() {
        QFETCH(QString, what);
        QFETCH(QString, id);
        Asking at;
        const auto file = at.file("in.burrowask");
        write(file, hostile(what));
        const auto before = beside(at);
        const auto folder = at.room.folder.path() / "looked";
        const auto opened = openQuestion(file, folder, at.files);
        QVERIFY(!opened);
        QCOMPARE(QString::fromStdString(opened.error().message.id), id);
        static const auto words = englishWords();
        const auto sentence = words.say(opened.error().message, {});
        QVERIFY2(sentence.find("Nothing was changed") != std::string::npos, sentence.c_str());
        QVERIFY(!fs::exists(folder) || fs::is_empty(folder));
        fs::remove_all(folder);
        QCOMPARE(beside(at), before);
    }

    void theHandMadeQuestionIsGood() {
        Asking at;
        write(at.file("in"), zipOf(Parts().zip()));
        QCOMPARE(peekQuestion(at.file("in")).value().photos.size(), std::size_t{1});
    }

    void hostileAnswers_data() {
        QTest::addColumn<QString>("text");
        QTest::addColumn<QString>("id");
        const auto row = [](const char* what, const char* text, const char* id) {
            QTest::newRow(what) << text << id;
        };
        const char* unreadable = "opinion.unreadable";
        row("no JSON", "{", unreadable);
        row("a list", "[]", unreadable);
        row("another kind", R"({"burrowbook": "species profiles", "version": 1})", unreadable);
        row("a later version", R"({"burrowbook": "second opinion given", "version": 2})",
            "opinion.newer");
        row("version 0", R"({"burrowbook": "second opinion given", "version": 0})", unreadable);
        row("a version in words", R"({"burrowbook": "second opinion given", "version": "1"})",
            unreadable);
        const auto good = [](const char* field, const char* value) {
            json answer{{"burrowbook", "second opinion given"},
                        {"version", 1},
                        {"question", "0195aaaa-0000-8000-8000-00000000000a"},
                        {"sex", "female"},
                        {"clarity", "clearly"},
                        {"judge", "Wren"}};
            answer[field] = json::parse(value);
            return answer.dump();
        };
        row("no such sex", good("sex", "\"both\"").c_str(), unreadable);
        row("no such clarity", good("clarity", "4").c_str(), unreadable);
        row("no id", good("question", "\"214\"").c_str(), unreadable);
        row("no name", good("judge", "\" \"").c_str(), unreadable);
        row("a name that is none", good("judge", "[\"Wren\"]").c_str(), unreadable);
        row("a steering name", good("judge", "\"\\u202eWren\"").c_str(), unreadable);
        row("a name with a zero", good("judge", "\"W\\u0000\"").c_str(), unreadable);
        row("a long note", good("note", ("\"" + std::string(1001, 'a') + "\"").c_str()).c_str(),
            unreadable);
        row("of nobody here", good("note", "\"\"").c_str(), "opinion.notOurs");
    }
    void hostileAnswers() {
        QFETCH(QString, text);
        QFETCH(QString, id);
        Asking at;
        write(at.file("a"), zipOf({deflatedPart("answer.json", text.toStdString())}));
        QCOMPARE(QString::fromStdString(refusedAnswer(at)), id);
    }

    void anAnswerHoldsNothingElse() {
        Asking at;
        const auto asked = askOpinion(at.room.book, at.moult, at.file("q")).value();
        write(at.file("a"), zipOf({deflatedPart("answer.json", toText(answerTo(asked))),
                                   ZipPart{"more.txt", "more"}}));
        QCOMPARE(refusedAnswer(at), std::string("opinion.otherFiles"));
    }

private:
    static std::set<std::string> beside(const Asking& at) {
        std::set<std::string> names;
        for (const auto& entry : fs::directory_iterator(at.room.folder.path())) {
            names.insert(entry.path().filename().string());
        }
        return names;
    }

    /// The id of the sentence; the book and its folder are as they were.
    static std::string refusedAnswer(Asking& at) {
        const auto before = beside(at);
        const auto count = at.room.book.connection().integer("SELECT count(*) FROM entry").value();
        const auto taken = takeAnswer(at.room.book, at.file("a"));
        if (taken) return {};
        const bool isSame =
            beside(at) == before &&
            at.room.book.connection().integer("SELECT count(*) FROM entry").value() == count;
        static const auto words = englishWords();
        const auto sentence = words.say(taken.error().message, {});
        const bool saysSo = sentence.find("Nothing was changed") != std::string::npos;
        return isSame && saysSo ? taken.error().message.id : "[" + sentence;
    }

    static std::string hostile(const QString& what) {
        Parts parts;
        auto& photos = parts.question["photos"];
        if (what == "no zip") return "moult";
        if (what == "empty") return {};
        if (what == "cut") {
            const auto whole = zipOf(parts.zip());
            return whole.substr(0, whole.size() / 2);
        }
        if (what == "a bundle") return zipOf({deflatedPart("manifest.json", "{}")});
        if (what == "no JSON") {
            return zipOf({ZipPart{parts.name, text(parts.photo)},
                          deflatedPart("question.json", "{\"burrowbook\"")});
        }
        if (what == "another kind") parts.question["burrowbook"] = "second opinion given";
        if (what == "a later version") parts.question["version"] = 2;
        if (what == "no version") parts.question.erase("version");
        if (what == "no question") parts.question.erase("question");
        if (what == "no photos") photos = json::array();
        if (what == "nine photos") {
            for (int i = 0; i < 8; ++i) {
                photos.push_back({{"sha256", Sha256::of(std::to_string(i)).hex()}, {"bytes", 1}});
            }
        }
        if (what == "photos of 10 GB") photos[0]["bytes"] = 10'000'000'000;
        if (what == "a photo twice") photos.push_back(photos[0]);
        if (what == "another size") photos[0]["bytes"] = parts.photo.size() + 1;
        if (what == "a size of a house") parts.question["carapace_mm"] = 9000;
        if (what == "a size in words") parts.question["carapace_mm"] = "large";
        if (what == "a long species") parts.question["species"] = std::string(121, 'a');
        if (what == "a steering species") parts.question["species"] = "\xE2\x80\xAE";
        if (what == "deep") {
            parts.question["more"] = 0;
            auto made = parts.question.dump();
            made.replace(made.find("\"more\":0") + 7, 1,
                         std::string(5000, '[') + std::string(5000, ']'));
            return zipOf(
                {ZipPart{parts.name, text(parts.photo)}, deflatedPart("question.json", made)});
        }
        if (what == "long") {
            // Random enough not to be dense.
            std::string noise;
            for (int i = 0; i < 3000; ++i) noise += Sha256::of(std::to_string(i)).hex();
            parts.question["note"] = noise;
        }
        if (what == "another photo") {
            return zipOf({ZipPart{parts.name, text(jpegSaying("b moult"))},
                          deflatedPart("question.json", parts.question.dump())});
        }
        if (what == "no picture") {
            const std::string none = "no picture at all";
            photos[0] = {{"sha256", Sha256::of(none).hex()}, {"bytes", none.size()}};
            return zipOf({ZipPart{"photos/" + Sha256::of(none).hex() + ".jpg", none},
                          deflatedPart("question.json", parts.question.dump())});
        }
        auto zip = parts.zip();
        if (what == "a photo too many") {
            zip.push_back(ZipPart{"photos/" + Sha256::of("x").hex() + ".jpg", "x"});
        }
        if (what == "a photo too few") zip.erase(zip.begin());
        if (what == "a way out") zip.push_back(ZipPart{"../out.jpg", "x"});
        if (what == "a bomb") {
            zip.push_back(deflatedPart("photos/bomb.jpg", std::string(60'000'000, '\0')));
        }
        if (what == "a hundred files") {
            for (int i = 0; i < 100; ++i) zip.push_back(ZipPart{std::to_string(i), "x"});
        }
        return zipOf(zip);
    }
};

QTEST_APPLESS_MAIN(TestOpinion)
#include "tst_opinion.moc"
