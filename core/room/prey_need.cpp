#include "room/prey_need.h"

#include <algorithm>
#include <set>
#include <tuple>

#include "husbandry/coming.h"
#include "room/ahead.h"

namespace burrow {
namespace {

stock::FeedingRecord recordOf(const Digest& digest) {
    stock::FeedingRecord record;
    for (const auto& meal : digest.recentOffers) {
        ++record.offers;
        if (meal.outcome == Outcome::ate || meal.outcome == Outcome::part) ++record.accepted;
    }
    return record;
}

/// That a moult has not come in the days before in which fangs harden, on average over the days.
double openChance(const RunAhead& ahead, std::span<const CivilDay> days, CivilDay today) {
    const auto& resident = ahead.resident();
    const auto& rules = ahead.rules();
    const int hardening = rules.dayRange(ruleFor("hardening", resident.plan.stage.growing())).most;
    const auto moultBy = [&](int within) {
        if (within <= 0) return 0.0;
        const auto forecast = ahead.nextMoult(today, within);
        return forecast ? forecast->soon : 0.0;
    };
    double open = 0;
    for (const auto day : days) {
        const int until = day - today;
        open += 1 - std::max(0.0, moultBy(until) - moultBy(until - hardening));
    }
    return open / static_cast<double>(days.size());
}

/// What tells one need of a subject from another.
using Sort = std::tuple<std::string, Millimetres, int, bool>;

Sort sortOf(const PreySuggestion& prey) {
    switch (prey.serving) {
        case Serving::whole: return {prey.kind, prey.length, prey.count, false};
        case Serving::killed: return {prey.kind, prey.length, prey.count, true};
        // All pieces of a meal are cut from one.
        case Serving::pieces: break;
    }
    return {prey.kind, prey.length, 1, true};
}

}  // namespace

std::vector<stock::Need> preyNeeds(const Room& room, int days, const Forecast& forecasts) {
    std::vector<stock::Need> needs;
    const auto today = room.day().today;
    std::size_t position = 0;
    for (const auto& resident : room.residents()) {
        const auto who = position++;
        if (resident->subject().standing != Standing::here) continue;
        std::map<Sort, std::vector<CivilDay>> meals;
        for (const auto& task :
             comingTasks(resident->input(), room.rules(), room.day(), days, forecasts)) {
            if (task.prey) meals[sortOf(*task.prey)].push_back(task.day);
        }
        if (meals.empty()) continue;
        const RunAhead ahead(resident, room, forecasts);
        for (auto& [sort, when] : meals) {
            stock::Need need;
            need.who = who;
            std::tie(need.kind, need.length, need.each, need.isKilled) = sort;
            need.chance = openChance(ahead, when, today);
            need.stage = name(resident->plan.stage.stage);
            need.species = resident->profile != nullptr ? resident->profile->name
                                                        : resident->subject().species;
            need.record = recordOf(resident->kept.digest);
            need.days = std::move(when);
            needs.push_back(std::move(need));
        }
    }
    return needs;
}

PreyOutlook preyOutlook(const Room& room, const stock::Feeders& feeders, int days,
                        const Forecast& forecasts) {
    const auto today = room.day().today;
    PreyOutlook outlook;
    outlook.days = days;
    const auto needs = preyNeeds(room, days, forecasts);
    std::set<std::size_t> eaters;
    for (const auto& need : needs) {
        outlook.meals += static_cast<int>(need.days.size());
        eaters.insert(need.who);
    }
    outlook.eaters = static_cast<int>(eaters.size());
    outlook.stock = stockToday(room, feeders);
    const stock::ShoppingAsk ask{today, days, outlookShare};
    const auto batches = batchesOf(outlook.stock, today, feeders);
    const auto prices = larderOf(room.info(), feeders).prices;
    outlook.list = stock::shoppingList(needs, batches, prices, ask, feeders);
    const auto total = stock::totalUse(needs, ask, feeders);
    outlook.mean = total.mean();
    outlook.interval = total.middle(outlookShare);
    return outlook;
}

}  // namespace burrow
