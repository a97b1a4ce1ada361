#include "ports/scale_link.h"

#include <algorithm>

namespace burrow {

void ScaleLink::setFirst(ZoomView* view) { give(first_, view); }
void ScaleLink::setSecond(ZoomView* view) { give(second_, view); }

void ScaleLink::give(Side& side, ZoomView* view) {
    if (side.view == view) return;
    if (side.view) disconnect(side.view, nullptr, this, nullptr);
    side = {view, 0};
    auto& other = &side == &first_ ? second_ : first_;
    if (view != nullptr) {
        connect(view, &ZoomView::viewChanged, this, [this, &side, &other] { follow(side, other); });
        follow(side, other);
    }
    emit changed();
}

void ScaleLink::follow(Side& moved, Side& other) {
    // What is set here comes back as a change.
    if (isFollowing_ || !moved.view || !other.view) return;
    isFollowing_ = true;
    const auto fitted = moved.view->fittedPerMm();
    const auto beside = other.view->fittedPerMm();
    const bool wasLinked = isLinked_;
    isLinked_ = fitted > 0 && beside > 0;
    if (isLinked_) {
        const auto perMm = moved.view->perMm();
        const auto least = std::min(fitted, beside);
        const auto most = std::max(moved.view->closestPerMm(), other.view->closestPerMm());
        // Another picture, or one of another size, comes to the one that is there.
        const bool isNew = fitted != moved.fittedPerMm;
        moved.view->setReach(least, most);
        other.view->setReach(least, most);
        if (isNew) {
            moved.view->setPerMm(other.view->perMm());
        } else {
            other.view->setPerMm(perMm);
        }
    } else {
        moved.view->setReach(0, 0);
        other.view->setReach(0, 0);
    }
    moved.fittedPerMm = fitted;
    isFollowing_ = false;
    if (wasLinked != isLinked_) emit changed();
}

void ScaleLink::whole() {
    for (const auto& view : {first_.view, second_.view}) {
        if (view) view->whole();
    }
    if (!isLinked_) return;
    first_.view->setPerMm(std::min(first_.view->fittedPerMm(), second_.view->fittedPerMm()));
}

}  // namespace burrow
