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
};
[[nodiscard]] std::span<const LengthKind> lengthKinds();

/// The id of the word for it: of scorpions and the like the body is measured, not the span of the legs.
/// With ".sub" it says between which ends.
[[nodiscard]] std::string kindMessage(const LengthKind& kind, const Resident* resident);

/// How far its ends stand above the mat as a rule, as a place in the heights of the rules.
[[nodiscard]] int usualHeight(const LengthKind& kind, const measure::MeasureRules& rules);

/// "leg 1 femur": which segment, as entries hold it.
[[nodiscard]] std::string segmentText(int leg, int segment);
[[nodiscard]] QVariantList legChoices(const Desk& desk);
[[nodiscard]] QVariantList segmentChoices(const Desk& desk);

/// Half of the 95 percent interval decides how many digits mean something: tenths, or hundredths of what is
/// known to a few of them.
[[nodiscard]] double saidLength(Millimetres length, Millimetres halfInterval);

}  // namespace burrow
