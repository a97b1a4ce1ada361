#include "viewmodels/profileform.h"

#include "husbandry/profile_file.h"
#include "room/own_profiles.h"
#include "viewmodels/specieslike.h"
#include "viewmodels/wording.h"

namespace burrow {
namespace {

using nlohmann::json;
using Type = FormField::Type;

constexpr const char* asOfField = "as_of";

Type typeOf(FactShape shape) {
    switch (shape) {
        case FactShape::range: return Type::Code;
        case FactShape::term:
        case FactShape::yesNo: return Type::Choice;
        case FactShape::line:
        case FactShape::names: break;
    }
    return Type::Text;
}

std::vector<FieldChoice> choicesOf(const ProfileFact& fact, const Desk& desk) {
    std::vector<FieldChoice> choices;
    const auto& words = desk.knowledge().words;
    for (const auto term : fact.terms) {
        const auto id = "ownSpecies." + std::string(fact.name) + "." + std::string(term);
        const auto sub = id + ".sub";
        choices.push_back({toQt(std::string(term)), desk.say(Message(id)),
                           words.knows(sub) ? desk.say(Message(sub)) : QString()});
    }
    return choices;
}

}  // namespace

void ProfileForm::setSpecies(const QString& species) {
    if (species_ == species) return;
    species_ = species;
    readAgain();
}

void ProfileForm::setSuggested(const QString& name) {
    if (suggested_ == name) return;
    suggested_ = name;
    readAgain();
}

FormField& ProfileForm::fieldOf(const std::string& name) const { return at(name.c_str()); }

void ProfileForm::read() {
    clearFields();
    const auto* profile = isNew() ? nullptr : desk_->profiles().find(species_.toStdString());
    if (!desk_->room() || (!isNew() && profile == nullptr)) return setShape({}, false, true);
    own_.clear();
    takenOver_.clear();
    before_ = json::object();
    if (profile != nullptr) {
        before_ = json::parse(profileText(*profile));
        if (profile->origin == ProfileOrigin::keeper) own_ = profile->name;
    }
    build();
    setShape(profile == nullptr ? desk_->say("ownSpecies.new")
                                : desk_->say({"ownSpecies.change", {{"species", profile->name}}}),
             true);
}

void ProfileForm::build() {
    if (isNew())
        add(Type::Text, "like", "ownSpecies.like").setHint(desk_->say("ownSpecies.likeHint"));
    for (const auto& fact : profileFacts()) addFact(fact);
    if (isNew()) at("name").setText(suggested_);
    add(Type::Flag, "sources", "ownSpecies.sources").setHint(desk_->say("ownSpecies.sourcesHint"));
    for (auto* field : all()) connect(field, &FormField::edited, this, &ProfileForm::follow);
    follow();
}

void ProfileForm::addFact(const ProfileFact& fact) {
    const std::string id = "ownSpecies." + std::string(fact.name);
    const auto& words = desk_->knowledge().words;
    auto& field = add(typeOf(fact.shape), QString::fromLatin1(fact.name), desk_->say(Message(id)));
    field.setChoices(choicesOf(fact, *desk_)).setText(enteredOf(fact, before_));
    if (words.knows(id + ".hint")) field.setHint(desk_->say(Message(id + ".hint")));
    if (!fact.isSourced) return;
    if (std::string_view(fact.name) == "listing") {
        auto& day = add(Type::Day, asOfField, "ownSpecies.asOf");
        day.day()->forbidFuture();
        const auto& listing = before_.contains("listing") ? before_["listing"] : json::object();
        const auto asOf = listing.contains("as_of")
                              ? parseIsoDate(listing["as_of"].get<std::string>())
                              : std::nullopt;
        day.day()->setDay(asOf ? asOf : std::optional(desk_->today()));
    }
    add(Type::Text, toQt(sourceField(fact)),
        desk_->say({"ownSpecies.sourceOf", {{"fact", field.label().toStdString()}}}))
        .setText(sourceOf(fact, before_));
}

void ProfileForm::follow() {
    if (isNew()) takeOver();
    for (const auto& fact : profileFacts()) {
        if (fact.isSourced) markSource(fact);
    }
    showSources();
    const auto listing = at("listing").text();
    at(asOfField).setWanted(!listing.isEmpty() && listing != u"not_checked");
}

void ProfileForm::showSources() {
    const bool areShown = at("sources").isOn();
    for (const auto& fact : profileFacts()) {
        if (fact.isSourced) fieldOf(sourceField(fact)).setWanted(areShown);
    }
}

/// What the keeper enters is from the keeper, what is put back as it was has its source again.
void ProfileForm::markSource(const ProfileFact& fact) {
    auto& source = fieldOf(sourceField(fact));
    const auto fromYou = desk_->say("ownSpecies.fromYou");
    const auto was = sourceOf(fact, before_);
    const auto before = enteredOf(fact, before_);
    const auto now = entered(fact);
    // What can't be read is not what was there, even if nothing was.
    const bool isAsBefore =
        at(fact.name).text() == before ||
        (now.contains("value") && now["value"] == factFrom(fact, before, was)["value"]);
    if (!isAsBefore && source.text() == was) source.setText(fromYou);
    if (isAsBefore && source.text() == fromYou) source.setText(was);
}

void ProfileForm::takeOver() {
    auto& like = at("like");
    const auto typed = like.text().trimmed();
    constexpr int most = 5;
    const auto* known = desk_->profiles().find(typed.toStdString());
    auto suggestions = speciesLike(typed, desk_->profiles(), most);
    if (known != nullptr && toQt(known->name) == typed) suggestions.clear();
    like.setSuggestions(suggestions);
    if (known == nullptr || toQt(known->name) != typed || takenOver_ == typed) return;
    takenOver_ = typed;
    // The citations are about the other species; names and its listing are its own too.
    const auto facts = json::parse(profileText(*known));
    const auto source = desk_->say({"ownSpecies.asFor", {{"species", known->name}}});
    for (const auto& fact : profileFacts()) {
        const std::string_view name(fact.name);
        const bool isItsOwn = name == "name" || name == "authority" || name == "other_names" ||
                              name == "trade_names" || name == "listing";
        if (isItsOwn) continue;
        at(fact.name).setText(enteredOf(fact, facts));
        if (fact.isSourced) fieldOf(sourceField(fact)).setText(source);
    }
}

json ProfileForm::entered(const ProfileFact& fact) const {
    const auto source = fact.isSourced ? fieldOf(sourceField(fact)).text() : QString();
    auto value = factFrom(fact, at(fact.name).text(), source);
    const auto& asOf = at(asOfField);
    if (std::string_view(fact.name) == "listing" && asOf.isWanted()) {
        value["as_of"] = asOf.text().toStdString();
    }
    return value;
}

void ProfileForm::showError(const std::string& field, const Error& error) {
    // The core speaks of files; a form has words of its own for the same.
    const auto& id = error.message.id;
    const auto own = "ownSpecies.trouble" + id.substr(id.find('.'));
    const bool isKnown = desk_->knowledge().words.knows(own);
    fieldOf(field).setError(desk_->say(isKnown ? Message(own) : error.message));
}

/// Each fact by itself, in a profile that is right otherwise, so that all that is wrong shows at once.
void ProfileForm::check(const ProfileFact& fact) {
    const auto whole = json::parse(profileText(desk_->knowledge().profiles.all().front()));
    auto changed = whole;
    changed[fact.name] = entered(fact);
    if (fact.isSourced) {
        changed[fact.name]["source"] = "x";
        auto otherwise = whole;
        otherwise[fact.name]["source"] = entered(fact)["source"];
        if (const auto read = profileFromJson(otherwise, 1); !read) {
            at("sources").setText(QStringLiteral("yes"));
            showError(sourceField(fact), read.error());
        }
    }
    const bool isTyped = fact.shape == FactShape::range && !at(fact.name).value().empty();
    if (isTyped && !changed[fact.name].contains("value")) {
        at(fact.name).setError(desk_->say("ownSpecies.trouble.range"));
    } else if (const auto read = profileFromJson(changed, 1); !read) {
        showError(fact.name, read.error());
    }
}

void ProfileForm::save() {
    if (!isReady() || isBusy()) return;
    clearErrors();
    follow();
    json object = json::object();
    for (const auto& fact : profileFacts()) {
        object[fact.name] = entered(fact);
        check(fact);
    }
    showSources();  // one of them may be what is wrong
    if (hasErrors()) return setError(desk_->say("form.seeFields"));
    const auto profile = profileFromJson(object, 1);
    if (!profile) return setError(desk_->say(profile.error().message));
    Deed deed;
    deed.tag = toQt(desk_->room()->info().code);
    deed.said = {isNew() ? "did.speciesAdded" : "did.speciesChanged"};
    const auto insteadOf = own_ == profile->name ? std::string() : own_;
    deed.write = [profile = *profile, insteadOf,
                  &shipped = desk_->knowledge().profiles](Book& book) -> Result<ChangeSet> {
        BURROW_TRY(auto kept, keepProfiles(book, shipped, std::span(&profile, 1), insteadOf));
        return std::move(kept.changes);
    };
    write(std::move(deed), std::make_shared<const QString>(toQt(profile->name)));
}

}  // namespace burrow
