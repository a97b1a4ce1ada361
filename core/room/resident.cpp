#include "room/resident.h"

#include <algorithm>

#include "husbandry/plain_forecast.h"

namespace burrow {
namespace {

PlanInput inputOf(const Kept& kept, const Profile* profile, const PlanBasis& basis) {
    return {kept.subject,
            kept.digest,
            kept.place,
            profile,
            kept.home,
            kept.quarantinedSince,
            warmthAt(basis.warmths, kept.place)};
}

Glance glanceAt(const Kept& kept, const Profile* profile, const PlanBasis& basis) {
    const PlainForecast plain;
    const auto input = inputOf(kept, profile, basis);
    return Glance::of(input, outlookFor(input, *basis.rules, basis.day, plain), basis.day.today);
}

}  // namespace

bool Glance::isOfRound() const {
    return std::any_of(allCare.begin(), allCare.end(),
                       [this](Care care) { return isDue(care) && burrow::isOfRound(care); });
}

std::optional<Care> Glance::main() const {
    const auto isShown = [this](Care care) {
        return isDue(care) || (care == Care::feed && isHeld_);
    };
    const auto found = std::find_if(allCare.begin(), allCare.end(), isShown);
    return found == allCare.end() ? std::nullopt : std::optional(*found);
}

Glance Glance::of(const PlanInput& input, const Outlook& outlook, CivilDay today) {
    const auto& subject = input.subject;
    Glance glance;
    glance.isSeenToday = input.digest.lastEntry == today;
    glance.subject = subject.id;
    glance.form = subject.form;
    glance.standing = subject.standing;
    glance.isQuarantined = subject.quarantined;
    for (const auto& verdict : outlook.verdicts) {
        if (verdict.state == State::due) {
            glance.due_ = static_cast<std::uint16_t>(glance.due_ | bit(verdict.care));
        }
        glance.isHeld_ |= verdict.state == State::hold && burrow::isListed(verdict);
        glance.priority = std::max(glance.priority, verdict.priority);
        if (verdict.state != State::waiting || !verdict.window) continue;
        const auto opens = verdict.window->opens;
        glance.opens = glance.opens ? std::min(*glance.opens, opens) : opens;
    }
    return glance;
}

Stub::Stub(const Kept& kept, const Profile* profile, std::shared_ptr<const PlanBasis> basis)
    : glance_(glanceAt(kept, profile, *basis)), packed_(packed(kept)), basis_(std::move(basis)) {}

const ResidentPtr& Stub::resident() const {
    std::call_once(once_, [this] {
        auto resident = std::make_shared<Resident>();
        resident->kept = unpacked(packed_);
        resident->profiles = basis_->profiles;
        resident->profile = basis_->profiles->find(resident->kept.subject.species);
        resident->warmth = warmthAt(basis_->warmths, resident->kept.place);
        resident->plan = planFor(resident->input(), *basis_->rules, basis_->day);
        made_ = std::move(resident);
    });
    return made_;
}

}  // namespace burrow
