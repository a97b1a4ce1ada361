#include "journal/digest_codec.h"

#include <cstring>

namespace burrow {
namespace {

constexpr std::uint8_t version = 2;

/// Writes and reads the same fields in the same order: `transfer` below is the only list of them.
class Encoder {
public:
    void number(std::int64_t value) {
        // Zigzag and seven bits a byte (as in the protocol buffers encoding): days and counts are short.
        auto rest =
            static_cast<std::uint64_t>(value) << 1U ^ static_cast<std::uint64_t>(value >> 63);
        while (rest >= 0x80) {
            bytes.push_back(static_cast<std::uint8_t>(rest | 0x80U));
            rest >>= 7U;
        }
        bytes.push_back(static_cast<std::uint8_t>(rest));
    }
    template <class Integer>
    void whole(Integer& value) {
        number(static_cast<std::int64_t>(value));
    }
    void real(double& value) {
        std::uint64_t bits = 0;
        std::memcpy(&bits, &value, sizeof bits);
        for (unsigned i = 0; i < 8; ++i) bytes.push_back(static_cast<std::uint8_t>(bits >> 8 * i));
    }
    void text(std::string& value) {
        number(static_cast<std::int64_t>(value.size()));
        bytes.insert(bytes.end(), value.begin(), value.end());
    }
    template <class T, class Each>
    void maybe(std::optional<T>& value, Each each) {
        number(value ? 1 : 0);
        if (value) each(*value);
    }
    template <class T, class Each>
    void list(std::vector<T>& values, Each each) {
        number(static_cast<std::int64_t>(values.size()));
        for (auto& value : values) each(value);
    }

    Bytes bytes{version};
};

class Decoder {
public:
    explicit Decoder(std::span<const std::uint8_t> bytes) : bytes_(bytes) {}

    std::int64_t number() {
        std::uint64_t value = 0;
        for (unsigned shift = 0; shift < 64; shift += 7) {
            const auto byte = take();
            value |= static_cast<std::uint64_t>(byte & 0x7FU) << shift;
            if (byte < 0x80) break;
        }
        return static_cast<std::int64_t>(value >> 1U) ^ -static_cast<std::int64_t>(value & 1U);
    }
    template <class Integer>
    void whole(Integer& value) {
        value = static_cast<Integer>(number());
    }
    void real(double& value) {
        std::uint64_t bits = 0;
        for (unsigned i = 0; i < 8; ++i) bits |= static_cast<std::uint64_t>(take()) << 8 * i;
        std::memcpy(&value, &bits, sizeof bits);
    }
    void text(std::string& value) {
        const auto size = number();
        if (size < 0 || static_cast<std::uint64_t>(size) > bytes_.size()) {
            isWhole = false;
            return;
        }
        const auto part = bytes_.first(static_cast<std::size_t>(size));
        value.assign(part.begin(), part.end());
        bytes_ = bytes_.subspan(part.size());
    }
    template <class T, class Each>
    void maybe(std::optional<T>& value, Each each) {
        if (number() != 0) each(value.emplace());
    }
    template <class T, class Each>
    void list(std::vector<T>& values, Each each) {
        const auto size = number();
        for (std::int64_t i = 0; i < size && isWhole; ++i) each(values.emplace_back());
    }
    [[nodiscard]] bool isAtEnd() const { return bytes_.empty(); }

    bool isWhole = true;

private:
    std::uint8_t take() {
        if (bytes_.empty()) {
            isWhole = false;
            return 0;
        }
        const auto byte = bytes_.front();
        bytes_ = bytes_.subspan(1);
        return byte;
    }
    std::span<const std::uint8_t> bytes_;
};

template <class Coder>
void transfer(Coder& coder, Meal& meal) {
    coder.whole(meal.day.days);
    coder.text(meal.prey);
    coder.maybe(meal.preyLength, [&](Millimetres& v) { coder.real(v.value); });
    coder.whole(meal.count);
    coder.whole(meal.outcome);
}

template <class Coder>
void transfer(Coder& coder, MoultMark& mark) {
    coder.whole(mark.day.days);
    coder.maybe(mark.span, [&](Millimetres& v) { coder.real(v.value); });
    coder.maybe(mark.carapace, [&](Millimetres& v) { coder.real(v.value); });
}

template <class Coder>
void transfer(Coder& coder, Digest& digest) {
    const auto day = [&](CivilDay& v) { coder.whole(v.days); };
    const auto each = [&](auto& v) { transfer(coder, v); };
    const auto whole = [&](auto& v) { coder.whole(v); };
    const auto length = [&](Millimetres& v) { coder.real(v.value); };
    coder.maybe(digest.firstEntry, day);
    coder.maybe(digest.lastEntry, day);
    coder.maybe(digest.lastAccepted, each);
    coder.maybe(digest.lastOffer, each);
    coder.maybe(digest.leftoversSince, [&](Instant& v) { coder.whole(v.ms); });
    coder.whole(digest.refusalsInARow);
    coder.list(digest.recentOffers, each);
    coder.whole(digest.moultCount);
    coder.list(digest.recentMoults, each);
    coder.maybe(digest.fangsBlack, day);
    coder.maybe(digest.premoultSign, day);
    coder.maybe(digest.lastPremoultSign, day);
    coder.whole(digest.hadUltimateMoult);
    coder.maybe(digest.span, length);
    coder.maybe(digest.carapace, length);
    coder.maybe(digest.sizedOn, day);
    coder.maybe(digest.lastWatered, day);
    coder.maybe(digest.lastDampened, day);
    coder.maybe(digest.lastSeen, day);
    coder.maybe(digest.lastSeenCount, whole);
    coder.maybe(digest.lastRehoused, day);
    coder.maybe(digest.lastLooked, day);
    coder.maybe(digest.spermWeb, day);
    coder.maybe(digest.lastPaired, day);
    coder.whole(digest.pairings);
    coder.maybe(digest.sacLaid, day);
    coder.whole(digest.gone);
    coder.maybe(digest.standing, whole);
    coder.maybe(digest.standingSince, day);
    coder.maybe(digest.loanUntil, day);
    coder.maybe(digest.sexed, whole);
}

}  // namespace

Bytes encodeDigest(const Digest& digest) {
    Encoder encoder;
    auto copy = digest;  // one transfer() serves both ways, so it takes its fields by reference
    transfer(encoder, copy);
    return std::move(encoder.bytes);
}

std::optional<Digest> decodeDigest(std::span<const std::uint8_t> bytes) {
    if (bytes.empty() || bytes.front() != version) return std::nullopt;
    Decoder decoder(bytes.subspan(1));
    Digest digest;
    transfer(decoder, digest);
    if (!decoder.isWhole || !decoder.isAtEnd()) return std::nullopt;
    return digest;
}

}  // namespace burrow
