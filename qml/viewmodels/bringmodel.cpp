#include "viewmodels/bringmodel.h"

#include <algorithm>

#include "exchange/bad_rows.h"
#include "viewmodels/files.h"
#include "viewmodels/wording.h"

namespace burrow {
namespace {

using exchange::BadRow;

/// More than that nobody reads down; the file of rows left out has them all.
constexpr std::size_t mostListed = 50;

/// Enough of a row to find it by.
constexpr qsizetype longestShown = 160;

std::string fileName(const std::filesystem::path& path) { return path.filename().string(); }

}  // namespace

Done BringModel::placeLeftOut(LeftOut& left) {
    DeviceFiles device;
    auto written = device.write(left.path, bytesOf(left.text));
    left.isPlaced = written.has_value();
    return written;
}

void BringModel::setDesk(Desk* desk) {
    desk_ = desk;
    emit deskChanged();
}

void BringModel::begin(Step step) {
    step_ = step;
    rows_ = 0;
    goOn_ = std::make_shared<std::atomic_bool>(true);
    emit changed();
    emit progressChanged();
}

void BringModel::stop() {
    if (goOn_) *goOn_ = false;
}

std::function<bool(std::int64_t)> BringModel::watch() {
    return [guard = QPointer(this), desk = desk_.data(), goOn = goOn_](std::int64_t rows) {
        if (!*goOn) return false;
        QMetaObject::invokeMethod(
            desk,
            [guard, goOn, rows] {
                if (!guard || guard->goOn_ != goOn) return;
                guard->rows_ = rows;
                emit guard->progressChanged();
            },
            Qt::QueuedConnection);
        return true;
    };
}

void BringModel::addFiles(const QList<QUrl>& files) {
    std::vector<std::filesystem::path> paths;
    trouble_.clear();
    for (const auto& file : files) {
        const auto path = pathOf(file);
        if (!path) {
            trouble_ = desk_->say(path.error().message);
            continue;
        }
        const bool isThere = std::any_of(files_.begin(), files_.end(), [&](const auto& known) {
            return known.csv->path == *path;
        });
        if (!isThere) paths.push_back(*path);
    }
    if (paths.empty()) return emit changed();
    look(std::move(paths), files_);
}

void BringModel::removeFile(int at) {
    if (at < 0 || at >= static_cast<int>(files_.size())) return;
    files_.erase(files_.begin() + at);
    trouble_.clear();
    look({}, files_);
}

const ChosenFile* BringModel::chosen(int at) const {
    if (at < 0 || at >= static_cast<int>(files_.size())) return nullptr;
    return &files_[static_cast<std::size_t>(at)];
}

void BringModel::setMapping(int at, exchange::Mapping mapping) {
    if (chosen(at) == nullptr) return;
    files_[static_cast<std::size_t>(at)].mapping = std::move(mapping);
    trouble_.clear();
    look({}, files_);
}

void BringModel::look(std::vector<std::filesystem::path> paths, ChosenFiles known) {
    begin(Step::Reading);
    desk_->ask<BringLook>(
        this,
        [paths = std::move(paths), known = std::move(known), watch = watch(), room = desk_->room(),
         shipped = &desk_->knowledge().profiles,
         today = desk_->today()](Book& book) -> Result<BringLook> {
            exchange::BringOptions options;
            options.mostReported = mostListed;
            options.onProgress = watch;
            // The keeper's own species are known too.
            const auto& profiles = room ? room->profiles() : *shipped;
            return lookAt(book, paths, known, profiles, today, options);
        },
        [this](const Result<BringLook>& look) {
            if (look) return show(*look);
            step_ = Step::Choosing;
            trouble_ = desk_->say(look.error().message);
            emit changed();
        });
}

void BringModel::show(const BringLook& look) {
    files_ = look.files;
    report_ = look.report.value_or(exchange::BringReport());
    const bool isAsking = std::any_of(files_.begin(), files_.end(),
                                      [](const ChosenFile& file) { return file.isOpen; });
    step_ = look.report ? Step::Ready : isAsking ? Step::Asking : Step::Choosing;
    QStringList troubles;
    if (!trouble_.isEmpty()) troubles.append(trouble_);
    for (const auto& message : look.refused) troubles.append(desk_->say(message));
    if (look.trouble) troubles.append(desk_->say(*look.trouble));
    trouble_ = troubles.join(QChar::LineFeed);
    // Files that can't be looked at together are let go, so that others may be chosen.
    if (look.trouble) files_.clear();
    emit changed();
}

void BringModel::bring(bool skipBad) {
    if (step_ != Step::Ready || (!skipBad && report_.badRows > 0) || !hasGood()) return;
    trouble_.clear();
    begin(Step::Writing);
    const auto left = std::make_shared<std::vector<LeftOut>>();
    Deed deed;
    deed.tag = toQt(desk_->room()->info().code);
    deed.said = {"did.broughtIn",
                 {{"count", report_.animals + report_.enclosures + report_.events + report_.tags +
                                report_.settings}}};
    deed.write = [files = files_, skipBad, left, darkroom = darkroom_.data(), watch = watch(),
                  &words = desk_->knowledge().words,
                  today = desk_->today()](Book& book) -> Result<ChangeSet> {
        exchange::BringOptions options;
        options.skipBad = skipBad;
        options.onProgress = watch;
        BURROW_TRY(auto brought, bringIn(book, files, std::move(options), darkroom));
        for (std::size_t i = 0; i < files.size(); ++i) {
            if (brought.bad[i].empty()) continue;
            left->push_back({exchange::badRowsPath(files[i].csv->path),
                             exchange::badRowsFile(textOf(files[i].csv->bytes), brought.bad[i],
                                                   [&](const Message& message) {
                                                       return words.say(message, today);
                                                   })});
            // Where that is not possible the keeper is asked for another place.
            static_cast<void>(placeLeftOut(left->back()));
        }
        return std::move(brought.changes);
    };
    desk_->act(this, std::move(deed),
               [this, left](const Result<ChangeSet>& done) { end(done, std::move(*left)); });
}

void BringModel::end(const Result<ChangeSet>& done, std::vector<LeftOut> left) {
    if (done) {
        brought_ = done->entries;
        step_ = Step::Finished;
        leftOut_ = std::move(left);
    } else {
        desk_->dismissTrouble();  // it is said here
        trouble_ = desk_->say(done.error().message);
        step_ = Step::Ready;
    }
    emit changed();
}

QString BringModel::leftOut() const {
    QStringList places;
    for (const auto& left : leftOut_) {
        if (left.isPlaced) places.append(toQt(left.path.string()));
    }
    if (places.isEmpty()) return {};
    return desk_->say(
        {"bring.leftOutIn", {{"files", places.join(QStringLiteral(", ")).toStdString()}}});
}

bool BringModel::needsFolder() const {
    return std::any_of(leftOut_.begin(), leftOut_.end(),
                       [](const LeftOut& left) { return !left.isPlaced; });
}

void BringModel::keepLeftOutIn(const QUrl& folder) {
    const auto place = pathOf(folder);
    trouble_ = place ? QString() : desk_->say(place.error().message);
    emit changed();
    if (!place) return;
    desk_->ask<std::vector<LeftOut>>(
        this,
        [left = leftOut_, place = *place](Book&) mutable -> Result<std::vector<LeftOut>> {
            for (auto& each : left) {
                if (each.isPlaced) continue;
                each.path = freePath(place, fileStem(each.path.stem().string()), ".csv");
                BURROW_DO(placeLeftOut(each));
            }
            return left;
        },
        [this](const Result<std::vector<LeftOut>>& left) {
            if (left) leftOut_ = *left;
            trouble_ = left ? QString() : desk_->say(left.error().message);
            emit changed();
        });
}

void BringModel::undoAll() {
    if (step_ != Step::Finished) return;
    Deed deed;
    deed.compose = [entries = brought_](Book&) -> Result<std::vector<Draft>> {
        std::vector<Draft> drafts;
        drafts.reserve(entries.size());
        for (const auto& entry : entries) drafts.emplace_back(RetractDraft{entry});
        return drafts;
    };
    desk_->settle();
    begin(Step::Writing);
    desk_->act(this, std::move(deed), [this](const Result<ChangeSet>& done) {
        if (!done) {
            step_ = Step::Finished;
            return emit changed();
        }
        brought_.clear();
        leftOut_.clear();
        look({}, files_);
    });
}

QVariantList BringModel::files() const {
    QVariantList list;
    for (const auto& file : files_) {
        const Message kind("bring.kind." + std::string(exchange::name(file.kind())));
        list.append(QVariantMap{{QStringLiteral("name"), toQt(fileName(file.csv->path))},
                                {QStringLiteral("kind"), desk_->say(kind)},
                                {QStringLiteral("mapped"), file.mapping.has_value()},
                                {QStringLiteral("open"), file.isOpen}});
    }
    return list;
}

QString BringModel::contents() const {
    if (files_.empty() || step_ == Step::Asking) return {};
    // Tags and settings come only with files of a book that was left, and are not counted for the keeper.
    return desk_->say({"bring.contents",
                       {{"animals", report_.animals},
                        {"enclosures", report_.enclosures},
                        {"events", report_.events}}});
}

QString BringModel::badText() const {
    if (report_.badRows == 0) return {};
    return desk_->say({"bring.bad", {{"count", report_.badRows}}});
}

QVariantList BringModel::badRows() const {
    QVariantList list;
    for (const auto& row : report_.bad) {
        const Message where{row.column.empty() ? "bring.line" : "bring.cell",
                            {{"file", fileName(files_[row.source].csv->path)},
                             {"line", row.line},
                             {"column", row.column}}};
        list.append(QVariantMap{{QStringLiteral("where"), desk_->say(where)},
                                {QStringLiteral("reason"), desk_->say(row.reason)},
                                {QStringLiteral("raw"), toQt(row.raw).left(longestShown)}});
    }
    return list;
}

QString BringModel::moreBad() const {
    const auto more = report_.badRows - static_cast<std::int64_t>(report_.bad.size());
    return more > 0 ? desk_->say({"bring.moreBad", {{"count", more}}}) : QString();
}

bool BringModel::hasGood() const {
    return report_.animals + report_.enclosures + report_.events + report_.tags + report_.settings >
           0;
}

QString BringModel::progress() const {
    return rows_ > 0 ? desk_->say({"bring.rows", {{"count", rows_}}}) : QString();
}

}  // namespace burrow
