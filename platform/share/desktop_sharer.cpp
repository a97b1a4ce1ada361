#include "share/desktop_sharer.h"

#include <QDesktopServices>
#include <QStandardPaths>
#include <QUrl>

namespace burrow {

bool DesktopSharer::canShare() const {
#ifdef Q_OS_LINUX
    return !QStandardPaths::findExecutable(QStringLiteral("xdg-open")).isEmpty();
#else
    return true;
#endif
}

Done DesktopSharer::share(const std::filesystem::path& file) {
    const auto path = QString::fromStdString(file.string());
    if (QDesktopServices::openUrl(QUrl::fromLocalFile(path))) return {};
    return fail(Trouble::notFound, {"share.nobody", {{"file", file.filename().string()}}});
}

}  // namespace burrow
