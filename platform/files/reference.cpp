#include "files/reference.h"

#include <QDir>
#include <QFile>

namespace burrow {
namespace {

/// Every JSON file of a resource folder, in the order of their names.
std::vector<std::string> textsIn(const QString& folder) {
    const QDir directory(folder);
    std::vector<std::string> texts;
    for (const auto& name :
         directory.entryList({QStringLiteral("*.json")}, QDir::Files, QDir::Name)) {
        QFile file(directory.filePath(name));
        if (file.open(QIODevice::ReadOnly)) texts.push_back(file.readAll().toStdString());
    }
    return texts;
}

/// An empty text where the file is missing.
std::string textOf(const char* resource) {
    QFile file(QString::fromLatin1(resource));
    if (!file.open(QIODevice::ReadOnly)) return {};
    return file.readAll().toStdString();
}

/// The species, which the build joined to one list.
std::vector<std::string> species() { return {textOf(":/burrow/species.json")}; }

Result<RoomTables> tables() {
    return RoomTables::fromJson(
        textOf(":/burrow/rules/tables/prey.json"), textOf(":/burrow/rules/tables/homes.json"),
        textOf(":/burrow/rules/tables/air.json"), textOf(":/burrow/rules/tables/away.json"),
        textOf(":/burrow/rules/tables/sexing.json"));
}

}  // namespace

Result<Reference> loadReference() {
    BURROW_TRY(auto words, Words::fromJson(textsIn(QStringLiteral(":/burrow/words/en"))));
    BURROW_TRY(auto profiles, Profiles::fromJson(species()));
    BURROW_TRY(auto rules, Rules::fromJson(textsIn(QStringLiteral(":/burrow/rules"))));
    BURROW_TRY(auto numbers, tables());
    return Reference{std::move(words), std::move(profiles), std::move(rules), std::move(numbers)};
}

}  // namespace burrow
