#include "viewmodels/numberform.h"

#include <algorithm>

#include "base/text.h"
#include "room/number_words.h"
#include "viewmodels/wording.h"

namespace burrow {
namespace {

/// Whether the same numbers hold, from the same hands.
bool isSame(const NumberRow& a, const NumberRow& b) {
    return std::equal(a.numbers.begin(), a.numbers.end(), b.numbers.begin(), b.numbers.end(),
                      [](const TableNumber& one, const TableNumber& other) {
                          return one.key == other.key && one.value == other.value &&
                                 one.isOwn == other.isOwn;
                      });
}

QString label(const NumberKey& key, const Words& words) {
    auto name = toQt(columnName(key, words));
    if (!name.isEmpty()) name[0] = name[0].toUpper();
    return name;
}

}  // namespace

void NumberForm::setRow(const QString& row) {
    if (row_ == row) return;
    row_ = row;
    readAgain();
}

std::optional<NumberRow> NumberForm::found() const {
    if (!desk_->room()) return std::nullopt;
    for (auto& table : desk_->knowledge().numbers.list(desk_->room()->info())) {
        for (auto& row : table.rows) {
            if (toQt(table.file + '/' + table.table + '/' + row.id) == row_) return std::move(row);
        }
    }
    return std::nullopt;
}

void NumberForm::read() {
    connect(desk_, &Desk::roomChanged, this, &NumberForm::keepUp, Qt::UniqueConnection);
    build();
}

/// What is being typed stays, unless the numbers themselves have changed: by what was saved, by its undo,
/// or from elsewhere.
void NumberForm::keepUp() {
    const auto now = found();
    if (now && shown_ && isSame(*now, *shown_)) return;
    build();
}

void NumberForm::build() {
    clearFields();
    clearErrors();
    table_.clear();
    bound_.clear();
    shown_ = found();
    if (!shown_) return setShape({}, false, true);
    const auto& words = desk_->knowledge().words;
    QStringList bound;
    for (const auto& number : shown_->numbers) {
        if (number.isFixed) {
            bound.append(toQt(columnText(number.key, number.value, words)));
        } else {
            addNumber(number, shown_->source);
        }
    }
    if (!bound.isEmpty()) {
        auto text = bound.join(QStringLiteral(", "));
        text[0] = text[0].toUpper();
        bound_ = desk_->say({"numbers.bound", {{"numbers", text.toStdString()}}});
    }
    const auto& key = shown_->numbers.front().key;
    table_ = toQt(tableHeading(key.file, key.table, words));
    setShape(toQt(rowHeading(shown_->id)), true);
}

void NumberForm::addNumber(const TableNumber& number, const std::string& source) {
    auto& field = add(FormField::Type::Number, toQt(number.key.column),
                      label(number.key, desk_->knowledge().words));
    field.setHint(desk_->say(
        {"numbers.hint", {{"shipped", numberText(number.shipped)}, {"source", source}}}));
    if (number.isOwn) field.setText(toQt(numberText(number.value)));
}

bool NumberForm::isOwn() const {
    return shown_ && std::any_of(shown_->numbers.begin(), shown_->numbers.end(),
                                 [](const TableNumber& number) { return number.isOwn; });
}

NumberForm::Changes NumberForm::typed() {
    Changes changes;
    for (const auto& number : shown_->numbers) {
        if (number.isFixed) continue;
        auto& field = at(number.key.column.c_str());
        const auto text = field.text().trimmed().replace(u',', u'.').toStdString();
        const auto value = parseNumber(text);
        if (!text.empty() && !value) {
            field.setError(desk_->say({"numbers.notANumber", {{"value", field.value()}}}));
        }
        // Where nothing was and nothing is typed, nothing is said: the book may hold for it what only a
        // later version can read.
        if (number.isOwn || !text.empty()) changes.push_back({number.key, value});
    }
    return changes;
}

void NumberForm::showRefusal(const Changes& changes, const Error& why) {
    const auto& numbers = desk_->knowledge().numbers;
    for (const auto& change : changes) {
        const auto alone = numbers.fieldsOf(std::span(&change, 1), desk_->room()->info());
        if (alone || alone.error().message.id != "numbers.range") continue;
        at(change.key.column.c_str()).setError(desk_->say(alone.error().message));
    }
    setError(hasErrors() ? desk_->say("form.seeFields") : desk_->say(why.message));
}

void NumberForm::save() {
    if (!isReady() || isFixed() || isBusy()) return;
    clearErrors();
    const auto changes = typed();
    if (hasErrors()) return setError(desk_->say("form.seeFields"));
    const auto fields = desk_->knowledge().numbers.fieldsOf(changes, desk_->room()->info());
    if (!fields) return showRefusal(changes, fields.error());
    if (fields->empty()) return setError(desk_->say("numbers.same"));
    const auto count = static_cast<std::int64_t>(fields->size());
    writeChanges(changes, {"did.numbersChanged", {{"count", count}}});
}

void NumberForm::shipAgain() {
    if (!isReady() || isBusy() || !isOwn()) return;
    clearErrors();
    Changes changes;
    for (const auto& number : shown_->numbers) {
        if (number.isOwn) changes.push_back({number.key, std::nullopt});
    }
    const auto fields = desk_->knowledge().numbers.fieldsOf(changes, desk_->room()->info());
    if (!fields) return setError(desk_->say(fields.error().message));
    const auto count = static_cast<std::int64_t>(changes.size());
    writeChanges(std::move(changes), {"did.numbersShipped", {{"count", count}}});
}

void NumberForm::writeChanges(Changes changes, Message said) {
    Deed deed;
    deed.tag = toQt(desk_->room()->info().code);
    deed.said = std::move(said);
    // The numbers outlive the desk, and may be read from any thread.
    deed.compose = [changes = std::move(changes), &numbers = desk_->knowledge().numbers](
                       Book& book) -> Result<std::vector<Draft>> {
        BURROW_TRY(const auto info, roomInfo(book));
        BURROW_TRY(const auto fields, numbers.fieldsOf(changes, info));
        std::vector<Draft> drafts;
        if (!fields.empty()) drafts.emplace_back(SetDraft{ThingType::book, book.id().uuid, fields});
        return drafts;
    };
    write(std::move(deed), std::make_shared<const QString>(row_));
}

}  // namespace burrow
