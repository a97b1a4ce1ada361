#include "viewmodels/homesmodel.h"

#include <algorithm>
#include <cmath>

#include "husbandry/plain_forecast.h"
#include "room/tables.h"
#include "viewmodels/airwords.h"
#include "viewmodels/factwords.h"

namespace burrow {
namespace {

/// The rows of a plan, group by group.
class Rowing {
public:
    Rowing(const HomesPlan& plan, const Desk& desk) : plan_(plan), desk_(desk) {}

    std::vector<HomesRow> all() {
        addMoves();
        addStaying();
        addAnimals();
        addFree();
        return std::move(rows_);
    }

private:
    [[nodiscard]] QString say(const char* id,
                              std::initializer_list<MessageArgument> arguments = {}) const {
        return desk_.say({id, arguments});
    }
    [[nodiscard]] const std::string& numberOf(std::size_t who) const {
        return plan_.housed[who].resident->subject().number;
    }
    HomesRow rowOf(const char* group, std::size_t who) const {
        const auto& resident = *plan_.housed[who].resident;
        HomesRow row;
        row.subject = toQt(resident.subject().id.text());
        row.key = QString::fromLatin1(group) + row.subject;
        row.tag = toQt(resident.subject().number);
        row.binomial = speciesText(resident);
        return row;
    }
    /// Adds rows as one group under a heading.
    void add(const char* heading, std::vector<HomesRow> rows) {
        if (rows.empty()) return;
        rows.front().heading = say(heading);
        rows.front().count = QString::number(rows.size());
        std::ranges::move(rows, std::back_inserter(rows_));
    }

    void addMoves() {
        std::vector<HomesRow> rows;
        for (std::size_t i = 0; i < plan_.moves.size(); ++i) rows.push_back(moveRow(i));
        add("homespage.moves", std::move(rows));
    }
    HomesRow moveRow(std::size_t place) const {
        const auto& move = plan_.moves[place];
        const bool isIntoSpare = move.kind == homes::StepKind::intoSpare;
        // One animal may have two moves, through a spare tub.
        auto row = rowOf(isIntoSpare ? "tub " : "move ", move.who);
        const MessageArgument number{"number", numberOf(move.who)};
        const MessageArgument to{"to", move.to.name};
        const auto from = move.from ? move.from->name : std::string();
        if (isIntoSpare) {
            row.title = say("homes.move.intoSpare", {number, {"from", from}});
        } else if (from.empty()) {
            row.title = say("homes.move.to", {number, to});
        } else {
            row.title = say("homes.move.fromTo", {number, {"from", from}, to});
        }
        row.lines.append(desk_.say(move.why));
        const auto where = placeText(move.to.place, desk_);
        if (!isIntoSpare && !move.to.place.isEmpty()) row.lines.append(where);
        addGround(row, move);
        for (const auto& caution : move.cautions) row.cautions.append(desk_.say(caution));
        if (isPossible(place)) row.verb = say("homespage.made");
        return row;
    }
    void addGround(HomesRow& row, const PlannedMove& move) const {
        if (!move.ground) return;
        row.lines.append(say("homes.move.ground", {{"least", std::round(move.depth.least.value)},
                                                   {"most", std::round(move.depth.most.value)}}));
        row.lines.append(desk_.say(move.ground->amount));
        for (const auto& part : move.ground->parts) {
            row.lines.append(say(part.bricks > 0 ? "homes.partBricks" : "homes.part",
                                 {{"litres", tenths(part.loose.value)},
                                  {"material", part.material},
                                  {"bricks", std::int64_t{part.bricks}}}));
        }
        if (!move.fit) return;
        for (const auto& finding : move.fit->findings) {
            const bool isOfHeight =
                finding.point == homes::Point::air || finding.point == homes::Point::drop;
            const bool isAmiss = finding.verdict == homes::Verdict::amiss;
            if (isOfHeight || isAmiss) row.lines.append(desk_.say(finding.why));
        }
    }
    /// Whether it can be made before the others: its new home is empty now.
    [[nodiscard]] bool isPossible(std::size_t place) const {
        if (place == 0) return true;
        const auto& move = plan_.moves[place];
        if (move.kind == homes::StepKind::outOfSpare) return false;
        if (move.kind == homes::StepKind::intoSpare) return true;
        return std::ranges::any_of(
            plan_.free, [&](const FreeHome& free) { return free.home.id == move.to.id; });
    }

    void addStaying() {
        std::vector<HomesRow> rows;
        for (const auto& one : plan_.waiting) {
            auto row = rowOf("wait ", one.who);
            row.title = one.waitsFor ? say("homes.waitsFor", {{"number", numberOf(*one.waitsFor)}})
                                     : desk_.say(one.why);
            rows.push_back(std::move(row));
        }
        for (const auto& one : plan_.without) {
            auto row = rowOf("none ", one.who);
            row.title = desk_.say(one.why);
            row.isUrgent = true;
            if (one.least) {
                row.lines.append(say("homes.needs", {{"litres", tenths(one.least->value)}}));
            }
            rows.push_back(std::move(row));
        }
        add("homespage.staying", std::move(rows));
    }

    void addAnimals() {
        std::vector<HomesRow> now;
        std::vector<HomesRow> soon;
        for (std::size_t i = 0; i < plan_.housed.size(); ++i) {
            const auto state = plan_.housed[i].state;
            if (state == HomeState::soon) soon.push_back(animalRow(i));
            const bool isNow = state == HomeState::tooSmall || state == HomeState::ground ||
                               state == HomeState::inSpareTub;
            if (isNow) now.push_back(animalRow(i));
        }
        add("homespage.now", std::move(now));
        add("homespage.soon", std::move(soon));
    }
    HomesRow animalRow(std::size_t who) const {
        const auto& housed = plan_.housed[who];
        auto row = rowOf("fit ", who);
        row.title = desk_.say({"homestate." + std::string(name(housed.state))});
        row.isUrgent = housed.state == HomeState::tooSmall;
        row.lines.append(say("homes.size", {{"size", std::round(housed.dweller->span.value)}}));
        for (const auto& finding : housed.fit.findings) {
            if (finding.verdict == homes::Verdict::amiss) row.lines.append(desk_.say(finding.why));
        }
        if (housed.ground) {
            row.lines.append(
                say("homes.deepen", {{"least", std::ceil(housed.ground->least.value)},
                                     {"most", std::floor(housed.ground->most.value)}}));
        }
        addEstimates(row, housed);
        return row;
    }
    void addEstimates(HomesRow& row, const Housed& housed) const {
        if (!housed.grown || !housed.moult || housed.fitsWhenGrown) return;
        const std::int64_t days = std::max(0, housed.moult->median - desk_.today());
        row.estimates.append(say(days > 0 ? "homes.estimate" : "homes.estimateToday",
                                 {{"size", std::round(housed.grown->span.value)}, {"days", days}}));
        if (housed.outgrown && !housed.outgrown->now) {
            row.estimates.append(desk_.say(housed.outgrown->why));
        }
    }

    void addFree() {
        std::vector<HomesRow> rows;
        for (const auto& free : plan_.free) {
            HomesRow row;
            row.enclosure = toQt(free.home.id.text());
            row.key = "free " + row.enclosure;
            row.title = toQt(free.home.name);
            const double litres = tenths(homes::volume(free.home).value);
            if (free.forWhom) {
                row.lines.append(say("homes.free.for",
                                     {{"volume", litres}, {"number", numberOf(*free.forWhom)}}));
            } else {
                row.lines.append(litres > 0 ? say("homes.free", {{"volume", litres}})
                                            : say("homes.free.unknown"));
            }
            QStringList about{innerSizeText(free.home, desk_)};
            if (!free.home.place.isEmpty()) about.append(placeText(free.home.place, desk_));
            about.removeAll(QString());
            if (!about.isEmpty()) row.lines.append(about.join(QStringLiteral(", ")));
            rows.push_back(std::move(row));
        }
        add("homespage.free", std::move(rows));
    }

    const HomesPlan& plan_;
    const Desk& desk_;
    std::vector<HomesRow> rows_;
};

}  // namespace

void HomesModel::setDesk(Desk* desk) {
    desk_ = desk;
    emit deskChanged();
    connect(desk, &Desk::roomChanged, this, &HomesModel::read);
    read();
}

/// Worked out in the book's thread: a matching of a thousand takes a second.
void HomesModel::read() {
    if (!desk_ || !desk_->room()) return;
    desk_->ask<HomesPlan>(
        this,
        [room = desk_->room(), tables = desk_->tables()](Book& book) -> Result<HomesPlan> {
            BURROW_TRY(const auto all, enclosures(book));
            const PlainForecast forecast;
            return homesPlan(*room, all, tables->homes, forecast);
        },
        [this](Result<HomesPlan> plan) {
            if (plan) show(*std::move(plan));
        });
}

void HomesModel::show(HomesPlan plan) {
    plan_ = std::move(plan);
    isReady_ = true;
    bring(rows_, Rowing(plan_, *desk_).all());
    emit changed();
}

QString HomesModel::summary() const {
    if (!desk_ || !isReady_) return {};
    const bool isStill = plan_.moves.empty() && plan_.waiting.empty();
    return isStill ? desk_->say(plan_.without.empty() ? "homes.none" : "homes.match.none")
                   : desk_->say(plan_.summary);
}

QString HomesModel::unjudged() const {
    if (!desk_ || !isReady_) return {};
    const auto unknown = std::ranges::count(plan_.housed, HomeState::unknown, &Housed::state);
    QStringList parts;
    if (unknown > 0)
        parts.append(desk_->say({"homes.someUnknown", {{"count", std::int64_t{unknown}}}}));
    if (plan_.several > 0) {
        parts.append(desk_->say({"homes.several", {{"count", std::int64_t{plan_.several}}}}));
    }
    return parts.join(QLatin1Char(' '));
}

void HomesModel::made(int row) {
    if (!desk_ || row < 0 || row >= static_cast<int>(rows_.size())) return;
    const auto place = static_cast<std::size_t>(row);  // the moves stand first
    if (place >= plan_.moves.size() || rows_[place].verb.isEmpty()) return;
    const auto& move = plan_.moves[place];
    Deed deed;
    deed.tag = rows_[place].tag;
    deed.said = move.kind == homes::StepKind::intoSpare
                    ? Message{"did.intoSpareTub"}
                    : Message{"did.rehousedInto", {{"name", move.to.name}}};
    deed.compose = [fact = factOf(plan_, move)](Book&) -> Result<std::vector<Draft>> {
        return std::vector<Draft>{fact};
    };
    desk_->act(this, std::move(deed));
}

QVariant HomesModel::data(const QModelIndex& index, int role) const {
    const auto* row = rowAt(rows_, index);
    if (row == nullptr) return {};
    switch (role) {
        case HeadingRole: return row->heading;
        case CountRole: return row->count;
        case TagRole: return row->tag;
        case BinomialRole: return row->binomial;
        case TitleRole: return row->title;
        case LinesRole: return row->lines;
        case EstimatesRole: return row->estimates;
        case CautionsRole: return row->cautions;
        case VerbRole: return row->verb;
        case SubjectRole: return row->subject;
        case EnclosureRole: return row->enclosure;
        case UrgentRole: return row->isUrgent;
        default: return {};
    }
}

QHash<int, QByteArray> HomesModel::roleNames() const {
    return {{HeadingRole, "heading"},     {CountRole, "count"},         {TagRole, "tag"},
            {BinomialRole, "binomial"},   {TitleRole, "title"},         {LinesRole, "lines"},
            {EstimatesRole, "estimates"}, {CautionsRole, "cautions"},   {VerbRole, "verb"},
            {SubjectRole, "subject"},     {EnclosureRole, "enclosure"}, {UrgentRole, "urgent"}};
}

}  // namespace burrow
