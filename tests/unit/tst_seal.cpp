// The seal around a bundle: what goes in comes out, and nothing else does.
#include <QtTest>

#include <sodium.h>

#include "exchange/seal.h"
#include "support/book.h"

using namespace burrow;
using namespace burrow::test;
using namespace burrow::exchange;

namespace {

class Memory final : public ByteSink {
public:
    Done write(std::span<const std::uint8_t> more) override {
        bytes.insert(bytes.end(), more.begin(), more.end());
        return {};
    }
    Bytes bytes;
};

constexpr std::size_t chunk = 65'536;
constexpr std::size_t sealedChunk = chunk + 17;
constexpr std::size_t header = 60;
/// Cheap: what makes a key costly is libsodium's to prove.
constexpr SealCost cheap{1, 8};

Bytes contentOf(std::size_t size) {
    Bytes bytes(size);
    for (std::size_t i = 0; i < size; ++i) bytes[i] = static_cast<std::uint8_t>(i * 7 + i / 251);
    return bytes;
}

Bytes sealed(const Bytes& content, std::string_view passphrase = "pass",
             const SealCost& cost = cheap) {
    Memory sink;
    SystemRandom random;
    auto writer = SealWriter::begin(sink, passphrase, random, cost).value();
    // In pieces that fit no chunk.
    for (std::size_t at = 0; at < content.size(); at += 10'007) {
        must(writer.write(
            std::span(content).subspan(at, std::min<std::size_t>(10'007, content.size() - at))));
    }
    must(writer.close());
    return sink.bytes;
}

}  // namespace

class TestSeal : public QObject {
    Q_OBJECT

private:
    ScratchFolder folder_;
    DeviceFiles files_;

    /// The id of the sentence, or nothing where it opens.
    std::string refusal(const Bytes& bytes, std::string_view passphrase = "pass") {
        must(files_.write(folder_.path() / "sealed", bytes));
        Memory sink;
        const auto done = unseal(folder_.path() / "sealed", passphrase, sink);
        return done ? std::string() : done.error().message.id;
    }

private slots:
    void opensToTheSame() {
        for (const std::size_t size :
             {std::size_t{0}, std::size_t{1}, chunk - 1, chunk, chunk + 1, 3 * chunk, 200'000UL}) {
            const auto content = contentOf(size);
            const auto bytes = sealed(content);
            // A full last chunk is the last one: no empty one follows.
            const auto chunks = std::max<std::size_t>(1, (size + chunk - 1) / chunk);
            QCOMPARE(bytes.size(), header + size + chunks * 17);
            must(files_.write(folder_.path() / "sealed", bytes));
            QVERIFY(isSealed(folder_.path() / "sealed").value());
            Memory sink;
            must(unseal(folder_.path() / "sealed", "pass", sink));
            QVERIFY(sink.bytes == content);
        }
    }

    /// The bytes that FORMAT.md gives, opened by libsodium alone.
    void isWhatTheFormatSays() {
        const auto content = contentOf(100);
        const auto bytes = sealed(content, "p\xC3\xA4ss", {2, 16});
        QCOMPARE(std::string(bytes.begin(), bytes.begin() + 8), std::string("BRBKSEAL"));
        QCOMPARE(Bytes(bytes.begin() + 8, bytes.begin() + 20),
                 (Bytes{1, 1, 0, 0, 2, 0, 0, 0, 16, 0, 0, 0}));
        std::array<unsigned char, 32> key{};
        QCOMPARE(crypto_pwhash(key.data(), key.size(), "p\xC3\xA4ss", 5, bytes.data() + 20, 2,
                               16 * 1024, crypto_pwhash_ALG_ARGON2ID13),
                 0);
        crypto_secretstream_xchacha20poly1305_state state;
        QCOMPARE(
            crypto_secretstream_xchacha20poly1305_init_pull(&state, bytes.data() + 36, key.data()),
            0);
        Bytes plain(100);
        unsigned long long size = 0;
        unsigned char tag = 0;
        QCOMPARE(crypto_secretstream_xchacha20poly1305_pull(&state, plain.data(), &size, &tag,
                                                            bytes.data() + 60, bytes.size() - 60,
                                                            bytes.data(), 60),
                 0);
        QCOMPARE(tag, crypto_secretstream_xchacha20poly1305_TAG_FINAL);
        QVERIFY(plain == content);
    }

    /// RFC 9106's second recommended choice, with one lane.
    void keysCostWhatTheyShould() {
        const auto bytes = sealed({}, "pass", SealCost{});
        QCOMPARE(Bytes(bytes.begin() + 12, bytes.begin() + 20), (Bytes{3, 0, 0, 0, 0, 0, 1, 0}));
    }

    void everySealIsItsOwn() {
        const auto content = contentOf(100);
        QVERIFY(sealed(content) != sealed(content));
    }

    void wrongPassphrases() {
        const auto bytes = sealed(contentOf(100));
        for (const char* wrong : {"", "Pass", "pass ", "pas"}) {
            QCOMPARE(refusal(bytes, wrong), std::string("seal.wrong"));
        }
    }

    void changedCutAndReordered() {
        const auto bytes = sealed(contentOf(3 * chunk + 100));
        for (const std::size_t size : {std::size_t{0}, std::size_t{7}, std::size_t{59}, header,
                                       header + 16, header + sealedChunk, header + sealedChunk + 5,
                                       header + 2 * sealedChunk, bytes.size() - 1}) {
            QVERIFY2(
                !refusal(Bytes(bytes.begin(), bytes.begin() + static_cast<long>(size))).empty(),
                std::to_string(size).c_str());
        }
        for (std::size_t at = 0; at < bytes.size(); at += at < header + 40 ? 1 : 9'973) {
            auto changed = bytes;
            changed[at] ^= 0x10;
            QVERIFY2(!refusal(changed).empty(), std::to_string(at).c_str());
        }
        auto longer = bytes;
        longer.push_back(0);
        QVERIFY(!refusal(longer).empty());
        auto swapped = bytes;
        std::swap_ranges(swapped.begin() + header, swapped.begin() + header + sealedChunk,
                         swapped.begin() + header + sealedChunk);
        QVERIFY(!refusal(swapped).empty());
        auto left = bytes;  // one chunk left out
        left.erase(left.begin() + header + sealedChunk,
                   left.begin() + header + 2 * static_cast<long>(sealedChunk));
        QCOMPARE(refusal(left), std::string("bundle.damaged"));
    }

    /// A header can't make the reader work for hours, or take all memory.
    void costlyHeaders() {
        const auto bytes = sealed(contentOf(100));
        const auto with = [&](std::size_t at, std::uint32_t value) {
            auto changed = bytes;
            for (std::size_t i = 0; i < 4; ++i) {
                changed[at + i] = static_cast<std::uint8_t>(value >> 8 * i);
            }
            return refusal(changed);
        };
        for (const std::uint32_t value : {0U, 17U, 0xFFFFFFFFU}) {
            QCOMPARE(with(12, value), std::string("seal.tooCostly"));
        }
        for (const std::uint32_t value : {0U, 7U, 131'073U, 0xFFFFFFFFU}) {
            QCOMPARE(with(16, value), std::string("seal.tooCostly"));
        }
        QCOMPARE(with(8, 2 | 1 << 8), std::string("bundle.newer"));
        QCOMPARE(with(8, 1 | 2 << 8), std::string("bundle.newer"));
        QCOMPARE(with(8, 1 | 1 << 8 | 1 << 16), std::string("bundle.damaged"));
    }
};

QTEST_APPLESS_MAIN(TestSeal)
#include "tst_seal.moc"
