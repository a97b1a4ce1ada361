// Work on many like things, shared between the calling thread and one more: phones have the cores, and
// the keeper waits for the picture.
#pragma once

#include <atomic>
#include <cstddef>
#include <thread>

namespace burrow::measure {

/// Calls `work` once with each number below `count`, from either thread; ends when all are done. `work`
/// must not throw.
template <class Work>
void onTwoThreads(std::size_t count, const Work& work) {
    std::atomic<std::size_t> next = 0;
    const auto run = [&] {
        for (auto i = next.fetch_add(1); i < count; i = next.fetch_add(1)) work(i);
    };
    std::thread other(run);
    run();
    other.join();
}

}  // namespace burrow::measure
