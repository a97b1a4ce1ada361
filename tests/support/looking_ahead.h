// A small room with random lives, for what looks ahead.
#pragma once

#include "room/ahead.h"
#include "support/book.h"
#include "support/checks.h"
#include "support/planning.h"

namespace burrow::test {

inline const Room::Reference& shippedReference() {
    static const Room::Reference shared{sharedProfiles(), sharedRules()};
    return shared;
}

/// A book on the evening of 8 May 2026 (a Friday).
class AheadBook : public TestBook {
public:
    AheadBook() : TestBook(1) {}

    [[nodiscard]] CivilDay today() const { return Zone::utc().dayOf(clock.now()); }
    [[nodiscard]] Room room() {
        return Room::load(book, shippedReference(), {today(), Zone::utc()}).value();
    }
    void set(const FieldValues& fields) {
        if (!fields.empty()) must(book.record(SetDraft{ThingType::book, book.id().uuid, fields}));
    }
    SubjectId tub(const std::string& number, const std::string& species, const std::string& place,
                  double span, Form form = Form::animal, int count = 1) {
        const auto id = add(number, species, form, count);
        if (!place.empty()) {
            must(book.record(SetDraft{ThingType::subject, id.uuid, {{"place", place}}}));
        }
        if (span > 0) on(id, FactKind::measured, -60, {.span = Millimetres{span}});
        return id;
    }
    void on(SubjectId id, FactKind kind, int daysFromNow, FactBody body = {}) {
        log(id, kind, std::move(body), Instant{clock.now().ms + daysFromNow * msPerDay});
    }
    void ate(SubjectId id, int daysFromNow, int count = 1, double length = 8) {
        on(id, FactKind::offered, daysFromNow,
           {.prey = "cricket",
            .preyLength = Millimetres{length},
            .count = count,
            .outcome = Outcome::ate});
    }

    /// Up to ten tubs with up to eight facts each.
    void fillAtRandom() {
        const int tubs = *rc::gen::inRange(1, 11);
        const auto species = sharedProfiles().all();
        for (int i = 0; i < tubs; ++i) {
            const auto at = *rc::gen::inRange<std::size_t>(0, species.size() + 5);
            const auto form =
                *rc::gen::element(Form::animal, Form::animal, Form::animal, Form::group, Form::lot);
            const auto id = tub(
                std::to_string(100 + i), at < species.size() ? species[at].name : "Unknown unknown",
                *rc::gen::element<std::string>("A / 1", "A / 2", "B / 1", "B / 7", ""),
                *rc::gen::element(0.0, 12.0, 60.0, 150.0), form,
                form == Form::animal ? 1 : *rc::gen::inRange(2, 30));
            const int facts = *rc::gen::inRange(0, 9);
            int day = -60;
            for (int fact = 0; fact < facts; ++fact) {
                day = std::min(0, day + *rc::gen::inRange(1, 12));
                const auto kind = *rc::gen::element(
                    FactKind::offered, FactKind::offered, FactKind::watered, FactKind::dampened,
                    FactKind::moulted, FactKind::premoultSign, FactKind::sacLaid, FactKind::seen);
                auto body = anyFactBody(kind, today() + day);
                if (kind == FactKind::premoultSign) body.sign = "dull";
                on(id, kind, day, std::move(body));
            }
        }
    }
};

}  // namespace burrow::test
