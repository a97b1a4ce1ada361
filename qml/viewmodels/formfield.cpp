#include "viewmodels/formfield.h"

#include <algorithm>

namespace burrow {

FormField::FormField(Type type, QString name, QString label, QObject* parent)
    : QObject(parent), type_(type), name_(std::move(name)), label_(std::move(label)) {
    if (type_ != Type::Day) return;
    day_ = new DayEntry(this);
    connect(day_, &DayEntry::changed, this, [this] {
        error_ = day_->error();
        emit changed();
        emit edited();
    });
}

template <class Value>
FormField& FormField::put(Value& member, const Value& value) {
    if (member != value) {
        member = value;
        emit changed();
    }
    return *this;
}

QString FormField::text() const {
    if (day_ == nullptr) return text_;
    return day_->day() ? QString::fromStdString(isoDate(*day_->day())) : QString();
}

QVariantList FormField::options() const {
    QVariantList list;
    for (const auto& choice : choices_) {
        list.append(QVariantMap{{QStringLiteral("word"), choice.word},
                                {QStringLiteral("sub"), choice.sub}});
    }
    return list;
}

int FormField::chosen() const {
    const auto found =
        std::find_if(choices_.begin(), choices_.end(),
                     [this](const FieldChoice& choice) { return choice.value == text_; });
    return found == choices_.end() ? -1 : static_cast<int>(found - choices_.begin());
}

int FormField::count() const { return std::clamp(text_.toInt(), least_, std::max(least_, most_)); }

FormField& FormField::setText(const QString& text) { return put(text_, text); }
FormField& FormField::setLabel(const QString& label) { return put(label_, label); }
FormField& FormField::setHint(const QString& hint) { return put(hint_, hint); }
FormField& FormField::setNotice(const QString& notice) { return put(notice_, notice); }
FormField& FormField::setError(const QString& error) { return put(error_, error); }
FormField& FormField::setWanted(bool wanted) { return put(wanted_, wanted); }

FormField& FormField::setChoices(std::vector<FieldChoice> choices) {
    choices_ = std::move(choices);
    emit changed();
    return *this;
}

FormField& FormField::setRange(int least, int most) {
    least_ = least;
    return put(most_, most);
}

FormField& FormField::setSuggestions(const QStringList& suggestions) {
    return put(suggestions_, suggestions);
}

void FormField::setEnclosure(const QString& id, const QString& shown) {
    text_ = id;
    shown_ = shown;
    emit changed();
}

void FormField::take(const QString& text) {
    if (text_ == text && error_.isEmpty()) return;
    text_ = text;
    error_.clear();
    emit changed();
    emit edited();
}

void FormField::enter(const QString& text) { take(text); }

void FormField::choose(int place) {
    if (place < 0 || place >= static_cast<int>(choices_.size())) return;
    take(choices_[static_cast<std::size_t>(place)].value);
}

void FormField::setCount(int count) {
    take(QString::number(std::clamp(count, least_, std::max(least_, most_))));
}

void FormField::turn(bool on) { take(on ? QStringLiteral("yes") : QString()); }

void FormField::pick(const QString& id, const QString& shown) {
    shown_ = shown;
    take(id);
    emit changed();
}

}  // namespace burrow
