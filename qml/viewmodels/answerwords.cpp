#include "viewmodels/answerwords.h"

#include "base/text.h"

namespace burrow {
namespace {

/// "Old World tree-dwelling" for "old_world arboreal".
std::string kindWords(const std::string& kind, const Desk& desk) {
    QStringList words;
    for (const auto& word : split(kind, ' ')) {
        words.append(desk.say(Message("ruleKind." + std::string(word))));
    }
    return words.join(QStringLiteral(" ")).toStdString();
}

/// Which of habit, order and region a kind is about; "kind" for several of them.
std::string aspectOf(const std::string& kind) {
    if (kind.find(' ') != std::string::npos) return "kind";
    if (kind.ends_with("_world")) return "region";
    const bool isHabit = kind == "terrestrial" || kind == "arboreal" || kind == "fossorial";
    return isHabit ? "habit" : "order";
}

/// The number of the animal that a value is for; what stands in the key where it is not in the room.
std::string numberOf(const std::string& animal, const Desk& desk) {
    const auto id = Uuid::parse(animal);
    const auto resident = id && desk.room() ? desk.room()->find(SubjectId{*id}) : nullptr;
    return resident ? resident->subject().number : animal;
}

}  // namespace

QString careText(Care care, const Desk& desk) {
    return desk.say(Message("care." + std::string(name(care))));
}

QString stateText(State state, const Desk& desk) {
    return desk.say(Message("answerState." + std::string(name(state))));
}

QString windowText(const Window& window, const Desk& desk) {
    const bool isOpen = window.opens <= desk.today();
    const std::string id = isOpen ? "answerWindow.open" : "answerWindow.closed";
    return desk.say({window.best == window.opens ? id + ".atOnce" : id,
                     {{"opens", window.opens}, {"best", window.best}, {"late", window.late}}});
}

QString ruleValueText(const Rule& rule, const Desk& desk) {
    const std::string unit(name(rule.unit));
    if (const auto* range = std::get_if<Range<double>>(&rule.value)) {
        return desk.say({"rule.range." + unit, {{"least", range->least}, {"most", range->most}}});
    }
    if (const auto* number = std::get_if<double>(&rule.value)) {
        return desk.say({"rule.value." + unit, {{"value", *number}}});
    }
    const auto& word = std::get<std::string>(rule.value);
    return desk.say({"rule.prey", {{"prey", word}, {"count", 2}}});
}

QString ruleOriginText(const Rule& rule, const Desk& desk) {
    switch (rule.origin) {
        case RuleOrigin::assets: return desk.say("ruleFrom.shipped");
        case RuleOrigin::kind:
            return desk.say(
                {"ruleFrom." + aspectOf(rule.scope), {{"scope", kindWords(rule.scope, desk)}}});
        case RuleOrigin::keeper: return desk.say("ruleFrom.you");
        case RuleOrigin::species: return desk.say({"ruleFrom.species", {{"scope", rule.scope}}});
        case RuleOrigin::place: return desk.say({"ruleFrom.place", {{"scope", rule.scope}}});
        case RuleOrigin::animal:
            return desk.say({"ruleFrom.animal", {{"scope", numberOf(rule.scope, desk)}}});
    }
    return {};
}

bool isOwnRule(const Rule& rule) {
    return rule.origin != RuleOrigin::assets && rule.origin != RuleOrigin::kind;
}

}  // namespace burrow
