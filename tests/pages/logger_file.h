// Eight invented days of a temperature logger.
#pragma once

#include <QtTest>
#include <fstream>

#include "pages/stage.h"

namespace burrow::test {

/// An hourly reading from 1 to 8 May 2026, until 18:00.
inline std::filesystem::path loggersFile(Stage& stage) {
    const auto path = stage.folder.path() / "logger.csv";
    std::ofstream log(path, std::ios::binary);
    log << "Time;Temperature (\xC2\xB0"
           "C);Humidity (%)\n";
    for (int day = 1; day <= 8; ++day) {
        for (int hour = 0; hour < 19; ++hour) {
            log << "2026-05-0" << day << ' ' << (hour < 10 ? "0" : "") << hour << ":00;"
                << 21 + hour % 12 / 2 << ',' << day << ';' << 60 + hour << '\n';
        }
    }
    return path;
}

/// To the page of shelf A, with those readings.
inline void takeInLoggersFile(Stage& stage) {
    stage.go("AirFilePage", {{"place", "A"}});
    stage.click("Choose a file");
    stage.chooseFiles({loggersFile(stage)});
    if (!QTest::qWaitFor([&] { return stage.has("Nothing is written yet."); })) {
        qFatal("The logger's file is not read");
    }
    stage.click("Take it in");
    if (!QTest::qWaitFor(
            [&] { return stage.page() == "AirPlacePage" && stage.has("Dew point"); })) {
        qFatal("The logger's file is not taken in");
    }
}

}  // namespace burrow::test
