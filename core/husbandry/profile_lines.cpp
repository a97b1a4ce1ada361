#include "husbandry/profile_lines.h"

#include <array>

#include "husbandry/profiles.h"

namespace burrow {
namespace {

// As message ids spell them, in the order of the enumerations.
constexpr std::array orders{"tarantula", "trueSpider", "scorpion", "whipSpider", "vinegaroon"};
constexpr std::array habits{"terrestrial", "arboreal", "fossorial"};
constexpr std::array regions{"newWorld", "oldWorld"};
constexpr std::array damps{"dry", "moderate", "moist", "swamp"};
constexpr std::array temperaments{"calm", "skittish", "defensive"};
constexpr std::array venoms{"mild", "notable", "significant", "none"};
constexpr std::array hairs{"none", "abdomen", "palps"};
constexpr std::array groups{"no", "tolerated"};
constexpr std::array moults{"untilGrown", "femalesGoOn", "goOn"};

template <class Value, std::size_t n>
std::string idOf(Value value, const std::array<const char*, n>& names) {
    return names.at(static_cast<std::size_t>(value));
}

/// Only spiders are said to live in trees: others climb bark, rock and the walls of caves.
std::string habitOf(const Profile& profile) {
    const bool isSpider = profile.order == Order::tarantula || profile.order == Order::trueSpider;
    const bool climbs = profile.habit.value == Habit::arboreal && !isSpider;
    return climbs ? "climbing" : idOf(profile.habit.value, habits);
}

class Lines {
public:
    void add(std::string_view name, Message value, const std::string& source = {}) {
        lines_.push_back({name, std::move(value), source});
    }
    template <class Value, std::size_t n>
    void add(std::string_view name, const Sourced<Value>& fact,
             const std::array<const char*, n>& names) {
        add(name, Message(std::string(name) + '.' + idOf(fact.value, names)), fact.source);
    }
    void addText(std::string_view name, const std::string& text, const std::string& source = {}) {
        if (!text.empty()) add(name, {"species.text", {{"text", text}}}, source);
    }
    void addNames(std::string_view name, const std::vector<std::string>& names) {
        std::string text;
        for (const auto& each : names) text += (text.empty() ? "" : ", ") + each;
        addText(name, text);
    }
    template <class Unit>
    void addRange(std::string_view name, const char* unit, const Sourced<Range<Unit>>& range) {
        const auto& [least, most] = range.value;
        add(name, {unit, {{"least", least.value}, {"most", most.value}}}, range.source);
    }
    [[nodiscard]] std::vector<ProfileLine> taken() { return std::move(lines_); }

private:
    std::vector<ProfileLine> lines_;
};

}  // namespace

Message kindOf(const Profile& profile) {
    return {"species.kind", {{"habit", habitOf(profile)}, {"order", idOf(profile.order, orders)}}};
}

std::vector<ProfileLine> profileLines(const Profile& profile) {
    Lines lines;
    lines.addText("species.authority", profile.authority, profile.authoritySource);
    lines.addNames("species.otherNames", profile.otherNames);
    lines.addNames("species.tradeNames", profile.tradeNames);
    lines.add("species.region", profile.region, regions);
    lines.add("species.habit", Message("species.habit." + habitOf(profile)), profile.habit.source);
    lines.addRange(isMeasuredByBody(profile.order) ? "species.adultLength" : "species.adultSpan",
                   "species.mm", profile.adultSpan);
    lines.addRange("species.warmth", "species.celsius", profile.warmth);
    lines.add("species.damp", profile.damp, damps);
    lines.add("species.temperament", profile.temperament, temperaments);
    lines.add("species.fast", Message(profile.fast.value ? "species.fast.yes" : "species.fast.no"),
              profile.fast.source);
    lines.add("species.venom", profile.venom, venoms);
    lines.add("species.hairs", profile.hairs, hairs);
    lines.add("species.groups", profile.groups, groups);
    lines.add("species.moults", profile.moults, moults);
    lines.add("species.listing", listingNote(profile), profile.listing.source);
    if (auto law = lawNote(profile)) lines.add("species.law", *std::move(law));
    lines.addText("species.housing", profile.housing);
    lines.addText("species.handling", profile.handling);
    return lines.taken();
}

}  // namespace burrow
