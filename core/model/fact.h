// What can happen to a subject. A fact has a kind and a body; which fields a kind's body may hold,
// and which it must, stands in one table (fact_kinds.cpp) that the journal, the command line, CSV
// files and the help text all read. A new kind is a row there.
#pragma once

#include <cstdint>
#include <nlohmann/json_fwd.hpp>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "base/hash.h"
#include "base/ids.h"
#include "base/result.h"
#include "base/units.h"
#include "model/place.h"
#include "model/terms.h"

namespace burrow {

enum class FactKind {
    offered,
    leftoversOut,
    watered,
    dampened,
    premoultSign,
    moulted,
    measured,
    fangsBlack,
    seen,
    rehoused,
    moved,
    note,
    photo,
    sexed,
    spermWeb,  ///< a male has made one: he is charged and can be paired
    paired,
    sacLaid,
    sacOut,  ///< taken, opened, hatched or eaten: it is no longer with her
    died,
    sold,
    given,
    lent,
    returned
};

/// The fields any fact may have; a kind uses some of them.
struct FactBody {
    std::optional<std::string> prey;
    std::optional<Millimetres> preyLength;
    std::optional<int> count;
    std::optional<Outcome> outcome;
    std::optional<std::string> sign;  ///< of premoult: dull colour, dark patch, sealed burrow ...
    std::optional<Millimetres> span;  ///< leg span, diagonal
    std::optional<Millimetres> carapace;
    std::optional<Millimetres> carapaceWidth;
    std::optional<Millimetres> fang;
    std::optional<std::string> segment;  ///< of a leg: "leg 1 femur"
    std::optional<Millimetres> segmentLength;
    std::optional<Millimetres> low;  ///< of the one length that the fact has: with 95 percent it is
    std::optional<Millimetres> high;    ///< within these
    std::optional<Millimetres> height;  ///< above the mat, as it was taken when measuring a photo
    std::optional<Grams> mass;
    std::optional<Method> method;
    std::optional<bool> ultimate;  ///< a male's last moult, with hooks or palpal bulbs
    std::optional<Sex> sex;
    std::optional<Look> look;          ///< what was examined for the sex
    std::optional<Clarity> clarity;    ///< and how clearly it was seen
    std::optional<std::string> judge;  ///< who examined it, where that was not the keeper
    std::optional<EntryId>
        about;  ///< the entry this one belongs to: the moult of a photo, or of a size
    std::optional<PhotoRole> role;
    std::optional<bool> dried;       ///< the moult was photographed after it had dried
    std::optional<Sha256> picture;   ///< the upright copy without location
    std::optional<Sha256> original;  ///< the file as it came
    std::optional<EnclosureId> enclosure;
    std::optional<Place> place;
    std::optional<std::string> party;  ///< who bought, got or borrowed it
    std::optional<std::string> price;
    std::optional<std::string> cause;
    std::optional<CivilDay> until;
    std::optional<std::string> text;   ///< free note; allowed with every kind
    std::optional<bool> confidential;  ///< left out of files for others unless asked for

    friend bool operator==(const FactBody&, const FactBody&) = default;
};

/// One thing that happened, after amendments; what was retracted is no fact.
struct Fact {
    EntryId id;
    SubjectId subject;
    FactKind kind = FactKind::note;
    CivilDay day;  ///< the keeper's civil day it happened on
    Instant happenedAt;
    std::int64_t stamp = 0;  ///< hybrid logical clock of its entry, which breaks ties
    FactBody body;

    friend bool operator==(const Fact&, const Fact&) = default;
};

/// Whether an examination tells the sex by itself: the keeper's own, of more than colours, and seen fairly
/// clearly at least (or from before clarity was written down). All others are evidence, and no more.
[[nodiscard]] bool tellsSex(const FactBody& examination);

/// History order: by the time it happened, then as it was recorded.
[[nodiscard]] bool happenedBefore(const Fact& a, const Fact& b);

/// What a field holds: decides how text is read and what is refused.
enum class FieldType {
    text,
    count,
    millimetres,
    grams,
    outcome,
    method,
    sex,
    role,
    look,
    clarity,
    flag,
    day,
    place,
    enclosure,
    entry,
    hash
};

struct FieldSpec {
    std::string_view name;  ///< in files and on the command line
    FieldType type;
    double least = 0;  ///< for numbers
    double most = 0;
};

struct KindSpec {
    FactKind kind;
    std::string_view name;
    std::span<const std::string_view> required;
    std::span<const std::string_view> allowed;  ///< besides the required ones
    std::string_view example;                   ///< of a body, as the command line takes it
};

[[nodiscard]] std::span<const FieldSpec> factFields();
[[nodiscard]] std::span<const KindSpec> factKinds();
[[nodiscard]] const KindSpec& spec(FactKind kind);
/// Accepts spaces, hyphens and underscores alike, and the usual variants ("moult", "fed").
[[nodiscard]] std::optional<FactKind> parseFactKind(std::string_view text);

/// The body as it stands in the journal: a JSON object with only the fields that are set.
[[nodiscard]] nlohmann::json toJson(const FactBody& body);
/// Checks types, ranges and required fields. Fields it does not know are left alone: they come from
/// a newer version and stay in the journal.
[[nodiscard]] Result<FactBody> factBody(FactKind kind, const nlohmann::json& object);
/// Reads one field from typed text; refuses a field that the kind does not have.
[[nodiscard]] Done setField(FactBody& body, FactKind kind, std::string_view field,
                            std::string_view text);
/// The same for a text that was written by fieldText(): spaces around it belong to it.
[[nodiscard]] Done setFieldExactly(FactBody& body, FactKind kind, std::string_view field,
                                   std::string_view text);
/// One field as setField() reads it; nothing where it is not set, or there is no field of that name.
[[nodiscard]] std::optional<std::string> fieldText(const FactBody& body, std::string_view field);
/// Whether a kind may have a field.
[[nodiscard]] bool kindHas(FactKind kind, std::string_view field);
/// That everything the kind requires is there.
[[nodiscard]] Done checkComplete(const FactBody& body, FactKind kind);

}  // namespace burrow
