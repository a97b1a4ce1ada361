// A species file.
#include "fuzz/target.h"
#include "husbandry/profile_file.h"

FUZZ_TARGET(profile) {
    const auto profile = burrow::profileFromJson(std::string(bytes), 1);
    if (!profile) BURROW_REQUIRE(!profile.error().message.id.empty());
}
