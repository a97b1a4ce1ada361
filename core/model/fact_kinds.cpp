// The table of entry kinds and their fields: the one place to add a kind.
#include <array>

#include "base/text.h"
#include "model/fact.h"

namespace burrow {
namespace {

using Names = std::span<const std::string_view>;

// Ranges are what can be true of an arachnid, wide enough for the largest known; they catch a slip of
// the finger (a span of 1500 mm), not an unusual animal.
constexpr std::array fields{
    FieldSpec{"prey", FieldType::text},
    FieldSpec{"prey_mm", FieldType::millimetres, 0.1, 150},
    FieldSpec{"count", FieldType::count, 0, 100'000},
    FieldSpec{"outcome", FieldType::outcome},
    FieldSpec{"sign", FieldType::text},
    FieldSpec{"span_mm", FieldType::millimetres, 0.5, 350},
    FieldSpec{"carapace_mm", FieldType::millimetres, 0.1, 80},
    FieldSpec{"carapace_width_mm", FieldType::millimetres, 0.1, 80},
    FieldSpec{"fang_mm", FieldType::millimetres, 0.05, 40},
    FieldSpec{"segment", FieldType::text},
    FieldSpec{"segment_mm", FieldType::millimetres, 0.05, 150},
    FieldSpec{"low_mm", FieldType::millimetres, 0, 400},
    FieldSpec{"high_mm", FieldType::millimetres, 0, 400},
    FieldSpec{"height_mm", FieldType::millimetres, 0, 100},
    FieldSpec{"mass_g", FieldType::grams, 0.0001, 500},
    FieldSpec{"method", FieldType::method},
    FieldSpec{"ultimate", FieldType::flag},
    FieldSpec{"sex", FieldType::sex},
    FieldSpec{"look", FieldType::look},
    FieldSpec{"clarity", FieldType::clarity},
    FieldSpec{"judge", FieldType::text},
    FieldSpec{"about", FieldType::entry},
    FieldSpec{"role", FieldType::role},
    FieldSpec{"dried", FieldType::flag},
    FieldSpec{"picture", FieldType::hash},
    FieldSpec{"original", FieldType::hash},
    FieldSpec{"enclosure", FieldType::enclosure},
    FieldSpec{"place", FieldType::place},
    FieldSpec{"party", FieldType::text},
    FieldSpec{"price", FieldType::text},
    FieldSpec{"cause", FieldType::text},
    FieldSpec{"until", FieldType::day},
    FieldSpec{"text", FieldType::text},
    FieldSpec{"confidential", FieldType::flag},
};

constexpr std::array<std::string_view, 1> needsOutcome{"outcome"};
constexpr std::array<std::string_view, 1> needsCount{"count"};
constexpr std::array<std::string_view, 1> needsText{"text"};
constexpr std::array<std::string_view, 2> needsPicture{"picture", "role"};
constexpr std::array<std::string_view, 1> needsSex{"sex"};
constexpr std::array<std::string_view, 3> mealFields{"prey", "prey_mm", "count"};
constexpr std::array<std::string_view, 1> signFields{"sign"};
constexpr std::array<std::string_view, 1> homeFields{"enclosure"};
constexpr std::array<std::string_view, 1> placeFields{"place"};
constexpr std::array<std::string_view, 5> moultFields{"span_mm", "carapace_mm", "method",
                                                      "ultimate", "count"};
constexpr std::array<std::string_view, 12> sizeFields{
    "span_mm",    "carapace_mm", "mass_g", "carapace_width_mm", "fang_mm",   "segment",
    "segment_mm", "method",      "low_mm", "high_mm",           "height_mm", "about"};
constexpr std::array<std::string_view, 3> photoFields{"original", "about", "dried"};
constexpr std::array<std::string_view, 4> examinationFields{"look", "clarity", "judge", "about"};
constexpr std::array<std::string_view, 2> deathFields{"count", "cause"};
constexpr std::array<std::string_view, 3> saleFields{"count", "party", "price"};
constexpr std::array<std::string_view, 2> giftFields{"count", "party"};
constexpr std::array<std::string_view, 2> loanFields{"party", "until"};

constexpr std::array kinds{
    KindSpec{FactKind::offered, "offered", needsOutcome, mealFields,
             "outcome=ate prey=cricket prey_mm=8 count=1"},
    KindSpec{FactKind::leftoversOut, "leftovers_out", {}, {}, ""},
    KindSpec{FactKind::watered, "watered", {}, {}, ""},
    KindSpec{FactKind::dampened, "dampened", {}, {}, ""},
    KindSpec{FactKind::premoultSign, "premoult_sign", {}, signFields, "sign=\"dark patch\""},
    KindSpec{FactKind::moulted, "moulted", {}, moultFields, "span_mm=62 carapace_mm=15.8"},
    KindSpec{FactKind::measured, "measured", {}, sizeFields, "span_mm=64 method=ruler"},
    KindSpec{FactKind::fangsBlack, "fangs_black", {}, {}, ""},
    KindSpec{FactKind::seen, "seen", needsCount, {}, "count=3"},
    KindSpec{FactKind::rehoused, "rehoused", {}, homeFields, "enclosure=E12"},
    KindSpec{FactKind::moved, "moved", {}, placeFields, "place=\"A / 2 / 3\""},
    KindSpec{FactKind::note, "note", needsText, {}, "text=\"webbed over the dish\""},
    KindSpec{FactKind::photo, "photo", needsPicture, photoFields, "file=moult.jpg role=moult"},
    KindSpec{FactKind::sexed, "sexed", needsSex, examinationFields,
             "sex=female look=moult clarity=clearly"},
    KindSpec{FactKind::spermWeb, "sperm_web", {}, {}, ""},
    KindSpec{FactKind::paired, "paired", {}, {}, "text=\"with 118, ran off\""},
    KindSpec{FactKind::sacLaid, "sac_laid", {}, {}, ""},
    KindSpec{FactKind::sacOut, "sac_out", {}, {}, "text=\"taken for the incubator\""},
    KindSpec{FactKind::died, "died", {}, deathFields, "cause=\"stuck moult\""},
    KindSpec{FactKind::sold, "sold", {}, saleFields, "count=2"},
    KindSpec{FactKind::given, "given", {}, giftFields, "count=1"},
    KindSpec{FactKind::lent, "lent", {}, loanFields, "until=2026-08-01"},
    KindSpec{FactKind::returned, "returned", {}, {}, ""},
};

struct OtherName {
    std::string_view text;
    FactKind kind;
};

constexpr std::array otherNames{
    OtherName{"fed", FactKind::offered},       OtherName{"feeding", FactKind::offered},
    OtherName{"offer", FactKind::offered},     OtherName{"leftovers", FactKind::leftoversOut},
    OtherName{"water", FactKind::watered},     OtherName{"damp", FactKind::dampened},
    OtherName{"dampen", FactKind::dampened},   OtherName{"premoult", FactKind::premoultSign},
    OtherName{"moult", FactKind::moulted},     OtherName{"measure", FactKind::measured},
    OtherName{"fangs", FactKind::fangsBlack},  OtherName{"count", FactKind::seen},
    OtherName{"rehouse", FactKind::rehoused},  OtherName{"rehousing", FactKind::rehoused},
    OtherName{"noted", FactKind::note},        OtherName{"photographed", FactKind::photo},
    OtherName{"pairing", FactKind::paired},    OtherName{"mated", FactKind::paired},
    OtherName{"sac", FactKind::sacLaid},       OtherName{"egg_sac", FactKind::sacLaid},
    OtherName{"sac_pulled", FactKind::sacOut}, OtherName{"sac_taken", FactKind::sacOut},
    OtherName{"death", FactKind::died},        OtherName{"dead", FactKind::died},
    OtherName{"given_away", FactKind::given},  OtherName{"loaned", FactKind::lent},
    OtherName{"on_loan", FactKind::lent},
};

}  // namespace

std::span<const FieldSpec> factFields() { return fields; }
std::span<const KindSpec> factKinds() { return kinds; }

const KindSpec& spec(FactKind kind) {
    for (const auto& row : kinds) {
        if (row.kind == kind) return row;
    }
    return kinds.front();  // unreachable: a test holds the table against the enum
}

std::optional<FactKind> parseFactKind(std::string_view text) {
    const auto wanted = normalTerm(text);
    for (const auto& row : kinds) {
        if (row.name == wanted) return row.kind;
    }
    for (const auto& other : otherNames) {
        if (other.text == wanted) return other.kind;
    }
    return std::nullopt;
}

}  // namespace burrow
