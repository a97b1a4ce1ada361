// zbar as a second opinion on symbols. Include before Qt.
#pragma once

#include <zbar.h>

#include <string>
#include <vector>

#include "tags/symbol.h"

namespace burrow::test {

/// The bytes of every QR symbol that zbar finds.
inline std::vector<std::string> readByZbar(const tags::LumaView& picture) {
    zbar::ImageScanner scanner;
    scanner.set_config(zbar::ZBAR_NONE, zbar::ZBAR_CFG_ENABLE, 0);
    scanner.set_config(zbar::ZBAR_QRCODE, zbar::ZBAR_CFG_ENABLE, 1);
    std::string packed;
    for (int row = 0; row < picture.height; ++row) {
        const auto* start = picture.pixels + static_cast<std::ptrdiff_t>(row) * picture.stride;
        packed.append(reinterpret_cast<const char*>(start),
                      static_cast<std::size_t>(picture.width));
    }
    zbar::Image image(static_cast<unsigned>(picture.width), static_cast<unsigned>(picture.height),
                      "Y800", packed.data(), packed.size());
    scanner.scan(image);
    std::vector<std::string> all;
    for (auto symbol = image.symbol_begin(); symbol != image.symbol_end(); ++symbol) {
        all.push_back(symbol->get_data());
    }
    return all;
}

}  // namespace burrow::test
