// Makes the copy of a photo that is shown and shared: upright, and with nothing in it but pixels.
#pragma once

#include "pictures/store.h"

namespace burrow {

class QtDeveloper final : public pictures::Developer {
public:
    Result<Developed> develop(std::span<const std::uint8_t> bytes,
                              const pictures::PictureInfo& info) override;
    Result<Bytes> reduce(std::span<const std::uint8_t> bytes, const pictures::PictureInfo& info,
                         int side) override;
};

}  // namespace burrow
