#include "husbandry/profile_file.h"

#include <algorithm>
#include <array>
#include <nlohmann/json.hpp>

#include "base/text.h"
#include "husbandry/profile_terms.h"

namespace burrow {
namespace {

using nlohmann::json;

// What can be true of an arachnid: they catch a slip of the finger, not an unusual animal.
constexpr Range<Millimetres> adultSpans{{10}, {350}};
constexpr Range<Celsius> warmths{{5}, {40}};

constexpr std::array<std::string_view, 19> knownFields{
    "name",          "authority", "other_names", "trade_names", "order",   "region", "habit",
    "adult_span_mm", "damp",      "warmth_c",    "temperament", "fast",    "venom",  "hairs",
    "groups",        "moults",    "listing",     "housing",     "handling"};

/// One file, with what a message needs to say where in it the fault is.
struct File {
    const json& object;
    std::size_t number;
    std::string species;

    [[nodiscard]] tl::unexpected<Error> refuse(std::string id, std::string_view field) const {
        return fail(Trouble::badInput,
                    {std::move(id),
                     {{"file", static_cast<std::int64_t>(number)},
                      {"species", species},
                      {"field", std::string(field.substr(0, longestProfileLine))}}});
    }
    [[nodiscard]] const json* find(std::string_view field) const {
        const auto found = object.find(field);
        return found == object.end() ? nullptr : &*found;
    }
};

/// No line ends, and nothing that would steer whoever shows it.
bool isOneLine(const std::string& text) {
    const auto isPlain = [](char c) { return c >= ' ' && c <= '~'; };
    if (std::all_of(text.begin(), text.end(), isPlain)) return true;
    return text.find('\n') == std::string::npos && text.find('\r') == std::string::npos &&
           withoutSteering(text) == text;
}

Result<std::string> textOf(const File& file, std::string_view field, const json* value,
                           std::size_t longest) {
    if (value == nullptr || !value->is_string()) return file.refuse("profile.missing", field);
    auto text = value->get<std::string>();
    if (trimmed(text).empty()) return file.refuse("profile.missing", field);
    if (text.size() > longest) return file.refuse("profile.tooLong", field);
    if (!isOneLine(text)) return file.refuse("profile.notOneLine", field);
    return text;
}

Result<std::string> lineOf(const File& file, std::string_view field, const json* value) {
    return textOf(file, field, value, longestProfileLine);
}

Result<std::vector<std::string>> namesOf(const File& file, std::string_view field) {
    const auto* list = file.find(field);
    if (list == nullptr || !list->is_array()) return file.refuse("profile.missing", field);
    if (list->size() > mostProfileNames) return file.refuse("profile.tooMany", field);
    std::vector<std::string> names;
    for (const auto& item : *list) {
        BURROW_TRY(auto name, lineOf(file, field, &item));
        names.push_back(std::move(name));
    }
    return names;
}

/// The value of a fact; its source goes to `source`.
Result<const json*> factOf(const File& file, std::string_view field, std::string& source) {
    const auto* fact = file.find(field);
    if (fact == nullptr || !fact->is_object() || !fact->contains("value")) {
        return file.refuse("profile.missing", field);
    }
    const auto cited = fact->find("source");
    if (cited == fact->end() || !cited->is_string() ||
        trimmed(cited->get_ref<const std::string&>()).empty()) {
        return file.refuse("profile.noSource", field);
    }
    BURROW_TRY(source, textOf(file, field, &*cited, longestProfileSource));
    return &fact->at("value");
}

template <class Term>
Result<Term> termOf(const File& file, std::string_view field, const json* value) {
    if (value != nullptr && value->is_string()) {
        for (const auto& spelling : spellingsOf(Term{})) {
            if (spelling.text == value->get_ref<const std::string&>()) return spelling.term;
        }
    }
    return file.refuse("profile.notKnown", field);
}

template <class Term>
Done read(const File& file, std::string_view field, Sourced<Term>& into) {
    BURROW_TRY(const auto* value, factOf(file, field, into.source));
    BURROW_TRY(into.value, termOf<Term>(file, field, value));
    return {};
}

Done read(const File& file, std::string_view field, Sourced<bool>& into) {
    BURROW_TRY(const auto* value, factOf(file, field, into.source));
    if (!value->is_boolean()) return file.refuse("profile.notKnown", field);
    into.value = value->get<bool>();
    return {};
}

Result<Range<double>> pairOf(const File& file, std::string_view field, const json& value) {
    if (!value.is_array() || value.size() != 2 || !value[0].is_number() || !value[1].is_number()) {
        return file.refuse("profile.missing", field);
    }
    return Range<double>{value[0].get<double>(), value[1].get<double>()};
}

template <class Unit>
Done readRange(const File& file, std::string_view field, Range<Unit> limits,
               Sourced<Range<Unit>>& into) {
    BURROW_TRY(const json* value, factOf(file, field, into.source));
    BURROW_TRY(const Range<double> pair, pairOf(file, field, *value));
    into.value = {Unit{pair.least}, Unit{pair.most}};
    const bool isInOrder = into.value.least <= into.value.most;
    if (!isInOrder || into.value.least < limits.least || into.value.most > limits.most) {
        return file.refuse("profile.range", field);
    }
    return {};
}

/// "Brachypelma hamorii": a genus and an epithet in plain letters.
bool isBinomial(std::string_view name) {
    const auto parts = split(name, ' ');
    if (parts.size() != 2 || parts[0].size() < 2 || parts[1].size() < 2) return false;
    if (parts[0].front() < 'A' || parts[0].front() > 'Z') return false;
    const auto isSmall = [](char c) { return c >= 'a' && c <= 'z'; };
    return std::all_of(parts[0].begin() + 1, parts[0].end(), isSmall) &&
           std::all_of(parts[1].begin(), parts[1].end(), isSmall);
}

Done readNames(File& file, Profile& profile) {
    BURROW_TRY(profile.name, lineOf(file, "name", file.find("name")));
    file.species = profile.name;
    if (!isBinomial(profile.name)) return file.refuse("profile.notBinomial", "name");
    BURROW_TRY(const auto* authority, factOf(file, "authority", profile.authoritySource));
    BURROW_TRY(profile.authority, lineOf(file, "authority", authority));
    BURROW_TRY(profile.otherNames, namesOf(file, "other_names"));
    BURROW_TRY(profile.tradeNames, namesOf(file, "trade_names"));
    BURROW_TRY(profile.order, termOf<Order>(file, "order", file.find("order")));
    return {};
}

Done readListing(const File& file, Profile& profile) {
    BURROW_DO(read(file, "listing", profile.listing));
    if (profile.listing.value == Listing::notChecked) return {};
    const auto& fact = *file.find("listing");
    const auto asOf = fact.find("as_of");
    if (asOf == fact.end() || !asOf->is_string()) return file.refuse("profile.missing", "as_of");
    const auto day = parseIsoDate(asOf->get_ref<const std::string&>());
    if (!day) return file.refuse("profile.notKnown", "as_of");
    profile.listingAsOf = *day;
    return {};
}

}  // namespace

Result<Profile> profileFromJson(const std::string& text, std::size_t number) {
    return profileFromJson(json::parse(text, nullptr, false), number);
}

Result<Profile> profileFromJson(const json& object, std::size_t number) {
    File file{object, number, "?"};
    if (!object.is_object()) return file.refuse("profile.unreadable", "");
    Profile profile;
    BURROW_DO(readNames(file, profile));
    for (const auto& [field, value] : object.items()) {
        if (std::find(knownFields.begin(), knownFields.end(), field) == knownFields.end()) {
            return file.refuse("profile.unknownField", field);
        }
    }
    BURROW_DO(read(file, "region", profile.region));
    BURROW_DO(read(file, "habit", profile.habit));
    BURROW_DO(readRange(file, "adult_span_mm", adultSpans, profile.adultSpan));
    BURROW_DO(read(file, "damp", profile.damp));
    BURROW_DO(readRange(file, "warmth_c", warmths, profile.warmth));
    BURROW_DO(read(file, "temperament", profile.temperament));
    BURROW_DO(read(file, "fast", profile.fast));
    BURROW_DO(read(file, "venom", profile.venom));
    BURROW_DO(read(file, "hairs", profile.hairs));
    BURROW_DO(read(file, "groups", profile.groups));
    BURROW_DO(read(file, "moults", profile.moults));
    BURROW_DO(readListing(file, profile));
    BURROW_TRY(profile.housing, lineOf(file, "housing", file.find("housing")));
    BURROW_TRY(profile.handling, lineOf(file, "handling", file.find("handling")));
    return profile;
}

}  // namespace burrow
