// Whatever was seen, in whatever order it came in: the chance is one, and what settles it settles it.
#include <rapidcheck.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <random>

#include "growth/measures.h"
#include "sexing/judge.h"
#include "support/assets.h"

using namespace burrow;
using namespace burrow::sexing;

namespace {

const SexingRules& rules() {
    static const auto rules =
        SexingRules::fromJson(
            test::slurp(std::filesystem::path(BURROW_ASSETS_DIR) / "rules/tables/sexing.json"))
            .value();
    return rules;
}

EntryId entry(int number) { return EntryId{Uuid::named("entry " + std::to_string(number))}; }

Sighting anySighting(int number, bool withDecisive) {
    Sighting seen;
    seen.entry = entry(number);
    seen.day = CivilDay{*rc::gen::inRange(20'000, 20'010)};
    seen.look =
        *rc::gen::element(Look::moult, Look::moult, Look::underside, Look::mature, Look::colour);
    seen.says = *rc::gen::element(Sex::female, Sex::male, Sex::unknown);
    if (*rc::gen::inRange(0, 5) > 0) seen.clarity = static_cast<Clarity>(*rc::gen::inRange(0, 5));
    if (*rc::gen::inRange(0, 4) > 0) seen.skin = entry(1000 + *rc::gen::inRange(0, 4));
    if (*rc::gen::inRange(0, 4) > 0) seen.carapace = Millimetres{*rc::gen::inRange(1, 300) / 10.0};
    if (*rc::gen::inRange(0, 3) == 0) seen.judge = "Wren";
    if (withDecisive && *rc::gen::inRange(0, 6) == 0) {
        seen.decisive = static_cast<Decisive>(*rc::gen::inRange(0, 4));
        seen.look = Look::mature;
        seen.says = seen.decisive == Decisive::sac ? Sex::female : Sex::male;
    }
    if (seen.look == Look::mature && !seen.decisive) seen.says = Sex::female;
    return seen;
}

std::vector<Sighting> anySightings(bool withDecisive) {
    std::vector<Sighting> all;
    const int count = *rc::gen::inRange(0, 9);
    for (int i = 0; i < count; ++i) all.push_back(anySighting(i, withDecisive));
    return all;
}

Finding judged(const std::vector<Sighting>& sightings) {
    return judge(sightings, rules(), {"Poecilotheria regalis"});
}

Sighting decisive(int number, Decisive what) {
    Sighting seen;
    seen.entry = entry(number);
    seen.day = CivilDay{*rc::gen::inRange(19'990, 20'020)};
    seen.look = Look::mature;
    seen.says = what == Decisive::sac ? Sex::female : Sex::male;
    seen.decisive = what;
    return seen;
}

}  // namespace

int main() {
    const std::initializer_list<bool> held{
        rc::check("the order of evidence makes no difference, nor does what is there twice",
                  [] {
                      const auto all = anySightings(true);
                      auto shuffled = all;
                      const auto twice = *rc::gen::inRange(0, 4);
                      for (int i = 0; i < twice && !all.empty(); ++i) {
                          shuffled.push_back(*rc::gen::elementOf(all));
                      }
                      std::mt19937 engine(*rc::gen::arbitrary<std::uint32_t>());
                      std::shuffle(shuffled.begin(), shuffled.end(), engine);
                      RC_ASSERT(judged(shuffled) == judged(all));
                  }),
        rc::check("the chance is one, and the ledger adds up to it",
                  [] {
                      const auto finding = judged(anySightings(true));
                      RC_ASSERT(finding.female > 0 && finding.female < 1);
                      double logOdds = std::log(finding.prior / (1 - finding.prior));
                      for (const auto& line : finding.ledger) {
                          RC_ASSERT(line.weight >= 0 && line.weight <= 1);
                          RC_ASSERT(std::abs(line.before - 1 / (1 + std::exp(-logOdds))) < 1e-12);
                          logOdds += line.weight * std::log(line.ratio);
                          RC_ASSERT(std::abs(line.after - 1 / (1 + std::exp(-logOdds))) < 1e-12);
                      }
                      RC_ASSERT(std::abs(finding.female - 1 / (1 + std::exp(-logOdds))) < 1e-12);
                      RC_ASSERT(finding.stop.has_value() == (finding.verdict != Sex::unknown));
                  }),
        rc::check("what settles it settles it, whatever was said before",
                  [] {
                      auto all = anySightings(false);
                      const auto what = static_cast<Decisive>(*rc::gen::inRange(0, 4));
                      all.push_back(decisive(100, what));
                      const auto finding = judged(all);
                      const auto settled = what == Decisive::sac ? Sex::female : Sex::male;
                      RC_ASSERT(finding.verdict == settled && finding.isSettled());
                      RC_ASSERT(finding.stop == Clarity::beyondDoubt);
                      for (const auto& line : finding.ledger) {
                          if (line.seen.decisive) continue;
                          RC_ASSERT(line.weight == 0.0);
                          const bool isOpposite = line.seen.says != Sex::unknown &&
                                                  line.seen.says != settled &&
                                                  line.part != Part::tellsNothing;
                          RC_ASSERT((line.part == Part::corrected) == isOpposite);
                      }
                  }),
        rc::check("one skin counts once, and only as much as its clearest look",
                  [] {
                      auto all = anySightings(false);
                      const auto finding = judged(all);
                      std::map<std::pair<Look, std::optional<EntryId>>, int> counted;
                      for (const auto& line : finding.ledger) {
                          if (line.weight == 0) continue;
                          const bool isColour = line.seen.look == Look::colour;
                          const auto key = std::pair(
                              line.seen.look, isColour ? std::optional<EntryId>() : line.seen.skin);
                          RC_ASSERT(++counted[key] == 1);
                      }
                  }),
        rc::check("a new skin that says female never makes her less likely",
                  [] {
                      auto all = anySightings(false);
                      const auto before = judged(all).female;
                      Sighting seen = anySighting(200, false);
                      seen.look = Look::moult;
                      seen.says = Sex::female;
                      seen.skin = entry(5000);
                      all.push_back(seen);
                      RC_ASSERT(judged(all).female >= before - 1e-12);
                  }),
        rc::check("expected bits are those of a coin at most",
                  [] {
                      const double p = *rc::gen::inRange(1, 1000) / 1000.0;
                      const Millimetres size{*rc::gen::inRange(1, 500) / 10.0};
                      const double bits = expectedBits(p, size, rules());
                      const double all = -p * std::log2(p) - (1 - p) * std::log2(1 - p + 1e-300);
                      RC_ASSERT(bits >= 0.0 && bits <= all + 1e-9);
                  }),
        rc::check("a line is where the squares are least",
                  [] {
                      std::vector<growth::Pair> pairs;
                      for (int n = *rc::gen::inRange(3, 20); n > 0; --n) {
                          pairs.push_back({*rc::gen::inRange(-500, 500) / 10.0,
                                           *rc::gen::inRange(-500, 500) / 10.0});
                      }
                      const auto line = growth::fitLine(pairs);
                      const bool isUpright =
                          std::all_of(pairs.begin(), pairs.end(),
                                      [&](const auto& pair) { return pair.x == pairs.front().x; });
                      RC_ASSERT(line.has_value() == !isUpright);
                      if (!line) return;
                      const auto squares = [&](double a, double b) {
                          double sum = 0;
                          for (const auto& [x, y] : pairs) sum += std::pow(y - a - b * x, 2);
                          return sum;
                      };
                      const double least = squares(line->intercept, line->slope);
                      const double step = *rc::gen::element(0.01, 0.1, 1.0);
                      for (const double a : {-step, 0.0, step}) {
                          for (const double b : {-step, 0.0, step}) {
                              RC_ASSERT(squares(line->intercept + a, line->slope + b) >=
                                        least * (1 - 1e-9) - 1e-9);
                          }
                      }
                  }),
    };
    return std::all_of(held.begin(), held.end(), [](bool holds) { return holds; }) ? 0 : 1;
}
