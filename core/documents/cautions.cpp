#include "documents/cautions.h"

#include <fmt/format.h>

namespace burrow::documents {
namespace {

std::string_view name(Caution caution) {
    switch (caution) {
        case Caution::strongVenom: return "strongVenom";
        case Caution::venom: return "venom";
        case Caution::sting: return "sting";
        case Caution::fast: return "fast";
        case Caution::hairs: return "hairs";
        case Caution::spray: return "spray";
        case Caution::unknown: break;
    }
    return "unknown";
}

std::string say(Caution caution, std::string_view part, const Words& words) {
    return words.say(fmt::format("document.caution.{}.{}", name(caution), part));
}

}  // namespace

bool isReversed(Caution caution) {
    return caution != Caution::hairs && caution != Caution::spray && caution != Caution::venom;
}

std::string cautionWord(Caution caution, const Words& words) { return say(caution, "word", words); }

std::string cautionHeading(Caution caution, const Words& words) {
    return say(caution, "heading", words);
}

std::string cautionAdvice(Caution caution, const Words& words) {
    return say(caution, "advice", words);
}

Ink cautionInk(Caution caution) { return isReversed(caution) ? Ink::white : Ink::black; }

void addCautionBox(Page& page, Caution caution, const Box& box, const Box& sign, Millimetres edge) {
    const auto fill = isReversed(caution) ? std::optional(Ink::black) : std::nullopt;
    page.add(Rectangle{box, {0.4}, fill, Stroke{edge}});
    page.add(CautionSign{sign, cautionInk(caution)});
}

}  // namespace burrow::documents
