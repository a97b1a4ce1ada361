#include "ports/mat_sight.h"

#include "measure/hint.h"

namespace burrow {

MatSight matSightOf(const tags::LumaView& frame) {
    const auto live = measure::hintFor(frame);
    return {live.isSeen, live.hint == measure::Hint::ready, live.message()};
}

}  // namespace burrow
