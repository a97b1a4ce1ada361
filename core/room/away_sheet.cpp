#include "room/away_sheet.h"

#include <map>
#include <set>

#include "room/ahead.h"

namespace burrow {
namespace {

std::string placeName(const Place& place, const Words& words) {
    const auto text = place.shelfOnly().text();
    return text.empty() ? words.say("away.noPlace") : text;
}

std::string careWord(Care care, const Words& words) {
    return words.say("away.do." + std::string(name(care)));
}

/// Everyone's cautions, the gravest first.
std::vector<Caution> cautionsOf(std::span<const ResidentPtr> residents) {
    std::set<Caution> all;
    for (const auto& resident : residents) {
        if (resident->profile == nullptr) {
            all.insert(Caution::unknown);
            continue;
        }
        for (const auto caution : cautions(*resident->profile)) all.insert(caution);
    }
    return {all.begin(), all.end()};
}

std::vector<documents::SitterSheet::MapShelf> mapOf(std::span<const ResidentPtr> residents,
                                                    const AwayPlan& plan, const Words& words) {
    std::set<SubjectId> shut;
    for (const auto& each : plan.shut) shut.insert(each.resident->subject().id);
    std::vector<documents::SitterSheet::MapShelf> map;
    const Place* last = nullptr;
    for (const auto& resident : residents) {
        const auto& place = resident->kept.place;
        if (last == nullptr || !(last->shelfOnly() == place.shelfOnly())) {
            map.push_back({placeName(place, words), {}});
        }
        last = &place;
        const auto& subject = resident->subject();
        map.back().tubs.push_back({subject.number, shut.contains(subject.id)});
    }
    return map;
}

}  // namespace

std::vector<AwayShelf> shelvesOf(std::span<const AwayTask> tasks, const Words& words,
                                 CivilDay today) {
    std::vector<AwayShelf> shelves;
    std::map<Care, std::string> numbers;
    std::vector<std::string> meals;
    const auto close = [&] {
        if (shelves.empty()) return;
        auto& lines = shelves.back().lines;
        for (const auto& [care, list] : numbers) {
            lines.push_back(words.say(
                {"away.line", {{"what", careWord(care, words)}, {"numbers", list}}}, today));
        }
        lines.insert(lines.end(), meals.begin(), meals.end());
        numbers.clear();
        meals.clear();
    };
    for (const auto& task : tasks) {
        const auto place = task.resident->kept.place.shelfOnly();
        if (shelves.empty() || !(shelves.back().place == place)) {
            close();
            shelves.push_back({place, {}});
        }
        const auto& number = task.resident->subject().number;
        if (task.prey) {
            meals.push_back(
                words.say({"away.line.feed",
                           {{"number", number}, {"amount", words.say(task.prey->amount(), today)}}},
                          today));
            continue;
        }
        auto& list = numbers[task.care];
        list += list.empty() ? number : ", " + number;
    }
    close();
    return shelves;
}

std::string shutText(const Shut& shut, const Words& words, CivilDay today) {
    std::string text;
    for (const auto& reason : shut.reasons) {
        text += (text.empty() ? "" : " ") + words.say(reason.says, today) + ".";
    }
    return text;
}

std::string waitText(const AwayWait& wait, const Words& words, CivilDay today) {
    return words.say({wait.isLong ? "away.wait.long" : "away.wait",
                      {{"care", words.say("care." + std::string(name(wait.care)))},
                       {"days", std::int64_t{wait.lateBy}}}},
                     today);
}

documents::SitterSheet sitterSheetFor(const AwayPlan& plan, const Room& room, const Words& words) {
    const auto today = room.day().today;
    // Seen from far away every day is named with its year: paper is read on any day.
    const auto printed = today + 1000;
    documents::SitterSheet sheet;
    sheet.room = room.info().name;
    sheet.contact = room.info().contact;
    sheet.call = room.info().other(setting::sitterCall);
    sheet.from = plan.days.from;
    sheet.to = plan.days.to;
    sheet.date = today;
    for (const auto& visit : plan.visits) {
        documents::SitterSheet::Visit written{visit.day, {}};
        for (auto& shelf : shelvesOf(visit.tasks, words, visit.day)) {
            written.shelves.push_back({placeName(shelf.place, words), std::move(shelf.lines)});
        }
        sheet.visits.push_back(std::move(written));
    }
    for (const auto& each : plan.shut) {
        const auto& subject = each.resident->subject();
        const auto text = each.resident->kept.place.text();
        sheet.shut.push_back(
            {subject.number,
             each.resident->profile != nullptr ? each.resident->profile->name : subject.species,
             text.empty() ? words.say("away.noPlace") : text, shutText(each, words, printed),
             each.isEstimate()});
    }
    const auto everyone = caredFor(room);
    sheet.map = mapOf(everyone, plan, words);
    sheet.cautions = cautionsOf(everyone);
    return sheet;
}

}  // namespace burrow
