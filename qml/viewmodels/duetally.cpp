#include "viewmodels/duetally.h"

#include <QStringList>

namespace burrow {

void DueTally::add(Care main, bool isHeld) {
    if (isHeld) {
        ++held;
    } else if (main == Care::feed) {
        ++feed;
    } else if (main == Care::look) {
        ++look;
    } else {
        ++other;
    }
}

QString DueTally::text(const Desk& desk) const {
    QStringList parts;
    const auto part = [&](int count, const char* id) {
        if (count > 0) parts.append(desk.say({id, {{"count", std::int64_t{count}}}}));
    };
    part(feed, "due.feed");
    part(look, "due.look");
    part(other, "due.other");
    part(held, "due.held");
    return parts.join(QStringLiteral(", "));
}

}  // namespace burrow
