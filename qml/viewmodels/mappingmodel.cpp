#include "viewmodels/mappingmodel.h"

#include <algorithm>
#include <array>

#include "viewmodels/files.h"
#include "viewmodels/wording.h"

namespace burrow {
namespace {

using exchange::ColumnMapping;
using exchange::CsvKind;
using exchange::DateOrder;
using exchange::LengthUnit;
using exchange::MapQuestion;
using exchange::MapTarget;
using Type = MapTarget::Type;
using Kind = MapQuestion::Kind;

constexpr std::array kindsOfLists{CsvKind::animals, CsvKind::enclosures, CsvKind::events};
constexpr std::array dateOrders{DateOrder::dayFirst, DateOrder::monthFirst, DateOrder::iso};
constexpr std::array lengthUnits{LengthUnit::mm, LengthUnit::cm, LengthUnit::inch};
/// More than that nobody answers one by one; they are kept as they are.
constexpr std::size_t mostListed = 40;

// What is offered besides the targets of the list.
const std::string inNote = "";
const std::string leftOut = "-";

// Answers that are none of a question's own choices.
const std::string asItIs = "=";
const std::string numberThem = "#";

QVariantMap option(const QString& word, const QString& sub = {}) {
    return {{QStringLiteral("word"), word}, {QStringLiteral("sub"), sub}};
}

/// What may be chosen for a column, in the order of the list that is shown.
std::vector<std::string> targetNames(CsvKind kind) {
    std::vector<std::string> names;
    for (const auto& target : exchange::mapTargets(kind)) names.emplace_back(target.name);
    names.push_back(inNote);
    names.push_back(leftOut);
    return names;
}

bool holdsDates(const MapTarget* target) {
    return target != nullptr && (target->type == Type::day || target->type == Type::moment);
}
bool holdsLengths(const MapTarget* target) {
    return target != nullptr && target->type == Type::length;
}

/// A term of the tables as people read it.
QString termText(const std::string& term) {
    return toQt(term).replace(QLatin1Char('_'), QLatin1Char(' '));
}

}  // namespace

void MappingModel::setBring(BringModel* bring) {
    bring_ = bring;
    readIfGiven();
}

void MappingModel::setFile(int file) {
    file_ = file;
    readIfGiven();
}

void MappingModel::readIfGiven() {
    emit givenChanged();
    const auto* chosen = bring_ ? bring_->chosen(file_) : nullptr;
    if (chosen == nullptr || !chosen->mapping) return;
    csv_ = chosen->csv;
    mapping_ = *chosen->mapping;
    review();
}

void MappingModel::review() {
    review_ = exchange::reviewMapping(mapping_, csv_->sheet, profiles());
    emit changed();
}

QString MappingModel::name() const {
    return csv_ ? toQt(csv_->path.filename().string()) : QString();
}

QString MappingModel::summary() const {
    if (!csv_) return {};
    const auto open = std::count_if(review_.questions.begin(), review_.questions.end(),
                                    [](const MapQuestion& question) { return question.isOpen; });
    if (open > 0) return desk().say({"mapping.open", {{"count", std::int64_t{open}}}});
    const auto left = static_cast<std::int64_t>(review_.questions.size());
    if (left > 0) return desk().say({"mapping.mayAnswer", {{"count", left}}});
    return desk().say("mapping.nothingOpen");
}

QVariantList MappingModel::kinds() const {
    QVariantList list;
    if (!csv_) return list;
    for (const auto kind : kindsOfLists) {
        list.append(option(desk().say(Message("bring.kind." + std::string(exchange::name(kind))))));
    }
    return list;
}

int MappingModel::kind() const {
    const auto found = std::find(kindsOfLists.begin(), kindsOfLists.end(), mapping_.kind);
    return static_cast<int>(found - kindsOfLists.begin());
}

void MappingModel::chooseKind(int kind) {
    if (!csv_ || kind < 0 || kind >= static_cast<int>(kindsOfLists.size())) return;
    const auto chosen = kindsOfLists.at(static_cast<std::size_t>(kind));
    if (chosen == mapping_.kind) return;
    mapping_ = exchange::proposeMapping(csv_->sheet, chosen, profiles(), desk().today());
    review();
}

// --- questions -----------------------------------------------------------------------------------

std::vector<std::string> MappingModel::choicesOf(const MapQuestion& question) const {
    auto choices = question.choices;
    if (question.kind == Kind::species) choices.push_back(asItIs);
    if (question.kind == Kind::missing) {
        const bool isCode = question.value == "code" && mapping_.kind == CsvKind::animals;
        if (isCode) choices.push_back(numberThem);
        for (const auto& column : mapping_.columns) {
            if (!column.column.empty()) choices.push_back(column.column);
        }
    }
    return choices;
}

QVariantMap MappingModel::optionFor(const MapQuestion& question, const std::string& choice) const {
    if (choice == asItIs) return option(desk().say("mapping.asItIs"));
    if (choice == numberThem) return option(desk().say("mapping.numberThem"));
    switch (question.kind) {
        case Kind::dateOrder:
        case Kind::unit:
            return option(desk().say(Message("mapping.as." + choice)),
                          desk().say(Message("mapping.as." + choice + ".sub")));
        case Kind::event:
        case Kind::word: return option(termText(choice));
        case Kind::missing:
        case Kind::species:
        case Kind::twice: break;
    }
    return option(toQt(choice));
}

QVariantList MappingModel::questions() const {
    QVariantList list;
    for (const auto& question : review_.questions) {
        if (static_cast<std::size_t>(list.size()) == mostListed) break;
        QVariantList options;
        for (const auto& choice : choicesOf(question)) {
            options.append(optionFor(question, choice));
        }
        // A column goes by its name here, not by the name of the table's.
        auto text = question.text;
        if (question.kind == Kind::missing) {
            text = {text.id,
                    {{"value", desk().say(Message("map.to." + question.value)).toStdString()}}};
        }
        list.append(QVariantMap{{QStringLiteral("text"), desk().say(text)},
                                {QStringLiteral("open"), question.isOpen},
                                {QStringLiteral("options"), options}});
    }
    return list;
}

QString MappingModel::moreQuestions() const {
    if (review_.questions.size() <= mostListed) return {};
    const auto more = static_cast<std::int64_t>(review_.questions.size() - mostListed);
    return desk().say({"bring.moreBad", {{"count", more}}});
}

void MappingModel::answer(int question, int choice) {
    if (question < 0 || question >= static_cast<int>(review_.questions.size())) return;
    const auto asked = review_.questions[static_cast<std::size_t>(question)];
    const auto choices = choicesOf(asked);
    if (choice < 0 || choice >= static_cast<int>(choices.size())) return;
    const auto chosen = choices[static_cast<std::size_t>(choice)];
    switch (asked.kind) {
        case Kind::dateOrder:
            for (const auto order : dateOrders) {
                if (exchange::name(order) == chosen) mapping_.columns[*asked.column].date = order;
            }
            break;
        case Kind::unit:
            for (const auto unit : lengthUnits) {
                if (exchange::name(unit) == chosen) mapping_.columns[*asked.column].unit = unit;
            }
            break;
        case Kind::event: mapping_.event = chosen; break;
        case Kind::word:
            mapping_.words[mapping_.columns[*asked.column].target][asked.value] = chosen;
            break;
        case Kind::species:
            mapping_.species[asked.value] = chosen == asItIs ? asked.value : chosen;
            break;
        case Kind::missing:
            if (chosen == numberThem) {
                mapping_.numberFrom = 1;
                break;
            }
            for (auto& each : mapping_.columns) {
                if (each.column != chosen) continue;
                setTarget(each, asked.value);
                break;
            }
            break;
        case Kind::twice: break;
    }
    review();
}

// --- columns -------------------------------------------------------------------------------------

QString MappingModel::targetWord(const ColumnMapping& column) const {
    if (column.isLeftOut) return desk().say("mapping.leftOut");
    if (column.target.empty()) return desk().say("mapping.inNote");
    return desk().say(Message("map.to." + column.target));
}

QVariantList MappingModel::columns() const {
    QVariantList list;
    for (std::size_t i = 0; i < mapping_.columns.size(); ++i) {
        const auto& column = mapping_.columns[i];
        const auto& preview = review_.columns[i];
        const auto* target = exchange::findTarget(mapping_.kind, column.target);
        QStringList samples;
        for (const auto& sample : preview.samples) {
            const bool isSame = sample.becomes == sample.written || sample.becomes.empty();
            samples.append(isSame ? toQt(sample.written)
                                  : toQt(sample.written + " \u2192 " + sample.becomes));
        }
        const bool showsDates = holdsDates(target) && column.date && !column.isLeftOut;
        const bool showsUnit = holdsLengths(target) && column.unit && !column.isLeftOut;
        list.append(QVariantMap{
            {QStringLiteral("name"),
             column.column.empty() ? desk().say("mapping.noName") : toQt(column.column)},
            {QStringLiteral("target"), targetWord(column)},
            {QStringLiteral("samples"), samples.join(QStringLiteral(", "))},
            {QStringLiteral("trouble"),
             preview.unread > 0 && !column.isLeftOut
                 ? desk().say({"mapping.unread", {{"count", preview.unread}}})
                 : QString()},
            {QStringLiteral("dates"),
             showsDates
                 ? desk().say(Message("mapping.as." + std::string(exchange::name(*column.date))))
                 : QString()},
            {QStringLiteral("unit"),
             showsUnit
                 ? desk().say(Message("mapping.as." + std::string(exchange::name(*column.unit))))
                 : QString()}});
    }
    return list;
}

QVariantList MappingModel::targets() const {
    QVariantList list;
    if (!csv_) return list;
    for (const auto& target : targetNames(mapping_.kind)) {
        ColumnMapping column{{}, target == leftOut ? inNote : target};
        column.isLeftOut = target == leftOut;
        list.append(option(targetWord(column)));
    }
    return list;
}

QVariantList MappingModel::orders() const {
    QVariantList list;
    if (!csv_) return list;
    for (const auto order : dateOrders) {
        const auto id = "mapping.as." + std::string(exchange::name(order));
        list.append(option(desk().say(Message(id)), desk().say(Message(id + ".sub"))));
    }
    return list;
}

QVariantList MappingModel::units() const {
    QVariantList list;
    if (!csv_) return list;
    for (const auto unit : lengthUnits) {
        const auto id = "mapping.as." + std::string(exchange::name(unit));
        list.append(option(desk().say(Message(id)), desk().say(Message(id + ".sub"))));
    }
    return list;
}

ColumnMapping* MappingModel::column(int at) {
    if (at < 0 || at >= static_cast<int>(mapping_.columns.size())) return nullptr;
    return &mapping_.columns[static_cast<std::size_t>(at)];
}

void MappingModel::setTarget(ColumnMapping& column, const std::string& target) {
    const auto at = static_cast<std::size_t>(&column - mapping_.columns.data());
    column.isLeftOut = target == leftOut;
    column.target = column.isLeftOut ? inNote : target;
    exchange::completeColumn(mapping_, csv_->sheet, at, desk().today());
}

void MappingModel::chooseTarget(int at, int target) {
    const auto names = targetNames(mapping_.kind);
    auto* chosen = column(at);
    if (chosen == nullptr || target < 0 || target >= static_cast<int>(names.size())) return;
    setTarget(*chosen, names[static_cast<std::size_t>(target)]);
    review();
}

void MappingModel::chooseOrder(int at, int order) {
    auto* chosen = column(at);
    if (chosen == nullptr || order < 0 || order >= static_cast<int>(dateOrders.size())) return;
    chosen->date = dateOrders.at(static_cast<std::size_t>(order));
    review();
}

void MappingModel::chooseUnit(int at, int unit) {
    auto* chosen = column(at);
    if (chosen == nullptr || unit < 0 || unit >= static_cast<int>(lengthUnits.size())) return;
    chosen->unit = lengthUnits.at(static_cast<std::size_t>(unit));
    review();
}

void MappingModel::finish() {
    if (bring_ && csv_) bring_->setMapping(file_, mapping_);
}

void MappingModel::saveTo(const QUrl& folder) {
    savedText_.clear();
    trouble_.clear();
    const auto place = pathOf(folder);
    if (!place) {
        trouble_ = desk().say(place.error().message);
        return emit savedChanged();
    }
    DeviceFiles files;
    const auto path =
        freePath(*place, fileStem(csv_->path.stem().string(), "list") + ".map", ".json");
    const auto written = files.write(path, bytesOf(exchange::mappingToJson(mapping_)));
    if (written) {
        savedText_ = desk().say({"sheet.saved",
                                 {{"file", path.filename().string()},
                                  {"folder", path.parent_path().filename().string()}}});
    } else {
        trouble_ = desk().say(written.error().message);
    }
    emit savedChanged();
}

}  // namespace burrow
