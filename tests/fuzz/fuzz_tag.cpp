// What a decoded symbol holds, and what a keeper types for it.
#include "fuzz/target.h"
#include "tags/code.h"

using namespace burrow::tags;

FUZZ_TARGET(tag) {
    const auto reading = parsePayload(bytes);
    if (const auto* own = std::get_if<OwnTag>(&reading)) {
        BURROW_REQUIRE(isCode(own->code));
        BURROW_REQUIRE(own->side.value >= 1 && own->side.value <= 999);
        BURROW_REQUIRE(parsePayload(payload(own->code, own->side)) == reading);
    }
    if (const auto* foreign = std::get_if<ForeignSymbol>(&reading)) {
        BURROW_REQUIRE(foreign->shown.size() <= 4 * 60);
        for (const char each : foreign->shown) {
            const auto c = static_cast<unsigned char>(each);
            BURROW_REQUIRE(c >= 0x20 && c != 0x7F);
        }
    }
    if (const auto typed = parseTyped(bytes)) {
        BURROW_REQUIRE(isCode(*typed));
        BURROW_REQUIRE(parseTyped(displayCode(*typed)).value() == *typed);
    }
}
