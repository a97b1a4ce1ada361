// PNG by libpng's simplified interface, which gives sRGB bytes whatever the file holds.
#include <png.h>

#include "pictures/codecs.h"

namespace burrow::pictures {
namespace {

/// Frees what libpng holds, however the function is left.
class Image {
public:
    Image() { image_.version = PNG_IMAGE_VERSION; }
    Image(const Image&) = delete;
    Image& operator=(const Image&) = delete;
    ~Image() { png_image_free(&image_); }

    png_image* operator->() { return &image_; }
    png_image* get() { return &image_; }

private:
    png_image image_{};
};

}  // namespace

Result<Raster> decodePng(std::span<const std::uint8_t> bytes, const PictureInfo& info) {
    const auto damaged = [] { return fail(Trouble::badInput, {"picture.damaged"}); };
    Image image;
    if (png_image_begin_read_from_memory(image.get(), bytes.data(), bytes.size()) == 0) {
        return damaged();
    }
    if (static_cast<int>(image->width) != info.width ||
        static_cast<int>(image->height) != info.height) {
        return damaged();
    }
    image->format = PNG_FORMAT_RGB;
    Raster picture(info.width, info.height);
    constexpr png_color white{255, 255, 255};
    const int stride = static_cast<int>(picture.stride());
    if (png_image_finish_read(image.get(), &white, picture.row(0), stride, nullptr) == 0) {
        return damaged();
    }
    if (PNG_IMAGE_FAILED(*image.get())) return damaged();
    return picture;
}

Result<Bytes> encodePng(const Raster& picture) {
    const auto unwritable = [] { return fail(Trouble::badInput, {"picture.unwritable"}); };
    if (picture.isEmpty()) return unwritable();
    Image image;
    image->width = static_cast<png_uint_32>(picture.width());
    image->height = static_cast<png_uint_32>(picture.height());
    image->format = PNG_FORMAT_RGB;
    // Filters that look for the best cost more time than they save room in a photo.
    image->flags = PNG_IMAGE_FLAG_FAST;
    png_alloc_size_t size = PNG_IMAGE_PNG_SIZE_MAX(*image.get());
    Bytes bytes(size);
    const int stride = static_cast<int>(picture.stride());
    if (png_image_write_to_memory(image.get(), bytes.data(), &size, 0, picture.row(0), stride,
                                  nullptr) == 0) {
        return unwritable();
    }
    bytes.resize(size);
    return bytes;
}

Result<Raster> decode(std::span<const std::uint8_t> bytes, const Limits& limits) {
    BURROW_TRY(const auto info, inspect(bytes, limits));
    return info.format == Format::jpeg ? decodeJpeg(bytes, info) : decodePng(bytes, info);
}

}  // namespace burrow::pictures
