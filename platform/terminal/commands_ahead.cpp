// Commands that look ahead: prey to be used and bought, and the evenings to come.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "husbandry/plain_forecast.h"
#include "room/evenings.h"
#include "room/prey_need.h"
#include "room/tables.h"
#include "terminal/registry.h"

namespace burrow::terminal {
namespace {

using nlohmann::json;

struct AheadTyped {
    Path book;
    std::string on;
    int days = 14;
    std::vector<std::string> counts;  ///< "cricket.small=40"
    std::vector<std::string> prices;  ///< "cricket.small=4.50 for 100"
    std::optional<std::string> weekdays;
    std::optional<int> most;
};

tl::unexpected<Error> refuse(const char* id, const std::string& value) {
    return fail(Trouble::badInput, {id, {{"value", value}}});
}

/// "cricket.small=40" as the size and what stands behind it.
Result<std::pair<std::size_t, std::string>> bandAndText(const std::string& typed,
                                                        const stock::Feeders& feeders) {
    const auto at = typed.find('=');
    const auto band = bandNamed(typed.substr(0, at), feeders);
    if (at == std::string::npos || !band) return refuse("larder.unknownSize", typed);
    return std::pair(*band, typed.substr(at + 1));
}

/// What was typed about the larder, as settings.
Result<FieldValues> larderFields(const AheadTyped& typed, const Room& room,
                                 const stock::Feeders& feeders) {
    FieldValues fields;
    for (const auto& text : typed.counts) {
        BURROW_TRY(const auto sized, bandAndText(text, feeders));
        const auto count = readCount(sized.second + ", 1 mm, 2026-01-01");
        if (!count && !sized.second.empty()) return refuse("larder.oddCount", sized.second);
        const auto number = count ? std::optional(count->count) : std::nullopt;
        for (auto& [name, value] : countedFields(room, feeders, sized.first, number)) {
            fields[name] = std::move(value);
        }
    }
    for (const auto& text : typed.prices) {
        BURROW_TRY(const auto sized, bandAndText(text, feeders));
        const auto price = readPrice(sized.second);
        if (!price && !sized.second.empty()) return refuse("larder.oddPrice", sized.second);
        fields.merge(priceFields(feeders, sized.first, price));
    }
    return fields;
}

Result<Room> roomAfter(Book& book, const Setting& setting, std::optional<CivilDay> day,
                       const FieldValues& fields) {
    if (!fields.empty()) {
        BURROW_TRY(const auto changes,
                   book.record(SetDraft{ThingType::book, book.id().uuid, fields}));
        static_cast<void>(changes);
    }
    return roomOn(book, setting, day);
}

json stockJson(const PreyOutlook& outlook, const stock::Feeders& feeders) {
    json list = json::array();
    for (const auto& line : outlook.stock) {
        list.push_back({{"size", bandKey(feeders.bands()[line.band])},
                        {"count", line.count},
                        {"length_mm", line.length.value},
                        {"counted", isoDate(line.counted)},
                        {"used", line.used}});
    }
    return list;
}

json purchaseJson(const stock::Purchase& purchase, const Console& console) {
    json object{{"day", isoDate(purchase.day)}, {"size", purchase.kind + "." + purchase.band},
                {"least", purchase.least},      {"likely", purchase.likely},
                {"enough", purchase.enough},    {"lost", purchase.lost},
                {"why", toJson(purchase.why)},  {"text", console.say(purchase.why)}};
    if (purchase.cost) {
        object["packs"] = purchase.packs;
        object["cost"] = static_cast<double>(purchase.cost->value) / 100;
    }
    return object;
}

void print(const PreyOutlook& outlook, const stock::Feeders& feeders, const Console& console) {
    for (const auto& line : outlook.stock) {
        console.line(console.say({"larder.line",
                                  {{"count", static_cast<std::int64_t>(std::lround(line.count))},
                                   {"size", bandKey(feeders.bands()[line.band])},
                                   {"day", line.counted}}}));
    }
    for (const auto& use : outlook.list.uses) {
        console.line(console.say({"larder.use",
                                  {{"size", use.kind + "." + use.band},
                                   {"mean", std::round(use.mean)},
                                   {"least", std::int64_t{use.interval.least}},
                                   {"most", std::int64_t{use.interval.most}}}}));
    }
    for (const auto& purchase : outlook.list.purchases) {
        console.line(fmt::format("{}  {:>5} {}.{}  {}", isoDate(purchase.day), purchase.enough,
                                 purchase.kind, purchase.band, console.say(purchase.why)));
    }
    console.line(console.say(outlook.list.summary));
}

json outlookJson(const PreyOutlook& outlook, const stock::Feeders& feeders,
                 const Console& console) {
    json uses = json::array();
    for (const auto& use : outlook.list.uses) {
        uses.push_back({{"size", use.kind + "." + use.band},
                        {"mean", use.mean},
                        {"least", use.interval.least},
                        {"most", use.interval.most},
                        {"from_stock", use.fromStock}});
    }
    json purchases = json::array();
    for (const auto& purchase : outlook.list.purchases) {
        purchases.push_back(purchaseJson(purchase, console));
    }
    return {{"days", outlook.days},
            {"meals", outlook.meals},
            {"subjects", outlook.eaters},
            {"share", outlookShare},
            {"mean", outlook.mean},
            {"least", outlook.interval.least},
            {"most", outlook.interval.most},
            {"stock", stockJson(outlook, feeders)},
            {"uses", std::move(uses)},
            {"purchases", std::move(purchases)},
            {"cost", static_cast<double>(outlook.list.cost.value) / 100},
            {"unpriced", outlook.list.unpriced},
            {"summary", toJson(outlook.list.summary)}};
}

int prey(const Setting& setting, const AheadTyped& typed) {
    auto& console = setting.console;
    auto tables = setting.reference.numbers.shipped();
    const auto outlook = [&]() -> Result<PreyOutlook> {
        BURROW_TRY(const auto day, maybeDay(typed.on));
        const bool isWritten = !typed.counts.empty() || !typed.prices.empty();
        BURROW_TRY(auto book,
                   isWritten ? openToWrite(typed.book, setting) : openToRead(typed.book, setting));
        BURROW_TRY(const auto before, roomOn(book, setting, day));
        tables = before.tables();
        BURROW_TRY(const auto fields, larderFields(typed, before, tables->feeders));
        BURROW_TRY(const auto room, roomAfter(book, setting, day, fields));
        const PlainForecast forecast;
        return preyOutlook(room, tables->feeders, typed.days, forecast);
    }();
    if (!outlook) return console.trouble(outlook.error());
    print(*outlook, tables->feeders, console);
    console.value(outlookJson(*outlook, tables->feeders, console));
    return done;
}

Result<FieldValues> eveningFieldsOf(const AheadTyped& typed, const Room& room) {
    if (!typed.weekdays && !typed.most) return FieldValues();
    auto days = feedingDaysOf(room.info());
    if (typed.weekdays) {
        const auto chosen = readWeekdays(*typed.weekdays);
        if (!chosen) return refuse("evenings.oddDays", *typed.weekdays);
        days.weekdays = *chosen;
    }
    if (typed.most) {
        days.most = *typed.most == 0 ? std::nullopt : typed.most;
    }
    return eveningFields(days);
}

json mealJson(const EveningMeal& meal, const Console& console) {
    const auto& resident = *meal.resident;
    return {{"code", resident.subject().number},        {"species", resident.subject().species},
            {"place", resident.kept.place.text()},      {"prey", meal.prey.kind},
            {"prey_mm", meal.prey.length.value},        {"count", meal.prey.count},
            {"amount", console.say(meal.prey.amount())}};
}

int showEvenings(const EveningPlan& plan, int days, const Console& console) {
    json list = json::array();
    for (const auto& evening : plan.evenings) {
        console.line(console.say({"evenings.heading",
                                  {{"day", console.words().longDay(evening.day)},
                                   {"count", static_cast<std::int64_t>(evening.meals.size())}}}));
        json meals = json::array();
        for (const auto& meal : evening.meals) {
            meals.push_back(mealJson(meal, console));
            console.line(fmt::format("  {:<6} {:<24} {}", meal.resident->subject().number,
                                     meal.resident->kept.place.text(),
                                     console.say(meal.prey.amount())));
        }
        list.push_back({{"day", isoDate(evening.day)}, {"meals", std::move(meals)}});
    }
    json apart = json::array();
    for (const auto& each : plan.apart) {
        auto object = mealJson(each.meal, console);
        object["day"] = isoDate(each.day);
        object["why"] = toJson(each.why);
        object["text"] = console.say(each.why);
        console.line(
            fmt::format("  {:<6} {}", each.meal.resident->subject().number, console.say(each.why)));
        apart.push_back(std::move(object));
    }
    json witnesses = json::array();
    for (const auto& resident : plan.witnesses) witnesses.push_back(resident->subject().number);
    console.line(console.say(plan.why));
    console.value({{"days", days},
                   {"evenings", std::move(list)},
                   {"apart", std::move(apart)},
                   {"next_visits", plan.nextVisits},
                   {"no_two_share", std::move(witnesses)},
                   {"why", toJson(plan.why)}});
    return done;
}

int evenings(const Setting& setting, const AheadTyped& typed) {
    auto& console = setting.console;
    const auto plan = [&]() -> Result<EveningPlan> {
        BURROW_TRY(const auto day, maybeDay(typed.on));
        const bool isWritten = typed.weekdays || typed.most;
        BURROW_TRY(auto book,
                   isWritten ? openToWrite(typed.book, setting) : openToRead(typed.book, setting));
        BURROW_TRY(const auto before, roomOn(book, setting, day));
        BURROW_TRY(const auto fields, eveningFieldsOf(typed, before));
        BURROW_TRY(const auto room, roomAfter(book, setting, day, fields));
        const PlainForecast forecast;
        return planEvenings(room, feedingDaysOf(room.info()), typed.days, forecast);
    }();
    if (!plan) return console.trouble(plan.error());
    return showEvenings(*plan, typed.days, console);
}

}  // namespace

void addAheadCommands(CLI::App& app, Command& chosen) {
    auto typed = std::make_shared<AheadTyped>();
    auto& t = *typed;
    const auto look = [&t](CLI::App* command) {
        command->add_option("--days", t.days, "how far ahead (14)")->check(CLI::Range(1, 120));
        command->add_option("--on", t.on, "day, YYYY-MM-DD (today)");
    };
    auto* prey = addCommand(app, t.book, chosen, "prey",
                            "Feeders: what is there, what will be used, and what to buy.",
                            "burrow prey kiln-row.book --days 14 --count cricket.small=40 --price "
                            "\"cricket.small=4.50 for 100\"",
                            [typed](const Setting& s) { return terminal::prey(s, *typed); });
    look(prey);
    prey->add_option("--count", t.counts, "so many are there now; \"cricket.small=\" forgets them")
        ->allow_extra_args(false);
    prey->add_option("--price", t.prices, "what a pack costs, in your own currency")
        ->allow_extra_args(false);

    auto* evenings =
        addCommand(app, t.book, chosen, "evenings",
                   "On which evenings to feed whom, in the order of the walk.",
                   "burrow evenings kiln-row.book --days 14 --feed-on \"tue fri\" "
                   "--most 25",
                   [typed](const Setting& s) { return terminal::evenings(s, *typed); });
    look(evenings);
    evenings->add_option("--feed-on", t.weekdays, "your feeding days; \"\" for every day");
    evenings->add_option("--most", t.most, "so many in one evening; 0 for no limit")
        ->check(CLI::Range(0, mostInEvening));
}

}  // namespace burrow::terminal
