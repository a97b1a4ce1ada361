// How far an animal has grown, which decides how often it eats and how long it hardens.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>

#include "husbandry/input.h"
#include "husbandry/rules.h"

namespace burrow {

enum class Stage { sling, juvenile, adult, matureMale };

/// As the last part of a rule's id: "sling", "mature_male".
[[nodiscard]] std::string_view name(Stage stage);

/// What the stage was judged by, the best there was.
enum class StageBasis { maturity, size, carapace, age, nothing };

struct StageJudgement {
    Stage stage = Stage::juvenile;
    StageBasis basis = StageBasis::nothing;
    bool smallest = false;            ///< a sling small enough for flies or pieces of prey
    std::optional<Millimetres> span;  ///< leg span, or body length of what is measured by its body
    bool spanEstimated = false;       ///< worked out from the carapace
    Message how;                      ///< "Juvenile: 62 mm of about 140 mm when grown"

    /// A mature male hardens and refuses as an adult does.
    [[nodiscard]] Stage growing() const {
        return stage == Stage::matureMale ? Stage::adult : stage;
    }
};

/// A rule's id put together without asking for memory: a plan asks for dozens of them.
class RuleName {
public:
    RuleName(std::string_view family, std::string_view member);
    operator std::string_view() const { return {text_.data(), size_}; }

private:
    std::array<char, 48> text_{};  // longer ones, of which there are none, would be cut
    std::size_t size_ = 0;
};

/// "feed.retry" for a sling is "feed.retry.sling".
[[nodiscard]] RuleName ruleFor(std::string_view family, Stage stage);

/// By maturity, else by size against the species' adult span, else by size alone, else by age; a
/// juvenile where nothing is known.
[[nodiscard]] StageJudgement judgeStage(const PlanInput& input, const Rules& rules, CivilDay today);

}  // namespace burrow
