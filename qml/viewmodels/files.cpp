#include "viewmodels/files.h"

#include <QFileInfo>
#include <system_error>

namespace burrow {

Result<std::filesystem::path> pathOf(const QUrl& chosen) {
    if (chosen.isLocalFile()) return std::filesystem::path(chosen.toLocalFile().toStdString());
    return fail(Trouble::notFound, {"file.elsewhere", {{"file", chosen.fileName().toStdString()}}});
}

std::string fileStem(const std::string& text, const char* otherwise) {
    std::string stem;
    for (const char c : text) {
        const bool isPlain = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') ||
                             (c >= '0' && c <= '9') || (c == '.' && !stem.empty());
        if (isPlain) {
            stem += c;
        } else if (!stem.empty() && stem.back() != '-') {
            stem += '-';
        }
    }
    while (!stem.empty() && (stem.back() == '-' || stem.back() == '.')) stem.pop_back();
    return stem.empty() ? otherwise : stem;
}

HandedOver handedOver(const QStringList& arguments) {
    HandedOver handed;
    for (const auto& argument : arguments) {
        const QFileInfo file(argument);
        const auto ending = file.suffix().toLower();
        if (ending == QStringLiteral("jpg") || ending == QStringLiteral("jpeg") ||
            ending == QStringLiteral("png")) {
            handed.photos.append(QUrl::fromLocalFile(file.absoluteFilePath()));
        } else if (handed.book.isEmpty()) {
            handed.book = argument;
        }
    }
    return handed;
}

}  // namespace burrow
