// What RoundModel shows: words and shapes of the tub at hand.
#include "viewmodels/roundmodel.h"

#include <algorithm>
#include <array>

namespace burrow {

QString RoundModel::title() const {
    return desk_ ? desk_->say({"round.title", {{"shelf", shelfTitle_.toStdString()}}}) : QString();
}

QString RoundModel::progress() const {
    if (tour_.empty() || !desk_) return {};
    const auto here =
        resident_ ? std::find(tour_.begin(), tour_.end(), resident_->subject().id) : tour_.end();
    const auto place = std::min<std::ptrdiff_t>(here - tour_.begin() + 1,
                                                static_cast<std::ptrdiff_t>(tour_.size()));
    return desk_->say(
        {"round.progress",
         {{"place", std::int64_t{place}}, {"count", static_cast<std::int64_t>(tour_.size())}}});
}

QStringList RoundModel::holes() const {
    QStringList holes;
    if (!desk_ || !desk_->room()) return holes;
    for (const auto& id : tour_) {
        const auto stub = desk_->room()->stub(id);
        if (resident_ && resident_->subject().id == id) {
            holes.append(QStringLiteral("current"));
        } else if (isOpen(id)) {
            holes.append(QStringLiteral("open"));
        } else if (stub && stub->glance().isFeedHeld()) {
            holes.append(QStringLiteral("slash"));
        } else {
            holes.append(QStringLiteral("done"));
        }
    }
    return holes;
}

QString RoundModel::subject() const {
    return resident_ ? toQt(resident_->subject().id.text()) : QString();
}

QString RoundModel::tag() const {
    return resident_ ? toQt(resident_->subject().number) : QString();
}

QString RoundModel::binomial() const { return resident_ ? speciesText(*resident_) : QString(); }

QString RoundModel::about() const {
    if (!resident_) return {};
    const auto size = sizeText(*resident_, *desk_);
    const auto about = aboutText(*resident_, *desk_);
    return size.isEmpty() ? about : about + ", " + size;
}

QStringList RoundModel::cautions() const {
    return resident_ ? cautionWords(*resident_, *desk_) : QStringList();
}

QString RoundModel::punch() const {
    if (!resident_) return QStringLiteral("done");
    if (task_ == Task::Waiting) return punchFor(*resident_);
    return punchFor(*resident_, *mainAnswer());
}

QString RoundModel::verb() const {
    if (!resident_) return {};
    const auto& main = *mainAnswer();
    if (task_ == Task::Hold && main.window) {
        return desk_->say({"round.holdUntil", {{"opens", main.window->opens}}});
    }
    return feedAnyway_ ? desk_->say("round.feedAnyway") + '.' : verbText(*resident_, main, *desk_);
}

QString RoundModel::reason() const {
    if (task_ == Task::Finished) return desk_->say("round.finished");
    return resident_ ? desk_->say(mainAnswer()->reason) : QString();
}

QString RoundModel::advice() const {
    if (!resident_ || task_ != Task::Hold) return {};
    return holdAdvice(*mainAnswer(), *desk_);
}

QString RoundModel::mainText() const {
    if (!desk_) return {};
    switch (task_) {
        case Task::Feed:
            return desk_->say(resident_->subject().form == Form::animal ? "round.took"
                                                                        : "round.fedThem");
        case Task::Hold: return desk_->say("round.leaveIt");
        case Task::Leftovers: return desk_->say("round.takenOut");
        case Task::Look: return desk_->say("round.allWell");
        case Task::Care:
            return desk_->say(mainAnswer()->care == Care::damp ? "round.dampened"
                                                               : "round.watered");
        case Task::Waiting: return desk_->say("round.passOn");
        case Task::Finished: return desk_->say("round.close");
        case Task::Nothing: break;
    }
    return {};
}

QVariantList RoundModel::extras() const {
    QVariantList list;
    for (const auto& extra : extras_) {
        const auto id = std::string(extra.isOn ? "round.with." : "round.without.") +
                        std::string(name(extra.care));
        list.append(QVariantMap{{QStringLiteral("text"), desk_->say(Message(id))},
                                {QStringLiteral("on"), extra.isOn}});
    }
    return list;
}

QString RoundModel::alsoText() const {
    QStringList done;
    for (const auto& extra : extras_) {
        if (!extra.isOn) continue;
        done.append(desk_->say(Message("round.also." + std::string(name(extra.care)))));
    }
    return done.join(QStringLiteral(", "));
}

QString RoundModel::amount() const { return resident_ ? desk_->say(prey_.amount()) : QString(); }

QString RoundModel::amountNote() const {
    if (!resident_) return {};
    return preyChanged_ ? desk_->say("round.byHand") : desk_->say(prey_.reason);
}

qreal RoundModel::carapace() const {
    if (!resident_ || resident_->subject().form != Form::animal) return 0;
    const auto& digest = resident_->kept.digest;
    return digest.carapace ? digest.carapace->value : 0;
}

QString RoundModel::preyText() const {
    return resident_ ? desk_->say({"round.preyBar", {{"length", prey_.length.value}}}) : QString();
}

QString RoundModel::carapaceText() const {
    return resident_ ? desk_->say({"round.carapaceBar", {{"length", carapace()}}}) : QString();
}

}  // namespace burrow
