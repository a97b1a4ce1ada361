#include "faults/faulty_calls.h"

#include <fcntl.h>
#include <unistd.h>

#include <cerrno>
#include <cstdarg>

namespace burrow::test {
namespace {

struct Plan {
    Call call{};
    int left = 0;
    int error = 0;
    bool isShort = false;
    bool isHalfDone = false;
    bool hasStruck = false;
};
Plan plan;  // one thread, one test at a time

bool strikes(Call call) {
    if (plan.left == 0 || call != plan.call || --plan.left > 0) return false;
    plan.hasStruck = true;
    errno = plan.error;
    return true;
}

}  // namespace

void failCall(Call call, int n, int error, bool isShort) {
    plan = {call, n, error, isShort, false, false};
}

bool healCalls() {
    const bool hasStruck = plan.hasStruck;
    plan = {};
    return hasStruck;
}

}  // namespace burrow::test

using burrow::test::Call;
using burrow::test::plan;
using burrow::test::strikes;

extern "C" {

int __real_open(const char* path, int flags, ...);
ssize_t __real_write(int fd, const void* bytes, size_t size);
int __real_fsync(int fd);
int __real_rename(const char* from, const char* to);

int __wrap_open(const char* path, int flags, ...) {
    va_list more;
    va_start(more, flags);
    const auto mode = (flags & O_CREAT) != 0 ? va_arg(more, mode_t) : mode_t{0};
    va_end(more);
    // Reading is not what is tested here.
    if ((flags & O_CREAT) != 0 && strikes(Call::open)) return -1;
    return __real_open(path, flags, mode);
}

ssize_t __wrap_write(int fd, const void* bytes, size_t size) {
    if (plan.isShort && plan.call == Call::write && plan.left == 1 && !plan.isHalfDone &&
        size > 1) {
        plan.isHalfDone = true;  // half now, and the rest finds no room
        return __real_write(fd, bytes, size / 2);
    }
    if (strikes(Call::write)) return -1;
    return __real_write(fd, bytes, size);
}

int __wrap_fsync(int fd) { return strikes(Call::fsync) ? -1 : __real_fsync(fd); }

int __wrap_rename(const char* from, const char* to) {
    return strikes(Call::rename) ? -1 : __real_rename(from, to);
}

}  // extern "C"
