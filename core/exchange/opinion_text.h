// Questions and answers as JSON. Private to this room.
#pragma once

#include "exchange/opinion.h"

namespace burrow::exchange {

inline constexpr const char* questionName = "question.json";
inline constexpr const char* answerName = "answer.json";

[[nodiscard]] std::string toText(const OpinionQuestion& question);
[[nodiscard]] std::string toText(const OpinionAnswer& answer);
/// Both fail with `newer` for a later version, and with `badInput` for what is none or is over the limits.
[[nodiscard]] Result<OpinionQuestion> questionFrom(std::string_view text);
[[nodiscard]] Result<OpinionAnswer> answerFrom(std::string_view text);
/// That its texts are as they must be; what a writer asks before it writes.
[[nodiscard]] Done checkAnswer(const OpinionAnswer& answer);

}  // namespace burrow::exchange
