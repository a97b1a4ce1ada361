// Questions and answers about a moult.
#include "exchange/opinion_text.h"
#include "fuzz/target.h"

using namespace burrow::exchange;

FUZZ_TARGET(opinion) {
    if (const auto question = questionFrom(bytes)) {
        const auto again = questionFrom(toText(*question));
        BURROW_REQUIRE(again.has_value());
        BURROW_REQUIRE(*again == *question);
    }
    if (const auto answer = answerFrom(bytes)) {
        BURROW_REQUIRE(checkAnswer(*answer).has_value());
        const auto again = answerFrom(toText(*answer));
        BURROW_REQUIRE(again.has_value());
        BURROW_REQUIRE(*again == *answer);
    }
}
