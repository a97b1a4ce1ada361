#include "viewmodels/bookcase.h"

#include <system_error>

#include "base/files.h"
#include "base/text.h"
#include "viewmodels/files.h"

namespace burrow {
namespace {

namespace fs = std::filesystem;

}  // namespace

Bookcase::Bookcase(Desk& desk, Settings& settings, fs::path folder, MakeDemo makeDemo,
                   QObject* parent)
    : QObject(parent),
      desk_(desk),
      settings_(settings),
      folder_(std::move(folder)),
      makeDemo_(std::move(makeDemo)) {
    connect(&desk_, &Desk::stateChanged, this, [this] {
        if (desk_.state() == Desk::State::Open && !desk_.isDemo()) {
            settings_.setLastBook(QString::fromStdString(desk_.bookPath().string()));
        }
        emit busyChanged();
    });
}

Bookcase::~Bookcase() {
    if (worker_ != nullptr) worker_->wait();
}

bool Bookcase::hasOwnBook() const { return !settings_.lastBook().isEmpty(); }

fs::path Bookcase::demoPath() const { return folder_ / "demo" / "kiln-row-demo.book"; }

void Bookcase::open(const fs::path& path, bool isDemo) { desk_.open(path, isDemo); }

void Bookcase::openLast() {
    if (hasOwnBook()) open(settings_.lastBook().toStdString(), false);
}

fs::path Bookcase::pathFor(const QString& room) const {
    return freePath(folder_, fileStem(lowerAscii(room.toStdString()), "room"), ".book");
}

void Bookcase::openMade(const QString& room, const MakeBook& make) {
    const auto path = pathFor(room);
    desk_.openMade(path, [path, make](const Surroundings& around) { return make(path, around); });
}

void Bookcase::startBook(const QString& room, const QString& code) {
    desk_.create(pathFor(room), room.trimmed().toStdString(), code.trimmed().toStdString());
}

void Bookcase::openDemo() {
    if (isBusy()) return;
    std::error_code ignored;
    if (fs::exists(demoPath(), ignored)) return open(demoPath(), true);
    // Made under another name, so that a demo that was interrupted is never opened.
    auto unfinished = demoPath();
    unfinished += ".part";
    const auto made = std::make_shared<Done>();
    worker_ = QThread::create([this, unfinished, made] {
        std::error_code error;
        fs::remove(unfinished, error);
        *made = makeDemo_(unfinished);
        if (*made) fs::rename(unfinished, demoPath(), error);
    });
    connect(worker_, &QThread::finished, this, [this, made] {
        worker_->deleteLater();
        worker_ = nullptr;
        emit busyChanged();
        if (!*made) return desk_.refuse(made->error());
        open(demoPath(), true);
    });
    worker_->start();
    emit busyChanged();
}

void Bookcase::leaveDemo() {
    if (hasOwnBook()) return openLast();
    desk_.close();
}

}  // namespace burrow
