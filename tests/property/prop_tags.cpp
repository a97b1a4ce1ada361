// Whatever is scanned or typed: a slip of the finger is caught, and no bytes do harm.
#include <rapidcheck.h>

#include <iostream>

#include "../documents/pictures.h"
#include "base/text.h"
#include "tags/code.h"
#include "tags/symbol.h"

using namespace burrow;
using namespace burrow::tags;

namespace {

constexpr std::string_view checkedCharacters = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ";

rc::Gen<std::string> anyCode() {
    return rc::gen::map(rc::gen::arbitrary<std::uint64_t>(), [](std::uint64_t seed) {
        SeededRandom random(seed);
        return generateCode(random);
    });
}

rc::Gen<std::string> anyBytes() {
    return rc::gen::map(rc::gen::arbitrary<std::vector<std::uint8_t>>(),
                        [](const auto& bytes) { return std::string(bytes.begin(), bytes.end()); });
}

/// Prefixes that bring the check into each of its 37 states, told apart by their check character.
std::vector<std::string> prefixOfEveryState() {
    std::vector<std::string> prefixes;
    std::string seen;
    for (const char a : checkedCharacters) {
        for (const char b : checkedCharacters) {
            const char check = *checkCharacter(std::string{a, b});
            if (seen.find(check) != std::string::npos) continue;
            seen += check;
            prefixes.push_back({a, b});
        }
    }
    return prefixes;
}

/// In every state every swap of two different neighbours changes the check: 37 times 630 pairs,
/// none of which is missed by a pure system (ISO/IEC 7064).
bool everySwapIsCaught() {
    int pairs = 0;
    int missed = 0;
    for (const auto& prefix : prefixOfEveryState()) {
        for (std::size_t i = 0; i < checkedCharacters.size(); ++i) {
            for (std::size_t k = i + 1; k < checkedCharacters.size(); ++k) {
                const char a = checkedCharacters[i];
                const char b = checkedCharacters[k];
                ++pairs;
                if (checkCharacter(prefix + a + b) == checkCharacter(prefix + b + a)) ++missed;
            }
        }
    }
    std::cout << "swaps: " << pairs << " tried, " << missed << " missed\n";
    return pairs == 23'310 && missed == 0;
}

std::size_t characters(std::string_view utf8) {
    std::size_t count = 0;
    for (const char c : utf8) count += (static_cast<unsigned char>(c) & 0xC0U) != 0x80;
    return count;
}

bool codes() {
    bool ok = everySwapIsCaught();
    ok &= rc::check("every wrong character in a printed code is caught", [] {
        const auto code = *anyCode();
        const auto printed = code + *checkCharacter(code);
        for (std::size_t i = 0; i < printed.size(); ++i) {
            for (const char wrong : codeAlphabet) {
                if (wrong == printed[i]) continue;
                auto typed = printed;
                typed[i] = wrong;
                RC_ASSERT(!parseTyped(typed));
                RC_ASSERT(std::holds_alternative<DamagedTag>(
                    parsePayload("BURROWBOOK:" + typed + "/20")));
            }
        }
    });
    ok &= rc::check("every swap of neighbours in a printed code is caught", [] {
        const auto code = *anyCode();
        const auto printed = code + *checkCharacter(code);
        for (std::size_t i = 0; i + 1 < printed.size(); ++i) {
            auto typed = printed;
            std::swap(typed[i], typed[i + 1]);
            if (typed != printed) RC_ASSERT(!parseTyped(typed));
        }
    });
    ok &= rc::check("a code survives sloppy typing", [] {
        const auto code = *anyCode();
        std::string typed;
        for (const char c : displayCode(code)) {
            if (*rc::gen::arbitrary<bool>()) typed += ' ';
            const bool lower = *rc::gen::arbitrary<bool>();
            if (c == '0') {
                typed += *rc::gen::element('0', 'o', 'O');
            } else if (c == '1') {
                typed += *rc::gen::element('1', 'i', 'I', 'l', 'L');
            } else {
                typed += lower ? lowerAscii({&c, 1}).front() : c;
            }
        }
        RC_ASSERT(parseTyped(typed).value() == code);
    });
    return ok;
}

bool bytes() {
    bool ok = rc::check("any bytes are something", [] {
        const auto text = *anyBytes();
        const auto reading = parsePayload(text);
        RC_ASSERT(!std::holds_alternative<OwnTag>(reading));
        if (const auto* foreign = std::get_if<ForeignSymbol>(&reading)) {
            RC_ASSERT(isUtf8(foreign->shown));
            RC_ASSERT(characters(foreign->shown) <= 60U);
        }
        RC_ASSERT(!parseTyped(text + "**"));
    });
    ok &= rc::check("a tag survives its symbol", [] {
        const auto code = *anyCode();
        const Millimetres side{static_cast<double>(*rc::gen::inRange(1, 1000))};
        const auto symbol = encode(payload(code, side)).value();
        const auto found = decode(test::Picture(symbol, 3).view(), Effort::fast);
        RC_ASSERT(found.size() == 1U);
        RC_ASSERT((parsePayload(found[0].bytes) == TagReading(OwnTag{code, side})));
    });
    ok &= rc::check("noise is no symbol and does no harm", [] {
        const int width = *rc::gen::inRange(1, 60);
        const int height = *rc::gen::inRange(1, 60);
        const auto noise = *rc::gen::container<std::vector<std::uint8_t>>(
            static_cast<std::size_t>(width * height), rc::gen::arbitrary<std::uint8_t>());
        RC_ASSERT(decode({noise.data(), width, height, width}, Effort::thorough).empty());
    });
    return ok;
}

}  // namespace

int main() {
    bool ok = codes();
    ok &= bytes();
    return ok ? 0 : 1;
}
