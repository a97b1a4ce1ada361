#pragma once

#include "camera/eye.h"

namespace burrow {

/// Loads what looks through the camera, or at a film where one is named. The library stays loaded.
/// Where it is missing, a scanner comes back that is Broken, and the log says why.
[[nodiscard]] Eye openEye(const QString& film);

}  // namespace burrow
