// Dates as people type them into spreadsheets.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "exchange/mapping.h"

namespace burrow::exchange {

/// Three numbers with the year last, "8/5/2026": a day that only an order of its parts makes certain.
struct LooseDate {
    int first = 0;
    int second = 0;
    int year = 0;

    [[nodiscard]] std::optional<CivilDay> in(DateOrder order) const;
};

struct WrittenDate {
    std::optional<CivilDay> certain;  ///< one that can be meant in one way only
    std::optional<LooseDate> loose;
    std::string time;  ///< "T21:14:00" where there is a time of day
};

/// "2026-05-08", "2026/5/8", "20260508", "8 May 2026", "May 8, 2026", "8-May-26", "8.5.2026", "5/8/26", each
/// with or without a time of day, "21:14" or "9:14 pm". Years of two digits as POSIX strptime() has them: 69
/// to 99 are of the last century. Nothing for anything else.
[[nodiscard]] std::optional<WrittenDate> readDate(std::string_view cell);
/// "T21:14:00" for "21:14", "9:14:30 PM".
[[nodiscard]] std::optional<std::string> readTime(std::string_view cell);

/// What the dates of a column say of the order of their parts.
struct DateEvidence {
    std::int64_t onlyDayFirst = 0;    ///< 13/5/2026
    std::int64_t onlyMonthFirst = 0;  ///< 5/13/2026
    std::int64_t either = 0;          ///< 8/5/2026
    std::int64_t same = 0;            ///< 5/5/2026
    std::int64_t certain = 0;
    std::int64_t unread = 0;

    void add(std::string_view cell);
    [[nodiscard]] std::int64_t read() const {
        return onlyDayFirst + onlyMonthFirst + either + same + certain;
    }
    /// The order, where all of the column agrees on one; nothing where it must be asked.
    [[nodiscard]] std::optional<DateOrder> order() const;
};

}  // namespace burrow::exchange
