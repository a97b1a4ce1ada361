#include "viewmodels/profilemodel.h"

#include "documents/cautions.h"

namespace burrow {

void ProfileModel::setDesk(Desk* desk) {
    desk_ = desk;
    emit changed();
}

void ProfileModel::setSpecies(const QString& species) {
    species_ = species;
    emit changed();
}

const Profile* ProfileModel::profile() const {
    return desk_ ? desk_->profiles().find(species_.toStdString()) : nullptr;
}

QString ProfileModel::name() const { return isMissing() ? species_ : toQt(profile()->name); }

QString ProfileModel::kind() const {
    return isMissing() ? QString() : kindText(*profile(), *desk_);
}

QVariantList ProfileModel::cautions() const {
    QVariantList list;
    if (isMissing()) return list;
    const auto& words = desk_->knowledge().words;
    for (const auto caution : burrow::cautions(*profile())) {
        list.append(QVariantMap{
            {QStringLiteral("word"), toQt(documents::cautionHeading(caution, words))},
            {QStringLiteral("advice"), toQt(documents::cautionAdvice(caution, words))}});
    }
    return list;
}

QVariantList ProfileModel::lines() const {
    return isMissing() ? QVariantList() : profileLines(*profile(), *desk_);
}

}  // namespace burrow
