#include "measure/rules.h"

#include <algorithm>
#include <array>

#include "model/table.h"

namespace burrow::measure {
namespace {

struct Number {
    std::string_view id;
    double MeasureRules::*member;
};
constexpr std::array numbers{
    Number{"least_pixels_per_mm", &MeasureRules::leastPixelsPerMm},
    Number{"readable_pixels_per_mm", &MeasureRules::readablePixelsPerMm},
    Number{"least_level", &MeasureRules::leastLevel},
    Number{"clearly_beyond", &MeasureRules::clearlyBeyond},
    Number{"most_blur_modules", &MeasureRules::mostBlur},
    Number{"least_contrast", &MeasureRules::leastContrast},
    Number{"most_curl_mm", &MeasureRules::mostCurl},
    Number{"curl_share", &MeasureRules::curlShare},
    Number{"most_radial", &MeasureRules::mostRadial},
    Number{"lens_deviation", &MeasureRules::lensDeviation},
    Number{"screen_amplitude", &MeasureRules::screenAmplitude},
    Number{"screen_clarity", &MeasureRules::screenClarity},
    Number{"sharp_edge", &MeasureRules::sharpEdge},
    Number{"hint_sharpness", &MeasureRules::hintSharpness},
    Number{"hint_contrast", &MeasureRules::hintContrast},
    Number{"hint_share", &MeasureRules::hintShare},
    Number{"unmeasured_print", &MeasureRules::unmeasuredPrint},
    Number{"bar_deviation_mm", &MeasureRules::barDeviation},
    Number{"tag_print", &MeasureRules::tagPrint},
    Number{"tag_seen", &MeasureRules::tagSeen},
    Number{"usual_focal_mm", &MeasureRules::usualFocal},
    Number{"unknown_focal_deviation", &MeasureRules::unknownFocalDeviation},
    Number{"told_focal_deviation", &MeasureRules::toldFocalDeviation},
    Number{"most_unsure", &MeasureRules::mostUnsure},
    Number{"grey_spread", &MeasureRules::greySpread},
    Number{"grey_gain", &MeasureRules::greyGain},
    Number{"finger_units", &MeasureRules::fingerDeviation},
    Number{"least_point_pixels", &MeasureRules::leastPointDeviation}};

tl::unexpected<Error> damaged(std::string_view row) {
    return fail(Trouble::badInput, {"measure.rules", {{"row", std::string(row)}}});
}

}  // namespace

Result<MeasureRules> MeasureRules::fromJson(std::string_view file) {
    // No rule of thumb is nothing.
    const Range<double> some{1e-4, 1000};
    const std::vector<TableShape> shapes{
        {"numbers", {{"value", some}}},
        {"heights", {{"above_mm", {{0, 60}}}, {"deviation_mm", {{0.01, 30}}}}},
        {"stands", {{"stands_mm", {{0, 60}}}}}};
    BURROW_TRY(const auto tables, Tables::fromJson(file, shapes));
    MeasureRules rules;
    for (const auto& number : numbers) {
        const auto* row = tables.find("numbers", number.id);
        if (row == nullptr) return damaged(number.id);
        rules.*number.member = row->number("value");
    }
    // Every id is there once, so one too many is one that nobody reads.
    if (tables.rows("numbers").size() != numbers.size()) return damaged("numbers");
    for (const auto& row : tables.rows("heights")) {
        rules.heights.push_back({{row.number("above_mm")}, {row.number("deviation_mm")}});
    }
    if (rules.heights.empty()) return damaged("heights");
    for (const auto& row : tables.rows("stands")) {
        rules.stands.push_back({row.id, {row.number("stands_mm")}});
    }
    return rules;
}

Millimetres MeasureRules::usualStand(std::string_view kind) const {
    const auto found = std::find_if(stands.begin(), stands.end(),
                                    [kind](const UsualStand& each) { return each.kind == kind; });
    return found == stands.end() ? Millimetres{} : found->above;
}

const MeasureRules& shippedRules() {
    static const auto rules = MeasureRules::fromJson(measureRulesText()).value();
    return rules;
}

}  // namespace burrow::measure
