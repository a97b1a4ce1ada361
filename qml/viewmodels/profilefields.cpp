#include "viewmodels/profilefields.h"

#include <QRegularExpression>
#include <array>

#include "husbandry/profile_terms.h"
#include "viewmodels/wording.h"
#include "words/words.h"

namespace burrow {
namespace {

using nlohmann::json;

/// As files spell them.
template <class Term>
constexpr auto termsOf() {
    constexpr auto spellings = spellingsOf(Term{});
    std::array<std::string_view, spellings.size()> texts{};
    for (std::size_t i = 0; i < texts.size(); ++i) texts[i] = spellings[i].text;
    return texts;
}

template <class Term>
constexpr auto terms = termsOf<Term>();

constexpr std::array<std::string_view, 2> yesNo{"yes", "no"};

constexpr std::array facts{
    ProfileFact{"name", FactShape::line, false},
    ProfileFact{"authority", FactShape::line, true},
    ProfileFact{"other_names", FactShape::names, false},
    ProfileFact{"trade_names", FactShape::names, false},
    ProfileFact{"order", FactShape::term, false, terms<Order>},
    ProfileFact{"region", FactShape::term, true, terms<Region>},
    ProfileFact{"habit", FactShape::term, true, terms<Habit>},
    ProfileFact{"adult_span_mm", FactShape::range, true},
    ProfileFact{"warmth_c", FactShape::range, true},
    ProfileFact{"damp", FactShape::term, true, terms<Damp>},
    ProfileFact{"temperament", FactShape::term, true, terms<Temperament>},
    ProfileFact{"fast", FactShape::yesNo, true, yesNo},
    ProfileFact{"venom", FactShape::term, true, terms<Venom>},
    ProfileFact{"hairs", FactShape::term, true, terms<Hairs>},
    ProfileFact{"groups", FactShape::term, true, terms<Groups>},
    ProfileFact{"moults", FactShape::term, true, terms<Moults>},
    ProfileFact{"listing", FactShape::term, true, terms<Listing>},
    ProfileFact{"housing", FactShape::line, false},
    ProfileFact{"handling", FactShape::line, false},
};

QString stringOf(const json& value) {
    return value.is_string() ? toQt(value.get_ref<const std::string&>()) : QString();
}

QString rangeText(const json& pair) {
    if (!pair.is_array() || pair.size() != 2) return {};
    return toQt(plainNumber(pair[0].get<double>()) + "-" + plainNumber(pair[1].get<double>()));
}

QString namesText(const json& list) {
    QStringList names;
    for (const auto& name : list) names.append(stringOf(name));
    return names.join(QStringLiteral(", "));
}

/// "130-150", "130 to 150", "22,5-27"; a lone number is both ends.
json rangeFrom(const QString& text) {
    static const QRegularExpression two(
        QStringLiteral("^(\\d+(?:[.,]\\d+)?)(?:\\s*(?:-|\u2013|to)\\s*(\\d+(?:[.,]\\d+)?))?$"));
    const auto found = two.match(text.trimmed());
    if (!found.hasMatch()) return nullptr;
    const auto number = [](QString digits) { return digits.replace(u',', u'.').toDouble(); };
    const double least = number(found.captured(1));
    const double most = found.captured(2).isEmpty() ? least : number(found.captured(2));
    return json::array({least, most});
}

json namesFrom(const QString& text) {
    auto names = json::array();
    for (const auto& name : text.split(u',')) {
        if (!name.trimmed().isEmpty()) names.push_back(name.trimmed().toStdString());
    }
    return names;
}

json valueFrom(const ProfileFact& fact, const QString& entered) {
    switch (fact.shape) {
        case FactShape::range: return rangeFrom(entered);
        case FactShape::names: return namesFrom(entered);
        case FactShape::yesNo: return entered.isEmpty() ? json() : json(entered == u"yes");
        case FactShape::line:
        case FactShape::term: break;
    }
    return entered.trimmed().toStdString();
}

}  // namespace

std::span<const ProfileFact> profileFacts() { return facts; }

std::string sourceField(const ProfileFact& fact) { return std::string(fact.name) + "_source"; }

QString enteredOf(const ProfileFact& fact, const json& object) {
    const auto found = object.find(fact.name);
    if (found == object.end()) return {};
    const auto& value = fact.isSourced ? found->at("value") : *found;
    switch (fact.shape) {
        case FactShape::range: return rangeText(value);
        case FactShape::names: return namesText(value);
        case FactShape::yesNo:
            return value.get<bool>() ? QStringLiteral("yes") : QStringLiteral("no");
        case FactShape::line:
        case FactShape::term: break;
    }
    return stringOf(value);
}

QString sourceOf(const ProfileFact& fact, const json& object) {
    const auto found = object.find(fact.name);
    if (!fact.isSourced || found == object.end()) return {};
    return stringOf(found->at("source"));
}

json factFrom(const ProfileFact& fact, const QString& entered, const QString& source) {
    auto value = valueFrom(fact, entered);
    if (!fact.isSourced) return value;
    // A value that can't be read is none: the core then says that it is missing.
    json sourced{{"source", source.trimmed().toStdString()}};
    if (!value.is_null()) sourced["value"] = std::move(value);
    return sourced;
}

}  // namespace burrow
