#include "room/search.h"

#include <algorithm>
#include <array>
#include <map>
#include <optional>
#include <tuple>
#include <unordered_map>

#include "base/text.h"
#include "journal/rows.h"
#include "journal/word_index.h"
#include "storage/word_splitter.h"
#include "tags/code.h"

namespace burrow {
namespace {

using storage::WordSplitter;

constexpr std::array<std::string_view, 6> names{"number", "number_start", "species",
                                                "tag",    "place",        "note"};
constexpr int mostTexts = 50'000;
constexpr std::size_t mostWords = 12;
/// So much of a tag's code has to be typed before it is looked for.
constexpr std::size_t leastCode = 4;

/// Not found at all: worse than any other.
constexpr FoundBy nowhere{static_cast<std::uint8_t>(names.size())};

struct Word {
    std::string typed;
    std::string folded;
    bool isStart = false;  ///< the start of a word is enough
    bool isLabel = false;  ///< "shelf": satisfied by a place too
};

bool fits(const Word& word, std::string_view folded) {
    return word.isStart ? folded.starts_with(word.folded) : folded == word.folded;
}

/// What was typed, cut to what is looked at.
std::string_view lookedAt(std::string_view typed) {
    typed = trimmed(typed.substr(0, longestSearch));
    while (!typed.empty() && !isUtf8(typed)) typed.remove_suffix(1);
    return typed;
}

std::vector<Word> wordsOf(std::string_view typed, const WordSplitter& splitter,
                          const SearchOptions& options) {
    auto split = splitter.split(typed);
    if (split.size() > mostWords) split.resize(mostWords);
    std::vector<Word> words;
    for (const auto& each : split) {
        const auto& labels = options.placeWords;
        const bool isLabel = std::find(labels.begin(), labels.end(), each.folded) != labels.end();
        words.push_back({std::string(typed.substr(each.begin, each.end - each.begin)), each.folded,
                         false, isLabel});
    }
    if (words.empty()) return words;
    auto& last = words.back();
    last.isStart = words.size() == 1 || last.folded.size() > 1;
    return words;
}

/// One subject and how far-fetched each word is for it.
struct Candidate {
    SubjectId id;
    std::string number;
    std::string species;
    std::optional<Uuid> home;
    std::string place;  ///< its enclosure's, else its own
    bool isPlaceOwn = true;
    bool isKept = true;
    FoundBy whole = nowhere;  ///< by all that was typed at once
    std::vector<FoundBy> words;
    std::vector<bool> inPlace;  ///< which of the words stand in its place
    std::map<std::int64_t, std::pair<int, WordHit>>
        notes;  ///< texts, with how many words they hold
    std::string code;

    [[nodiscard]] FoundBy by() const {
        const auto farthest =
            words.empty() ? nowhere : *std::max_element(words.begin(), words.end());
        return std::min(whole, farthest);
    }
};

/// A species as it is written in the book, and what was typed of its names.
struct SpeciesFit {
    bool isMeant = false;  ///< all that was typed is one of its names
    std::vector<bool> words;
    std::string shown;  ///< the name with most of the words
};

class Finder {
public:
    Finder(Book& book, const Profiles& profiles, const SearchOptions& options,
           WordSplitter splitter)
        : book_(book), profiles_(profiles), options_(options), splitter_(std::move(splitter)) {}

    Result<Findings> find(std::string_view typed);

private:
    Done readEveryone(std::string_view roomCode);
    void fitNumbers(std::string_view roomCode);
    void fitSpecies();
    [[nodiscard]] SpeciesFit fitOf(const std::string& species) const;
    Done fitTags();
    Done fitTexts();
    void note(const WordHit& hit, std::size_t word, TextPart part);
    void noteFor(std::size_t at, const WordHit& hit, std::size_t word, TextPart part);
    void fitLabels();
    Result<Found> foundOf(const Candidate& candidate) const;
    Result<Found> foundInNote(Found found, const Candidate& candidate) const;
    [[nodiscard]] Snippet marked(std::string text) const;
    [[nodiscard]] bool isWanted(std::string_view folded) const;

    Book& book_;
    const Profiles& profiles_;
    const SearchOptions& options_;
    WordSplitter splitter_;
    std::string typed_;
    std::vector<Word> words_;
    std::vector<Candidate> everyone_;
    std::unordered_map<Uuid, std::size_t, UuidHash> bySubject_;
    std::unordered_map<Uuid, std::vector<std::size_t>, UuidHash> byHome_;
    std::unordered_map<std::string, SpeciesFit> species_;
};

Done Finder::readEveryone(std::string_view roomCode) {
    BURROW_TRY(auto rows, book_.connection().query(
                              "SELECT s.id, s.number, s.species, s.enclosure, s.place, e.place, "
                              "s.standing FROM subject s LEFT JOIN enclosure e ON e.id = "
                              "s.enclosure"));
    const TypedNumber number(typed_, roomCode);
    while (true) {
        BURROW_TRY(const bool more, rows.next());
        if (!more) break;
        Candidate one;
        one.id = SubjectId{uuidAt(rows, 0)};
        one.number = rows.text(1);
        one.species = rows.text(2);
        one.home = maybeUuidAt(rows, 3);
        one.isPlaceOwn = rows.text(5).empty();
        one.place = one.isPlaceOwn ? rows.text(4) : rows.text(5);
        const auto standing = static_cast<Standing>(rows.integer(6));
        one.isKept = standing == Standing::here || standing == Standing::onLoan;
        if (number.starts(one.number)) one.whole = FoundBy::numberStart;
        one.words.assign(words_.size(), nowhere);
        one.inPlace.assign(words_.size(), false);
        bySubject_.emplace(one.id.uuid, everyone_.size());
        if (one.home) byHome_[*one.home].push_back(everyone_.size());
        everyone_.push_back(std::move(one));
    }
    return {};
}

void Finder::fitNumbers(std::string_view roomCode) {
    std::vector<std::size_t> all(everyone_.size());
    for (std::size_t at = 0; at < all.size(); ++at) all[at] = at;
    const auto numberOf = [&](std::size_t at) -> const std::string& {
        return everyone_[at].number;
    };
    for (const auto at : burrow::numbered(all, TypedNumber(typed_, roomCode), numberOf)) {
        everyone_[at].whole = FoundBy::number;
    }
}

SpeciesFit Finder::fitOf(const std::string& species) const {
    SpeciesFit fit;
    fit.words.assign(words_.size(), false);
    const auto* profile = profiles_.find(species);
    fit.isMeant = profile != nullptr && profiles_.find(typed_) == profile;
    std::vector<const std::string*> all{&species};
    if (profile != nullptr) {
        all.push_back(&profile->name);
        for (const auto& each : profile->otherNames) all.push_back(&each);
        for (const auto& each : profile->tradeNames) all.push_back(&each);
    }
    std::ptrdiff_t most = -1;
    for (const auto* each : all) {
        std::vector<bool> here(words_.size(), false);
        for (const auto& part : splitter_.split(*each)) {
            for (std::size_t i = 0; i < words_.size(); ++i) {
                here[i] = here[i] || fits(words_[i], part.folded);
            }
        }
        const auto count = std::count(here.begin(), here.end(), true);
        if (count > most) {
            most = count;
            fit.shown = *each;
        }
        for (std::size_t i = 0; i < here.size(); ++i) fit.words[i] = fit.words[i] || here[i];
    }
    return fit;
}

void Finder::fitSpecies() {
    for (auto& one : everyone_) {
        auto found = species_.find(one.species);
        if (found == species_.end()) {
            found = species_.emplace(one.species, fitOf(one.species)).first;
        }
        const auto& fit = found->second;
        if (fit.isMeant) one.whole = std::min(one.whole, FoundBy::species);
        for (std::size_t i = 0; i < words_.size(); ++i) {
            if (fit.words[i]) one.words[i] = std::min(one.words[i], FoundBy::species);
        }
    }
}

/// The whole as the code of a tag, or as its start.
Done Finder::fitTags() {
    std::string start;
    for (const char c : upperAscii(typed_)) {
        if (c != ' ' && c != '-') start += c == 'O' ? '0' : c == 'I' || c == 'L' ? '1' : c;
    }
    if (const auto code = tags::parseTyped(typed_)) start = *code;  // without its check character
    const bool isCode = std::all_of(start.begin(), start.end(), [](char c) {
        return (c >= '0' && c <= '9') || (c >= 'A' && c <= 'Z');
    });
    if (start.size() < leastCode || !isCode) return {};
    BURROW_TRY(auto rows, book_.connection().query("SELECT code, subject, enclosure FROM tag WHERE "
                                                   "code >= ?1 AND code < ?1 || '~'"));
    rows.bind(start);
    const auto found = [&](std::size_t at, std::string_view code) {
        auto& one = everyone_[at];
        one.whole = std::min(one.whole, FoundBy::tag);
        if (one.code.empty() || code < one.code) one.code = code;
    };
    while (true) {
        BURROW_TRY(const bool more, rows.next());
        if (!more) return {};
        const auto subject = maybeUuidAt(rows, 1);
        const auto home = maybeUuidAt(rows, 2);
        if (const auto at = bySubject_.find(subject.value_or(Uuid{})); at != bySubject_.end()) {
            found(at->second, rows.text(0));
        }
        if (subject || !home || !byHome_.contains(*home)) continue;
        for (const auto at : byHome_.at(*home)) found(at, rows.text(0));
    }
}

void Finder::noteFor(std::size_t at, const WordHit& hit, std::size_t word, TextPart part) {
    auto& one = everyone_[at];
    // The place written down for an animal means nothing while its enclosure has one.
    if (part == TextPart::place && hit.kind == TextOf::subject && !one.isPlaceOwn) return;
    const auto by = part == TextPart::number  ? FoundBy::numberStart
                    : part == TextPart::place ? FoundBy::place
                                              : FoundBy::note;
    one.words[word] = std::min(one.words[word], by);
    if (part == TextPart::place) one.inPlace[word] = true;
    if (part != TextPart::note) return;
    auto& text = one.notes.try_emplace(hit.n, 0, hit).first->second;
    ++text.first;
}

void Finder::note(const WordHit& hit, std::size_t word, TextPart part) {
    if (hit.kind == TextOf::enclosure) {
        const auto inside = byHome_.find(hit.about);
        if (inside == byHome_.end()) return;
        for (const auto at : inside->second) noteFor(at, hit, word, part);
        return;
    }
    const auto found = bySubject_.find(hit.about);
    if (found != bySubject_.end()) noteFor(found->second, hit, word, part);
}

Done Finder::fitTexts() {
    for (std::size_t i = 0; i < words_.size(); ++i) {
        const auto& word = words_[i];
        for (const auto part : {TextPart::number, TextPart::place, TextPart::note}) {
            // A note with any word that starts with "a" is what nobody looks for.
            const bool isStart = word.isStart && (part != TextPart::note || word.folded.size() > 1);
            BURROW_TRY(const auto hits,
                       textsWith(book_.connection(), part, word.typed, isStart, mostTexts));
            for (const auto& hit : hits) note(hit, i, part);
        }
    }
    return {};
}

/// "shelf" is satisfied by the place that follows: "shelf c".
void Finder::fitLabels() {
    for (std::size_t i = words_.size(); i-- > 0;) {
        if (!words_[i].isLabel) continue;
        for (auto& one : everyone_) {
            const bool hasPlace = !one.place.empty();
            const bool follows = i + 1 == words_.size() ? hasPlace : one.inPlace[i + 1];
            if (follows) one.words[i] = std::min(one.words[i], FoundBy::place);
        }
    }
}

bool Finder::isWanted(std::string_view folded) const {
    return std::any_of(words_.begin(), words_.end(),
                       [&](const Word& word) { return fits(word, folded); });
}

Snippet Finder::marked(std::string text) const {
    return snippetOf(
        text, splitter_, [&](std::string_view folded) { return isWanted(folded); }, text.size());
}

/// The text with most of the words; of several the newest.
Result<Found> Finder::foundInNote(Found found, const Candidate& candidate) const {
    const auto rank = [](const std::pair<int, WordHit>& text) {
        return std::tuple(text.first, text.second.at, text.second.origin);
    };
    const auto best = std::max_element(
        candidate.notes.begin(), candidate.notes.end(),
        [&](const auto& a, const auto& b) { return rank(a.second) < rank(b.second); });
    if (best == candidate.notes.end()) return found;
    const auto& hit = best->second.second;
    BURROW_TRY(const auto text, noteText(book_.connection(), hit.n));
    const auto wanted = [&](std::string_view folded) { return isWanted(folded); };
    found.what = snippetOf(text.note, splitter_, wanted);
    if (found.what.marks.empty()) found.what = snippetOf(text.source, splitter_, wanted);
    if (hit.kind != TextOf::fact) return found;
    found.entry = EntryId{hit.origin};
    BURROW_TRY(const auto fact, burrow::fact(book_, *found.entry));
    if (fact) found.day = fact->day;
    return found;
}

Result<Found> Finder::foundOf(const Candidate& candidate) const {
    Found found{candidate.id, candidate.number, candidate.by(), {}, {}, {}};
    switch (found.by) {
        case FoundBy::number:
        case FoundBy::numberStart: found.what = marked(candidate.number); break;
        case FoundBy::species: found.what = marked(species_.at(candidate.species).shown); break;
        case FoundBy::tag: found.what = marked(candidate.code); break;
        case FoundBy::place: found.what = marked(candidate.place); break;
        case FoundBy::note: return foundInNote(std::move(found), candidate);
    }
    return found;
}

Result<Findings> Finder::find(std::string_view typed) {
    Findings findings;
    typed_ = lookedAt(typed);
    if (typed_.empty()) return findings;
    words_ = wordsOf(typed_, splitter_, options_);
    // One state of the book, whatever another program writes meanwhile.
    BURROW_TRY(const auto snapshot, storage::Snapshot::take(book_.connection()));
    BURROW_TRY(const auto code, roomCode(book_));
    BURROW_DO(readEveryone(code));
    fitNumbers(code);
    fitSpecies();
    BURROW_DO(fitTags());
    BURROW_DO(fitTexts());
    fitLabels();
    std::vector<const Candidate*> fitting;
    for (const auto& one : everyone_) {
        if (one.by() != nowhere) fitting.push_back(&one);
    }
    std::sort(fitting.begin(), fitting.end(), [](const Candidate* a, const Candidate* b) {
        const auto key = [](const Candidate* one) { return std::pair(one->by(), !one->isKept); };
        if (key(a) != key(b)) return key(a) < key(b);
        const int order = compareNatural(a->number, b->number);
        return order != 0 ? order < 0 : a->id < b->id;
    });
    findings.all = fitting.size();
    if (fitting.size() > options_.limit) fitting.resize(options_.limit);
    for (const auto* one : fitting) {
        BURROW_TRY(auto found, foundOf(*one));
        findings.found.push_back(std::move(found));
    }
    return findings;
}

}  // namespace

std::string_view name(FoundBy by) { return names.at(static_cast<std::size_t>(by)); }

std::vector<std::string> placeWords(const Words& words) {
    const auto all = words.say("find.placeWords");
    std::vector<std::string> list;
    for (const auto word : split(all, ' ')) list.emplace_back(word);
    return list;
}

Result<Findings> search(Book& book, const Profiles& profiles, std::string_view typed,
                        const SearchOptions& options) {
    BURROW_TRY(auto splitter, WordSplitter::of(book.connection()));
    return Finder(book, profiles, options, std::move(splitter)).find(typed);
}

std::vector<ResidentPtr> numbered(const Room& room, std::string_view number) {
    return burrow::numbered(
        room.residents(), TypedNumber(number, room.info().code),
        [](const ResidentPtr& one) -> const std::string& { return one->subject().number; });
}

}  // namespace burrow
