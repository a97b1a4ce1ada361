#include "viewmodels/lookmoultmodel.h"

#include <algorithm>
#include <cmath>

#include "ports/contrast.h"
#include "room/mats.h"
#include "room/tables.h"

namespace burrow {
namespace {

QString keyOf(const QVariantMap& photo) {
    const auto files = photo.value(QStringLiteral("files")).toStringList();
    return files.isEmpty() ? QString() : files.first();
}

QString nameOf(const QVariant& item) {
    return item.toMap().value(QStringLiteral("name")).toString();
}

std::vector<std::filesystem::path> filesOf(const QVariantMap& photo) {
    std::vector<std::filesystem::path> paths;
    for (const auto& file : photo.value(QStringLiteral("files")).toStringList()) {
        paths.emplace_back(file.toStdString());
    }
    return paths;
}

}  // namespace

void LookMoultModel::setDesk(Desk* desk) {
    if (desk_ == desk) return;
    desk_ = desk;
    // The bar of a mat may be measured meanwhile.
    connect(desk, &Desk::roomChanged, this, &LookMoultModel::changed);
    emit givenChanged();
    begin();
}

void LookMoultModel::setDarkroom(Darkroom* darkroom) {
    if (darkroom_ == darkroom) return;
    darkroom_ = darkroom;
    emit givenChanged();
    begin();
}

void LookMoultModel::setPhotos(const QVariantList& photos) {
    photos_ = photos;
    emit givenChanged();
    begin();
}

void LookMoultModel::setEarlier(const QVariantList& earlier) {
    earlier_ = earlier;
    emit givenChanged();
    begin();
}

void LookMoultModel::setDrawings(const QVariantList& drawings) {
    drawings_ = drawings;
    emit givenChanged();
    begin();
}

void LookMoultModel::setAt(int at) {
    if (at_ == at) return;
    at_ = at;
    emit givenChanged();
    begin();
}

void LookMoultModel::setEarlierAt(int at) {
    if (earlierAt_ == at) return;
    earlierAt_ = at;
    emit givenChanged();
    begin();
}

void LookMoultModel::begin() {
    if (!desk_ || !darkroom_ || photos_.isEmpty()) return;
    at_ = std::clamp<int>(at_, 0, static_cast<int>(photos_.size()) - 1);
    const bool isEarlier = earlierAt_ >= 0 && earlierAt_ < earlier_.size();
    besideAt_ = isEarlier ? static_cast<int>(drawings_.size()) + earlierAt_ : 0;
    put(shown_, photos_.at(at_).toMap());
    putBeside();
}

/// What may stand beside it. Fresh beside dried is worth a look too, but a photo beside itself is not.
QVariantList LookMoultModel::others() const {
    auto all = drawings_ + earlier_ + photos_;
    if (at_ < photos_.size()) all.removeAt(drawings_.size() + earlier_.size() + at_);
    return all;
}

void LookMoultModel::nextPhoto() {
    if (!hasSeveralPhotos()) return;
    const auto beside = others().value(besideAt_).toMap();
    at_ = (at_ + 1) % static_cast<int>(photos_.size());
    put(shown_, photos_.at(at_).toMap());
    // What stands beside it stays, but for a photo that would stand beside itself.
    const auto now = others();
    besideAt_ = std::max<int>(0, static_cast<int>(now.indexOf(QVariant(beside))));
    putBeside();
}

void LookMoultModel::step(int by) {
    const int count = static_cast<int>(others().size());
    if (count < 2) return;
    besideAt_ = (besideAt_ + by + count) % count;
    putBeside();
}

void LookMoultModel::putBeside() {
    const auto item = others().value(besideAt_).toMap();
    drawing_ = item.value(QStringLiteral("drawing")).toString();
    put(beside_, item);
}

void LookMoultModel::put(Side& side, const QVariantMap& photo) {
    side.name = nameOf(photo);
    const auto key = keyOf(photo);
    // The same photo stays as it is.
    if (key != side.key) {
        side.key = key;
        side.read = {};
        emit keyChanged();
        look(side, photo);
    }
    emit changed();
}

void LookMoultModel::look(Side& side, const QVariantMap& photo) {
    const int asked = ++side.asked;
    side.newest->store(asked);
    if (side.key.isEmpty()) {
        side.answered = asked;
        return;
    }
    // All that is given at once is given before anything is read.
    QMetaObject::invokeMethod(
        this, [this, &side, photo, asked] { read(side, photo, asked); }, Qt::QueuedConnection);
}

void LookMoultModel::read(Side& side, const QVariantMap& photo, int asked) {
    if (asked != side.asked) return;
    looking_.run<std::shared_ptr<Read>>(
        this,
        [&files = darkroom_->files(), paths = filesOf(photo), asked, newest = side.newest,
         contrast = contrast_, tables = desk_->tables()] {
            auto read = std::make_shared<Read>();
            if (newest->load() != asked) return read;
            auto found = MeasuredPhoto::read(files, paths, tables->measure);
            if (!found) {
                read->trouble = found.error().message;
                return read;
            }
            if (contrast) read->contrasted = Picture(withContrast(found->picture().image()));
            read->photo = *std::move(found);
            return read;
        },
        [this, &side, asked](const std::shared_ptr<Read>& read) {
            answer(side, asked, std::move(*read));
        });
}

void LookMoultModel::answer(Side& side, int asked, Read read) {
    if (asked != side.asked) return;
    side.answered = asked;
    side.read = std::move(read);
    emit changed();
    raise(side);
}

/// Its local contrast, where it is wanted and not there yet.
void LookMoultModel::raise(Side& side) {
    if (!contrast_ || side.isLooking() || !side.read.photo || !side.read.contrasted.isEmpty()) {
        return;
    }
    const int asked = ++side.asked;
    side.newest->store(asked);
    looking_.run<Picture>(
        this,
        [picture = side.read.photo->picture(), asked, newest = side.newest] {
            if (newest->load() != asked) return Picture();
            return Picture(withContrast(picture.image()));
        },
        [this, &side, asked](const Picture& picture) {
            if (asked != side.asked) return;
            side.answered = asked;
            side.read.contrasted = picture;
            emit changed();
        });
    emit changed();
}

void LookMoultModel::setContrast(bool contrast) {
    if (contrast_ == contrast) return;
    contrast_ = contrast;
    emit changed();
    raise(shown_);
    raise(beside_);
}

Picture LookMoultModel::pictureOf(const Side& side) const {
    if (!side.read.photo) return {};
    // Until it is made, the photo is shown as it is.
    const bool isRaised = contrast_ && !side.read.contrasted.isEmpty();
    return isRaised ? side.read.contrasted : side.read.photo->picture();
}

double LookMoultModel::printsApart() const {
    const auto& mat = shown_.read.photo->sight().survey->mat;
    const auto& other = beside_.read.photo->sight().survey->mat;
    if (!desk_->room() || !mat || !other || mat->name == other->name) return 0;
    const auto deviationOf = [&](const measure::MatName& name) {
        return printScaleOf(desk_->room()->info(), name, desk_->tables()->measure).deviation;
    };
    constexpr double normal95 = 1.96;
    return normal95 * std::hypot(deviationOf(mat->name), deviationOf(other->name));
}

qreal LookMoultModel::unitOf(const Side& side) const {
    const auto pixels = side.read.photo ? side.read.photo->pixelsPerMm() : std::nullopt;
    if (!pixels) return 0;
    const auto& mat = side.read.photo->sight().survey->mat;
    if (!mat || !desk_ || !desk_->room()) return *pixels;
    // A sheet that came out smaller has shorter millimetres.
    return *pixels /
           printScaleOf(desk_->room()->info(), mat->name, desk_->tables()->measure).factor;
}

QString LookMoultModel::scaleText() const {
    if (!desk_ || !hasBeside() || isDrawing()) return {};
    if (isLooking()) return desk_->say("looking.searching");
    const bool isKnown = unit() > 0, isBesideKnown = besideUnit() > 0;
    if (isKnown && isBesideKnown) {
        const bool isFlat = shown_.read.photo->isFlattened() && beside_.read.photo->isFlattened();
        if (!isFlat) return desk_->say("looking.aboutSame");
        // Within a percent nobody sees a difference.
        const auto percent = std::llround(100 * printsApart());
        if (percent <= 1) return desk_->say("looking.same");
        return desk_->say({"looking.sameTo", {{"percent", std::int64_t{percent}}}});
    }
    if (isKnown) return desk_->say("looking.noMatBeside");
    return desk_->say(isBesideKnown ? "looking.noMat" : "looking.noMatAtAll");
}

QString LookMoultModel::trouble() const {
    if (!desk_) return {};
    for (const auto* side : {&shown_, &beside_}) {
        if (!side->read.trouble) continue;
        const bool isElsewhere = side->read.trouble->id == "measuring.noPhoto";
        return isElsewhere ? desk_->say("looking.notHere") : desk_->say(*side->read.trouble);
    }
    return {};
}

}  // namespace burrow
