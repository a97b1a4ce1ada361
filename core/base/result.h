// The one way a function says that it could not do what it was asked. No exception crosses a module
// border; an Error always carries a message that can be shown to the keeper as it is.
#pragma once

#include <tl/expected.hpp>
#include <utility>

#include "base/message.h"

namespace burrow {

/// What kind of trouble it is: decides the exit status and whether trying again can help.
enum class Trouble {
    badInput,    ///< what was given cannot be used; nothing was changed
    notFound,    ///< no such book, animal, tag or file
    readOnly,    ///< the book or the folder cannot be written
    locked,      ///< another program is writing; try again
    full,        ///< no room left on the device
    corrupt,     ///< the file is damaged
    newer,       ///< the book was written by a later version
    inputOutput  ///< the device failed while reading or writing
};

/// Where in the source an error was made. (std::source_location, which clang 14 lacks.)
struct SourcePlace {
    const char* file;
    int line;

    [[nodiscard]] static constexpr SourcePlace here(const char* file = __builtin_FILE(),
                                                    int line = __builtin_LINE()) {
        return {file, line};
    }
};

struct Error {
    Trouble trouble;
    Message message;
    SourcePlace where;
};

template <class T>
class [[nodiscard]] Result : public tl::expected<T, Error> {
public:
    using tl::expected<T, Error>::expected;
    Result(tl::expected<T, Error> other) : tl::expected<T, Error>(std::move(other)) {}
};

/// The result of doing something that has no value of its own.
using Done = Result<void>;

[[nodiscard]] inline tl::unexpected<Error> fail(Trouble trouble, Message message,
                                                const SourcePlace& where = SourcePlace::here()) {
    return tl::unexpected<Error>(Error{trouble, std::move(message), where});
}

/// Hands an error on unchanged.
template <class T>
[[nodiscard]] tl::unexpected<Error> failAs(const Result<T>& failed) {
    return tl::unexpected<Error>(failed.error());
}

}  // namespace burrow

#define BURROW_TRY_JOIN_(a, b) a##b
#define BURROW_TRY_NAME_(a, b) BURROW_TRY_JOIN_(a, b)
#define BURROW_TRY_(name, declaration, expression)               \
    auto name = (expression);                                    \
    if (!name) return ::tl::unexpected(std::move(name).error()); \
    declaration = *std::move(name)

/// `BURROW_TRY(auto book, open(path));` gives the value, or leaves the function with the error.
#define BURROW_TRY(declaration, expression) \
    BURROW_TRY_(BURROW_TRY_NAME_(tried_, __LINE__), declaration, expression)

/// `BURROW_DO(save(book));` goes on, or leaves the function with the error.
#define BURROW_DO(expression) \
    if (auto done_ = (expression); !done_) return ::tl::unexpected(std::move(done_).error())
