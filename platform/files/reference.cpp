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

Result<NumberTables> numbers() {
    TableTexts texts;
    for (const char* name : {"air", "away", "homes", "measure", "prey", "sexing"}) {
        texts[name] = textOf((":/burrow/rules/tables/" + std::string(name) + ".json").c_str());
    }
    return NumberTables::fromJson(std::move(texts));
}

}  // namespace

Result<Reference> loadReference() {
    BURROW_TRY(auto words, Words::fromJson(textsIn(QStringLiteral(":/burrow/words/en"))));
    BURROW_TRY(auto profiles, Profiles::fromJson(species()));
    BURROW_TRY(auto rules, Rules::fromJson(textsIn(QStringLiteral(":/burrow/rules"))));
    BURROW_TRY(auto tables, numbers());
    return Reference{std::move(words), std::move(profiles), std::move(rules), std::move(tables)};
}

}  // namespace burrow
