#include "viewmodels/animalform.h"

#include "base/text.h"
#include "journal/fields.h"
#include "room/search.h"
#include "room/sheets.h"
#include "tags/code.h"
#include "viewmodels/deeds.h"
#include "viewmodels/factwords.h"

namespace burrow {
namespace {

template <class Term>
Term termOf(const QString& text) {
    return parseTerm<Term>(text.toStdString()).value_or(Term{});
}

/// What a new subject and its tag put into the book, or what an edit changes.
struct Writing {
    Subject before;
    Subject after;
    bool isNew = true;
    std::optional<std::string> code;  ///< of a scanned tag
    Millimetres side = tags::printedSide;
    std::optional<Enclosure> home;  ///< made along with it
};

Result<std::vector<Draft>> draftsFor(Book& book, Writing writing) {
    std::vector<Draft> drafts;
    if (writing.home) {
        const EnclosureId id{book.newId()};
        writing.after.enclosure = id;
        drafts.emplace_back(SetDraft{ThingType::enclosure, id.uuid, toFields(*writing.home)});
    }
    const auto& after = writing.after;
    if (!writing.isNew) {
        const auto changed = changedFields(writing.before, after);
        if (!changed.empty())
            drafts.emplace_back(SetDraft{ThingType::subject, after.id.uuid, changed});
        return drafts;
    }
    drafts.emplace_back(SetDraft{ThingType::subject, after.id.uuid, toFields(after)});
    const auto code = writing.code.value_or(tags::generateCode(book.surroundings().random));
    BURROW_TRY(const auto hanging, tag(book, code));
    if (hanging && hanging->isBound()) return fail(Trouble::badInput, {"form.tagTaken"});
    drafts.emplace_back(hangTag(code, after.id, writing.side));
    return drafts;
}

}  // namespace

void AnimalForm::setSubject(const QString& subject) {
    if (subject_ == subject) return;
    subject_ = subject;
    readAgain();
}

void AnimalForm::setTagCode(const QString& code) {
    tagCode_ = code;
    emit shapeChanged();
}

QString AnimalForm::saveText() const {
    return desk_ ? desk_->say(isNew_ ? "form.saveNew" : "form.saveChange") : QString();
}

void AnimalForm::read() {
    clearFields();
    const auto resident = residentOf(*desk_, subject_);
    isNew_ = subject_.isEmpty();
    if (!isNew_ && !resident) return setShape({}, false, true);
    before_ = resident ? resident->subject() : Subject{};
    gone_ = resident ? resident->kept.digest.gone : 0;
    before_.headcount += gone_;
    build();
    desk_->ask<Start>(
        this,
        [home = before_.enclosure](Book& book) -> Result<Start> {
            Start start;
            BURROW_TRY(start.number, nextNumber(book));
            if (home) {
                BURROW_TRY(start.enclosure, enclosure(book, *home));
            }
            return start;
        },
        [this](const Result<Start>& start) {
            if (start) fill(*start);
        });
}

Result<std::string> AnimalForm::code() const {
    if (tagCode_.isEmpty()) return std::string();
    return tags::parseTyped(tagCode_.toStdString());
}

bool AnimalForm::readParent(const char* name, std::optional<SubjectId>& into) {
    into.reset();
    const auto number = value(name);
    if (number.isEmpty()) return true;
    const auto found = numbered(*desk_->room(), number.toStdString());
    const auto refuse = [&](const char* id) {
        at(name).setError(desk_->say({id, {{"tag", number.toStdString()}}}));
        return false;
    };
    if (found.empty()) return refuse("form.noParent");
    if (found.size() > 1) return refuse("form.severalParents");
    into = found.front()->subject().id;
    return !isNew_ && *into == before_.id ? refuse("form.ownParent") : true;
}

bool AnimalForm::readSubject(Subject& subject) {
    subject = before_;
    subject.number = value("number").toStdString();
    subject.species = value("species").toStdString();
    subject.form = termOf<Form>(value("form"));
    subject.hatched = at("hatched").day()->day();
    subject.acquired = at("acquired").day()->day();
    subject.source = value("source").toStdString();
    subject.quarantined = at("quarantined").isOn();
    subject.note = value("note").toStdString();
    // What does not show for one of its form stays as it was.
    if (at("sex").isWanted()) subject.sex = termOf<Sex>(value("sex"));
    if (at("mature").isWanted()) subject.mature = at("mature").isOn();
    if (at("place").isWanted()) subject.place = Place::parse(value("place").toStdString());
    subject.headcount = at("count").isWanted() ? at("count").count() + gone_ : 1;
    const auto home = Uuid::parse(value("enclosure").toStdString());
    subject.enclosure = home ? std::optional(EnclosureId{*home}) : std::nullopt;
    if (subject.number.empty()) at("number").setError(desk_->say("form.noNumber"));
    if (subject.species.empty()) at("species").setError(desk_->say("form.noSpecies"));
    bool isFine = readParent("mother", subject.mother);
    isFine &= readParent("father", subject.father);
    return isFine && !hasErrors();
}

void AnimalForm::save() {
    if (!isReady() || isBusy()) return;
    clearErrors();
    Writing writing{.before = before_, .isNew = isNew_};
    bool isFine = readSubject(writing.after);
    if (home_.name->isWanted()) {
        Enclosure home;
        isFine &= home_.read(home, *desk_);
        writing.home = std::move(home);
    }
    const auto typed = code();
    if (!typed) return setError(desk_->say(typed.error().message));
    if (!isFine) return setError(desk_->say("form.seeFields"));
    if (!typed->empty()) {
        writing.code = *typed;
        if (tagSide_ > 0) writing.side = Millimetres{tagSide_};
    }
    Deed deed;
    deed.tag = toQt(writing.after.number);
    deed.said = {isNew_ ? "did.newAnimal" : "did.changed"};
    const auto made = std::make_shared<QString>(subject_);
    deed.compose = [writing, made](Book& book) mutable -> Result<std::vector<Draft>> {
        if (writing.isNew) writing.after.id = SubjectId{book.newId()};
        *made = toQt(writing.after.id.text());
        return draftsFor(book, writing);
    };
    write(std::move(deed), made);
}

}  // namespace burrow
