// Pages as PDF files.
#pragma once

#include <filesystem>
#include <span>
#include <string>

#include "base/files.h"
#include "documents/page.h"

namespace burrow::print {

/// The pages as a PDF document, each of exactly its own size and without margins. Fails with
/// `badInput` where there are no pages. The application's fonts must be registered.
[[nodiscard]] Result<Bytes> renderPdf(std::span<const documents::Page> pages,
                                      const std::string& title);

class PdfWriter {
public:
    /// Does not own the files.
    explicit PdfWriter(Files& files) : files_(files) {}

    /// All or nothing: the file is there as a whole, or what was there before still is.
    Done write(const std::filesystem::path& path, std::span<const documents::Page> pages,
               const std::string& title);

private:
    Files& files_;
};

}  // namespace burrow::print
