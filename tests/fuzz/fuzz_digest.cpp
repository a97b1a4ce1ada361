// The folded state of a subject, as another program might have left it in the file.
#include "fuzz/target.h"
#include "journal/digest_codec.h"

using namespace burrow;

FUZZ_TARGET(digest) {
    const auto read = decodeDigest(fuzz::asBytes(bytes));
    if (!read) return;
    const auto again = encodeDigest(*read);
    BURROW_REQUIRE(encodeDigest(decodeDigest(again).value()) == again);
}
