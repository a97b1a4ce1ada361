// Who has outgrown its home, which stand empty, and who moves where in which order.
#include <fmt/format.h>

#include <cmath>
#include <memory>

#include "husbandry/plain_forecast.h"
#include "room/homes_plan.h"
#include "room/tables.h"
#include "terminal/describe.h"
#include "terminal/registry.h"

namespace burrow::terminal {
namespace {

using nlohmann::json;

struct Typed {
    Path book;
    std::string on;
};

json toJson(const homes::Fit& fit, const Console& console) {
    json list = json::array();
    for (const auto& finding : fit.findings) {
        const char* verdict = finding.verdict == homes::Verdict::fits    ? "fits"
                              : finding.verdict == homes::Verdict::amiss ? "amiss"
                                                                         : "unknown";
        list.push_back({{"point", std::string(homes::name(finding.point))},
                        {"verdict", verdict},
                        {"has_mm", finding.has.value},
                        {"needs_mm", finding.needs.value},
                        {"text", console.say(finding.why)}});
    }
    return list;
}

json toJson(const Range<Millimetres>& range) {
    return json::array({range.least.value, range.most.value});
}

json toJson(const homes::Outgrown& outgrown, CivilDay today, const Console& console) {
    const auto day = [&](const std::optional<int>& days) {
        return days ? json(isoDate(today + *days)) : json();
    };
    return {{"now", outgrown.now},
            {"chance_at_next_moult", outgrown.chanceAtNextMoult},
            {"chance_ever", outgrown.chanceEver},
            {"early", day(outgrown.early)},
            {"median", day(outgrown.median)},
            {"late", day(outgrown.late)},
            {"estimate", true},
            {"text", console.say(outgrown.why)}};
}

json toJson(const homes::Ground& ground, const Console& console) {
    json parts = json::array();
    for (const auto& part : ground.parts) {
        parts.push_back({{"material", part.material},
                         {"litres", part.loose.value},
                         {"bricks", part.bricks},
                         {"wet_kg", part.wet.value}});
    }
    return {{"litres", ground.volume.value},
            {"pour_litres", ground.loose.value},
            {"wet_kg", ground.wet.value},
            {"parts", std::move(parts)},
            {"text", console.say(ground.amount)}};
}

json toJson(const Housed& housed, CivilDay today, const Console& console) {
    json object{{"code", housed.resident->subject().number},
                {"species", housed.resident->subject().species},
                {"place", housed.resident->kept.place.text()},
                {"home", housed.home ? json(housed.home->name) : json()},
                {"state", std::string(name(housed.state))},
                {"due", housed.isDue},
                {"span_mm", housed.dweller ? json(housed.dweller->span.value) : json()},
                {"estimated_span_mm", housed.grown ? json(housed.grown->span.value) : json()},
                {"fit", toJson(housed.fit, console)}};
    if (housed.ground) object["ground_mm"] = toJson(*housed.ground);
    if (housed.outgrown) object["outgrown"] = toJson(*housed.outgrown, today, console);
    return object;
}

const char* nameOf(homes::StepKind kind) {
    switch (kind) {
        case homes::StepKind::move: return "move";
        case homes::StepKind::intoSpare: return "into_spare";
        case homes::StepKind::outOfSpare: return "out_of_spare";
    }
    return "";
}

const std::string& numberOf(const HomesPlan& plan, std::size_t who) {
    return plan.housed[who].resident->subject().number;
}

json toJson(const PlannedMove& move, const HomesPlan& plan, const Console& console) {
    json object{{"kind", nameOf(move.kind)},
                {"code", numberOf(plan, move.who)},
                {"from", move.from ? json(move.from->name) : json()},
                {"to", move.to.name},
                {"why", console.say(move.why)},
                {"cautions", json::array()}};
    for (const auto& caution : move.cautions) object["cautions"].push_back(console.say(caution));
    if (move.ground) {
        object["depth_mm"] = toJson(move.depth);
        object["ground"] = toJson(*move.ground, console);
    }
    if (move.fit) object["fit"] = toJson(*move.fit, console);
    return object;
}

json toJson(const std::vector<StayingOn>& staying, const HomesPlan& plan, const Console& console) {
    json list = json::array();
    for (const auto& one : staying) {
        list.push_back({{"code", numberOf(plan, one.who)},
                        {"waits_for", one.waitsFor ? json(numberOf(plan, *one.waitsFor)) : json()},
                        {"least_litres", one.least ? json(one.least->value) : json()},
                        {"why", console.say(one.why)}});
    }
    return list;
}

json toJson(const HomesPlan& plan, CivilDay today, const Console& console) {
    json value{{"animals", json::array()},
               {"empty", json::array()},
               {"moves", json::array()},
               {"waiting", toJson(plan.waiting, plan, console)},
               {"without", toJson(plan.without, plan, console)},
               {"several", plan.several},
               {"spare_tubs", plan.spareTubs}};
    for (const auto& housed : plan.housed) {
        value["animals"].push_back(toJson(housed, today, console));
    }
    for (const auto& free : plan.free) {
        value["empty"].push_back(
            {{"name", free.home.name},
             {"place", free.home.place.text()},
             {"litres", homes::volume(free.home).value},
             {"for", free.forWhom ? json(numberOf(plan, *free.forWhom)) : json()}});
    }
    for (const auto& move : plan.moves) value["moves"].push_back(toJson(move, plan, console));
    return value;
}

void print(const PlannedMove& move, const HomesPlan& plan, const Console& console) {
    console.line(fmt::format(
        "{:<6} {} -> {}  {}", numberOf(plan, move.who), move.from ? move.from->name : "-",
        move.kind == homes::StepKind::intoSpare ? "-" : move.to.name, console.say(move.why)));
    if (move.ground) console.line("       " + console.say(move.ground->amount));
    for (const auto& caution : move.cautions) console.line("       ! " + console.say(caution));
}

void print(const HomesPlan& plan, const Console& console) {
    bool isAllWell = true;
    for (const auto& housed : plan.housed) {
        if (housed.state == HomeState::fits || housed.state == HomeState::unknown) continue;
        isAllWell = false;
        console.line(fmt::format("{:<6} {}. {}{}", housed.resident->subject().number,
                                 housed.resident->subject().species,
                                 console.say({"homestate." + std::string(name(housed.state))}),
                                 housed.home ? " (" + housed.home->name + ")" : ""));
        for (const auto& finding : housed.fit.findings) {
            if (finding.verdict == homes::Verdict::amiss) {
                console.line("       " + console.say(finding.why));
            }
        }
    }
    if (isAllWell) console.line(console.say({"homes.none"}));
    if (!plan.moves.empty() || !plan.waiting.empty()) console.line(console.say(plan.summary));
    for (const auto& move : plan.moves) print(move, plan, console);
    for (const auto* list : {&plan.waiting, &plan.without}) {
        for (const auto& one : *list) {
            console.line(fmt::format("{:<6} {}", numberOf(plan, one.who), console.say(one.why)));
        }
    }
    for (const auto& free : plan.free) {
        const double litres = std::round(10 * homes::volume(free.home).value) / 10;
        console.line(fmt::format("{:<6} {}", free.home.name,
                                 console.say({"homes.free", {{"volume", litres}}})));
    }
}

int homesOf(const Setting& setting, const Typed& typed) {
    auto& console = setting.console;
    const auto day = maybeDay(typed.on);
    if (!day) return console.trouble(day.error());
    auto book = openToRead(typed.book, setting);
    if (!book) return console.trouble(book.error());
    const auto room = roomOn(*book, setting, *day);
    if (!room) return console.trouble(room.error());
    const auto all = enclosures(*book);
    if (!all) return console.trouble(all.error());
    const PlainForecast forecast;
    const auto plan = homesPlan(*room, *all, room->tables()->homes, forecast);
    print(plan, console);
    console.value(toJson(plan, room->day().today, console));
    return done;
}

}  // namespace

void addHomesCommand(CLI::App& app, Command& chosen) {
    auto typed = std::make_shared<Typed>();
    auto* homes = addCommand(app, typed->book, chosen, "homes",
                             "Who has outgrown its home, which stand empty, and who moves where.",
                             "burrow homes kiln-row.book --json",
                             [typed](const Setting& s) { return homesOf(s, *typed); });
    homes->add_option("--on", typed->on, "day, YYYY-MM-DD (today)");
}

}  // namespace burrow::terminal
