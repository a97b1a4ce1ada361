// Words as the full-text index of SQLite knows them: runs of letters and digits of any script, without
// regard to case and accents.
#pragma once

#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "storage/sqlite.h"

namespace burrow::storage {

struct TextWord {
    std::string folded;  ///< without case and accents: equal for words that find each other
    std::size_t begin = 0;
    std::size_t end = 0;  ///< its bytes in the text are [begin, end)
};

/// Splits text just as the index does. Lives no longer than the connection it was made from.
class WordSplitter {
public:
    static Result<WordSplitter> of(Connection& connection);

    /// The words of a text in their order; of bytes that are no UTF-8 whatever can be made of them.
    [[nodiscard]] std::vector<TextWord> split(std::string_view text) const;

private:
    struct Tokenizer;

    explicit WordSplitter(std::shared_ptr<const Tokenizer> tokenizer)
        : tokenizer_(std::move(tokenizer)) {}

    std::shared_ptr<const Tokenizer> tokenizer_;
};

}  // namespace burrow::storage
