#include "moult_line_shape.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <algorithm>
#include <cmath>

#include "paint.h"

namespace burrow {
namespace {

constexpr qint64 kOneTouchMs = 250;

}  // namespace

MoultLineShape::MoultLineShape(QQuickItem* parent) : QQuickPaintedItem(parent) {
    setAntialiasing(true);
    connect(this, &MoultLineShape::changed, this, [this] { update(); });
    connect(this, &MoultLineShape::marksChanged, this, [this] { update(); });
    connect(this, &MoultLineShape::currentChanged, this, [this] { update(); });
}

void MoultLineShape::setMarks(const QVariantList& marks) {
    if (marks == marksGiven_) return;
    marksGiven_ = marks;
    marks_.clear();
    for (const QVariant& entry : marks) {
        marks_.append({paint::field(entry, "day").toInt(), paint::field(entry, "height").toReal(),
                       paint::field(entry, "hardening").toInt(),
                       paint::field(entry, "photo").toBool()});
    }
    setCurrent(-1);
    emit marksChanged();
}

void MoultLineShape::setFeedings(const QVariantList& feedings) {
    if (feedings == feedingsGiven_) return;
    feedingsGiven_ = feedings;
    feedings_.clear();
    for (const QVariant& entry : feedings) {
        feedings_.append(
            {paint::field(entry, "day").toInt(), paint::field(entry, "took").toBool()});
    }
    emit changed();
}

void MoultLineShape::setForecast(const QVariantMap& forecast) {
    if (forecast == forecastGiven_) return;
    forecastGiven_ = forecast;
    forecast_ = {forecast.value(QStringLiteral("from")).toInt(),
                 forecast.value(QStringLiteral("median")).toInt(),
                 forecast.value(QStringLiteral("to")).toInt()};
    emit changed();
}

void MoultLineShape::setLabels(const QVariantList& labels) {
    if (labels == labelsGiven_) return;
    labelsGiven_ = labels;
    labels_.clear();
    for (const QVariant& entry : labels) {
        labels_.append(
            {paint::field(entry, "day").toInt(), paint::field(entry, "text").toString()});
    }
    emit changed();
}

void MoultLineShape::setTappable(bool tappable) {
    if (tappable == tappable_) return;
    tappable_ = tappable;
    setAcceptedMouseButtons(tappable ? Qt::LeftButton : Qt::NoButton);
    setActiveFocusOnTab(tappable);
    emit changed();
}

void MoultLineShape::setCurrent(int index) {
    if (index == current_) return;
    current_ = index;
    emit currentChanged();
}

int MoultLineShape::firstDay() const {
    if (startDay_ != 0) return startDay_;
    int first = nowDay_;
    if (!marks_.isEmpty()) first = std::min(first, marks_[firstShown()].day);
    if (size_ != InRow && !feedings_.isEmpty()) first = std::min(first, feedings_.first().day);
    return first;
}

qsizetype MoultLineShape::firstShown() const {
    return size_ == InRow ? std::max<qsizetype>(0, marks_.size() - kRowMarks) : 0;
}

// A forecast much longer than the life so far would squash the record: the band may then run out of
// the picture, but its median never does.
qreal MoultLineShape::lastDay(int first) const {
    if (!hasForecast()) return nowDay_;
    const qreal known = nowDay_ - first;
    const qreal farthest = std::max(nowDay_ + 1.5 * known, forecast_.median + 0.1 * known);
    return std::max<qreal>(nowDay_, std::min<qreal>(forecast_.to, farthest));
}

qreal MoultLineShape::xOf(int day) const {
    const Frame at = frame();
    const int first = firstDay();
    const qreal span = lastDay(first) - first;
    const qreal from = at.left + at.lead;
    const qreal to = at.right - (hasForecast() ? at.tail : at.stub);
    if (span <= 0) return day < first ? at.left : from;
    return from + (to - from) * (day - first) / span;
}

int MoultLineShape::markAt(qreal x) const {
    int nearest = -1;
    qreal least = kHitWidth / 2;
    for (qsizetype i = firstShown(); i < marks_.size(); ++i) {
        const qreal away = std::abs(xOf(marks_[i].day) - x);
        if (away > least) continue;
        least = away;
        nearest = static_cast<int>(i);
    }
    return nearest;
}

void MoultLineShape::mousePressEvent(QMouseEvent* event) {
    pressed_ = markAt(event->position().x());
    event->setAccepted(pressed_ >= 0);
}

void MoultLineShape::mouseReleaseEvent(QMouseEvent* event) {
    const bool inside = contains(event->position());
    const int mark = markAt(event->position().x());
    const bool echo = sinceTap_.isValid() && sinceTap_.elapsed() < kOneTouchMs;
    if (inside && mark >= 0 && mark == pressed_ && !echo) {
        sinceTap_.start();
        emit markTapped(mark);
    }
    pressed_ = -1;
}

void MoultLineShape::keyPressEvent(QKeyEvent* event) {
    const int last = static_cast<int>(marks_.size()) - 1;
    switch (event->key()) {
        case Qt::Key_Left: return setCurrent(std::max(0, current_ - 1));
        case Qt::Key_Right: return setCurrent(std::min(last, current_ + 1));
        case Qt::Key_Space:
        case Qt::Key_Return:
        case Qt::Key_Enter:
            if (current_ >= 0 && !event->isAutoRepeat()) emit markTapped(current_);
            return;
        default: event->ignore();
    }
}

void MoultLineShape::focusInEvent(QFocusEvent* event) {
    QQuickPaintedItem::focusInEvent(event);
    if (tappable_) setCurrent(static_cast<int>(marks_.size()) - 1);
}

void MoultLineShape::focusOutEvent(QFocusEvent* event) {
    QQuickPaintedItem::focusOutEvent(event);
    setCurrent(-1);
}

}  // namespace burrow
