#include "base/hash.h"

#include <sodium.h>

namespace burrow {

static_assert(crypto_hash_sha256_BYTES == 32);

Sha256 Sha256::of(std::span<const std::uint8_t> data) {
    Sha256 digest;
    crypto_hash_sha256(digest.bytes.data(), data.data(), data.size());
    return digest;
}

Sha256 Sha256::of(std::string_view data) {
    Sha256 digest;
    crypto_hash_sha256(digest.bytes.data(), reinterpret_cast<const unsigned char*>(data.data()),
                       data.size());
    return digest;
}

namespace {
crypto_hash_sha256_state* stateIn(std::array<std::uint8_t, 104>& bytes) {
    static_assert(sizeof(crypto_hash_sha256_state) == 104);
    static_assert(alignof(crypto_hash_sha256_state) <= 8);
    return reinterpret_cast<crypto_hash_sha256_state*>(bytes.data());
}
}  // namespace

Sha256Stream::Sha256Stream() { crypto_hash_sha256_init(stateIn(state_)); }

void Sha256Stream::add(std::span<const std::uint8_t> data) {
    crypto_hash_sha256_update(stateIn(state_), data.data(), data.size());
}

Sha256 Sha256Stream::finish() {
    Sha256 digest;
    crypto_hash_sha256_final(stateIn(state_), digest.bytes.data());
    crypto_hash_sha256_init(stateIn(state_));
    return digest;
}

std::string Sha256::hex() const {
    std::string text(bytes.size() * 2 + 1, '\0');
    sodium_bin2hex(text.data(), text.size(), bytes.data(), bytes.size());
    text.pop_back();  // the terminating zero that sodium writes
    return text;
}

std::optional<Sha256> Sha256::parse(std::string_view hex) {
    Sha256 digest;
    std::size_t length = 0;
    const char* end = nullptr;
    if (hex.size() != digest.bytes.size() * 2) return std::nullopt;
    if (sodium_hex2bin(digest.bytes.data(), digest.bytes.size(), hex.data(), hex.size(), nullptr,
                       &length, &end) != 0) {
        return std::nullopt;
    }
    if (length != digest.bytes.size() || digest.hex() != hex) return std::nullopt;
    return digest;
}

}  // namespace burrow
