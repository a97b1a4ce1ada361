#include "exchange/zip_writer.h"

#include <archive.h>
#include <archive_entry.h>

#include <optional>

namespace burrow::exchange {
namespace {

struct Closer {
    void operator()(archive* zip) const { archive_write_free(zip); }
};

struct EntryCloser {
    void operator()(archive_entry* entry) const { archive_entry_free(entry); }
};

}  // namespace

/// The library never hears that the sink failed or is no longer wanted: a zip that ends in the middle of an
/// entry is one that it does not free whole (3.6.2). What it writes from then on goes nowhere.
struct ZipWriter::State {
    ~State() { sink = nullptr; }
    State() = default;
    State(const State&) = delete;
    State& operator=(const State&) = delete;

    ByteSink* sink = nullptr;
    std::optional<Error> sinkError;  // what the sink said, which says more than the library does
    std::unique_ptr<archive_entry, EntryCloser> entry;
    std::unique_ptr<archive, Closer> zip;

    static la_ssize_t write(archive* /*zip*/, void* data, const void* bytes, std::size_t size) {
        auto* state = static_cast<State*>(data);
        if (state->sink != nullptr && !state->sinkError) {
            const auto written =
                state->sink->write({static_cast<const std::uint8_t*>(bytes), size});
            if (!written) state->sinkError = written.error();
        }
        return static_cast<la_ssize_t>(size);
    }
    [[nodiscard]] bool succeeded(bool isTaken) const { return isTaken && !sinkError; }
};

ZipWriter::ZipWriter(std::unique_ptr<State> state) : state_(std::move(state)) {}
ZipWriter::ZipWriter(ZipWriter&&) noexcept = default;
ZipWriter::~ZipWriter() = default;

Result<ZipWriter> ZipWriter::begin(ByteSink& sink) {
    auto state = std::make_unique<State>();
    state->sink = &sink;
    state->entry.reset(archive_entry_new());
    state->zip.reset(archive_write_new());
    auto* zip = state->zip.get();
    archive_write_set_format_zip(zip);
    archive_write_set_bytes_per_block(zip, 0);  // hand on what there is, without padding
    // Entries repeat themselves so much that the fastest level already makes a fifth of them.
    archive_write_set_options(zip, "zip:compression-level=1");
    const int opened =
        archive_write_open2(zip, state.get(), nullptr, State::write, nullptr, nullptr);
    ZipWriter writer(std::move(state));
    if (!writer.state_->succeeded(opened == ARCHIVE_OK)) return writer.trouble();
    return writer;
}

tl::unexpected<Error> ZipWriter::trouble() const {
    if (state_->sinkError) return tl::unexpected<Error>(*state_->sinkError);
    const char* cause = archive_error_string(state_->zip.get());
    return fail(Trouble::inputOutput,
                {"zip.trouble", {{"cause", std::string(cause != nullptr ? cause : "")}}});
}

Done ZipWriter::start(const std::string& name, const std::uint64_t* storedSize) {
    auto* zip = state_->zip.get();
    auto* entry = state_->entry.get();
    archive_entry_clear(entry);
    archive_entry_set_pathname(entry, name.c_str());
    archive_entry_set_filetype(entry, AE_IFREG);
    archive_entry_set_perm(entry, 0644);
    if (storedSize != nullptr) {
        archive_write_zip_set_compression_store(zip);
        archive_entry_set_size(entry, static_cast<la_int64_t>(*storedSize));
    } else {
        archive_write_zip_set_compression_deflate(zip);
    }
    const int written = archive_write_header(zip, entry);
    return state_->succeeded(written == ARCHIVE_OK) ? Done() : Done(trouble());
}

Done ZipWriter::startDeflated(const std::string& name) { return start(name, nullptr); }

Done ZipWriter::startStored(const std::string& name, std::uint64_t size) {
    return start(name, &size);
}

Done ZipWriter::write(std::span<const std::uint8_t> bytes) {
    while (!bytes.empty()) {
        const auto taken = archive_write_data(state_->zip.get(), bytes.data(), bytes.size());
        if (!state_->succeeded(taken > 0)) return trouble();
        bytes = bytes.subspan(static_cast<std::size_t>(taken));
    }
    return {};
}

Done ZipWriter::close() {
    const int closed = archive_write_close(state_->zip.get());
    return state_->succeeded(closed == ARCHIVE_OK) ? Done() : Done(trouble());
}

}  // namespace burrow::exchange
