// A sharer that records what it was given.
#pragma once

#include <vector>

#include "ports/sharer.h"

namespace burrow {

/// Takes every file, unless it was told that nobody is there to take them.
class FakeSharer final : public Sharer {
    Q_OBJECT

public:
    explicit FakeSharer(std::filesystem::path folder, QObject* parent = nullptr)
        : Sharer(parent), folder_(std::move(folder)) {}

    // The script's side.
    void setNobodyThere() { nobodyThere_ = true; }
    [[nodiscard]] const std::vector<std::filesystem::path>& shared() const { return shared_; }

    // The app's side.
    [[nodiscard]] bool canShare() const override { return true; }
    [[nodiscard]] std::filesystem::path folder() const override { return folder_; }
    Done share(const std::filesystem::path& file) override;

private:
    std::filesystem::path folder_;
    std::vector<std::filesystem::path> shared_;
    bool nobodyThere_ = false;
};

}  // namespace burrow
