// Writes the book that becomes the fixture of the newest schema, and what this version shows of it. To be
// run once for each schema N, before it is released, from tests/migrations:
//   make_fixture n.book schema_N.txt
//   sqlite3 n.book .dump >schema_N.sql
//   echo "PRAGMA application_id = 1114792555; PRAGMA user_version = N;" >>schema_N.sql
#include <fstream>
#include <iostream>

#include "migrations/populate.h"

int main(int argc, char** argv) {
    if (argc != 3) {
        std::cerr << "make_fixture BOOK TEXT\n";
        return 2;
    }
    burrow::test::TestBook room;
    burrow::test::populate(room);
    if (!burrow::check(room.book)->isSound()) return 1;
    std::ofstream(argv[2]) << burrow::test::shown(room.book);
    burrow::test::must(room.book.connection().execute("PRAGMA wal_checkpoint(TRUNCATE)"));
    std::filesystem::copy_file(room.book.path(), argv[1],
                               std::filesystem::copy_options::overwrite_existing);
    return 0;
}
