#include "terminal/describe_sex.h"

#include "room/sex_words.h"

namespace burrow::terminal {
namespace {

using nlohmann::json;

template <class T>
json orNull(const std::optional<T>& value) {
    if (!value) return nullptr;
    if constexpr (std::is_same_v<T, Millimetres>) {
        return value->value;
    } else if constexpr (std::is_same_v<T, EntryId>) {
        return value->text();
    } else if constexpr (std::is_same_v<T, CivilDay>) {
        return isoDate(*value);
    } else if constexpr (std::is_enum_v<T>) {
        return std::string(name(*value));
    } else {
        return *value;
    }
}

json toJson(const sexing::Factor& line, const Console& console) {
    const auto& seen = line.seen;
    return {{"entry", orNull(seen.entry)},
            {"day", isoDate(seen.day)},
            {"look", std::string(name(seen.look))},
            {"says", std::string(name(seen.says))},
            {"clarity", orNull(seen.clarity)},
            {"judge", seen.judge.empty() ? json() : json(seen.judge)},
            {"moult_day", orNull(seen.moultDay)},
            {"carapace_mm", orNull(seen.carapace)},
            {"ratio", line.ratio},
            {"row", line.row.empty() ? json() : json(line.row)},
            {"source", line.source.empty() ? json() : json(line.source)},
            {"part", std::string(sexing::name(line.part))},
            {"weight", line.weight},
            {"log_odds", line.logOdds},
            {"p_before", line.before},
            {"p_after", line.after},
            {"text", console.say(line.why)},
            {"counted", console.say(line.counted)}};
}

json toJson(const std::vector<growth::Measured>& values) {
    json list = json::array();
    for (const auto& value : values) {
        list.push_back({{"entry", value.entry.text()},
                        {"day", isoDate(value.day)},
                        {"mm", value.size.value},
                        {"method", orNull(value.method)},
                        {"moult", value.moult},
                        {"of_the_moult", value.isOfTheMoult},
                        {"factor", orNull(value.factor)}});
    }
    return list;
}

}  // namespace

json toJson(const SexCase& at, const Console& console) {
    const auto& finding = at.finding;
    json value{{"code", at.kept.subject.number},
               {"species", at.kept.subject.species},
               {"recorded", std::string(name(at.kept.subject.sex))},
               {"verdict", std::string(name(finding.verdict))},
               {"stop", orNull(finding.stop)},
               {"p_female", finding.female},
               {"prior", finding.prior},
               {"settled", finding.isSettled()},
               {"decisive", finding.isDecisive},
               {"ledger", json::array()},
               {"conflicts", json::array()},
               {"would_settle", json::array()},
               {"text", console.say(chanceMessage(finding.female))}};
    for (const auto& line : finding.ledger) value["ledger"].push_back(toJson(line, console));
    for (const auto& conflict : finding.conflicts) {
        value["conflicts"].push_back({{"kind", std::string(sexing::name(conflict.kind))},
                                      {"lines", conflict.factors},
                                      {"text", console.say(conflict.why)}});
    }
    for (const auto& what : finding.wouldSettle) {
        value["would_settle"].push_back({{"what", std::string(sexing::name(what.what))},
                                         {"p_if_female", orNull(what.ifFemale)},
                                         {"p_if_male", orNull(what.ifMale)},
                                         {"moult", orNull(what.moult)},
                                         {"text", console.say(what.why)}});
    }
    return value;
}

json toJson(const ToBeSexed& row, const Subject& subject) {
    return {{"code", subject.number},
            {"species", subject.species},
            {"moult", row.moult.moult.text()},
            {"day", isoDate(row.moult.day)},
            {"carapace_mm", orNull(row.moult.carapace)},
            {"photos", row.moult.pictures.size()},
            {"waiting", row.waiting},
            {"p_female", row.female},
            {"bits", row.bits}};
}

json toJson(const Sizes& sizes, const Console& console) {
    json value{{"carapace", toJson(sizes.carapaces)},
               {"span", toJson(sizes.spans)},
               {"pairs", sizes.pairs.size()},
               {"span_by_carapace", nullptr},
               {"estimate", nullptr},
               {"text", sizes.says.id.empty() ? std::string() : console.say(sizes.says)}};
    if (sizes.spanByCarapace) {
        const auto& line = sizes.spanByCarapace->line();
        value["span_by_carapace"] = {{"intercept", line.intercept},
                                     {"slope", line.slope},
                                     {"intercept_error", line.interceptError},
                                     {"slope_error", line.slopeError},
                                     {"residual", line.residual}};
    }
    if (sizes.estimate) {
        value["estimate"] = {
            {"span_mm", sizes.estimate->span.value},
            {"interval95",
             {sizes.estimate->interval95.least.value, sizes.estimate->interval95.most.value}},
            {"beyond", sizes.estimate->isBeyond}};
    }
    return value;
}

}  // namespace burrow::terminal
