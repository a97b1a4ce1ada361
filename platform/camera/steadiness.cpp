#include "camera/steadiness.h"

namespace burrow {

Steadiness::News Steadiness::next(const std::optional<QByteArray>& nearest) {
    const bool steady = nearest && previous_ == nearest;
    previous_ = nearest;
    if (!nearest) {
        if (!holds_ || ++missed_ < patience) return {};
        sighted_.reset();
        holds_ = false;
        return {.lost = true};
    }
    holds_ = true;
    missed_ = 0;
    if (!steady || sighted_ == nearest) return {};
    sighted_ = nearest;
    return {.sighted = true};
}

}  // namespace burrow
