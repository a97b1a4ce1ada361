// A record written in a few words, and the rules and species as they are shipped.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "husbandry/due_list.h"
#include "husbandry/planner.h"
#include "husbandry/prey.h"
#include "husbandry/profiles.h"
#include "husbandry/rules.h"
#include "support/assets.h"

namespace burrow::test {

inline Rules shippedRules() { return Rules::fromJson(assetFiles("rules")).value(); }
inline Profiles shippedProfiles() { return Profiles::fromJson(assetFiles("species")).value(); }
inline CivilDay day(std::string_view iso) { return parseIsoDate(iso).value(); }

/// One subject's history. Facts must be added in the order in which they happened; each happens a
/// minute after noon more than the one before, UTC.
class Record {
public:
    Record& add(CivilDay when, FactKind kind, FactBody body = {}) {
        Fact fact;
        fact.kind = kind;
        fact.day = when;
        fact.happenedAt = {when.days * std::int64_t{86'400'000} + 43'200'000 + 60'000 * minute_++};
        fact.body = std::move(body);
        fold(digest, fact);
        return *this;
    }
    Record& add(std::string_view iso, FactKind kind, FactBody body = {}) {
        return add(day(iso), kind, std::move(body));
    }
    Record& offer(std::string_view iso, Outcome outcome, const std::string& prey = "cricket",
                  std::optional<Millimetres> length = std::nullopt) {
        FactBody body;
        body.outcome = outcome;
        if (!prey.empty()) body.prey = prey;
        body.preyLength = length;
        return add(iso, FactKind::offered, body);
    }
    Record& ate(std::string_view iso) { return offer(iso, Outcome::ate); }
    Record& refused(std::string_view iso) { return offer(iso, Outcome::refused); }
    Record& moulted(std::string_view iso) { return add(iso, FactKind::moulted); }
    Record& span(std::string_view iso, double mm) {
        FactBody body;
        body.span = Millimetres{mm};
        return add(iso, FactKind::measured, body);
    }
    Record& carapace(std::string_view iso, double mm) {
        FactBody body;
        body.carapace = Millimetres{mm};
        return add(iso, FactKind::measured, body);
    }

    [[nodiscard]] PlanInput input(const Profile* profile = nullptr) const {
        return {subject, digest, place, profile};
    }

    Subject subject;
    Digest digest;
    Place place;

private:
    int minute_ = 0;
};

inline PlanDay on(std::string_view iso) { return {day(iso), Zone::utc()}; }

}  // namespace burrow::test
