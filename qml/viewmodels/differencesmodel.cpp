#include "viewmodels/differencesmodel.h"

#include <algorithm>

#include "journal/fields.h"
#include "room/number_words.h"
#include "room/own_profiles.h"
#include "viewmodels/wording.h"

namespace burrow {
namespace {

using Kind = Difference::Kind;

/// The body of a fact as one side has it; nothing where this version cannot read it.
std::optional<FactBody> bodyOf(const Difference& difference, const Choice& choice) {
    if (!difference.factKind || !choice.value.is_object()) return std::nullopt;
    auto body = factBody(*difference.factKind, choice.value);
    return body ? std::optional(*std::move(body)) : std::nullopt;
}

/// The fields in which the sides differ.
std::vector<std::string> differingFields(const Difference& difference) {
    std::vector<std::string> fields;
    for (const auto field : fieldsOf(*difference.factKind)) {
        const std::string name(field);
        const auto& first = difference.choices.front().value;
        const auto valueIn = [&](const Choice& choice) {
            const auto found = choice.value.find(name);
            return found == choice.value.end() ? nlohmann::json() : *found;
        };
        const auto wanted = first.contains(name) ? first[name] : nlohmann::json();
        if (std::any_of(difference.choices.begin(), difference.choices.end(),
                        [&](const Choice& choice) { return valueIn(choice) != wanted; })) {
            fields.push_back(name);
        }
    }
    return fields;
}

/// A photo shows more than a ruler, and a ruler more than the eye.
int evidenceOf(const std::optional<FactBody>& body) {
    if (!body || !body->method) return 0;
    switch (*body->method) {
        case Method::eye: return 1;
        case Method::ruler: return 2;
        case Method::photo: return 3;
    }
    return 0;
}

}  // namespace

void DifferencesModel::setDesk(Desk* desk) {
    if (desk_ == desk) return;
    if (desk_) desk_->disconnect(this);
    desk_ = desk;
    if (desk_) connect(desk_, &Desk::written, this, &DifferencesModel::read);
    read();
    emit changed();
}

void DifferencesModel::read() {
    if (!desk_) return;
    desk_->ask<Look>(
        this,
        [](Book& book) -> Result<Look> {
            Look look;
            look.device = book.device();
            BURROW_TRY(look.names, enclosureNames(book));
            BURROW_TRY(auto all, differences(book));
            for (auto& difference : all) {
                Found found{std::move(difference), {}, std::nullopt};
                if (found.difference.fact) {
                    BURROW_TRY(found.fact, fact(book, *found.difference.fact));
                }
                if (found.difference.type == ThingType::tag) {
                    BURROW_TRY(const auto code, tagCode(book, found.difference.thing));
                    found.thing = toQt(code);
                }
                look.found.push_back(std::move(found));
            }
            return look;
        },
        [this](Result<Look> look) {
            if (look) show(*std::move(look));
        });
}

void DifferencesModel::show(Look look) {
    found_ = std::move(look.found);
    names_ = std::move(look.names);
    device_ = look.device;
    ready_ = true;
    begin(std::min(at_, found_.empty() ? 0 : found_.size() - 1));
}

void DifferencesModel::begin(std::size_t at) {
    at_ = at;
    const auto* found = current();
    choice_ = found == nullptr ? 0 : static_cast<int>(betterOf(found->difference));
    emit changed();
}

/// The better evidence; of equals the one that counts now, which is the newer.
std::size_t DifferencesModel::betterOf(const Difference& difference) {
    std::size_t best = 0;
    for (std::size_t i = 1; i < difference.choices.size(); ++i) {
        if (evidenceOf(bodyOf(difference, difference.choices[i])) >
            evidenceOf(bodyOf(difference, difference.choices[best]))) {
            best = i;
        }
    }
    return best;
}

const DifferencesModel::Found* DifferencesModel::current() const {
    return at_ < found_.size() ? &found_[at_] : nullptr;
}

ResidentPtr DifferencesModel::resident() const {
    const auto* found = current();
    const bool isSubject = found != nullptr && found->difference.type == ThingType::subject;
    return isSubject && desk_->room() ? desk_->room()->find(SubjectId{found->difference.thing})
                                      : nullptr;
}

QString DifferencesModel::summary() const {
    if (!ready_) return {};
    const auto count = static_cast<std::int64_t>(found_.size());
    return count == 0 ? desk_->say("differ.none") : desk_->say({"differ.some", {{"count", count}}});
}

QString DifferencesModel::position() const {
    if (found_.empty()) return {};
    return desk_->say({"differ.position",
                       {{"n", static_cast<std::int64_t>(at_ + 1)},
                        {"of", static_cast<std::int64_t>(found_.size())}}});
}

QString DifferencesModel::tag() const {
    const auto found = resident();
    const bool isOwn = current() != nullptr && current()->difference.kind != Kind::number;
    return found && isOwn ? toQt(found->subject().number) : QString();
}

QString DifferencesModel::title() const {
    const auto* found = current();
    if (found == nullptr) return {};
    const auto& difference = found->difference;
    switch (difference.kind) {
        case Kind::number:
            return desk_->say({"differ.number",
                               {{"count", static_cast<std::int64_t>(difference.choices.size())},
                                {"number", difference.name}}});
        case Kind::fork: return desk_->say({"differ.fork", {{"count", difference.times}}});
        case Kind::field: {
            if (const auto species = speciesOfSetting(difference.name)) {
                return desk_->say({"differ.profile", {{"species", *species}}});
            }
            if (const auto number = numberOfSetting(difference.name)) {
                return toQt(placeText(*number, desk_->knowledge().words));
            }
            const Message field("differ.field." + difference.name);
            const bool isKnown = desk_->knowledge().words.knows(field.id);
            const auto what = isKnown ? desk_->say(field) : toQt(difference.name);
            if (difference.type == ThingType::subject) return what;
            const auto thing = difference.type == ThingType::tag
                                   ? found->thing
                                   : names_.value(toQt(difference.thing.text()));
            return desk_->say({"differ.of." + std::string(name(difference.type)),
                               {{"name", thing.toStdString()}, {"field", what.toStdString()}}});
        }
        case Kind::amendment:
        case Kind::confidentialPart: break;
    }
    if (!difference.factKind || !found->fact) return desk_->say("differ.event");
    QStringList what;
    if (const auto who = resident()) {
        for (const auto& field : differingFields(difference)) {
            what.append(fieldLabel(field, *who, *desk_));
        }
    }
    return desk_->say({what.isEmpty() ? "differ.fact" : "differ.factFields",
                       {{"event", kindTitle(*difference.factKind, *desk_).toStdString()},
                        {"fields", what.join(QStringLiteral(", ")).toStdString()},
                        {"day", found->fact->day}}});
}

QString DifferencesModel::bodyText(const Found& found, const Choice& choice) const {
    const auto body = bodyOf(found.difference, choice);
    if (!body) return desk_->say("differ.unreadable");
    QStringList texts;
    for (const auto& field : differingFields(found.difference)) {
        const auto text = fieldText(*body, field, *desk_, names_);
        if (!text.isEmpty()) texts.append(text);
    }
    if (texts.isEmpty() && choice.day) return dayText(*choice.day, *desk_);
    return texts.isEmpty() ? desk_->say("differ.nothing") : texts.join(QStringLiteral(", "));
}

QString DifferencesModel::word(const Found& found, const Choice& choice) const {
    const auto& difference = found.difference;
    if (difference.kind == Kind::fork) return desk_->say("differ.bothStand");
    if (difference.kind == Kind::number) {
        const auto who = choice.subject ? desk_->room()->find(*choice.subject) : nullptr;
        return who ? speciesText(*who) : desk_->say("differ.unknownAnimal");
    }
    if (difference.kind != Kind::field) return bodyText(found, choice);
    if (choice.value.is_null()) {
        // Without a number of one's own the shipped one holds.
        return desk_->say(numberOfSetting(difference.name) ? "ruleFrom.shipped" : "differ.nothing");
    }
    if (choice.value.is_boolean())
        return desk_->say(choice.value.get<bool>() ? "differ.yes" : "differ.no");
    if (!choice.value.is_string()) return toQt(choice.value.dump());
    if (speciesOfSetting(difference.name)) return profileText(found, choice);
    const auto text = choice.value.get<std::string>();
    if (const auto known = names_.find(toQt(text)); known != names_.end()) return *known;
    if (const auto uuid = Uuid::parse(text)) {
        const auto who = desk_->room()->find(SubjectId{*uuid});
        return who ? toQt(who->subject().number) + QLatin1Char(' ') + speciesText(*who)
                   : desk_->say("differ.unknownAnimal");
    }
    const Message term(difference.name + "." + text);
    return desk_->knowledge().words.knows(term.id) ? desk_->say(term) : toQt(text);
}

/// Where the profile says something else than the other versions of it.
QString DifferencesModel::profileText(const Found& found, const Choice& choice) const {
    std::vector<std::string> versions{choice.value.get<std::string>()};
    for (const auto& other : found.difference.choices) {
        if (other.value.is_string()) versions.push_back(other.value.get<std::string>());
    }
    QStringList texts;
    const auto lines = differingLines(versions);  // outlives the loop over a part of it
    for (const auto& line : lines.front()) {
        texts.append(
            desk_->say({"differ.profileLine",
                        {{"name", desk_->say(Message(std::string(line.name))).toStdString()},
                         {"value", desk_->say(line.value).toStdString()}}}));
    }
    return texts.isEmpty() ? desk_->say("differ.unreadable") : texts.join(QStringLiteral(". "));
}

QString DifferencesModel::sub(const Found& found, const Choice& choice) const {
    if (found.difference.kind == Kind::fork) return {};
    if (found.difference.kind == Kind::number) return desk_->say("differ.keepsNumber");
    const auto day = desk_->knowledge().zone.dayOf(choice.recordedAt);
    return desk_->say({choice.device == device_ ? "differ.here" : "differ.other", {{"day", day}}});
}

QVariantList DifferencesModel::choices() const {
    QVariantList list;
    const auto* found = current();
    if (found == nullptr) return list;
    for (const auto& choice : found->difference.choices) {
        list.append(QVariantMap{{QStringLiteral("word"), word(*found, choice)},
                                {QStringLiteral("sub"), sub(*found, choice)}});
    }
    return list;
}

void DifferencesModel::setChoice(int choice) {
    const auto* found = current();
    if (found == nullptr || choice == choice_ || choice < 0 ||
        choice >= static_cast<int>(found->difference.choices.size())) {
        return;
    }
    choice_ = choice;
    emit changed();
}

QString DifferencesModel::stays() const {
    const auto* found = current();
    if (found == nullptr || found->difference.kind == Kind::fork) return {};
    if (found->difference.kind == Kind::number) return desk_->say("differ.othersGetNext");
    return tag().isEmpty() ? desk_->say("differ.stays")
                           : desk_->say({"differ.staysOf", {{"tag", tag().toStdString()}}});
}

void DifferencesModel::settle() {
    const auto* found = current();
    if (found == nullptr) return;
    Deed deed;
    deed.tag = tag();
    deed.said = {"did.settled"};
    deed.write = [difference = found->difference, choice = static_cast<std::size_t>(choice_)](
                     Book& book) { return burrow::settle(book, difference, choice); };
    desk_->act(this, std::move(deed));
}

void DifferencesModel::next() {
    if (!found_.empty()) begin((at_ + 1) % found_.size());
}

}  // namespace burrow
