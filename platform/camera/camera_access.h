// Whether the app may use a camera.
#pragma once

#include <QDir>
#include <QObject>
#include <functional>

namespace burrow {

/// Asks the system, which may ask the keeper, and calls `answer` in this thread: at once or later, and
/// not at all when `context` has gone. Where the system knows no such question the answer is yes.
void askForCamera(QObject* context, const std::function<void(bool allowed)>& answer);

/// Linux: whether there are camera devices (video0 and on, in /dev) and this user may open none of
/// them. Such cameras do not show up in Qt's list at all.
[[nodiscard]] bool camerasAreBarred(const QDir& devices);

}  // namespace burrow
