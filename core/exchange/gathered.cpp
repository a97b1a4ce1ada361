#include "exchange/gathered.h"

#include <fmt/format.h>

#include <algorithm>
#include <set>
#include <tuple>

#include "base/text.h"
#include "journal/recorded.h"
#include "journal/rows.h"

namespace burrow::exchange {
namespace {

/// Codes that are used once each.
class Codes {
public:
    std::string codeFor(const std::string& name) {
        auto code = name;
        // Two phones may have given the same number, and a record may have none.
        for (int n = 2; code.empty() || !used_.insert(code).second; ++n) {
            code = fmt::format("{}~{}", name, n);
        }
        return code;
    }

private:
    std::set<std::string> used_;
};

/// As people count, then byte by byte, then as they were made.
template <class Id>
bool comesBefore(const std::string& a, const Id& aId, const std::string& b, const Id& bId) {
    if (const int order = compareNatural(a, b); order != 0) return order < 0;
    return std::tie(a, aId) < std::tie(b, bId);
}

}  // namespace

std::string Gathered::codeOf(const std::optional<SubjectId>& animal) const {
    if (!animal) return {};
    const auto found = animalCodes_.find(*animal);
    return found == animalCodes_.end() ? animal->text() : found->second;
}

std::string Gathered::codeOf(const std::optional<EnclosureId>& enclosure) const {
    if (!enclosure) return {};
    const auto found = enclosureCodes_.find(*enclosure);
    return found == enclosureCodes_.end() ? enclosure->text() : found->second;
}

std::string Gathered::labelOf(const EntryId& entry) const {
    const auto found = labels.find(entry);
    return found == labels.end() ? std::string() : found->second;
}

Done Gathered::addAnimals(Book& book) {
    BURROW_TRY(auto everyone, roster(book));
    for (auto& kept : everyone) {
        BURROW_TRY(auto recorded, recordedSubject(book, kept.subject.id));
        if (recorded) animals.push_back({{}, std::move(kept), *std::move(recorded)});
    }
    std::sort(animals.begin(), animals.end(), [](const auto& a, const auto& b) {
        return comesBefore(a.recorded.number, a.recorded.id, b.recorded.number, b.recorded.id);
    });
    Codes codes;
    for (auto& animal : animals) {
        animal.code = codes.codeFor(animal.recorded.number);
        animalCodes_[animal.recorded.id] = animal.code;
    }
    return {};
}

Done Gathered::addEnclosures(Book& book) {
    BURROW_TRY(auto all, burrow::enclosures(book));
    std::sort(all.begin(), all.end(), [](const Enclosure& a, const Enclosure& b) {
        return comesBefore(a.name, a.id, b.name, b.id);
    });
    Codes codes;
    for (auto& enclosure : all) {
        auto code = codes.codeFor(enclosure.name);
        enclosureCodes_[enclosure.id] = code;
        enclosures.push_back({std::move(code), std::move(enclosure)});
    }
    return {};
}

Done Gathered::addTags(Book& book) {
    std::vector<std::string> codes;
    {
        BURROW_TRY(auto rows, book.connection().query("SELECT code FROM tag ORDER BY code"));
        while (true) {
            BURROW_TRY(const bool more, rows.next());
            if (!more) break;
            codes.emplace_back(rows.text(0));
        }
    }
    for (const auto& code : codes) {
        BURROW_TRY(auto found, tag(book, code));
        if (found) tags.push_back(*std::move(found));
    }
    return {};
}

Done Gathered::addLabels(Book& book) {
    std::set<Uuid> meant;
    {
        // Events of one whose fields were all taken back are in no table, so they mean nothing here.
        BURROW_TRY(auto rows,
                   book.connection().query("SELECT json_extract(body, '$.about') AS about FROM "
                                           "fact WHERE about IS NOT NULL AND subject IN "
                                           "(SELECT id FROM subject)"));
        while (true) {
            BURROW_TRY(const bool more, rows.next());
            if (!more) break;
            if (const auto entry = Uuid::parse(rows.text(0))) meant.insert(*entry);
        }
    }
    if (meant.empty()) return {};
    for (const auto& animal : animals) {
        BURROW_TRY(auto rows, book.connection().query("SELECT entry FROM fact WHERE subject = ? "
                                                      "ORDER BY happened_at, hlc, entry"));
        rows.bind(animal.recorded.id.uuid.bytes);
        while (true) {
            BURROW_TRY(const bool more, rows.next());
            if (!more) break;
            const auto entry = uuidAt(rows, 0);
            if (meant.contains(entry)) labels[EntryId{entry}] = std::to_string(labels.size() + 1);
        }
    }
    return {};
}

Result<Gathered> gather(Book& book) {
    Gathered all;
    BURROW_TRY(all.room, roomInfo(book));
    BURROW_DO(all.addAnimals(book));
    BURROW_DO(all.addEnclosures(book));
    BURROW_DO(all.addTags(book));
    BURROW_DO(all.addLabels(book));
    return all;
}

}  // namespace burrow::exchange
