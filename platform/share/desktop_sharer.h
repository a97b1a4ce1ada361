// Opens files with the app that the desktop has for them.
#pragma once

#include "ports/sharer.h"

namespace burrow {

/// On a desktop there is nothing to hand a file to but the app that opens it, from where it can be
/// printed or sent on.
class DesktopSharer final : public Sharer {
    Q_OBJECT

public:
    /// Files to be shared are put into `folder`.
    explicit DesktopSharer(std::filesystem::path folder, QObject* parent = nullptr)
        : Sharer(parent), folder_(std::move(folder)) {}

    /// False on a device without anything that opens files for others.
    [[nodiscard]] bool canShare() const override;
    [[nodiscard]] std::filesystem::path folder() const override { return folder_; }
    Done share(const std::filesystem::path& file) override;

private:
    std::filesystem::path folder_;
};

}  // namespace burrow
