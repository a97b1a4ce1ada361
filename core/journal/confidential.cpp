#include "journal/confidential.h"

#include <array>

#include "journal/json_reading.h"

namespace burrow {
namespace {

using nlohmann::json;

constexpr std::array<const char*, 2> confidentialFields{"party", "price"};

bool saysSo(const json& body) {
    if (reading::flag(body, "confidential")) return true;
    for (const auto* field : confidentialFields) {
        if (reading::member(body, field) != nullptr) return true;
    }
    return false;
}

}  // namespace

bool isConfidential(const json& body) {
    if (saysSo(body)) return true;
    const auto* inner = reading::member(body, "body");
    return inner != nullptr && saysSo(*inner);
}

bool hasConfidentialPart(const FactBody& body) {
    return !body.confidential.value_or(false) && (body.party || body.price);
}

FactBody withoutConfidentialPart(FactBody body) {
    body.party.reset();
    body.price.reset();
    return body;
}

void takeConfidentialPart(json& body, const json& from) {
    if (!body.is_object()) return;
    for (const auto* field : confidentialFields) {
        body.erase(field);
        if (const auto* value = reading::member(from, field)) body[field] = *value;
    }
}

bool sameConfidentialPart(const json& a, const json& b) {
    for (const auto* field : confidentialFields) {
        const auto* left = reading::member(a, field);
        const auto* right = reading::member(b, field);
        if ((left == nullptr) != (right == nullptr)) return false;
        if (left != nullptr && *left != *right) return false;
    }
    return true;
}

}  // namespace burrow
