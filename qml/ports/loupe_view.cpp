#include "ports/loupe_view.h"

#include <QPainter>
#include <QPainterPath>

namespace burrow {

LoupeView::LoupeView(QQuickItem* parent) : QQuickPaintedItem(parent) {
    setAntialiasing(true);
    connect(this, &LoupeView::changed, this, [this] { update(); });
}

void LoupeView::setView(PictureView* view) {
    if (view_ == view) return;
    if (view_) view_->disconnect(this);
    view_ = view;
    if (view_) {
        connect(view_, &ZoomView::viewChanged, this, [this] { update(); });
        connect(view_, &PictureView::warmChanged, this, [this] { update(); });
    }
    emit changed();
}

void LoupeView::paint(QPainter* painter) {
    if (!view_) return;
    const auto inset = lineWidth_ / 2;
    const auto glass = boundingRect().adjusted(inset, inset, -inset, -inset);
    const auto middle = glass.center();
    QPainterPath round;
    round.addEllipse(glass);
    painter->setRenderHint(QPainter::Antialiasing);
    painter->fillPath(round, ground_);
    painter->save();
    painter->setClipPath(round);
    const auto content = view_->contentRect();
    if (!content.isEmpty()) {
        view_->draw(*painter,
                    {middle + (content.topLeft() - place_) * times_, content.size() * times_});
    }
    painter->restore();
    painter->setPen(QPen(ink_, lineWidth_));
    painter->drawPath(round);
    // The cross leaves the very place free, so that it can be seen.
    const auto reach = glass.width() / 5;
    const auto gap = glass.width() / 20;
    painter->setPen(QPen(ink_, lineWidth_ / 2));
    for (const QPointF way : {QPointF(1, 0), QPointF(-1, 0), QPointF(0, 1), QPointF(0, -1)}) {
        painter->drawLine(middle + way * gap, middle + way * reach);
    }
}

}  // namespace burrow
