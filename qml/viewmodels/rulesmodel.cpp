#include "viewmodels/rulesmodel.h"

#include <algorithm>

#include "husbandry/rule_table.h"

namespace burrow {
namespace {

std::string groupOf(std::string_view ruleId) {
    return std::string(ruleId.substr(0, ruleId.find('.')));
}

/// In the order of the table: as the planner asks for them.
std::vector<std::string> ruleIds() {
    std::vector<std::string> ids;
    for (const auto& family : ruleFamilies()) {
        if (family.members.empty()) ids.emplace_back(family.id);
        for (const auto member : family.members) {
            ids.push_back(std::string(family.id) + "." + std::string(member));
        }
    }
    return ids;
}

/// A sentence in the place of an id.
void nameRule(Message& message, const std::string& says) {
    for (auto& argument : message.arguments) {
        if (argument.name == "rule") argument.value = "\"" + says.substr(0, says.find('.')) + "\"";
    }
}

}  // namespace

void RulesModel::setDesk(Desk* desk) {
    if (desk_ == desk) return;
    desk_ = desk;
    connect(desk, &Desk::roomChanged, this, &RulesModel::read);
    read();
    emit deskChanged();
}

QString RulesModel::valueWords(const Rule& rule) const {
    const std::string unit(name(rule.unit));
    if (const auto* range = std::get_if<Range<double>>(&rule.value)) {
        return desk_->say({"rule.range." + unit, {{"least", range->least}, {"most", range->most}}});
    }
    if (const auto* number = std::get_if<double>(&rule.value)) {
        return desk_->say({"rule.value." + unit, {{"value", *number}}});
    }
    const auto& word = std::get<std::string>(rule.value);
    return desk_->say({"rule.prey", {{"prey", word}, {"count", 2}}});
}

void RulesModel::read() {
    std::vector<RuleRow> rows;
    std::string group;
    if (desk_->room()) {
        for (const auto& id : ruleIds()) {
            const auto* rule = desk_->room()->rules().find(id);
            RuleRow row{toQt(id),           {},
                        toQt(rule->says),   valueWords(*rule),
                        toQt(rule->source), rule->origin == RuleOrigin::keeper};
            if (group != groupOf(id)) {
                group = groupOf(id);
                row.heading = desk_->say(Message("rule.group." + group));
            }
            rows.push_back(std::move(row));
        }
    }
    bring(rows_, std::move(rows));
    emit summaryChanged();
    emit chosenChanged();
}

QString RulesModel::summary() const {
    if (!desk_) return {};
    const auto own = std::count_if(rows_.begin(), rows_.end(),
                                   [](const RuleRow& row) { return row.fromKeeper; });
    return desk_->say({own > 0 ? "rule.summaryOwn" : "rule.summary",
                       {{"count", static_cast<std::int64_t>(rows_.size())},
                        {"own", static_cast<std::int64_t>(own)}}});
}

void RulesModel::choose(const QString& rule) {
    chosen_ = rule;
    error_.clear();
    emit chosenChanged();
}

void RulesModel::clearError() {
    if (error_.isEmpty()) return;
    error_.clear();
    emit chosenChanged();
}

const Rule* RulesModel::chosenRule() const {
    return desk_ && desk_->room() ? desk_->room()->rules().find(chosen_.toStdString()) : nullptr;
}

const Rule* RulesModel::shippedRule() const {
    return desk_ ? desk_->knowledge().rules.find(chosen_.toStdString()) : nullptr;
}

QString RulesModel::says() const {
    const auto* rule = chosenRule();
    return rule != nullptr ? toQt(rule->says) : QString();
}

QString RulesModel::typed() const {
    const auto* rule = chosenRule();
    return rule != nullptr ? toQt(valueText(rule->value)) : QString();
}

QString RulesModel::hint() const {
    const auto* rule = chosenRule();
    if (rule == nullptr) return {};
    if (std::holds_alternative<std::string>(rule->value)) return desk_->say("rule.hint.prey");
    const bool isRange = std::holds_alternative<Range<double>>(rule->value);
    const auto limits = limitsOf(rule->unit);
    return desk_->say(
        {(isRange ? "rule.hint.range." : "rule.hint.number.") + std::string(name(rule->unit)),
         {{"least", limits.least}, {"most", limits.most}}});
}

QString RulesModel::shipped() const {
    const auto* rule = shippedRule();
    if (rule == nullptr || !desk_->room()) return {};
    return desk_->say(
        {"rule.shipped", {{"value", valueWords(*rule).toStdString()}, {"source", rule->source}}});
}

bool RulesModel::isOwn() const {
    const auto* rule = chosenRule();
    return rule != nullptr && rule->origin == RuleOrigin::keeper;
}

void RulesModel::change(const QString& text) {
    const auto* shipped = shippedRule();
    if (shipped == nullptr) return;
    const std::pair<std::string, std::string> own{shipped->id, text.trimmed().toStdString()};
    const auto changed = desk_->knowledge().rules.with(std::span(&own, 1));
    if (!changed) {
        auto message = changed.error().message;
        nameRule(message, shipped->says);
        error_ = desk_->say(message);
        return emit chosenChanged();
    }
    const bool isAsShipped = changed->find(own.first)->value == shipped->value;
    if (isAsShipped) return reset();
    write(own.second, "did.ruleChanged");
}

void RulesModel::reset() {
    clearError();
    if (!isOwn()) return emit kept();
    write(nullptr, "did.ruleReset");
}

void RulesModel::write(const nlohmann::json& value, const char* said) {
    Deed deed;
    deed.tag = toQt(desk_->room()->info().code);
    deed.said = {said};
    const auto field = std::string(setting::rule) + chosen_.toStdString();
    deed.compose = [field, value](Book& book) -> Result<std::vector<Draft>> {
        return std::vector<Draft>{SetDraft{ThingType::book, book.id().uuid, {{field, value}}}};
    };
    desk_->act(this, std::move(deed), [this](const Result<ChangeSet>& done) {
        error_ = done ? QString() : desk_->say(done.error().message);
        emit chosenChanged();
        if (done) emit kept();
    });
}

QVariant RulesModel::data(const QModelIndex& index, int role) const {
    const auto* row = rowAt(rows_, index);
    if (row == nullptr) return {};
    switch (role) {
        case RuleRole: return row->key;
        case HeadingRole: return row->heading;
        case SaysRole: return row->says;
        case ValueRole: return row->value;
        case SourceRole: return row->source;
        case OwnRole: return row->fromKeeper;
        default: return {};
    }
}

QHash<int, QByteArray> RulesModel::roleNames() const {
    return {{RuleRole, "rule"},   {HeadingRole, "heading"}, {SaysRole, "says"},
            {ValueRole, "value"}, {SourceRole, "source"},   {OwnRole, "own"}};
}

}  // namespace burrow
