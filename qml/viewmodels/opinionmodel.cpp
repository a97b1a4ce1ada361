#include "viewmodels/opinionmodel.h"

#include "viewmodels/files.h"

namespace burrow {

void OpinionModel::setDesk(Desk* desk) {
    desk_ = desk;
    emit changed();
}

void OpinionModel::setSharer(Sharer* sharer) {
    sharer_ = sharer;
    emit changed();
}

void OpinionModel::setMoult(const QString& moult) {
    if (moult_ == moult) return;
    moult_ = moult;
    emit changed();
}

void OpinionModel::setNote(const QString& note) {
    if (note_ == note) return;
    note_ = note;
    emit changed();
}

QString OpinionModel::privacy() const { return desk_ ? desk_->say("opinion.privacy") : QString(); }

void OpinionModel::tell(const QString& done) {
    busy_ = false;
    doneText_ = done;
    trouble_.clear();
    emit changed();
}

void OpinionModel::tell(const Error& error) {
    busy_ = false;
    doneText_.clear();
    trouble_ = desk_->say(error.message);
    emit changed();
}

void OpinionModel::make(const std::filesystem::path& folder, Then then) {
    const auto id = Uuid::parse(moult_.toStdString());
    if (busy_ || !desk_ || !id) return;
    busy_ = true;
    emit changed();
    const auto stem = fileStem(tag_.toStdString(), "moult");
    desk_->ask<std::filesystem::path>(
        this,
        [moult = EntryId{*id}, folder, stem,
         note = note_.toStdString()](Book& book) -> Result<std::filesystem::path> {
            std::error_code error;
            std::filesystem::create_directories(folder, error);
            const auto path = freePath(folder, stem, exchange::questionEnding);
            BURROW_TRY(const auto asked, exchange::askOpinion(book, moult, path, note));
            static_cast<void>(asked);
            return path;
        },
        [this, then = std::move(then)](const Result<std::filesystem::path>& path) {
            if (!path) return tell(path.error());
            then(*path);
        });
}

void OpinionModel::saveTo(const QUrl& folder) {
    const auto place = pathOf(folder);
    if (!place) return tell(place.error());
    make(*place, [this](const std::filesystem::path& path) {
        tell(desk_->say({"sheet.saved",
                         {{"file", path.filename().string()},
                          {"folder", path.parent_path().filename().string()}}}));
    });
}

void OpinionModel::share() {
    if (!canShare()) return;
    make(sharer_->folder(), [this](const std::filesystem::path& path) {
        if (const auto shared = sharer_->share(path); !shared) return tell(shared.error());
        tell(QString());
    });
}

void OpinionModel::takeIn(const QUrl& file) {
    if (busy_ || !desk_ || !desk_->room()) return;
    const auto path = pathOf(file);
    if (!path) return tell(path.error());
    // Read before anything is written: a bad file is no deed.
    const auto answer = exchange::readAnswer(*path);
    if (!answer) return tell(answer.error());
    const auto taken = std::make_shared<exchange::TakenAnswer>();
    Deed deed;
    deed.said = {"did.opinion", {{"judge", answer->judge}}};
    deed.write = [path = *path, taken](Book& book) -> Result<ChangeSet> {
        BURROW_TRY(*taken, exchange::takeAnswer(book, path));
        return taken->changes;
    };
    busy_ = true;
    emit changed();
    desk_->act(this, std::move(deed), [this, taken](const Result<ChangeSet>& done) {
        if (!done) return tell(done.error());
        if (taken->isKnown) return tell(desk_->say("opinion.known"));
        const auto resident = desk_->room() ? desk_->room()->find(taken->subject) : nullptr;
        const auto& said = taken->answer;
        tell(desk_->say({"opinion.taken." + std::string(name(said.sex)),
                         {{"judge", said.judge},
                          {"clarity", std::string(name(said.clarity))},
                          {"tag", resident ? resident->subject().number : std::string()}}}));
    });
}

}  // namespace burrow
