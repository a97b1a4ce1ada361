#include "viewmodels/roomnames.h"

#include <algorithm>

namespace burrow {
namespace {

// They stand on tags and care sheets, where there is no room for more.
constexpr qsizetype longestName = 40;
constexpr qsizetype longestCode = 6;

bool isPlain(QChar c) { return c.isLetterOrNumber() && c.unicode() < 128; }

}  // namespace

QString roomNameError(const QString& name, const Desk& desk) {
    if (name.isEmpty()) return desk.say("room.needsName");
    if (name.size() <= longestName) return {};
    return desk.say({"room.longName", {{"most", std::int64_t{longestName}}}});
}

QString roomCodeError(const QString& code, const Desk& desk) {
    const bool isFine = !code.isEmpty() && code.size() <= longestCode &&
                        std::all_of(code.begin(), code.end(), isPlain);
    if (isFine) return {};
    return desk.say({"room.oddCode", {{"most", std::int64_t{longestCode}}}});
}

QString codeFor(const QString& roomName) {
    QString code;
    bool isAtStart = true;
    for (const auto c : roomName.toUpper()) {
        if (isAtStart && isPlain(c) && code.size() < longestCode) code += c;
        isAtStart = !c.isLetterOrNumber();
    }
    return code;
}

}  // namespace burrow
