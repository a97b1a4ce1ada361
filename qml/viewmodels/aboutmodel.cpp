#include "viewmodels/aboutmodel.h"

#include <QCoreApplication>
#include <QFile>
#include <array>

namespace burrow {
namespace {

struct Part {
    const char* name;
    const char* licence;  ///< by its SPDX identifier
    const char* file = nullptr;
};

constexpr std::array fontParts{
    Part{"Atkinson Hyperlegible Next", "OFL-1.1", "AtkinsonHyperlegibleNext-OFL.txt"},
    Part{"Atkinson Hyperlegible Mono", "OFL-1.1", "AtkinsonHyperlegibleMono-OFL.txt"},
    Part{"Vollkorn", "OFL-1.1", "Vollkorn-OFL.txt"},
};

constexpr std::array libraryParts{
    Part{"Qt", "LGPL-3.0-only"},
    Part{"SQLite", "blessing"},
    Part{"zxing-cpp", "Apache-2.0"},
    Part{"libsodium", "ISC"},
    Part{"libcsv", "LGPL-2.1-or-later"},
    Part{"nlohmann/json", "MIT"},
    Part{"fmt", "MIT"},
    Part{"date", "MIT"},
    Part{"tl::expected", "CC0-1.0"},
};

QString textOf(const char* file) {
    QFile text(QStringLiteral(":/burrow/fonts/") + QLatin1String(file));
    return text.open(QIODevice::ReadOnly) ? QString::fromUtf8(text.readAll()) : QString();
}

}  // namespace

QString AboutModel::version() const { return QCoreApplication::applicationVersion(); }

QVariantList AboutModel::fonts() const {
    QVariantList list;
    for (const auto& part : fontParts) {
        list.append(QVariantMap{{QStringLiteral("name"), QString::fromLatin1(part.name)},
                                {QStringLiteral("licence"), QString::fromLatin1(part.licence)},
                                {QStringLiteral("text"), textOf(part.file)}});
    }
    return list;
}

QVariantList AboutModel::libraries() const {
    QVariantList list;
    for (const auto& part : libraryParts) {
        list.append(QVariantMap{{QStringLiteral("name"), QString::fromLatin1(part.name)},
                                {QStringLiteral("value"), QString::fromLatin1(part.licence)}});
    }
    return list;
}

}  // namespace burrow
