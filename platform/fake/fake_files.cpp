#include "fake/fake_files.h"

namespace burrow {

Result<Bytes> FakeFiles::read(const std::filesystem::path& path, std::uint64_t limit) {
    return device_.read(path, limit);
}

Done FakeFiles::write(const std::filesystem::path& path, std::span<const std::uint8_t> bytes) {
    const MessageArgument file{"file", path.filename().string()};
    switch (weather_.load()) {
        case Weather::fair: return device_.write(path, bytes);
        case Weather::noRoom: return fail(Trouble::full, {"file.noRoom", {file}});
        case Weather::writeProtected: break;
    }
    return fail(Trouble::readOnly, {"file.forbidden", {file}});
}

bool FakeFiles::exists(const std::filesystem::path& path) { return device_.exists(path); }

Done FakeFiles::remove(const std::filesystem::path& path) { return device_.remove(path); }

}  // namespace burrow
