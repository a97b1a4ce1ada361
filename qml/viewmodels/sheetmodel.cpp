#include "viewmodels/sheetmodel.h"

#include <algorithm>

#include "viewmodels/files.h"
#include "viewmodels/wording.h"

namespace burrow {
namespace {

const std::string pdf = ".pdf";

}  // namespace

void SheetModel::setDesk(Desk* desk) {
    if (desk_ == desk) return;
    desk_ = desk;
    connect(desk, &Desk::roomChanged, this, &SheetModel::readIfReady);
    readIfReady();
    emit givenChanged();
}

void SheetModel::setPrinter(Printer* printer) {
    printer_ = printer;
    readIfReady();
    emit givenChanged();
}

void SheetModel::setSharer(Sharer* sharer) {
    sharer_ = sharer;
    emit givenChanged();
    emit pagesChanged();
}

void SheetModel::readIfReady() {
    if (isReady()) read();
}

void SheetModel::layOut(Printer::Compose compose) {
    printer_->layOut(this, std::move(compose),
                     [this, asked = ++asked_](Result<Printer::Pages> pages) {
                         if (asked != asked_) return;
                         if (!pages) return tell(pages.error());
                         showPages(*std::move(pages));
                     });
}

void SheetModel::showPages(Printer::Pages pages) {
    ++asked_;  // what is being laid out for somebody else comes too late
    pages_ = std::move(pages);
    page_ = std::clamp(page_, 0, std::max(0, pageCount() - 1));
    emit pagesChanged();
}

void SheetModel::setPage(int page) {
    page = std::clamp(page, 0, std::max(0, pageCount() - 1));
    if (page == page_) return;
    page_ = page;
    emit pagesChanged();
}

Sheet SheetModel::sheet() const {
    return pages_.empty() ? Sheet() : pages_[static_cast<std::size_t>(page_)];
}

QString SheetModel::pageText() const {
    if (pages_.empty()) return {};
    return desk_->say(
        {"sheet.page", {{"page", std::int64_t{page_ + 1}}, {"count", std::int64_t{pageCount()}}}});
}

QString SheetModel::fileName() const { return isReady() ? toQt(stem() + pdf) : QString(); }

bool SheetModel::canShare() const { return sharer_ && sharer_->canShare(); }

void SheetModel::setBusy(bool busy) {
    busy_ = busy;
    emit stateChanged();
}

void SheetModel::tell(const Error& error) {
    busy_ = false;
    savedText_.clear();
    trouble_ = desk_->say(error.message);
    emit stateChanged();
}

void SheetModel::write(const std::filesystem::path& path, std::function<void()> then) {
    printer_->write(this, path, pages_, title(), [this, then = std::move(then)](const Done& done) {
        if (!done) return tell(done.error());
        busy_ = false;
        trouble_.clear();
        then();
        emit stateChanged();
    });
}

void SheetModel::saveTo(const QUrl& folder) {
    if (busy_ || pages_.empty()) return;
    const auto place = pathOf(folder);
    if (!place) return tell(place.error());
    setBusy(true);
    prepare([this, place = *place] {
        const auto path = freePath(place, stem(), pdf);
        write(path, [this, path] {
            savedText_ = desk_->say({"sheet.saved",
                                     {{"file", path.filename().string()},
                                      {"folder", path.parent_path().filename().string()}}});
        });
    });
}

void SheetModel::share() {
    if (busy_ || pages_.empty() || !canShare()) return;
    setBusy(true);
    prepare([this] {
        const auto path = sharer_->folder() / (stem() + pdf);
        write(path, [this, path] {
            savedText_.clear();
            if (const auto shared = sharer_->share(path); !shared) tell(shared.error());
        });
    });
}

}  // namespace burrow
