// What columns of a spreadsheet are commonly called.
#include "exchange/mapping_terms.h"

#include <algorithm>
#include <array>
#include <span>

#include "base/text.h"

namespace burrow::exchange {
namespace {

struct ColumnName {
    std::string_view name;  ///< in lower case, words parted by one space, without a unit
    std::string_view target;
};

constexpr std::array animalNames{
    ColumnName{"code", "code"},
    ColumnName{"id", "code"},
    ColumnName{"number", "code"},
    ColumnName{"no", "code"},
    ColumnName{"nr", "code"},
    ColumnName{"num", "code"},
    ColumnName{"#", "code"},
    ColumnName{"tag", "code"},
    ColumnName{"label", "code"},
    ColumnName{"specimen", "code"},
    ColumnName{"animal", "code"},
    ColumnName{"animal id", "code"},
    ColumnName{"reference", "code"},
    ColumnName{"species", "species"},
    ColumnName{"scientific name", "species"},
    ColumnName{"latin name", "species"},
    ColumnName{"latin", "species"},
    ColumnName{"binomial", "species"},
    ColumnName{"genus", "species"},
    ColumnName{"genus species", "species"},
    ColumnName{"epithet", "species"},
    ColumnName{"sex", "sex"},
    ColumnName{"gender", "sex"},
    ColumnName{"hatched on", "hatched_on"},
    ColumnName{"hatched", "hatched_on"},
    ColumnName{"hatch date", "hatched_on"},
    ColumnName{"hatch", "hatched_on"},
    ColumnName{"born", "hatched_on"},
    ColumnName{"birth", "hatched_on"},
    ColumnName{"birthday", "hatched_on"},
    ColumnName{"date of birth", "hatched_on"},
    ColumnName{"dob", "hatched_on"},
    ColumnName{"acquired on", "acquired_on"},
    ColumnName{"acquired", "acquired_on"},
    ColumnName{"date acquired", "acquired_on"},
    ColumnName{"acquisition date", "acquired_on"},
    ColumnName{"bought", "acquired_on"},
    ColumnName{"purchased", "acquired_on"},
    ColumnName{"purchase date", "acquired_on"},
    ColumnName{"date purchased", "acquired_on"},
    ColumnName{"arrived", "acquired_on"},
    ColumnName{"arrival", "acquired_on"},
    ColumnName{"since", "acquired_on"},
    ColumnName{"got", "acquired_on"},
    ColumnName{"source", "source"},
    ColumnName{"from", "source"},
    ColumnName{"origin", "source"},
    ColumnName{"breeder", "source"},
    ColumnName{"seller", "source"},
    ColumnName{"vendor", "source"},
    ColumnName{"supplier", "source"},
    ColumnName{"bought from", "source"},
    ColumnName{"status", "status"},
    ColumnName{"state", "status"},
    ColumnName{"quarantined on", "quarantined_on"},
    ColumnName{"quarantined since", "quarantined_on"},
    ColumnName{"in quarantine since", "quarantined_on"},
    ColumnName{"place", "place"},
    ColumnName{"location", "place"},
    ColumnName{"where", "place"},
    ColumnName{"room", "room"},
    ColumnName{"rack", "rack"},
    ColumnName{"shelf", "shelf"},
    ColumnName{"position", "position"},
    ColumnName{"enclosure", "enclosure"},
    ColumnName{"tub", "enclosure"},
    ColumnName{"tank", "enclosure"},
    ColumnName{"terrarium", "enclosure"},
    ColumnName{"mother", "mother"},
    ColumnName{"dam", "mother"},
    ColumnName{"father", "father"},
    ColumnName{"sire", "father"},
    ColumnName{"count", "count"},
    ColumnName{"quantity", "count"},
    ColumnName{"qty", "count"},
    ColumnName{"how many", "count"},
    ColumnName{"note", "note"},
    ColumnName{"notes", "note"},
    ColumnName{"comment", "note"},
    ColumnName{"comments", "note"},
    ColumnName{"remark", "note"},
    ColumnName{"remarks", "note"},
    ColumnName{"size", "span_mm"},
    ColumnName{"span", "span_mm"},
    ColumnName{"leg span", "span_mm"},
    ColumnName{"legspan", "span_mm"},
    ColumnName{"dls", "span_mm"},
    ColumnName{"current size", "span_mm"},
    ColumnName{"carapace", "carapace_mm"},
    ColumnName{"weight", "mass_g"},
    ColumnName{"mass", "mass_g"},
    ColumnName{"last moult", "last_moult"},
    ColumnName{"last molt", "last_moult"},
    ColumnName{"last moulted", "last_moult"},
    ColumnName{"last molted", "last_moult"},
    ColumnName{"moulted", "last_moult"},
    ColumnName{"molted", "last_moult"},
    ColumnName{"last shed", "last_moult"},
    ColumnName{"last fed", "last_fed"},
    ColumnName{"last feeding", "last_fed"},
    ColumnName{"last meal", "last_fed"},
    ColumnName{"fed", "last_fed"},
    ColumnName{"fed on", "last_fed"},
    ColumnName{"last watered", "last_watered"},
    ColumnName{"last water", "last_watered"},
    ColumnName{"watered", "last_watered"},
};

constexpr std::array enclosureNames{
    ColumnName{"code", "code"},
    ColumnName{"name", "code"},
    ColumnName{"id", "code"},
    ColumnName{"number", "code"},
    ColumnName{"no", "code"},
    ColumnName{"enclosure", "code"},
    ColumnName{"tub", "code"},
    ColumnName{"length", "length_mm"},
    ColumnName{"long", "length_mm"},
    ColumnName{"width", "width_mm"},
    ColumnName{"wide", "width_mm"},
    ColumnName{"depth", "width_mm"},
    ColumnName{"height", "height_mm"},
    ColumnName{"high", "height_mm"},
    ColumnName{"substrate", "substrate_mm"},
    ColumnName{"substrate depth", "substrate_mm"},
    ColumnName{"soil", "substrate_mm"},
    ColumnName{"place", "place"},
    ColumnName{"location", "place"},
    ColumnName{"room", "room"},
    ColumnName{"rack", "rack"},
    ColumnName{"shelf", "shelf"},
    ColumnName{"position", "position"},
    ColumnName{"note", "note"},
    ColumnName{"notes", "note"},
    ColumnName{"comment", "note"},
    ColumnName{"comments", "note"},
};

constexpr std::array eventNames{
    ColumnName{"code", "code"},
    ColumnName{"id", "code"},
    ColumnName{"number", "code"},
    ColumnName{"no", "code"},
    ColumnName{"nr", "code"},
    ColumnName{"#", "code"},
    ColumnName{"animal", "code"},
    ColumnName{"animal id", "code"},
    ColumnName{"tag", "code"},
    ColumnName{"specimen", "code"},
    ColumnName{"at", "at"},
    ColumnName{"on", "at"},
    ColumnName{"date", "at"},
    ColumnName{"day", "at"},
    ColumnName{"when", "at"},
    ColumnName{"date time", "at"},
    ColumnName{"time", "time"},
    ColumnName{"event", "event"},
    ColumnName{"type", "event"},
    ColumnName{"action", "event"},
    ColumnName{"activity", "event"},
    ColumnName{"what", "event"},
    ColumnName{"what happened", "event"},
    ColumnName{"prey", "prey"},
    ColumnName{"food", "prey"},
    ColumnName{"feeder", "prey"},
    ColumnName{"prey item", "prey"},
    ColumnName{"fed with", "prey"},
    ColumnName{"prey size", "prey_mm"},
    ColumnName{"count", "count"},
    ColumnName{"quantity", "count"},
    ColumnName{"qty", "count"},
    ColumnName{"amount", "count"},
    ColumnName{"how many", "count"},
    ColumnName{"outcome", "outcome"},
    ColumnName{"result", "outcome"},
    ColumnName{"ate", "outcome"},
    ColumnName{"eaten", "outcome"},
    ColumnName{"accepted", "outcome"},
    ColumnName{"response", "outcome"},
    ColumnName{"size", "span_mm"},
    ColumnName{"span", "span_mm"},
    ColumnName{"leg span", "span_mm"},
    ColumnName{"legspan", "span_mm"},
    ColumnName{"dls", "span_mm"},
    ColumnName{"carapace", "carapace_mm"},
    ColumnName{"weight", "mass_g"},
    ColumnName{"mass", "mass_g"},
    ColumnName{"method", "method"},
    ColumnName{"sex", "sex"},
    ColumnName{"enclosure", "enclosure"},
    ColumnName{"tub", "enclosure"},
    ColumnName{"place", "place"},
    ColumnName{"buyer", "party"},
    ColumnName{"party", "party"},
    ColumnName{"price", "price"},
    ColumnName{"cause", "cause"},
    ColumnName{"until", "until"},
    ColumnName{"note", "note"},
    ColumnName{"notes", "note"},
    ColumnName{"comment", "note"},
    ColumnName{"comments", "note"},
    ColumnName{"remark", "note"},
    ColumnName{"remarks", "note"},
};

std::span<const ColumnName> namesFor(CsvKind kind) {
    switch (kind) {
        case CsvKind::animals: return animalNames;
        case CsvKind::enclosures: return enclosureNames;
        case CsvKind::events: return eventNames;
        case CsvKind::tags:
        case CsvKind::settings: break;
    }
    return {};
}

/// "Leg-Span (cm):" as "leg span".
std::string plainColumn(std::string_view column) {
    std::vector<std::string> words(1);
    for (const char c : lowerAscii(column)) {
        if ((c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '#') {
            words.back() += c;
        } else if (!words.back().empty()) {
            words.emplace_back();
        }
    }
    constexpr std::array units{"mm", "cm",   "in",    "inch",        "inches",
                               "g",  "gram", "grams", "millimetres", "centimetres"};
    std::erase_if(words, [&](const std::string& word) {
        return word.empty() || std::find(units.begin(), units.end(), word) != units.end();
    });
    std::string plain;
    for (const auto& word : words) plain += (plain.empty() ? "" : " ") + word;
    return plain;
}

/// How many slips a word of that length is forgiven.
std::size_t slipsFor(std::size_t length) { return length < 5 ? 0 : 1 + length / 10; }

}  // namespace

std::optional<std::string> targetNamed(CsvKind kind, std::string_view column) {
    // A column of the table itself is what it says: prey_mm, hatched_on.
    if (const auto* own = findTarget(kind, normalTerm(column))) return std::string(own->name);
    const auto wanted = plainColumn(column);
    if (wanted.empty()) return std::nullopt;
    const ColumnName* closest = nullptr;
    std::size_t slips = 0;
    for (const auto& known : namesFor(kind)) {
        const auto distance = editDistance(wanted, known.name);
        if (distance > slipsFor(known.name.size())) continue;
        if (closest == nullptr || distance < slips) {
            closest = &known;
            slips = distance;
        }
    }
    return closest == nullptr ? std::nullopt : std::optional(std::string(closest->target));
}

}  // namespace burrow::exchange
