// PNG by libpng: read by its simplified interface, which gives sRGB bytes whatever the file holds, and
// written row by row.
#include <png.h>

#include <csetjmp>

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

/// Where a picture goes, and what went wrong there.
struct Writing {
    ByteSink& sink;
    Done done;

    /// Whether the piece arrived. Nothing with a destructor is left for the caller, who may jump.
    bool put(const std::uint8_t* bytes, std::size_t count) {
        if (done) done = sink.write({bytes, count});
        return done.has_value();
    }
};

void putPiece(png_structp codec, png_bytep bytes, std::size_t count) {
    auto* writing = static_cast<Writing*>(png_get_io_ptr(codec));
    if (!writing->put(bytes, count)) png_error(codec, "not written");
}

void flushNothing(png_structp /*codec*/) {}
void silent(png_structp /*codec*/, png_const_charp /*what*/) {}
[[noreturn]] void leave(png_structp codec, png_const_charp /*what*/) { png_longjmp(codec, 1); }

/// Errors come back by longjmp: this owns nothing but the codec.
bool writeRows(const Raster& picture, Writing& writing) {
    png_structp codec = png_create_write_struct(PNG_LIBPNG_VER_STRING, nullptr, leave, silent);
    if (codec == nullptr) return false;
    png_infop info = png_create_info_struct(codec);
    if (info == nullptr || setjmp(png_jmpbuf(codec)) != 0) {
        png_destroy_write_struct(&codec, &info);
        return false;
    }
    png_set_write_fn(codec, &writing, putPiece, flushNothing);
    png_set_IHDR(codec, info, static_cast<png_uint_32>(picture.width()),
                 static_cast<png_uint_32>(picture.height()), 8, PNG_COLOR_TYPE_RGB,
                 PNG_INTERLACE_NONE, PNG_COMPRESSION_TYPE_DEFAULT, PNG_FILTER_TYPE_DEFAULT);
    png_set_sRGB(codec, info, PNG_sRGB_INTENT_PERCEPTUAL);
    // Filters that look for the best cost more time than they save room in a photo.
    png_set_filter(codec, PNG_FILTER_TYPE_BASE, PNG_NO_FILTERS);
    constexpr int quick = 3;
    png_set_compression_level(codec, quick);
    png_write_info(codec, info);
    for (int y = 0; y < picture.height(); ++y) png_write_row(codec, picture.row(y));
    png_write_end(codec, info);
    png_destroy_write_struct(&codec, &info);
    return true;
}

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

Done writePng(const Raster& picture, ByteSink& sink) {
    Writing writing{sink, {}};
    const bool isWritten = !picture.isEmpty() && writeRows(picture, writing);
    if (!writing.done) return writing.done;
    if (!isWritten) return fail(Trouble::badInput, {"picture.unwritable"});
    return {};
}

Result<Bytes> encodePng(const Raster& picture) {
    class Memory final : public ByteSink {
    public:
        Done write(std::span<const std::uint8_t> piece) override {
            bytes.insert(bytes.end(), piece.begin(), piece.end());
            return {};
        }
        Bytes bytes;
    };
    Memory memory;
    BURROW_DO(writePng(picture, memory));
    return std::move(memory.bytes);
}

Result<Raster> decode(std::span<const std::uint8_t> bytes, const Limits& limits) {
    BURROW_TRY(const auto info, inspect(bytes, limits));
    return info.format == Format::jpeg ? decodeJpeg(bytes, info, limits) : decodePng(bytes, info);
}

}  // namespace burrow::pictures
