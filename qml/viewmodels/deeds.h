// What is written with one tap, ready for the desk.
#pragma once

#include "husbandry/prey.h"
#include "viewmodels/desk.h"

namespace burrow {

/// The resident of a subject's id as pages carry it; null for none.
[[nodiscard]] ResidentPtr residentOf(const Desk& desk, const QString& subject);

/// The prey that the planner suggests for it today.
[[nodiscard]] PreySuggestion suggestionFor(const Resident& resident, const Desk& desk);
/// The suggestion as an offer that was taken.
[[nodiscard]] FactDraft usualFeeding(const Resident& resident, const Desk& desk);
[[nodiscard]] FactDraft offerOf(const Resident& resident, const PreySuggestion& prey,
                                Outcome outcome);

/// Writes one fact and fills the undo slot.
void logFact(Desk& desk, QObject* context, const Resident& resident, FactDraft fact,
             Desk::Then then = {});
/// Writes several facts of one tap; the first one is named in the undo slot.
void logFacts(Desk& desk, QObject* context, const Resident& resident, std::vector<FactDraft> facts,
              Desk::Then then = {});
/// The prey that was left in is gone after all: the offer is amended to "ate".
void logEatenAfterAll(Desk& desk, QObject* context, const Resident& resident, Desk::Then then = {});

/// ". Also water, dampen" for what else a visit holds; empty for nothing.
[[nodiscard]] QString alsoText(const Visit& visit, const Desk& desk);

}  // namespace burrow
