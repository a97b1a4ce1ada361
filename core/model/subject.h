// What the keeper keeps: one animal, a communal group under one tag, or a lot of young with a count.
#pragma once

#include <optional>
#include <string>

#include "base/ids.h"
#include "base/units.h"
#include "model/place.h"
#include "model/terms.h"

namespace burrow {

struct Subject {
    SubjectId id;
    Form form = Form::animal;
    /// The number on its tag within this room, "214". Two phones may give the same number; the id
    /// and the tag's code never meet.
    std::string number;
    std::string species;  ///< as recorded; profiles find it by any of its names
    Sex sex = Sex::unknown;
    std::optional<CivilDay> hatched;
    std::optional<CivilDay> acquired;
    std::string source;
    Standing standing = Standing::here;
    bool quarantined = false;
    bool mature = false;  ///< known to have had its ultimate moult (a male's last)
    std::optional<EnclosureId> enclosure;
    Place place;  ///< its own, for a subject that is in no recorded enclosure
    std::optional<SubjectId> mother;
    std::optional<SubjectId> father;
    int headcount = 1;  ///< on the books: put in, less died, sold and given
    std::string note;

    [[nodiscard]] bool isKept() const {
        return standing == Standing::here || standing == Standing::onLoan;
    }
    friend bool operator==(const Subject&, const Subject&) = default;
};

/// Inner sizes of a home; zero where not recorded.
struct HomeSize {
    Millimetres length;
    Millimetres width;
    Millimetres height;
    Millimetres substrate;  ///< depth of the ground

    friend bool operator==(const HomeSize&, const HomeSize&) = default;
};

struct Enclosure {
    EnclosureId id;
    std::string name;
    Millimetres length;  ///< inner sizes; zero where not recorded
    Millimetres width;
    Millimetres height;
    Millimetres substrate;  ///< depth of the ground
    Place place;
    std::string note;

    friend bool operator==(const Enclosure&, const Enclosure&) = default;
};

/// A printed tag and what it hangs on. Blank stock has no target until its first scan.
struct Tag {
    std::string code;  ///< eight characters, globally unique
    Millimetres printedSide;
    std::optional<SubjectId> subject;
    std::optional<EnclosureId> enclosure;

    [[nodiscard]] bool isBound() const { return subject || enclosure; }
    friend bool operator==(const Tag&, const Tag&) = default;
};

}  // namespace burrow
