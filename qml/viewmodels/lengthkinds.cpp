#include "viewmodels/lengthkinds.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>

namespace burrow {
namespace {

constexpr std::array kinds{LengthKind{"carapace_mm", &FactBody::carapace, 2},
                           LengthKind{"carapace_width_mm", &FactBody::carapaceWidth, 1},
                           LengthKind{"span_mm", &FactBody::span, 0},
                           LengthKind{"fang_mm", &FactBody::fang, 1},
                           LengthKind{"segment_mm", &FactBody::segmentLength, 0}};

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
std::span<const MeasuredHeight> measuredHeights() { return measure::shippedRules().heights; }

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

std::vector<MeasuredBefore> measuredBefore(std::span<const Fact> facts, const LengthKind& kind,
                                           const std::string& segment) {
    std::map<CivilDay, const Fact*> last;
    for (const auto& fact : facts) {
        if (fact.kind != FactKind::moulted && fact.kind != FactKind::measured) continue;
        if (!(fact.body.*kind.length)) continue;
        if (kind.length == &FactBody::segmentLength && fact.body.segment != segment) continue;
        auto& newest = last[fact.day];
        if (newest == nullptr || happenedBefore(*newest, fact)) newest = &fact;
    }
    std::vector<MeasuredBefore> list;
    for (const auto& [day, fact] : last) list.push_back({day, *fact, *(fact->body.*kind.length)});
    return list;
}

}  // namespace burrow
