#include "room/mats.h"

#include <fmt/format.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "base/text.h"
#include "journal/book.h"

namespace burrow {
namespace {

using measure::MatPaper;

constexpr std::string_view unit = "mm";

std::string_view paperText(MatPaper paper) { return paper == MatPaper::a5 ? "a5" : "a4"; }

/// A number with its unit, or without.
std::optional<Millimetres> readLength(std::string_view text) {
    auto number = std::string(trimmed(text));
    if (lowerAscii(number).ends_with(unit)) number.resize(number.size() - unit.size());
    std::replace(number.begin(), number.end(), ',', '.');
    const auto value = parseNumber(trimmed(number));
    if (!value) return std::nullopt;
    return Millimetres{*value};
}

}  // namespace

std::string settingOf(const measure::MatName& name) { return std::string(setting::mat) + name; }

std::string matText(const PrintedMat& mat) {
    auto text = std::string(paperText(mat.paper));
    if (mat.bar) text += fmt::format(" {} {}", mat.bar->value, unit);
    return text;
}

std::optional<PrintedMat> readMat(std::string_view setting, std::string_view text) {
    if (!setting.starts_with(setting::mat)) return std::nullopt;
    const auto name = setting.substr(setting::mat.size());
    const auto space = text.find(' ');
    const auto paper = text.substr(0, space);
    if (!measure::isMatName(name) || (paper != "a5" && paper != "a4")) return std::nullopt;
    PrintedMat mat{std::string(name), paper == "a5" ? MatPaper::a5 : MatPaper::a4, std::nullopt};
    if (space == std::string_view::npos) return mat;
    mat.bar = readLength(text.substr(space));
    if (!mat.bar || !measure::PrintScale::fromBar(*mat.bar)) return std::nullopt;
    return mat;
}

std::vector<PrintedMat> matsOf(const RoomInfo& info) {
    std::vector<PrintedMat> mats;
    const std::string first(setting::mat);
    for (auto at = info.others.lower_bound(first); at != info.others.end(); ++at) {
        if (!at->first.starts_with(first)) break;
        if (auto mat = readMat(at->first, at->second)) mats.push_back(*std::move(mat));
    }
    return mats;
}

FieldValues matFields(const PrintedMat& mat) { return {{settingOf(mat.name), matText(mat)}}; }

Result<Millimetres> readBar(std::string_view text) {
    const auto length = readLength(text);
    if (!length) {
        const std::string shown(trimmed(text).substr(0, 40));
        return fail(Trouble::badInput,
                    {"mat.unreadable", {{"value", isUtf8(shown) ? shown : std::string("?")}}});
    }
    BURROW_TRY(const auto scale, measure::PrintScale::fromBar(*length));
    static_cast<void>(scale);
    return *length;
}

measure::PrintScale printScaleOf(const RoomInfo& info, const measure::MatName& name,
                                 const measure::MeasureRules& rules) {
    const measure::PrintScale unmeasured{1, rules.unmeasuredPrint};
    const auto mat = readMat(settingOf(name), info.other(settingOf(name)));
    if (!mat || !mat->bar) return unmeasured;
    return measure::PrintScale::fromBar(*mat->bar, Millimetres{rules.barDeviation})
        .value_or(unmeasured);
}

}  // namespace burrow
