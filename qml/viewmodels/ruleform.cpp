#include "viewmodels/ruleform.h"

#include <algorithm>

#include "husbandry/rule_table.h"
#include "room/search.h"
#include "viewmodels/deeds.h"
#include "viewmodels/specieslike.h"

namespace burrow {
namespace {

/// A sentence in the place of an id.
void nameRule(Message& message, const std::string& says) {
    for (auto& argument : message.arguments) {
        if (argument.name == "rule") argument.value = "\"" + says.substr(0, says.find('.')) + "\"";
    }
}

QString hintFor(const Rule& rule, const Desk& desk) {
    if (std::holds_alternative<std::string>(rule.value)) return desk.say("rule.hint.prey");
    const bool isRange = std::holds_alternative<Range<double>>(rule.value);
    const auto limits = limitsOf(rule.unit);
    return desk.say(
        {(isRange ? "rule.hint.range." : "rule.hint.number.") + std::string(name(rule.unit)),
         {{"least", limits.least}, {"most", limits.most}}});
}

/// Where the field to say which one is for a scope; null for everyone.
const char* fieldOf(RuleScope scope) {
    switch (scope) {
        case RuleScope::species: return "species";
        case RuleScope::place: return "place";
        case RuleScope::animal: return "animal";
        case RuleScope::everyone: break;
    }
    return nullptr;
}

}  // namespace

void RuleForm::setRule(const QString& rule) {
    if (rule_ == rule) return;
    rule_ = rule;
    readAgain();
}

void RuleForm::setSubject(const QString& subject) {
    if (subject_ == subject) return;
    subject_ = subject;
    readAgain();
}

const Rule* RuleForm::shipped() const {
    return desk_ ? desk_->knowledge().rules.find(rule_.toStdString()) : nullptr;
}

void RuleForm::read() {
    connect(desk_, &Desk::roomChanged, this, &RuleForm::keepUp, Qt::UniqueConnection);
    const auto id = rule_.toStdString();
    const auto resident = residentOf(*desk_, subject_);
    if (resident) return build({id, RuleScope::animal, resident->subject().id.text()});
    build({id, RuleScope::everyone, {}});
}

/// The keeper's own values have changed: by what was saved, by its undo, or from elsewhere.
void RuleForm::keepUp() {
    if (!isReady() || !desk_->room()) return readAgain();
    if (own_ == ownOfRule()) return follow();
    const auto aimed = target();
    build({rule_.toStdString(), aimed ? aimed->scope : RuleScope::everyone,
           aimed ? aimed->of : std::string()});
}

void RuleForm::build(const RuleKey& start) {
    using Type = FormField::Type;
    const auto* rule = shipped();
    clearFields();
    layers_.clear();
    others_.clear();
    if (rule == nullptr || !desk_->room()) {
        emit layersChanged();
        return setShape({}, false, true);
    }
    own_ = ownOfRule();
    std::vector<FieldChoice> scopes;
    for (const auto scope :
         {RuleScope::everyone, RuleScope::species, RuleScope::place, RuleScope::animal}) {
        const std::string word(name(scope));
        scopes.push_back({toQt(word), desk_->say(Message("ruleScope." + word))});
    }
    add(Type::Choice, "scope", "ruleForm.scope")
        .setChoices(std::move(scopes))
        .setText(toQt(std::string(name(start.scope))));
    add(Type::Text, "species", "ruleForm.species");
    add(Type::Text, "place", "ruleForm.place");
    add(Type::Code, "animal", "ruleForm.animal");
    if (const auto resident = residentOf(*desk_, subject_)) {
        at("species").setText(speciesText(*resident));
        at("place").setText(toQt(resident->kept.place.shelfOnly().text()));
        at("animal").setText(toQt(resident->subject().number));
    }
    if (start.scope == RuleScope::animal) {
        const auto resident = residentOf(*desk_, toQt(start.of));
        at("animal").setText(resident ? toQt(resident->subject().number) : QString());
        if (resident) subject_ = toQt(start.of);
    } else if (const auto* field = fieldOf(start.scope)) {
        at(field).setText(toQt(start.of));
    }
    auto& typed = add(Type::Code, "value", "ruleForm.value");
    typed.setHint(hintFor(*rule, *desk_));
    valueTyped_ = false;
    for (auto* field : all()) {
        if (field == &typed) continue;
        connect(field, &FormField::edited, this, &RuleForm::follow);
    }
    connect(&typed, &FormField::edited, this, [this] { valueTyped_ = true; });
    setShape(toQt(rule->says), true);
    follow();
}

std::optional<RuleForm::Target> RuleForm::animalTarget() const {
    const auto found = numbered(*desk_->room(), value("animal").toStdString());
    if (found.empty()) return std::nullopt;
    // Of several with one number the one that the form was opened for, else the first.
    const auto own = std::find_if(found.begin(), found.end(), [this](const ResidentPtr& one) {
        return toQt(one->subject().id.text()) == subject_;
    });
    const auto& resident = own != found.end() ? **own : *found.front();
    const auto& subject = resident.subject();
    return Target{RuleScope::animal,   subject.id.text(), subject.species,
                  resident.kept.place, resident.profile,  subject.id};
}

/// Nothing while it is not known whom the form is about.
std::optional<RuleForm::Target> RuleForm::target() const {
    const auto scope = at("scope").value();
    if (scope == name(RuleScope::everyone)) return Target{};
    if (scope == name(RuleScope::animal)) return animalTarget();
    Target target;
    if (scope == name(RuleScope::species)) {
        const auto typed = value("species").toStdString();
        target.scope = RuleScope::species;
        target.profile = desk_->profiles().find(typed);
        target.species = target.profile != nullptr ? target.profile->name : typed;
        target.of = target.species;
    } else {
        target.scope = RuleScope::place;
        target.of = value("place").toStdString();
        target.place = Place::parse(target.of);
    }
    return target.of.empty() ? std::nullopt : std::optional(std::move(target));
}

std::vector<Rule> RuleForm::layersOf(const Target& target) const {
    return desk_->room()->rules().layers(rule_.toStdString(), target.subject());
}

std::vector<Rule> RuleForm::ownOfRule() const {
    if (!desk_ || !desk_->room()) return {};
    auto own = desk_->room()->rules().ownRules();
    std::erase_if(own, [this](const Rule& rule) { return toQt(rule.id) != rule_; });
    return own;
}

/// How many of those who are here it is about.
std::int64_t RuleForm::countFor(const Target& target) const {
    const auto residents = desk_->room()->residents();
    return std::count_if(residents.begin(), residents.end(), [&](const ResidentPtr& resident) {
        if (!resident->subject().isKept()) return false;
        if (target.scope == RuleScope::place) return placeFit(target.of, resident->kept.place) > 0;
        if (target.profile != nullptr) return resident->profile == target.profile;
        return toQt(resident->subject().species)
                   .compare(toQt(target.species), Qt::CaseInsensitive) == 0;
    });
}

/// The fields follow the scope, the layers whom it is for.
void RuleForm::follow() {
    if (!isReady() || !desk_->room()) return;
    const auto scope = at("scope").value();
    for (const auto one : {RuleScope::species, RuleScope::place, RuleScope::animal}) {
        at(fieldOf(one)).setWanted(scope == name(one));
    }
    constexpr int most = 5;
    const auto typed = value("species");
    auto like = speciesLike(typed, desk_->profiles(), most);
    if (like.contains(typed)) like.clear();
    at("species").setSuggestions(like);
    auto shelves = knownShelves(*desk_);
    shelves.removeAll(value("place"));
    at("place").setSuggestions(shelves.mid(0, most));
    for (const auto* field : {"species", "place"}) at(field).setHint({});
    const auto aimed = target();
    at("value").setWanted(aimed.has_value());
    if (!aimed) {
        layers_.clear();
        others_.clear();
        holding_.clear();
        return emit layersChanged();
    }
    showTarget(*aimed);
}

void RuleForm::showTarget(const Target& target) {
    if (target.scope == RuleScope::species || target.scope == RuleScope::place) {
        at(fieldOf(target.scope))
            .setHint(desk_->say({"ruleForm.concerns", {{"count", countFor(target)}}}));
    }
    const auto layers = layersOf(target);
    if (!valueTyped_) at("value").setText(toQt(valueText(layers.front().value)));
    showLayers(layers);
    showOthers(layers);
    const std::string scope(name(target.scope));
    const auto who = target.scope == RuleScope::animal ? value("animal").toStdString() : target.of;
    holding_ = desk_->say({"ruleForm.holds." + scope,
                           {{"value", ruleValueText(layers.front(), *desk_).toStdString()},
                            {"from", ruleOriginText(layers.front(), *desk_).toStdString()},
                            {"who", who}}});
    emit layersChanged();
}

QString RuleForm::noteFor(const std::vector<Rule>& layers, std::size_t at) const {
    if (!isOwnRule(layers[at])) return {};
    if (at > 0) return desk_->say("ruleForm.covered");
    const auto& next = layers[1];  // the shipped value is always there
    return desk_->say({"ruleForm.without",
                       {{"value", ruleValueText(next, *desk_).toStdString()},
                        {"from", ruleOriginText(next, *desk_).toStdString()}}});
}

void RuleForm::showLayers(const std::vector<Rule>& layers) {
    layers_.clear();
    for (std::size_t i = 0; i < layers.size(); ++i) {
        const auto& layer = layers[i];
        layers_.append(QVariantMap{
            {QStringLiteral("key"), isOwnRule(layer) ? toQt(keyOf(layer).text()) : QString()},
            {QStringLiteral("value"), ruleValueText(layer, *desk_)},
            {QStringLiteral("from"), ruleOriginText(layer, *desk_)},
            {QStringLiteral("source"), isOwnRule(layer) ? QString() : toQt(layer.source)},
            {QStringLiteral("note"), noteFor(layers, i)},
            {QStringLiteral("holds"), i == 0}});
    }
}

/// The keeper's values for others, and what is shipped for kinds of animals, each once.
void RuleForm::showOthers(const std::vector<Rule>& layers) {
    std::vector<Rule> others;
    const auto add = [&](const Rule& rule) {
        const auto isIn = [&rule](const std::vector<Rule>& list) {
            return std::any_of(list.begin(), list.end(), [&rule](const Rule& known) {
                return known.origin == rule.origin && known.scope == rule.scope;
            });
        };
        if (!isIn(layers) && !isIn(others)) others.push_back(rule);
    };
    for (const auto& own : own_) add(own);
    static const Place nowhere{};
    for (const auto& profile : desk_->profiles().all()) {
        for (const auto& layer : desk_->knowledge().rules.layers(
                 rule_.toStdString(), {SubjectId{}, profile.name, nowhere, &profile})) {
            if (layer.origin == RuleOrigin::kind) add(layer);
        }
    }
    others_.clear();
    for (const auto& rule : others) {
        others_.append(QVariantMap{
            {QStringLiteral("key"), isOwnRule(rule) ? toQt(keyOf(rule).text()) : QString()},
            {QStringLiteral("value"), ruleValueText(rule, *desk_)},
            {QStringLiteral("from"), ruleOriginText(rule, *desk_)}});
    }
}

std::optional<RuleKey> RuleForm::keyOfTarget() {
    const auto aimed = target();
    if (!aimed) {
        const auto scope = at("scope").value();
        const bool isTyped = scope == name(RuleScope::animal) && !value("animal").isEmpty();
        at(scope.c_str())
            .setError(desk_->say(Message(isTyped ? "ruleForm.noSuchAnimal" : "ruleForm.who")));
        return std::nullopt;
    }
    // As the book would read it back: what it can't hold is refused here.
    const RuleKey key{rule_.toStdString(), aimed->scope, aimed->of};
    const auto read = RuleKey::parse(key.text());
    if (!read) at(fieldOf(aimed->scope)).setError(desk_->say("ruleForm.noName"));
    return read;
}

void RuleForm::save() {
    if (!isReady()) return;
    clearErrors();
    const auto key = keyOfTarget();
    if (!key) return;
    const OwnRule own{key->text(), value("value").toStdString()};
    const auto changed = desk_->knowledge().rules.with(std::span(&own, 1));
    if (!changed) {
        auto message = changed.error().message;
        nameRule(message, shipped()->says);
        at("value").setError(desk_->say(message));
        return;
    }
    const auto wanted = changed->ownRules().front().value;
    const auto there = std::find_if(own_.begin(), own_.end(), [&](const Rule& rule) {
        return meansTheSame(keyOf(rule), *key);
    });
    // For everyone, the shipped value is no value of one's own.
    const bool isShipped = key->scope == RuleScope::everyone && wanted == shipped()->value;
    const bool isSame = there != own_.end() ? there->value == wanted : isShipped;
    if (isSame) {
        at("value").setError(desk_->say("ruleForm.same"));
        return;
    }
    emit previewWanted(toQt(own.first), isShipped ? QString() : toQt(own.second));
}

void RuleForm::takeBack(const QString& key) { emit previewWanted(key, QString()); }

void RuleForm::turnTo(const QString& key) {
    const auto read = RuleKey::parse(key.toStdString());
    if (read && toQt(read->rule) == rule_) build(*read);
}

}  // namespace burrow
