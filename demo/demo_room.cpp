#include "demo_room.h"

#include <algorithm>

#include "cast.h"
#include "furnishing.h"
#include "journal/fields.h"
#include "life.h"
#include "tags/code.h"

namespace burrow::demo {
namespace {

constexpr const char* roomName = "Kiln Row";
constexpr const char* roomCode = "KR";
constexpr const char* contact = "Kiln Row (an invented room, not a real keeper)";

/// How to reach the keeper, and feeders counted at the end with invented prices.
FieldValues settings(CivilDay until) {
    const auto counted = [](const char* what, CivilDay day) {
        return std::string(what) + isoDate(day);
    };
    return {{setting::contact, std::string(contact)},
            {"feeders.cricket.small", counted("60, 6 mm, ", until - 3)},
            {"feeders.cricket.large", counted("25, 17 mm, ", until - 3)},
            {"feeders.fruit_fly.all", counted("80, 2.5 mm, ", until - 1)},
            {"price.cricket.small", "3.20 for 100"},
            {"price.cricket.medium", "3.60 for 80"},
            {"price.cricket.large", "3.90 for 50"}};
}

Done addCast(Act& act, const std::vector<Role>& cast, Random& random) {
    for (const auto& role : cast) {
        act.startNext();
        BURROW_DO(act.add(
            SetDraft{ThingType::enclosure, role.enclosure.id.uuid, toFields(role.enclosure)}));
        BURROW_DO(
            act.add(SetDraft{ThingType::subject, role.subject.id.uuid, toFields(role.subject)}));
        const Tag tag{tags::generateCode(random), tags::printedSide, role.subject.id, std::nullopt};
        BURROW_DO(act.add(SetDraft{ThingType::tag, tagThing(tag.code), toFields(tag)}));
    }
    return {};
}

Done addFurniture(Act& act, Book& book, const Options& options, Dice& dice) {
    act.startNext();
    for (const auto& home : emptyHomes(book)) {
        BURROW_DO(act.add(SetDraft{ThingType::enclosure, home.id.uuid, toFields(home)}));
    }
    BURROW_TRY(auto readings, airOfRoom(book, options, dice));
    for (auto& reading : readings) {
        act.startNext();
        BURROW_DO(act.add(std::move(reading)));
    }
    return {};
}

}  // namespace

Result<Made> makeRoom(const std::filesystem::path& path, const Options& options,
                      const Room::Reference& reference) {
    const auto start = options.until - 365 * options.years;
    FixedClock clock(options.zone.at(start, 17 * 3600));
    SeededRandom random(options.seed);
    Dice dice(options.seed);
    BURROW_TRY(auto book, Book::create(path, roomName, roomCode, {clock, random, options.zone}));
    auto cast = castFor(options, reference, book, dice);

    std::vector<FactDraft> facts;
    std::vector<Millimetres> spans;
    for (const auto& role : cast) {
        auto life = playLife(role, options, reference, dice);
        spans.push_back(spanAfter(role, life));
        std::move(life.begin(), life.end(), std::back_inserter(facts));
    }
    for (std::size_t i = 0; i < cast.size(); ++i) {
        fitHome(cast[i].enclosure, *cast[i].profile, spans[i], dice);
    }
    std::stable_sort(facts.begin(), facts.end(), [](const FactDraft& a, const FactDraft& b) {
        return a.happenedAt < b.happenedAt;
    });

    BURROW_TRY(auto act, book.beginAct());
    BURROW_DO(act.add(SetDraft{ThingType::book, book.id().uuid, settings(options.until)}));
    BURROW_DO(addCast(act, cast, random));
    for (const auto& fact : facts) {
        clock.set(*fact.happenedAt);
        act.startNext();
        BURROW_DO(act.add(fact));
    }
    BURROW_DO(addFurniture(act, book, options, dice));
    BURROW_TRY(const auto changes, act.commit());
    static_cast<void>(changes);
    BURROW_TRY(const auto entries, book.connection().integer("SELECT count(*) FROM entry"));
    return Made{static_cast<std::int64_t>(cast.size()), entries};
}

}  // namespace burrow::demo
