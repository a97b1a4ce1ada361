// Which words are commonly written in the columns of a spreadsheet.
#include <algorithm>
#include <array>

#include "base/text.h"
#include "exchange/mapping_terms.h"
#include "model/fact.h"

namespace burrow::exchange {
namespace {

struct OtherWord {
    std::string_view target;
    std::string_view written;
    std::string_view meant;
};

// Besides those that bring() reads anyway. A word after a comma goes into the status.
constexpr std::array otherWords{
    OtherWord{"sex", "\xE2\x99\x80", "female"},
    OtherWord{"sex", "\xE2\x99\x82", "male"},
    OtherWord{"sex", "fem", "female"},
    OtherWord{"sex", "females", "female"},
    OtherWord{"sex", "males", "male"},
    OtherWord{"sex", "adult_female", "female"},
    OtherWord{"sex", "subadult_female", "female"},
    OtherWord{"sex", "mature_female", "female"},
    OtherWord{"sex", "mf", "female"},
    OtherWord{"sex", "af", "female"},
    OtherWord{"sex", "mm", "male, mature"},
    OtherWord{"sex", "mature_male", "male, mature"},
    OtherWord{"sex", "not_sexed", "unknown"},
    OtherWord{"sex", "us", "unknown"},
    OtherWord{"sex", "sling", "unknown"},
    OtherWord{"sex", "unk", "unknown"},
    OtherWord{"status", "active", "here"},
    OtherWord{"status", "in_collection", "here"},
    OtherWord{"status", "owned", "here"},
    OtherWord{"status", "living", "here"},
    OtherWord{"status", "healthy", "here"},
    OtherWord{"status", "ok", "here"},
    OtherWord{"status", "deceased", "dead"},
    OtherWord{"status", "rip", "dead"},
    OtherWord{"status", "d", "dead"},
    OtherWord{"status", "traded", "given"},
    OtherWord{"status", "gifted", "given"},
    OtherWord{"status", "out_on_loan", "on_loan"},
    OtherWord{"status", "breeding_loan", "on_loan"},
    OtherWord{"outcome", "yes", "ate"},
    OtherWord{"outcome", "y", "ate"},
    OtherWord{"outcome", "true", "ate"},
    OtherWord{"outcome", "x", "ate"},
    OtherWord{"outcome", "1", "ate"},
    OtherWord{"outcome", "ok", "ate"},
    OtherWord{"outcome", "\xE2\x9C\x93", "ate"},
    OtherWord{"outcome", "no", "refused"},
    OtherWord{"outcome", "n", "refused"},
    OtherWord{"outcome", "false", "refused"},
    OtherWord{"outcome", "0", "refused"},
    OtherWord{"outcome", "rejected", "refused"},
    OtherWord{"outcome", "not_eaten", "refused"},
    OtherWord{"outcome", "half", "part"},
    OtherWord{"outcome", "partial", "part"},
    OtherWord{"event", "molt", "moulted"},
    OtherWord{"event", "molted", "moulted"},
    OtherWord{"event", "moulting", "moulted"},
    OtherWord{"event", "molting", "moulted"},
    OtherWord{"event", "shed", "moulted"},
    OtherWord{"event", "ecdysis", "moulted"},
    OtherWord{"event", "feed", "offered"},
    OtherWord{"event", "food", "offered"},
    OtherWord{"event", "watering", "watered"},
    OtherWord{"event", "misted", "dampened"},
    OtherWord{"event", "misting", "dampened"},
    OtherWord{"event", "sprayed", "dampened"},
    OtherWord{"event", "premolt", "premoult_sign"},
    OtherWord{"event", "pre_molt", "premoult_sign"},
    OtherWord{"event", "pre_moult", "premoult_sign"},
    OtherWord{"event", "measurement", "measured"},
    OtherWord{"event", "size", "measured"},
    OtherWord{"event", "weighed", "measured"},
    OtherWord{"event", "rehome", "rehoused"},
    OtherWord{"event", "new_enclosure", "rehoused"},
    OtherWord{"event", "sexing", "sexed"},
    OtherWord{"event", "comment", "note"},
    OtherWord{"event", "observation", "note"},
    OtherWord{"method", "estimate", "eye"},
    OtherWord{"method", "estimated", "eye"},
    OtherWord{"method", "tape", "ruler"},
    OtherWord{"method", "calipers", "ruler"},
};

template <class Term>
std::optional<std::string> spelt(std::optional<Term> term) {
    return term ? std::optional<std::string>(name(*term)) : std::nullopt;
}

/// The one word, where bring() would read it.
std::optional<std::string> readByItself(std::string_view target, std::string_view word) {
    if (target == "sex") return spelt(parseTerm<Sex>(word));
    if (target == "outcome") return spelt(parseTerm<Outcome>(word));
    if (target == "method") return spelt(parseTerm<Method>(word));
    if (target == "look") return spelt(parseTerm<Look>(word));
    if (target == "clarity") return spelt(parseTerm<Clarity>(word));
    if (target == "event") {
        const auto kind = parseFactKind(word);
        return kind ? std::optional<std::string>(spec(*kind).name) : std::nullopt;
    }
    if (word == "quarantine" || word == "quarantined") return "quarantine";
    if (word == "mature") return "mature";
    const auto standing = spelt(parseTerm<Standing>(word));
    return standing ? standing : spelt(parseTerm<Form>(word));
}

}  // namespace

std::vector<std::string> wordsOf(CsvKind kind, std::string_view target) {
    if (target == "sex") return {"female", "male", "unknown"};
    if (target == "outcome") return {"ate", "part", "refused", "left_in"};
    if (target == "method") return {"eye", "ruler", "photo"};
    if (target == "look") return {"moult", "underside", "mature", "colour"};
    if (target == "clarity") return {"barely", "partly", "fairly", "clearly", "beyond_doubt"};
    if (target == "status" && kind == CsvKind::animals) {
        return {"here", "on_loan", "dead", "sold", "given", "group", "lot", "quarantine", "mature"};
    }
    std::vector<std::string> kinds;
    if (target == "event") {
        for (const auto& kindSpec : factKinds()) kinds.emplace_back(kindSpec.name);
    }
    return kinds;
}

std::optional<std::string> wordMeant(CsvKind kind, std::string_view target,
                                     std::string_view written) {
    const auto word = normalTerm(written);
    if (auto own = readByItself(target, word)) return own;
    for (const auto& other : otherWords) {
        if (other.target == target && other.written == word) return std::string(other.meant);
    }
    const bool isOne = written.find(',') == std::string_view::npos;
    if (target != "status" || isOne) return std::nullopt;
    // Several words may share the status: "alive, quarantine".
    std::string all;
    for (const auto part : split(written, ',')) {
        const auto meant = wordMeant(kind, target, part);
        if (!meant) return std::nullopt;
        all += (all.empty() ? "" : ", ") + *meant;
    }
    return all;
}

bool saysUnknown(std::string_view cell) {
    constexpr std::array words{"?",   "??",           "-",           "--",   "n/a",
                               "na",  "n.a.",         "tbd",         "none", "unknown",
                               "unk", "\xE2\x80\x93", "\xE2\x80\x94"};
    const auto word = lowerAscii(trimmed(cell));
    return std::find(words.begin(), words.end(), word) != words.end();
}

}  // namespace burrow::exchange
