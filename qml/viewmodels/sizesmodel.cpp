#include "viewmodels/sizesmodel.h"

#include "viewmodels/lengthkinds.h"
#include "viewmodels/sizelines.h"

namespace burrow {

void SizesModel::setDesk(Desk* desk) {
    if (desk_ == desk) return;
    desk_ = desk;
    connect(desk, &Desk::written, this, &SizesModel::read);
    read();
    emit givenChanged();
}

void SizesModel::setSubject(const QString& subject) {
    if (subject_ == subject) return;
    subject_ = subject;
    read();
    emit givenChanged();
}

void SizesModel::read() {
    const auto id = Uuid::parse(subject_.toStdString());
    if (!desk_ || !desk_->room() || !id) return;
    desk_->ask<Found>(
        this,
        [id = SubjectId{*id}, room = desk_->room()](Book& book) -> Result<Found> {
            Found found;
            BURROW_TRY(found.facts, history(book, id, wholeHistory));
            BURROW_TRY(found.sizes, sizesOf(book, id, room->profiles()));
            return found;
        },
        [this, id = SubjectId{*id}](const Result<Found>& found) {
            found_.reset();
            if (found) found_ = *found;
            resident_ = desk_->room() ? desk_->room()->find(id) : nullptr;
            emit changed();
        });
}

QString SizesModel::tag() const {
    return resident_ ? toQt(resident_->subject().number) : QString();
}
QString SizesModel::binomial() const { return resident_ ? speciesText(*resident_) : QString(); }
QString SizesModel::about() const { return resident_ ? aboutText(*resident_, *desk_) : QString(); }

QVariantList SizesModel::kinds() const {
    QVariantList list;
    if (!isReady()) return list;
    const auto add = [&](const QString& name, growth::Measure measure,
                         const std::string& segment = {}) {
        const auto skins =
            growth::onePerSkin(growth::measureHistory(found_->facts, measure, segment));
        if (skins.empty()) return;
        const auto lines = sizeLines(skins, name.toStdString(), *desk_);
        list.append(QVariantMap{{QStringLiteral("name"), name},
                                {QStringLiteral("rows"), lines.rows},
                                {QStringLiteral("points"), lines.points},
                                {QStringLiteral("labels"), lines.labels},
                                {QStringLiteral("spoken"), lines.spoken}});
    };
    for (const auto& kind : lengthKinds()) {
        if (kind.measure == growth::Measure::segment) continue;
        add(desk_->say(Message(kindMessage(kind, resident_.get()))), kind.measure);
    }
    for (const auto& segment : growth::segmentsOf(found_->facts)) {
        add(desk_->say({"measuring.segment", {{"which", segment}}}), growth::Measure::segment,
            segment);
    }
    return list;
}

QString SizesModel::says() const {
    const bool isOne = isReady() && found_->sizes && !found_->sizes->carapaces.empty() &&
                       !(resident_->profile && isMeasuredByBody(resident_->profile->order));
    if (!isOne) return {};
    QStringList said;
    for (const auto& message : saidOf(*found_->sizes, found_->sizes->carapaces.back().size)) {
        said << desk_->say(message);
    }
    return said.join(QLatin1Char(' '));
}

}  // namespace burrow
