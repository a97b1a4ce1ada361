#include "viewmodels/formmodel.h"

#include <algorithm>

namespace burrow {

void FormModel::setDesk(Desk* desk) {
    if (desk_ == desk) return;
    desk_ = desk;
    emit deskChanged();
    readAgain();
}

void FormModel::componentComplete() {
    isComplete_ = true;
    readAgain();
}

void FormModel::readAgain() {
    if (desk_ && isComplete_) read();
}

FormField* FormModel::field(const QString& name) const {
    for (auto* field : fields_) {
        if (field->name() == name) return field;
    }
    return nullptr;
}

FormField& FormModel::add(FormField::Type type, const char* name, const char* labelId) {
    return add(type, QString::fromLatin1(name), desk_->say(labelId));
}

FormField& FormModel::add(FormField::Type type, const QString& name, const QString& label) {
    auto* field = new FormField(type, name, label, this);
    if (auto* day = field->day()) day->prepare(desk_->knowledge().words, desk_->today());
    connect(field, &FormField::edited, this, [this] {
        touched_ = true;
        emit edited();
    });
    fields_.append(field);
    return *field;
}

HomeFields FormModel::addHomeFields() {
    using Type = FormField::Type;
    HomeFields home;
    home.name = &add(Type::Text, "home_name", "form.home.name");
    home.length = &add(Type::Number, "home_length", "form.home.length");
    home.width = &add(Type::Number, "home_width", "form.home.width");
    home.height = &add(Type::Number, "home_height", "form.home.height");
    home.substrate = &add(Type::Number, "home_substrate", "form.home.substrate");
    home.place = &add(Type::Text, "home_place", "form.place");
    home.place->setHint(desk_->say("form.placeHint")).setSuggestions(knownShelves(*desk_));
    return home;
}

void FormModel::setShape(const QString& title, bool ready, bool missing) {
    title_ = title;
    ready_ = ready;
    missing_ = missing;
    emit shapeChanged();
}

void FormModel::clearFields() {
    const auto gone = std::exchange(fields_, {});
    touched_ = false;
    emit shapeChanged();
    for (auto* field : gone) field->deleteLater();
}

void FormModel::clearErrors() {
    for (auto* field : fields_) {
        if (field->day() == nullptr) field->setError({});
    }
    setError({});
}

bool FormModel::hasErrors() const {
    return std::any_of(fields_.begin(), fields_.end(), [](const FormField* field) {
        return field->isWanted() && !field->error().isEmpty();
    });
}

void FormModel::setError(const QString& error) {
    if (error_ == error) return;
    error_ = error;
    emit stateChanged();
}

FormField& FormModel::at(const char* name) const {
    auto* found = field(QString::fromLatin1(name));
    Q_ASSERT(found != nullptr);
    return *found;
}

QString FormModel::value(const char* name) const {
    const auto& entered = at(name);
    return entered.isWanted() ? entered.text().trimmed() : QString();
}

void FormModel::write(Deed deed, std::shared_ptr<const QString> thing) {
    busy_ = true;
    emit stateChanged();
    desk_->act(this, std::move(deed), [this, thing](const Result<ChangeSet>& done) {
        busy_ = false;
        error_ = done ? QString() : desk_->say(done.error().message);
        emit stateChanged();
        if (done) emit saved(*thing);
    });
}

}  // namespace burrow
