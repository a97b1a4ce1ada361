// How memory is asked for while the app starts.
#pragma once

#include <cstddef>
#include <cstdlib>

#ifdef __GLIBC__
#include <malloc.h>
#include <sys/mman.h>
#endif

namespace burrow {

/// glibc's heaps grow by a page at a time, in threads other than the first with a system call for each
/// that halts all others: some 1,700 of them until the first list stands. Asked for in one piece it is
/// one, and the kernel may hand out large pages; what is not used takes no memory. The heap of a thread
/// passes to the next one that is made after it has ended.
inline void growHeap() {
#ifdef __GLIBC__
    constexpr std::size_t enough = 16 << 20;
    constexpr std::size_t largePage = 2 << 20;
    auto* piece = static_cast<char*>(std::malloc(enough));
    if (piece == nullptr) return;
    const auto skipped = largePage - reinterpret_cast<std::size_t>(piece) % largePage;
    madvise(piece + skipped, enough - 2 * largePage, MADV_HUGEPAGE);  // a wish: may be refused
    std::free(piece);
#endif
}

/// Called in main before there are threads.
inline void prepareHeap() {
#ifdef __GLIBC__
    mallopt(M_MMAP_THRESHOLD, 24 << 20);
    mallopt(M_TRIM_THRESHOLD, 64 << 20);
    growHeap();
#endif
}

}  // namespace burrow
