#include "terminal/console.h"

#include <fmt/format.h>

#include <cstdio>

#include "base/text.h"

namespace burrow::terminal {
namespace {

using nlohmann::json;

/// Never fails: bytes that are no UTF-8 are shown as the replacement character.
std::string dump(const json& value) {
    return value.dump(2, ' ', false, json::error_handler_t::replace);
}

}  // namespace

void Console::line(const std::string& text) const {
    if (!json_) fmt::print("{}\n", withoutSteering(text));
}

void Console::value(const json& value) const {
    if (json_) fmt::print("{}\n", dump(value));
}

int Console::trouble(const Message& message) const {
    const auto text = say(message);
    if (json_) {
        auto error = toJson(message);
        error["text"] = text;
        fmt::print(stderr, "{}\n", dump({{"error", error}}));
    } else {
        fmt::print(stderr, "{}\n", withoutSteering(text));
    }
    return refused;
}

json toJson(const Message& message) {
    json arguments = json::object();
    for (const auto& [name, value] : message.arguments) {
        auto& slot = arguments[name];
        if (const auto* day = std::get_if<CivilDay>(&value)) {
            slot = isoDate(*day);
        } else {
            std::visit(
                [&](const auto& v) {
                    if constexpr (!std::is_same_v<std::decay_t<decltype(v)>, CivilDay>) slot = v;
                },
                value);
        }
    }
    return {{"id", message.id}, {"args", arguments}};
}

}  // namespace burrow::terminal
