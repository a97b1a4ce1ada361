#include "viewmodels/rulepreviewmodel.h"

#include <algorithm>

#include "husbandry/plain_forecast.h"
#include "viewmodels/answerwords.h"

namespace burrow {
namespace {

constexpr int fourWeeks = 28;
/// So few that what is logged meanwhile waits some hundredths of a second at most.
constexpr std::size_t atOnce = 32;

Preview previewOf(const Room& room, const Rules& after, std::size_t from, std::size_t to) {
    std::vector<PlanInput> inputs;
    for (auto at = from; at < to; ++at) inputs.push_back(room.residents()[at]->input());
    const PlainForecast forecasts;
    return previewRules(inputs, room.rules(), after, room.day(), fourWeeks, forecasts);
}

/// Whom a value of that key is for, as far as it is known: of an animal all of it.
std::vector<Rule> layersFor(const RuleKey& key, const Rules& rules, const Desk& desk) {
    const Place place = key.scope == RuleScope::place ? Place::parse(key.of) : Place{};
    const auto* profile = key.scope == RuleScope::species ? desk.profiles().find(key.of) : nullptr;
    if (key.scope == RuleScope::animal) {
        const auto id = Uuid::parse(key.of);
        const auto resident = id ? desk.room()->find(SubjectId{*id}) : nullptr;
        if (resident) return rules.layers(key.rule, resident->input().ruleSubject());
    }
    const std::string species = key.scope == RuleScope::species ? key.of : std::string();
    return rules.layers(key.rule, {SubjectId{}, species, place, profile});
}

}  // namespace

void RulePreviewModel::setDesk(Desk* desk) {
    if (desk_ == desk) return;
    desk_ = desk;
    // What was written elsewhere meanwhile may change what is shown; the own change ends the showing.
    connect(desk, &Desk::roomChanged, this, [this] {
        if (!busy_) start();
    });
    start();
}

void RulePreviewModel::setKey(const QString& key) {
    key_ = key;
    hasKey_ = true;
    start();
}

void RulePreviewModel::setValue(const QString& value) {
    value_ = value;
    hasValue_ = true;
    start();
}

std::optional<RuleChange> RulePreviewModel::wanted() const {
    const auto key = RuleKey::parse(key_.toStdString());
    if (!key || !desk_ || !desk_->room() || desk_->room()->rules().find(key->rule) == nullptr) {
        return std::nullopt;
    }
    return RuleChange{*key, value_.toStdString()};
}

void RulePreviewModel::start() {
    if (!hasKey_ || !hasValue_ || !desk_) return;
    ++serial_;
    at_ = 0;
    sum_ = {};
    trouble_.clear();
    bring(rows_, {});
    const auto change = wanted();
    working_ = change.has_value();
    if (change) {
        room_ = desk_->room();
        after_ = rulesAfter(*change, room_->info(), desk_->knowledge().rules);
        changeText_ = changeOf(*change);
        step();
    }
    emit changed();
}

/// Looks at the next few; the rest afterwards.
void RulePreviewModel::step() {
    const auto from = at_;
    const auto to = std::min(room_->residents().size(), from + atOnce);
    if (from == to) {
        working_ = false;
        return emit changed();
    }
    desk_->ask<Preview>(
        this,
        [room = room_, after = *after_, from, to](Book&) -> Result<Preview> {
            return previewOf(*room, after, from, to);
        },
        [this, serial = serial_, from, to](const Result<Preview>& part) {
            if (serial != serial_) return;
            if (!part) {
                working_ = false;
                trouble_ = desk_->say(part.error().message);
                return emit changed();
            }
            at_ = to;
            take(*part, from);
            step();
        });
}

void RulePreviewModel::take(const Preview& part, std::size_t from) {
    sum_.concerned += part.concerned;
    sum_.changed += part.changed;
    for (std::size_t care = 0; care < allCare.size(); ++care) {
        sum_.timesBefore[care] += part.timesBefore[care];
        sum_.timesAfter[care] += part.timesAfter[care];
    }
    std::vector<RulePreviewRow> rows;
    for (const auto& line : part.lines) {
        const auto& resident = *room_->residents()[from + line.input];
        const auto id = toQt(resident.subject().id.text());
        if (rows.empty() || rows.back().key != id) {
            rows.push_back({id, toQt(resident.subject().number), speciesText(resident), {}});
        }
        auto& says = rows.back().says;
        if (!says.isEmpty()) says += '\n';
        says += desk_->say(line.says());
    }
    if (!rows.empty()) {
        const int first = count();
        beginInsertRows({}, first, first + static_cast<int>(rows.size()) - 1);
        rows_.insert(rows_.end(), rows.begin(), rows.end());
        endInsertRows();
    }
    emit changed();
}

QString RulePreviewModel::changeOf(const RuleChange& change) const {
    const auto before = layersFor(change.key, room_->rules(), *desk_);
    const auto after = layersFor(change.key, *after_, *desk_);
    const auto text = [this](const Rule& rule) {
        return ruleValueText(rule, *desk_).toStdString();
    };
    const auto from = [this](const Rule& rule) {
        return ruleOriginText(rule, *desk_).toStdString();
    };
    // A narrower value of the keeper's may hold instead: for whom it does, the lines below tell.
    return desk_->say({"rulePreview.change",
                       {{"after", text(after.front())},
                        {"afterFrom", from(after.front())},
                        {"before", text(before.front())},
                        {"beforeFrom", from(before.front())}}});
}

QString RulePreviewModel::says() const {
    const auto change = wanted();
    return change ? toQt(desk_->room()->rules().find(change->key.rule)->says) : QString();
}

QString RulePreviewModel::summary() const {
    if (!room_ || !desk_) return {};
    if (working_) {
        return desk_->say({"rulePreview.working",
                           {{"done", static_cast<std::int64_t>(at_)},
                            {"all", static_cast<std::int64_t>(room_->residents().size())}}});
    }
    if (sum_.concerned == 0) return desk_->say("rulePreview.nobody");
    if (sum_.changed == 0) {
        return desk_->say({"rulePreview.nothing", {{"concerned", std::int64_t{sum_.concerned}}}});
    }
    return desk_->say(
        {"rulePreview.summary",
         {{"concerned", std::int64_t{sum_.concerned}}, {"changed", std::int64_t{sum_.changed}}}});
}

QVariantList RulePreviewModel::totals() const {
    QVariantList list;
    if (working_ || !desk_) return list;
    for (const auto care : careAsShown) {
        const auto at = static_cast<std::size_t>(care);
        const std::int64_t before = sum_.timesBefore[at];
        const std::int64_t after = sum_.timesAfter[at];
        if (before == 0 && after == 0) continue;
        list.append(
            QVariantMap{{QStringLiteral("name"), careText(care, *desk_)},
                        {QStringLiteral("value"),
                         desk_->say({before == after ? "rulePreview.asBefore" : "rulePreview.times",
                                     {{"before", before}, {"after", after}}})}});
    }
    return list;
}

void RulePreviewModel::save() {
    const auto change = wanted();
    if (!change || busy_) return;
    busy_ = true;
    emit changed();
    desk_->act(this, deedOf(*change, *desk_->room()), [this](const Result<ChangeSet>& done) {
        busy_ = false;
        trouble_ = done ? QString() : desk_->say(done.error().message);
        emit changed();
        if (done) emit kept();
    });
}

QVariant RulePreviewModel::data(const QModelIndex& index, int role) const {
    const auto* row = rowAt(rows_, index);
    if (row == nullptr) return {};
    switch (role) {
        case SubjectRole: return row->key;
        case TagRole: return row->tag;
        case BinomialRole: return row->binomial;
        case SaysRole: return row->says;
        default: return {};
    }
}

QHash<int, QByteArray> RulePreviewModel::roleNames() const {
    return {
        {SubjectRole, "subject"}, {TagRole, "tag"}, {BinomialRole, "binomial"}, {SaysRole, "says"}};
}

}  // namespace burrow
