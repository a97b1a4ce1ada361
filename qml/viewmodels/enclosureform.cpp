#include "viewmodels/enclosureform.h"

#include "journal/fields.h"

namespace burrow {

void EnclosureForm::setEnclosure(const QString& enclosure) {
    if (enclosure_ == enclosure) return;
    enclosure_ = enclosure;
    readAgain();
}

void EnclosureForm::read() {
    connect(desk_, &Desk::roomChanged, this, &EnclosureForm::residentsChanged,
            Qt::UniqueConnection);
    clearFields();
    const auto id = Uuid::parse(enclosure_.toStdString());
    if (!id) return setShape({}, false, true);
    desk_->ask<std::optional<Enclosure>>(
        this, [home = EnclosureId{*id}](Book& book) { return burrow::enclosure(book, home); },
        [this](const Result<std::optional<Enclosure>>& found) {
            if (!found || !*found) return setShape({}, false, true);
            build(**found);
        });
}

void EnclosureForm::build(const Enclosure& enclosure) {
    clearFields();
    before_ = enclosure;
    home_ = addHomeFields();
    home_.fill(enclosure);
    add(FormField::Type::Text, "note", "animal.note").setText(toQt(enclosure.note));
    setShape(toQt(enclosure.name), true);
    emit residentsChanged();
}

QVariantList EnclosureForm::residents() const {
    QVariantList list;
    if (!desk_ || !desk_->room() || !isReady()) return list;
    for (const auto& resident : desk_->room()->residents()) {
        const auto& subject = resident->subject();
        if (subject.enclosure != before_.id || !subject.isKept()) continue;
        list.append(QVariantMap{{QStringLiteral("subject"), toQt(subject.id.text())},
                                {QStringLiteral("tag"), toQt(subject.number)},
                                {QStringLiteral("binomial"), speciesText(*resident)},
                                {QStringLiteral("punch"), punchFor(*resident)},
                                {QStringLiteral("about"), aboutText(*resident, *desk_)}});
    }
    return list;
}

void EnclosureForm::save() {
    if (!isReady() || isBusy()) return;
    clearErrors();
    auto after = before_;
    after.note = value("note").toStdString();
    if (!home_.read(after, *desk_)) return setError(desk_->say("form.seeFields"));
    Deed deed;
    deed.tag = toQt(after.name);
    deed.said = {"did.changed"};
    deed.compose = [before = before_, after](Book&) -> Result<std::vector<Draft>> {
        const auto changed = changedFields(before, after);
        if (changed.empty()) return std::vector<Draft>();
        return std::vector<Draft>{SetDraft{ThingType::enclosure, after.id.uuid, changed}};
    };
    write(std::move(deed), std::make_shared<QString>(enclosure_));
}

}  // namespace burrow
