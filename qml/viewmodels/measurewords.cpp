// What the page of a measured photo says.
#include <algorithm>
#include <cmath>

#include "measure/beside.h"
#include "room/mats.h"
#include "room/tables.h"
#include "viewmodels/measuremodel.h"

namespace burrow {
namespace {

struct Source {
    const char* id;
    double deviation;
};

QString lengthWords(double length, const Desk& desk) {
    return desk.say({"fact.millimetres", {{"length", length}}});
}

}  // namespace

QString MeasureModel::tag() const {
    return resident_ ? toQt(resident_->subject().number) : QString();
}
QString MeasureModel::binomial() const { return resident_ ? speciesText(*resident_) : QString(); }
QString MeasureModel::about() const {
    return resident_ ? aboutText(*resident_, *desk_) : QString();
}

QString MeasureModel::title() const {
    return resident_ ? desk_->say({"measuring.title", {{"day", record_.moult->day}}}) : QString();
}

QVariantList MeasureModel::photos() const {
    QVariantList list;
    for (std::size_t i = 0; i < photos_.size(); ++i) {
        const bool isDried = photos_[i].body.dried.value_or(false);
        list.append(QVariantMap{
            {QStringLiteral("word"),
             desk_->say({"measuring.photo", {{"number", static_cast<std::int64_t>(i + 1)}}})},
            {QStringLiteral("sub"),
             desk_->say(isDried ? "measuring.photo.dried" : "measuring.photo.fresh")}});
    }
    return list;
}

Picture MeasureModel::picture() const { return measured_ ? measured_->picture() : Picture(); }

QString MeasureModel::scaleText() const {
    if (!canMeasure()) return {};
    const auto& survey = *measured_->sight().survey;
    if (!survey.mat) return desk_->say("measuring.byTag");
    return desk_->say({"measuring.byMat", {{"name", survey.mat->name}}});
}

QString MeasureModel::unmeasuredMat() const {
    if (!canMeasure() || !desk_->room()) return {};
    const auto& mat = measured_->sight().survey->mat;
    if (!mat) return {};
    const auto known =
        readMat(settingOf(mat->name), desk_->room()->info().other(settingOf(mat->name)));
    if (known && known->bar) return {};
    return (mat->paper == measure::MatPaper::a5 ? QStringLiteral("A5 ") : QStringLiteral("A4 ")) +
           toQt(mat->name);
}

QString MeasureModel::copied() const {
    if (!canMeasure() || !desk_->room()) return {};
    const auto warning = measure::copyWarning(*measured_->sight().survey, print(), rules());
    return warning ? desk_->say(*warning) : QString();
}

QString MeasureModel::hint() const {
    return canMeasure() && !areEndsSet() ? desk_->say("measuring.setEnds") : QString();
}

QVariantList MeasureModel::kinds() const {
    QVariantList list;
    if (!desk_) return list;
    for (const auto& kind : lengthKinds()) {
        const auto id = kindMessage(kind, resident_.get());
        list.append(QVariantMap{{QStringLiteral("word"), desk_->say(Message(id))},
                                {QStringLiteral("sub"), desk_->say(Message(id + ".sub"))}});
    }
    return list;
}

std::string MeasureModel::kindWord() const {
    if (isOfLeg()) return chosenSegment();
    return kinds().at(kind_).toMap().value(QStringLiteral("word")).toString().toStdString();
}

QVariantList MeasureModel::legs() const { return desk_ ? legChoices(*desk_) : QVariantList(); }
QVariantList MeasureModel::segments() const {
    return desk_ ? segmentChoices(*desk_) : QVariantList();
}

QVariantList MeasureModel::heights() const {
    QVariantList list;
    if (!desk_) return list;
    for (const auto& height : rules().heights) {
        list.append(QVariantMap{{QStringLiteral("word"), lengthWords(height.above.value, *desk_)}});
    }
    return list;
}

QString MeasureModel::length() const {
    if (!length_) return {};
    const Millimetres half = 0.5 * (length_->high - length_->low);
    return lengthWords(saidLength(length_->value, half), *desk_);
}

QString MeasureModel::result() const {
    if (!length_) return {};
    const Millimetres half = 0.5 * (length_->high - length_->low);
    return desk_->say({"measuring.result",
                       {{"length", saidLength(length_->value, half)},
                        {"low", saidLength(length_->low, half)},
                        {"high", saidLength(length_->high, half)}}});
}

QVariantList MeasureModel::sources() const {
    QVariantList list;
    if (!length_) return list;
    const auto& from = length_->deviations;
    const bool isByTag = !measured_->sight().survey->mat;
    std::array all{Source{"points", from.points.value}, Source{"plane", from.plane.value},
                   Source{"height", from.height.value},
                   Source{isByTag ? "printOfTag" : "print", from.print.value},
                   Source{"sheet", from.sheet.value}};
    std::stable_sort(all.begin(), all.end(),
                     [](const Source& a, const Source& b) { return a.deviation > b.deviation; });
    for (const auto& source : all) {
        // Of a normal distribution 95 percent lie within 1.96 standard deviations.
        const double half = std::round(1.96 * source.deviation * 100) / 100;
        if (half <= 0) continue;
        const std::string id = "measuring.from." + std::string(source.id);
        list.append(QVariantMap{
            {QStringLiteral("name"), desk_->say(Message(id))},
            {QStringLiteral("value"), desk_->say({"measuring.giveOrTake", {{"length", half}}})},
            {QStringLiteral("sub"), desk_->say(Message(id + ".sub"))}});
    }
    return list;
}

std::vector<growth::Measured> MeasureModel::skins() const {
    return growth::onePerSkin(
        growth::measureHistory(record_.facts, chosen().measure, chosenSegment()));
}

SizeLines MeasureModel::sizes() const {
    return resident_ ? sizeLines(skins(), kindWord(), *desk_) : SizeLines();
}

QVariantList MeasureModel::history() const { return sizes().rows; }
QVariantList MeasureModel::points() const { return sizes().points; }
QVariantList MeasureModel::pointLabels() const { return sizes().labels; }
QString MeasureModel::pointsText() const { return sizes().spoken; }

QString MeasureModel::growth() const {
    if (!length_ || !resident_) return {};
    const auto all = skins();
    const auto earlier = std::find_if(
        all.rbegin(), all.rend(),
        [this](const growth::Measured& each) { return each.day < record_.moult->day; });
    if (earlier == all.rend()) return {};
    const auto grown = length_->value - earlier->size;
    return desk_->say(
        {grown.value < 0 ? "measuring.less" : "measuring.more",
         {{"length", saidLength({std::abs(grown.value)}, {1})}, {"day", earlier->day}}});
}

QString MeasureModel::spanText() const {
    const bool isAsked = length_ && resident_ && record_.sizes &&
                         chosen().measure == growth::Measure::carapace &&
                         !(resident_->profile && isMeasuredByBody(resident_->profile->order));
    if (!isAsked) return {};
    QStringList said;
    for (const auto& message : saidOf(*record_.sizes, length_->value)) said << desk_->say(message);
    return said.join(QLatin1Char(' '));
}

int MeasureModel::nowDay() const { return desk_ ? desk_->today().days : 0; }

}  // namespace burrow
