#include "storage/word_splitter.h"

#include <sqlite3.h>

#include <array>
#include <utility>

namespace burrow::storage {

/// SQLite's own tokenizer, the same that the index is made with.
struct WordSplitter::Tokenizer {
    Tokenizer() = default;
    Tokenizer(const Tokenizer&) = delete;
    Tokenizer& operator=(const Tokenizer&) = delete;
    ~Tokenizer() {
        if (instance != nullptr) functions.xDelete(instance);
    }

    fts5_tokenizer functions{};
    Fts5Tokenizer* instance = nullptr;
};

namespace {

/// The way to the functions of the full-text module (sqlite.org/fts5.html, 7).
fts5_api* apiOf(sqlite3* database) {
    fts5_api* api = nullptr;
    sqlite3_stmt* statement = nullptr;
    if (sqlite3_prepare_v2(database, "SELECT fts5(?1)", -1, &statement, nullptr) != SQLITE_OK) {
        return nullptr;
    }
    sqlite3_bind_pointer(statement, 1, static_cast<void*>(&api), "fts5_api_ptr", nullptr);
    sqlite3_step(statement);
    sqlite3_finalize(statement);
    return api;
}

int addWord(void* words, int, const char* folded, int length, int begin, int end) {
    static_cast<std::vector<TextWord>*>(words)->push_back(
        {std::string(folded, static_cast<std::size_t>(length)), static_cast<std::size_t>(begin),
         static_cast<std::size_t>(end)});
    return SQLITE_OK;
}

}  // namespace

Result<WordSplitter> WordSplitter::of(Connection& connection) {
    auto* database = connection.database_.get();
    auto* api = apiOf(database);
    if (api == nullptr) return failFrom(database, SQLITE_ERROR);
    auto tokenizer = std::make_shared<Tokenizer>();
    void* context = nullptr;
    int code = api->xFindTokenizer(api, "unicode61", &context, &tokenizer->functions);
    if (code != SQLITE_OK) return failFrom(database, code);
    // As in the schema.
    std::array<const char*, 4> options{"remove_diacritics", "2", "separators",
                                       "🕷🕸🦂🦗🪳🪲🐛"};
    code = tokenizer->functions.xCreate(context, options.data(), static_cast<int>(options.size()),
                                        &tokenizer->instance);
    if (code != SQLITE_OK) return failFrom(nullptr, code);
    return WordSplitter(std::move(tokenizer));
}

std::vector<TextWord> WordSplitter::split(std::string_view text) const {
    std::vector<TextWord> words;
    if (text.empty()) return words;
    tokenizer_->functions.xTokenize(tokenizer_->instance, &words, FTS5_TOKENIZE_DOCUMENT,
                                    text.data(), static_cast<int>(text.size()), addWord);
    return words;
}

}  // namespace burrow::storage
