// A file behind a passphrase: Argon2id makes the key (RFC 9106), and the content follows as chunks of
// libsodium's secretstream (XChaCha20-Poly1305), so that a chunk that was changed, cut off, left out or
// put elsewhere is noticed. FORMAT.md gives the bytes.
#pragma once

#include <filesystem>
#include <functional>
#include <memory>
#include <string_view>

#include "base/file_writer.h"
#include "base/random.h"

namespace burrow::exchange {

/// What making the key costs: whoever tries passphrases pays it for each.
struct SealCost {
    std::uint32_t passes = 3;
    std::uint32_t memoryKiB = 64 * 1024;
};

/// Seals what is written to it and hands it on.
class SealWriter final : public ByteSink {
public:
    /// Writes the header. `sink` must outlive the writer. Fails with `full` where the device has no
    /// memory to make the key.
    static Result<SealWriter> begin(ByteSink& sink, std::string_view passphrase, Random& random,
                                    const SealCost& cost = {});
    SealWriter(SealWriter&&) noexcept;
    ~SealWriter() override;

    Done write(std::span<const std::uint8_t> bytes) override;
    /// Writes the last chunk. What has no last chunk is taken for cut.
    Done close();

private:
    struct State;
    explicit SealWriter(std::unique_ptr<State> state);
    Done writeChunk(bool isLast);
    std::unique_ptr<State> state_;
};

/// Whether the file begins as a sealed one does.
Result<bool> isSealed(const std::filesystem::path& path);

/// Called with the part that is done, 0 to 1; false ends the work.
using SealProgress = std::function<bool(double)>;

/// Opens a sealed file into `sink`. Fails with `badInput` for a wrong passphrase (which can't be told
/// from a damaged beginning), for what was changed or cut, and for a header that asks for more memory or
/// time than this reader gives. The sink may have got the beginning by then: it is to be thrown away.
Done unseal(const std::filesystem::path& path, std::string_view passphrase, ByteSink& sink,
            const SealProgress& progress = {});

}  // namespace burrow::exchange
