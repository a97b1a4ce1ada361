#include "viewmodels/leavemodel.h"

#include "room/air_leave.h"
#include "viewmodels/files.h"
#include "viewmodels/wording.h"

namespace burrow {

void LeaveModel::setDesk(Desk* desk) {
    desk_ = desk;
    connect(desk, &Desk::roomChanged, this, &LeaveModel::changed);
    emit changed();
}

QString LeaveModel::contents() const {
    if (!desk_ || !desk_->room()) return {};
    const auto count = static_cast<std::int64_t>(desk_->room()->residents().size());
    return desk_->say({"leave.contents", {{"animals", count}}});
}

void LeaveModel::set(bool& option, bool wanted) {
    if (option == wanted || working_) return;
    option = wanted;
    // Without either there would be nothing to read the photos by.
    if (!options_.csv && !options_.json)
        (&option == &options_.csv ? options_.json : options_.csv) = true;
    emit changed();
}

void LeaveModel::setTables(bool wanted) { set(options_.csv, wanted); }
void LeaveModel::setDocument(bool wanted) { set(options_.json, wanted); }
void LeaveModel::setPhotos(bool wanted) { set(options_.photos, wanted); }

QString LeaveModel::progress() const {
    return written_ > 0 ? desk_->say({"leave.progress", {{"count", written_}}}) : QString();
}

void LeaveModel::stop() {
    if (goOn_) *goOn_ = false;
}

void LeaveModel::saveTo(const QUrl& folder) {
    if (working_) return;
    savedText_.clear();
    missing_.clear();
    trouble_.clear();
    const auto place = pathOf(folder);
    if (!place) {
        trouble_ = desk_->say(place.error().message);
        return emit changed();
    }
    const auto stem = fileStem(desk_->room()->info().name, "room") + "-" + isoDate(desk_->today());
    const auto path = freePath(*place, stem, "");
    goOn_ = std::make_shared<std::atomic_bool>(true);
    working_ = true;
    written_ = 0;
    auto options = options_;
    options.more.push_back(airTable());
    options.onProgress = [guard = QPointer(this), desk = desk_.data(),
                          goOn = goOn_](std::int64_t events) {
        if (!*goOn) return false;
        QMetaObject::invokeMethod(
            desk,
            [guard, goOn, events] {
                if (!guard || guard->goOn_ != goOn) return;
                guard->written_ = events;
                emit guard->progressChanged();
            },
            Qt::QueuedConnection);
        return true;
    };
    desk_->ask<exchange::LeaveReport>(
        this, [path, options](Book& book) { return exchange::leave(book, path, options); },
        [this, path](const Result<exchange::LeaveReport>& report) { end(report, path); });
    emit changed();
    emit progressChanged();
}

void LeaveModel::end(const Result<exchange::LeaveReport>& report,
                     const std::filesystem::path& folder) {
    working_ = false;
    if (report) {
        savedText_ = desk_->say({"leave.saved",
                                 {{"folder", folder.filename().string()},
                                  {"animals", report->animals},
                                  {"events", report->events},
                                  {"photos", report->photos}}});
        if (report->photosMissing > 0) {
            missing_ = desk_->say({"leave.photosMissing", {{"count", report->photosMissing}}});
        }
    } else {
        trouble_ = desk_->say(report.error().message);
        // The folder was made for this; what somebody else put there by now stays.
        std::error_code ignored;
        std::filesystem::remove(folder, ignored);
    }
    emit changed();
}

}  // namespace burrow
