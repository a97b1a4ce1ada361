#include "exchange/bundle_writer.h"

#include "exchange/entry_line.h"
#include "exchange/seal.h"
#include "exchange/zip_writer.h"

namespace burrow::exchange {
namespace {

constexpr std::size_t linesTogether = std::size_t{256} * 1024;

/// Seals what passes through, and hashes it: so that what is read back can be compared.
class HashedSeal final : public ByteSink {
public:
    explicit HashedSeal(SealWriter seal) : seal_(std::move(seal)) {}
    Done write(std::span<const std::uint8_t> bytes) override {
        hash_.add(bytes);
        return seal_.write(bytes);
    }
    Result<Sha256> close() {
        BURROW_DO(seal_.close());
        return hash_.finish();
    }

private:
    SealWriter seal_;
    Sha256Stream hash_;
};

}  // namespace

// Members are torn down from the last to the first: the zip before what it writes to.
struct BundleWriter::State {
    FileWriter file;
    std::optional<HashedSeal> seal;
    std::optional<ZipWriter> zip;
    Tally tally;
    std::string lines;
    bool inEntries = true;
    Manifest manifest;
    Sha256 zipHash;

    explicit State(FileWriter writer) : file(std::move(writer)) {}
};

BundleWriter::BundleWriter(std::unique_ptr<State> state) : state_(std::move(state)) {}
BundleWriter::BundleWriter(BundleWriter&&) noexcept = default;
BundleWriter::~BundleWriter() = default;

Result<BundleWriter> BundleWriter::create(const std::filesystem::path& path,
                                          const std::string& passphrase, Random& random) {
    BURROW_TRY(auto file, FileWriter::create(path));
    auto state = std::make_unique<State>(std::move(file));
    ByteSink* sink = &state->file;
    if (!passphrase.empty()) {
        BURROW_TRY(auto seal, SealWriter::begin(*sink, passphrase, random));
        sink = &state->seal.emplace(std::move(seal));
    }
    BURROW_TRY(auto zip, ZipWriter::begin(*sink));
    state->zip.emplace(std::move(zip));
    BURROW_DO(state->zip->startDeflated(filename::entries));
    state->lines.reserve(linesTogether + limit::lineBytes);
    return BundleWriter(std::move(state));
}

Done BundleWriter::add(const StoredEntry& entry) {
    state_->tally.add(entry);
    appendLine(entry, state_->lines);
    return state_->lines.size() < linesTogether ? Done() : flushLines();
}

Done BundleWriter::add(const Entry& entry) {
    const auto body = entry.body.dump(-1, ' ', false, nlohmann::json::error_handler_t::replace);
    return add(StoredEntry{.id = entry.id,
                           .device = entry.device,
                           .seq = entry.seq,
                           .act = entry.act,
                           .hlc = entry.hlc,
                           .kind = entry.kind,
                           .thing = entry.thing,
                           .body = body,
                           .recordedAt = entry.recordedAt,
                           .happenedAt = entry.happenedAt,
                           .day = entry.day,
                           .zone = entry.zone});
}

Done BundleWriter::flushLines() {
    const auto bytes = bytesOf(state_->lines);
    state_->tally.addBytes(bytes);
    BURROW_DO(state_->zip->write(bytes));
    state_->lines.clear();
    return {};
}

Done BundleWriter::endEntries() {
    if (!state_->inEntries) return {};
    state_->inEntries = false;
    BURROW_DO(flushLines());
    state_->manifest.totals = state_->tally.finish();
    return {};
}

const std::vector<NamedPhoto>& BundleWriter::photos() const { return state_->tally.photos(); }

Done BundleWriter::addPhoto(const Sha256& picture, std::span<const std::uint8_t> bytes) {
    BURROW_DO(endEntries());
    if (!state_->manifest.photos.emplace(picture, bytes.size()).second) return {};
    BURROW_DO(state_->zip->startStored(filename::photo(picture), bytes.size()));
    return state_->zip->write(bytes);
}

Done BundleWriter::addReduced(const Sha256& full, std::span<const std::uint8_t> bytes) {
    BURROW_DO(endEntries());
    const ReducedPhoto copy{Sha256::of(bytes), bytes.size()};
    if (!state_->manifest.reduced.emplace(full, copy).second) return {};
    BURROW_DO(state_->zip->startStored(filename::reduced(full), bytes.size()));
    return state_->zip->write(bytes);
}

Result<Manifest> BundleWriter::close(Manifest manifest) {
    auto& s = *state_;
    BURROW_DO(endEntries());
    manifest.totals = s.manifest.totals;
    manifest.photos = std::move(s.manifest.photos);
    manifest.reduced = std::move(s.manifest.reduced);
    const auto text = toText(manifest);
    BURROW_DO(s.zip->startDeflated(filename::manifest));
    BURROW_DO(s.zip->write(bytesOf(text)));
    BURROW_DO(s.zip->close());
    if (s.seal) {
        BURROW_TRY(s.zipHash, s.seal->close());
    }
    BURROW_DO(s.file.flush());
    return manifest;
}

const std::filesystem::path& BundleWriter::temporary() const { return state_->file.temporary(); }

Sha256 BundleWriter::zipHash() const { return state_->zipHash; }

Done BundleWriter::publish() { return state_->file.finish(); }

Done BundleWriter::publishAs(const std::filesystem::path& path) {
    return state_->file.finishAs(path);
}

}  // namespace burrow::exchange
