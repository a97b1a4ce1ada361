#define ZX_USE_UTF8 1
#include "tags/symbol.h"

#include <ZXing/BitMatrix.h>
#include <ZXing/CharacterSet.h>
#include <ZXing/MultiFormatWriter.h>
#include <ZXing/ReadBarcode.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "base/text.h"

namespace burrow::tags {
namespace {

/// zxing counts the four levels in steps of its own: 1, 3, 5 and 8 are L, M, Q and H.
constexpr int levelM = 3;

/// No symbol holds more than version 40-L does in digits (ISO/IEC 18004, Table 7).
constexpr std::size_t longestText = 7089;

tl::unexpected<Error> unfit(std::string_view text) {
    return fail(Trouble::badInput,
                {"tag.symbol.unfit", {{"count", static_cast<std::int64_t>(text.size())}}});
}

/// zxing reckons offsets into the picture in int.
bool isPicture(const LumaView& view) {
    return view.pixels != nullptr && view.width > 0 && view.height > 0 &&
           view.stride >= view.width &&
           view.stride <= std::numeric_limits<int>::max() / view.height;
}

FoundSymbol found(const ZXing::Result& result) {
    const auto& bytes = result.bytes();
    FoundSymbol symbol{std::string(bytes.begin(), bytes.end()), {}};
    for (std::size_t i = 0; i < symbol.corners.size(); ++i) {
        const auto& corner = result.position()[i];
        symbol.corners[i] = {static_cast<double>(corner.x), static_cast<double>(corner.y)};
    }
    return symbol;
}

}  // namespace

Result<Symbol> encode(std::string_view text) {
    if (text.empty() || text.size() > longestText || !isUtf8(text)) return unfit(text);
    try {
        const auto bits = ZXing::MultiFormatWriter(ZXing::BarcodeFormat::QRCode)
                              .setEncoding(ZXing::CharacterSet::UTF8)
                              .setEccLevel(levelM)
                              .setMargin(0)
                              .encode(std::string(text), 0, 0);
        Symbol symbol(bits.width());
        for (int row = 0; row < symbol.size(); ++row) {
            for (int column = 0; column < symbol.size(); ++column) {
                symbol.setDark(column, row, bits.get(column, row));
            }
        }
        if (symbol.version() < 2) return unfit(text);
        return symbol;
    } catch (...) {  // zxing says by an exception that nothing holds the text
        return unfit(text);
    }
}

ImagePoint FoundSymbol::centre() const {
    ImagePoint sum;
    for (const auto& corner : corners) {
        sum.x += corner.x;
        sum.y += corner.y;
    }
    return {sum.x / 4, sum.y / 4};
}

std::vector<FoundSymbol> decode(const LumaView& picture, Effort effort) {
    std::vector<FoundSymbol> all;
    if (!isPicture(picture)) return all;
    const bool thorough = effort == Effort::thorough;
    const auto hints = ZXing::DecodeHints()
                           .setFormats(ZXing::BarcodeFormat::QRCode)
                           .setTryHarder(thorough)
                           .setTryRotate(thorough)
                           .setTryDownscale(thorough);
    try {
        const ZXing::ImageView view(picture.pixels, picture.width, picture.height,
                                    ZXing::ImageFormat::Lum, picture.stride, 1);
        for (const auto& result : ZXing::ReadBarcodes(view, hints)) {
            all.push_back(found(result));
        }
    } catch (...) {  // a symbol that leads zxing astray is one that cannot be read
        all.clear();
    }
    return all;
}

const FoundSymbol* nearestCentre(std::span<const FoundSymbol> found, ImagePoint centre) {
    const auto distance = [centre](const FoundSymbol& symbol) {
        const auto at = symbol.centre();
        return std::hypot(at.x - centre.x, at.y - centre.y);
    };
    const auto nearest = std::min_element(
        found.begin(), found.end(),
        [&](const FoundSymbol& a, const FoundSymbol& b) { return distance(a) < distance(b); });
    return nearest == found.end() ? nullptr : &*nearest;
}

}  // namespace burrow::tags
