#include "viewmodels/makefilemodel.h"

#include <algorithm>
#include <system_error>

#include "viewmodels/files.h"
#include "viewmodels/filewords.h"
#include "viewmodels/wording.h"

namespace burrow {
namespace {

constexpr const char* ending = ".burrow";

exchange::PhotoChoice choiceOf(MakeFileModel::Photos photos) {
    switch (photos) {
        case MakeFileModel::Photos::Out: return exchange::PhotoChoice::none;
        case MakeFileModel::Photos::Small: return exchange::PhotoChoice::reduced;
        case MakeFileModel::Photos::Full: return exchange::PhotoChoice::full;
    }
    return exchange::PhotoChoice::none;
}

}  // namespace

void MakeFileModel::setDesk(Desk* desk) {
    desk_ = desk;
    emit deskChanged();
    if (desk_ == nullptr) return;
    desk_->ask<std::vector<exchange::KnownPeer>>(
        this, [](Book& book) { return exchange::peers(book); },
        [this](Result<std::vector<exchange::KnownPeer>> peers) {
            if (peers) peers_ = *std::move(peers);
            emit changed();
        });
}

/// What was made no longer fits what is chosen.
void MakeFileModel::chooseAnew() {
    made_.reset();
    step_ = Step::Choosing;
    savedText_.clear();
    trouble_.clear();
    emit changed();
}

void MakeFileModel::setSubjects(const QStringList& subjects) {
    if (subjects == subjects_) return;
    subjects_ = subjects;
    chooseAnew();
}

void MakeFileModel::setExtent(int extent) {
    if (extent == extent_ || extent < 0 || extent > static_cast<int>(peers_.size())) return;
    extent_ = extent;
    chooseAnew();
}

void MakeFileModel::setPhotos(Photos photos) {
    if (photos == photos_) return;
    photos_ = photos;
    chooseAnew();
}

void MakeFileModel::setConfidential(bool confidential) {
    if (confidential == confidential_) return;
    confidential_ = confidential;
    chooseAnew();
}

void MakeFileModel::setPassphrase(const QString& passphrase) {
    if (passphrase == passphrase_) return;
    passphrase_ = passphrase;
    chooseAnew();
}

QVariantList MakeFileModel::extents() const {
    QVariantList list;
    if (!desk_) return list;
    const auto add = [&](const QString& word, const QString& sub) {
        list.append(QVariantMap{{QStringLiteral("word"), word}, {QStringLiteral("sub"), sub}});
    };
    add(desk_->say("file.everything"), {});
    for (const auto& peer : peers_) {
        const auto day = desk_->knowledge().zone.dayOf(peer.writtenAt);
        add(desk_->say("file.whatItLacks"), desk_->say({"file.lastOf", {{"day", day}}}));
    }
    return list;
}

QString MakeFileModel::animals() const {
    if (made_) return QString::number(made_->manifest.totals.animals);
    if (!subjects_.isEmpty()) return QString::number(subjects_.size());
    if (!desk_ || !desk_->room()) return {};
    return QString::number(desk_->room()->residents().size());
}

QString MakeFileModel::madeTitle() const {
    return made_ ? titleText(made_->manifest, *desk_) : QString();
}

QString MakeFileModel::madeText() const {
    return made_ ? entriesText(made_->manifest, *desk_) : QString();
}

QString MakeFileModel::madeSize() const {
    return made_ ? fileSizeText(made_->bytes, *desk_) : QString();
}

QString MakeFileModel::missingText() const {
    if (!made_ || made_->manifest.missingPhotos == 0) return {};
    return desk_->say({"file.missingPhotos", {{"count", made_->manifest.missingPhotos}}});
}

exchange::ExportOptions MakeFileModel::options() {
    exchange::ExportOptions options;
    if (!subjects_.isEmpty()) {
        options.selection.subjects.emplace();
        for (const auto& subject : subjects_) {
            if (const auto uuid = Uuid::parse(subject.toStdString())) {
                options.selection.subjects->insert(SubjectId{*uuid});
            }
        }
    } else if (extent_ > 0) {
        options.madeFor = peers_[static_cast<std::size_t>(extent_ - 1)].device;
    }
    options.selection.withConfidential = confidential_;
    options.photos = choiceOf(photos_);
    options.passphrase = passphrase_.toStdString();
    options.program = "Burrowbook " + QCoreApplication::applicationVersion().toStdString();
    options.developer = &darkroom_->developer();
    options.onProgress = work_.watch(*desk_);
    return options;
}

void MakeFileModel::make() {
    if (step_ == Step::Making || !desk_ || !desk_->room()) return;
    chooseAnew();
    step_ = Step::Making;
    const auto stem = fileStem(desk_->room()->info().code + "-" + isoDate(desk_->today()), "room");
    desk_->ask<Made>(
        this,
        [folder = sharer_->folder(), stem, options = options()](Book& book) -> Result<Made> {
            std::error_code error;
            std::filesystem::create_directories(folder, error);
            Made made{freePath(folder, stem, ending), {}, 0};
            BURROW_TRY(made.manifest, exchange::exportBundle(book, made.path, options));
            made.bytes = std::filesystem::file_size(made.path, error);
            return made;
        },
        [this](Result<Made> made) { show(std::move(made)); });
    emit changed();
}

void MakeFileModel::show(Result<Made> made) {
    work_.end();
    step_ = made ? Step::Made : Step::Choosing;
    if (made) {
        made_ = *std::move(made);
    } else if (made.error().message.id != "bundle.stopped") {
        trouble_ = desk_->say(made.error().message);
    }
    emit changed();
}

void MakeFileModel::tell(const Done& done) {
    trouble_ = done ? QString() : desk_->say(done.error().message);
    emit changed();
}

void MakeFileModel::handOver() {
    if (made_) tell(sharer_->share(made_->path));
}

void MakeFileModel::keepIn(const QUrl& folder) {
    if (!made_) return;
    const auto place = pathOf(folder);
    if (!place) return tell(failAs(place));
    const auto path = freePath(*place, made_->path.stem().string(), ending);
    std::error_code error;
    std::filesystem::copy_file(made_->path, path, error);
    if (error) {
        std::filesystem::remove(path, error);
        return tell(fail(Trouble::inputOutput, {"file.notKept"}));
    }
    savedText_ =
        desk_->say({"file.kept",
                    {{"file", path.filename().string()}, {"folder", place->filename().string()}}});
    tell({});
}

}  // namespace burrow
