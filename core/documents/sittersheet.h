// The sheet for whoever looks after the room while its keeper is away: whom to call, what to do on which day,
// which homes stay shut, where everyone stands. It names no price and no buyer.
#pragma once

#include <string>
#include <vector>

#include "base/result.h"
#include "documents/fit.h"
#include "documents/page.h"
#include "model/profile.h"
#include "words/words.h"

namespace burrow::documents {

struct SitterSheet {
    std::string room;     ///< "Kiln Row"
    std::string contact;  ///< how to reach the keeper; may be empty
    std::string call;     ///< whom to call besides; may be empty
    CivilDay from;        ///< first and last day away
    CivilDay to;
    CivilDay date;  ///< on which the sheet was made

    /// What is done on one shelf, each line with a box to tick.
    struct Shelf {
        std::string place;
        std::vector<std::string> lines;
    };
    struct Visit {
        CivilDay day;
        std::vector<Shelf> shelves;  ///< in the order of the walk
    };
    struct ShutHome {
        std::string number;
        std::string species;
        std::string place;
        std::string why;
        bool isEstimate = false;  ///< the reason is one
    };
    struct Tub {
        std::string number;
        bool isShut = false;
    };
    struct MapShelf {
        std::string place;
        std::vector<Tub> tubs;  ///< by position
    };
    std::vector<Visit> visits;
    std::vector<ShutHome> shut;
    std::vector<MapShelf> map;
    std::vector<Caution> cautions;  ///< of all who stand there, the gravest first
};

/// As many pages as it takes. Fails with `badInput` where nobody stands on the shelves.
[[nodiscard]] Result<std::vector<Page>> sitterSheets(const SitterSheet& sheet, Paper paper,
                                                     const Words& words,
                                                     const TextMeasure& measure);

}  // namespace burrow::documents
