#include "viewmodels/rulesmodel.h"

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

}  // namespace

void RulesModel::setDesk(Desk* desk) {
    if (desk_ == desk) return;
    desk_ = desk;
    connect(desk, &Desk::roomChanged, this, &RulesModel::read);
    read();
    emit deskChanged();
}

void RulesModel::read() {
    std::vector<RuleRow> rows;
    std::string group;
    own_ = 0;
    if (desk_->room()) {
        const auto& rules = desk_->room()->rules();
        const auto own = rules.ownRules();
        own_ = static_cast<int>(own.size());
        for (const auto& id : ruleIds()) {
            const auto& rule = *rules.find(id);
            RuleRow row{.key = toQt(id),
                        .heading = {},
                        .says = toQt(rule.says),
                        .value = ruleValueText(rule, *desk_),
                        .from = ruleOriginText(rule, *desk_),
                        .source = isOwnRule(rule) ? QString() : toQt(rule.source),
                        .also = alsoFor(id, own),
                        .fromKeeper = isOwnRule(rule)};
            row.fromKeeper |= !row.also.isEmpty();
            if (group != groupOf(id)) {
                group = groupOf(id);
                row.heading = desk_->say(Message("rule.group." + group));
            }
            rows.push_back(std::move(row));
        }
    }
    bring(rows_, std::move(rows));
    emit summaryChanged();
}

QString RulesModel::alsoFor(const std::string& id, const std::vector<Rule>& own) const {
    QStringList lines;
    for (const auto& rule : own) {
        if (rule.id != id || rule.origin == RuleOrigin::keeper) continue;
        lines.append(desk_->say({"rules.also",
                                 {{"value", ruleValueText(rule, *desk_).toStdString()},
                                  {"from", ruleOriginText(rule, *desk_).toStdString()}}}));
    }
    return lines.join(QChar::LineFeed);
}

QString RulesModel::summary() const {
    if (!desk_) return {};
    return desk_->say(
        {own_ > 0 ? "rule.summaryOwn" : "rule.summary",
         {{"count", static_cast<std::int64_t>(rows_.size())}, {"own", std::int64_t{own_}}}});
}

QVariant RulesModel::data(const QModelIndex& index, int role) const {
    const auto* row = rowAt(rows_, index);
    if (row == nullptr) return {};
    switch (role) {
        case RuleRole: return row->key;
        case HeadingRole: return row->heading;
        case SaysRole: return row->says;
        case ValueRole: return row->value;
        case FromRole: return row->from;
        case SourceRole: return row->source;
        case AlsoRole: return row->also;
        case OwnRole: return row->fromKeeper;
        default: return {};
    }
}

QHash<int, QByteArray> RulesModel::roleNames() const {
    return {{RuleRole, "rule"}, {HeadingRole, "heading"}, {SaysRole, "says"}, {ValueRole, "value"},
            {FromRole, "from"}, {SourceRole, "source"},   {AlsoRole, "also"}, {OwnRole, "own"}};
}

}  // namespace burrow
