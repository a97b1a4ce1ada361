#include "ports/darkroom.h"

namespace burrow {

Result<Negative> Darkroom::inspected(Bytes bytes) {
    BURROW_TRY(const auto info, pictures::inspect(bytes));
    BURROW_TRY(const auto developed, developer_.develop(bytes, info));
    const auto& small = developed.thumbnail;
    return Negative{std::make_shared<const Bytes>(std::move(bytes)),
                    QByteArray(reinterpret_cast<const char*>(small.data()),
                               static_cast<qsizetype>(small.size()))};
}

void Darkroom::lookOver(QObject* context, Bytes bytes,
                        std::function<void(Result<Negative>)> answer) {
    const auto shared = std::make_shared<Bytes>(std::move(bytes));
    errands_.run<Result<Negative>>(
        context, [this, shared] { return inspected(std::move(*shared)); }, std::move(answer));
}

void Darkroom::lookOver(QObject* context, std::filesystem::path file,
                        std::function<void(Result<Negative>)> answer) {
    errands_.run<Result<Negative>>(
        context,
        [this, file = std::move(file)]() -> Result<Negative> {
            BURROW_TRY(auto bytes, files_.read(file, pictures::Limits().bytes));
            return inspected(std::move(bytes));
        },
        std::move(answer));
}

void Darkroom::keep(QObject* context, std::filesystem::path folder, std::vector<Negative> negatives,
                    std::function<void(Kept)> answer) {
    errands_.run<Kept>(
        context,
        [this, folder = std::move(folder), negatives = std::move(negatives)] {
            pictures::Store store(folder, files_);
            Kept kept;
            for (const auto& negative : negatives) {
                kept.push_back(store.keep(*negative.bytes, developer_));
            }
            return kept;
        },
        std::move(answer));
}

}  // namespace burrow
