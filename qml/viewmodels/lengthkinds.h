// What can be measured of a moult, and what is on record of it.
#pragma once

#include <QVariantList>

#include "growth/measures.h"
#include "measure/rules.h"
#include "viewmodels/wording.h"

namespace burrow {

/// One kind of length, as a field of a fact.
struct LengthKind {
    const char* field;  ///< "carapace_mm"
    std::optional<Millimetres> FactBody::*length;
    growth::Measure measure;
    /// How far it stands above the mat as a rule, as a place in measuredHeights (common practice, no
    /// source): legs and fangs lie, a carapace is arched.
    int usualHeight;
};
[[nodiscard]] std::span<const LengthKind> lengthKinds();

/// The id of the word for it: of scorpions and the like the body is measured, not the span of the legs.
/// With ".sub" it says between which ends.
[[nodiscard]] std::string kindMessage(const LengthKind& kind, const Resident* resident);

/// What may stand above the mat, each with how sure that is (assets/rules/tables/measure.json).
using MeasuredHeight = measure::UsualHeight;
[[nodiscard]] std::span<const MeasuredHeight> measuredHeights();

/// "leg 1 femur": which segment, as entries hold it.
[[nodiscard]] std::string segmentText(int leg, int segment);
[[nodiscard]] QVariantList legChoices(const Desk& desk);
[[nodiscard]] QVariantList segmentChoices(const Desk& desk);

/// Half of the 95 percent interval decides how many digits mean something: tenths, or hundredths of what is
/// known to a few of them.
[[nodiscard]] double saidLength(Millimetres length, Millimetres halfInterval);

}  // namespace burrow
