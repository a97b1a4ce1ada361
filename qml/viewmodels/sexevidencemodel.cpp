#include "viewmodels/sexevidencemodel.h"

#include "room/sex_words.h"
#include "room/tables.h"
#include "viewmodels/sexwords.h"

namespace burrow {
namespace {

QVariantMap lineOf(const sexing::Factor& line, const Desk& desk) {
    const auto& seen = line.seen;
    auto head = desk.say({"fact.day", {{"day", seen.day}}});
    if (!seen.judge.empty()) {
        head += QStringLiteral(". ") + desk.say({"sexing.byJudge", {{"judge", seen.judge}}});
    }
    return {
        {QStringLiteral("day"), desk.say({"fact.day", {{"day", seen.day}}})},
        {QStringLiteral("head"), head},
        {QStringLiteral("text"), desk.say(line.why)},
        {QStringLiteral("counted"), desk.say(line.counted)},
        {QStringLiteral("judge"),
         seen.judge.empty() ? QString() : desk.say({"sexing.byJudge", {{"judge", seen.judge}}})},
        {QStringLiteral("source"),
         line.source.empty() ? QString() : desk.say({"sexing.source", {{"source", line.source}}})},
        {QStringLiteral("before"), line.before},
        {QStringLiteral("after"), line.after},
        {QStringLiteral("counts"), line.weight > 0},
        {QStringLiteral("corrected"), line.part == sexing::Part::corrected}};
}

}  // namespace

void SexEvidenceModel::setDesk(Desk* desk) {
    if (desk_ == desk) return;
    desk_ = desk;
    connect(desk, &Desk::written, this, &SexEvidenceModel::read);
    read();
    emit givenChanged();
}

void SexEvidenceModel::setSubject(const QString& subject) {
    if (subject_ == subject) return;
    subject_ = subject;
    read();
    emit givenChanged();
}

void SexEvidenceModel::read() {
    const auto id = Uuid::parse(subject_.toStdString());
    if (!desk_ || !desk_->room() || !id) return;
    desk_->ask<std::optional<SexCase>>(
        this,
        [id = SubjectId{*id}, tables = desk_->tables(), room = desk_->room()](Book& book) {
            return sexCase(book, id, tables->sexing, room->profiles());
        },
        [this, id = SubjectId{*id}](const Result<std::optional<SexCase>>& found) {
            case_ = found ? *found : std::nullopt;
            resident_ = desk_->room() ? desk_->room()->find(id) : nullptr;
            emit changed();
        });
}

QString SexEvidenceModel::tag() const {
    return resident_ ? toQt(resident_->subject().number) : QString();
}

QString SexEvidenceModel::binomial() const {
    return resident_ ? speciesText(*resident_) : QString();
}

QString SexEvidenceModel::about() const {
    return resident_ ? aboutText(*resident_, *desk_) : QString();
}

QString SexEvidenceModel::verdict() const {
    return case_ ? desk_->say(verdictMessage(case_->finding)) : QString();
}

QString SexEvidenceModel::chance() const {
    return case_ ? desk_->say(chanceMessage(case_->finding.female)) : QString();
}

QStringList SexEvidenceModel::stops() const { return desk_ ? clarityWords(*desk_) : QStringList(); }

int SexEvidenceModel::stop() const {
    return case_ && case_->finding.stop ? static_cast<int>(*case_->finding.stop) : -1;
}

QVariantList SexEvidenceModel::ledger() const {
    QVariantList list;
    if (!case_) return list;
    for (const auto& line : case_->finding.ledger) list.append(lineOf(line, *desk_));
    return list;
}

QStringList SexEvidenceModel::conflicts() const {
    QStringList list;
    if (!case_) return list;
    for (const auto& conflict : case_->finding.conflicts) list.append(desk_->say(conflict.why));
    return list;
}

QVariantList SexEvidenceModel::wouldSettle() const {
    QVariantList list;
    if (!case_) return list;
    for (const auto& what : case_->finding.wouldSettle) {
        const bool hasRange = what.ifFemale && what.ifMale;
        list.append(QVariantMap{
            {QStringLiteral("text"), desk_->say(what.why)},
            {QStringLiteral("range"), hasRange ? desk_->say(rangeMessage(what)) : QString()},
            {QStringLiteral("moult"), what.moult ? toQt(what.moult->text()) : QString()}});
    }
    return list;
}

QString SexEvidenceModel::note() const {
    if (!case_) return {};
    return desk_->say(case_->finding.ledger.empty() ? "sexing.noEvidence" : "sexing.ruleOfThumb");
}

bool SexEvidenceModel::canWrite() const {
    return isReady() && case_->finding.isSettled() &&
           case_->kept.subject.sex != case_->finding.verdict;
}

QString SexEvidenceModel::writeText() const {
    if (!canWrite()) return {};
    return desk_->say(Message("sexing.write." + std::string(name(case_->finding.verdict))));
}

QString SexEvidenceModel::askable() const {
    return case_ && !case_->moults.empty() ? toQt(case_->moults.front().moult.text()) : QString();
}

void SexEvidenceModel::write() {
    if (busy_ || !canWrite()) return;
    const std::string sex(name(case_->finding.verdict));
    Deed deed;
    deed.tag = tag();
    deed.said = {"did.sexSettled." + sex};
    deed.compose = [id = case_->kept.subject.id, sex](Book&) -> Result<std::vector<Draft>> {
        return std::vector<Draft>{SetDraft{ThingType::subject, id.uuid, {{"sex", sex}}}};
    };
    busy_ = true;
    emit changed();
    desk_->act(this, std::move(deed), [this](const Result<ChangeSet>&) {
        busy_ = false;
        emit changed();
    });
}

}  // namespace burrow
