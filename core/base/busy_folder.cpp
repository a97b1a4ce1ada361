#include "base/busy_folder.h"

#include <fcntl.h>
#include <sys/file.h>
#include <unistd.h>

#include <string>
#include <system_error>
#include <vector>

namespace burrow {
namespace {

namespace fs = std::filesystem;

void removeUnfinished(const fs::path& folder) {
    std::vector<fs::path> unfinished;
    std::error_code error;
    for (fs::directory_iterator at(folder, error), end; !error && at != end; at.increment(error)) {
        const auto name = at->path().filename().string();
        if (name.find(".part") != std::string::npos) unfinished.push_back(at->path());
    }
    for (const auto& file : unfinished) fs::remove(file, error);
}

}  // namespace

BusyFolder::BusyFolder(const fs::path& folder)
    : fd_(::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC)) {
    if (fd_ < 0) return;
    // Alone only while it sweeps; then beside all others.
    if (::flock(fd_, LOCK_EX | LOCK_NB) == 0) removeUnfinished(folder);
    ::flock(fd_, LOCK_SH);
}

BusyFolder::~BusyFolder() {
    if (fd_ >= 0) ::close(fd_);
}

}  // namespace burrow
