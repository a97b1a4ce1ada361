#include "announcer.h"

#include <QAccessible>

namespace burrow {

void Announcer::say(const QString& text) {
    if (text != text_) {
        text_ = text;
        emit textChanged();
    }
#if QT_VERSION >= QT_VERSION_CHECK(6, 8, 0)
    QAccessibleAnnouncementEvent event(this, text);
#else
    QAccessibleEvent event(this, QAccessible::Alert);
#endif
    QAccessible::updateAccessibility(&event);
}

}  // namespace burrow
