// What the air of one place was like: day by day, now, against what those who stand there want.
#pragma once

#include "air/alarms.h"
#include "air/warmth.h"
#include "room/air_log.h"
#include "room/room.h"

namespace burrow {

/// One day of a place.
struct AirDay {
    CivilDay day;
    std::optional<Range<Celsius>> warmth;  ///< lowest and highest reading
    std::optional<Celsius> meanWarmth;
    std::optional<Range<air::Percent>> humidity;
    std::optional<double> dayDegrees;  ///< of a day that is covered well enough
};

/// The newest reading and what follows from it.
struct AirNow {
    air::Sample sample;
    std::optional<Celsius> dewPoint;  ///< these three only where both were read
    std::optional<air::GramsPerCubicMetre> absolute;
    std::optional<air::Hectopascals> deficit;
};

struct AirReport {
    std::string place;
    std::vector<air::Sample> samples;
    std::optional<AirNow> now;
    std::vector<AirDay> days;          ///< those that were read, oldest first
    std::optional<double> dayDegrees;  ///< of all days that have them
    int warmDays = 0;                  ///< how many those are
    Celsius base;
    int standing = 0;                      ///< animals on the books that stand there
    std::optional<Range<Celsius>> wanted;  ///< warmth in which all of them do well
    bool isWantedApart = false;            ///< there is no such warmth
    std::optional<Range<air::Percent>>
        wantedHumidity;  ///< likewise, by how damp their ground is kept
    bool isHumidityApart = false;
    std::vector<air::Alarm> alarms;  ///< only where there is
};

/// Of readings in the order of time.
[[nodiscard]] AirReport airReport(const Room& room, std::string_view place,
                                  std::vector<air::Sample> samples, const air::AirRules& rules);

/// What was read in one of many equal stretches of time.
struct AirStretch {
    int place = 0;  ///< which of them, from 0
    Range<double> values;
    double mean = 0;  ///< of the readings
    /// Nothing was read for longer than readings are joined by a line, or this is the first.
    bool isAfterGap = true;
};
/// Those that hold readings of one of the two, in order.
enum class AirValue { warmth, humidity };
[[nodiscard]] std::vector<AirStretch> stretchesOf(std::span<const air::Sample> samples,
                                                  AirValue which, Range<Instant> when, int count,
                                                  const air::AirRules& rules);

/// The places of the room to write a reading for: its rooms, racks and shelves, as placeFit() reads
/// them, in walking order.
[[nodiscard]] std::vector<std::string> placesOf(const Room& room);

}  // namespace burrow
