#include "husbandry/weather.h"

namespace burrow {

std::string_view name(Weather weather) {
    switch (weather) {
        case Weather::unknown: return "unknown";
        case Weather::tooCold: return "too_cold";
        case Weather::cold: return "cold";
        case Weather::usual: return "usual";
        case Weather::hot: return "hot";
    }
    return {};
}

Weather weatherOf(const PlanInput& input, const Rules& rules, CivilDay today) {
    if (!input.warmth) return Weather::unknown;
    const int age = today - input.warmth->day;
    if (age < 0 || age > rules.days("warmth.fresh")) return Weather::unknown;
    const auto usual = rules.range("warmth.usual");
    Range<Celsius> likes{{usual.least}, {usual.most}};
    if (input.profile != nullptr) likes = input.profile->warmth.value;
    const auto now = input.warmth->mean;
    if (now < rules.warmth("warmth.stop_below")) return Weather::tooCold;
    if (now < likes.least - rules.warmth("warmth.cold_by")) return Weather::cold;
    return now > likes.most + rules.warmth("warmth.hot_by") ? Weather::hot : Weather::usual;
}

}  // namespace burrow
