#pragma once

#include <string_view>
#include <vector>

namespace burrow::storage {

/// The numbered SQL files of storage/schema, in order: step n takes a book from version n to n + 1.
[[nodiscard]] const std::vector<std::string_view>& schemaSteps();

}  // namespace burrow::storage
