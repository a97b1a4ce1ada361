// A message is an id with typed arguments. Core never builds sentences: it names what happened, and
// words/ renders the sentence in the keeper's language from a catalogue.
#pragma once

#include <cstdint>
#include <initializer_list>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

#include "base/civil.h"

namespace burrow {

/// One argument of a message: a count, a measure, a piece of the keeper's own text, or a day.
using MessageValue = std::variant<std::int64_t, double, std::string, CivilDay>;

struct MessageArgument {
    std::string name;
    MessageValue value;

    friend bool operator==(const MessageArgument&, const MessageArgument&) = default;
};

struct Message {
    std::string id;
    std::vector<MessageArgument> arguments;

    Message() = default;
    Message(std::string messageId, std::initializer_list<MessageArgument> messageArguments = {})
        : id(std::move(messageId)), arguments(messageArguments) {}

    /// The argument of that name, or nullptr.
    [[nodiscard]] const MessageValue* find(std::string_view name) const;

    friend bool operator==(const Message&, const Message&) = default;
};

}  // namespace burrow
