// Base types against published values.
#include <QtTest>

#include "base/civil.h"
#include "base/file_writer.h"
#include "base/files.h"
#include "base/hash.h"
#include "base/ids.h"
#include "base/text.h"
#include "base/zone.h"
#include "support/book.h"

using namespace burrow;

class TestBase : public QObject {
    Q_OBJECT

private slots:
    void uuidVersion7() {
        // RFC 9562, appendix A.6.
        const auto uuid = Uuid::parse("017F22E2-79B0-7CC3-98C4-DC0C0C07398F");
        QVERIFY(uuid.has_value());
        QCOMPARE(uuid->version(), 7);
        QCOMPARE(uuid->timestamp().ms, 1645557742000);
        QCOMPARE(isoInstant(uuid->timestamp()), std::string("2022-02-22T19:22:22Z"));
        QCOMPARE(uuid->text(), std::string("017f22e2-79b0-7cc3-98c4-dc0c0c07398f"));
    }

    void uuidMadeAtThatTime() {
        // The same time and random bits give the same identifier as the RFC's example; rand_a is the
        // counter here, whose top bit starts clear, so the example's 0xCC3 reads 0x4C3.
        class Given final : public Random {
            void fill(std::span<std::uint8_t> bytes) override {
                const auto example = Uuid::parse("017F22E2-79B0-7CC3-98C4-DC0C0C07398F")->bytes;
                std::copy_n(example.begin(), bytes.size(), bytes.begin());
            }
        } random;
        const FixedClock clock({1645557742000});
        QCOMPARE(UuidSource(clock, random).next().text(),
                 std::string("017f22e2-79b0-74c3-98c4-dc0c0c07398f"));
    }

    void uuidRefuses_data() {
        QTest::addColumn<QString>("text");
        QTest::newRow("empty") << "";
        QTest::newRow("short") << "017f22e2-79b0-7cc3-98c4-dc0c0c07398";
        QTest::newRow("no dashes") << "017f22e279b07cc398c4dc0c0c07398f0000";
        QTest::newRow("letter") << "017f22e2-79b0-7cc3-98c4-dc0c0c07398g";
    }
    void uuidRefuses() {
        QFETCH(QString, text);
        QVERIFY(!Uuid::parse(text.toStdString()));
    }

    void sha256() {
        // FIPS 180-4 examples.
        QCOMPARE(Sha256::of(std::string_view()).hex(),
                 std::string("e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855"));
        QCOMPARE(Sha256::of("abc").hex(),
                 std::string("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"));
        QCOMPARE(Sha256::of("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq").hex(),
                 std::string("248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1"));
        QCOMPARE(Sha256::of(std::string(1'000'000, 'a')).hex(),
                 std::string("cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39cc"
                             "c7112cd0"));
    }

    void days_data() {
        QTest::addColumn<QString>("date");
        QTest::addColumn<int>("days");
        QTest::addColumn<int>("weekdayFromSunday");
        // Day numbers as Python's datetime gives them; the weekdays follow ISO 8601's own examples.
        QTest::newRow("epoch") << "1970-01-01" << 0 << 4;
        QTest::newRow("2000") << "2000-01-01" << 10957 << 6;
        QTest::newRow("leap day") << "2024-02-29" << 19782 << 4;
        QTest::newRow("last") << "9999-12-31" << 2932896 << 5;
        QTest::newRow("ISO 2008-W01-1") << "2007-12-31" << 13878 << 1;
        QTest::newRow("ISO 2009-W53-7") << "2010-01-03" << 14612 << 0;
    }
    void days() {
        QFETCH(QString, date);
        QFETCH(int, days);
        QFETCH(int, weekdayFromSunday);
        const auto day = parseIsoDate(date.toStdString());
        QVERIFY(day.has_value());
        QCOMPARE(day->days, days);
        QCOMPARE(weekday(*day), weekdayFromSunday);
    }

    void leapYears() {
        for (const int year : {2000, 2024, 2400}) QVERIFY(civilDay({year, 2, 29}).has_value());
        for (const int year : {1900, 2023, 2100}) QVERIFY(!civilDay({year, 2, 29}).has_value());
        QCOMPARE(*civilDay({2024, 3, 1}) - *civilDay({2024, 2, 28}), 2);
        QCOMPARE(*civilDay({2023, 3, 1}) - *civilDay({2023, 2, 28}), 1);
    }

    void datesRefused_data() {
        QTest::addColumn<QString>("text");
        for (const char* text : {"", "2026", "2026-5-8", "2026-13-01", "2026-02-30", "26-05-08",
                                 "2026-05-08x", "08.05.2026", "0000-01-01"}) {
            QTest::newRow(text) << text;
        }
    }
    void datesRefused() {
        QFETCH(QString, text);
        QVERIFY(!parseIsoDate(text.toStdString()));
    }

    void moments() {
        const auto berlin = Zone::named("Europe/Berlin").value();
        const auto at = [&](const char* text) {
            return isoInstant(berlin.resolve(parseIsoMoment(text).value()));
        };
        QCOMPARE(at("2026-05-08T21:14"), std::string("2026-05-08T19:14:00Z"));
        QCOMPARE(at("2026-05-08 21:14:05.25"), std::string("2026-05-08T19:14:05.250Z"));
        QCOMPARE(at("2026-05-08T21:14:05,1239Z"), std::string("2026-05-08T21:14:05.123Z"));
        QCOMPARE(at("2026-05-08T21:14Z"), std::string("2026-05-08T21:14:00Z"));
        QCOMPARE(at("2026-05-08T21:14-05:30"), std::string("2026-05-09T02:44:00Z"));
        QCOMPARE(at("2026-05-08"), std::string("2026-05-08T10:00:00Z"));
        for (const char* bad : {"2026-05-08T", "2026-05-08T25:00", "2026-05-08T21:14:05.",
                                "2026-05-08T21:14+", "noon"}) {
            QVERIFY2(!parseIsoMoment(bad), bad);
        }
    }

    void sameTimeNextDay_data() {
        // Python zoneinfo, luxon and the Temporal polyfill agree on these (tzdata 2026f).
        QTest::addColumn<QString>("zone");
        QTest::addColumn<QString>("date");
        QTest::addColumn<double>("hours");
        QTest::newRow("Berlin spring") << "Europe/Berlin"
                                       << "2026-03-28" << 23.0;
        QTest::newRow("Berlin autumn") << "Europe/Berlin"
                                       << "2026-10-24" << 25.0;
        QTest::newRow("New York spring") << "America/New_York"
                                         << "2026-03-07" << 23.0;
        QTest::newRow("New York autumn") << "America/New_York"
                                         << "2026-10-31" << 25.0;
        QTest::newRow("Lord Howe autumn") << "Australia/Lord_Howe"
                                          << "2026-04-04" << 24.5;
        QTest::newRow("Lord Howe spring") << "Australia/Lord_Howe"
                                          << "2026-10-03" << 23.5;
    }
    void sameTimeNextDay() {
        QFETCH(QString, zone);
        QFETCH(QString, date);
        QFETCH(double, hours);
        const auto place = Zone::named(zone.toStdString()).value();
        const auto day = parseIsoDate(date.toStdString()).value();
        const auto first = place.at(day, 9 * 3600);
        const auto second = place.at(day + 1, 9 * 3600);
        QCOMPARE(static_cast<double>(second.ms - first.ms) / 3'600'000, hours);
        QCOMPARE(place.dayOf(first) + 1, place.dayOf(second));
    }

    void gapAndFold() {
        const auto berlin = Zone::named("Europe/Berlin").value();
        const auto at = [&](const char* date, int hour, int minute) {
            return isoInstant(berlin.at(*parseIsoDate(date), (hour * 60 + minute) * 60));
        };
        QCOMPARE(at("2026-03-29", 2, 30), std::string("2026-03-29T01:30:00Z"));  // reads 03:30
        QCOMPARE(at("2026-10-25", 2, 30), std::string("2026-10-25T00:30:00Z"));  // the first one
        QVERIFY(!Zone::named("Europe/Atlantis"));
    }

    void utf8() {
        QVERIFY(isUtf8("Käfer \xF0\x9F\x95\xB7"));
        // RFC 3629: overlong forms, surrogates, past U+10FFFF, cut sequences.
        for (const char* bad :
             {"\xC0\xAF", "\xED\xA0\x80", "\xF4\x90\x80\x80", "\xE2\x82", "\xFF"}) {
            QVERIFY(!isUtf8(bad));
        }
    }

    void naturalOrder() {
        QVERIFY(compareNatural("2", "10") < 0);
        QVERIFY(compareNatural("A2", "a10") < 0);
        QVERIFY(compareNatural("087", "87") == 0);
        QVERIFY(compareNatural("A", "B") < 0);
        QVERIFY(compareNatural("A", "A 1") < 0);
    }

    void filesAllOrNothing() {
        const test::ScratchFolder folder;
        DeviceFiles files;
        const auto path = folder.path() / "deep" / "note.txt";
        QVERIFY(files.write(path, bytesOf("first")));
        QVERIFY(files.write(path, bytesOf("second")));
        QCOMPARE(textOf(files.read(path, 100).value()), std::string_view("second"));
        QCOMPARE(std::distance(std::filesystem::directory_iterator(path.parent_path()), {}), 1);
        QCOMPARE(files.read(path, 3).error().message.id, std::string("file.tooLarge"));
        QCOMPARE(files.read(folder.path() / "none", 3).error().trouble, Trouble::notFound);
        QCOMPARE(files.read(folder.path(), 3).error().message.id, std::string("file.isFolder"));
        QCOMPARE(files.write(folder.path() / "deep", bytesOf("x")).error().trouble,
                 Trouble::badInput);
    }

    void steeringIsTakenOut() {
        QCOMPARE(withoutSteering("plain \xC3\xA4\n\xF0\x9F\x95\xB7"),
                 std::string("plain \xC3\xA4\n\xF0\x9F\x95\xB7"));
        QCOMPARE(withoutSteering("\x1B[31mred\x07\r\x7F"), std::string(" [31mred   "));
        QCOMPARE(withoutSteering("a\xE2\x80\xAEgpj\xE2\x81\xA6.exe"), std::string("a gpj .exe"));
        QCOMPARE(withoutSteering("\xC2\x9B"
                                 "1m"),
                 std::string(" 1m"));                                    // CSI in eight bits
        QCOMPARE(withoutSteering("\xE2\x80"), std::string("\xE2\x80"));  // cut: left to the shower
    }

    /// FIPS 180-4's example "abc" (NIST, SHA256.pdf), in pieces; and the same as in one piece.
    void hashesInPieces() {
        Sha256Stream stream;
        stream.add(bytesOf("a"));
        stream.add({});
        stream.add(bytesOf("bc"));
        QCOMPARE(stream.finish().hex(),
                 std::string("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"));
        const std::string text(100'000, 'x');
        for (std::size_t at = 0; at < text.size(); at += 997) {
            stream.add(bytesOf(std::string_view(text).substr(at, 997)));
        }
        QCOMPARE(stream.finish(), Sha256::of(text));
    }

    void writersLeaveNothingUnlessFinished() {
        const test::ScratchFolder folder;
        const auto path = folder.path() / "deep" / "file.burrow";
        DeviceFiles files;
        {
            auto writer = FileWriter::create(path).value();
            test::must(writer.write(bytesOf(std::string(1'000'000, 'x'))));
            test::must(writer.flush());
            QCOMPARE(std::filesystem::file_size(writer.temporary()), 1'000'000U);
            QVERIFY(!files.exists(path));
            // While it lives, nobody else writes or sweeps the same file.
            QCOMPARE(FileWriter::create(path).error().trouble, Trouble::locked);
            sweepUnfinished(path.parent_path(), ".burrow");
            QVERIFY(files.exists(writer.temporary()));
        }
        QVERIFY(std::filesystem::is_empty(path.parent_path()));
        auto writer = FileWriter::create(path, true).value();
        test::must(writer.write(bytesOf("whole")));
        test::must(writer.finish());
        QCOMPARE(std::string(textOf(files.read(path, 100).value())), std::string("whole"));
        QCOMPARE(std::filesystem::status(path).permissions(),
                 std::filesystem::perms::owner_read | std::filesystem::perms::owner_write);
    }

    void sweepsOnlyWhatIsUnfinished() {
        const test::ScratchFolder folder;
        DeviceFiles files;
        for (const char* name : {"a.burrow.part", "a.burrow", "b.part", "c.burrow.part.txt"}) {
            test::must(files.write(folder.path() / name, bytesOf("x")));
        }
        sweepUnfinished(folder.path(), ".burrow");
        QVERIFY(!files.exists(folder.path() / "a.burrow.part"));
        for (const char* name : {"a.burrow", "b.part", "c.burrow.part.txt"}) {
            QVERIFY(files.exists(folder.path() / name));
        }
    }

    /// A link that somebody put where the temporary file goes leads the writing nowhere else.
    void writersFollowNoLinks() {
        const test::ScratchFolder folder;
        DeviceFiles files;
        test::must(files.write(folder.path() / "other", bytesOf("theirs")));
        std::filesystem::create_symlink(folder.path() / "other", folder.path() / "a.burrow.part");
        QVERIFY(!FileWriter::create(folder.path() / "a.burrow"));
        QCOMPARE(std::string(textOf(files.read(folder.path() / "other", 100).value())),
                 std::string("theirs"));
    }
};

QTEST_APPLESS_MAIN(TestBase)
#include "tst_base.moc"
