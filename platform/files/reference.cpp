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

}  // namespace

Result<Reference> loadReference() {
    BURROW_TRY(auto words, Words::fromJson(textsIn(QStringLiteral(":/burrow/words/en"))));
    BURROW_TRY(auto profiles, Profiles::fromJson(textsIn(QStringLiteral(":/burrow/species"))));
    BURROW_TRY(auto rules, Rules::fromJson(textsIn(QStringLiteral(":/burrow/rules"))));
    return Reference{std::move(words), std::move(profiles), std::move(rules)};
}

}  // namespace burrow
