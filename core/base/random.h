// Randomness as a port, so that a test can repeat what it saw.
#pragma once

#include <cstdint>
#include <random>
#include <span>

namespace burrow {

class Random {
public:
    virtual ~Random() = default;
    virtual void fill(std::span<std::uint8_t> bytes) = 0;
};

/// The operating system's generator, fit for identifiers that must never meet.
class SystemRandom final : public Random {
public:
    void fill(std::span<std::uint8_t> bytes) override;
};

/// Repeatable; for tests and for the demo, never for a keeper's book.
class SeededRandom final : public Random {
public:
    explicit SeededRandom(std::uint64_t seed) : engine_(seed) {}
    void fill(std::span<std::uint8_t> bytes) override;

private:
    std::mt19937_64 engine_;
};

}  // namespace burrow
