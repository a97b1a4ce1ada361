// Turns messages into sentences. A catalogue is a set of JSON objects of id to pattern, one folder per
// language in assets/words/ and one file per room. Core names things; only this module speaks.
//
// A pattern holds plain text and these holes:
//   {name}                 the argument: a count, a measure, the keeper's text, or a day
//   {days:one day|# days}  one form per plural class of the language, # is the number
//   {@outcome}             the word of a term: the pattern with the id "outcome.<value>", rendered
//                          with the same arguments; the value itself where there is none
// Days within a week of today are named by weekday, others as "12 May", with the year where it is
// not this year's.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "base/result.h"

namespace burrow {

class Words {
public:
    /// Fails with `badInput` when a file is no JSON object of texts, says an id twice, or when the
    /// calendar is missing.
    static Result<Words> fromJson(std::span<const std::string> files);

    /// The sentence. A message that the catalogue does not know shows its id in brackets, so that
    /// what is missing can be seen and reported.
    [[nodiscard]] std::string say(const Message& message, CivilDay today) const;
    /// A phrase without arguments or days.
    [[nodiscard]] std::string say(std::string_view id) const;
    [[nodiscard]] std::string day(CivilDay day, CivilDay today) const;
    /// "Friday 8 May": for headings.
    [[nodiscard]] std::string longDay(CivilDay day) const;
    /// "May 2021"
    [[nodiscard]] std::string month(CivilDay day) const;
    [[nodiscard]] bool knows(std::string_view id) const;
    [[nodiscard]] std::vector<std::string> ids() const;

private:
    Words() = default;
    [[nodiscard]] std::string fill(std::string_view pattern, const Message& message, CivilDay today,
                                   int depth) const;
    [[nodiscard]] std::string hole(std::string_view hole, const Message& message, CivilDay today,
                                   int depth) const;
    [[nodiscard]] std::string show(const MessageValue& value, CivilDay today) const;

    std::unordered_map<std::string, std::string> patterns_;
    std::vector<std::string> weekdays_;     // from Sunday
    std::vector<std::string> months_;       // as in "12 May"
    std::vector<std::string> shortMonths_;  // for plots
};

/// A number as people write it: no trailing zeros, at most two decimals.
[[nodiscard]] std::string plainNumber(double value);

}  // namespace burrow
