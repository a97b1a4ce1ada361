// Runs that are asked for by an environment variable, because they take long.
#pragma once

#include <QtTest>

namespace burrow::test {

/// QtTest ends a test after five minutes; a long run gets ten hours.
inline void allowLongRun(const char* askedBy) {
    if (qEnvironmentVariableIsSet(askedBy)) qputenv("QTEST_FUNCTION_TIMEOUT", "36000000");
}

}  // namespace burrow::test
