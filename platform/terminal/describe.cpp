#include "terminal/describe.h"

#include <fmt/format.h>

namespace burrow::terminal {
namespace {

using nlohmann::json;

template <class T, class Show>
json maybe(const std::optional<T>& value, Show show) {
    return value ? json(show(*value)) : json();
}

json maybeDay(const std::optional<CivilDay>& day) { return maybe(day, isoDate); }
json maybeLength(const std::optional<Millimetres>& length) {
    return maybe(length, [](Millimetres v) { return v.value; });
}

void addIdentity(json& object, const Resident& resident) {
    object["tag"] = maybe(resident.kept.tagCode, [](const std::string& code) { return code; });
    object["code"] = resident.subject().number;
    object["species"] = resident.subject().species;
    object["place"] = resident.kept.place.text();
}

}  // namespace

json toJson(const Resident& resident, const Answer& answer, const Console& console) {
    json object = json::object();
    addIdentity(object, resident);
    object["care"] = std::string(name(answer.care));
    object["state"] = std::string(name(answer.state));
    object["because"] = std::string(name(answer.because));
    object["priority"] = std::string(name(answer.priority));
    object["opens"] = answer.window ? json(isoDate(answer.window->opens)) : json();
    object["best"] = answer.window ? json(isoDate(answer.window->best)) : json();
    object["late"] = answer.window ? json(isoDate(answer.window->late)) : json();
    object["amount"] = maybe(answer.amount, [&](const Message& m) { return console.say(m); });
    object["reason"] = toJson(answer.reason);
    object["text"] = sentence(resident, answer, console);
    return object;
}

std::string sentence(const Resident& resident, const Answer& answer, const Console& console) {
    auto text = fmt::format("{}. {}", console.say(answer.verb(resident.subject().form)),
                            console.say(answer.reason));
    if (answer.amount) text += fmt::format(" ({})", console.say(*answer.amount));
    return text;
}

json toJson(const Rule& rule) {
    return {{"id", rule.id},
            {"value", valueText(rule.value)},
            {"unit", std::string(name(rule.unit))},
            {"from", std::string(name(rule.origin))},
            {"scope", rule.scope.empty() ? json() : json(rule.scope)},
            {"source", rule.source},
            {"says", rule.says}};
}

std::string originText(const Rule& rule, const Console& console) {
    return console.say({"from." + std::string(name(rule.origin)), {{"scope", rule.scope}}});
}

json toJson(const Fact& fact) {
    auto object = burrow::toJson(fact.body);
    object["id"] = fact.id.text();
    object["at"] = isoInstant(fact.happenedAt);
    object["day"] = isoDate(fact.day);
    object["event"] = std::string(spec(fact.kind).name);
    return object;
}

std::string line(const Fact& fact, const Console& console) {
    auto text = fmt::format("{:<18} {:<14}", console.words().day(fact.day, console.today()),
                            spec(fact.kind).name);
    const auto fields = burrow::toJson(fact.body);
    for (const auto& [field, value] : fields.items()) {
        text += fmt::format(" {}={}", field,
                            value.is_string() ? value.get<std::string>() : value.dump());
    }
    return text;
}

json toJson(const Resident& resident, const Console& console) {
    const auto& subject = resident.subject();
    const auto& digest = resident.kept.digest;
    json object = json::object();
    addIdentity(object, resident);
    object["id"] = subject.id.text();
    object["form"] = std::string(name(subject.form));
    object["sex"] = std::string(name(subject.sex));
    object["standing"] = std::string(name(subject.standing));
    object["quarantined"] = subject.quarantined;
    object["count"] = subject.headcount;
    object["hatched_on"] = maybeDay(subject.hatched);
    object["acquired_on"] = maybeDay(subject.acquired);
    object["source"] = subject.source;
    object["note"] = subject.note;
    object["span_mm"] = maybeLength(digest.span);
    object["carapace_mm"] = maybeLength(digest.carapace);
    object["moults"] = digest.moultCount;
    object["last_moult"] = maybeDay(digest.lastMoult());
    object["stage"] = std::string(name(resident.plan.stage.stage));
    object["stage_text"] = console.say(resident.plan.stage.how);
    return object;
}

}  // namespace burrow::terminal
