// JPEG by libjpeg (libjpeg-turbo where it is), whose errors come back by longjmp: the functions that
// call it own nothing.
#include <algorithm>
#include <csetjmp>
#include <cstdio>
#include <cstdlib>
// jpeglib.h wants cstdio before it.
#include <jerror.h>
#include <jpeglib.h>

#include "pictures/codecs.h"

namespace burrow::pictures {
namespace {

/// A progressive picture may come in any number of scans, each of which costs a pass over it.
constexpr int mostScans = 100;

struct Trap {
    jpeg_error_mgr manager;  // first, so that libjpeg's pointer is ours
    std::jmp_buf back;
    bool isDamaged = false;
    bool isTooLarge = false;  ///< its parts need more memory than there may be
};

Trap& trapOf(j_common_ptr codec) { return *reinterpret_cast<Trap*>(codec->err); }

[[noreturn]] void leave(j_common_ptr codec) {
    // Debian's library keeps all in memory: what does not fit would need a "backing store".
    const int code = codec->err->msg_code;
    trapOf(codec).isTooLarge = code == JERR_NO_BACKING_STORE || code == JERR_OUT_OF_MEMORY;
    std::longjmp(trapOf(codec).back, 1);
}

/// Warnings that mean missing or made-up pixels; others, of odd markers, do no harm.
void note(j_common_ptr codec, int level) {
    if (level >= 0) return;
    switch (codec->err->msg_code) {
        case JWRN_HIT_MARKER:
        case JWRN_HUFF_BAD_CODE:
        case JWRN_JPEG_EOF:
        case JWRN_MUST_RESYNC: trapOf(codec).isDamaged = true; break;
        default: break;
    }
}

void silent(j_common_ptr /*codec*/) {}

void countScans(j_common_ptr codec) {
    const auto* reader = reinterpret_cast<j_decompress_ptr>(codec);
    if (reader->input_scan_number > mostScans) leave(codec);
}

void setTrap(Trap& trap) {
    jpeg_std_error(&trap.manager);
    trap.manager.error_exit = leave;
    trap.manager.emit_message = note;
    trap.manager.output_message = silent;
}

enum class Rows { all, damaged, tooLarge };

/// Owns nothing but the codec. `memory` is in bytes, without the picture.
Rows readRows(std::span<const std::uint8_t> bytes, Raster& picture, long memory) {
    jpeg_decompress_struct codec{};
    jpeg_progress_mgr progress{};
    Trap trap;
    setTrap(trap);
    codec.err = &trap.manager;
    if (setjmp(trap.back) != 0) {
        jpeg_destroy_decompress(&codec);
        return trap.isTooLarge ? Rows::tooLarge : Rows::damaged;
    }
    jpeg_create_decompress(&codec);
    codec.mem->max_memory_to_use = memory;
    progress.progress_monitor = countScans;
    codec.progress = &progress;
    jpeg_mem_src(&codec, bytes.data(), static_cast<unsigned long>(bytes.size()));
    jpeg_read_header(&codec, TRUE);
    const bool isAsInspected = static_cast<int>(codec.image_width) == picture.width() &&
                               static_cast<int>(codec.image_height) == picture.height();
    // Pictures for print, in cyan, magenta, yellow and black, do not come from cameras.
    const bool isColour = codec.jpeg_color_space == JCS_YCbCr ||
                          codec.jpeg_color_space == JCS_RGB ||
                          codec.jpeg_color_space == JCS_GRAYSCALE;
    if (!isAsInspected || !isColour) leave(reinterpret_cast<j_common_ptr>(&codec));
    codec.out_color_space = JCS_RGB;
    jpeg_start_decompress(&codec);
    while (codec.output_scanline < codec.output_height) {
        JSAMPROW row = picture.row(static_cast<int>(codec.output_scanline));
        jpeg_read_scanlines(&codec, &row, 1);
    }
    jpeg_finish_decompress(&codec);
    jpeg_destroy_decompress(&codec);
    return trap.isDamaged ? Rows::damaged : Rows::all;
}

/// Whether it could be written; `out` is malloc's, and the caller's even where it failed.
bool writeRows(const Raster& picture, int quality, unsigned char*& out, unsigned long& size) {
    jpeg_compress_struct codec{};
    Trap trap;
    setTrap(trap);
    codec.err = &trap.manager;
    if (setjmp(trap.back) != 0) {
        jpeg_destroy_compress(&codec);
        return false;
    }
    jpeg_create_compress(&codec);
    jpeg_mem_dest(&codec, &out, &size);
    codec.image_width = static_cast<JDIMENSION>(picture.width());
    codec.image_height = static_cast<JDIMENSION>(picture.height());
    codec.input_components = 3;
    codec.in_color_space = JCS_RGB;
    jpeg_set_defaults(&codec);
    jpeg_set_quality(&codec, quality, TRUE);
    jpeg_start_compress(&codec, TRUE);
    while (codec.next_scanline < codec.image_height) {
        auto* row = const_cast<JSAMPROW>(picture.row(static_cast<int>(codec.next_scanline)));
        jpeg_write_scanlines(&codec, &row, 1);
    }
    jpeg_finish_compress(&codec);
    jpeg_destroy_compress(&codec);
    return true;
}

}  // namespace

Result<Raster> decodeJpeg(std::span<const std::uint8_t> bytes, const PictureInfo& info,
                          const Limits& limits) {
    Raster picture(info.width, info.height);
    // Some rows of any picture fit, however large it is.
    constexpr std::int64_t least = 16'000'000;
    const auto memory = std::max(least, limits.memory - 3 * info.pixels());
    switch (readRows(bytes, picture, static_cast<long>(memory))) {
        case Rows::damaged: return fail(Trouble::badInput, {"picture.damaged"});
        case Rows::tooLarge: return fail(Trouble::badInput, {"picture.progressive"});
        case Rows::all: break;
    }
    return picture;
}

Result<Bytes> encodeJpeg(const Raster& picture, int quality) {
    unsigned char* out = nullptr;
    unsigned long size = 0;
    const bool isWritten = !picture.isEmpty() && writeRows(picture, quality, out, size);
    const std::unique_ptr<unsigned char, decltype(&std::free)> owner(out, &std::free);
    if (!isWritten) return fail(Trouble::badInput, {"picture.unwritable"});
    return Bytes(out, out + size);
}

}  // namespace burrow::pictures
