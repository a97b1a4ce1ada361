// Files as the keeper chooses and names them.
#pragma once

#include <QList>
#include <QStringList>
#include <QUrl>
#include <filesystem>
#include <string>

#include "base/files.h"

namespace burrow {

/// Where a chosen file or folder is. Fails for one that is not on this device.
[[nodiscard]] Result<std::filesystem::path> pathOf(const QUrl& chosen);

/// What the program is started with: photos that another program hands over, and a book.
struct HandedOver {
    QString book;        ///< empty for none
    QList<QUrl> photos;  ///< by their names
};
[[nodiscard]] HandedOver handedOver(const QStringList& arguments);

/// "KR 214/a" as "KR-214-a": letters, digits, dots and hyphens only, as any device takes them;
/// `otherwise` where nothing of it is left.
[[nodiscard]] std::string fileStem(const std::string& text, const char* otherwise = "sheet");

}  // namespace burrow
