#include "homes/ground.h"

#include <cmath>

namespace burrow::homes {
namespace {

GroundPart partOf(const TableRow& material, Litres loose) {
    GroundPart part{material.id, loose, {loose.value * material.number("wet_kg_per_litre")},
                    0,           {},    {}};
    const auto pressed = material.numberIfAny("pressed_kg");
    const auto expands = material.numberIfAny("expands_to_litres");
    if (pressed && expands) {
        part.bricks = static_cast<int>(std::ceil(loose.value / *expands - 1e-9));
        part.expanded = {part.bricks * *expands};
        part.pressed = {part.bricks * *pressed};
    }
    return part;
}

}  // namespace

std::string_view mixFor(Habit habit, Damp damp) {
    if (habit == Habit::fossorial) return "burrow";
    switch (damp) {
        case Damp::dry: return "dry";
        case Damp::moderate: return "moderate";
        case Damp::moist: return "moist";
        case Damp::swamp: return "swamp";
    }
    return {};
}

Result<Ground> groundOf(const Enclosure& home, Millimetres depth, std::string_view mix, bool isFirm,
                        const HomeRules& rules) {
    const double litres = home.length.value * home.width.value * depth.value / 1e6;
    if (!(litres > 0)) return fail(Trouble::badInput, {"homes.noSize", {{"name", home.name}}});
    const auto* settling = rules.tables().find("settling", isFirm ? "firm" : "loose");
    const double factor = settling == nullptr ? 1 : settling->number("loose_per_litre");
    Ground ground{{litres}, {litres * factor}, {}, {}, {}};
    double parts = 0;
    for (const auto& row : rules.tables().rows("mixes")) {
        if (row.word("mix") == mix) parts += row.number("parts");
    }
    if (parts == 0) return fail(Trouble::badInput, {"homes.noMix", {{"mix", std::string(mix)}}});
    for (const auto& row : rules.tables().rows("mixes")) {
        if (row.word("mix") != mix) continue;
        const auto& material = *rules.tables().find("materials", row.word("material"));
        ground.parts.push_back(partOf(material, ground.loose * (row.number("parts") / parts)));
        ground.wet = ground.wet + ground.parts.back().wet;
    }
    ground.amount = {"homes.ground",
                     {{"litres", std::round(10 * ground.loose.value) / 10},
                      {"depth", std::round(depth.value)},
                      {"mix", std::string(mix)},
                      {"mass", std::round(10 * ground.wet.value) / 10}}};
    return ground;
}

Result<Kilograms> emptyMass(const Enclosure& home, Millimetres thickness, std::string_view material,
                            const HomeRules& rules) {
    const auto* walls = rules.tables().find("walls", material);
    if (walls == nullptr) {
        return fail(Trouble::badInput, {"homes.noWalls", {{"material", std::string(material)}}});
    }
    Enclosure outer = home;
    for (auto* size : {&outer.length, &outer.width, &outer.height}) *size = *size + 2 * thickness;
    return Kilograms{(volume(outer) - volume(home)).value * walls->number("kg_per_litre")};
}

}  // namespace burrow::homes
