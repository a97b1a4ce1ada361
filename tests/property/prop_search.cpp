// The search over random books and random typing, against a plain scan of everything that is written in
// them; whatever is typed is only words.
#include <rapidcheck.h>

#include <algorithm>
#include <map>

#include "base/text.h"
#include "journal/check.h"
#include "room/search.h"
#include "support/joined.h"
#include "support/profiles.h"

using namespace burrow;
using namespace burrow::test;

namespace {

const std::vector<std::string> vocabulary{
    "webbed", "web",  "dish", "Dish", "\u00FCber", "uber",  "\u00DCBER", "214",     "21",
    "7",      "007",  "red",  "a",    "A",         "shelf", "hamorii",   "pulchra", "Brachypelma",
    "b.",     "rose", "KR",   "e1",   "KR-214",    "knee",  "bred",      "7Q2M",    "lividum"};
/// What FTS5, SQL, LIKE and GLOB give a meaning (sqlite.org/fts5.html, 3), and separators of other scripts.
const std::vector<std::string> hostile{
    " ",     "\"",     "*",          "^",     "-",       "+",      "(",      ")",
    "NEAR(", " AND ",  " OR ",       " NOT ", "{note}:", "note :", ":",      "'",
    "''",    ";",      "DROP TABLE", "%",     "_",       "\\",     "\n",     "\u202E",
    "|",     "\u00B7", "--",         "/*",    "[",       "\u2019", " , 10)", "\xF0\x9F\x95\xB7"};

std::string anyPhrase(int most) {
    std::string text;
    for (int n = *rc::gen::inRange(1, most + 1); n > 0; --n) {
        if (!text.empty())
            text += *rc::gen::inRange(0, 2) == 0 ? " " : *rc::gen::elementOf(hostile);
        text += *rc::gen::elementOf(vocabulary);
    }
    return text;
}

// --- the plain scan ------------------------------------------------------------------------------

/// Enough of Unicode for the vocabulary.
std::vector<std::string> plainWords(std::string_view text) {
    std::vector<std::string> words(1);
    for (std::size_t i = 0; i < text.size(); ++i) {
        const auto c = text[i];
        const bool isUmlaut =
            c == '\xC3' && i + 1 < text.size() && (text[i + 1] == '\xBC' || text[i + 1] == '\x9C');
        if (isUmlaut) {
            words.back() += 'u';
            ++i;
        } else if (std::isalnum(static_cast<unsigned char>(c)) != 0) {
            words.back() += lowerAscii(std::string(1, c));
        } else if (!words.back().empty()) {
            words.emplace_back();
        }
    }
    if (words.back().empty()) words.pop_back();
    return words;
}

struct Text {
    std::vector<std::string> words;
    std::optional<EntryId> entry;
    Instant at;
    Uuid origin;
};

struct Scanned {
    SubjectId id;
    std::string number;
    bool isGone = false;
    int by = 6;
    std::optional<EntryId> entry;
};

struct Typed {
    std::string text;
    std::vector<std::string> words;

    [[nodiscard]] bool isStart(std::size_t i, bool inNote) const {
        const bool isLast = i + 1 == words.size();
        return isLast && (words[i].size() > 1 || (words.size() == 1 && !inNote));
    }
    [[nodiscard]] bool holds(const std::vector<std::string>& said, std::size_t i,
                             bool inNote = false) const {
        return std::any_of(said.begin(), said.end(), [&](const std::string& word) {
            return isStart(i, inNote) ? word.starts_with(words[i]) : word == words[i];
        });
    }
};

std::string withoutZeros(std::string text) {
    while (text.size() > 1 && text[0] == '0') text.erase(0, 1);
    return lowerAscii(text);
}

std::string behindCode(const std::string& text) {
    return lowerAscii(text).starts_with("kr-") ? text.substr(3) : text;
}

/// 0 for the very number, up to 3 but for zeros; 4 for none.
int numberFit(const std::string& number, const std::string& text) {
    const auto behind = behindCode(text);
    if (behind.empty() || number.empty()) return 4;
    if (number == text) return 0;
    if (behind != text && lowerAscii(number) == lowerAscii(text)) return 1;
    if (number == behind) return 2;
    return withoutZeros(number) == withoutZeros(behind) ? 3 : 4;
}

bool numberStarts(const std::string& number, const std::string& text) {
    const auto behind = behindCode(text);
    const auto own = lowerAscii(number);
    return !behind.empty() &&
           (own.starts_with(lowerAscii(text)) || own.starts_with(lowerAscii(behind)) ||
            withoutZeros(number).starts_with(withoutZeros(behind)));
}

class Scan {
public:
    Scan(Book& book, const Profiles& profiles) : book_(book), profiles_(profiles) {
        everyone_ = got(roster(book));
        for (auto& home : got(enclosures(book))) homes_.emplace(home.id, home);
    }

    std::vector<Scanned> find(const std::string& typed) {
        const Typed wanted{typed, plainWords(typed)};
        int best = 4;
        for (const auto& one : everyone_) {
            best = std::min(best, numberFit(one.subject.number, typed));
        }
        std::vector<Scanned> found;
        for (const auto& one : everyone_) {
            auto scanned = scan(one, wanted);
            const int fit = numberFit(one.subject.number, typed);
            if (fit < 4 && fit == best) scanned.by = 0;
            if (scanned.by != 5) scanned.entry.reset();
            if (scanned.by < 6) found.push_back(scanned);
        }
        std::sort(found.begin(), found.end(), [](const Scanned& a, const Scanned& b) {
            const auto key = [](const Scanned& s) { return std::pair(s.by, s.isGone); };
            if (key(a) != key(b)) return key(a) < key(b);
            const int order = compareNatural(a.number, b.number);
            return order != 0 ? order < 0 : a.id < b.id;
        });
        return found;
    }

private:
    [[nodiscard]] Scanned scan(const Kept& one, const Typed& typed) {
        Scanned scanned{one.subject.id, one.subject.number, !one.subject.isKept(), 6, {}};
        const auto texts = notesOf(one);
        for (std::size_t i = 0; i < typed.words.size(); ++i) {
            const int by = byOf(one, texts, typed, i);
            scanned.by = i == 0 ? by : std::max(scanned.by, by);
        }
        if (numberStarts(one.subject.number, typed.text)) scanned.by = std::min(scanned.by, 1);
        const auto* profile = profiles_.find(one.subject.species);
        if (profile != nullptr && profiles_.find(typed.text) == profile) {
            scanned.by = std::min(scanned.by, 2);
        }
        if (one.tagCode == "7Q2MZX89" && isItsCode(typed.text)) {
            scanned.by = std::min(scanned.by, 3);
        }
        scanned.entry = bestNote(texts, typed);
        return scanned;
    }
    static bool isItsCode(const std::string& text) {
        std::string code;
        for (const char c : text) {
            if (c != ' ' && c != '-') code += upperAscii(std::string(1, c));
        }
        return code.size() >= 4 && std::string("7Q2MZX89").starts_with(code);
    }

    [[nodiscard]] int byOf(const Kept& one, const std::vector<Text>& texts, const Typed& typed,
                           std::size_t i) const {
        if (typed.holds(plainWords(one.subject.number), i)) return 1;
        if (typed.holds(namesOf(one.subject.species), i)) return 2;
        auto place = plainWords(one.place.text());
        if (const auto home = homeOf(one); home != homes_.end()) {
            for (const auto& word : plainWords(home->second.name)) place.push_back(word);
        }
        if (typed.holds(place, i)) return 4;
        const bool isNoted = std::any_of(texts.begin(), texts.end(), [&](const Text& text) {
            return typed.holds(text.words, i, true);
        });
        return isNoted ? 5 : 6;
    }

    [[nodiscard]] std::vector<std::string> namesOf(const std::string& species) const {
        auto all = species;
        if (const auto* profile = profiles_.find(species)) {
            all += ' ' + profile->name;
            for (const auto& name : profile->otherNames) all += ' ' + name;
            for (const auto& name : profile->tradeNames) all += ' ' + name;
        }
        return plainWords(all);
    }

    [[nodiscard]] std::map<EnclosureId, Enclosure>::const_iterator homeOf(const Kept& one) const {
        return one.subject.enclosure ? homes_.find(*one.subject.enclosure) : homes_.end();
    }

    std::vector<Text> notesOf(const Kept& one) {
        const auto& subject = one.subject;
        std::vector<Text> texts{
            {plainWords(subject.source + ' ' + subject.note), {}, {}, subject.id.uuid}};
        if (const auto home = homeOf(one); home != homes_.end()) {
            texts.push_back({plainWords(home->second.note), {}, {}, home->first.uuid});
        }
        for (const auto& fact : got(history(book_, subject.id, wholeHistory))) {
            if (!fact.body.text) continue;
            texts.push_back({plainWords(*fact.body.text), fact.id, fact.happenedAt, fact.id.uuid});
        }
        return texts;
    }

    static std::optional<EntryId> bestNote(const std::vector<Text>& texts, const Typed& typed) {
        const Text* best = nullptr;
        int most = 0;
        for (const auto& text : texts) {
            int count = 0;
            for (std::size_t i = 0; i < typed.words.size(); ++i) {
                count += typed.holds(text.words, i, true) ? 1 : 0;
            }
            const bool isBetter = count > most || (count == most && best != nullptr &&
                                                   std::pair(best->at, best->origin) <
                                                       std::pair(text.at, text.origin));
            if (count == 0 || !isBetter) continue;
            best = &text;
            most = count;
        }
        return best == nullptr ? std::nullopt : best->entry;
    }

    Book& book_;
    const Profiles& profiles_;
    std::vector<Kept> everyone_;
    std::map<EnclosureId, Enclosure> homes_;
};

// --- random books --------------------------------------------------------------------------------

class Pages {
public:
    Pages() : room(*rc::gen::arbitrary<std::uint64_t>()) {
        must(room.book.connection().execute("PRAGMA synchronous = OFF"));
        for (const char* number : {"214", "21", "007", "KR-214", "b 7", ""}) {
            subjects.push_back(room.add(number, anySpecies()));
        }
        homes.push_back(EnclosureId{room.book.newId()});
        const Tag tag{"7Q2MZX89", Millimetres{20}, subjects[1], std::nullopt};
        record(SetDraft{ThingType::tag, tagThing(tag.code), toFields(tag)});
    }

    void step() {
        room.clock.set({room.clock.now().ms + *rc::gen::inRange(1, 90'000'000)});
        const auto subject = *rc::gen::elementOf(subjects);
        const auto facts = history(room.book, subject, 20).value();
        switch (*rc::gen::inRange(0, 10)) {
            case 0: edit(subject); break;
            case 1: editHome(); break;
            case 2:
                if (!facts.empty()) amend(*rc::gen::elementOf(facts));
                break;
            case 3:
                if (!facts.empty()) {
                    const Fact fact = *rc::gen::elementOf(facts);
                    record(RetractDraft{fact.id});
                }
                break;
            case 4:
                if (!facts.empty()) must(room.book.undo());
                break;
            default: note(subject);
        }
    }

    TestBook room;
    std::vector<SubjectId> subjects;
    std::vector<EnclosureId> homes;

private:
    void record(const Draft& draft) {
        const auto written = room.book.record(draft);
        // Nothing happens to a subject whose fields were all taken back.
        if (!written && written.error().trouble != Trouble::notFound) must(written);
    }
    static std::string anySpecies() {
        return *rc::gen::element<std::string>("Brachypelma hamorii", "Haplopelma lividum",
                                              "Grammostola pulchra", "Novagenus rosea", "");
    }
    void note(SubjectId subject) {
        FactBody body;
        body.text = anyPhrase(4);
        if (*rc::gen::inRange(0, 4) == 0) body.confidential = true;
        const auto kind = *rc::gen::element(FactKind::note, FactKind::watered);
        record(FactDraft{subject, kind, body, std::nullopt});
    }
    void amend(const Fact& fact) {
        auto body = fact.body;
        body.text = *rc::gen::inRange(0, 3) == 0 && fact.kind != FactKind::note
                        ? std::nullopt
                        : std::optional(anyPhrase(3));
        record(AmendDraft{fact.id, body,
                          Instant{fact.happenedAt.ms - *rc::gen::inRange(0, 9) * msPerDay}});
    }
    void edit(SubjectId subject) {
        FieldValues fields{
            {"species", anySpecies()},
            {"note", anyPhrase(2)},
            {"source", anyPhrase(2)},
            {"place", *rc::gen::element<std::string>("a / 7", "Shelf", "red / 2", "")},
            {"standing", *rc::gen::element<std::string>("here", "on_loan", "dead")}};
        if (*rc::gen::arbitrary<bool>()) {
            const EnclosureId home = *rc::gen::elementOf(homes);
            fields["enclosure"] = home.uuid.text();
        }
        record(SetDraft{ThingType::subject, subject.uuid, std::move(fields)});
    }
    void editHome() {
        if (*rc::gen::arbitrary<bool>()) homes.push_back(EnclosureId{room.book.newId()});
        Enclosure home;
        home.name = *rc::gen::element<std::string>("E1", "E21");
        home.place = Place::parse(*rc::gen::element<std::string>("a / 1", "knee / 7", ""));
        home.note = anyPhrase(2);
        const EnclosureId id = *rc::gen::elementOf(homes);
        auto fields = toFields(home);
        fields.try_emplace("name", home.name);
        record(SetDraft{ThingType::enclosure, id.uuid, fields});
    }
};

std::string told(const std::string& number, int by, const std::optional<EntryId>& entry) {
    return number + " " + std::to_string(by) + " " + (entry ? entry->text() : "-") + "; ";
}

/// What was found and what the scan found, as text.
std::pair<std::string, std::string> foundAndScanned(Pages& pages, const std::string& typed) {
    std::string found;
    const auto findings = search(pages.room.book, shipped(), typed);
    if (!findings) return {findings.error().message.id, ""};
    for (const auto& each : findings->found) {
        found += told(each.number, static_cast<int>(each.by), each.entry);
    }
    std::string scanned;
    for (const auto& each : Scan(pages.room.book, shipped()).find(std::string(trimmed(typed)))) {
        scanned += told(each.number, each.by, each.entry);
    }
    return {found, scanned};
}

}  // namespace

int main() {
    bool ok = true;
    ok &= rc::check("finds what a plain scan of the book finds, in the same order", [] {
        Pages pages;
        for (int n = *rc::gen::inRange(1, 40); n > 0; --n) pages.step();
        for (int n = 0; n < 12; ++n) {
            auto typed = anyPhrase(3);
            if (*rc::gen::inRange(0, 3) == 0) typed = typed.substr(0, typed.size() / 2 + 1);
            if (!isUtf8(typed)) continue;
            const auto [found, scanned] = foundAndScanned(pages, typed);
            if (found != scanned) RC_LOG() << "typed: " << typed << "\n";
            RC_ASSERT(found == scanned);
        }
        RC_ASSERT(check(pages.room.book).value().isSound());
    });
    ok &= rc::check("whatever is typed is only words", [] {
        static Pages pages;
        pages.step();
        const auto before = dumpOf(pages.room.book);
        std::string typed;
        for (int n = *rc::gen::inRange(0, 12); n > 0; --n) {
            switch (*rc::gen::inRange(0, 3)) {
                case 0: typed += *rc::gen::elementOf(vocabulary); break;
                case 1: typed += *rc::gen::elementOf(hostile); break;
                default: typed += *rc::gen::arbitrary<std::string>();
            }
        }
        if (*rc::gen::inRange(0, 9) == 0) typed += std::string(100'000, 'x');
        RC_ASSERT(search(pages.room.book, shipped(), typed).has_value());
        RC_ASSERT(dumpOf(pages.room.book) == before);
    });
    return ok ? 0 : 1;
}
