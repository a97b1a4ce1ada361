#include "journal/photos.h"

#include <algorithm>

namespace burrow {
namespace {

constexpr std::size_t hexDigits = 64;

bool isHexDigit(char c) { return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'f'); }

/// Crosses out every hash that stands anywhere in the text.
void crossOut(std::string_view text, std::set<Sha256>& photos) {
    for (auto at = text.begin(); at != text.end();) {
        const auto from = std::find_if(at, text.end(), isHexDigit);
        at = std::find_if_not(from, text.end(), isHexDigit);
        if (at - from != hexDigits) continue;
        const auto hash = Sha256::parse(std::string_view(&*from, hexDigits));
        if (hash) photos.erase(*hash);
    }
}

}  // namespace

Done crossOutNamed(storage::Connection& connection, std::set<Sha256>& photos) {
    if (photos.empty()) return {};
    // Nearly all of them are in photos' own facts, which have an index; the whole journal is read only
    // for what is left.
    for (const char* sql :
         {"SELECT body FROM fact WHERE kind = 'photo'", "SELECT body FROM entry"}) {
        BURROW_TRY(auto rows, connection.query(sql));
        while (!photos.empty()) {
            BURROW_TRY(const bool more, rows.next());
            if (!more) break;
            crossOut(rows.text(0), photos);
        }
    }
    return {};
}

Result<std::set<Sha256>> picturesShown(storage::Connection& connection) {
    std::set<Sha256> shown;
    BURROW_TRY(auto rows, connection.query("SELECT json_extract(body, '$.picture') FROM fact WHERE "
                                           "kind = 'photo'"));
    while (true) {
        BURROW_TRY(const bool more, rows.next());
        if (!more) return shown;
        if (const auto hash = Sha256::parse(rows.text(0))) shown.insert(*hash);
    }
}

}  // namespace burrow
