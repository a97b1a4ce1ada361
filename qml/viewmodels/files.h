// Files as the keeper chooses and names them.
#pragma once

#include <QUrl>
#include <filesystem>
#include <string>

#include "base/files.h"

namespace burrow {

/// Where a chosen file or folder is. Fails for one that is not on this device.
[[nodiscard]] Result<std::filesystem::path> pathOf(const QUrl& chosen);

/// "KR 214/a" as "KR-214-a": letters, digits, dots and hyphens only, as any device takes them;
/// `otherwise` where nothing of it is left.
[[nodiscard]] std::string fileStem(const std::string& text, const char* otherwise = "sheet");

}  // namespace burrow
