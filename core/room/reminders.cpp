#include "room/reminders.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <nlohmann/json.hpp>
#include <set>

namespace burrow {
namespace {

constexpr std::int64_t msPerDay = 86'400'000;
constexpr std::string_view roundId = "round";

/// What is due in the room today.
struct RoundTally {
    std::int64_t feed = 0;
    std::int64_t other = 0;
    std::int64_t held = 0;
    Priority greatest = Priority::none;
    std::optional<Place> first;
    std::vector<SubjectId> subjects;

    void add(const Stub& stub) {
        const auto& glance = stub.glance();
        const auto main = glance.main();
        if (!main) return;
        if (glance.isHeld()) {
            ++held;
            return;
        }
        ++(*main == Care::feed || glance.isDue(Care::feed) ? feed : other);
        greatest = std::max(greatest, glance.priority);
        if (!first) first = stub.walk().place.shelfOnly();
        subjects.push_back(stub.id());
    }
};

/// "A / 1", of the parts that are set.
std::string placeText(const Place& place) {
    std::string text;
    for (const auto part : {&Place::room, &Place::rack, &Place::shelf}) {
        if ((place.*part).empty()) continue;
        text += (text.empty() ? "" : " / ") + place.*part;
    }
    return text;
}

class Deciding {
public:
    Deciding(const Room& room, const ReminderRules& rules, const ReminderChoice& choice,
             std::span<const Told> told, Instant now)
        : room_(room),
          rules_(rules),
          choice_(choice),
          told_(told),
          now_(now),
          zone_(room.day().zone) {
        for (const auto& one : told) keys_.insert(one.keys.begin(), one.keys.end());
    }

    std::vector<Reminder> decide() {
        if (!choice_.isOn || zone_.dayOf(now_) != room_.day().today) return {};
        look();
        auto round = roundReminder();
        auto apart = apartReminders();
        const auto soonest = afterQuiet(choice_, zone_, now_);
        if (!soonest) return {};
        const auto day = zone_.dayOf(*soonest);
        // Tomorrow has a round of its own.
        const bool keepsOne = round || day != room_.day().today;
        const auto room = std::max(0, rules_.mostADay - givenOn(day) - (keepsOne ? 1 : 0));
        const auto now = std::min(apart.size(), static_cast<std::size_t>(room));
        std::vector<Reminder> reminders;
        for (std::size_t i = 0; i < now; ++i) {
            apart[i].when = *soonest;
            reminders.push_back(std::move(apart[i]));
        }
        apart.erase(apart.begin(), apart.begin() + static_cast<std::ptrdiff_t>(now));
        if (round) {
            for (auto& one : apart) takeAlong(*round, std::move(one));
            reminders.push_back(*std::move(round));
        } else if (!apart.empty()) {
            // One tomorrow for all that is left, whatever the day brings.
            const auto next = afterQuiet(choice_, zone_, zone_.at(day + 1, 0));
            if (next) reminders.push_back(together(std::move(apart), *next));
        }
        std::stable_sort(reminders.begin(), reminders.end(),
                         [](const Reminder& a, const Reminder& b) { return a.when < b.when; });
        return reminders;
    }

private:
    void look() {
        room_.forEach([this](const StubPtr& stub) {
            if (stub->glance().standing != Standing::here) return;
            tally_.add(*stub);
            // Only who has something pressing is looked at closer.
            if (stub->glance().priority < leastApart()) return;
            for (const auto& rule : rules_.apart) lookApart(rule, *stub);
        });
    }

    [[nodiscard]] Priority leastApart() const {
        auto least = Priority::urgent;
        for (const auto& rule : rules_.apart) least = std::min(least, rule.least);
        return least;
    }

    void lookApart(const ApartRule& rule, const Stub& stub) {
        if (!stub.glance().isDue(rule.care)) return;
        const auto& answer = stub.resident()->plan.of(rule.care);
        if (!rule.fits(answer)) return;
        const auto key = fmt::format("{} {} {}", rule.id, stub.id().text(),
                                     answer.since ? isoDate(*answer.since) : std::string());
        if (keys_.contains(key)) return;
        auto& group = groupOf(rule);
        group.keys.push_back(key);
        group.subjects.push_back(stub.id());
        const auto& code = room_.info().code;
        numbers_[rule.id].push_back(code.empty() ? stub.walk().number
                                                 : code + "-" + stub.walk().number);
    }

    Reminder& groupOf(const ApartRule& rule) {
        const auto found = std::find_if(groups_.begin(), groups_.end(),
                                        [&](const Reminder& group) { return group.id == rule.id; });
        if (found != groups_.end()) return *found;
        Reminder group;
        group.id = rule.id;
        group.isUrgent = true;
        group.title = title("remind." + rule.id + ".title");
        return groups_.emplace_back(std::move(group));
    }

    [[nodiscard]] Message title(std::string id) const {
        return {std::move(id), {{"room", room_.info().name}}};
    }

    std::vector<Reminder> apartReminders() {
        for (auto& group : groups_) {
            const auto count = static_cast<std::int64_t>(group.subjects.size());
            group.parts.push_back({"remind." + group.id, {{"count", count}}});
            group.parts.push_back(who(numbers_[group.id]));
        }
        return std::move(groups_);
    }

    static Message who(const std::vector<std::string>& numbers) {
        constexpr std::size_t most = 3;
        std::string names;
        for (std::size_t i = 0; i < std::min(most, numbers.size()); ++i) {
            names += (i > 0 ? ", " : "") + numbers[i];
        }
        if (numbers.size() <= most) return {"remind.who", {{"who", names}}};
        const auto more = static_cast<std::int64_t>(numbers.size() - most);
        return {"remind.whoMore", {{"who", names}, {"more", more}}};
    }

    std::optional<Reminder> roundReminder() {
        const auto today = room_.day().today;
        const auto key = fmt::format("{} {}", roundId, isoDate(today));
        const bool isWorth = tally_.greatest >= rules_.roundFrom && !keys_.contains(key);
        const auto planned = roundOn(today, choice_, zone_);
        if (!isWorth || !planned || givenOn(today) >= rules_.mostADay) return std::nullopt;
        // Late is better than not at all, but not in the night.
        const auto when = std::max(*planned, now_);
        if (isQuiet(choice_, zone_, when)) return std::nullopt;
        Reminder round;
        round.when = when;
        round.id = roundId;
        round.title = title("remind.round.title");
        const auto part = [&](const char* id, std::int64_t count) {
            if (count > 0) round.parts.push_back({id, {{"count", count}}});
        };
        part("remind.feed", tally_.feed);
        part("remind.other", tally_.other);
        part("remind.held", tally_.held);
        if (const auto place = placeText(tally_.first.value_or(Place{})); !place.empty()) {
            round.parts.push_back({"remind.first", {{"place", place}}});
        }
        round.subjects = std::move(tally_.subjects);
        round.keys.push_back(key);
        return round;
    }

    static void takeAlong(Reminder& round, Reminder urgent) {
        round.parts.insert(round.parts.begin(), urgent.parts.front());
        round.keys.insert(round.keys.end(), urgent.keys.begin(), urgent.keys.end());
        round.isUrgent = true;
    }

    [[nodiscard]] Reminder together(std::vector<Reminder> urgent, Instant when) const {
        auto one = std::move(urgent.front());
        one.when = when;
        if (urgent.size() > 1) one.title = title("remind.several.title");
        for (std::size_t i = 1; i < urgent.size(); ++i) {
            one.subjects.insert(one.subjects.end(), urgent[i].subjects.begin(),
                                urgent[i].subjects.end());
            takeAlong(one, std::move(urgent[i]));
        }
        return one;
    }

    [[nodiscard]] int givenOn(CivilDay day) const {
        return static_cast<int>(std::count_if(told_.begin(), told_.end(), [&](const Told& one) {
            return zone_.dayOf(one.at) == day;
        }));
    }

    const Room& room_;
    const ReminderRules& rules_;
    const ReminderChoice& choice_;
    std::span<const Told> told_;
    Instant now_;
    const Zone& zone_;
    std::set<std::string> keys_;
    RoundTally tally_;
    std::vector<Reminder> groups_;  // in the order of whom they are about first
    std::map<std::string, std::vector<std::string>> numbers_;
};

}  // namespace

std::vector<Reminder> remindersFor(const Room& room, const ReminderRules& rules,
                                   const ReminderChoice& choice, std::span<const Told> told,
                                   Instant now) {
    return Deciding(room, rules, choice, told, now).decide();
}

std::string sentence(const Reminder& reminder, const Words& words, CivilDay today) {
    std::string text;
    for (const auto& part : reminder.parts) {
        if (!text.empty()) text += ", ";
        text += words.say(part, today);
    }
    // Any part may come first.
    const bool isLower = !text.empty() && text.front() >= 'a' && text.front() <= 'z';
    if (isLower) text.front() = static_cast<char>(text.front() - 'a' + 'A');
    return text;
}

std::vector<Told> remembered(std::vector<Told> told, const ReminderRules& rules, Instant now) {
    const auto oldest = now.ms - rules.rememberedDays * msPerDay;
    std::erase_if(told, [&](const Told& one) { return one.at.ms < oldest; });
    return told;
}

std::string toldText(std::span<const Told> told) {
    auto list = nlohmann::json::array();
    for (const auto& one : told) list.push_back({{"at", one.at.ms}, {"keys", one.keys}});
    return list.dump();
}

std::vector<Told> toldFrom(std::string_view text) {
    const auto list = nlohmann::json::parse(text, nullptr, false);
    std::vector<Told> told;
    if (!list.is_array()) return told;
    for (const auto& one : list) {
        if (!one.is_object() || !one.contains("at") || !one["at"].is_number_integer()) continue;
        Told read{{one["at"].get<std::int64_t>()}, {}};
        const auto keys = one.value("keys", nlohmann::json::array());
        for (const auto& key : keys) {
            if (key.is_string()) read.keys.push_back(key.get<std::string>());
        }
        told.push_back(std::move(read));
    }
    return told;
}

}  // namespace burrow
