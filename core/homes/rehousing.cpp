#include "homes/rehousing.h"

#include <algorithm>
#include <map>
#include <queue>
#include <set>
#include <string>

namespace burrow::homes {
namespace {

constexpr std::size_t nobody = SIZE_MAX;

/// Whether a caution applies.
bool holds(std::string_view when, const Manner& manner) {
    if (when == "always") return true;
    if (when == "calm") return manner.temperament == Temperament::calm;
    if (when == "skittish") return manner.temperament == Temperament::skittish;
    if (when == "defensive") return manner.temperament == Temperament::defensive;
    if (when == "fast") return manner.isFast;
    if (when == "hairs") return manner.hasHairs;
    if (when == "venom") return manner.venom == Venom::notable;
    if (when == "strong_venom") return manner.venom == Venom::significant;
    if (when == "arboreal") return manner.habit == Habit::arboreal;
    if (when == "fossorial") return manner.habit == Habit::fossorial;
    if (when == "heavy") return manner.habit != Habit::arboreal && manner.age == Age::adult;
    if (when == "sling") return manner.age == Age::sling;
    return when == "group" && manner.isGroup;
}

std::string_view name(Held held) {
    switch (held) {
        case Held::premoult: return "premoult";
        case Held::hardening: return "hardening";
        case Held::sac: return "sac";
        case Held::settling: return "settling";
    }
    return {};
}

/// Moves by number, homes by who is in them and who wants them.
class Plan {
public:
    Plan(std::span<const Move> moves, std::span<const std::size_t> occupied, const HomeRules& rules)
        : moves_(moves), rules_(rules), isDone_(moves.size(), false), isOut_(moves.size(), false) {
        for (std::size_t i = 0; i < moves.size(); ++i) {
            inside_[moves[i].from].push_back(i);
            wanting_[moves[i].to] = i;
        }
        for (const auto home : occupied) occupied_.insert(home);
    }

    Rehousing make() {
        holdBack();
        for (std::size_t i = 0; i < moves_.size(); ++i) tryMove(i);
        makeReady();
        for (std::size_t i = 0; i < moves_.size(); ++i) {
            while (!isDone_[i]) {
                intoSpare(onCircle(i));
                makeReady();
            }
        }
        const bool isPlain = plan_.waiting.empty() && plan_.spareTubs == 0;
        plan_.summary = {
            isPlain                ? "homes.rehousingNow"
            : plan_.spareTubs == 0 ? "homes.rehousingLater"
                                   : "homes.rehousing",
            {{"count", static_cast<std::int64_t>(moves_.size() - plan_.waiting.size())},
             {"waiting", static_cast<std::int64_t>(plan_.waiting.size())},
             {"spare", std::int64_t{plan_.spareTubs}}}};
        return std::move(plan_);
    }

private:
    /// Someone of a home who has not left it, or nobody.
    [[nodiscard]] std::size_t stillIn(std::size_t home) const {
        const auto found = inside_.find(home);
        if (found == inside_.end()) return nobody;
        for (const auto i : found->second) {
            if (!isOut_[i]) return i;
        }
        return nobody;
    }

    /// Those held, those whose new home is occupied, and all who wait for them, stay.
    void holdBack() {
        std::queue<std::size_t> staying;
        for (std::size_t i = 0; i < moves_.size(); ++i) {
            const auto& move = moves_[i];
            if (move.held) {
                wait(i, std::nullopt, {"homes.held", {{"held", std::string(name(*move.held))}}});
                staying.push(i);
            } else if (occupied_.contains(move.to)) {
                wait(i, std::nullopt, {"homes.occupied"});
                staying.push(i);
            }
        }
        for (; !staying.empty(); staying.pop()) {
            const auto& stays = moves_[staying.front()];
            const auto waiter = wanting_.find(stays.from);
            if (waiter == wanting_.end() || isDone_[waiter->second]) continue;
            wait(waiter->second, stays.who, {"homes.waits"});
            staying.push(waiter->second);
        }
    }
    void wait(std::size_t i, std::optional<std::size_t> waitsFor, Message why) {
        plan_.waiting.push_back({moves_[i].who, waitsFor, std::move(why)});
        isDone_[i] = true;  // nothing more is done about it, and it is still in its home
    }

    void tryMove(std::size_t i) {
        if (!isDone_[i] && stillIn(moves_[i].to) == nobody) ready_.push(i);
    }
    /// Makes all moves into empty homes, and those that they make possible.
    void makeReady() {
        for (; !ready_.empty(); ready_.pop()) {
            const auto i = ready_.front();
            if (isDone_[i]) continue;
            isDone_[i] = true;
            const bool wasInSpare = isOut_[i];
            add(i, wasInSpare ? StepKind::outOfSpare : StepKind::move,
                wasInSpare ? "homes.step.outOfSpare" : "homes.step.move");
            if (wasInSpare) --spareInUse_;
            leave(i);
        }
    }
    void intoSpare(std::size_t i) {
        add(i, StepKind::intoSpare, "homes.step.intoSpare");
        plan_.spareTubs = std::max(plan_.spareTubs, ++spareInUse_);
        leave(i);
    }
    void leave(std::size_t i) {
        isOut_[i] = true;
        const auto waiter = wanting_.find(moves_[i].from);
        if (waiter != wanting_.end()) tryMove(waiter->second);
    }

    /// From a move on to whoever is in the home it needs, until one comes round again.
    [[nodiscard]] std::size_t onCircle(std::size_t start) const {
        std::set<std::size_t> seen;
        auto at = start;
        while (seen.insert(at).second) at = stillIn(moves_[at].to);
        return at;
    }

    void add(std::size_t i, StepKind kind, const char* why) {
        const auto& move = moves_[i];
        plan_.steps.push_back(
            {kind, move.who, move.from, move.to, Message(why), cautionsFor(move.manner, rules_)});
    }

    std::span<const Move> moves_;
    const HomeRules& rules_;
    std::vector<bool> isDone_;
    std::vector<bool> isOut_;
    std::map<std::size_t, std::vector<std::size_t>> inside_;
    std::map<std::size_t, std::size_t> wanting_;
    std::set<std::size_t> occupied_;
    std::queue<std::size_t> ready_;
    int spareInUse_ = 0;
    Rehousing plan_;
};

}  // namespace

Result<Rehousing> rehousing(std::span<const Move> moves, std::span<const std::size_t> occupied,
                            const HomeRules& rules) {
    std::set<std::size_t> who;
    std::set<std::size_t> homes;
    for (const auto& move : moves) {
        if (!who.insert(move.who).second) return fail(Trouble::badInput, {"homes.movedTwice"});
        if (!homes.insert(move.to).second) return fail(Trouble::badInput, {"homes.sharedHome"});
        if (move.from == move.to) return fail(Trouble::badInput, {"homes.staysThere"});
    }
    return Plan(moves, occupied, rules).make();
}

std::vector<Message> cautionsFor(const Manner& manner, const HomeRules& rules) {
    std::vector<const TableRow*> rows;
    for (const auto& row : rules.tables().rows("cautions")) {
        if (holds(row.word("when"), manner)) rows.push_back(&row);
    }
    std::stable_sort(rows.begin(), rows.end(), [](const TableRow* a, const TableRow* b) {
        return a->number("rank") < b->number("rank");
    });
    std::vector<Message> cautions;
    cautions.reserve(rows.size());
    for (const auto* row : rows) cautions.emplace_back("homes.caution." + row->id);
    return cautions;
}

}  // namespace burrow::homes
