// After every act only what depends on it is planned again, and that equals planning all of it:
// random histories with entries that come late and out of order, corrections, retractions, new homes,
// other rules, readings of the air, entries of another phone, a clock that is set, and travel, in weeks in which clocks change or
// a leap day falls. BURROW_HISTORIES sets how many (300).
#include <map>

#include "journal/merge.h"
#include "journal/version_vector.h"
#include "room/air_log.h"
#include "room/own_numbers.h"
#include "room/room.h"
#include "support/book.h"
#include "support/planning.h"

using namespace burrow;
using namespace burrow::test;

namespace {

const Room::Reference& reference() {
    static const auto numbers = NumberTables::fromJson(tableTexts()).value();
    static const Room::Reference shared{sharedProfiles(), sharedRules(), &numbers};
    return shared;
}

/// Around which everything happens: a plain evening, the nights in which clocks go forward and back in
/// Europe, North America and New Zealand, and two leap days.
Instant anyEvening() {
    const auto iso = *rc::gen::element<std::string>("2026-05-08", "2026-03-29", "2026-10-25",
                                                    "2026-03-08", "2026-11-01", "2026-04-05",
                                                    "2026-09-27", "2024-02-29", "2028-02-29");
    return {day(iso).days * msPerDay + *rc::gen::inRange<std::int64_t>(0, msPerDay)};
}

Zone anyZone() {
    return Zone::named(*rc::gen::element<std::string>("Europe/Berlin", "America/New_York",
                                                      "Pacific/Auckland", "Asia/Kolkata",
                                                      "Australia/Lord_Howe", "America/St_Johns"))
        .value();
}

/// A book and what its keepers do to it, in any order.
class History {
public:
    History()
        : evening_(anyEvening()),
          clock_(evening_),
          random_(static_cast<std::uint64_t>(*rc::gen::inRange(1, 1'000'000))),
          book_(std::make_unique<Book>(
              Book::create(folder_.path() / "r.book", "Kiln Row", "KR", surroundings()).value())) {
        for (int i = 0; i < 3; ++i) addSubject();
        homes_.push_back(EnclosureId{book_->newId()});
        setHome();
    }

    [[nodiscard]] Room load() { return Room::load(*book_, reference(), day()).value(); }
    [[nodiscard]] Room after(const Room& room, const ChangeSet& changes) {
        return room.after(*book_, reference(), changes).value();
    }

    ChangeSet act() {
        moveClock();
        switch (*rc::gen::inRange(0, 16)) {
            case 0: return addSubject();
            case 1: return editSubject();
            case 2: return setHome();
            case 3: return setRule();
            case 4: return amend();
            case 5: return retract();
            case 6: return hangTag();
            case 7: return travel();
            case 8: return fromTheOtherPhone();
            case 9: return writeAir();
            default: return logFact();
        }
    }

private:
    Surroundings surroundings() { return {clock_, random_, zone_}; }

    /// The day on which everything is planned stays; what is written moves about.
    [[nodiscard]] PlanDay day() const { return {planZone_.dayOf(evening_), planZone_}; }

    void moveClock() {
        const auto days = *rc::gen::element(-200, *rc::gen::inRange(-200, 3), -1, 0, 1);
        clock_.set({evening_.ms + days * msPerDay + *rc::gen::inRange<std::int64_t>(0, msPerDay)});
    }

    /// What is written from here on is written in another zone. The room is planned for where it is.
    ChangeSet travel() {
        zone_ = anyZone();
        book_.reset();
        book_ = std::make_unique<Book>(
            Book::open(folder_.path() / "r.book", storage::Access::readWrite, surroundings())
                .value());
        return {};
    }

    /// The other phone has what is here, writes something, and it comes back late.
    ChangeSet fromTheOtherPhone() {
        if (!other_) {
            other_ = std::make_unique<Book>(
                Book::join(folder_.path() / "o.book", book_->id(), surroundings()).value());
        }
        bring(*book_, *other_);
        const int count = *rc::gen::inRange(1, 4);
        for (int i = 0; i < count; ++i) {
            const auto kind = anyFactKind();
            if (kind == FactKind::photo || kind == FactKind::note) continue;
            const auto at = anyMoment();
            other_->record(FactDraft{anyone(), kind, anyFactBody(kind, zone_.dayOf(at)), at})
                .value();
        }
        if (*rc::gen::inRange(0, 3) == 0) {
            other_->record(SetDraft{ThingType::subject, anyone().uuid, {{"mature", true}}}).value();
        }
        return bring(*other_, *book_);
    }

    static ChangeSet bring(Book& from, Book& to) {
        std::vector<Entry> entries;
        const auto has = versionVector(to.connection()).value();
        must(forEachEntryLacking(from.connection(), has, {}, [&](const StoredEntry& entry) -> Done {
            entries.push_back(entry.toEntry());
            return {};
        }));
        auto merge = Merge::begin(to, {"phone.burrow", std::nullopt}).value();
        for (const auto& entry : entries) must(merge.add(entry));
        return merge.commit().value().changes;
    }

    /// Up to half a year back, or within a day, on either side of a change of the clocks.
    Instant anyMoment() {
        const auto back =
            *rc::gen::element<std::int64_t>(*rc::gen::inRange<std::int64_t>(0, 180) * msPerDay,
                                            *rc::gen::inRange<std::int64_t>(0, 36) * 3'600'000);
        return {clock_.now().ms - back};
    }

    SubjectId anyone() { return subjects_[*rc::gen::inRange<std::size_t>(0, subjects_.size())]; }

    ChangeSet record(Draft draft) { return book_->record(std::move(draft)).value(); }

    ChangeSet addSubject() {
        auto subject = anySubject(zone_.dayOf(clock_.now()));
        subject.id = SubjectId{book_->newId()};
        subject.number = std::to_string(*rc::gen::inRange(1, 40));
        subject.species = sharedProfiles().all()[*rc::gen::inRange<std::size_t>(0, 9)].name;
        subject.place =
            Place::parse(*rc::gen::element<std::string>("A / 1", "Nursery / A / 2 / 1"));
        subjects_.push_back(subject.id);
        written_[subject.id] = subject;
        return record(SetDraft{ThingType::subject, subject.id.uuid, toFields(subject)});
    }

    ChangeSet editSubject() {
        auto& before = written_[anyone()];
        auto after = before;
        after.quarantined = *rc::gen::arbitrary<bool>();
        after.mature = *rc::gen::arbitrary<bool>();
        after.place = Place::parse(*rc::gen::element<std::string>("A / 10", "B / 2", "C"));
        if (*rc::gen::arbitrary<bool>()) after.enclosure = homes_.front();
        const auto fields = changedFields(before, after);
        const auto id = before.id.uuid;
        before = after;
        if (fields.empty()) return {};
        return record(SetDraft{ThingType::subject, id, fields});
    }

    ChangeSet setHome() {
        Enclosure home;
        home.id = homes_.front();
        home.name = "E-1";
        home.length = {*rc::gen::inRange(50, 600) * 1.0};
        home.height = {*rc::gen::inRange(50, 400) * 1.0};
        home.place = Place::parse(*rc::gen::element<std::string>("A / 1", "Nursery / B / 2 / 1"));
        return record(SetDraft{ThingType::enclosure, home.id.uuid, toFields(home)});
    }

    ChangeSet setRule() {
        const auto scope = *rc::gen::element<std::string>(
            "", "@place:Nursery", "@species:" + sharedProfiles().all()[0].name,
            "@animal:" + anyone().text());
        const auto rule = *rc::gen::element<std::string>("feed.factor", "home.floor_spans");
        const auto value = *rc::gen::element<std::string>("1", "1.5", "2.5", "no number");
        return record(SetDraft{ThingType::book,
                               book_->id().uuid,
                               {{std::string(setting::rule) + rule + scope, value}}});
    }

    /// Up to half a year late, so mostly out of order.
    ChangeSet logFact() {
        const auto kind = anyFactKind();
        if (kind == FactKind::photo || kind == FactKind::note) return {};
        const auto at = anyMoment();
        auto body = anyFactBody(kind, zone_.dayOf(at));
        auto changes = record(FactDraft{anyone(), kind, body, at});
        facts_.emplace_back(changes.entries.front(), body);
        return changes;
    }

    ChangeSet amend() {
        if (facts_.empty()) return {};
        const auto& [entry, body] = facts_[*rc::gen::inRange<std::size_t>(0, facts_.size())];
        const auto at =
            Instant{clock_.now().ms - *rc::gen::inRange<std::int64_t>(0, 90) * msPerDay};
        auto changed = book_->record(AmendDraft{entry, body, at});
        return changed ? *changed : ChangeSet{};  // refused where it was retracted
    }

    ChangeSet retract() {
        if (facts_.empty()) return {};
        const auto entry = facts_[*rc::gen::inRange<std::size_t>(0, facts_.size())].first;
        auto changed = book_->record(RetractDraft{entry});
        return changed ? *changed : ChangeSet{};
    }

    /// Of lately, so that most of it counts.
    ChangeSet writeAir() {
        const air::Sample sample{{evening_.ms - *rc::gen::inRange(-24, 96) * 3'600'000LL},
                                 Celsius{*rc::gen::inRange(5, 45) * 1.0},
                                 std::nullopt};
        const auto place = *rc::gen::element<std::string>("A", "Nursery", "C", "A / 2 / 1");
        const auto taken = airDrafts(*book_, place, std::span(&sample, 1)).value();
        return taken.drafts.empty() ? ChangeSet{} : book_->record(taken.drafts).value();
    }

    ChangeSet hangTag() {
        const Tag tag{"TAG0000" + std::to_string(*rc::gen::inRange(1, 9)), Millimetres{20},
                      anyone(), std::nullopt};
        return record(SetDraft{ThingType::tag, tagThing(tag.code), toFields(tag)});
    }

    ScratchFolder folder_;
    Instant evening_;
    FixedClock clock_;
    SeededRandom random_;
    Zone zone_ = anyZone();
    Zone planZone_ = zone_;
    std::unique_ptr<Book> book_;
    std::unique_ptr<Book> other_;
    std::vector<SubjectId> subjects_;
    std::map<SubjectId, Subject> written_;
    std::vector<EnclosureId> homes_;
    std::vector<std::pair<EntryId, FactBody>> facts_;
};

/// What is known of a plan without its words is what the plan says.
void requireTrue(const Glance& glance, const Resident& resident) {
    auto greatest = Priority::none;
    for (const auto& answer : resident.plan.answers) {
        RC_ASSERT(glance.isDue(answer.care) == (answer.state == State::due));
        greatest = std::max(greatest, answer.priority);
    }
    RC_ASSERT(glance.priority == greatest);
    RC_ASSERT(glance.isListed() == isListed(mainAnswer(resident.plan)));
    if (glance.isListed()) RC_ASSERT(glance.main() == mainAnswer(resident.plan).care);
    const auto held = resident.plan.of(Care::feed).state == State::hold;
    RC_ASSERT(glance.isFeedHeld() == held);
}

void requireSame(const Room& a, const Room& b) {
    RC_ASSERT(a.residents().size() == b.residents().size());
    for (std::size_t i = 0; i < a.residents().size(); ++i) {
        const auto& x = *a.residents()[i];
        const auto& y = *b.residents()[i];
        RC_ASSERT(x.subject() == y.subject());
        RC_ASSERT(x.kept.digest == y.kept.digest);
        RC_ASSERT(x.kept.place == y.kept.place && x.kept.tagCode == y.kept.tagCode);
        RC_ASSERT(x.kept.home == y.kept.home);
        RC_ASSERT(x.kept.quarantinedSince == y.kept.quarantinedSince);
        RC_ASSERT(x.warmth == y.warmth);
        RC_ASSERT(x.plan.answers == y.plan.answers);
        RC_ASSERT(x.plan.phase == y.plan.phase && x.plan.stage.how == y.plan.stage.how);
        const auto& glance = a.stub(x.subject().id)->glance();
        RC_ASSERT(glance == b.stub(y.subject().id)->glance());
        requireTrue(glance, x);
    }
    RC_ASSERT(a.listed().size() == b.listed().size());
    const std::span<const ResidentPtr> row = a.residents();
    RC_ASSERT(std::equal(row.begin(), row.end(), a.residents().begin(), a.residents().end()));
    RC_ASSERT(a.rules().sameValues(b.rules()));
}

int histories() {
    const char* asked = std::getenv("BURROW_HISTORIES");
    return asked != nullptr ? std::max(1, std::atoi(asked)) : 300;
}

void anyHistory() {
    History history;
    auto room = history.load();
    const int acts = *rc::gen::inRange(1, 9);
    for (int i = 0; i < acts; ++i) {
        const auto changes = history.act();
        if (changes.isEmpty()) continue;
        room = history.after(room, changes);
        requireSame(room, history.load());
    }
}

}  // namespace

int main() {
    // rapidcheck takes the number of cases from its own variable; one that is set already wins.
    const auto cases = "max_success=" + std::to_string(histories());
    setenv("RC_PARAMS", cases.c_str(), 0);
    return rc::check("planning again after an act equals planning everything", anyHistory) ? 0 : 1;
}
