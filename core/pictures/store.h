// Where photos are kept, beside the book: files named by their SHA-256, so that the same photo is kept
// once and a changed one is noticed.
#pragma once

#include <array>
#include <filesystem>
#include <string_view>

#include "base/files.h"
#include "base/hash.h"
#include "pictures/inspect.h"

namespace burrow::pictures {

/// Turns untrusted picture bytes into ones that can be shown and shared. Implemented by the platform.
class Developer {
public:
    virtual ~Developer() = default;

    struct Developed {
        Bytes upright;    ///< JPEG, orientation applied, no metadata at all
        Bytes thumbnail;  ///< JPEG, at most `thumbnailSide` pixels a side
        int width = 0;    ///< of the upright picture
        int height = 0;
    };
    /// `info` is what inspect() said of the same bytes.
    virtual Result<Developed> develop(std::span<const std::uint8_t> bytes,
                                      const PictureInfo& info) = 0;
    /// A JPEG of the same picture, upright and without metadata, at most `side` pixels a side.
    virtual Result<Bytes> reduce(std::span<const std::uint8_t> bytes, const PictureInfo& info,
                                 int side) = 0;
};

/// Longest sides in pixels: a thumbnail fills a row, a reduced copy the screen of a phone.
inline constexpr int thumbnailSide = 320;
inline constexpr int reducedSide = 1280;

struct KeptPhoto {
    Sha256 picture;   ///< of the upright copy
    Sha256 original;  ///< of the bytes as they came
};

/// What is kept of photos, each in a folder of its own.
inline constexpr std::array<std::string_view, 4> photoFolders{"pictures", "thumbnails", "reduced",
                                                              "originals"};

/// Files are written and flushed before keep() returns, so an entry may name them.
class Store {
public:
    /// `folder` is made when the first photo is kept.
    Store(std::filesystem::path folder, Files& files) : folder_(std::move(folder)), files_(files) {}

    /// The folder that belongs to a book.
    [[nodiscard]] static std::filesystem::path folderFor(const std::filesystem::path& book);

    /// Inspects, develops and keeps a photo: an upright copy without location, a thumbnail, and the
    /// original as it came, which stays on this device.
    Result<KeptPhoto> keep(std::span<const std::uint8_t> bytes, Developer& developer);

    [[nodiscard]] std::filesystem::path picturePath(const Sha256& picture) const;
    [[nodiscard]] std::filesystem::path thumbnailPath(const Sha256& picture) const;
    /// The smaller copy that another device sent in place of the picture.
    [[nodiscard]] std::filesystem::path reducedPath(const Sha256& picture) const;
    [[nodiscard]] std::filesystem::path originalPath(const Sha256& original) const;
    /// Whether the upright copy is there and its bytes give its name.
    [[nodiscard]] bool isIntact(const Sha256& picture);

private:
    std::filesystem::path folder_;
    Files& files_;
};

}  // namespace burrow::pictures
