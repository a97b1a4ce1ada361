// System calls that fail when they are told to. The linker sends those of core here (--wrap); the standard
// library and SQLite keep the real ones.
#pragma once

namespace burrow::test {

enum class Call { open, write, fsync, rename };

/// Lets the n-th call of that kind (from 1) fail with `error`; a write takes half of its bytes first
/// where `isShort` says so, as a device that fills up does.
void failCall(Call call, int n, int error, bool isShort = false);
/// Lets all go well again. Whether the call came to fail.
bool healCalls();

}  // namespace burrow::test
