#include "viewmodels/deeds.h"

#include "viewmodels/wording.h"

namespace burrow {

ResidentPtr residentOf(const Desk& desk, const QString& subject) {
    const auto id = Uuid::parse(subject.toStdString());
    return id && desk.room() ? desk.room()->find(SubjectId{*id}) : nullptr;
}

PreySuggestion suggestionFor(const Resident& resident, const Desk& desk) {
    const auto rules = desk.room()->rulesFor(resident);
    const auto input = resident.input();
    const auto closures = closuresOf(input, resident.plan.stage, rules);
    return suggestPrey(input, resident.plan.stage, closures, rules, desk.today());
}

FactDraft offerOf(const Resident& resident, const PreySuggestion& prey, Outcome outcome) {
    FactDraft draft{resident.subject().id, FactKind::offered, {}, std::nullopt};
    draft.body.prey = prey.kind;
    if (prey.length.value > 0) draft.body.preyLength = prey.length;
    draft.body.count = prey.count;
    draft.body.outcome = outcome;
    return draft;
}

FactDraft usualFeeding(const Resident& resident, const Desk& desk) {
    return offerOf(resident, suggestionFor(resident, desk), Outcome::ate);
}

void logFact(Desk& desk, QObject* context, const Resident& resident, FactDraft fact,
             Desk::Then then) {
    logFacts(desk, context, resident, {std::move(fact)}, std::move(then));
}

void logFacts(Desk& desk, QObject* context, const Resident& resident, std::vector<FactDraft> facts,
              Desk::Then then) {
    if (facts.empty()) return;
    Deed deed;
    deed.tag = toQt(resident.subject().number);
    deed.said = saidOf(facts.front(), resident.subject().form);
    deed.compose = [facts = std::move(facts)](Book&) -> Result<std::vector<Draft>> {
        return std::vector<Draft>(facts.begin(), facts.end());
    };
    desk.act(context, std::move(deed), std::move(then));
}

void logEatenAfterAll(Desk& desk, QObject* context, const Resident& resident, Desk::Then then) {
    Deed deed;
    deed.tag = toQt(resident.subject().number);
    deed.said = {"did.eatenAfterAll"};
    deed.compose = [id = resident.subject().id](Book& book) -> Result<std::vector<Draft>> {
        constexpr int recent = 50;
        BURROW_TRY(const auto facts, history(book, id, recent));
        for (const auto& fact : facts) {
            if (fact.kind != FactKind::offered || fact.body.outcome == Outcome::ate) continue;
            auto body = fact.body;
            body.outcome = Outcome::ate;
            return std::vector<Draft>{AmendDraft{fact.id, body, std::nullopt}};
        }
        return std::vector<Draft>{FactDraft{id, FactKind::leftoversOut, {}, std::nullopt}};
    };
    desk.act(context, std::move(deed), std::move(then));
}

QString alsoText(const Visit& visit, const Desk& desk) {
    QStringList others;
    for (std::size_t i = 1; i < visit.answers.size(); ++i) {
        others.append(desk.say({"also." + std::string(name(visit.answers[i].care))}));
    }
    if (others.isEmpty()) return {};
    return desk.say({"due.also", {{"others", others.join(QStringLiteral(", ")).toStdString()}}});
}

}  // namespace burrow
