// How large the directory of a zip file says it is, read from its last record alone.
#pragma once

#include <cstdint>

#include "base/result.h"

namespace burrow::exchange {

struct ZipDirectory {
    std::uint64_t files = 0;
    std::uint64_t bytes = 0;
};

/// Reads the end of central directory record (APPNOTE.TXT 6.3, 4.3.16), and its zip64 form (4.3.14)
/// where there is one. Fails with `badInput` for what does not begin with a file (4.3.7) or does not
/// end with such a record. The file position of `fd` is left alone.
Result<ZipDirectory> zipDirectory(int fd, std::uint64_t fileBytes);

}  // namespace burrow::exchange
