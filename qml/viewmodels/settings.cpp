#include "viewmodels/settings.h"

#include <algorithm>

namespace burrow {
namespace {

constexpr qreal leastScale = 0.85;
constexpr qreal mostScale = 2;
constexpr int usualUndoTime = 8000;

}  // namespace

Settings::Settings(const QString& file, QObject* parent)
    : QObject(parent), file_(file, QSettings::IniFormat) {}

qreal Settings::textScale() const {
    return std::clamp(file_.value("textScale", 1.0).toReal(), leastScale, mostScale);
}

void Settings::setTextScale(qreal scale) {
    set("textScale", std::clamp(scale, leastScale, mostScale));
}

int Settings::undoTime() const {
    return std::max(0, file_.value("undoTime", usualUndoTime).toInt());
}

void Settings::set(const char* name, const QVariant& value) {
    if (file_.value(name) == value) return;
    file_.setValue(name, value);
    emit changed();
}

}  // namespace burrow
