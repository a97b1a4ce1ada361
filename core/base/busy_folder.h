// Folders in which several programs write unfinished files.
#pragma once

#include <filesystem>

namespace burrow {

/// As long as it lives, what is being written in the folder is not taken for left behind. Who comes when
/// nobody else is there removes what programs that were killed left unfinished: files with ".part" in
/// their names. Where the file system knows no locks, nothing is removed.
class BusyFolder {
public:
    explicit BusyFolder(const std::filesystem::path& folder);
    BusyFolder(const BusyFolder&) = delete;
    BusyFolder& operator=(const BusyFolder&) = delete;
    ~BusyFolder();

private:
    int fd_;
};

}  // namespace burrow
