#include "viewmodels/roundmodel.h"

#include <algorithm>
#include <array>

#include "husbandry/planner.h"

namespace burrow {
namespace {

struct OutcomeSpec {
    const char* action;
    const char* word;
    const char* glyph;
};

constexpr OutcomeSpec refused{"refused", "round.refused", "cross"};
constexpr OutcomeSpec leftIn{"leftIn", "round.leftIn", "left-in"};
constexpr OutcomeSpec premoult{"premoult", "round.premoult", "premoult"};
constexpr OutcomeSpec moulted{"moulted", "round.moulted", "moult"};
constexpr OutcomeSpec fangsBlack{"fangsBlack", "round.fangsBlack", "check"};
constexpr OutcomeSpec preyRemoved{"preyRemoved", "round.preyRemoved", "cross"};
constexpr OutcomeSpec eaten{"eaten", "round.eaten", "check"};
constexpr OutcomeSpec note{"note", "round.note", "note"};
constexpr OutcomeSpec feedAnyway{"feedAnyway", "round.feedAnyway", "more"};
constexpr OutcomeSpec other{"other", "round.other", "more"};

std::array<OutcomeSpec, 4> outcomesFor(RoundModel::Task task, Phase phase) {
    using Task = RoundModel::Task;
    switch (task) {
        case Task::Feed: return {refused, leftIn, premoult, moulted};
        case Task::Hold:
            return {phase == Phase::hardening ? fangsBlack : moulted, preyRemoved, note,
                    feedAnyway};
        case Task::Leftovers: return {eaten, moulted, note, other};
        case Task::Look: return {premoult, moulted, note, other};
        case Task::Care:
        case Task::Waiting:
        case Task::Nothing:
        case Task::Finished: break;
    }
    return {feedAnyway, moulted, note, other};
}

RoundModel::Task taskOf(const Answer& answer) {
    using Task = RoundModel::Task;
    if (answer.state == State::hold) return Task::Hold;
    switch (answer.care) {
        case Care::feed: return Task::Feed;
        case Care::leftovers: return Task::Leftovers;
        case Care::look:
        case Care::moultCheck:
        case Care::headcount: return Task::Look;
        case Care::water:
        case Care::damp: return Task::Care;
        case Care::measure:
        case Care::breeding:
        case Care::rehouse:
        case Care::quarantine: break;
    }
    return Task::Waiting;  // shown, and taken up by itself
}

FactKind factFor(Care care) { return care == Care::damp ? FactKind::dampened : FactKind::watered; }

bool isDue(const Resident& resident, Care care) {
    return resident.plan.of(care).state == State::due;
}

}  // namespace

void RoundModel::setDesk(Desk* desk) {
    if (desk_ == desk) return;
    desk_ = desk;
    connect(desk, &Desk::roomChanged, this, &RoundModel::read);
    emit deskChanged();
}

// --- the tour ------------------------------------------------------------------------------------

void RoundModel::setTour(const Place& shelf, bool wholeRoom) {
    tour_.clear();
    desk_->room()->forEach([&](const StubPtr& stub) {
        // Where someone has been today is part of it too, on whichever phone that was written.
        const bool isOfTour = stub->glance().isListed() || stub->glance().isSeenToday;
        if (!isOfTour || stub->glance().standing != Standing::here) return;
        if (wholeRoom || stub->walk().place.shelfOnly() == shelf) tour_.push_back(stub->id());
    });
    shelfTitle_ = wholeRoom ? desk_->say("round.wholeRoom") : shelfText(shelf, *desk_);
}

void RoundModel::start(const QString& shelf) {
    if (!desk_->room()) return;
    const auto listed = desk_->room()->listed();
    const auto isHere = [&](const StubPtr& stub) {
        return shelf.isEmpty() || shelfText(stub->walk().place, *desk_) == shelf;
    };
    const auto any = std::find_if(listed.begin(), listed.end(), isHere);
    if (any == listed.end()) return;
    // Those who are done are known from the records: it goes on at the first who is not.
    const auto open = std::find_if(any, listed.end(), [&](const StubPtr& stub) {
        return stub->glance().isOfRound() && isHere(stub);
    });
    const auto& first = open == listed.end() ? *any : *open;
    setTour(first->walk().place.shelfOnly(), shelf.isEmpty());
    goTo(toQt(first->id().text()));
}

void RoundModel::goTo(const QString& subject) {
    const auto resident = residentOf(*desk_, subject);
    if (!resident) return;
    const auto id = resident->subject().id;
    if (std::find(tour_.begin(), tour_.end(), id) == tour_.end()) {
        setTour(resident->kept.place.shelfOnly(), false);
        if (std::find(tour_.begin(), tour_.end(), id) == tour_.end()) tour_.push_back(id);
    }
    resident_ = resident;
    feedAnyway_ = false;
    settleTask();
}

bool RoundModel::isOpen(const SubjectId& id) const {
    const auto stub = desk_->room() ? desk_->room()->stub(id) : nullptr;
    return stub && stub->glance().isOfRound();
}

void RoundModel::next() {
    const auto here =
        resident_ ? std::find(tour_.begin(), tour_.end(), resident_->subject().id) : tour_.end();
    const auto isNext = [&](const SubjectId& id) { return isOpen(id); };
    auto found = tour_.end();
    if (here != tour_.end()) found = std::find_if(here + 1, tour_.end(), isNext);
    if (found == tour_.end()) {
        found = std::find_if(tour_.begin(), here, isNext);
        if (found == here) found = tour_.end();
    }
    if (found != tour_.end()) return goTo(toQt(found->text()));
    resident_.reset();
    task_ = Task::Finished;
    emit changed();
}

void RoundModel::finish() {
    tour_.clear();
    resident_.reset();
    task_ = Task::Nothing;
    emit changed();
}

void RoundModel::read() {
    if (!desk_->room()) return finish();
    if (!resident_) return;
    const auto fresh = desk_->room()->find(resident_->subject().id);
    if (!fresh) return finish();
    resident_ = fresh;
    settleTask();
}

// --- what is to be done --------------------------------------------------------------------------

const Answer* RoundModel::mainAnswer() const {
    if (!resident_) return nullptr;
    return feedAnyway_ ? &resident_->plan.of(Care::feed) : &burrow::mainAnswer(resident_->plan);
}

void RoundModel::settleTask() {
    const auto& main = *mainAnswer();
    task_ = feedAnyway_ ? Task::Feed : isListed(main) ? taskOf(main) : Task::Waiting;
    extras_.clear();
    for (const auto care : {Care::water, Care::damp}) {
        const bool isMain = task_ == Task::Care && main.care == care;
        if (isDue(*resident_, care) && !isMain) extras_.push_back({care, true});
    }
    line_ = recentMoultLine(*resident_, *desk_);
    prey_ = suggestionFor(*resident_, *desk_);
    preyChanged_ = false;
    emit changed();
}

QVariantList RoundModel::outcomes() const {
    QVariantList list;
    if (!resident_) return list;
    for (const auto& row : outcomesFor(task_, resident_->plan.phase)) {
        list.append(QVariantMap{{QStringLiteral("action"), QString::fromLatin1(row.action)},
                                {QStringLiteral("text"), desk_->say(row.word)},
                                {QStringLiteral("glyph"), QString::fromLatin1(row.glyph)}});
    }
    return list;
}

FactDraft RoundModel::fact(FactKind kind) const {
    return {resident_->subject().id, kind, {}, std::nullopt};
}

void RoundModel::logAll(std::vector<FactDraft> facts) {
    for (const auto& extra : extras_) {
        if (extra.isOn) facts.push_back(fact(factFor(extra.care)));
    }
    if (facts.empty()) return goOn();
    logFacts(*desk_, this, *resident_, std::move(facts), [this](const Result<ChangeSet>& done) {
        if (done) goOn();
    });
}

/// Stays while there is more to do at this tub than to hold back.
void RoundModel::goOn() {
    feedAnyway_ = false;
    const bool stays =
        resident_ && (isDue(*resident_, Care::leftovers) || isDue(*resident_, Care::look) ||
                      isDue(*resident_, Care::feed));
    if (resident_) settleTask();
    if (!stays) emit advanced();
}

void RoundModel::doMain() {
    if (!resident_) return;
    switch (task_) {
        case Task::Feed: return logAll({offerOf(*resident_, prey_, Outcome::ate)});
        case Task::Leftovers: return logAll({fact(FactKind::leftoversOut)});
        case Task::Look: {
            auto seen = fact(FactKind::seen);
            seen.body.count = resident_->subject().headcount;
            return logAll({seen});
        }
        case Task::Care: return logAll({fact(factFor(mainAnswer()->care))});
        case Task::Hold:
        case Task::Waiting: return logAll({});
        case Task::Nothing:
        case Task::Finished: return;
    }
}

void RoundModel::doOutcome(const QString& action) {
    if (!resident_) return;
    if (action == u"refused") return logAll({offerOf(*resident_, prey_, Outcome::refused)});
    if (action == u"leftIn") return logAll({offerOf(*resident_, prey_, Outcome::leftIn)});
    if (action == u"premoult") return logAll({fact(FactKind::premoultSign)});
    if (action == u"fangsBlack") return logAll({fact(FactKind::fangsBlack)});
    if (action == u"preyRemoved") return logAll({fact(FactKind::leftoversOut)});
    if (action == u"moulted") {
        emit moultWanted(subject());
    } else if (action == u"note") {
        emit noteWanted();
    } else if (action == u"other") {
        emit otherWanted(subject());
    } else if (action == u"feedAnyway") {
        feedAnyway_ = true;
        settleTask();
    } else if (action == u"eaten") {
        logEatenAfterAll(*desk_, this, *resident_, [this](const Result<ChangeSet>& done) {
            if (done) goOn();
        });
    }
}

void RoundModel::writeNote(const QString& text) {
    if (!resident_ || text.trimmed().isEmpty()) return;
    auto written = fact(FactKind::note);
    written.body.text = text.trimmed().toStdString();
    logFact(*desk_, this, *resident_, std::move(written));
}

void RoundModel::toggleExtra(int place) {
    if (place < 0 || place >= static_cast<int>(extras_.size())) return;
    auto& extra = extras_[static_cast<std::size_t>(place)];
    extra.isOn = !extra.isOn;
    emit changed();
}

// --- the prey ------------------------------------------------------------------------------------

void RoundModel::stepPrey(int direction) {
    constexpr double halfStep = 0.5;
    auto length = prey_.length;
    do {
        length = length + Millimetres{direction * halfStep};
    } while (length.value > shortestPrey && length.value < longestPrey &&
             (soldLength(length) == prey_.length || soldLength(length) != length));
    prey_.length = {std::clamp(length.value, shortestPrey, longestPrey)};
    preyChanged_ = true;
    emit changed();
}

void RoundModel::less() {
    if (canLess()) stepPrey(-1);
}

void RoundModel::more() {
    if (canMore()) stepPrey(1);
}

std::vector<std::string> RoundModel::kinds() const {
    std::vector<std::string> kinds;
    constexpr std::string_view family = "prey.longest.";
    for (const auto* rule : desk_->room()->rules().all()) {
        if (rule->id.starts_with(family)) kinds.push_back(rule->id.substr(family.size()));
    }
    // A feeder that only this keeper uses stays to choose.
    if (std::find(kinds.begin(), kinds.end(), prey_.kind) == kinds.end())
        kinds.push_back(prey_.kind);
    return kinds;
}

QVariantList RoundModel::preyKinds() const {
    QVariantList options;
    if (!resident_) return options;
    for (const auto& kind : kinds()) {
        const Message word{"round.preyKind", {{"prey", kind}, {"count", std::int64_t{2}}}};
        options.append(QVariantMap{{QStringLiteral("word"), desk_->say(word)},
                                   {QStringLiteral("sub"), QString()}});
    }
    return options;
}

int RoundModel::preyKind() const {
    if (!resident_) return -1;
    const auto all = kinds();
    return static_cast<int>(std::find(all.begin(), all.end(), prey_.kind) - all.begin());
}

void RoundModel::chooseKind(int place) {
    const auto all = resident_ ? kinds() : std::vector<std::string>();
    if (place < 0 || place >= static_cast<int>(all.size())) return;
    prey_.kind = all[static_cast<std::size_t>(place)];
    preyChanged_ = true;
    emit changed();
}

void RoundModel::chooseCount(int count) {
    constexpr int most = 200;
    prey_.count = std::clamp(count, 1, most);
    preyChanged_ = true;
    emit changed();
}

}  // namespace burrow
