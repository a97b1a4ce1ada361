// The photos of a shared folder: files of their own, which are never written again.
#pragma once

#include "exchange/share.h"
#include "exchange/shared_files.h"

namespace burrow::exchange {

class SharedPhotos {
public:
    using Listed = std::map<DeviceId, std::set<SharedPhoto>>;
    /// All must outlive it.
    SharedPhotos(Book& book, std::filesystem::path folder, Files& files,
                 const ShareOptions& options, const Listed& listed);

    /// Keeps those that the book names and this device lacks. One that is not what its name says is still
    /// on its way.
    Done takeIn(ShareReport& report);
    /// Writes those that the book names, this device has, and nobody put there yet.
    Done writeOut(ShareReport& report);

private:
    Done takeInOne(const DeviceId& device, const SharedPhoto& photo, ShareReport& report);
    Done writeOne(const Sha256& picture, ShareReport& report);
    /// Pictures of photos that count, with whether they may be shown to others.
    Result<std::map<Sha256, bool>> named();

    Book& book_;
    std::filesystem::path folder_;
    Files& files_;
    const ShareOptions& options_;
    const Listed& listed_;
    std::map<Sha256, bool> there_;  // in the folder; whether in full
    pictures::Store store_;
};

}  // namespace burrow::exchange
