// The fields of AnimalForm, what stands in them at first, and how they follow one another.
#include <algorithm>

#include "room/search.h"
#include "viewmodels/animalform.h"
#include "viewmodels/deeds.h"
#include "viewmodels/factwords.h"
#include "viewmodels/specieslike.h"

namespace burrow {
namespace {

using Type = FormField::Type;

QString numberOf(const Desk& desk, const std::optional<SubjectId>& id) {
    const auto resident = id ? desk.room()->find(*id) : nullptr;
    return resident ? toQt(resident->subject().number) : QString();
}

/// Where others came from: what was typed once need not be typed again.
QStringList knownSources(const Desk& desk) {
    constexpr int most = 6;
    QHash<QString, int> times;
    for (const auto& resident : desk.room()->residents()) {
        if (!resident->subject().source.empty()) ++times[toQt(resident->subject().source)];
    }
    auto sources = times.keys();
    std::sort(sources.begin(), sources.end(), [&](const QString& a, const QString& b) {
        return times[a] != times[b] ? times[a] > times[b] : a < b;
    });
    return sources.mid(0, most);
}

}  // namespace

void AnimalForm::build() {
    addWho();
    addHome();
    addOrigin();
    for (auto* field : all()) connect(field, &FormField::edited, this, &AnimalForm::follow);
    follow();
}

void AnimalForm::addWho() {
    const auto choices = [this](const char* field, std::initializer_list<const char*> values) {
        std::vector<FieldChoice> all;
        for (const auto* value : values) {
            all.push_back({QString::fromLatin1(value),
                           desk_->say(Message("choice." + std::string(field) + '.' + value))});
        }
        return all;
    };
    add(Type::Code, "number", "form.number").setText(toQt(before_.number));
    add(Type::Text, "species", "form.species").setText(toQt(before_.species));
    add(Type::Choice, "form", "form.form")
        .setChoices(choices("form", {"animal", "group", "lot"}))
        .setText(toQt(std::string(name(before_.form))));
    constexpr int mostInLot = 5000;
    const int left = before_.headcount - gone_;
    add(Type::Count, "count", "form.count")
        .setRange(0, std::max(mostInLot, left))
        .setText(QString::number(left));
    add(Type::Choice, "sex", "form.sex")
        .setChoices(choices("sex", {"female", "male", "unknown"}))
        .setText(toQt(std::string(name(before_.sex))));
    add(Type::Flag, "mature", "form.mature")
        .setHint(desk_->say("form.matureHint"))
        .setText(before_.mature ? QStringLiteral("yes") : QString());
}

void AnimalForm::addHome() {
    add(Type::Enclosure, "enclosure", "animal.enclosure");
    home_ = addHomeFields();
    add(Type::Text, "place", "form.place")
        .setHint(desk_->say("form.placeHint"))
        .setSuggestions(knownShelves(*desk_))
        .setText(toQt(before_.place.text()));
    add(Type::Flag, "quarantined", "form.quarantined")
        .setHint(desk_->say("form.quarantinedHint"))
        .setText(before_.quarantined ? QStringLiteral("yes") : QString());
}

void AnimalForm::addOrigin() {
    for (const auto& [name, label, day] :
         {std::tuple{"hatched", "animal.hatched", before_.hatched},
          std::tuple{"acquired", "animal.acquired", before_.acquired}}) {
        auto& field = add(Type::Day, name, label);
        field.day()->forbidFuture();
        field.day()->setDay(day);
    }
    add(Type::Text, "source", "animal.source")
        .setSuggestions(knownSources(*desk_))
        .setText(toQt(before_.source));
    const auto byNumber = desk_->say("form.byNumber");
    add(Type::Code, "mother", "animal.mother")
        .setHint(byNumber)
        .setText(numberOf(*desk_, before_.mother));
    add(Type::Code, "father", "animal.father")
        .setHint(byNumber)
        .setText(numberOf(*desk_, before_.father));
    add(Type::Text, "note", "animal.note").setText(toQt(before_.note));
}

void AnimalForm::fill(const Start& start) {
    if (isNew_ && at("number").text().isEmpty()) at("number").setText(toQt(start.number));
    if (start.enclosure) {
        at("enclosure").setEnclosure(toQt(start.enclosure->id.text()), toQt(start.enclosure->name));
    }
    follow();
    setShape(isNew_ ? desk_->say("form.newAnimal")
                    : desk_->say({"form.editAnimal", {{"tag", before_.number}}}),
             true);
}

/// A field shows where it means something, and says what should be known of what was entered.
void AnimalForm::follow() {
    const bool isAnimal = at("form").text() == u"animal";
    const auto home = at("enclosure").text();
    at("count").setWanted(!isAnimal);
    at("sex").setWanted(isAnimal);
    at("mature").setWanted(isAnimal && at("sex").text() == u"male");
    at("place").setWanted(home.isEmpty());
    const bool wasWanted = home_.name->isWanted();
    home_.setWanted(home == newEnclosure);
    if (home_.name->isWanted() && !wasWanted) {
        const auto number = at("number").value();
        home_.name->setText(desk_->say({"form.newName", {{"tag", number}}}));
        home_.place->setText(at("place").text());
    }
    noteNumber();
    noteSpecies();
}

void AnimalForm::noteNumber() {
    QStringList others;
    for (const auto& resident : numbered(*desk_->room(), at("number").value())) {
        if (resident->subject().id == before_.id && !isNew_) continue;
        others.append(speciesText(*resident) + ", " + placeText(resident->kept.place, *desk_));
    }
    at("number").setNotice(
        others.isEmpty()
            ? QString()
            : desk_->say({"form.numberTaken",
                          {{"tag", at("number").value()},
                           {"others", others.join(QStringLiteral("; ")).toStdString()}}}));
}

void AnimalForm::noteSpecies() {
    const auto& profiles = desk_->profiles();
    auto& field = at("species");
    const auto typed = field.text().trimmed();
    const auto* known = profiles.find(typed.toStdString());
    constexpr int most = 5;
    auto suggestions = speciesLike(typed, profiles, most);
    if (known != nullptr && toQt(known->name) == typed) suggestions.clear();
    field.setSuggestions(suggestions);
    constexpr int enoughToTell = 4;
    const bool isUnknown =
        known == nullptr && typed.size() >= enoughToTell && suggestions.isEmpty();
    field.setNotice(isUnknown ? desk_->say("form.speciesUnknown") : QString());
    const bool byOtherName = known != nullptr && toQt(known->name) != typed;
    field.setHint(byOtherName ? desk_->say({"form.speciesIs", {{"species", known->name}}})
                              : QString());
}

}  // namespace burrow
