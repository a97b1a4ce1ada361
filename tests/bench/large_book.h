// A large book for measurements: so many subjects with so many entries between them, made once and kept in a
// folder. The same numbers make the same room.
#pragma once

#include <fmt/format.h>

#include <filesystem>

#include "journal/fields.h"
#include "journal/merge.h"
#include "support/book.h"
#include "support/husbandry.h"

namespace burrow::test {

/// Years of meals, moults, water and looks, subject by subject, as one device wrote them.
class LargeRoom {
public:
    LargeRoom(std::int64_t subjects, std::int64_t entries, const Profiles& profiles)
        : each_(std::max<std::int64_t>(2, entries / subjects)), profiles_(profiles) {}

    [[nodiscard]] std::int64_t entriesEach() const { return each_; }
    static SubjectId subject(std::int64_t at) { return SubjectId{numbered("subject", at)}; }

    /// All entries of one subject, given one by one to `take`.
    template <class Take>
    void play(std::int64_t at, Take take) {
        state_ = static_cast<std::uint64_t>(at) * 0x9E37'79B9'7F4A'7C15ULL + 1;
        auto entry = blank(at);
        entry.kind = "set";
        entry.happenedAt = {fridayEvening.ms - years};
        entry.body = {
            {"type", "subject"}, {"over", nlohmann::json::object()}, {"fields", fields(at)}};
        take(finished(std::move(entry)));
        const auto facts = each_ - 1;
        for (std::int64_t i = 0; i < facts; ++i) {
            entry = blank(at);
            // Up to within a few days of now, so that some are due and some are not.
            const auto left = (facts - i) * years / facts;
            entry.happenedAt = {fridayEvening.ms - left + below(6) * msPerDay / 2};
            if (entry.happenedAt > fridayEvening) entry.happenedAt = fridayEvening;
            fillFact(entry, i);
            take(finished(std::move(entry)));
        }
    }

private:
    static constexpr std::int64_t years = 4 * 365 * msPerDay;

    static Uuid numbered(const char* space, std::int64_t number) {
        return Uuid::named(fmt::format("{} {}", space, number));
    }
    std::int64_t below(std::int64_t count) {
        state_ = state_ * 6364136223846793005ULL + 1442695040888963407ULL;
        return static_cast<std::int64_t>(state_ >> 33U) % count;
    }

    Entry blank(std::int64_t at) {
        Entry entry;
        entry.device = DeviceId{numbered("device", 0)};
        entry.seq = entry.act = ++seq_;
        entry.id = EntryId{numbered("entry", seq_)};
        entry.thing = subject(at).uuid;
        entry.zone = "UTC";
        return entry;
    }
    static Entry finished(Entry entry) {
        entry.recordedAt = entry.happenedAt;
        entry.hlc = (entry.happenedAt.ms << 16) + entry.seq % 0xFFFF;
        entry.day = Zone::utc().dayOf(entry.happenedAt);
        return entry;
    }

    nlohmann::json fields(std::int64_t at) {
        const auto& all = profiles_.all();
        const auto species = static_cast<std::size_t>(below(static_cast<std::int64_t>(all.size())));
        return {{"number", fmt::format("{:05}", at + 1)},
                {"species", all[species].name},
                {"sex", at % 3 == 0 ? "female" : "unknown"},
                {"source", "Saltmarsh Invert Fair"},
                // A hundred tubs a shelf, ten shelves a rack.
                {"place", fmt::format("Kiln Row / {} / {} / {}", at / 1000 + 1, at / 100 % 10 + 1,
                                      at % 100 + 1)}};
    }

    void fillFact(Entry& entry, std::int64_t i) {
        if (i % 24 == 0) {
            entry.kind = "moulted";
            entry.body = {{"span_mm", 20.0 + static_cast<double>(i)}};
        } else if (i % 6 == 1) {
            entry.kind = "watered";
            entry.body = nlohmann::json::object();
        } else if (i % 12 == 2) {
            entry.kind = "dampened";
            entry.body = nlohmann::json::object();
        } else {
            const auto chance = below(20);
            entry.kind = "offered";
            entry.body = {{"count", 1},
                          {"outcome", chance < 2    ? "refused"
                                      : chance == 2 ? "left_in"
                                                    : "ate"},
                          {"prey", "cricket"},
                          {"prey_mm", 8.0}};
        }
    }

    std::int64_t each_;
    const Profiles& profiles_;
    std::uint64_t state_ = 0;
    std::int64_t seq_ = 0;
};

/// The book in `folder`; made under another name first, so that one that was not finished is never used.
inline std::filesystem::path largeBook(const std::filesystem::path& folder, std::int64_t subjects,
                                       std::int64_t entries, const Profiles& profiles) {
    namespace fs = std::filesystem;
    const auto path = folder / fmt::format("plan-{}-{}.book", subjects, entries);
    if (fs::exists(path)) return path;
    fs::create_directories(folder);
    auto unfinished = path;
    unfinished += ".part";
    fs::remove(unfinished);
    const FixedClock clock{fridayEvening};
    SeededRandom random(7);
    {
        auto book =
            Book::create(unfinished, "Kiln Row", "KR", {clock, random, Zone::utc()}).value();
        LargeRoom room(subjects, entries, profiles);
        constexpr std::int64_t portion = 500;  // subjects in one transaction
        for (std::int64_t first = 0; first < subjects; first += portion) {
            auto merge = Merge::begin(book, {"years.burrow", std::nullopt}).value();
            for (auto at = first; at < std::min(subjects, first + portion); ++at) {
                room.play(at, [&](const Entry& entry) { must(merge.add(entry)); });
            }
            merge.commit().value();
            fmt::print(stderr, "\r{} of {} subjects", std::min(subjects, first + portion),
                       subjects);
        }
        fmt::print(stderr, "\r{:40}\r", "");
    }
    fs::rename(unfinished, path);
    for (const char* rest : {"-wal", "-shm"}) fs::remove(unfinished.string() + rest);
    return path;
}

}  // namespace burrow::test
