#include "exchange/known_codes.h"

#include "journal/roster.h"

namespace burrow::exchange {

Done KnownCodes::load(Book& book) {
    BURROW_TRY(const auto everyone, roster(book));
    for (const auto& kept : everyone) {
        subjects_[kept.subject.number] = {kept.subject.id, true, true, false};
    }
    BURROW_TRY(const auto homes, enclosures(book));
    for (const auto& home : homes) {
        enclosures_[home.name] = home.id;
        enclosuresInBook_.insert(home.name);
    }
    BURROW_TRY(auto rows, book.connection().query("SELECT code FROM tag"));
    while (true) {
        BURROW_TRY(const bool more, rows.next());
        if (!more) return {};
        tags_.insert(std::string(rows.text(0)));
    }
}

const KnownCodes::Named* KnownCodes::find(std::string_view code) const {
    const auto found = subjects_.find(std::string(code));
    return found == subjects_.end() ? nullptr : &found->second;
}

void KnownCodes::announce(const std::string& code, Book& book) {
    if (!code.empty() && !subjects_.contains(code)) {
        subjects_[code] = {SubjectId{book.newId()}, false, false, false};
    }
}

void KnownCodes::announceEntry(const std::string& label, Book& book) {
    if (!label.empty() && !entries_.contains(label)) entries_[label] = EntryId{book.newId()};
}

void KnownCodes::forgetEntries() {
    entries_.clear();
    usedEntries_.clear();
}

std::optional<SubjectId> KnownCodes::subject(std::string_view code) const {
    const auto* named = find(code);
    return named == nullptr ? std::nullopt : std::optional(named->id);
}

std::optional<SubjectId> KnownCodes::claimed(std::string_view code) const {
    const auto* named = find(code);
    return named == nullptr || !named->isTaken ? std::nullopt : std::optional(named->id);
}

bool KnownCodes::isInBook(std::string_view code) const {
    const auto* named = find(code);
    return named != nullptr && named->isInBook;
}

bool KnownCodes::isComplete(std::string_view code) const {
    const auto* named = find(code);
    return named != nullptr && named->isComplete;
}

std::optional<EnclosureId> KnownCodes::enclosure(std::string_view code) const {
    const auto found = enclosures_.find(std::string(code));
    return found == enclosures_.end() ? std::nullopt : std::optional(found->second);
}

std::optional<EntryId> KnownCodes::entry(std::string_view label) const {
    const auto found = entries_.find(std::string(label));
    return found == entries_.end() ? std::nullopt : std::optional(found->second);
}

bool KnownCodes::claim(const std::string& code) {
    auto& named = subjects_.at(code);
    return !std::exchange(named.isTaken, true);
}

bool KnownCodes::addEnclosure(const std::string& code, EnclosureId id) {
    return enclosures_.try_emplace(code, id).second;
}

bool KnownCodes::isEnclosureInBook(std::string_view name) const {
    return enclosuresInBook_.contains(std::string(name));
}

}  // namespace burrow::exchange
