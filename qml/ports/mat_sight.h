// How one frame of a camera shows a mat.
#pragma once

#include <QMetaType>
#include <array>

#include "base/message.h"
#include "tags/symbol.h"

namespace burrow {

struct MatSight {
    /// Which of its squares show: top left, top right, bottom right, bottom left of the sheet.
    std::array<bool, 4> corners{};
    /// Whether a photo taken now could be measured.
    bool isGood = false;
    Message says;  ///< what to do, or that it is good

    friend bool operator==(const MatSight&, const MatSight&) = default;
};

/// Safe from any thread.
[[nodiscard]] MatSight matSightOf(const tags::LumaView& frame);

}  // namespace burrow

Q_DECLARE_METATYPE(burrow::MatSight)
