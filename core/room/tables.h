// The trade's own numbers: prey, homes, air, what may wait, what tells the sex, and how a photo is measured
// (assets/rules/tables).
#pragma once

#include "air/sample.h"
#include "homes/space.h"
#include "measure/rules.h"
#include "room/away.h"
#include "room/table_texts.h"
#include "sexing/ratios.h"
#include "stock/feeders.h"

namespace burrow {

struct RoomTables {
    stock::Feeders feeders;
    homes::HomeRules homes;
    air::AirRules air;
    AwayRules away;
    sexing::SexingRules sexing;
    measure::MeasureRules measure;

    /// Fails with `badInput`, and a message that names table and row, where one of them is damaged or
    /// missing.
    static Result<RoomTables> fromJson(const TableTexts& texts);
};

}  // namespace burrow
