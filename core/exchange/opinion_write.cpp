// Questions and answers that leave, and answers that are written down.
#include <algorithm>

#include "base/file_writer.h"
#include "base/text.h"
#include "exchange/manifest.h"
#include "exchange/opinion_text.h"
#include "exchange/refuse.h"
#include "exchange/zip_writer.h"
#include "journal/roster.h"
#include "model/digest.h"
#include "model/moult_photo.h"

namespace burrow::exchange {
namespace {

namespace fs = std::filesystem;

struct PhotoBytes {
    Sha256 picture;
    Bytes bytes;
};

/// Writes the zip under its temporary name.
Result<FileWriter> writeZip(const fs::path& path, const char* name, std::string_view text,
                            std::span<const PhotoBytes> photos) {
    BURROW_TRY(auto file, FileWriter::create(path));
    BURROW_TRY(auto zip, ZipWriter::begin(file));
    for (const auto& photo : photos) {
        BURROW_DO(zip.startStored(filename::photo(photo.picture), photo.bytes.size()));
        BURROW_DO(zip.write(photo.bytes));
    }
    BURROW_DO(zip.startDeflated(name));
    BURROW_DO(zip.write(bytesOf(text)));
    BURROW_DO(zip.close());
    BURROW_DO(file.flush());
    return file;
}

/// The moult, or the photo that stands for one; with its sizes, and the pictures of it as they were taken.
struct AskedMoult {
    Fact moult;
    MoultMark mark;
    std::vector<Sha256> pictures;
};

Result<AskedMoult> askedMoult(Book& book, const EntryId& id) {
    BURROW_TRY(auto moult, fact(book, id));
    const bool isOne =
        moult && (moult->kind == FactKind::moulted || moult->kind == FactKind::photo);
    if (!isOne) return fail(Trouble::notFound, {"opinion.noMoult"});
    AskedMoult asked{*std::move(moult), {}, {}};
    BURROW_TRY(const auto facts, history(book, asked.moult.subject, wholeHistory));
    asked.mark = markOf(asked.moult, facts);
    for (const auto& photo : facts) {
        const bool isShown = isMoultPhoto(photo) && moultOf(photo) == id;
        if (isShown) asked.pictures.insert(asked.pictures.begin(), *photo.body.picture);
    }
    return asked;
}

/// Those photos of it that are on this device and whole, as many as a question may have.
std::vector<PhotoBytes> photosHere(Book& book, const std::vector<Sha256>& pictures) {
    DeviceFiles files;
    const pictures::Store store(pictures::Store::folderFor(book.path()), files);
    std::vector<PhotoBytes> photos;
    std::uint64_t total = 0;
    for (const auto& picture : pictures) {
        if (photos.size() == opinionlimit::photos) break;
        const bool isTwice = std::any_of(photos.begin(), photos.end(), [&](const auto& known) {
            return known.picture == picture;
        });
        auto bytes = files.read(store.picturePath(picture), pictures::Limits().bytes);
        const bool isWhole = bytes && Sha256::of(*bytes) == picture;
        if (isTwice || !isWhole || total + bytes->size() > opinionlimit::photoBytes) continue;
        total += bytes->size();
        photos.push_back({picture, *std::move(bytes)});
    }
    return photos;
}

/// The moult about which this book asked under an id; nothing where it did not, or took it out.
Result<std::optional<Fact>> moultAsked(Book& book, const Uuid& question) {
    BURROW_TRY(auto rows, book.connection().query(
                              "SELECT entry FROM fact WHERE kind IN ('moulted', 'photo')"));
    std::optional<EntryId> found;
    while (!found) {
        BURROW_TRY(const bool more, rows.next());
        if (!more) return std::optional<Fact>();
        const auto id = Uuid::fromBytes(rows.blob(0));
        if (id && questionId(book.id(), EntryId{*id}) == question) found = EntryId{*id};
    }
    return fact(book, *found);
}

FactDraft draftOf(const Fact& moult, const OpinionAnswer& answer) {
    FactDraft draft{moult.subject, FactKind::sexed, {}, std::nullopt};
    draft.body.sex = answer.sex;
    draft.body.look = Look::moult;
    draft.body.clarity = answer.clarity;
    draft.body.judge = std::string(trimmed(answer.judge));
    draft.body.about = moult.id;
    if (!trimmed(answer.note).empty()) draft.body.text = answer.note;
    return draft;
}

}  // namespace

Uuid questionId(BookId book, const EntryId& moult) {
    return Uuid::named("second opinion " + book.text() + " " + moult.text());
}

Result<OpinionQuestion> askOpinion(Book& book, const EntryId& moult, const fs::path& path,
                                   const std::string& note) {
    std::error_code ignored;
    if (fs::equivalent(path, book.path(), ignored)) return refuse({"bundle.ontoBook"});
    if (note.size() > opinionlimit::note || withoutSteering(note) != note) {
        return refuse(
            {"opinion.longNote", {{"most", static_cast<std::int64_t>(opinionlimit::note)}}});
    }
    BURROW_TRY(const auto asked, askedMoult(book, moult));
    const auto photos = photosHere(book, asked.pictures);
    if (photos.empty()) return fail(Trouble::notFound, {"opinion.noPhotoHere"});
    BURROW_TRY(const auto owner, kept(book, asked.moult.subject));
    OpinionQuestion question;
    question.id = questionId(book.id(), moult);
    // A species is written as the keeper likes; more than a name of one is none of others' business.
    if (owner && owner->subject.species.size() <= opinionlimit::species) {
        question.species = withoutSteering(owner->subject.species);
    }
    question.carapace = asked.mark.carapace;
    question.span = asked.mark.span;
    question.note = note;
    for (const auto& photo : photos) {
        question.photos.push_back({photo.picture, photo.bytes.size()});
    }
    BURROW_TRY(auto file, writeZip(path, questionName, toText(question), photos));
    BURROW_TRY(const auto readBack, peekQuestion(file.temporary()));
    if (readBack != question) return refuse({"bundle.notReadBack"});
    BURROW_DO(file.finish());
    return question;
}

Done writeAnswer(const OpinionAnswer& answer, const fs::path& path) {
    BURROW_DO(checkAnswer(answer));
    BURROW_TRY(auto file, writeZip(path, answerName, toText(answer), {}));
    BURROW_TRY(const auto readBack, readAnswer(file.temporary()));
    if (readBack != answer) return refuse({"bundle.notReadBack"});
    return file.finish();
}

Result<TakenAnswer> takeAnswer(Book& book, const fs::path& path) {
    TakenAnswer taken;
    BURROW_TRY(taken.answer, readAnswer(path));
    BURROW_TRY(const auto moult, moultAsked(book, taken.answer.question));
    if (!moult) return fail(Trouble::notFound, {"opinion.notOurs"});
    taken.subject = moult->subject;
    taken.moult = moult->id;
    const auto draft = draftOf(*moult, taken.answer);
    BURROW_TRY(const auto facts, history(book, moult->subject, wholeHistory));
    taken.isKnown = std::any_of(facts.begin(), facts.end(), [&](const Fact& fact) {
        return fact.kind == FactKind::sexed && fact.body == draft.body;
    });
    if (!taken.isKnown) {
        BURROW_TRY(taken.changes, book.record(draft));
    }
    return taken;
}

}  // namespace burrow::exchange
