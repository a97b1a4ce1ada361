#include "journal/kept_codec.h"

#include "journal/compact.h"
#include "journal/digest_codec.h"

namespace burrow {
namespace {

template <class Coder, LikeA<Place> T>
void transfer(Coder& coder, T& place) {
    auto& [room, rack, shelf, position] = place;
    for (auto* part : {&room, &rack, &shelf, &position}) coder.text(*part);
}

template <class Coder, LikeA<HomeSize> T>
void transfer(Coder& coder, T& home) {
    auto& [length, width, height, substrate] = home;
    for (auto* side : {&length, &width, &height, &substrate}) coder.real(side->value);
}

/// First what walkPlace() reads. The names of all fields stand here, so that a new one is not forgotten.
template <class Coder, LikeA<Subject> S, LikeA<Place> P>
void transferWalk(Coder& coder, S& subject, P& place) {
    coder.whole(subject.quarantined);
    transfer(coder, place);
    coder.text(subject.number);
    coder.uuid(subject.id.uuid);
}

template <class Coder, LikeA<Subject> T>
void transferRest(Coder& coder, T& subject) {
    auto& [id, form, number, species, sex, hatched, acquired, source, standing, quarantined, mature,
           enclosure, place, mother, father, headcount, note] = subject;
    const auto day = [&](auto& v) { coder.whole(v.days); };
    const auto thing = [&](auto& v) { coder.uuid(v.uuid); };
    coder.whole(form);
    coder.text(species);
    coder.whole(sex);
    coder.maybe(hatched, day);
    coder.maybe(acquired, day);
    coder.text(source);
    coder.whole(standing);
    coder.whole(mature);
    coder.maybe(enclosure, thing);
    transfer(coder, place);
    coder.maybe(mother, thing);
    coder.maybe(father, thing);
    coder.whole(headcount);
    coder.text(note);
}

template <class Coder, LikeA<Kept> T>
void transfer(Coder& coder, T& kept, std::span<const std::uint8_t>& digestBytes) {
    auto& [subject, place, digest, tagCode, home, quarantinedSince] = kept;
    transferWalk(coder, subject, place);
    transferRest(coder, subject);
    coder.blob(digestBytes);
    coder.maybe(tagCode, [&](auto& v) { coder.text(v); });
    coder.maybe(home, [&](auto& v) { transfer(coder, v); });
    coder.maybe(quarantinedSince, [&](auto& v) { coder.whole(v.days); });
}

}  // namespace

Bytes packed(const Kept& kept) {
    Encoder encoder;
    constexpr std::size_t usual = 600;
    encoder.bytes.reserve(usual);
    const auto digest = encodeDigest(kept.digest);
    std::span<const std::uint8_t> digestBytes = digest;
    transfer(encoder, kept, digestBytes);
    return {encoder.bytes.begin(), encoder.bytes.end()};  // no larger than it has to be
}

Kept unpacked(std::span<const std::uint8_t> bytes) {
    Kept kept;
    Decoder decoder(bytes);
    std::span<const std::uint8_t> digestBytes;
    transfer(decoder, kept, digestBytes);
    kept.digest = decodeDigest(digestBytes).value_or(Digest{});
    return kept;
}

WalkPlace walkPlace(std::span<const std::uint8_t> bytes) {
    Subject subject;
    WalkPlace walk;
    Decoder decoder(bytes);
    transferWalk(decoder, subject, walk.place);
    walk.isQuarantined = subject.quarantined;
    walk.number = std::move(subject.number);
    walk.id = subject.id;
    return walk;
}

}  // namespace burrow
