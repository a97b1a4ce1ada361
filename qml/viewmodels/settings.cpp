#include "viewmodels/settings.h"

#include <algorithm>
#include <cmath>

namespace burrow {
namespace {

constexpr qreal leastScale = 0.85;
constexpr qreal mostScale = 2;
constexpr qreal usualScale = 1;
constexpr int usualUndoTime = 8000;

}  // namespace

Settings::Settings(const QString& file, QObject* parent)
    : QObject(parent), file_(file, QSettings::IniFormat) {}

qreal Settings::textScale() const {
    bool isNumber = false;
    const auto scale = file_.value("textScale", usualScale).toReal(&isNumber);
    if (!isNumber || !std::isfinite(scale)) return usualScale;
    return std::clamp(scale, leastScale, mostScale);
}

void Settings::setTextScale(qreal scale) {
    set("textScale", std::clamp(scale, leastScale, mostScale));
}

int Settings::undoTime() const {
    bool isNumber = false;
    const int time = file_.value("undoTime", usualUndoTime).toInt(&isNumber);
    return isNumber ? std::max(0, time) : usualUndoTime;
}

void Settings::set(const char* name, const QVariant& value) {
    if (file_.value(name) == value) return;
    file_.setValue(name, value);
    emit changed();
}

}  // namespace burrow
