// A mapping over a sheet: what each column becomes, and what has to be asked.
#include <algorithm>
#include <set>

#include "base/text.h"
#include "exchange/cell_dates.h"
#include "exchange/cell_measures.h"
#include "exchange/csv.h"
#include "exchange/mapping_reading.h"
#include "exchange/mapping_terms.h"

namespace burrow::exchange {
namespace {

using Type = MapTarget::Type;
using Kind = MapQuestion::Kind;

constexpr std::size_t mostSamples = 3;
constexpr std::size_t mostSuggested = 4;
/// More spellings than that nobody answers one by one.
constexpr std::size_t mostAsked = 200;

class Review {
public:
    Review(const Mapping& mapping, const Sheet& sheet, const Profiles& profiles)
        : mapping_(mapping), sheet_(sheet), profiles_(profiles) {}

    MapReview run() {
        askForMissing();
        for (std::size_t i = 0; i < mapping_.columns.size(); ++i) {
            review_.columns.push_back(preview(i));
        }
        askForSpecies();
        std::stable_sort(review_.questions.begin(), review_.questions.end(),
                         [](const auto& a, const auto& b) { return a.isOpen > b.isOpen; });
        return std::move(review_);
    }

private:
    void ask(MapQuestion question, const char* text) {
        question.text = {text,
                         {{"value", question.value},
                          {"count", question.count},
                          {"column", question.column ? mapping_.columns[*question.column].column
                                                     : std::string()}}};
        review_.questions.push_back(std::move(question));
    }

    [[nodiscard]] bool isTaken(std::string_view target) const {
        return std::any_of(mapping_.columns.begin(), mapping_.columns.end(),
                           [&](const auto& c) { return !c.isLeftOut && c.target == target; });
    }

    void askForMissing() {
        for (const auto& target : mapTargets(mapping_.kind)) {
            if (!target.isRequired || isTaken(target.name)) continue;
            const bool isCode = target.name == "code" && mapping_.kind == CsvKind::animals;
            if (isCode && mapping_.numberFrom) continue;
            if (target.name == "event") {
                if (mapping_.event.empty()) askForEvent();
                continue;
            }
            MapQuestion question{Kind::missing, {}, std::string(target.name)};
            question.isOpen = true;
            ask(std::move(question), isCode ? "map.ask.noCode" : "map.ask.missing");
        }
    }

    void askForEvent() {
        MapQuestion question{Kind::event, {}, {}};
        question.isOpen = true;
        question.choices = wordsOf(CsvKind::events, "event");
        const bool isMeasured = isTaken("span_mm") && !isTaken("prey") && !isTaken("outcome");
        if (isMeasured) {
            std::stable_partition(question.choices.begin(), question.choices.end(),
                                  [](const std::string& kind) { return kind == "measured"; });
        }
        ask(std::move(question), "map.ask.event");
    }

    ColumnPreview preview(std::size_t at) {
        const auto& column = mapping_.columns[at];
        const auto* target = findTarget(mapping_.kind, column.target);
        ColumnPreview preview;
        std::set<std::string> seen;
        std::map<std::string, std::int64_t> unreadWords;
        DateEvidence dates;
        std::int64_t withoutUnit = 0;
        for (const auto& row : sheet_.rows) {
            if (at >= row.size() || row[at].empty()) continue;
            const auto& cell = row[at];
            ++preview.filled;
            const auto value = readCell(mapping_, column, cell);
            if (!value) ++preview.unread;
            if (value && value->empty()) ++preview.unknown;
            if (!value && target != nullptr && target->type == Type::word) ++unreadWords[cell];
            if (!saysUnknown(cell)) dates.add(cell);
            if (const auto length = readLength(cell); length && !length->unit) ++withoutUnit;
            if (preview.samples.size() < mostSamples && seen.insert(cell).second) {
                preview.samples.push_back(
                    {std::string(plainText(cell)), becomes(column, value.value_or(""))});
            }
        }
        if (target == nullptr || column.isLeftOut) return preview;
        askForTwice(at, *target);
        if (target->type == Type::day || target->type == Type::moment) askForOrder(at, dates);
        if (target->type == Type::length && withoutUnit > 0) askForUnit(at, withoutUnit);
        askForWords(at, unreadWords);
        return preview;
    }

    [[nodiscard]] std::string becomes(const ColumnMapping& column, std::string value) const {
        if (column.isLeftOut) return {};
        if (column.target != "species") return value;
        const auto meant = mapping_.species.find(value);
        return meant == mapping_.species.end() ? value : meant->second;
    }

    void askForTwice(std::size_t at, const MapTarget& target) {
        if (target.isJoined) return;
        for (std::size_t before = 0; before < at; ++before) {
            const auto& other = mapping_.columns[before];
            if (other.isLeftOut || other.target != target.name) continue;
            MapQuestion question{Kind::twice, at, other.column};
            question.isOpen = true;
            return ask(std::move(question), "map.ask.twice");
        }
    }

    void askForOrder(std::size_t at, const DateEvidence& dates) {
        if (mapping_.columns[at].date) return;
        MapQuestion question{Kind::dateOrder, at, {}};
        question.isOpen = true;
        const bool isMixed = dates.onlyDayFirst > 0 && dates.onlyMonthFirst > 0;
        question.count =
            isMixed ? std::min(dates.onlyDayFirst, dates.onlyMonthFirst) : dates.either;
        question.choices = {std::string(name(DateOrder::dayFirst)),
                            std::string(name(DateOrder::monthFirst))};
        if (dates.onlyMonthFirst > dates.onlyDayFirst || othersAre(DateOrder::monthFirst)) {
            std::reverse(question.choices.begin(), question.choices.end());
        }
        ask(std::move(question), isMixed ? "map.ask.datesMixed" : "map.ask.dates");
    }

    /// What the other columns of dates are; whoever wrote one wrote the others too.
    [[nodiscard]] bool othersAre(DateOrder order) const {
        return std::any_of(mapping_.columns.begin(), mapping_.columns.end(),
                           [&](const auto& column) { return column.date == order; });
    }

    void askForUnit(std::size_t at, std::int64_t count) {
        if (mapping_.columns[at].unit) return;
        MapQuestion question{Kind::unit, at, {}, count};
        question.isOpen = true;
        std::vector<double> values;
        for (const auto& row : sheet_.rows) {
            const auto length = at < row.size() ? readLength(row[at]) : std::nullopt;
            if (length && !length->unit) values.push_back(length->value);
        }
        std::nth_element(values.begin(), values.begin() + static_cast<long>(values.size() / 2),
                         values.end());
        // Leg spans of 15 are centimetres more often than millimetres or inches; it is asked all the
        // same. Common practice, no source.
        const double middle = values[values.size() / 2];
        question.choices = {"mm", "cm", "in"};
        if (middle <= 25) question.choices = {"cm", "mm", "in"};
        if (middle <= 7) question.choices = {"in", "cm", "mm"};
        ask(std::move(question), "map.ask.unit");
    }

    void askForWords(std::size_t at, const std::map<std::string, std::int64_t>& words) {
        for (const auto& [word, count] : words) {
            if (++asked_ > mostAsked) return;
            MapQuestion question{Kind::word, at, std::string(plainText(word)), count};
            question.choices = wordsOf(mapping_.kind, mapping_.columns[at].target);
            const auto wanted = normalTerm(question.value);
            std::stable_sort(question.choices.begin(), question.choices.end(),
                             [&](const std::string& a, const std::string& b) {
                                 return editDistance(wanted, a) < editDistance(wanted, b);
                             });
            ask(std::move(question), "map.ask.word");
        }
    }

    void askForSpecies() {
        if (!isTaken("species")) return;
        std::map<std::string, std::int64_t> unknown;
        for (const auto& row : sheet_.rows) {
            const auto written = speciesWritten(mapping_, row);
            // Who chose a name for a spelling, be it the spelling itself, has answered.
            if (written.empty() || mapping_.species.contains(written)) continue;
            if (profiles_.find(written) == nullptr) ++unknown[written];
        }
        for (const auto& [written, count] : unknown) {
            if (++asked_ > mostAsked) return;
            MapQuestion question{Kind::species, {}, written, count};
            question.choices = profiles_.suggest(written, mostSuggested);
            ask(std::move(question),
                question.choices.empty() ? "map.ask.speciesUnknown" : "map.ask.species");
        }
    }

    const Mapping& mapping_;
    const Sheet& sheet_;
    const Profiles& profiles_;
    MapReview review_;
    std::size_t asked_ = 0;
};

}  // namespace

MapReview reviewMapping(const Mapping& mapping, const Sheet& sheet, const Profiles& profiles) {
    return Review(mapping, sheet, profiles).run();
}

}  // namespace burrow::exchange
