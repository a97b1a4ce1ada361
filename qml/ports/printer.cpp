#include "ports/printer.h"

namespace burrow {

void Printer::layOut(QObject* context, Compose compose, std::function<void(Result<Pages>)> answer) {
    errands_.run<Result<Pages>>(
        context,
        [this, compose = std::move(compose)]() -> Result<Pages> {
            BURROW_TRY(auto drawn, compose(measure()));
            Pages pages;
            for (auto& page : drawn) pages.emplace_back(std::move(page));
            return pages;
        },
        std::move(answer));
}

void Printer::write(QObject* context, std::filesystem::path path, Pages pages, std::string title,
                    std::function<void(Done)> answer) {
    errands_.run<Done>(
        context,
        [this, path = std::move(path), pages = std::move(pages), title = std::move(title)] {
            std::vector<documents::Page> plain;
            for (const auto& sheet : pages) {
                if (!sheet.isEmpty()) plain.push_back(*sheet.page());
            }
            return writePdf(path, plain, title);
        },
        std::move(answer));
}

}  // namespace burrow
