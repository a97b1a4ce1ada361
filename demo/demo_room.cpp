#include "demo_room.h"

#include <algorithm>

#include "cast.h"
#include "journal/fields.h"
#include "life.h"
#include "tags/code.h"

namespace burrow::demo {
namespace {

constexpr const char* roomName = "Kiln Row";
constexpr const char* roomCode = "KR";
constexpr const char* contact = "Kiln Row (an invented room, not a real keeper)";

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

}  // namespace

Result<Made> makeRoom(const std::filesystem::path& path, const Options& options,
                      const Room::Reference& reference) {
    const auto start = options.until - 365 * options.years;
    FixedClock clock(options.zone.at(start, 17 * 3600));
    SeededRandom random(options.seed);
    Dice dice(options.seed);
    BURROW_TRY(auto book, Book::create(path, roomName, roomCode, {clock, random, options.zone}));
    const auto cast = castFor(options, reference, book, dice);

    std::vector<FactDraft> facts;
    for (const auto& role : cast) {
        auto life = playLife(role, options, reference, dice);
        std::move(life.begin(), life.end(), std::back_inserter(facts));
    }
    std::stable_sort(facts.begin(), facts.end(), [](const FactDraft& a, const FactDraft& b) {
        return a.happenedAt < b.happenedAt;
    });

    BURROW_TRY(auto act, book.beginAct());
    BURROW_DO(act.add(
        SetDraft{ThingType::book, book.id().uuid, {{setting::contact, std::string(contact)}}}));
    BURROW_DO(addCast(act, cast, random));
    for (const auto& fact : facts) {
        clock.set(*fact.happenedAt);
        act.startNext();
        BURROW_DO(act.add(fact));
    }
    BURROW_TRY(const auto changes, act.commit());
    static_cast<void>(changes);
    BURROW_TRY(const auto entries, book.connection().integer("SELECT count(*) FROM entry"));
    return Made{static_cast<std::int64_t>(cast.size()), entries};
}

}  // namespace burrow::demo
