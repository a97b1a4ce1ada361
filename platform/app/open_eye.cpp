#include "app/open_eye.h"

#include <QCoreApplication>
#include <QDir>
#include <QPluginLoader>

#include "app/no_eye.h"

#ifdef BURROW_EYE_LINKED
#include <QtPlugin>
Q_IMPORT_PLUGIN(EyeLibrary)
#endif

namespace burrow {
namespace {

#ifdef BURROW_EYE_LINKED
EyeMaker* findMaker() {
    for (auto* instance : QPluginLoader::staticInstances()) {
        if (auto* maker = qobject_cast<EyeMaker*>(instance)) return maker;
    }
    return nullptr;
}
#else
EyeMaker* findMaker() {
    const QDir program(QCoreApplication::applicationDirPath());
    QString trouble;
    for (const auto& folder : QString(BURROW_EYE_FOLDERS).split(':')) {
        QPluginLoader loader(program.filePath(folder + "/" BURROW_EYE_FILE));
        if (auto* maker = qobject_cast<EyeMaker*>(loader.instance())) return maker;
        trouble += loader.errorString() + '\n';
    }
    qWarning("The camera library cannot be loaded.\n%s", qUtf8Printable(trouble));
    return nullptr;
}
#endif

}  // namespace

Eye openEye(const QString& film) {
    if (auto* maker = findMaker()) return maker->make(film);
    return {std::make_unique<NoScanner>(), std::make_unique<NoPhotographer>()};
}

}  // namespace burrow
