// The keeper's printed mats, and what their bars measured.
//
// The book holds each printed mat as a setting under its name: "mat.7Q2M" is "a5", and "a5 99.6 mm" once
// its bar was measured. So it is undone, merged and asked about like every other value, and a photo taken
// on another phone is measured by the same bar.
#pragma once

#include "journal/fields.h"
#include "journal/roster.h"
#include "measure/mat.h"

namespace burrow {

struct PrintedMat {
    measure::MatName name;
    measure::MatPaper paper = measure::MatPaper::a5;
    std::optional<Millimetres> bar;  ///< as the keeper measured it

    friend bool operator==(const PrintedMat&, const PrintedMat&) = default;
};

/// "mat.7Q2M"
[[nodiscard]] std::string settingOf(const measure::MatName& name);
[[nodiscard]] std::string matText(const PrintedMat& mat);
/// Nothing for a setting that is no mat, or one that this version can't read.
[[nodiscard]] std::optional<PrintedMat> readMat(std::string_view setting, std::string_view text);

/// By name. Settings that can't be read are passed over.
[[nodiscard]] std::vector<PrintedMat> matsOf(const RoomInfo& info);
[[nodiscard]] FieldValues matFields(const PrintedMat& mat);

/// The bar as it was typed: "99.6", "99,6 mm". Fails with `badInput` for what is no length, and as
/// PrintScale::fromBar.
Result<Millimetres> readBar(std::string_view text);

/// How large things on that mat came out, as its bar says, and where nobody measured it, as printers do.
[[nodiscard]] measure::PrintScale printScaleOf(const RoomInfo& info, const measure::MatName& name,
                                               const measure::MeasureRules& rules);

}  // namespace burrow
