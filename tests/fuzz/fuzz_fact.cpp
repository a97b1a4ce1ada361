// The body of a fact: as JSON from another device, and as a field typed at a shell. The first byte
// chooses the kind, the second the field.
#include <nlohmann/json.hpp>

#include "fuzz/target.h"
#include "model/fact.h"

using namespace burrow;
using nlohmann::json;

FUZZ_TARGET(fact) {
    if (bytes.size() < 2) return;
    const auto kinds = factKinds();
    const auto fields = factFields();
    const auto kind = kinds[static_cast<unsigned char>(bytes[0]) % kinds.size()].kind;
    const auto field = fields[static_cast<unsigned char>(bytes[1]) % fields.size()].name;
    const auto text = bytes.substr(2);
    FactBody typed;
    if (setField(typed, kind, field, text)) {
        const auto object = toJson(typed);
        BURROW_REQUIRE(object.is_object());
    }
    const auto object = json::parse(text, nullptr, false);
    const auto body = factBody(kind, object);
    if (!body) return;
    const auto again = factBody(kind, toJson(*body));
    BURROW_REQUIRE(again.has_value() && *again == *body);
}
