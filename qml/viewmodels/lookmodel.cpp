#include "viewmodels/lookmodel.h"

#include <algorithm>
#include <array>

namespace burrow {
namespace {

constexpr std::array<qreal, 8> sizes{0.85, 1.0, 1.15, 1.3, 1.45, 1.6, 1.8, 2.0};
constexpr std::array undoTimes{8000, 20000, 0};
/// Closer than any two sizes.
constexpr qreal hair = 0.01;

}  // namespace

void LookModel::setSettings(Settings* settings) {
    if (settings_ == settings) return;
    settings_ = settings;
    connect(settings, &Settings::changed, this, &LookModel::changed);
    emit changed();
}

QString LookModel::textSize() const {
    return settings_ ? QStringLiteral("%1 %").arg(qRound(settings_->textScale() * 100)) : QString();
}

bool LookModel::canLarger() const {
    return settings_ && settings_->textScale() < sizes.back() - hair;
}

bool LookModel::canSmaller() const {
    return settings_ && settings_->textScale() > sizes.front() + hair;
}

void LookModel::larger() {
    const auto next = std::find_if(sizes.begin(), sizes.end(), [this](qreal size) {
        return size > settings_->textScale() + hair;
    });
    if (next != sizes.end()) settings_->setTextScale(*next);
}

void LookModel::smaller() {
    const auto next = std::find_if(sizes.rbegin(), sizes.rend(), [this](qreal size) {
        return size < settings_->textScale() - hair;
    });
    if (next != sizes.rend()) settings_->setTextScale(*next);
}

int LookModel::undoTime() const {
    const auto found = settings_
                           ? std::find(undoTimes.begin(), undoTimes.end(), settings_->undoTime())
                           : undoTimes.end();
    return found == undoTimes.end() ? -1 : static_cast<int>(found - undoTimes.begin());
}

void LookModel::setUndoTime(int choice) {
    if (choice < 0 || choice >= static_cast<int>(undoTimes.size())) return;
    settings_->setUndoTime(undoTimes.at(static_cast<std::size_t>(choice)));
}

}  // namespace burrow
