// Short for the trouble that files from elsewhere mean most often.
#pragma once

#include "base/result.h"

namespace burrow::exchange {

[[nodiscard]] inline tl::unexpected<Error> refuse(Message message,
                                                  const SourcePlace& where = SourcePlace::here()) {
    return fail(Trouble::badInput, std::move(message), where);
}

}  // namespace burrow::exchange
