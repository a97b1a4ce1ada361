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

/// The species, which the build joined to one list; an empty text where it is missing.
std::vector<std::string> species() {
    QFile file(QStringLiteral(":/burrow/species.json"));
    if (!file.open(QIODevice::ReadOnly)) return {std::string()};
    return {file.readAll().toStdString()};
}

}  // namespace

Result<Reference> loadReference() {
    BURROW_TRY(auto words, Words::fromJson(textsIn(QStringLiteral(":/burrow/words/en"))));
    BURROW_TRY(auto profiles, Profiles::fromJson(species()));
    BURROW_TRY(auto rules, Rules::fromJson(textsIn(QStringLiteral(":/burrow/rules"))));
    return Reference{std::move(words), std::move(profiles), std::move(rules)};
}

}  // namespace burrow
