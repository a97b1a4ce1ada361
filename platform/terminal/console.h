// What a command says and how it ends: sentences or JSON on the output, sentences about trouble on the
// error stream, and the exit status.
#pragma once

#include <nlohmann/json.hpp>
#include <string>

#include "base/clock.h"
#include "base/result.h"
#include "words/words.h"

namespace burrow::terminal {

/// Exit statuses: done; refused or in trouble, with nothing changed; not understood.
inline constexpr int done = 0;
inline constexpr int refused = 1;
inline constexpr int notUnderstood = 2;

class Console {
public:
    Console(const Words& words, CivilDay today) : words_(words), today_(today) {}

    void useJson(bool json) { json_ = json; }
    [[nodiscard]] bool isJson() const { return json_; }
    [[nodiscard]] const Words& words() const { return words_; }
    [[nodiscard]] CivilDay today() const { return today_; }
    void setToday(CivilDay today) { today_ = today; }

    [[nodiscard]] std::string say(const Message& message) const {
        return words_.say(message, today_);
    }
    /// One line for people; nothing with --json.
    void line(const std::string& text) const;
    /// The one JSON value of a command; nothing without --json.
    void value(const nlohmann::json& value) const;
    /// Tells what went wrong and gives the exit status.
    int trouble(const Error& error) const { return trouble(error.message); }
    int trouble(const Message& message) const;

private:
    const Words& words_;
    CivilDay today_;
    bool json_ = false;
};

/// {id, args} as every reason and error is given to scripts.
[[nodiscard]] nlohmann::json toJson(const Message& message);

}  // namespace burrow::terminal
