#include "fake/fake_sharer.h"

namespace burrow {

Done FakeSharer::share(const std::filesystem::path& file) {
    if (nobodyThere_) {
        return fail(Trouble::notFound, {"share.nobody", {{"file", file.filename().string()}}});
    }
    shared_.push_back(file);
    return {};
}

}  // namespace burrow
