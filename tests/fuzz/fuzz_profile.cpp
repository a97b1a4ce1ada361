// A species file, or a file of several that another keeper gave.
#include "fuzz/target.h"
#include "husbandry/profile_share.h"

FUZZ_TARGET(profile) {
    const auto profile = burrow::profileFromJson(std::string(bytes), 1);
    if (!profile) BURROW_REQUIRE(!profile.error().message.id.empty());
    if (profile) {
        const auto again = burrow::profileFromJson(burrow::profileText(*profile), 1);
        BURROW_REQUIRE(again.has_value() && *again == *profile);
    }
    const auto shared = burrow::sharedProfiles(bytes);
    if (!shared) {
        BURROW_REQUIRE(!shared.error().message.id.empty());
        return;
    }
    const auto again = burrow::sharedProfiles(burrow::sharedProfilesText(*shared));
    BURROW_REQUIRE(again.has_value() && *again == *shared);
}
