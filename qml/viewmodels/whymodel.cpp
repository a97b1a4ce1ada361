#include "viewmodels/whymodel.h"

#include "husbandry/explain.h"
#include "husbandry/plain_forecast.h"
#include "viewmodels/deeds.h"

namespace burrow {

void WhyModel::setDesk(Desk* desk) {
    if (desk_ == desk) return;
    desk_ = desk;
    connect(desk, &Desk::roomChanged, this, &WhyModel::read);
    read();
    emit deskChanged();
}

void WhyModel::setSubject(const QString& subject) {
    if (subject_ == subject) return;
    subject_ = subject;
    read();
}

void WhyModel::setCare(const QString& care) {
    if (care_ == care) return;
    care_ = care;
    if (!care.isEmpty()) open_.insert(care);
    read();
}

void WhyModel::toggle(const QString& care) {
    if (open_.erase(care) == 0) open_.insert(care);
    read();
}

void WhyModel::read() {
    std::vector<WhyRow> rows;
    resident_ = desk_ ? residentOf(*desk_, subject_) : nullptr;
    if (resident_) {
        for (const auto care : careAsShown) rows.push_back(rowFor(care));
    }
    bring(rows_, std::move(rows));
    emit changed();
}

WhyRow WhyModel::rowFor(Care care) const {
    const auto& answer = resident_->plan.of(care);
    WhyRow row;
    row.key = toQt(std::string(burrow::name(care)));
    row.name = careText(care, *desk_);
    row.state = stateText(answer.state, *desk_);
    row.reason = desk_->say(answer.reason);
    row.isDue = answer.state == State::due;
    row.isHeld = answer.state == State::hold;
    if (row.isDue || row.isHeld) row.punch = punchFor(*resident_, answer);
    row.isOpen = open_.contains(row.key);
    if (row.isOpen) addWorking(row, care);
    return row;
}

void WhyModel::addWorking(WhyRow& row, Care care) const {
    const auto& room = *desk_->room();
    const PlainForecast forecasts;
    const auto why = explain(care, resident_->input(), room.rules(), room.day(), forecasts);
    if (why.answer.amount) row.amount = desk_->say(*why.answer.amount);
    if (why.answer.window) row.window = windowText(*why.answer.window, *desk_);
    for (const auto& message : why.working) row.working.append(desk_->say(message));
    for (const auto& rule : why.rules) {
        row.rules.append(QVariantMap{{QStringLiteral("rule"), toQt(rule.id)},
                                     {QStringLiteral("says"), toQt(rule.says)},
                                     {QStringLiteral("value"), ruleValueText(rule, *desk_)},
                                     {QStringLiteral("from"), ruleOriginText(rule, *desk_)},
                                     {QStringLiteral("source"), toQt(rule.source)},
                                     {QStringLiteral("own"), isOwnRule(rule)}});
    }
}

QString WhyModel::tag() const { return resident_ ? toQt(resident_->subject().number) : QString(); }

QString WhyModel::binomial() const { return resident_ ? speciesText(*resident_) : QString(); }

QString WhyModel::about() const { return resident_ ? aboutText(*resident_, *desk_) : QString(); }

QString WhyModel::stage() const {
    const bool isKept = resident_ && resident_->subject().isKept();
    return isKept ? desk_->say(resident_->plan.stage.how) : QString();
}

QVariant WhyModel::data(const QModelIndex& index, int role) const {
    const auto* row = rowAt(rows_, index);
    if (row == nullptr) return {};
    switch (role) {
        case CareRole: return row->key;
        case NameRole: return row->name;
        case StateRole: return row->state;
        case PunchRole: return row->punch;
        case ReasonRole: return row->reason;
        case DueRole: return row->isDue;
        case HeldRole: return row->isHeld;
        case OpenRole: return row->isOpen;
        case AmountRole: return row->amount;
        case WindowRole: return row->window;
        case WorkingRole: return row->working;
        case RulesRole: return row->rules;
        default: return {};
    }
}

QHash<int, QByteArray> WhyModel::roleNames() const {
    return {{CareRole, "care"},     {NameRole, "name"},       {StateRole, "state"},
            {PunchRole, "punch"},   {ReasonRole, "reason"},   {DueRole, "due"},
            {HeldRole, "held"},     {OpenRole, "open"},       {AmountRole, "amount"},
            {WindowRole, "window"}, {WorkingRole, "working"}, {RulesRole, "rules"}};
}

}  // namespace burrow
