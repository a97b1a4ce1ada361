// Which homes stay shut, and how long what may wait.
#include <algorithm>
#include <array>

#include "model/table.h"
#include "room/away.h"

namespace burrow {
namespace {

constexpr std::array stages{Stage::sling, Stage::juvenile, Stage::adult, Stage::matureMale};

ShutReason alwaysShut(ShutBecause because) {
    return {because, Message("away.shut." + std::string(name(because)))};
}

/// By what its species is like.
void addTemperament(std::vector<ShutReason>& reasons, const Profile* profile) {
    if (profile == nullptr) {
        reasons.push_back(alwaysShut(ShutBecause::unknown));
        return;
    }
    for (const auto caution : cautions(*profile)) {
        switch (caution) {
            case Caution::strongVenom:
                reasons.push_back(alwaysShut(ShutBecause::strongVenom));
                break;
            case Caution::venom: reasons.push_back(alwaysShut(ShutBecause::venom)); break;
            case Caution::sting: reasons.push_back(alwaysShut(ShutBecause::sting)); break;
            case Caution::fast: reasons.push_back(alwaysShut(ShutBecause::fast)); break;
            case Caution::unknown: reasons.push_back(alwaysShut(ShutBecause::unknown)); break;
            // The sheet warns of these; with the animal left alone they do no harm.
            case Caution::hairs:
            case Caution::spray: break;
        }
    }
    if (profile->temperament.value == Temperament::defensive) {
        reasons.push_back(alwaysShut(ShutBecause::defensive));
    }
}

std::optional<ShutBecause> phaseOf(Because because) {
    switch (because) {
        case Because::eggSac: return ShutBecause::eggSac;
        case Because::hardening: return ShutBecause::hardening;
        case Because::premoult: return ShutBecause::premoult;
        case Because::likelyPremoult: return ShutBecause::likelyPremoult;
        case Because::settling: return ShutBecause::settling;
        default: return std::nullopt;
    }
}

}  // namespace

std::string_view name(ShutBecause because) {
    switch (because) {
        case ShutBecause::unknown: return "unknown";
        case ShutBecause::strongVenom: return "strong_venom";
        case ShutBecause::venom: return "venom";
        case ShutBecause::sting: return "sting";
        case ShutBecause::defensive: return "defensive";
        case ShutBecause::fast: return "fast";
        case ShutBecause::eggSac: return "egg_sac";
        case ShutBecause::hardening: return "hardening";
        case ShutBecause::premoult: return "premoult";
        case ShutBecause::likelyPremoult: return "likely_premoult";
        case ShutBecause::settling: return "settling";
        case ShutBecause::moult: return "moult";
    }
    return {};
}

bool Shut::isEstimate() const {
    return std::all_of(reasons.begin(), reasons.end(), [](const ShutReason& reason) {
        return reason.because == ShutBecause::moult ||
               reason.because == ShutBecause::likelyPremoult;
    });
}

const Shut* AwayPlan::shutFor(SubjectId id) const {
    const auto found = std::find_if(shut.begin(), shut.end(), [&](const Shut& each) {
        return each.resident->subject().id == id;
    });
    return found == shut.end() ? nullptr : &*found;
}

Result<AwayRules> AwayRules::fromJson(std::string_view file) {
    const Range<double> days{0, 120};
    constexpr std::array columns{"meal_days", "water_days", "damp_days"};
    const std::vector<TableShape> shapes{
        {"waiting", {{columns[0], days}, {columns[1], days}, {columns[2], days}}}};
    BURROW_TRY(const auto tables, Tables::fromJson(file, shapes));
    AwayRules rules;
    for (const auto stage : stages) {
        const auto* row = tables.find("waiting", name(stage));
        std::array<int, 3> wait{};
        bool isWhole = row != nullptr;
        for (std::size_t i = 0; isWhole && i < wait.size(); ++i) {
            const double typed = row->number(columns.at(i));
            wait.at(i) = static_cast<int>(typed);
            isWhole = wait.at(i) == typed;
        }
        if (!isWhole) {
            return fail(Trouble::badInput, {"away.rules", {{"row", std::string(name(stage))}}});
        }
        rules.patience_[static_cast<std::size_t>(stage)] = {wait[0], wait[1], wait[2]};
    }
    return rules;
}

std::vector<ShutReason> shutReasons(const Resident& resident, const Verdict& feeding,
                                    const std::optional<MoultForecast>& moult, AwayDays days) {
    std::vector<ShutReason> reasons;
    addTemperament(reasons, resident.profile);
    const auto phase =
        feeding.state == State::hold ? phaseOf(feeding.because) : std::optional<ShutBecause>();
    if (phase) {
        ShutReason reason = alwaysShut(*phase);
        if (feeding.since) reason.says.arguments.push_back({"since", *feeding.since});
        reasons.push_back(std::move(reason));
    } else if (moult && moult->median <= days.to) {
        ShutReason reason = alwaysShut(ShutBecause::moult);
        reason.says.arguments = {{"soonest", moult->soonest}, {"median", moult->median}};
        reasons.push_back(std::move(reason));
    }
    return reasons;
}

}  // namespace burrow
