// Why something is due or is not, and the rules behind it.
#include <fmt/format.h>

#include "husbandry/explain.h"
#include "husbandry/plain_forecast.h"
#include "husbandry/preview.h"
#include "room/own_rules.h"
#include "terminal/commands.h"
#include "terminal/describe.h"

namespace burrow::terminal {
namespace {

using nlohmann::json;

json explained(const Resident& resident, const Explanation& why, const Console& console) {
    auto object = toJson(resident, why.answer, console);
    object["working"] = json::array();
    for (const auto& message : why.working) {
        auto line = toJson(message);
        line["text"] = console.say(message);
        object["working"].push_back(std::move(line));
    }
    object["rules"] = json::array();
    for (const auto& rule : why.rules) object["rules"].push_back(toJson(rule));
    return object;
}

void print(const Resident& resident, const Explanation& why, bool inFull, const Console& console) {
    console.line(
        fmt::format("  {:<12} {}", name(why.answer.care), sentence(resident, why.answer, console)));
    if (!inFull) return;
    for (const auto& message : why.working) console.line("    " + console.say(message));
    for (const auto& rule : why.rules) {
        console.line(fmt::format("    {:<28} {:<10} {}; {}", rule.id, valueText(rule.value),
                                 originText(rule, console), rule.source));
    }
}

/// The key that a value is kept under. A species goes by its valid name, an animal by its identifier.
Result<RuleKey> keyFor(const Setting& setting, Book& book, const RuleOptions& options) {
    RuleKey key{options.id, RuleScope::everyone, {}};
    if (!options.species.empty()) {
        const auto* profile = setting.reference.profiles.find(options.species);
        key.scope = RuleScope::species;
        key.of = profile != nullptr ? profile->name : options.species;
    } else if (!options.place.empty()) {
        key.scope = RuleScope::place;
        key.of = options.place;
    } else if (!options.tag.empty()) {
        BURROW_TRY(const auto id, findSubject(book, options.tag));
        key.scope = RuleScope::animal;
        key.of = id.text();
    }
    return key;
}

json previewJson(const PreviewLine& line, const Room& room, const Console& console) {
    const auto& resident = *room.residents()[line.input];
    const auto days = [](const std::vector<CivilDay>& list) {
        json texts = json::array();
        for (const auto day : list) texts.push_back(isoDate(day));
        return texts;
    };
    return {
        {"code", resident.subject().number},
        {"species", resident.subject().species},
        {"care", std::string(name(line.after.care))},
        {"before",
         {{"state", std::string(name(line.before.state))}, {"days", days(line.daysBefore)}}},
        {"after", {{"state", std::string(name(line.after.state))}, {"days", days(line.daysAfter)}}},
        {"text", console.say(line.says())}};
}

int showPreview(const Setting& setting, const Room& room, const Rules& changed, int days) {
    auto& console = setting.console;
    std::vector<PlanInput> inputs;
    for (const auto& resident : room.residents()) inputs.push_back(resident->input());
    const PlainForecast forecast;
    const auto preview = previewRules(inputs, room.rules(), changed, room.day(), days, forecast);
    json lines = json::array();
    for (const auto& line : preview.lines) {
        lines.push_back(previewJson(line, room, console));
        console.line(fmt::format("  {:<6} {}", room.residents()[line.input]->subject().number,
                                 console.say(line.says())));
    }
    if (preview.lines.empty()) {
        console.line(console.say({"said.previewNone", {{"days", std::int64_t{days}}}}));
    } else {
        console.line(console.say({"said.preview",
                                  {{"concerned", std::int64_t{preview.concerned}},
                                   {"changed", std::int64_t{preview.changed}}}}));
    }
    json times = json::object();
    for (std::size_t care = 0; care < allCare.size(); ++care) {
        const std::string kind(name(allCare[care]));
        const int before = preview.timesBefore[care];
        const int after = preview.timesAfter[care];
        times[kind] = {{"before", before}, {"after", after}};
        if (before == after) continue;
        console.line(console.say(
            {"said.wouldBe",
             {{"care", kind}, {"before", std::int64_t{before}}, {"after", std::int64_t{after}}}}));
    }
    console.value({{"days", days},
                   {"concerned", preview.concerned},
                   {"changed", preview.changed},
                   {"times", times},
                   {"lines", lines}});
    return done;
}

Done writeRule(Book& book, const RuleChange& change) {
    BURROW_TRY(const auto info, roomInfo(book));
    const auto fields = fieldsOf(change, info);
    if (fields.empty()) return {};
    BURROW_TRY(const auto changes, book.record(SetDraft{ThingType::book, book.id().uuid, fields}));
    static_cast<void>(changes);
    return {};
}

int listRules(const Setting& setting, const Room& room, const RuleOptions& options) {
    auto& console = setting.console;
    json list = json::array();
    const auto show = [&](const Rule& rule) {
        if (!options.id.empty() && rule.id != options.id) return;
        list.push_back(toJson(rule));
        const bool isShipped = rule.origin == RuleOrigin::assets;
        console.line(fmt::format("{:<34} {:<12} {}{}", rule.id, valueText(rule.value), rule.says,
                                 isShipped ? "" : " [" + originText(rule, console) + "]"));
    };
    for (const auto* rule : room.rules().all()) show(*rule);
    for (const auto& rule : room.rules().ownRules()) {
        if (rule.origin != RuleOrigin::keeper) show(rule);
    }
    if (list.empty()) return console.trouble(Message{"rules.unknown", {{"rule", options.id}}});
    console.value(list);
    return done;
}

}  // namespace

int why(const Setting& setting, const Path& path, const std::string& tag, const std::string& care,
        const std::string& on) {
    auto& console = setting.console;
    const auto only = parseCare(care);
    if (!only && !care.empty()) {
        return console.trouble(Message{"why.unknownCare", {{"care", care}}});
    }
    const auto looking = lookAt(setting, path, tag, on);
    if (!looking) return console.trouble(looking.error());
    const auto& resident = *looking->resident;
    const auto& room = looking->room;
    console.line(fmt::format("{}  {}", resident.subject().number, resident.subject().species));
    console.line(console.say(resident.plan.stage.how));
    const PlainForecast forecast;
    json answers = json::array();
    for (const auto kind : allCare) {
        if (only && kind != *only) continue;
        const auto why = explain(kind, resident.input(), room.rules(), room.day(), forecast);
        answers.push_back(explained(resident, why, console));
        print(resident, why, only.has_value(), console);
    }
    auto value = toJson(resident, console);
    value["day"] = isoDate(room.day().today);
    value["phase"] = std::string(name(resident.plan.phase));
    value["care"] = std::move(answers);
    console.value(value);
    return done;
}

int rules(const Setting& setting, const Path& path, const RuleOptions& options) {
    auto& console = setting.console;
    const bool isWritten = options.value && options.previewDays == 0;
    auto book = isWritten ? openToWrite(path, setting) : openToRead(path, setting);
    if (!book) return console.trouble(book.error());
    if (options.value) {
        if (options.id.empty()) return console.trouble(Message{"rules.needsRule"});
        const auto key = keyFor(setting, *book, options);
        if (!key) return console.trouble(key.error());
        const RuleChange change{*key, *options.value};
        const OwnRule own{key->text(), change.value};
        const auto possible =
            setting.reference.rules.with(std::span(&own, change.isTakenBack() ? 0 : 1));
        if (!possible) return console.trouble(possible.error());
        if (!isWritten) {
            const auto room = roomOn(*book, setting, std::nullopt);
            if (!room) return console.trouble(room.error());
            return showPreview(setting, *room,
                               rulesAfter(change, room->info(), setting.reference.rules),
                               options.previewDays);
        }
        if (const auto written = writeRule(*book, change); !written) {
            return console.trouble(written.error());
        }
    }
    const auto room = roomOn(*book, setting, std::nullopt);
    if (!room) return console.trouble(room.error());
    return listRules(setting, *room, options);
}

}  // namespace burrow::terminal
