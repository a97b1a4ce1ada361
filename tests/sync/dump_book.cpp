// Prints all that follows from the entries of a book: two books with the same entries give the same bytes.
#include <cstdio>

#include "journal/dump.h"

int main(int argc, char** argv) {
    using namespace burrow;
    if (argc != 2) return 2;
    auto connection = storage::Connection::open(argv[1], storage::Access::readOnly);
    if (!connection) return 1;
    const auto done = dumpLogical(*connection, [](std::string_view line) -> Done {
        std::printf("%.*s\n", static_cast<int>(line.size()), line.data());
        return {};
    });
    return done ? 0 : 1;
}
