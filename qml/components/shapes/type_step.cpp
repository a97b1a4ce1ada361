#include "type_step.h"

#include <QFontMetricsF>
#include <cmath>

namespace burrow {

TypeStep::TypeStep(QObject* parent) : QObject(parent) {
    connect(this, &TypeStep::changed, this, [this] { measures_.reset(); });
}

void TypeStep::setFactor(qreal factor) {
    if (factor_ == factor) return;
    factor_ = factor;
    emit changed();
}

QFont TypeStep::font() const {
    QFont font(family_);
    font.setPixelSize(qMax(1, pixels()));
    font.setWeight(static_cast<QFont::Weight>(weight_));
    font.setItalic(italic_);
    return font;
}

const TypeStep::Measures& TypeStep::measures() const {
    if (!measures_) {
        const QFontMetricsF metrics(font());
        measures_ = Measures{std::ceil(metrics.height()), metrics.averageCharWidth()};
    }
    return *measures_;
}

}  // namespace burrow
