#include "model/number.h"

#include "base/text.h"

namespace burrow {
namespace {

std::string bareOf(std::string_view number) {
    while (number.size() > 1 && number.front() == '0') number.remove_prefix(1);
    return lowerAscii(number);
}

}  // namespace

TypedNumber::TypedNumber(std::string_view typed, std::string_view roomCode)
    : whole_(trimmed(typed)), behind_(whole_) {
    const auto code = lowerAscii(std::string(roomCode) + "-");
    hasCode_ = !roomCode.empty() && lowerAscii(whole_).starts_with(code);
    if (hasCode_) behind_.erase(0, code.size());
    bare_ = bareOf(behind_);
}

NumberFit TypedNumber::fit(std::string_view number) const {
    if (behind_.empty() || number.empty()) return NumberFit::none;
    if (number == whole_) return NumberFit::whole;
    if (hasCode_ && lowerAscii(number) == lowerAscii(whole_)) return NumberFit::wholeNoCase;
    if (number == behind_) return NumberFit::withoutCode;
    return bareOf(number) == bare_ ? NumberFit::bare : NumberFit::none;
}

bool TypedNumber::starts(std::string_view number) const {
    if (behind_.empty()) return false;
    const auto own = lowerAscii(number);
    return own.starts_with(lowerAscii(whole_)) || own.starts_with(lowerAscii(behind_)) ||
           bareOf(number).starts_with(bare_);
}

}  // namespace burrow
