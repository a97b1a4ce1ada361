#include "life.h"

#include <algorithm>
#include <cmath>

#include "husbandry/gaps.h"
#include "husbandry/phase.h"
#include "husbandry/prey.h"

namespace burrow::demo {
namespace {

/// Carapace to leg span in this room's records; about what the rules assume.
constexpr double carapacePerSpan = 0.17;

class Life {
public:
    Life(const Role& role, const Options& options, const Room::Reference& reference, Dice& dice)
        : role_(role),
          options_(options),
          rules_(reference.rules),
          dice_(dice),
          subject_(role.subject),
          span_(role.startSpan.value),
          adultSpan_(dice.between(role.profile->adultSpan.value.least.value,
                                  role.profile->adultSpan.value.most.value)) {
        subject_.headcount = role.subject.headcount;
        lastMoult_ = *subject_.acquired - dice.between(5, 40);
        nextMoult_ = lastMoult_ + moultInterval();
        feedOn_ = *subject_.acquired + dice.between(3, 7);
        waterOn_ = *subject_.acquired + dice.between(0, 3);
        dampOn_ = *subject_.acquired + dice.between(0, 6);
        countOn_ = *subject_.acquired + 25;
    }

    std::vector<FactDraft> play() {
        for (day_ = *subject_.acquired; day_ <= options_.until && !isOver_; day_ = day_ + 1) {
            minute_ = 18 * 60 + dice_.between(0, 170);
            if (day_ == options_.until - role_.fateDaysBeforeEnd) meetFate();
            if (isOver_ || isAway_) continue;
            if (day_ >= nextMoult_ && !isMature_) moult();
            lookForLeftovers();
            if (day_ >= waterOn_) water();
            if (day_ >= dampOn_) dampen();
            if (day_ >= countOn_ && isSeveral()) countHeads();
            if (premoultBegins() == day_) showSign();
            if (day_ >= fangsOn_ && !fangsSeen_) seeFangs();
            if (day_ >= feedOn_) feed();
        }
        return std::move(drafts_);
    }

private:
    [[nodiscard]] bool isSeveral() const { return subject_.form != Form::animal; }
    [[nodiscard]] double grown() const { return span_ / adultSpan_; }

    [[nodiscard]] StageJudgement stage() const {
        const PlanInput input{subject_, digest_, subject_.place, role_.profile};
        return judgeStage(input, rules_, day_);
    }

    void add(FactKind kind, FactBody body = {}) {
        minute_ += 1;
        const auto at = options_.zone.at(day_, minute_ * 60);
        Fact fact;
        fact.kind = kind;
        fact.day = day_;
        fact.happenedAt = at;
        fact.body = body;
        fold(digest_, fact);
        drafts_.push_back({subject_.id, kind, std::move(body), at});
    }

    /// Weeks when small, a year and more when grown.
    int moultInterval() {
        const double days = 28 + 330 * std::pow(std::min(1.1, grown()), 1.4);
        return std::max(18, static_cast<int>(dice_.around(days, days * 0.22)));
    }

    [[nodiscard]] CivilDay premoultBegins() const {
        return nextMoult_ - std::max(4, (nextMoult_ - lastMoult_) / 8);
    }

    void moult() {
        const double ratio = 1 + 0.36 * std::max(0.03, 1 - grown());
        span_ *= dice_.around(ratio, 0.03);
        lastMoult_ = day_;
        nextMoult_ = day_ + moultInterval();
        const bool last = subject_.sex == Sex::male && grown() > 0.8;
        isMature_ |= last && !isSeveral();
        FactBody body;
        if (!isSeveral() && dice_.chance(0.85)) {
            body.span = Millimetres{std::round(span_)};
            body.method = Method::ruler;
            if (span_ > 30)
                body.carapace = Millimetres{std::round(span_ * carapacePerSpan * 10) / 10};
        }
        if (isMature_) body.ultimate = true;
        add(FactKind::moulted, body);
        const auto wait = rules_.dayRange(ruleFor("hardening", stage().growing()));
        if (!isSeveral()) feedOn_ = day_ + wait.most + dice_.between(0, 2);
        fangsOn_ = day_ + dice_.between(wait.least, wait.most);
        fangsSeen_ = isSeveral() || span_ < 40 || dice_.chance(0.5);
    }

    void seeFangs() {
        fangsSeen_ = true;
        add(FactKind::fangsBlack);
    }

    void showSign() {
        if (isMature_ || isSeveral() || span_ < 25 || !dice_.chance(0.55)) return;
        FactBody body;
        const char* const signs[] = {"dark patch", "dull colour", "swollen abdomen",
                                     "burrow sealed"};
        body.sign = signs[dice_.between(0, 3)];
        add(FactKind::premoultSign, body);
    }

    void lookForLeftovers() {
        if (digest_.leftoversSince && dice_.chance(0.93)) add(FactKind::leftoversOut);
    }

    void water() {
        add(FactKind::watered);
        const auto gap = waterGap(stage(), rules_);
        waterOn_ = day_ + dice_.between(gap.least, gap.most);
    }

    void dampen() {
        add(FactKind::dampened);
        const auto gap = dampGap(stage(), role_.profile, rules_);
        dampOn_ = day_ + dice_.between(gap.least, gap.most);
    }

    void countHeads() {
        FactBody body;
        if (subject_.form == Form::group && subject_.headcount > 12 && dice_.chance(0.12)) {
            body.count = 1;
            body.cause = "found dead";
            add(FactKind::died, body);
            --subject_.headcount;
        }
        FactBody seen;
        seen.count = std::max(0, subject_.headcount - dice_.between(0, subject_.headcount / 4));
        add(FactKind::seen, seen);
        countOn_ = day_ + dice_.between(21, 40);
    }

    void feed() {
        const PlanInput input{subject_, digest_, subject_.place, role_.profile};
        const auto judged = stage();
        const auto closures = closuresOf(input, judged, rules_);
        if (closures.phaseOn(day_) != Phase::between && !isSeveral()) {
            feedOn_ = closures.endOf(closures.phaseOn(day_));
            return;
        }
        const auto prey = suggestPrey(input, judged, closures, rules_, day_);
        FactBody body;
        body.prey = prey.kind;
        if (prey.length.value >= 1) body.preyLength = prey.length;
        body.count = prey.count;
        body.outcome = outcome();
        add(FactKind::offered, body);
        const auto interval = mealGap(judged, rules_);
        const auto retry = rules_.dayRange(ruleFor("feed.retry", judged.growing()));
        const bool ate = body.outcome == Outcome::ate || body.outcome == Outcome::part;
        // A keeper is late now and then.
        const int late = dice_.chance(0.15) ? dice_.between(1, 3) : 0;
        const auto& gap = ate ? interval : retry;
        feedOn_ = day_ + dice_.between(gap.least, gap.most) + late;
    }

    Outcome outcome() {
        const bool nearMoult = !isMature_ && day_ >= premoultBegins() && !isSeveral();
        const double refuses = nearMoult ? 0.8 : isMature_ ? 0.35 : role_.isUnruly ? 0.22 : 0.05;
        if (dice_.chance(refuses)) return Outcome::refused;
        if (dice_.chance(0.05)) return Outcome::leftIn;
        return dice_.chance(0.04) ? Outcome::part : Outcome::ate;
    }

    void meetFate() {
        FactBody body;
        switch (role_.fate) {
            case Fate::stays: return;
            case Fate::dies:
                body.cause = dice_.chance(0.5) ? "stuck moult" : "not known";
                add(FactKind::died, body);
                isOver_ = true;
                return;
            case Fate::sold:
                body.party = "at the Saltmarsh Invert Fair";
                add(FactKind::sold, body);
                isOver_ = true;
                return;
            case Fate::onLoan:
                body.party = "a keeper down the coast";
                body.until = options_.until + 30;
                add(FactKind::lent, body);
                isAway_ = true;
                return;
        }
    }

    const Role& role_;
    const Options& options_;
    const Rules& rules_;
    Dice& dice_;
    Subject subject_;
    double span_;
    double adultSpan_;
    Digest digest_;
    std::vector<FactDraft> drafts_;
    CivilDay day_;
    int minute_ = 0;
    CivilDay lastMoult_;
    CivilDay nextMoult_;
    CivilDay feedOn_;
    CivilDay waterOn_;
    CivilDay dampOn_;
    CivilDay countOn_;
    CivilDay fangsOn_;
    bool fangsSeen_ = true;
    bool isMature_ = false;
    bool isAway_ = false;
    bool isOver_ = false;
};

}  // namespace

std::vector<FactDraft> playLife(const Role& role, const Options& options,
                                const Room::Reference& reference, Dice& dice) {
    return Life(role, options, reference, dice).play();
}

}  // namespace burrow::demo
