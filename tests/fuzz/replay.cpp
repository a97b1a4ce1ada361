// Runs every target over its corpus, with the compiler and the sanitizers of the other tests: what was
// found once stays mended.
#include <filesystem>
#include <fstream>
#include <map>
#include <sstream>
#include <string>

#include "fuzz/target.h"

namespace burrow::fuzz {
namespace {

std::map<std::string, Target>& targets() {
    static std::map<std::string, Target> all;
    return all;
}

}  // namespace

bool addTarget(std::string_view name, Target target) {
    return targets().emplace(name, target).second;
}

}  // namespace burrow::fuzz

int main() {
    namespace fs = std::filesystem;
    const fs::path corpus = fs::path(BURROW_SOURCE_DIR) / "tests/fuzz/corpus";
    bool isComplete = true;
    for (const auto& [name, target] : burrow::fuzz::targets()) {
        int ran = 0;
        for (const auto& file : fs::directory_iterator(corpus / name)) {
            std::ifstream input(file.path(), std::ios::binary);
            std::ostringstream bytes;
            bytes << input.rdbuf();
            target(bytes.str());
            ++ran;
        }
        std::printf("%s: %d inputs\n", name.c_str(), ran);
        isComplete &= ran > 0;
    }
    return isComplete && !burrow::fuzz::targets().empty() ? 0 : 1;
}
