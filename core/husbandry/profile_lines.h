// What is known of a species, as lines for people: a page, a shell.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/message.h"
#include "model/profile.h"

namespace burrow {

struct ProfileLine {
    std::string_view name;  ///< id of a phrase: "species.habit"
    Message value;
    std::string source;  ///< empty for names and advice

    friend bool operator==(const ProfileLine&, const ProfileLine&) = default;
};

/// "Tree-dwelling tarantula"
[[nodiscard]] Message kindOf(const Profile& profile);
/// Every fact, in a fixed order; none without a value.
[[nodiscard]] std::vector<ProfileLine> profileLines(const Profile& profile);

}  // namespace burrow
