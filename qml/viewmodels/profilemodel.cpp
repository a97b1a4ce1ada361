#include "viewmodels/profilemodel.h"

#include "documents/cautions.h"
#include "room/own_profiles.h"

namespace burrow {

void ProfileModel::setDesk(Desk* desk) {
    if (desk_ == desk) return;
    desk_ = desk;
    connect(desk, &Desk::roomChanged, this, &ProfileModel::changed);
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

bool ProfileModel::isOwn() const {
    return !isMissing() && profile()->origin == ProfileOrigin::keeper;
}

bool ProfileModel::isOverShipped() const {
    return isOwn() && desk_->knowledge().profiles.find(profile()->name) != nullptr;
}

QString ProfileModel::origin() const {
    if (isMissing()) return {};
    return desk_->say(isOwn() ? "profile.origin.you" : "profile.origin.shipped");
}

void ProfileModel::drop() {
    if (!isOwn()) return;
    Deed deed;
    deed.tag = toQt(desk_->room()->info().code);
    deed.said = {isOverShipped() ? "did.speciesShipped" : "did.speciesDropped"};
    deed.write = [species = profile()->name](Book& book) { return dropProfile(book, species); };
    desk_->act(this, std::move(deed));
}

}  // namespace burrow
