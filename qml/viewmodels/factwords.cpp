#include "viewmodels/factwords.h"

#include <algorithm>
#include <nlohmann/json.hpp>

namespace burrow {
namespace {

using nlohmann::json;

/// With as many digits as there are: slings weigh milligrams.
QString plain(double number) {
    constexpr int digits = 8;
    return QString::number(number, 'g', digits);
}

class Parts {
public:
    explicit Parts(const Desk& desk) : desk_(desk) {}

    void add(const Message& message) { add(desk_.say(message)); }
    void add(const QString& text) {
        if (!text.isEmpty()) texts_.append(text);
    }
    void add(const std::optional<std::string>& text) {
        if (text) add(toQt(*text).trimmed());
    }
    [[nodiscard]] QString text() const { return texts_.join(QStringLiteral(", ")); }

private:
    const Desk& desk_;
    QStringList texts_;
};

void addMeal(Parts& parts, const FactBody& body) {
    if (!body.prey) return;
    Message meal{body.preyLength ? "amount.prey" : "fact.prey",
                 {{"count", std::int64_t{body.count.value_or(1)}}, {"prey", *body.prey}}};
    if (body.preyLength) meal.arguments.push_back({"length", body.preyLength->value});
    parts.add(meal);
}

void addSizes(Parts& parts, const FactBody& body, const Resident& resident) {
    if (body.carapace) parts.add({"size.carapace", {{"size", body.carapace->value}}});
    if (body.span) {
        const bool isLong =
            resident.profile != nullptr && isMeasuredByBody(resident.profile->order);
        parts.add({isLong ? "size.length" : "size.span", {{"size", body.span->value}}});
    }
    if (body.carapaceWidth) {
        parts.add({"fact.carapaceWidth", {{"size", body.carapaceWidth->value}}});
    }
    if (body.fang) parts.add({"fact.fang", {{"size", body.fang->value}}});
    if (body.segmentLength) {
        parts.add({body.segment ? "fact.segment" : "fact.someSegment",
                   {{"segment", body.segment.value_or(std::string())},
                    {"size", body.segmentLength->value}}});
    }
    if (body.low && body.high) {
        parts.add({"fact.within", {{"low", body.low->value}, {"high", body.high->value}}});
    }
    if (body.mass) parts.add({"fact.mass", {{"mass", plain(body.mass->value).toStdString()}}});
}

QString enclosureText(const EnclosureId& id, const Desk& desk, const EnclosureNames& names) {
    const auto name = names.value(toQt(id.text()));
    return name.isEmpty() ? desk.say("fact.enclosureGone") : name;
}

}  // namespace

Result<EnclosureNames> enclosureNames(Book& book) {
    BURROW_TRY(const auto all, enclosures(book));
    EnclosureNames names;
    for (const auto& enclosure : all) names[toQt(enclosure.id.text())] = toQt(enclosure.name);
    return names;
}

QString dayText(CivilDay day, const Desk& desk) {
    // Seen from far away every day is named with its year.
    constexpr int farAway = 1000;
    return toQt(desk.knowledge().words.day(day, day + farAway));
}

QString innerSizeText(const Enclosure& enclosure, const Desk& desk) {
    constexpr double mmPerCm = 10;
    if (enclosure.length.value <= 0 || enclosure.width.value <= 0) return {};
    Message size{enclosure.height.value > 0 ? "enclosure.size" : "enclosure.floor"};
    size.arguments = {{"length", enclosure.length.value / mmPerCm},
                      {"width", enclosure.width.value / mmPerCm},
                      {"height", enclosure.height.value / mmPerCm}};
    return desk.say(size);
}

std::vector<std::string_view> fieldsOf(FactKind kind) {
    std::vector<std::string_view> names;
    const auto& row = spec(kind);
    // What was offered comes before what became of it.
    names.insert(names.end(), row.allowed.begin(), row.allowed.end());
    names.insert(names.end(), row.required.begin(), row.required.end());
    for (const std::string_view common : {"text", "confidential"}) {
        if (std::find(names.begin(), names.end(), common) == names.end()) names.push_back(common);
    }
    return names;
}

FieldType fieldType(std::string_view field) {
    for (const auto& row : factFields()) {
        if (row.name == field) return row.type;
    }
    return FieldType::text;
}

QString factTitle(const Fact& fact, const Desk& desk) {
    std::string id = "fact." + std::string(spec(fact.kind).name);
    if (fact.kind == FactKind::offered) {
        id += "." + std::string(name(fact.body.outcome.value_or(Outcome::ate)));
    }
    return desk.say(Message(id));
}

QString factDetail(const Fact& fact, const Resident& resident, const Desk& desk,
                   const EnclosureNames& names) {
    const auto& body = fact.body;
    Parts parts(desk);
    addMeal(parts, body);
    addSizes(parts, body, resident);
    if (body.ultimate.value_or(false)) parts.add(Message("fact.ultimate"));
    if (body.sex) parts.add({"fact.sex", {{"sex", std::string(name(*body.sex))}}});
    if (body.look) parts.add(Message("choice.look." + std::string(name(*body.look))));
    if (body.clarity) parts.add(Message("choice.clarity." + std::string(name(*body.clarity))));
    if (body.judge) parts.add({"fact.judge", {{"judge", *body.judge}}});
    parts.add(body.sign);
    const bool isSeveral = resident.subject().form != Form::animal;
    if (body.count && isSeveral && fact.kind != FactKind::offered) {
        parts.add({"fact.several", {{"count", std::int64_t{*body.count}}}});
    }
    if (body.enclosure) parts.add(enclosureText(*body.enclosure, desk, names));
    if (body.place) parts.add(placeText(*body.place, desk));
    if (body.role) parts.add({"fact.role", {{"role", std::string(name(*body.role))}}});
    if (body.dried.value_or(false)) parts.add(Message("fact.dried"));
    if (body.party) parts.add({"fact.party", {{"party", *body.party}}});
    parts.add(body.price);
    parts.add(body.cause);
    if (body.until) parts.add({"fact.until", {{"until", *body.until}}});
    return parts.text();
}

QString factNote(const Fact& fact, const Desk& desk) {
    const auto text = toQt(fact.body.text.value_or(std::string())).trimmed();
    if (!fact.body.confidential.value_or(false)) return text;
    return desk.say({"fact.private", {{"text", text.toStdString()}}}).trimmed();
}

QString factGlyph(FactKind kind) {
    switch (kind) {
        case FactKind::offered: return QStringLiteral("feed");
        case FactKind::leftoversOut: return QStringLiteral("remove");
        case FactKind::watered: return QStringLiteral("water");
        case FactKind::dampened: return QStringLiteral("damp");
        case FactKind::premoultSign: return QStringLiteral("premoult");
        case FactKind::moulted: return QStringLiteral("moult");
        case FactKind::measured: return QStringLiteral("ruler");
        case FactKind::fangsBlack: return QStringLiteral("check");
        case FactKind::seen: return QStringLiteral("look");
        case FactKind::rehoused: return QStringLiteral("rehouse");
        case FactKind::moved: return QStringLiteral("move");
        case FactKind::note: return QStringLiteral("note");
        case FactKind::photo: return QStringLiteral("photo");
        case FactKind::sexed: return QStringLiteral("search");
        case FactKind::spermWeb:
        case FactKind::paired: return QStringLiteral("pairings");
        case FactKind::sacLaid:
        case FactKind::sacOut: return QStringLiteral("sac");
        case FactKind::died: return QStringLiteral("ended");
        case FactKind::sold: return QStringLiteral("price");
        case FactKind::given: return QStringLiteral("hand");
        case FactKind::lent: return QStringLiteral("swap");
        case FactKind::returned: return QStringLiteral("bring-in");
    }
    return {};
}

QString kindTitle(FactKind kind, const Desk& desk) {
    return desk.say(Message("kind." + std::string(spec(kind).name)));
}

QString fieldLabel(std::string_view field, const Resident& resident, const Desk& desk) {
    const bool isLong = resident.profile != nullptr && isMeasuredByBody(resident.profile->order);
    if (field == "span_mm" && isLong) return desk.say("factField.length_mm");
    return desk.say(Message("factField." + std::string(field)));
}

QString fieldText(const FactBody& body, std::string_view field, const Desk& desk,
                  const EnclosureNames& names) {
    if (field == "place" && body.place) return placeText(*body.place, desk);
    if (field == "enclosure" && body.enclosure) return enclosureText(*body.enclosure, desk, names);
    const auto object = toJson(body);
    const auto found = object.find(field);
    if (found == object.end()) return {};
    const std::string term(field);
    switch (fieldType(field)) {
        case FieldType::count: return QString::number(found->get<int>());
        case FieldType::millimetres:
            return desk.say({"fact.millimetres", {{"length", found->get<double>()}}});
        case FieldType::grams:
            return desk.say({"fact.mass", {{"mass", plain(found->get<double>()).toStdString()}}});
        case FieldType::outcome:
        case FieldType::method:
        case FieldType::sex:
        case FieldType::look:
        case FieldType::clarity:
        case FieldType::role:
            return desk.say(Message("choice." + term + "." + found->get<std::string>()));
        case FieldType::flag: return desk.say(found->get<bool>() ? "fact.yes" : "fact.no");
        case FieldType::day: return desk.say({"fact.day", {{"day", *body.until}}});
        case FieldType::text: break;
        case FieldType::place:
        case FieldType::enclosure:
        case FieldType::entry:
        case FieldType::hash: return {};
    }
    if (field == "prey") {
        return desk.say({"fact.preyKind", {{"prey", *body.prey}, {"count", std::int64_t{2}}}});
    }
    return toQt(found->get<std::string>());
}

QString fieldValue(const FactBody& body, const std::string& field) {
    const auto object = toJson(body);
    const auto found = object.find(field);
    if (found == object.end()) return {};
    if (found->is_string()) return toQt(found->get<std::string>());
    if (found->is_boolean()) return found->get<bool>() ? QStringLiteral("yes") : QString();
    return plain(found->get<double>());
}

QVariantList fieldLines(FactKind kind, const FactBody& body, const Resident& resident,
                        const Desk& desk, const EnclosureNames& names) {
    QVariantList lines;
    for (const auto field : fieldsOf(kind)) {
        const auto text = fieldText(body, field, desk, names);
        if (text.isEmpty()) continue;
        lines.append(QVariantMap{{QStringLiteral("name"), fieldLabel(field, resident, desk)},
                                 {QStringLiteral("value"), text}});
    }
    return lines;
}

QString sayOfField(Message message, const QString& label, const QString& kind, const Desk& desk) {
    for (auto& argument : message.arguments) {
        if (argument.name == "field") argument.value = label.toStdString();
        if (argument.name == "kind") argument.value = kind.toStdString();
    }
    return desk.say(message);
}

}  // namespace burrow
