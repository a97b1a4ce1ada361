#include "journal/digest_codec.h"

#include "journal/compact.h"

namespace burrow {
namespace {

constexpr std::uint8_t version = 2;

template <class Coder, LikeA<Meal> T>
void transfer(Coder& coder, T& meal) {
    coder.whole(meal.day.days);
    coder.text(meal.prey);
    coder.maybe(meal.preyLength, [&](auto& v) { coder.real(v.value); });
    coder.whole(meal.count);
    coder.whole(meal.outcome);
}

template <class Coder, LikeA<MoultMark> T>
void transfer(Coder& coder, T& mark) {
    coder.whole(mark.day.days);
    coder.maybe(mark.span, [&](auto& v) { coder.real(v.value); });
    coder.maybe(mark.carapace, [&](auto& v) { coder.real(v.value); });
}

template <class Coder, LikeA<Digest> T>
void transfer(Coder& coder, T& digest) {
    const auto day = [&](auto& v) { coder.whole(v.days); };
    const auto each = [&](auto& v) { transfer(coder, v); };
    const auto whole = [&](auto& v) { coder.whole(v); };
    const auto length = [&](auto& v) { coder.real(v.value); };
    coder.maybe(digest.firstEntry, day);
    coder.maybe(digest.lastEntry, day);
    coder.maybe(digest.lastAccepted, each);
    coder.maybe(digest.lastOffer, each);
    coder.maybe(digest.leftoversSince, [&](auto& v) { coder.whole(v.ms); });
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
    Encoder encoder(version);
    transfer(encoder, digest);
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
