#include "viewmodels/preymodel.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "husbandry/plain_forecast.h"
#include "room/tables.h"
#include "viewmodels/wording.h"

namespace burrow {
namespace {

constexpr std::array spansInDays{7, 14, 28};
/// A keeper taps several times in a row.
constexpr int tapsMs = 250;

QString keyOf(const stock::Feeders& feeders, std::size_t band) {
    return toQt(bandKey(feeders.bands()[band]));
}

}  // namespace

PreyModel::PreyModel(QObject* parent) : QObject(parent) {
    later_.setSingleShot(true);
    later_.setInterval(tapsMs);
    connect(&later_, &QTimer::timeout, this, &PreyModel::readOutlook);
}

void PreyModel::setDesk(Desk* desk) {
    if (desk_ == desk) return;
    desk_ = desk;
    connect(desk, &Desk::roomChanged, this, [this] {
        readStock();
        later_.start();
    });
    readStock();
    readOutlook();
    emit deskChanged();
}

const stock::Feeders& PreyModel::feeders() const { return desk_->tables()->feeders; }

QVariantList PreyModel::spans() const {
    QVariantList list;
    if (!desk_) return list;
    for (const auto days : spansInDays) {
        list.append(QVariantMap{{QStringLiteral("word"),
                                 desk_->say({"preyPage.days", {{"days", std::int64_t{days}}}})}});
    }
    return list;
}

void PreyModel::setSpan(int span) {
    if (span == span_ || span < 0 || span >= static_cast<int>(spansInDays.size())) return;
    span_ = span;
    readOutlook();
    emit changed();
}

const StockLine* PreyModel::lineOf(std::size_t band) const {
    const auto found = std::find_if(lines_.begin(), lines_.end(),
                                    [&](const StockLine& line) { return line.band == band; });
    return found == lines_.end() ? nullptr : &*found;
}

int PreyModel::countOf(std::size_t band) const {
    if (const auto found = tapped_.find(band); found != tapped_.end()) return found->second.count;
    const auto* line = lineOf(band);
    return line != nullptr ? static_cast<int>(std::lround(line->count)) : 0;
}

QString PreyModel::sizeName(std::size_t band) const {
    const auto& size = feeders().bands()[band];
    return desk_->say({"preyPage.size", {{"feeder", size.kind}, {"band", size.name}}});
}

void PreyModel::readStock() {
    std::vector<LineRow> rows;
    std::vector<LineRow> others;
    lines_.clear();
    if (desk_ && desk_->room()) {
        lines_ = stockToday(*desk_->room(), feeders());
        for (std::size_t band = 0; band < feeders().bands().size(); ++band) {
            LineRow row;
            row.key = keyOf(feeders(), band);
            row.name = sizeName(band);
            const auto* line = lineOf(band);
            if (line == nullptr && !tapped_.contains(band)) {
                others.push_back(std::move(row));
                continue;
            }
            row.value = QString::number(countOf(band));
            if (line != nullptr) {
                row.estimated = line->counted != desk_->today() || line->used > 0;
                row.sub =
                    desk_->say({line->used >= 0.5 ? "preyPage.countedUsed" : "preyPage.counted",
                                {{"day", line->counted},
                                 {"used", static_cast<std::int64_t>(std::lround(line->used))},
                                 {"length", std::round(line->length.value)}}});
            }
            rows.push_back(std::move(row));
        }
    }
    stock_.show(std::move(rows));
    sizes_.show(std::move(others));
    emit changed();
    emit chosenChanged();
}

void PreyModel::readOutlook() {
    if (!desk_ || !desk_->room()) return;
    const auto days = spansInDays.at(static_cast<std::size_t>(span_));
    desk_->ask<PreyOutlook>(
        this,
        [room = desk_->room(), tables = desk_->tables(), days](Book&) -> Result<PreyOutlook> {
            const PlainForecast forecast;
            return preyOutlook(*room, tables->feeders, days, forecast);
        },
        [this, asked = ++asked_](Result<PreyOutlook> outlook) {
            if (asked != asked_ || !outlook) return;
            outlook_ = *std::move(outlook);
            showOutlook();
        });
}

void PreyModel::showOutlook() {
    std::vector<LineRow> uses;
    for (const auto& use : outlook_->list.uses) {
        LineRow row;
        row.key = toQt(use.kind + "." + use.band);
        row.name = desk_->say({"preyPage.size", {{"feeder", use.kind}, {"band", use.band}}});
        row.value = desk_->say(
            {use.interval.least == use.interval.most ? "preyPage.exactly" : "preyPage.between",
             {{"least", std::int64_t{use.interval.least}},
              {"most", std::int64_t{use.interval.most}}}});
        row.sub =
            desk_->say({use.fromStock >= 0.5 ? "preyPage.useFromStock" : "preyPage.use",
                        {{"mean", std::round(use.mean)}, {"stock", std::round(use.fromStock)}}});
        row.estimated = true;
        uses.push_back(std::move(row));
    }
    uses_.show(std::move(uses));
    std::vector<LineRow> purchases;
    std::optional<CivilDay> day;
    for (const auto& purchase : outlook_->list.purchases) {
        LineRow row;
        row.key = toQt(isoDate(purchase.day) + " " + purchase.kind + "." + purchase.band);
        if (day != purchase.day) {
            day = purchase.day;
            row.heading = desk_->say({"preyPage.buyOn", {{"day", purchase.day}}});
        }
        row.name = desk_->say({"preyPage.purchase",
                               {{"prey", purchase.kind},
                                {"band", purchase.band},
                                {"count", std::int64_t{purchase.enough}}}});
        row.value = purchase.cost
                        ? desk_->say({"preyPage.packs",
                                      {{"packs", std::int64_t{purchase.packs}},
                                       {"cost", costWords(*purchase.cost).toStdString()}}})
                        : desk_->say("preyPage.noPrice");
        row.sub = desk_->say(purchase.why);
        row.estimated = true;
        row.marked = purchase.day == desk_->today();
        purchases.push_back(std::move(row));
    }
    purchases_.show(std::move(purchases));
    emit changed();
}

QString PreyModel::costWords(stock::Cents cost) const {
    const auto text = priceText({{}, {}, 1, cost});
    return toQt(text.substr(0, text.find(' ')));
}

QString PreyModel::summary() const {
    return desk_ && outlook_ ? desk_->say(outlook_->list.summary) : QString();
}

QString PreyModel::outlookText() const {
    if (!desk_ || !outlook_ || outlook_->meals == 0) return {};
    return desk_->say({"preyPage.outlook",
                       {{"meals", std::int64_t{outlook_->meals}},
                        {"animals", std::int64_t{outlook_->eaters}},
                        {"least", std::int64_t{outlook_->interval.least}},
                        {"most", std::int64_t{outlook_->interval.most}}}});
}

QString PreyModel::costText() const {
    if (!desk_ || !outlook_ || outlook_->list.purchases.empty()) return {};
    const auto priced = static_cast<int>(outlook_->list.purchases.size()) - outlook_->list.unpriced;
    if (priced == 0) return desk_->say("preyPage.costUnknown");
    return desk_->say({outlook_->list.unpriced > 0 ? "preyPage.costWithout" : "preyPage.cost",
                       {{"cost", costWords(outlook_->list.cost).toStdString()},
                        {"count", std::int64_t{outlook_->list.unpriced}}}});
}

void PreyModel::write(FieldValues fields, const Message& said, std::function<void(bool)> then) {
    Deed deed;
    deed.said = said;
    deed.compose = [fields = std::move(fields)](Book& book) -> Result<std::vector<Draft>> {
        if (fields.empty()) return std::vector<Draft>();
        return std::vector<Draft>{SetDraft{ThingType::book, book.id().uuid, fields}};
    };
    desk_->act(this, std::move(deed), [then = std::move(then)](const Result<ChangeSet>& done) {
        if (then) then(done.has_value());
    });
}

void PreyModel::step(const QString& size, int by) {
    if (!desk_ || !desk_->room()) return;
    const auto band = bandNamed(size.toStdString(), feeders());
    if (!band) return;
    const int next = std::max(0, countOf(*band) + by);
    auto& tapped = tapped_[*band];
    tapped.count = next;
    ++tapped.underWay;
    readStock();
    write(countedFields(*desk_->room(), feeders(), *band, next),
          {"did.counted", {{"prey", feeders().bands()[*band].kind}, {"count", std::int64_t{next}}}},
          [this, band = *band](bool) {
              if (--tapped_[band].underWay > 0) return;
              tapped_.erase(band);
              readStock();
          });
}

void PreyModel::buy(const QString& purchase) {
    if (!desk_ || !desk_->room() || !outlook_) return;
    for (const auto& each : outlook_->list.purchases) {
        const auto size = each.kind + "." + each.band;
        if (toQt(isoDate(each.day) + " " + size) != purchase) continue;
        const auto band = bandNamed(size, feeders());
        if (!band) return;
        // Whole packs come home, where it is known how large they are.
        int count = each.enough;
        for (const auto& price : larderOf(desk_->room()->info(), feeders()).prices) {
            if (price.kind == each.kind && price.band == each.band) {
                count = each.packs * price.packOf;
            }
        }
        return write(boughtFields(*desk_->room(), feeders(), *band, count),
                     {"did.bought", {{"prey", each.kind}, {"count", std::int64_t{count}}}});
    }
}

void PreyModel::choose(const QString& size) {
    if (!desk_) return;
    chosen_ = bandNamed(size.toStdString(), feeders());
    clearErrors();
    emit chosenChanged();
}

QString PreyModel::chosenName() const { return desk_ && chosen_ ? sizeName(*chosen_) : QString(); }

QString PreyModel::chosenCount() const {
    return isChosenInStock() ? QString::number(countOf(*chosen_)) : QString();
}

QString PreyModel::chosenPrice() const {
    if (!desk_ || !desk_->room() || !chosen_) return {};
    const auto& size = feeders().bands()[*chosen_];
    for (const auto& price : larderOf(desk_->room()->info(), feeders()).prices) {
        if (price.kind == size.kind && price.band == size.name) return toQt(priceText(price));
    }
    return {};
}

bool PreyModel::isChosenInStock() const { return chosen_ && lineOf(*chosen_) != nullptr; }

void PreyModel::clearErrors() {
    if (countError_.isEmpty() && priceError_.isEmpty()) return;
    countError_.clear();
    priceError_.clear();
    emit chosenChanged();
}

void PreyModel::keep(const QString& count, const QString& price) {
    if (!desk_ || !desk_->room() || !chosen_) return;
    clearErrors();
    FieldValues fields;
    if (const auto typed = count.trimmed(); typed != chosenCount()) {
        bool isNumber = false;
        const int number = typed.toInt(&isNumber);
        if (!typed.isEmpty() && (!isNumber || number < 0 || number > 1'000'000)) {
            countError_ = desk_->say({"larder.oddCount", {{"value", typed.toStdString()}}});
        } else {
            fields = countedFields(*desk_->room(), feeders(), *chosen_,
                                   typed.isEmpty() ? std::nullopt : std::optional(number));
        }
    }
    if (const auto typed = price.trimmed(); typed != chosenPrice()) {
        const auto read = readPrice(typed.toStdString());
        if (!typed.isEmpty() && !read) {
            priceError_ = desk_->say({"larder.oddPrice", {{"value", typed.toStdString()}}});
        } else {
            fields.merge(priceFields(feeders(), *chosen_, read));
        }
    }
    if (!countError_.isEmpty() || !priceError_.isEmpty()) return emit chosenChanged();
    if (fields.empty()) return emit kept();
    write(std::move(fields), {"did.larder"}, [this](bool isDone) {
        if (isDone) emit kept();
    });
}

void PreyModel::forget() {
    if (!desk_ || !desk_->room() || !chosen_) return;
    write(countedFields(*desk_->room(), feeders(), *chosen_, std::nullopt), {"did.larder"},
          [this](bool isDone) {
              if (isDone) emit kept();
          });
}

}  // namespace burrow
