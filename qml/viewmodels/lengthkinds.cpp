#include "viewmodels/lengthkinds.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace burrow {
namespace {

using growth::Measure;

constexpr std::array kinds{
    LengthKind{"carapace_mm", &FactBody::carapace, Measure::carapace},
    LengthKind{"carapace_width_mm", &FactBody::carapaceWidth, Measure::carapaceWidth},
    LengthKind{"span_mm", &FactBody::span, Measure::span},
    LengthKind{"fang_mm", &FactBody::fang, Measure::fang},
    LengthKind{"segment_mm", &FactBody::segmentLength, Measure::segment}};

// As entries spell them, in every language.
constexpr std::array legs{"leg 1", "leg 2", "leg 3", "leg 4", "palp"};
constexpr std::array segments{"femur", "patella", "tibia", "metatarsus", "tarsus"};

template <std::size_t count>
QVariantList choicesOf(const std::array<const char*, count>& names, const Desk& desk) {
    QVariantList list;
    for (const std::string name : names) {
        list.append(QVariantMap{
            {QStringLiteral("word"), desk.say(Message("segment." + normalTerm(name)))}});
    }
    return list;
}

}  // namespace

std::span<const LengthKind> lengthKinds() { return kinds; }

int usualHeight(const LengthKind& kind, const measure::MeasureRules& rules) {
    const auto stands = rules.usualStand(kind.field).value;
    const auto& heights = rules.heights;
    const auto nearest =
        std::min_element(heights.begin(), heights.end(), [stands](const auto& a, const auto& b) {
            return std::abs(a.above.value - stands) < std::abs(b.above.value - stands);
        });
    return static_cast<int>(nearest - heights.begin());
}

std::string segmentText(int leg, int segment) {
    return std::string(legs.at(static_cast<std::size_t>(leg))) + ' ' +
           segments.at(static_cast<std::size_t>(segment));
}

QVariantList legChoices(const Desk& desk) { return choicesOf(legs, desk); }
QVariantList segmentChoices(const Desk& desk) { return choicesOf(segments, desk); }

double saidLength(Millimetres length, Millimetres halfInterval) {
    constexpr Millimetres fine{0.05};
    const double digits = halfInterval < fine ? 100 : 10;
    return std::round(length.value * digits) / digits;
}

std::string kindMessage(const LengthKind& kind, const Resident* resident) {
    const bool isLong = resident != nullptr && resident->profile != nullptr &&
                        isMeasuredByBody(resident->profile->order);
    const bool isBody = isLong && kind.measure == growth::Measure::span;
    return "measuring.kind." + std::string(isBody ? "length_mm" : kind.field);
}

}  // namespace burrow
