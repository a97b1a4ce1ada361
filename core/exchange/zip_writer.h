// Writes a zip file as ISO/IEC 21320-1 allows it (stored or deflated, no encryption) strictly forward:
// the sink is never asked to go back, so it may encrypt or send what it gets.
#pragma once

#include <memory>
#include <string>

#include "base/file_writer.h"

struct archive;

namespace burrow::exchange {

class ZipWriter {
public:
    /// `sink` must outlive the writer.
    static Result<ZipWriter> begin(ByteSink& sink);
    ZipWriter(ZipWriter&&) noexcept;
    ZipWriter& operator=(ZipWriter&&) = delete;
    ~ZipWriter();

    /// Starts a file that is compressed while it is written; its size need not be known.
    Done startDeflated(const std::string& name);
    /// Starts a file that is written as it is, of exactly `size` bytes: photos do not get smaller.
    Done startStored(const std::string& name, std::uint64_t size);
    /// Adds to the file that was started last.
    Done write(std::span<const std::uint8_t> bytes);
    /// Writes the directory. What was not closed is no zip file.
    Done close();

private:
    struct State;
    explicit ZipWriter(std::unique_ptr<State> state);
    Done start(const std::string& name, const std::uint64_t* storedSize);
    [[nodiscard]] tl::unexpected<Error> trouble() const;
    std::unique_ptr<State> state_;
};

}  // namespace burrow::exchange
