#include "viewmodels/joinmodel.h"

#include "viewmodels/files.h"
#include "viewmodels/filewords.h"
#include "viewmodels/wording.h"

namespace burrow {

void JoinModel::setDesk(Desk* desk) {
    if (desk_ == desk) return;
    desk_ = desk;
    if (desk_) connect(desk_, &Desk::stateChanged, this, &JoinModel::follow);
    emit changed();
}

void JoinModel::enter(Step step, const QString& trouble) {
    step_ = step;
    trouble_ = trouble;
    emit changed();
}

void JoinModel::look(const QUrl& file) {
    const auto path = pathOf(file);
    contents_.reset();
    passphrase_.clear();
    if (!path) return enter(Step::Choosing, desk_->say(path.error().message));
    path_ = *path;
    peek();
}

void JoinModel::unlock(const QString& passphrase) {
    if (step_ != Step::Locked || passphrase.isEmpty()) return;
    passphrase_ = passphrase.toStdString();
    peek();
}

void JoinModel::peek() {
    enter(Step::Looking);
    exchange::PeekOptions options;
    options.passphrase = passphrase_;
    options.onProgress = work_.watch(*desk_);
    // There is no book yet whose thread could do it.
    errands_.run<Result<exchange::Contents>>(
        this, [path = path_, options] { return exchange::peek(path, options); },
        [this](const Result<exchange::Contents>& contents) { show(contents); });
}

void JoinModel::show(const Result<exchange::Contents>& contents) {
    work_.end();
    if (contents) {
        contents_ = *contents;
        return enter(Step::Looked);
    }
    const auto& message = contents.error().message;
    if (message.id == "seal.needed") return enter(Step::Locked);
    if (message.id == "seal.wrong") return enter(Step::Locked, desk_->say(message));
    enter(Step::Choosing, message.id == "bundle.stopped" ? QString() : desk_->say(message));
}

void JoinModel::join() {
    if (step_ != Step::Looked) return;
    enter(Step::Joining);
    exchange::TakeInOptions options;
    options.passphrase = passphrase_;
    options.developer = &darkroom_->developer();
    options.onProgress = work_.watch(*desk_);
    bookcase_->openMade(toQt(contents_->manifest.room),
                        [bundle = path_, options, &files = darkroom_->files()](
                            const std::filesystem::path& path, const Surroundings& around) -> Done {
                            BURROW_TRY(const auto taken, exchange::joinFromBundle(
                                                             path, bundle, files, around, options));
                            static_cast<void>(taken);
                            return {};
                        });
}

void JoinModel::follow() {
    if (step_ != Step::Joining || desk_->state() == Desk::State::Opening) return;
    work_.end();
    const bool isOpen = desk_->state() == Desk::State::Open;
    enter(Step::Looked, isOpen ? QString() : desk_->refusal());
    if (isOpen) emit joined();
}

QString JoinModel::title() const {
    return contents_ ? titleText(contents_->manifest, *desk_) : QString();
}

QString JoinModel::text() const {
    return contents_ ? entriesText(contents_->manifest, *desk_) : QString();
}

}  // namespace burrow
