// The care sheet that goes with an animal: one A5 page with who it is, its moults so far, seven
// rules of one line each, and the cautions. It names no price and no buyer.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/result.h"
#include "documents/fit.h"
#include "documents/moultline.h"
#include "documents/page.h"
#include "model/profile.h"
#include "model/terms.h"
#include "words/words.h"

namespace burrow::documents {

/// What this animal is fed now, as the rules have it.
struct FeedingRule {
    int everyDaysLeast = 0;
    int everyDaysMost = 0;
    int count = 1;
    std::string prey;  ///< as it reads after its number, "cricket"; empty where nothing is known
    std::optional<Millimetres> preyLength;
    int leftoversHours = 24;  ///< after which uneaten prey comes out
};

struct CareSheet {
    std::string room;      ///< "Kiln Row"
    std::string roomCode;  ///< "KR", put before the number; may be empty
    std::string contact;   ///< of the seller; may be empty
    CivilDay date;
    int revision = 1;

    std::string number;
    std::optional<std::string> code;  ///< of its tag
    std::string species;              ///< as recorded
    std::optional<Profile> profile;   ///< nothing for a species that is not known here
    Form form = Form::animal;
    Sex sex = Sex::unknown;
    int headcount = 1;
    std::optional<Millimetres> span;  ///< leg span, or body length of what is measured by its body

    std::optional<CivilDay> hatched;
    std::optional<CivilDay> acquired;
    std::vector<MoultMark> moults;
    std::vector<Meal> meals;
    bool sold = false;

    FeedingRule feeding;
    std::optional<int> dampenEveryDays;
    int hardeningDays = 0;  ///< without food after a moult, at this stage
};

/// Fails with `badInput` for a tag code that is none.
[[nodiscard]] Result<Page> careSheet(const CareSheet& sheet, const Words& words,
                                     const TextMeasure& measure);

}  // namespace burrow::documents
