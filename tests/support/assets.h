// The data of assets/ for tests of the core, read from the source tree.
#pragma once

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <map>
#include <sstream>
#include <string>
#include <vector>

#include "words/words.h"

namespace burrow::test {

inline std::string slurp(const std::filesystem::path& path) {
    std::ifstream file(path, std::ios::binary);
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

/// Every file of a folder of assets/, in the order of their names.
inline std::vector<std::string> assetFiles(const std::string& folder) {
    std::vector<std::filesystem::path> paths;
    for (const auto& entry :
         std::filesystem::directory_iterator(std::filesystem::path(BURROW_ASSETS_DIR) / folder)) {
        if (entry.path().extension() == ".json") paths.push_back(entry.path());
    }
    std::sort(paths.begin(), paths.end());
    std::vector<std::string> files;
    for (const auto& path : paths) files.push_back(slurp(path));
    return files;
}

/// The text of each table of the trade's numbers, by its name.
inline std::map<std::string, std::string, std::less<>> tableTexts() {
    std::map<std::string, std::string, std::less<>> texts;
    for (const char* name : {"air", "away", "homes", "measure", "prey", "sexing"}) {
        const auto file = std::string("rules/tables/") + name + ".json";
        texts[name] = slurp(std::filesystem::path(BURROW_ASSETS_DIR) / file);
    }
    return texts;
}

inline Words englishWords() { return Words::fromJson(assetFiles("words/en")).value(); }

}  // namespace burrow::test
