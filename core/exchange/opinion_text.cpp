#include "exchange/opinion_text.h"

#include <algorithm>
#include <nlohmann/json.hpp>
#include <set>

#include "base/text.h"
#include "exchange/refuse.h"
#include "journal/json_reading.h"
#include "model/fact.h"

namespace burrow::exchange {
namespace {

using nlohmann::json;

constexpr const char* questionKind = "second opinion asked";
constexpr const char* answerKind = "second opinion given";

/// Text that may be shown and kept: whole, not too long, and without what steers whoever shows it.
bool isPlain(const std::string& text, std::size_t most) {
    return text.size() <= most && isUtf8(text) && text.find('\0') == std::string::npos &&
           withoutSteering(text) == text;
}

/// The object of a file of that kind and of a version that this program reads.
Result<json> opened(std::string_view text, const char* kind) {
    if (text.size() > opinionlimit::jsonBytes) return refuse({"opinion.unreadable"});
    // Deeper than any of ours: a parser need not go there.
    if (std::count(text.begin(), text.end(), '[') + std::count(text.begin(), text.end(), '{') >
        1000) {
        return refuse({"opinion.unreadable"});
    }
    auto object = json::parse(text, nullptr, false);
    if (reading::text(object, "burrowbook") != kind) return refuse({"opinion.unreadable"});
    const auto version = reading::whole(object, "version");
    if (!version || *version < 1) return refuse({"opinion.unreadable"});
    if (*version > opinionVersion) return fail(Trouble::newer, {"opinion.newer"});
    return object;
}

/// A text that may be missing; one that is there must be plain.
Result<std::string> textOf(const json& object, const char* field, std::size_t most) {
    const auto* value = reading::member(object, field);
    if (value == nullptr) return std::string();
    if (!value->is_string()) return refuse({"opinion.unreadable"});
    auto text = value->get<std::string>();
    if (!isPlain(text, most)) return refuse({"opinion.unreadable"});
    return text;
}

/// A size as a moult may have it, or none.
Result<std::optional<Millimetres>> sizeOf(const json& object, const char* field) {
    const auto* value = reading::member(object, field);
    if (value == nullptr) return std::optional<Millimetres>();
    const auto fields = factFields();
    const auto spec = std::find_if(fields.begin(), fields.end(),
                                   [&](const FieldSpec& each) { return each.name == field; });
    if (!value->is_number() || spec == fields.end()) return refuse({"opinion.unreadable"});
    const auto number = value->get<double>();
    if (!(number >= spec->least && number <= spec->most)) return refuse({"opinion.unreadable"});
    return std::optional(Millimetres{number});
}

Result<std::vector<OpinionPhoto>> photosOf(const json& object) {
    const auto* list = reading::member(object, "photos");
    if (list == nullptr || !list->is_array() || list->empty()) {
        return refuse({"opinion.noPhoto"});
    }
    if (list->size() > opinionlimit::photos) return refuse({"opinion.tooMany"});
    std::vector<OpinionPhoto> photos;
    std::set<Sha256> known;
    std::uint64_t total = 0;
    for (const auto& each : *list) {
        const auto hash = Sha256::parse(reading::text(each, "sha256"));
        const auto bytes = reading::whole(each, "bytes");
        if (!hash || !bytes || *bytes <= 0 || !known.insert(*hash).second) {
            return refuse({"opinion.unreadable"});
        }
        const auto size = static_cast<std::uint64_t>(*bytes);
        if (size > opinionlimit::photoBytes - total) return refuse({"opinion.tooMany"});
        total += size;
        photos.push_back({*hash, size});
    }
    return photos;
}

}  // namespace

std::string toText(const OpinionQuestion& question) {
    json object{{"burrowbook", questionKind},
                {"version", opinionVersion},
                {"question", question.id.text()},
                {"species", question.species},
                {"photos", json::array()}};
    if (question.carapace) object["carapace_mm"] = question.carapace->value;
    if (question.span) object["span_mm"] = question.span->value;
    if (!question.note.empty()) object["note"] = question.note;
    for (const auto& photo : question.photos) {
        object["photos"].push_back({{"sha256", photo.picture.hex()}, {"bytes", photo.bytes}});
    }
    return object.dump(2, ' ', false, json::error_handler_t::replace);
}

std::string toText(const OpinionAnswer& answer) {
    json object{{"burrowbook", answerKind},
                {"version", opinionVersion},
                {"question", answer.question.text()},
                {"sex", std::string(name(answer.sex))},
                {"clarity", std::string(name(answer.clarity))},
                {"judge", answer.judge}};
    if (!answer.note.empty()) object["note"] = answer.note;
    return object.dump(2, ' ', false, json::error_handler_t::replace);
}

Result<OpinionQuestion> questionFrom(std::string_view text) {
    BURROW_TRY(const auto object, opened(text, questionKind));
    OpinionQuestion question;
    const auto id = reading::uuid(object, "question");
    if (!id) return refuse({"opinion.unreadable"});
    question.id = *id;
    BURROW_TRY(question.species, textOf(object, "species", opinionlimit::species));
    BURROW_TRY(question.note, textOf(object, "note", opinionlimit::note));
    BURROW_TRY(question.carapace, sizeOf(object, "carapace_mm"));
    BURROW_TRY(question.span, sizeOf(object, "span_mm"));
    BURROW_TRY(question.photos, photosOf(object));
    return question;
}

Result<OpinionAnswer> answerFrom(std::string_view text) {
    BURROW_TRY(const auto object, opened(text, answerKind));
    OpinionAnswer answer;
    const auto id = reading::uuid(object, "question");
    const auto sex = parseTerm<Sex>(reading::text(object, "sex"));
    const auto clarity = parseTerm<Clarity>(reading::text(object, "clarity"));
    if (!id || !sex || !clarity) return refuse({"opinion.unreadable"});
    answer.question = *id;
    answer.sex = *sex;
    answer.clarity = *clarity;
    BURROW_TRY(answer.judge, textOf(object, "judge", opinionlimit::name));
    BURROW_TRY(answer.note, textOf(object, "note", opinionlimit::note));
    const bool isLine = answer.judge.find('\n') == std::string::npos;
    if (trimmed(answer.judge).empty() || !isLine) return refuse({"opinion.unreadable"});
    return answer;
}

Done checkAnswer(const OpinionAnswer& answer) {
    if (trimmed(answer.judge).empty()) return refuse({"opinion.noName"});
    const bool isLine = answer.judge.find('\n') == std::string::npos;
    if (!isPlain(answer.judge, opinionlimit::name) || !isLine) {
        return refuse(
            {"opinion.longName", {{"most", static_cast<std::int64_t>(opinionlimit::name)}}});
    }
    if (!isPlain(answer.note, opinionlimit::note)) {
        return refuse(
            {"opinion.longNote", {{"most", static_cast<std::int64_t>(opinionlimit::note)}}});
    }
    return {};
}

}  // namespace burrow::exchange
