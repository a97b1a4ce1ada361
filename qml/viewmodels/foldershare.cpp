#include "viewmodels/foldershare.h"

#include <QDir>
#include <chrono>
#include <utility>

#include "viewmodels/files.h"
#include "viewmodels/filewords.h"
#include "viewmodels/wording.h"

namespace burrow {
namespace {

using namespace std::chrono_literals;

/// Long enough for the taps of one round to go together (common practice, no source).
constexpr auto settling = 4s;
/// For folders that tell nobody of changes, such as network drives (common practice, no source).
constexpr auto regularInterval = 5min;

}  // namespace

FolderShare::FolderShare(Desk& desk, Settings& settings, Darkroom& darkroom, QObject* parent)
    : QObject(parent), desk_(desk), settings_(settings), darkroom_(darkroom), work_(this) {
    soon_.setSingleShot(true);
    soon_.setInterval(settling);
    regularly_.setInterval(regularInterval);
    connect(&soon_, &QTimer::timeout, this, &FolderShare::visit);
    connect(&regularly_, &QTimer::timeout, this, &FolderShare::visit);
    connect(&watcher_, &QFileSystemWatcher::directoryChanged, this, &FolderShare::visitSoon);
    connect(&desk_, &Desk::written, this, &FolderShare::visitSoon);
    connect(&desk_, &Desk::stateChanged, this, [this] {
        last_.reset();
        trouble_.clear();
        if (desk_.state() == Desk::State::Open && !folder().isEmpty()) regularly_.start();
        visitSoon();
        emit changed();
    });
}

FolderShare::~FolderShare() { work_.stop(); }

QString FolderShare::folder() const {
    return desk_.isDemo() ? QString() : settings_.sharedFolder(desk_.bookPath().c_str());
}

void FolderShare::choose(const QUrl& folder) {
    const auto path = pathOf(folder);
    last_.reset();
    if (!path) {
        trouble_ = desk_.say(path.error().message);
        return emit changed();
    }
    settings_.setSharedFolder(desk_.bookPath().c_str(), QString::fromStdString(path->string()));
    regularly_.start();
    visit();
}

void FolderShare::leave() {
    work_.stop();
    settings_.setSharedFolder(desk_.bookPath().c_str(), {});
    if (const auto watched = watcher_.directories(); !watched.isEmpty()) {
        watcher_.removePaths(watched);
    }
    regularly_.stop();
    soon_.stop();
    last_.reset();
    trouble_.clear();
    emit changed();
}

void FolderShare::visitSoon() {
    if (visiting_) again_ = true;
    if (!visiting_ && !folder().isEmpty()) soon_.start();
}

void FolderShare::visit() {
    if (visiting_ || folder().isEmpty() || desk_.state() != Desk::State::Open) return;
    visiting_ = true;
    again_ = false;
    soon_.stop();
    exchange::ShareOptions options;
    options.developer = &darkroom_.developer();
    options.program = "Burrowbook " + QCoreApplication::applicationVersion().toStdString();
    options.onProgress = work_.watch(desk_);
    emit changed();
    desk_.ask<exchange::ShareReport>(
        this,
        [path = std::filesystem::path(folder().toStdString()), options, &files = darkroom_.files()](
            Book& book) { return exchange::visitSharedFolder(book, path, files, options); },
        [this](const Result<exchange::ShareReport>& report) { show(report); });
}

void FolderShare::show(const Result<exchange::ShareReport>& report) {
    work_.end();
    visiting_ = false;
    if (folder().isEmpty()) return;  // left meanwhile
    if (report) {
        last_ = *report;
        lastAt_ = desk_.knowledge().clock.now();
        trouble_.clear();
        if (report->entriesAdded > 0) desk_.refresh();
    } else if (report.error().message.id != "bundle.stopped") {
        last_.reset();
        trouble_ = desk_.say(report.error().message);
    }
    watchFolders();
    if (std::exchange(again_, false)) visitSoon();
    emit changed();
}

/// The folder itself, where others begin theirs, and theirs; not our own, which only we write.
void FolderShare::watchFolders() {
    const QDir root(folder());
    if (!root.exists()) return;
    QStringList wanted{root.path()};
    for (const auto& name : root.entryList(QDir::Dirs | QDir::NoDotAndDotDot)) {
        wanted.append(root.filePath(name));
    }
    const auto watched = watcher_.directories();
    for (const auto& path : wanted) {
        if (!watched.contains(path)) watcher_.addPath(path);
    }
}

QString FolderShare::state() const {
    if (folder().isEmpty()) return {};
    if (visiting_) return desk_.say("share.visiting");
    if (!last_) return desk_.say(trouble_.isEmpty() ? "share.notYet" : "share.stuck");
    const auto id = last_->waiting.empty() ? "share.alike" : "share.waiting";
    return desk_.say({id, {{"time", timeText(lastAt_, desk_)}}});
}

QVariantList FolderShare::outcome() const {
    if (!last_) return {};
    const auto fact = [this](const char* name, std::int64_t entries, std::int64_t photos) {
        return QVariantMap{
            {QStringLiteral("name"), desk_.say(name)},
            {QStringLiteral("value"), desk_.say({"copies.entries", {{"count", entries}}})},
            {QStringLiteral("sub"),
             photos == 0 ? QString() : desk_.say({"share.photos", {{"count", photos}}})}};
    };
    return {fact("share.in", last_->entriesAdded, last_->photosAdded),
            fact("share.out", last_->entriesWritten, last_->photosWritten)};
}

QVariantList FolderShare::left() const {
    if (!last_) return {};
    QVariantList list;
    for (const auto* some : {&last_->waiting, &last_->refused}) {
        for (const auto& file : *some) {
            list.append(QVariantMap{{QStringLiteral("name"), toQt(file.name)},
                                    {QStringLiteral("reason"), desk_.say(file.reason)}});
        }
    }
    return list;
}

}  // namespace burrow
