// Which fields FactForm shows for a kind, and what stands in them at first.
#include <algorithm>
#include <array>

#include "documents/cautions.h"
#include "viewmodels/deeds.h"
#include "viewmodels/factform.h"

namespace burrow {
namespace {

using Type = FormField::Type;

Type shownAs(FieldType type) {
    switch (type) {
        case FieldType::count: return Type::Count;
        case FieldType::millimetres:
        case FieldType::grams: return Type::Number;
        case FieldType::outcome:
        case FieldType::method:
        case FieldType::sex:
        case FieldType::look:
        case FieldType::clarity:
        case FieldType::role: return Type::Choice;
        case FieldType::flag: return Type::Flag;
        case FieldType::day: return Type::Day;
        case FieldType::enclosure: return Type::Enclosure;
        case FieldType::text:
        case FieldType::place:
        case FieldType::entry:
        case FieldType::hash: break;
    }
    return Type::Text;
}

/// The words to choose from, as files spell them.
std::vector<const char*> choicesOf(FieldType type) {
    switch (type) {
        case FieldType::outcome: return {"ate", "part", "refused", "left_in"};
        case FieldType::method: return {"ruler", "photo", "eye"};
        case FieldType::sex: return {"female", "male", "unknown"};
        case FieldType::role: return {"animal", "moult", "enclosure"};
        case FieldType::look: return {"moult", "underside", "mature", "colour"};
        case FieldType::clarity: return {"barely", "partly", "fairly", "clearly", "beyond_doubt"};
        default: return {};
    }
}

/// What is measured in a photo has a page of its own; a form shows it only where it is there to correct.
bool isOfPhotos(std::string_view field) {
    constexpr std::array<std::string_view, 5> names{"carapace_width_mm", "fang_mm", "segment",
                                                    "segment_mm", "dried"};
    return std::ranges::find(names, field) != names.end();
}

/// Whether a form asks for it: not for what only programs fill in, nor for a count of one.
bool isAsked(std::string_view field, FactKind kind, const Resident& resident) {
    if (field == "low_mm" || field == "high_mm" || field == "height_mm") return false;
    const auto type = fieldType(field);
    if (type == FieldType::entry || type == FieldType::hash) return false;
    if (field == "confidential") return kind == FactKind::note;
    const bool isSeveral = resident.subject().form != Form::animal;
    if (field == "ultimate") return !isSeveral;
    return field != "count" || isSeveral || kind == FactKind::offered;
}

QStringList listOf(const char* id, const Desk& desk) {
    return desk.say(id).split('|', Qt::SkipEmptyParts);
}

/// The feeders that the rules know.
QStringList feeders(const Desk& desk) {
    constexpr std::string_view family = "prey.longest.";
    QStringList words;
    for (const auto* rule : desk.room()->rules().all()) {
        if (!rule->id.starts_with(family)) continue;
        words.append(
            desk.say({"fact.preyKind",
                      {{"prey", rule->id.substr(family.size())}, {"count", std::int64_t{1}}}}));
    }
    return words;
}

}  // namespace

void FactForm::build(FactKind kind, const ResidentPtr& resident) {
    kind_ = kind;
    resident_ = resident;
    when_.prepare(desk_->knowledge().words, desk_->today());
    when_.forbidFuture();
    when_.setToday();
    for (const auto field : fieldsOf(kind)) {
        const bool isThere = before_ && burrow::fieldText(before_->body, field).has_value();
        if (isOfPhotos(field) && !isThere) continue;
        if (isAsked(field, kind, *resident)) addField(field);
    }
    if (kind == FactKind::rehoused) addHome();
    if (kind == FactKind::moved) addMove();
    warn();
}

void FactForm::addField(std::string_view name) {
    const auto type = fieldType(name);
    const auto id = toQt(std::string(name));
    auto& field = add(shownAs(type), id, fieldLabel(name, *resident_, *desk_));
    std::vector<FieldChoice> choices;
    for (const auto* value : choicesOf(type)) {
        choices.push_back({QString::fromLatin1(value),
                           desk_->say(Message("choice." + std::string(name) + "." + value))});
    }
    if (!choices.empty()) field.setChoices(std::move(choices));
    if (type == FieldType::count) {
        constexpr int mostPrey = 1000;
        // An entry of back then may count those who are gone by now.
        const int gone = before_ ? resident_->kept.digest.gone : 0;
        const int headcount = resident_->subject().headcount + gone;
        const bool isMeal = *kind_ == FactKind::offered;
        field.setRange(*kind_ == FactKind::seen ? 0 : 1,
                       isMeal ? mostPrey : std::max(1, headcount));
        field.setText(QString::number(*kind_ == FactKind::seen ? headcount : 1));
    }
    if (name == "prey") field.setSuggestions(feeders(*desk_));
    if (name == "sign") field.setSuggestions(listOf("form.signs", *desk_));
    if (name == "cause") field.setSuggestions(listOf("form.causes", *desk_));
    if (name == "confidential") field.setHint(desk_->say("form.privateHint"));
    if (name == "place") {
        field.setHint(desk_->say("form.placeHint")).setSuggestions(knownShelves(*desk_));
    }
}

void FactForm::addHome() {
    home_ = addHomeFields();
    home_.place->setText(toQt(resident_->kept.place.text()));
    home_.name->setText(desk_->say({"form.newName", {{"tag", resident_->subject().number}}}));
    auto* enclosure = field(QStringLiteral("enclosure"));
    const auto follow = [this, enclosure] { home_.setWanted(enclosure->text() == newEnclosure); };
    connect(enclosure, &FormField::changed, this, follow);
    follow();
}

void FactForm::addMove() {
    auto* place = field(QStringLiteral("place"));
    place->setText(toQt(resident_->kept.place.text()));
    if (before_ || !resident_->subject().enclosure) return;
    add(Type::Flag, "with_home", "form.withHome")
        .setText(QStringLiteral("yes"))
        .setHint(desk_->say("form.withHomeHint"));
}

void FactForm::suggestMeal() {
    const auto prey = suggestionFor(*resident_, *desk_);
    FactBody body;
    body.prey = prey.kind;
    if (prey.length.value > 0) body.preyLength = prey.length;
    body.count = prey.count;
    showBody(body, {});
    field(QStringLiteral("prey"))->setHint(desk_->say(prey.reason));
}

void FactForm::showBody(const FactBody& body, const EnclosureNames& names) {
    for (auto* field : all()) {
        const auto name = field->name().toStdString();
        if (field->type() == Type::Day) {
            field->day()->setDay(body.until);
        } else if (name == "prey" && body.prey) {
            field->setText(
                desk_->say({"fact.preyKind", {{"prey", *body.prey}, {"count", std::int64_t{1}}}}));
        } else if (name == "place" && body.place) {
            field->setText(toQt(body.place->text()));
        } else if (name == "enclosure" && body.enclosure) {
            field->setEnclosure(toQt(body.enclosure->text()),
                                fieldText(body, "enclosure", *desk_, names));
        } else if (const auto text = fieldValue(body, name); !text.isEmpty()) {
            field->setText(text);
        }
    }
}

void FactForm::warn() {
    warnings_.clear();
    const auto phase = resident_->plan.phase;
    const auto say = [this](const char* id) { warnings_.append(desk_->say(id)); };
    if (before_) return;
    const auto& feed = resident_->plan.of(Care::feed);
    if (*kind_ == FactKind::offered && feed.state == State::hold) {
        warnings_.append(verbText(*resident_, feed, *desk_) + ' ' + desk_->say(feed.reason));
        warnings_.append(holdAdvice(feed, *desk_));
    }
    if (*kind_ == FactKind::rehoused) {
        say("form.warn.rehouse");
        if (phase == Phase::hardening) say("form.warn.rehouseSoft");
        if (phase == Phase::premoult || phase == Phase::likelyPremoult)
            say("form.warn.rehousePremoult");
        if (resident_->subject().form != Form::animal) say("form.warn.rehouseSeveral");
        const auto all = resident_->profile != nullptr ? cautions(*resident_->profile)
                                                       : std::vector{Caution::unknown};
        for (const auto caution : all) {
            warnings_.append(toQt(documents::cautionAdvice(caution, desk_->knowledge().words)));
        }
    }
    if (*kind_ == FactKind::sold || *kind_ == FactKind::given || *kind_ == FactKind::lent) {
        if (phase == Phase::hardening) say("form.warn.leavesSoft");
        const auto* profile = resident_->profile;
        if (profile != nullptr && profile->listing.value == Listing::citesAppendixII) {
            warnings_.append(desk_->say(listingNote(*profile)));
        }
        say("form.warn.law");
    }
}

}  // namespace burrow
