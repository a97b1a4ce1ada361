#include "fonts.h"

#include <QFontDatabase>

namespace burrow {

bool loadFonts() {
    constexpr const char* files[] = {"AtkinsonHyperlegibleNext-Regular",
                                     "AtkinsonHyperlegibleNext-SemiBold",
                                     "AtkinsonHyperlegibleNext-Bold",
                                     "AtkinsonHyperlegibleMono-Medium",
                                     "AtkinsonHyperlegibleMono-SemiBold",
                                     "AtkinsonHyperlegibleMono-Bold",
                                     "Vollkorn-MediumItalic"};
    bool all = true;
    for (const char* file : files) {
        const QString path = QStringLiteral(":/burrow/fonts/%1.ttf").arg(QLatin1String(file));
        if (QFontDatabase::addApplicationFont(path) >= 0) continue;
        qCritical("The font %s cannot be read", qPrintable(path));
        all = false;
    }
    return all;
}

}  // namespace burrow
