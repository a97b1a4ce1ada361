#include "documents/moultline.h"

#include <algorithm>

namespace burrow::documents {
namespace {

using namespace literals;

constexpr Millimetres axisBelowTop = 12_mm;
constexpr Millimetres dotsBelowAxis = 2.3_mm;
constexpr Millimetres labelsBelowAxis = 6.8_mm;
constexpr Millimetres lowestTick = 3_mm;
constexpr Millimetres highestTick = 11_mm;
/// The line goes on, dotted, this far past the ring.
constexpr Millimetres tail = 14_mm;
constexpr Millimetres ringRadius = 1.1_mm;
constexpr Millimetres dotRadius = 0.5_mm;

/// From days to places along the line.
struct Scale {
    CivilDay first;
    CivilDay end;
    Millimetres left;
    Millimetres right;

    [[nodiscard]] Millimetres at(CivilDay day) const {
        const int whole = std::max(1, end - first);
        return left + (static_cast<double>(day - first) / whole) * (right - left);
    }
};

CivilDay firstDay(const MoultLine& line) {
    auto first = line.hatched.value_or(line.acquired.value_or(line.end));
    for (const auto& moult : line.moults) first = std::min(first, moult.day);
    for (const auto& meal : line.meals) first = std::min(first, meal.day);
    return first;
}

/// Sizes of one kind, so that ticks compare: carapace where any was measured, otherwise span.
std::vector<std::optional<Millimetres>> sizesOf(const std::vector<MoultMark>& moults) {
    const bool byCarapace = std::any_of(moults.begin(), moults.end(),
                                        [](const MoultMark& m) { return m.carapace.has_value(); });
    std::vector<std::optional<Millimetres>> sizes;
    sizes.reserve(moults.size());
    for (const auto& moult : moults) sizes.push_back(byCarapace ? moult.carapace : moult.span);
    return sizes;
}

/// A moult that was not measured gets the lowest tick.
void addMoults(Page& page, const MoultLine& line, const Scale& scale, Millimetres axis) {
    const auto sizes = sizesOf(line.moults);
    const auto largest = std::max_element(sizes.begin(), sizes.end());
    for (std::size_t i = 0; i < sizes.size(); ++i) {
        const auto day = line.moults[i].day;
        if (day > line.end) continue;
        auto height = lowestTick;
        if (sizes[i]) height = height + (*sizes[i] / **largest) * (highestTick - lowestTick);
        const auto x = scale.at(day);
        const auto hardened = scale.at(std::min(day + line.hardeningDays, line.end));
        const auto width = std::max(hardened - x, 1.2_mm);
        const auto blockHeight = 0.55 * height;
        if (line.hardeningDays > 0) {
            page.add(Hatch{{x, axis - blockHeight, width, blockHeight}, 0.6_mm, {0.15_mm}});
        }
        page.add(Line{{x, axis}, {x, axis - height}, {0.6_mm}});
    }
}

struct Dot {
    Millimetres x;
    bool took;
};

/// Feedings closer together than their dots are wide share one; it is open only if all were
/// refused.
std::vector<Dot> dotsOf(const MoultLine& line, const Scale& scale) {
    auto meals = line.meals;
    std::sort(meals.begin(), meals.end(),
              [](const Meal& a, const Meal& b) { return a.day < b.day; });
    std::vector<Dot> dots;
    for (const auto& meal : meals) {
        if (meal.outcome == Outcome::leftIn || meal.day > line.end) continue;
        const Dot dot{scale.at(meal.day), meal.outcome != Outcome::refused};
        if (!dots.empty() && dot.x - dots.back().x < 3 * dotRadius) {
            dots.back().took |= dot.took;
        } else {
            dots.push_back(dot);
        }
    }
    return dots;
}

std::string startLabel(const MoultLine& line, CivilDay first, const Words& words) {
    const auto say = [&](const char* id) {
        return words.say({id, {{"month", words.month(first)}}}, first);
    };
    if (line.hatched == first) return say("moultLine.hatched");
    if (line.acquired == first) return say("moultLine.acquired");
    return say("moultLine.since");
}

}  // namespace

void addMoultLine(Page& page, const MoultLine& line, const Box& box, const Words& words,
                  const TextMeasure& measure) {
    const auto axis = box.y + axisBelowTop;
    const Scale scale{firstDay(line), line.end, box.x + 0.3_mm, box.right() - tail};
    const Point ring{scale.right, axis};
    constexpr TextStyle label{Face::code, Weight::medium, 10_pt};

    page.add(Line{{box.x, axis}, {ring.x - ringRadius, axis}, {0.5_mm}});
    page.add(Line{{ring.x + ringRadius + 0.6_mm, axis},
                  {box.right(), axis},
                  {0.5_mm, Ink::black, Pattern::dotted}});
    addMoults(page, line, scale, axis);
    for (const auto& dot : dotsOf(line, scale)) {
        const auto fill = dot.took ? std::optional(Ink::black) : std::nullopt;
        page.add(Disc{{dot.x, axis + dotsBelowAxis}, dotRadius, fill, Stroke{0.15_mm}});
    }
    page.add(Disc{ring, ringRadius, Ink::white, Stroke{0.5_mm}});
    const auto baseline = axis + labelsBelowAxis;
    page.add(fitLine(measure,
                     {{box.x, baseline},
                      startLabel(line, scale.first, words),
                      label,
                      Align::left,
                      0.5 * box.width},
                     8_pt));
    page.add(fitLine(measure,
                     {{ring.x, baseline},
                      words.say(line.sold ? "moultLine.sold" : "moultLine.now"),
                      label,
                      Align::centre,
                      2 * tail},
                     8_pt));
    if (line.moults.empty()) {
        page.add(fitLine(measure,
                         {{box.x, axis - 3_mm},
                          words.say("moultLine.noMoult"),
                          {Face::work, Weight::regular, 10_pt},
                          Align::left,
                          box.width - tail},
                         8_pt));
    }
}

}  // namespace burrow::documents
