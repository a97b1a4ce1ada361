#include "room/sex_words.h"

#include <algorithm>
#include <cmath>

namespace burrow {
namespace {

std::int64_t hundredths(double chance) {
    return std::clamp<std::int64_t>(std::lround(100 * chance), 1, 99);
}

}  // namespace

Message verdictMessage(const sexing::Finding& finding) {
    return Message("sexing.verdict." + std::string(name(finding.verdict)));
}

Message chanceMessage(double female) {
    if (female > 0.99) return {"sexing.chance.most"};
    if (female < 0.01) return {"sexing.chance.least"};
    return {"sexing.chance", {{"hundred", hundredths(female)}}};
}

Message previewMessage(double before, double after) {
    return {"sexing.preview", {{"before", hundredths(before)}, {"after", hundredths(after)}}};
}

Message rangeMessage(const sexing::WouldSettle& what) {
    return {"sexing.settles.range",
            {{"ifFemale", hundredths(what.ifFemale.value_or(0.5))},
             {"ifMale", hundredths(what.ifMale.value_or(0.5))}}};
}

}  // namespace burrow
