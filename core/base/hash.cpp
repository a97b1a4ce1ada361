#include "base/hash.h"

#include <nettle/sha2.h>
#include <sodium.h>

namespace burrow {

// Nettle knows the processor's own instructions for it, which is three to four times as quick as libsodium.
static_assert(SHA256_DIGEST_SIZE == 32);

Sha256 Sha256::of(std::span<const std::uint8_t> data) {
    Sha256Stream stream;
    stream.add(data);
    return stream.finish();
}

Sha256 Sha256::of(std::string_view data) {
    return of(std::span(reinterpret_cast<const std::uint8_t*>(data.data()), data.size()));
}

namespace {
sha256_ctx* stateIn(std::array<std::uint8_t, 112>& bytes) {
    static_assert(sizeof(sha256_ctx) == 112);
    static_assert(alignof(sha256_ctx) <= 8);
    return reinterpret_cast<sha256_ctx*>(bytes.data());
}
}  // namespace

Sha256Stream::Sha256Stream() { sha256_init(stateIn(state_)); }

void Sha256Stream::add(std::span<const std::uint8_t> data) {
    sha256_update(stateIn(state_), data.size(), data.data());
}

Sha256 Sha256Stream::finish() {
    Sha256 digest;
    sha256_digest(stateIn(state_), digest.bytes.size(), digest.bytes.data());
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
