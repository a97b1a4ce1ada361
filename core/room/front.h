// The first of a large room, so that a list stands on the screen before thousands are read: who comes
// first in the walk is noted beside the book, and read by name the next time.
#pragma once

#include <filesystem>
#include <vector>

#include "base/ids.h"
#include "base/result.h"

namespace burrow {

class Room;

/// Rooms with no more than these are read whole at once.
inline constexpr std::size_t largeRoom = 500;
/// How many are read first: more than a screen shows.
inline constexpr std::size_t frontSize = 120;

/// "<book>-front"
[[nodiscard]] std::filesystem::path frontPath(const std::filesystem::path& book);
/// Those noted last time; none where nothing was noted, or what is there cannot be read.
[[nodiscard]] std::vector<SubjectId> notedFront(const std::filesystem::path& book);
/// Notes the first of a large room, where that says anything new. The note is only a help: where it
/// cannot be written, or is out of date, the list comes a little later.
Done noteFront(const std::filesystem::path& book, const Room& room);

}  // namespace burrow
