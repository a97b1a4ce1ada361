#include "exchange/tally.h"

#include <algorithm>

namespace burrow::exchange {
namespace {

using nlohmann::json;

bool isCorrection(std::string_view kind) {
    return kind == entrykind::amend || kind == entrykind::retract;
}

/// Whether it is about an animal (or a group, or a lot): facts are, and so are fields set for one.
bool isAboutAnimal(std::string_view kind, const json& body) {
    if (isCorrection(kind)) return false;
    if (kind != entrykind::set) return parseFactKind(kind).has_value();
    if (!body.is_object()) return false;
    const auto type = body.find("type");
    return type != body.end() && *type == "subject";
}

std::optional<Sha256> pictureIn(const json& body) {
    if (!body.is_object()) return std::nullopt;
    const auto at = body.find("picture");
    if (at == body.end() || !at->is_string()) return std::nullopt;
    return Sha256::parse(at->get_ref<const std::string&>());
}

std::optional<NamedPhoto> photoOf(const EntryId& id, std::string_view kind, const json& body) {
    if (kind != entrykind::amend) {
        const auto picture = pictureIn(body);
        return picture ? std::optional(NamedPhoto{*picture, id}) : std::nullopt;
    }
    if (!body.is_object()) return std::nullopt;
    const auto target = body.find("entry");
    const auto amended = body.find("body");
    if (target == body.end() || !target->is_string() || amended == body.end()) return std::nullopt;
    const auto fact = Uuid::parse(target->get_ref<const std::string&>());
    const auto picture = pictureIn(*amended);
    if (!fact || !picture) return std::nullopt;
    return NamedPhoto{*picture, EntryId{*fact}};
}

}  // namespace

void Tally::add(const Entry& entry) {
    count({entry.id, entry.device, entry.seq, entry.kind, entry.thing, entry.day, entry.body});
}

void Tally::add(const StoredEntry& entry) {
    // Most bodies hold nothing that counts, and parsing is what would take the time.
    const bool mayCount =
        entry.kind == entrykind::set || entry.body.find(R"("picture")") != std::string_view::npos;
    const auto body = mayCount ? json::parse(entry.body, nullptr, false) : json();
    count({entry.id, entry.device, entry.seq, entry.kind, entry.thing, entry.day, body});
}

void Tally::count(const Counted& entry) {
    ++totals_.entries;
    auto& share = totals_.authors[entry.device];
    share.first = share.count == 0 ? entry.seq : std::min(share.first, entry.seq);
    share.last = std::max(share.last, entry.seq);
    ++share.count;
    for (std::size_t i = 0; i < share.digest.bytes.size(); ++i) {
        share.digest.bytes[i] ^= entry.id.uuid.bytes[i];
    }
    if (entry.thing && isAboutAnimal(entry.kind, entry.body)) {
        animals_.insert(*entry.thing);
        if (entry.kind != entrykind::set) {
            totals_.firstDay = std::min(totals_.firstDay.value_or(entry.day), entry.day);
            totals_.lastDay = std::max(totals_.lastDay.value_or(entry.day), entry.day);
        }
    }
    if (const auto photo = photoOf(entry.id, entry.kind, entry.body)) photos_.push_back(*photo);
}

void Tally::addBytes(std::span<const std::uint8_t> bytes) {
    totals_.bytes += bytes.size();
    hash_.add(bytes);
}

Totals Tally::finish() {
    totals_.sha256 = hash_.finish();
    totals_.animals = static_cast<std::int64_t>(animals_.size());
    return totals_;
}

}  // namespace burrow::exchange
