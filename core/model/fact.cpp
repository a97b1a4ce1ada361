#include "model/fact.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>
#include <tuple>
#include <type_traits>

#include "base/text.h"

namespace burrow {
namespace {

using nlohmann::json;

/// A note or a name; longer text is a slip or an attack, not a record.
constexpr std::size_t longestText = 4000;

/// Calls `visit(name, member)` for every field; the names are those of factFields().
template <class Body, class Visit>
void eachField(Body& body, Visit visit) {
    visit("prey", body.prey);
    visit("prey_mm", body.preyLength);
    visit("count", body.count);
    visit("outcome", body.outcome);
    visit("sign", body.sign);
    visit("span_mm", body.span);
    visit("carapace_mm", body.carapace);
    visit("carapace_width_mm", body.carapaceWidth);
    visit("fang_mm", body.fang);
    visit("segment", body.segment);
    visit("segment_mm", body.segmentLength);
    visit("low_mm", body.low);
    visit("high_mm", body.high);
    visit("height_mm", body.height);
    visit("mass_g", body.mass);
    visit("method", body.method);
    visit("ultimate", body.ultimate);
    visit("sex", body.sex);
    visit("look", body.look);
    visit("clarity", body.clarity);
    visit("judge", body.judge);
    visit("about", body.about);
    visit("role", body.role);
    visit("dried", body.dried);
    visit("picture", body.picture);
    visit("original", body.original);
    visit("enclosure", body.enclosure);
    visit("place", body.place);
    visit("party", body.party);
    visit("price", body.price);
    visit("cause", body.cause);
    visit("until", body.until);
    visit("text", body.text);
    visit("confidential", body.confidential);
}

const FieldSpec* findField(std::string_view name) {
    const auto all = factFields();
    const auto found = std::find_if(all.begin(), all.end(),
                                    [&](const FieldSpec& field) { return field.name == name; });
    return found == all.end() ? nullptr : &*found;
}

tl::unexpected<Error> wrongValue(const FieldSpec& field, std::string_view text) {
    std::string shown(text.substr(0, 40));
    if (!isUtf8(shown)) shown = "?";
    return fail(Trouble::badInput,
                {"field.unreadable", {{"field", std::string(field.name)}, {"value", shown}}});
}

Done checkRange(const FieldSpec& field, double value) {
    if (std::isfinite(value) && value >= field.least && value <= field.most) return {};
    return fail(Trouble::badInput, {"field.range",
                                    {{"field", std::string(field.name)},
                                     {"value", value},
                                     {"least", field.least},
                                     {"most", field.most}}});
}

Done checkText(const FieldSpec& field, std::string_view text) {
    if (text.size() > longestText) {
        return fail(Trouble::badInput, {"field.tooLong",
                                        {{"field", std::string(field.name)},
                                         {"most", static_cast<std::int64_t>(longestText)}}});
    }
    if (!isUtf8(text) || text.find('\0') != std::string_view::npos) return wrongValue(field, text);
    return {};
}

// --- one value from typed text -------------------------------------------------------------------

template <class T>
Done readText(std::optional<T>& into, const FieldSpec& field, std::string_view text) {
    if constexpr (std::is_same_v<T, std::string>) {
        BURROW_DO(checkText(field, text));
        into = std::string(text);
    } else if constexpr (std::is_same_v<T, Place>) {
        BURROW_DO(checkText(field, text));
        into = Place::parse(text);
    } else if constexpr (std::is_same_v<T, int>) {
        const auto value = parseInteger(text);
        if (!value) return wrongValue(field, text);
        BURROW_DO(checkRange(field, static_cast<double>(*value)));
        into = static_cast<int>(*value);
    } else if constexpr (std::is_same_v<T, bool>) {
        const auto word = normalTerm(text);
        if (word != "yes" && word != "no" && word != "true" && word != "false") {
            return wrongValue(field, text);
        }
        into = word == "yes" || word == "true";
    } else if constexpr (std::is_same_v<T, CivilDay>) {
        into = parseIsoDate(text);
        if (!into) return wrongValue(field, text);
    } else if constexpr (std::is_same_v<T, Sha256>) {
        into = Sha256::parse(text);
        if (!into) return wrongValue(field, text);
    } else if constexpr (std::is_same_v<T, EntryId> || std::is_same_v<T, EnclosureId>) {
        const auto uuid = Uuid::parse(text);
        if (!uuid) return wrongValue(field, text);
        into = T{*uuid};
    } else if constexpr (std::is_enum_v<T>) {
        into = parseTerm<T>(text);
        if (!into) return wrongValue(field, text);
    } else {
        const auto value = parseNumber(text);
        if (!value) return wrongValue(field, text);
        BURROW_DO(checkRange(field, *value));
        into = T{*value};
    }
    return {};
}

// --- one value to and from JSON ------------------------------------------------------------------

template <class T>
json valueToJson(const T& value) {
    if constexpr (std::is_same_v<T, std::string> || std::is_same_v<T, int> ||
                  std::is_same_v<T, bool>) {
        return value;
    } else if constexpr (std::is_same_v<T, Place> || std::is_same_v<T, EntryId> ||
                         std::is_same_v<T, EnclosureId>) {
        return value.text();
    } else if constexpr (std::is_same_v<T, CivilDay>) {
        return isoDate(value);
    } else if constexpr (std::is_same_v<T, Sha256>) {
        return value.hex();
    } else if constexpr (std::is_enum_v<T>) {
        return std::string(name(value));
    } else {
        return value.value;
    }
}

template <class T>
std::string valueToText(const T& value) {
    if constexpr (std::is_same_v<T, bool>) {
        return value ? "yes" : "no";
    } else if constexpr (std::is_same_v<T, int>) {
        return std::to_string(value);
    } else if constexpr (std::is_same_v<T, Millimetres> || std::is_same_v<T, Grams>) {
        return fmt::format("{}", value.value);  // the shortest that reads back as the same number
    } else {
        return valueToJson(value).template get<std::string>();
    }
}

template <class T>
Done readJson(std::optional<T>& into, const FieldSpec& field, const json& value) {
    if constexpr (std::is_same_v<T, bool>) {
        if (!value.is_boolean()) return wrongValue(field, value.type_name());
        into = value.get<bool>();
        return {};
    } else if constexpr (std::is_same_v<T, int>) {
        if (!value.is_number_integer()) return wrongValue(field, value.type_name());
        BURROW_DO(checkRange(field, value.get<double>()));
        into = value.get<int>();
        return {};
    } else if constexpr (std::is_same_v<T, Millimetres> || std::is_same_v<T, Grams>) {
        if (!value.is_number()) return wrongValue(field, value.type_name());
        BURROW_DO(checkRange(field, value.get<double>()));
        into = T{value.get<double>()};
        return {};
    } else {
        if (!value.is_string()) return wrongValue(field, value.type_name());
        return readText(into, field, value.get_ref<const std::string&>());
    }
}

}  // namespace

bool tellsSex(const FactBody& examination) {
    return examination.sex.value_or(Sex::unknown) != Sex::unknown && !examination.judge &&
           examination.look != Look::colour &&
           examination.clarity.value_or(Clarity::fairly) >= Clarity::fairly;
}

bool happenedBefore(const Fact& a, const Fact& b) {
    return std::tie(a.happenedAt, a.stamp, a.id) < std::tie(b.happenedAt, b.stamp, b.id);
}

json toJson(const FactBody& body) {
    json object = json::object();
    eachField(body, [&](std::string_view field, const auto& member) {
        if (member) object[std::string(field)] = valueToJson(*member);
    });
    return object;
}

Result<FactBody> factBody(FactKind kind, const json& object) {
    if (!object.is_object()) return fail(Trouble::badInput, {"field.notObject"});
    FactBody body;
    Done outcome;
    eachField(body, [&](std::string_view field, auto& member) {
        const auto found = object.find(field);
        if (outcome && found != object.end() && kindHas(kind, field)) {
            outcome = readJson(member, *findField(field), *found);
        }
    });
    if (!outcome) return failAs(outcome);
    BURROW_DO(checkComplete(body, kind));
    return body;
}

Done setField(FactBody& body, FactKind kind, std::string_view field, std::string_view text) {
    return setFieldExactly(body, kind, field, trimmed(text));
}

Done setFieldExactly(FactBody& body, FactKind kind, std::string_view field, std::string_view text) {
    const auto wanted = normalTerm(field);
    const auto* row = findField(wanted);
    if (row == nullptr || !kindHas(kind, wanted)) {
        return fail(Trouble::badInput, {"field.unknown",
                                        {{"field", std::string(field.substr(0, 40))},
                                         {"kind", std::string(spec(kind).name)}}});
    }
    Done outcome;
    eachField(body, [&](std::string_view candidate, auto& member) {
        if (candidate == wanted) outcome = readText(member, *row, text);
    });
    return outcome;
}

std::optional<std::string> fieldText(const FactBody& body, std::string_view field) {
    std::optional<std::string> text;
    eachField(body, [&](std::string_view candidate, const auto& member) {
        if (candidate == field && member) text = valueToText(*member);
    });
    return text;
}

bool kindHas(FactKind kind, std::string_view field) {
    if (field == "text" || field == "confidential") return true;
    const auto& row = spec(kind);
    return std::ranges::find(row.required, field) != row.required.end() ||
           std::ranges::find(row.allowed, field) != row.allowed.end();
}

Done checkComplete(const FactBody& body, FactKind kind) {
    for (const auto required : spec(kind).required) {
        bool present = false;
        eachField(body, [&](std::string_view field, const auto& member) {
            if (field == required) present = member.has_value();
        });
        if (!present) {
            return fail(Trouble::badInput, {"field.missing",
                                            {{"field", std::string(required)},
                                             {"kind", std::string(spec(kind).name)}}});
        }
    }
    return {};
}

}  // namespace burrow
