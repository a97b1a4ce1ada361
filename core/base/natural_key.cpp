#include "base/natural_key.h"

#include <algorithm>

namespace burrow {
namespace {

bool isDigit(char c) { return c >= '0' && c <= '9'; }

}  // namespace

void addNaturalKey(std::string& key, std::string_view text) {
    while (!text.empty()) {
        const char first = text.front();
        if (!isDigit(first)) {
            key += first >= 'A' && first <= 'Z' ? static_cast<char>(first - 'A' + 'a') : first;
            text.remove_prefix(1);
            continue;
        }
        const auto end = std::find_if_not(text.begin(), text.end(), isDigit);
        auto run = text.substr(0, static_cast<std::size_t>(end - text.begin()));
        text.remove_prefix(run.size());
        while (run.size() > 1 && run.front() == '0') run.remove_prefix(1);
        // A digit, for what stands before and after digits; then how long the number is, then itself.
        constexpr std::size_t most = 0xFFFF;
        const auto length = std::min(run.size(), most);
        key += '0';
        key += static_cast<char>(length >> 8U);
        key += static_cast<char>(length & 0xFFU);
        key += run;
    }
    key += '\0';
}

}  // namespace burrow
