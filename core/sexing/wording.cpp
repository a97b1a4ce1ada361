// What the ledger says in words.
#include <cmath>

#include "sexing/ledger.h"

namespace burrow::sexing {
namespace {

std::string_view nameOf(Decisive what) {
    switch (what) {
        case Decisive::ultimateMoult: return "ultimate_moult";
        case Decisive::hooksOrBulbs: return "hooks_or_bulbs";
        case Decisive::spermWeb: return "sperm_web";
        case Decisive::sac: break;
    }
    return "sac";
}

}  // namespace

std::string_view name(Part part) {
    switch (part) {
        case Part::counts: return "counts";
        case Part::agrees: return "agrees";
        case Part::sameSkin: return "same_skin";
        case Part::cancels: return "cancels";
        case Part::cannotTell: return "cannot_tell";
        case Part::tellsNothing: return "tells_nothing";
        case Part::setAside: return "set_aside";
        case Part::corrected: return "corrected";
        case Part::disputed: break;
    }
    return "disputed";
}

std::string_view name(ConflictKind kind) {
    switch (kind) {
        case ConflictKind::looks: return "looks";
        case ConflictKind::sameSkin: return "same_skin";
        case ConflictKind::settled: return "settled";
        case ConflictKind::recorded: break;
    }
    return "recorded";
}

std::string_view name(Settles what) {
    switch (what) {
        case Settles::waitingMoult: return "waiting_moult";
        case Settles::clearMoult: return "clear_moult";
        case Settles::grown: return "grown";
        case Settles::secondOpinion: return "second_opinion";
        case Settles::record: break;
    }
    return "record";
}

double roundedRatio(double ratio) {
    return ratio < 10 ? std::round(ratio * 10) / 10 : std::round(ratio);
}

Message seenMessage(const Sighting& seen) {
    if (seen.decisive) {
        const bool isRecord = !seen.entry;
        return {"sexing.seen." +
                std::string(isRecord ? "recorded_mature" : nameOf(*seen.decisive))};
    }
    Message message("sexing.seen." + std::string(burrow::name(seen.look)) + "." +
                    std::string(burrow::name(seen.says)));
    const auto clarity = seen.clarity ? burrow::name(*seen.clarity) : "unstated";
    message.arguments = {{"clarity", std::string(clarity)}};
    if (seen.look == Look::moult && seen.moultDay) {
        message.id += seen.carapace ? ".sized" : ".dated";
        message.arguments.push_back({"moult", *seen.moultDay});
    }
    if (seen.carapace) message.arguments.push_back({"size", seen.carapace->value});
    return message;
}

Message countedMessage(const Factor& line) {
    Message message("sexing.part." + std::string(name(line.part)));
    if (line.weight == 0) return message;
    if (line.seen.decisive) return {"sexing.part.settles"};
    const bool isFemale = line.ratio >= 1;
    message.id += isFemale ? ".female" : ".male";
    message.arguments = {{"times", roundedRatio(isFemale ? line.ratio : 1 / line.ratio)},
                         {"share", static_cast<std::int64_t>(std::lround(100 * line.weight))}};
    return message;
}

}  // namespace burrow::sexing
