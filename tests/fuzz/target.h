// What every fuzz target is made of. Each file has one FUZZ_TARGET: with libFuzzer it is a program of its
// own, which makes up inputs; in the tests one program runs all of them over tests/fuzz/corpus.
#pragma once

#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <span>
#include <string_view>

namespace burrow::fuzz {

using Target = void (*)(std::string_view bytes);

/// Adds a target to those of the replaying program.
bool addTarget(std::string_view name, Target target);

/// Ends the program where what must hold does not: that is what the fuzzer looks for.
inline void require(bool holds, const char* what) {
    if (holds) return;
    std::fprintf(stderr, "does not hold: %s\n", what);
    std::abort();
}

inline std::span<const std::uint8_t> asBytes(std::string_view text) {
    return {reinterpret_cast<const std::uint8_t*>(text.data()), text.size()};
}

}  // namespace burrow::fuzz

#define BURROW_REQUIRE(expression) ::burrow::fuzz::require((expression), #expression)

#ifdef BURROW_FUZZING
#define FUZZ_TARGET(name)                                                          \
    static void name(std::string_view bytes);                                      \
    extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, size_t size);  \
    extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, size_t size) { \
        name({reinterpret_cast<const char*>(data), size});                         \
        return 0;                                                                  \
    }                                                                              \
    static void name(std::string_view bytes)
#else
#define FUZZ_TARGET(name)                                                                     \
    static void name(std::string_view bytes);                                                 \
    [[maybe_unused]] static const bool name##Added = ::burrow::fuzz::addTarget(#name, &name); \
    static void name(std::string_view bytes)
#endif
