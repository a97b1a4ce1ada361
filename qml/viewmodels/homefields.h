// The fields of an enclosure, on its own page and where a new one is made along with its animal.
#pragma once

#include "viewmodels/desk.h"
#include "viewmodels/formfield.h"

namespace burrow {

/// What stands in an enclosure's field for one that is yet to be made.
inline constexpr auto newEnclosure = u"new";

/// Name, inner sizes, depth of the ground and place, as typed.
struct HomeFields {
    FormField* name = nullptr;
    FormField* length = nullptr;
    FormField* width = nullptr;
    FormField* height = nullptr;
    FormField* substrate = nullptr;
    FormField* place = nullptr;

    void fill(const Enclosure& enclosure);
    void setWanted(bool wanted);
    /// Puts what was typed into `enclosure`; false, and errors at the fields, for what can't be read.
    [[nodiscard]] bool read(Enclosure& enclosure, const Desk& desk) const;
};

/// Every shelf and rack that somebody stands on, in walking order, as places are typed.
[[nodiscard]] QStringList knownShelves(const Desk& desk);

}  // namespace burrow
