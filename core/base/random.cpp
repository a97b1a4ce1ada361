#include "base/random.h"

#include <sodium.h>

#include <algorithm>
#include <cstring>

namespace burrow {

void SystemRandom::fill(std::span<std::uint8_t> bytes) {
    // randombytes_buf needs no sodium_init: it opens the system's generator on first use.
    randombytes_buf(bytes.data(), bytes.size());
}

void SeededRandom::fill(std::span<std::uint8_t> bytes) {
    while (!bytes.empty()) {
        const auto word = engine_();
        const auto count = std::min(sizeof word, bytes.size());
        std::memcpy(bytes.data(), &word, count);
        bytes = bytes.subspan(count);
    }
}

}  // namespace burrow
