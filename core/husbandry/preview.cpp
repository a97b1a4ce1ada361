#include "husbandry/preview.h"

namespace burrow {
namespace {

using DaysByCare = std::array<std::vector<CivilDay>, allCare.size()>;

DaysByCare daysOf(const std::vector<ComingTask>& tasks) {
    DaysByCare days;
    for (const auto& task : tasks) days[static_cast<std::size_t>(task.care)].push_back(task.day);
    return days;
}

/// One subject under both rules.
void compare(std::size_t at, const PlanInput& input, const Rules& before, const Rules& after,
             const PlanDay& day, int days, const Forecast& forecasts, Preview& preview) {
    const auto old = outlookFor(input, before, day, forecasts);
    const auto now = outlookFor(input, after, day, forecasts);
    const auto oldDays = daysOf(comingTasks(input, before, day, days, forecasts));
    const auto nowDays = daysOf(comingTasks(input, after, day, days, forecasts));
    bool isChanged = false;
    for (std::size_t care = 0; care < allCare.size(); ++care) {
        preview.timesBefore[care] += static_cast<int>(oldDays[care].size());
        preview.timesAfter[care] += static_cast<int>(nowDays[care].size());
        if (old.verdicts[care] == now.verdicts[care] && oldDays[care] == nowDays[care]) continue;
        preview.lines.push_back(
            {at, old.verdicts[care], now.verdicts[care], oldDays[care], nowDays[care]});
        isChanged = true;
    }
    if (isChanged) ++preview.changed;
}

}  // namespace

Preview previewRules(std::span<const PlanInput> inputs, const Rules& before, const Rules& after,
                     const PlanDay& day, int days, const Forecast& forecasts) {
    Preview preview;
    for (std::size_t at = 0; at < inputs.size(); ++at) {
        const auto subject = inputs[at].ruleSubject();
        if (before.of(subject).sameValues(after.of(subject))) continue;
        ++preview.concerned;
        compare(at, inputs[at], before, after, day, days, forecasts, preview);
    }
    return preview;
}

Message PreviewLine::says() const {
    Message message("preview.window", {{"care", std::string(name(after.care))}});
    auto& arguments = message.arguments;
    if (daysBefore.size() != daysAfter.size()) {
        message.id = daysBefore.empty()  ? "preview.added"
                     : daysAfter.empty() ? "preview.gone"
                                         : "preview.times";
        arguments.push_back({"before", static_cast<std::int64_t>(daysBefore.size())});
        arguments.push_back({"after", static_cast<std::int64_t>(daysAfter.size())});
        const auto& shown = daysAfter.empty() ? daysBefore : daysAfter;
        arguments.push_back({"day", shown.front()});
    } else if (daysBefore != daysAfter) {
        std::size_t first = 0;
        while (daysBefore[first] == daysAfter[first]) ++first;
        message.id = "preview.moved";
        arguments.push_back({"before", daysBefore[first]});
        arguments.push_back({"after", daysAfter[first]});
    }
    return message;
}

}  // namespace burrow
