#include "viewmodels/animallines.h"

#include <algorithm>

namespace burrow {
namespace {

bool isLong(const Resident& resident) {
    return resident.profile != nullptr && isMeasuredByBody(resident.profile->order);
}

QVariantList yearsFrom(CivilDay first, CivilDay today) {
    QVariantList labels;
    for (int year = yearMonthDay(first).year + 1; year <= yearMonthDay(today).year; ++year) {
        labels.append(QVariantMap{{QStringLiteral("day"), civilDay({year, 1, 1})->days},
                                  {QStringLiteral("text"), QString::number(year)}});
    }
    return labels;
}

/// Until when it hardened: until its fangs were seen black, else as long as the rules say.
int hardeningOf(const Fact& moult, const Fact* fangsBlack, int usual) {
    return fangsBlack != nullptr ? std::max(1, fangsBlack->day - moult.day) : usual;
}

}  // namespace

LifeLine lifeLine(const Resident& resident, std::span<const Fact> facts, const Desk& desk) {
    const auto rules = desk.room()->rulesFor(resident);
    const int usual = rules.dayRange(ruleFor("hardening", resident.plan.stage.growing())).most;
    LifeLine life;
    const Fact* fangs = nullptr;
    CivilDay first = desk.today();
    // Backwards in time, so that what followed a moult is known when it is reached.
    for (const auto& fact : facts) {
        if (fact.kind == FactKind::fangsBlack) fangs = &fact;
        if (fact.kind == FactKind::offered && fact.body.outcome != Outcome::leftIn) {
            const bool took = fact.body.outcome != Outcome::refused;
            life.line.feedings.prepend(QVariantMap{{QStringLiteral("day"), fact.day.days},
                                                   {QStringLiteral("took"), took}});
            first = std::min(first, fact.day);
        }
        if (fact.kind != FactKind::moulted) continue;
        const auto size = markOf(fact, facts);
        life.line.marks.prepend(QVariantMap{
            {QStringLiteral("day"), fact.day.days},
            {QStringLiteral("height"), markHeight(size.carapace, size.span, resident, rules)},
            {QStringLiteral("hardening"), hardeningOf(fact, fangs, usual)},
            {QStringLiteral("photo"), false}});
        life.entries.prepend(toQt(fact.id.text()));
        first = std::min(first, fact.day);
        fangs = nullptr;
    }
    for (const auto& fact : facts) {
        if (fact.kind != FactKind::photo || !fact.body.about) continue;
        const auto at = life.entries.indexOf(toQt(fact.body.about->text()));
        if (at < 0) continue;
        auto mark = life.line.marks[at].toMap();
        mark[QStringLiteral("photo")] = true;
        life.line.marks[at] = mark;
    }
    life.line.nowDay = desk.today().days;
    life.line.description = recentMoultLine(resident, desk).description;
    life.labels = yearsFrom(first, desk.today());
    return life;
}

Growth growthOf(const Resident& resident, std::span<const Fact> facts, const Desk& desk) {
    const auto count = [&](auto size) {
        return std::count_if(facts.begin(), facts.end(),
                             [&](const Fact& fact) { return (fact.body.*size).has_value(); });
    };
    const auto carapaces = count(&FactBody::carapace);
    const auto spans = count(&FactBody::span);
    Growth growth;
    if (std::max(carapaces, spans) < 2) return growth;
    const bool byCarapace = carapaces >= spans;
    const auto size = byCarapace ? &FactBody::carapace : &FactBody::span;
    const char* unit = byCarapace         ? "growth.carapace"
                       : isLong(resident) ? "growth.length"
                                          : "growth.span";
    growth.unit = desk.say(unit);
    std::optional<double> first;
    double last = 0;
    CivilDay firstDay = desk.today();
    for (auto fact = facts.rbegin(); fact != facts.rend(); ++fact) {
        const auto& measured = fact->body.*size;
        if (!measured) continue;
        growth.points.append(QVariantMap{{QStringLiteral("day"), fact->day.days},
                                         {QStringLiteral("value"), measured->value}});
        if (!first) firstDay = fact->day;
        first = first.value_or(measured->value);
        last = measured->value;
    }
    growth.labels = yearsFrom(firstDay, desk.today());
    growth.description = desk.say({"growth.spoken",
                                   {{"unit", growth.unit.toStdString()},
                                    {"count", static_cast<std::int64_t>(growth.points.size())},
                                    {"first", *first},
                                    {"last", last}}});
    return growth;
}

}  // namespace burrow
