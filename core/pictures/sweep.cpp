#include "pictures/sweep.h"

#include <functional>
#include <system_error>

namespace burrow::pictures {
namespace {

namespace fs = std::filesystem;

tl::unexpected<Error> trouble(const fs::path& path, const std::error_code& error) {
    return fail(Trouble::inputOutput,
                {"file.trouble", {{"file", path.filename().string()}, {"cause", error.message()}}});
}

/// Calls for every file of the photo folders that is old enough.
Done forEachSettled(const fs::path& folder, std::chrono::seconds age,
                    const std::function<Done(const fs::path&)>& visit) {
    const auto latest = fs::file_time_type::clock::now() - age;
    for (const auto kind : photoFolders) {
        std::error_code error;
        fs::directory_iterator files(folder / kind, error);
        if (error == std::errc::no_such_file_or_directory) continue;
        for (; !error && files != fs::directory_iterator(); files.increment(error)) {
            const auto written = files->last_write_time(error);
            if (error) break;
            if (files->is_regular_file(error) && written <= latest) BURROW_DO(visit(files->path()));
        }
        if (error) return trouble(folder / kind, error);
    }
    return {};
}

}  // namespace

Result<std::set<Sha256>> settledPhotos(const fs::path& folder, std::chrono::seconds age) {
    std::set<Sha256> photos;
    BURROW_DO(forEachSettled(folder, age, [&](const fs::path& file) -> Done {
        if (const auto hash = Sha256::parse(file.stem().string())) photos.insert(*hash);
        return {};
    }));
    return photos;
}

Result<std::int64_t> removePhotos(const fs::path& folder, const std::set<Sha256>& photos,
                                  std::chrono::seconds age) {
    std::int64_t removed = 0;
    BURROW_DO(forEachSettled(folder, age, [&](const fs::path& file) -> Done {
        const auto hash = Sha256::parse(file.stem().string());
        const bool isUnfinished = file.extension() == ".part";
        if (!isUnfinished && !(hash && photos.contains(*hash))) return {};
        std::error_code error;
        if (fs::remove(file, error)) ++removed;
        return error ? Done(trouble(file, error)) : Done();
    }));
    return removed;
}

}  // namespace burrow::pictures
