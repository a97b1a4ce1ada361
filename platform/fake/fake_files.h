// The device's files, until a script says that something is in the way.
#pragma once

#include <atomic>
#include <optional>

#include "base/files.h"

namespace burrow {

/// Reads and writes for real; refuses every write while there is no room, or the place is write
/// protected. May be told so while another thread uses it.
class FakeFiles final : public Files {
public:
    enum class Weather { fair, noRoom, writeProtected };

    // The script's side.
    void setWeather(Weather weather) { weather_ = weather; }

    // The app's side.
    Result<Bytes> read(const std::filesystem::path& path, std::uint64_t limit) override;
    Done write(const std::filesystem::path& path, std::span<const std::uint8_t> bytes) override;
    bool exists(const std::filesystem::path& path) override;
    Done remove(const std::filesystem::path& path) override;

private:
    DeviceFiles device_;
    std::atomic<Weather> weather_ = Weather::fair;
};

}  // namespace burrow
