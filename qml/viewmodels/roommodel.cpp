#include "viewmodels/roommodel.h"

#include <algorithm>

#include "journal/check.h"
#include "journal/differences.h"
#include "room/sex_case.h"
#include "room/tables.h"
#include "viewmodels/roomnames.h"
#include "viewmodels/wording.h"

namespace burrow {
namespace {

/// Moults at which nobody has looked, of animals whose sex is open.
std::int64_t moultsIn(const std::vector<ToBeSexed>& rows) {
    std::int64_t moults = 0;
    for (const auto& row : rows) moults += row.waiting;
    return moults;
}

/// What the keeper has still to look at.
struct Waiting {
    std::vector<ToBeSexed> toSex;
    std::int64_t differences = 0;
};

}  // namespace

void RoomModel::setDesk(Desk* desk) {
    if (desk_ == desk) return;
    desk_ = desk;
    connect(desk, &Desk::roomChanged, this, &RoomModel::changed);
    connect(desk, &Desk::written, this, &RoomModel::countWhatWaits);
    connect(desk, &Desk::stateChanged, this, &RoomModel::read);
    read();
    emit deskChanged();
}

void RoomModel::read() {
    setCheck(Check::NotYet, {});
    countWhatWaits();
    emit changed();
}

void RoomModel::countWhatWaits() {
    desk_->ask<Waiting>(
        this,
        [tables = desk_->tables(), room = desk_->room()](Book& book) -> Result<Waiting> {
            Waiting waiting;
            if (room) {
                BURROW_TRY(waiting.toSex, toBeSexed(book, tables->sexing, room->profiles()));
            }
            BURROW_TRY(const auto found, burrow::differences(book));
            waiting.differences = static_cast<std::int64_t>(found.size());
            return waiting;
        },
        [this](const Result<Waiting>& waiting) {
            toSex_ = waiting ? moultsIn(waiting->toSex) : 0;
            differences_ = waiting ? waiting->differences : 0;
            emit changed();
        });
}

QString RoomModel::name() const { return desk_ ? desk_->roomName() : QString(); }

QString RoomModel::code() const {
    return desk_ && desk_->room() ? toQt(desk_->room()->info().code) : QString();
}

QString RoomModel::contact() const {
    return desk_ && desk_->room() ? toQt(desk_->room()->info().contact) : QString();
}

QString RoomModel::summary() const {
    if (!desk_ || !desk_->room()) return {};
    std::int64_t kept = 0;
    desk_->room()->forEach(
        [&kept](const StubPtr& stub) { kept += stub->glance().isKept() ? 1 : 0; });
    return desk_->say({"room.summary", {{"count", kept}, {"code", desk_->room()->info().code}}});
}

QString RoomModel::toSex() const {
    if (!desk_) return {};
    return toSex_ == 0 ? desk_->say("sexing.noneWaits")
                       : desk_->say({"sexing.waiting", {{"count", toSex_}}});
}

QString RoomModel::differences() const {
    if (differences_ == 0) return {};
    return desk_->say({"differ.some", {{"count", differences_}}});
}

QString RoomModel::file() const { return desk_ ? toQt(desk_->bookPath().string()) : QString(); }

void RoomModel::clearErrors() {
    nameError_.clear();
    codeError_.clear();
    findTrouble_.clear();
    emit editChanged();
    emit findChanged();
}

void RoomModel::save(const QString& name, const QString& code, const QString& contact) {
    clearErrors();
    const auto newName = name.trimmed();
    const auto newCode = code.trimmed().toUpper();
    nameError_ = roomNameError(newName, *desk_);
    codeError_ = roomCodeError(newCode, *desk_);
    if (!nameError_.isEmpty() || !codeError_.isEmpty()) return emit editChanged();
    FieldValues fields;
    const auto set = [&fields](const char* field, const QString& before, const QString& after) {
        if (before != after) fields[field] = after.toStdString();
    };
    set(setting::room, this->name(), newName);
    set(setting::roomCode, this->code(), newCode);
    set(setting::contact, this->contact(), contact.trimmed());
    if (fields.empty()) return emit saved();
    Deed deed;
    deed.tag = newCode;
    deed.said = {"did.room"};
    deed.compose = [fields](Book& book) -> Result<std::vector<Draft>> {
        return std::vector<Draft>{SetDraft{ThingType::book, book.id().uuid, fields}};
    };
    desk_->act(this, std::move(deed), [this](const Result<ChangeSet>& done) {
        if (done) emit saved();
    });
}

void RoomModel::find(const QString& number) {
    const auto word = number.trimmed().toStdString();
    findTrouble_.clear();
    emit findChanged();
    if (word.empty()) return;
    desk_->ask<std::vector<SubjectId>>(
        this, [word](Book& book) { return subjectsNumbered(book, word); },
        [this, word](const Result<std::vector<SubjectId>>& numbered) {
            if (numbered && numbered->size() == 1) {
                return emit found(toQt(numbered->front().text()));
            }
            findTrouble_ = !numbered ? desk_->say(numbered.error().message)
                                     : desk_->say({numbered->empty() ? "tag.unknown" : "tag.clash",
                                                   {{"tag", word}}});
            emit findChanged();
        });
}

void RoomModel::setCheck(Check check, const QString& text) {
    check_ = check;
    checkText_ = text;
    findings_.clear();
    canRepair_ = false;
    emit checkChanged();
}

void RoomModel::checkBook() {
    if (check_ == Check::UnderWay) return;
    setCheck(Check::UnderWay, {});
    desk_->ask<CheckReport>(
        this, [](Book& book) { return burrow::check(book); },
        [this](const Result<CheckReport>& report) {
            if (!report) return setCheck(Check::Unsound, desk_->say(report.error().message));
            showReport(
                {"said.sound", {{"entries", report->entries}, {"subjects", report->subjects}}},
                report->findings);
        });
}

void RoomModel::showReport(const Message& message, const std::vector<Message>& findings) {
    if (findings.empty()) return setCheck(Check::Sound, desk_->say(message));
    setCheck(Check::Unsound,
             desk_->say({"room.unsound", {{"count", static_cast<std::int64_t>(findings.size())}}}));
    for (const auto& finding : findings) findings_.append(desk_->say(finding));
    canRepair_ = std::all_of(findings.begin(), findings.end(), [](const Message& finding) {
        return finding.id == "check.projection";
    });
    emit checkChanged();
}

void RoomModel::repairBook() {
    if (!canRepair_) return;
    setCheck(Check::UnderWay, {});
    desk_->ask<bool>(
        this,
        [](Book& book) -> Result<bool> {
            BURROW_DO(repair(book));
            return true;
        },
        [this](const Result<bool>& done) {
            if (!done) return setCheck(Check::Unsound, desk_->say(done.error().message));
            check_ = Check::NotYet;
            desk_->refresh();
            checkBook();
        });
}

}  // namespace burrow
