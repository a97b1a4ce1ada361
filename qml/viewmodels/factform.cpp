#include "viewmodels/factform.h"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "base/text.h"
#include "journal/fields.h"
#include "journal/past.h"
#include "viewmodels/deeds.h"

namespace burrow {
namespace {

/// What amending reads before anything can be shown.
struct ToAmend {
    std::optional<Fact> fact;
    EnclosureNames names;
};

const auto withHome = QStringLiteral("with_home");

bool sameLengths(const FactBody& a, const FactBody& b) {
    return a.span == b.span && a.carapace == b.carapace && a.carapaceWidth == b.carapaceWidth &&
           a.fang == b.fang && a.segmentLength == b.segmentLength;
}

/// What `compose` makes of the body; with a new enclosure first, which the body then names.
template <class Compose>
Result<std::vector<Draft>> draftsFor(Book& book, FactBody body,
                                     const std::optional<Enclosure>& home, Compose compose) {
    if (!home) return compose(body);
    const EnclosureId id{book.newId()};
    body.enclosure = id;
    BURROW_TRY(const auto drafts, compose(body));
    std::vector<Draft> all{SetDraft{ThingType::enclosure, id.uuid, toFields(*home)}};
    all.insert(all.end(), drafts.begin(), drafts.end());
    return all;
}

/// The tub goes along: it stays the animal's enclosure, and stands there now.
std::vector<Draft> takeAlong(SubjectId subject, EnclosureId home, const Place& place) {
    return {SetDraft{ThingType::subject, subject.uuid, {{"enclosure", home.text()}}},
            SetDraft{ThingType::enclosure, home.uuid, {{"place", place.text()}}}};
}

}  // namespace

FactForm::FactForm(QObject* parent) : FormModel(parent) { when_.requireKnown(); }

void FactForm::begin(const QString& subject, const QString& kindName) {
    const auto kind = parseFactKind(kindName.toStdString());
    const auto resident = residentOf(*desk_, subject);
    close();
    if (!kind || !resident) return;
    build(*kind, resident);
    if (*kind == FactKind::offered) suggestMeal();
    setShape(kindTitle(*kind, *desk_), true);
}

void FactForm::amend(const QString& entry) {
    close();
    const auto id = Uuid::parse(entry.toStdString());
    if (!id) return;
    desk_->ask<ToAmend>(
        this,
        [id](Book& book) -> Result<ToAmend> {
            ToAmend found;
            BURROW_TRY(found.fact, fact(book, EntryId{*id}));
            BURROW_TRY(found.names, enclosureNames(book));
            return found;
        },
        [this](const Result<ToAmend>& found) {
            const auto resident = found && found->fact && desk_->room()
                                      ? desk_->room()->find(found->fact->subject)
                                      : nullptr;
            if (!resident) return setShape({}, false, true);
            before_ = found->fact;
            build(before_->kind, resident);
            when_.setDay(before_->day);
            showBody(before_->body, found->names);
            setShape(kindTitle(before_->kind, *desk_), true);
        });
}

void FactForm::close() {
    kind_.reset();
    before_.reset();
    resident_.reset();
    warnings_.clear();
    home_ = {};
    setError({});
    clearFields();
    setShape({}, false);
}

QString FactForm::saveText() const {
    return desk_ ? desk_->say(before_ ? "form.saveChange" : "form.log") : QString();
}

std::optional<Instant> FactForm::happenedAt() const {
    const auto day = when_.day().value_or(desk_->today());
    if (before_ && day == before_->day) return before_->happenedAt;
    if (day == desk_->today()) return std::nullopt;
    // A day alone stands at its noon.
    return desk_->knowledge().zone.resolve({day, std::nullopt, std::nullopt});
}

bool FactForm::isShown(std::string_view name) const {
    const auto* found = field(QString::fromUtf8(name.data(), static_cast<qsizetype>(name.size())));
    return found != nullptr && found->isWanted();
}

bool FactForm::readField(FactBody& body, FormField& field) {
    auto text = field.value();
    const bool isNewHome =
        field.type() == FormField::Type::Enclosure && field.text() == newEnclosure;
    if (text.empty() || isNewHome) return true;
    if (field.type() == FormField::Type::Number) std::replace(text.begin(), text.end(), ',', '.');
    if (field.name() == u"prey") text = feederTerm(text, desk_->room()->rules());
    const auto done = setField(body, *kind_, field.name().toStdString(), text);
    if (done) return true;
    field.setError(
        sayOfField(done.error().message, field.label(), kindTitle(*kind_, *desk_), *desk_));
    return false;
}

bool FactForm::readBody(FactBody& body) {
    bool isFine = !when_.isWrong() && !hasErrors();  // so far only days can have one
    // What the form does not show stays as it was.
    const auto kept = before_ ? toJson(before_->body) : nlohmann::json::object();
    for (const auto& [name, value] : kept.items()) {
        if (isShown(name)) continue;
        const auto text = value.is_string() ? value.get<std::string>() : value.dump();
        isFine &= setField(body, *kind_, name, text).has_value();
    }
    const auto names = fieldsOf(*kind_);
    for (auto* field : all()) {
        const bool isOfFact = std::ranges::find(names, field->name().toStdString()) != names.end();
        if (isOfFact && field->isWanted()) isFine &= readField(body, *field);
    }
    if (!isFine) return false;
    // What is typed over a length is not as sure as that was.
    if (before_ && !sameLengths(before_->body, body)) {
        body.low.reset();
        body.high.reset();
        body.height.reset();
    }
    const auto complete = checkComplete(body, *kind_);
    if (complete) return true;
    const auto* name = complete.error().message.find("field");
    auto* lacking = name != nullptr ? field(toQt(std::get<std::string>(*name))) : nullptr;
    if (lacking == nullptr) {
        setError(desk_->say(complete.error().message));
    } else {
        lacking->setError(desk_->say({"form.needed", {{"field", lacking->label().toStdString()}}}));
    }
    return false;
}

std::optional<Enclosure> FactForm::newHome() const {
    if (home_.name == nullptr || !home_.name->isWanted()) return std::nullopt;
    Enclosure made;
    static_cast<void>(home_.read(made, *desk_));  // save() has looked it over
    return made;
}

Deed FactForm::amendDeed(FactBody body) const {
    Deed deed;
    deed.tag = toQt(resident_->subject().number);
    deed.said = {"did.amended"};
    const auto at = happenedAt().value_or(desk_->knowledge().clock.now());
    deed.compose = [before = *before_, body = std::move(body), home = newHome(), at](Book& book) {
        return draftsFor(book, body, home,
                         [&](const FactBody& named) { return amending(book, before, named, at); });
    };
    return deed;
}

Deed FactForm::logDeed(FactBody body) const {
    const FactDraft draft{resident_->subject().id, *kind_, std::move(body), happenedAt()};
    const auto* along = field(withHome);
    const bool takesHome = along != nullptr && along->isOn() && draft.body.place;
    Deed deed;
    deed.tag = toQt(resident_->subject().number);
    deed.said = saidOf(draft, resident_->subject().form);
    deed.compose = [draft, home = newHome(), takesHome, old = resident_->subject().enclosure](
                       Book& book) -> Result<std::vector<Draft>> {
        BURROW_TRY(auto drafts, draftsFor(book, draft.body, home, [&](const FactBody& named) {
                       return logging(book, {draft.subject, draft.kind, named, draft.happenedAt});
                   }));
        // A move that is alone says where it stands now; more is written where a later one says so.
        const bool isLatest = drafts.size() == 1;
        if (takesHome && old && isLatest) {
            const auto moves = takeAlong(draft.subject, *old, *draft.body.place);
            drafts.insert(drafts.end(), moves.begin(), moves.end());
        }
        return drafts;
    };
    return deed;
}

void FactForm::save() {
    if (!kind_ || isBusy()) return;
    clearErrors();
    FactBody body;
    bool isFine = readBody(body);
    if (home_.name != nullptr && home_.name->isWanted()) {
        Enclosure home;
        isFine &= home_.read(home, *desk_);
    }
    if (!isFine) return;
    write(before_ ? amendDeed(std::move(body)) : logDeed(std::move(body)),
          std::make_shared<QString>(toQt(resident_->subject().id.text())));
}

}  // namespace burrow
