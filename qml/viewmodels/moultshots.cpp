#include "viewmodels/moultshots.h"

#include <algorithm>

#include "room/tables.h"
#include "viewmodels/files.h"

namespace burrow {
namespace {

QString address(const Negative& negative) {
    return QStringLiteral("data:image/jpeg;base64,") +
           QString::fromLatin1(negative.thumbnail.toBase64());
}

}  // namespace

QVariantList MoultShots::list() const {
    QVariantList list;
    for (const auto& shot : shots_) {
        const char* state = !shot.isRead             ? "moult.shot.reading"
                            : shot.trouble.isEmpty() ? "moult.shot.measurable"
                                                     : "moult.shot.notMeasurable";
        list.append(QVariantMap{{QStringLiteral("picture"), address(shot.negative)},
                                {QStringLiteral("dried"), shot.isDried},
                                {QStringLiteral("state"), desk_ ? desk_->say(state) : QString()},
                                {QStringLiteral("read"), shot.isRead},
                                {QStringLiteral("trouble"), shot.trouble}});
    }
    return list;
}

bool MoultShots::canTakeMore() const {
    return shots_.size() + static_cast<std::size_t>(underWay_) < most;
}

void MoultShots::tell(const QString& text) {
    if (trouble_.contains(text)) return;
    trouble_ = QStringList{trouble_, text}.join(QChar::LineFeed).trimmed();
    emit changed();
}

void MoultShots::clearTrouble() {
    trouble_.clear();
    emit changed();
}

void MoultShots::addBytes(const QByteArray& bytes) {
    if (!canTakeMore()) return;
    ++underWay_;
    clearTrouble();
    darkroom_->lookOver(this, Bytes(bytes.begin(), bytes.end()),
                        [this](const Result<Negative>& negative) { add(negative); });
}

void MoultShots::addFiles(const QList<QUrl>& files) {
    clearTrouble();
    for (const auto& file : files) {
        if (!canTakeMore()) {
            return tell(
                desk_->say({"moult.tooManyPhotos", {{"most", static_cast<std::int64_t>(most)}}}));
        }
        const auto path = pathOf(file);
        if (!path) {
            tell(desk_->say(path.error().message));
            continue;
        }
        ++underWay_;
        emit changed();
        darkroom_->lookOver(this, *path,
                            [this](const Result<Negative>& negative) { add(negative); });
    }
}

void MoultShots::add(const Result<Negative>& negative) {
    --underWay_;
    if (!negative) return tell(desk_->say(negative.error().message));
    shots_.push_back({*negative, isDried_, false, {}, nextKey_++});
    read(shots_.back());
    emit changed();
}

void MoultShots::read(const Shot& shot) {
    reading_.run<PhotoSight>(
        this,
        [bytes = shot.negative.bytes, tables = desk_->tables()] {
            return sightOf(*bytes, tables->measure);
        },
        [this, key = shot.key](const PhotoSight& sight) { show(key, sight); });
}

void MoultShots::show(int key, const PhotoSight& sight) {
    const auto found = std::find_if(shots_.begin(), shots_.end(),
                                    [key](const Shot& shot) { return shot.key == key; });
    if (found == shots_.end()) return;  // removed, or saved by now
    found->isRead = true;
    if (!sight.survey) found->trouble = desk_->say(sight.trouble);
    emit changed();
    if (!sight.codes.empty()) emit tagsSeen(sight.codes);
}

void MoultShots::remove(int at) {
    if (at < 0 || at >= static_cast<int>(shots_.size())) return;
    shots_.erase(shots_.begin() + at);
    emit changed();
}

void MoultShots::setDried(bool dried) {
    if (isDried_ == dried) return;
    isDried_ = dried;
    emit changed();
}

void MoultShots::turnDried(int at) {
    if (at < 0 || at >= static_cast<int>(shots_.size())) return;
    auto& shot = shots_[static_cast<std::size_t>(at)];
    shot.isDried = !shot.isDried;
    emit changed();
}

void MoultShots::keep(std::function<void(Kept)> then) {
    if (shots_.empty()) return then({});
    std::vector<Negative> negatives;
    for (const auto& shot : shots_) negatives.push_back(shot.negative);
    darkroom_->keep(this, pictures::Store::folderFor(desk_->bookPath()), std::move(negatives),
                    [this, asked = shots_, then = std::move(then)](const Darkroom::Kept& answers) {
                        Kept kept;
                        bool isFull = false;
                        for (std::size_t i = 0; i < answers.size(); ++i) {
                            if (answers[i]) {
                                kept.photos.push_back({*answers[i], asked[i].isDried});
                                kept.shots.push_back(asked[i]);
                                continue;
                            }
                            const auto& error = answers[i].error();
                            kept.left.push_back(asked[i]);
                            kept.why = desk_->say(error.message);
                            isFull |= error.trouble == Trouble::full;
                        }
                        const auto lost = static_cast<std::int64_t>(kept.left.size());
                        if (isFull) kept.why = desk_->say({"moult.noRoom", {{"count", lost}}});
                        then(std::move(kept));
                    });
}

void MoultShots::replace(Shots shots) {
    shots_ = std::move(shots);
    emit changed();
}

void MoultShots::putBack(const Shots& shots) {
    shots_.insert(shots_.begin(), shots.begin(), shots.end());
    emit changed();
}

}  // namespace burrow
