#include "base/message.h"

#include <algorithm>

namespace burrow {

const MessageValue* Message::find(std::string_view name) const {
    const auto found = std::find_if(arguments.begin(), arguments.end(),
                                    [&](const MessageArgument& a) { return a.name == name; });
    return found == arguments.end() ? nullptr : &found->value;
}

}  // namespace burrow
