// Hand-worked tables of the planner: a subject written in a few words, and what is said of it.
#pragma once

#include <cmath>
#include <cstdio>
#include <functional>

#include "support/planning.h"

namespace burrow::test {

inline int failures = 0;

inline void expect(const std::string& what, const std::string& actual,
                   const std::string& expected) {
    if (actual == expected) return;
    ++failures;
    std::fprintf(stderr, "%s\n  is       %s\n  expected %s\n", what.c_str(), actual.c_str(),
                 expected.c_str());
}

inline void expectNear(const std::string& what, double actual, double expected, double most) {
    if (std::abs(actual - expected) <= most) return;
    ++failures;
    std::fprintf(stderr, "%s is %.6f, not %.6f\n", what.c_str(), actual, expected);
}

/// A record that is sized long before anything else happens, with all else the planner may be told.
struct Tub : Record {
    explicit Tub(double span) { this->span("2020-01-01", span); }

    Tub& fact(std::string_view iso, FactKind kind, FactBody body = {}) {
        add(iso, kind, std::move(body));
        return *this;
    }
    Tub& fed(std::string_view iso, double prey = 0) {
        offer(iso, Outcome::ate, "cricket",
              prey > 0 ? std::optional(Millimetres{prey}) : std::nullopt);
        return *this;
    }
    Tub& warm(std::string_view iso, double mean) {
        warmth = LoggedWarmth{{mean}, day(iso)};
        return *this;
    }
    Tub& of(const char* species) {
        profile = sharedProfiles().find(species);
        subject.species = species;
        return *this;
    }
    Tub& with(const std::function<void(Subject&)>& change) {
        change(subject);
        return *this;
    }
    [[nodiscard]] PlanInput all() const {
        auto made = input(profile);
        made.home = home;
        made.quarantinedSince = quarantinedSince;
        made.warmth = warmth;
        return made;
    }

    const Profile* profile = nullptr;
    std::optional<HomeSize> home;
    std::optional<CivilDay> quarantinedSince;
    std::optional<LoggedWarmth> warmth;
};

inline constexpr double sling = 20;
inline constexpr double juvenile = 60;
inline constexpr double adult = 140;

inline std::string windowText(const Verdict& verdict) {
    if (!verdict.window) return "-";
    return isoDate(verdict.window->opens) + " " + isoDate(verdict.window->best) + " " +
           isoDate(verdict.window->late);
}

inline Answer answerOf(const Tub& tub, Care care, std::string_view today,
                       const Rules& rules = sharedRules()) {
    return planFor(tub.all(), rules, on(today), plainForecast()).of(care);
}

inline std::string said(const Tub& tub, const Answer& answer, std::string_view today) {
    return sharedWords().say(answer.verb(tub.subject.form), day(today)) + ". " +
           sharedWords().say(answer.reason, day(today));
}

struct Row {
    const char* name;
    Tub tub;
    Care care;
    const char* today;
    const char* window;
    const char* words;
};

inline void check(const std::vector<Row>& rows) {
    for (const auto& row : rows) {
        const auto answer = answerOf(row.tub, row.care, row.today);
        expect(row.name, windowText(answer), row.window);
        expect(row.name, said(row.tub, answer, row.today), row.words);
    }
}

inline FactBody span(double mm) {
    FactBody body;
    body.span = Millimetres{mm};
    return body;
}
inline FactBody count(int heads) {
    FactBody body;
    body.count = heads;
    return body;
}

using Kind = FactKind;

/// The exit status of the program.
inline int verdictOfTables() {
    if (failures > 0) std::fprintf(stderr, "%d expectations failed\n", failures);
    return failures > 0 ? 1 : 0;
}

}  // namespace burrow::test
