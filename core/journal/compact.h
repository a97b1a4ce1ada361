// Records as compact bytes, private to one version of the program: numbers are short, nothing has a name.
// A record says once in which order its fields stand, as a template over the coder, and over whether it is
// read (LikeA<Digest> is Digest or const Digest).
#pragma once

#include <concepts>
#include <cstdint>
#include <cstring>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "base/files.h"
#include "base/ids.h"

namespace burrow {

template <class T, class Record>
concept LikeA = std::same_as<std::remove_const_t<T>, Record>;

class Encoder {
public:
    Encoder() = default;
    explicit Encoder(std::uint8_t version) : bytes{version} {}

    void number(std::int64_t value) {
        // Zigzag and seven bits a byte (as in the protocol buffers encoding): days and counts are short.
        auto rest =
            static_cast<std::uint64_t>(value) << 1U ^ static_cast<std::uint64_t>(value >> 63);
        while (rest >= 0x80) {
            bytes.push_back(static_cast<std::uint8_t>(rest | 0x80U));
            rest >>= 7U;
        }
        bytes.push_back(static_cast<std::uint8_t>(rest));
    }
    template <class Integer>
    void whole(const Integer& value) {
        number(static_cast<std::int64_t>(value));
    }
    void real(const double& value) {
        std::uint64_t bits = 0;
        std::memcpy(&bits, &value, sizeof bits);
        for (unsigned i = 0; i < 8; ++i) bytes.push_back(static_cast<std::uint8_t>(bits >> 8 * i));
    }
    void text(const std::string& value) {
        number(static_cast<std::int64_t>(value.size()));
        bytes.insert(bytes.end(), value.begin(), value.end());
    }
    void blob(std::span<const std::uint8_t> part) {
        number(static_cast<std::int64_t>(part.size()));
        bytes.insert(bytes.end(), part.begin(), part.end());
    }
    void uuid(const Uuid& value) {
        bytes.insert(bytes.end(), value.bytes.begin(), value.bytes.end());
    }
    template <class T, class Each>
    void maybe(const std::optional<T>& value, Each each) {
        number(value ? 1 : 0);
        if (value) each(*value);
    }
    template <class T, class Each>
    void list(const std::vector<T>& values, Each each) {
        number(static_cast<std::int64_t>(values.size()));
        for (auto& value : values) each(value);
    }

    Bytes bytes;
};

class Decoder {
public:
    explicit Decoder(std::span<const std::uint8_t> bytes) : bytes_(bytes) {}

    std::int64_t number() {
        std::uint64_t value = 0;
        for (unsigned shift = 0; shift < 64; shift += 7) {
            const auto byte = take();
            value |= static_cast<std::uint64_t>(byte & 0x7FU) << shift;
            if (byte < 0x80) break;
        }
        return static_cast<std::int64_t>(value >> 1U) ^ -static_cast<std::int64_t>(value & 1U);
    }
    template <class Integer>
    void whole(Integer& value) {
        value = static_cast<Integer>(number());
    }
    void real(double& value) {
        std::uint64_t bits = 0;
        for (unsigned i = 0; i < 8; ++i) bits |= static_cast<std::uint64_t>(take()) << 8 * i;
        std::memcpy(&value, &bits, sizeof bits);
    }
    void text(std::string& value) {
        const auto size = number();
        if (size < 0 || static_cast<std::uint64_t>(size) > bytes_.size()) {
            isWhole = false;
            return;
        }
        const auto part = bytes_.first(static_cast<std::size_t>(size));
        value.assign(part.begin(), part.end());
        bytes_ = bytes_.subspan(part.size());
    }
    template <class T, class Each>
    void maybe(std::optional<T>& value, Each each) {
        if (number() != 0) each(value.emplace());
    }
    template <class T, class Each>
    void list(std::vector<T>& values, Each each) {
        const auto size = number();
        for (std::int64_t i = 0; i < size && isWhole; ++i) each(values.emplace_back());
    }
    void blob(std::span<const std::uint8_t>& part) {
        const auto size = static_cast<std::uint64_t>(number());
        isWhole = isWhole && size <= bytes_.size();
        if (!isWhole) return;
        part = bytes_.first(static_cast<std::size_t>(size));
        bytes_ = bytes_.subspan(part.size());
    }
    void uuid(Uuid& value) {
        for (auto& byte : value.bytes) byte = take();
    }
    [[nodiscard]] bool isAtEnd() const { return bytes_.empty(); }

    bool isWhole = true;

private:
    std::uint8_t take() {
        if (bytes_.empty()) {
            isWhole = false;
            return 0;
        }
        const auto byte = bytes_.front();
        bytes_ = bytes_.subspan(1);
        return byte;
    }
    std::span<const std::uint8_t> bytes_;
};

}  // namespace burrow
