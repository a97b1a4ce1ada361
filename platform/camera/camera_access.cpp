#include "camera/camera_access.h"

#include <QCoreApplication>
#include <QFileInfo>
#include <algorithm>

#if QT_VERSION >= QT_VERSION_CHECK(6, 5, 0)
#if QT_CONFIG(permissions)
#include <QPermissions>
#define BURROW_PERMISSIONS
#endif
#endif

namespace burrow {

#ifdef BURROW_PERMISSIONS
void askForCamera(QObject* context, const std::function<void(bool allowed)>& answer) {
    const QCameraPermission camera;
    if (qApp->checkPermission(camera) == Qt::PermissionStatus::Undetermined) {
        qApp->requestPermission(camera, context, [answer](const QPermission& given) {
            answer(given.status() == Qt::PermissionStatus::Granted);
        });
    } else {
        answer(qApp->checkPermission(camera) == Qt::PermissionStatus::Granted);
    }
}
#else
void askForCamera(QObject*, const std::function<void(bool allowed)>& answer) { answer(true); }
#endif

bool camerasAreBarred(const QDir& devices) {
    const auto files = devices.entryInfoList({"video*"}, QDir::Files | QDir::System);
    const auto opens = [](const QFileInfo& file) { return file.isReadable() && file.isWritable(); };
    return !files.isEmpty() && std::none_of(files.begin(), files.end(), opens);
}

}  // namespace burrow
