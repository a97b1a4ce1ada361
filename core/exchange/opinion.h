// Second opinions by file. A keeper sends the photos of a moult with what is needed to judge them; another
// keeper says what they show; the answer comes back as a file and becomes an examination by that keeper.
// FORMAT.md beside this header describes both files.
//
// A question holds photos (without location, as all that leave), the species, the sizes on record and
// what the keeper adds: no number, no place, no name, no price, nothing else of the animal's record. Nor
// does it say from which book it is: its id is made from book and moult, and only that book can find
// the moult again.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "journal/book.h"
#include "pictures/store.h"

namespace burrow::exchange {

/// The version of both files that this program writes, and the newest it reads.
inline constexpr int opinionVersion = 1;
inline constexpr const char* questionEnding = ".burrowask";
inline constexpr const char* answerEnding = ".burrowsaid";

namespace opinionlimit {
inline constexpr std::size_t photos = 8;
inline constexpr std::uint64_t photoBytes = 128'000'000;  ///< of all photos together
inline constexpr std::uint64_t jsonBytes = 65'536;
inline constexpr std::size_t name = 80;  ///< bytes of UTF-8
inline constexpr std::size_t species = 120;
inline constexpr std::size_t note = 1000;
}  // namespace opinionlimit

struct OpinionPhoto {
    Sha256 picture;
    std::uint64_t bytes = 0;

    friend bool operator==(const OpinionPhoto&, const OpinionPhoto&) = default;
};

/// What is asked.
struct OpinionQuestion {
    Uuid id;
    std::string species;
    std::optional<Millimetres> carapace;
    std::optional<Millimetres> span;
    std::string note;
    std::vector<OpinionPhoto> photos;  ///< at least one

    friend bool operator==(const OpinionQuestion&, const OpinionQuestion&) = default;
};

/// What another keeper says.
struct OpinionAnswer {
    Uuid question;
    Sex sex = Sex::unknown;
    Clarity clarity = Clarity::barely;
    std::string judge;  ///< the name that this keeper gives; never empty
    std::string note;

    friend bool operator==(const OpinionAnswer&, const OpinionAnswer&) = default;
};

// --- The keeper who asks -------------------------------------------------------------------------

/// Writes a question about a moult (or about the photo that stands for one), reads it back, and only then
/// gives it its name. Fails where the book has no such moult, or none of its photos is on this device.
Result<OpinionQuestion> askOpinion(Book& book, const EntryId& moult,
                                   const std::filesystem::path& path, const std::string& note = {});

struct TakenAnswer {
    OpinionAnswer answer;
    SubjectId subject;
    EntryId moult;
    bool isKnown = false;  ///< the book has it already: nothing was written
    ChangeSet changes;
};
/// Writes the answer down as an examination. Refuses what is damaged, and an answer to a question that
/// was not asked from this book or whose moult was taken out of it; nothing is changed then.
Result<TakenAnswer> takeAnswer(Book& book, const std::filesystem::path& path);

// --- The keeper who is asked ----------------------------------------------------------------------

/// Looks a question over: everything is checked, also that its photos are whole and are pictures.
Result<OpinionQuestion> peekQuestion(const std::filesystem::path& path);

/// The same, and puts its photos into the folder as "<SHA-256>.jpg": all of them, or none.
Result<OpinionQuestion> openQuestion(const std::filesystem::path& path,
                                     const std::filesystem::path& folder, Files& files);

/// Fails for an answer without a name, or with texts that are too long.
Done writeAnswer(const OpinionAnswer& answer, const std::filesystem::path& path);

// --- Both -----------------------------------------------------------------------------------------

enum class OpinionKind { question, answer };
/// Which of the two a file is, by what it says of itself; nothing where it is neither.
[[nodiscard]] std::optional<OpinionKind> opinionKind(const std::filesystem::path& path);

Result<OpinionAnswer> readAnswer(const std::filesystem::path& path);

/// The id under which a book asks about a moult.
[[nodiscard]] Uuid questionId(BookId book, const EntryId& moult);

}  // namespace burrow::exchange
