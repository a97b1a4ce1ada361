// Dependencies point one way. Who may include whom stands in this table and, in words, in
// DEVELOPERS.md; a change to one is a change to both.
#include <QtTest>

#include <filesystem>
#include <map>
#include <regex>
#include <set>

#include "support/assets.h"

namespace fs = std::filesystem;
using Names = std::set<std::string>;

namespace {

const fs::path top = BURROW_SOURCE_DIR;

/// Folder of core to those it may include.
const std::map<std::string, Names> coreRooms{
    {"base", {}},
    {"words", {"base"}},
    {"model", {"base"}},
    {"storage", {"base"}},
    {"tags", {"base"}},
    {"pictures", {"base"}},
    {"measure", {"base", "model", "tags", "pictures"}},
    {"husbandry", {"base", "model"}},
    {"visits", {"base", "model"}},
    {"stock", {"base", "model"}},
    {"homes", {"base", "model"}},
    {"air", {"base", "model"}},
    {"sexing", {"base", "model"}},
    {"growth", {"base", "model"}},
    {"journal", {"base", "model", "storage"}},
    {"documents", {"base", "model", "words", "tags", "measure"}},
    {"exchange", {"base", "model", "storage", "husbandry", "pictures", "journal", "tags"}},
    {"room",
     {"base", "model", "words", "storage", "husbandry", "journal", "documents", "pictures", "tags",
      "exchange", "visits", "stock", "homes", "air", "measure", "sexing", "growth"}},
};

const Names allCore = [] {
    Names names;
    for (const auto& [name, allowed] : coreRooms) names.insert(name);
    return names;
}();

Names withCore(Names more) {
    more.insert(allCore.begin(), allCore.end());
    return more;
}

/// Every other folder to the folders whose headers it may include.
const std::map<std::string, Names> otherRooms{
    {"demo", withCore({})},
    {"qml/components", {}},
    {"qml/ports", withCore({})},
    {"qml/viewmodels", withCore({"ports"})},
    {"qml/pages", {}},
    {"platform/camera", withCore({"ports"})},
    {"platform/fake", withCore({"ports"})},
    {"platform/files", withCore({"ports"})},
    {"platform/notify", withCore({"ports"})},
    {"platform/print", withCore({"ports"})},
    {"platform/share", withCore({"ports"})},
};
/// The programs see everything.
const Names programs{"platform/app", "platform/terminal"};

std::vector<fs::path> sources(const fs::path& folder, const Names& endings) {
    std::vector<fs::path> files;
    if (!fs::exists(folder)) return files;
    for (const auto& entry : fs::recursive_directory_iterator(folder)) {
        if (endings.contains(entry.path().extension().string())) files.push_back(entry.path());
    }
    return files;
}

std::vector<std::string> matches(const std::string& text, const char* pattern) {
    const std::regex expression(pattern);
    std::vector<std::string> found;
    for (std::sregex_iterator at(text.begin(), text.end(), expression), end; at != end; ++at) {
        found.push_back((*at)[1].str());
    }
    return found;
}

/// The first folder of each quoted include that has one.
std::vector<std::string> includedFolders(const fs::path& file) {
    return matches(burrow::test::slurp(file), "#include \"([a-z]+)/");
}

void checkFolder(const fs::path& folder, const std::string& self, const Names& allowed) {
    for (const auto& file : sources(folder, {".h", ".cpp"})) {
        for (const auto& included : includedFolders(file)) {
            const bool isFine = included == self || allowed.contains(included);
            QVERIFY2(isFine, (file.string() + " includes " + included).c_str());
        }
    }
}

}  // namespace

class TestLayering : public QObject {
    Q_OBJECT

private slots:
    void coreHasNoQt() {
        int seen = 0;
        for (const auto& file : sources(top / "core", {".h", ".cpp"})) {
            ++seen;
            const auto found =
                matches(burrow::test::slurp(file), "#include *[<\"](Q[A-Za-z]+|q[a-z]+\\.h)");
            QVERIFY2(found.empty(), file.c_str());
        }
        QVERIFY(seen > 50);
    }

    void coreRoomsPointOneWay() {
        for (const auto& entry : fs::directory_iterator(top / "core")) {
            if (!entry.is_directory()) continue;
            const auto room = entry.path().filename().string();
            QVERIFY2(coreRooms.contains(room), room.c_str());
            checkFolder(entry.path(), room, coreRooms.at(room));
        }
    }

    void otherRoomsPointOneWay() {
        for (const char* house : {"qml", "platform"}) {
            for (const auto& entry : fs::directory_iterator(top / house)) {
                if (!entry.is_directory() || sources(entry.path(), {".h", ".cpp"}).empty())
                    continue;
                const auto room = house + std::string("/") + entry.path().filename().string();
                if (programs.contains(room)) continue;
                QVERIFY2(otherRooms.contains(room), room.c_str());
                checkFolder(entry.path(), entry.path().filename().string(), otherRooms.at(room));
            }
        }
        for (const auto& file : sources(top / "demo", {".h", ".cpp"})) {
            if (file.parent_path() != top / "demo") continue;  // the tour is a program
            for (const auto& included : includedFolders(file)) {
                QVERIFY2(otherRooms.at("demo").contains(included), file.c_str());
            }
        }
    }

    void qmlModulesPointOneWay() {
        const std::map<std::string, Names> allowed{
            {"components", {"Components"}},
            {"pages", {"Components", "ViewModels", "Pages", "Ports"}}};
        for (const auto& [folder, modules] : allowed) {
            for (const auto& file : sources(top / "qml" / folder, {".qml"})) {
                for (const auto& module :
                     matches(burrow::test::slurp(file), "import Burrow\\.([A-Za-z]+)")) {
                    QVERIFY2(modules.contains(module), (file.string() + " " + module).c_str());
                }
            }
        }
    }

    /// Each of these has a better place, named beside it.
    void bannedPatterns_data() {
        QTest::addColumn<QString>("folder");
        QTest::addColumn<QString>("pattern");
        const auto ban = [](const char* title, const char* folder, const char* pattern) {
            QTest::newRow(title) << folder << pattern;
        };
        ban("dates belong to core/words", "qml", "(new Date|Qt\\.formatDate|toLocaleDateString)");
        ban("sorting belongs to core", "qml/pages", "(\\.sort\\()");
        ban("rich text shows data as markup", "qml",
            "(Text\\.RichText|Text\\.AutoText|Text\\.StyledText)");
        ban("what a page needs is passed to it", "platform", "(setContextProperty)");
        ban("colours come from Tokens", "qml/pages", "(\"#[0-9A-Fa-f]{6}\")");
        ban("SQL belongs to journal and storage", "qml", "(SELECT |INSERT INTO)");
        ban("files are written by core/base/files", "qml", "(QSaveFile|QFile::WriteOnly)");
    }
    void bannedPatterns() {
        QFETCH(QString, folder);
        QFETCH(QString, pattern);
        for (const auto& file : sources(top / folder.toStdString(), {".h", ".cpp", ".qml"})) {
            const auto found = matches(burrow::test::slurp(file), pattern.toUtf8().constData());
            QVERIFY2(found.empty(),
                     (file.string() + ": " + (found.empty() ? "" : found[0])).c_str());
        }
    }

    /// A file longer than this is a sign that a room is missing.
    void filesAreShort() {
        for (const char* house : {"core", "qml", "platform", "demo"}) {
            for (const auto& file : sources(top / house, {".h", ".cpp", ".qml"})) {
                const auto text = burrow::test::slurp(file);
                const auto lines = std::count(text.begin(), text.end(), '\n');
                const long most = file.extension() == ".qml" ? 250 : 400;
                QVERIFY2(lines <= most, (file.string() + ": " + std::to_string(lines)).c_str());
            }
        }
    }

    /// The top level holds only what DEVELOPERS.md lists.
    void topLevelIsTheHouse() {
        const Names allowed{"CMakeLists.txt", "README.md", "DEVELOPERS.md", "core", "qml",
                            "platform",       "assets",    "tests",         "demo"};
        for (const auto& entry : fs::directory_iterator(top)) {
            const auto name = entry.path().filename().string();
            const bool isFine = allowed.contains(name) || name.starts_with(".") ||
                                name.starts_with("build");  // not in the repository
            QVERIFY2(isFine, name.c_str());
        }
    }
};

QTEST_APPLESS_MAIN(TestLayering)
#include "tst_layering.moc"
