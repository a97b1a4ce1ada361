// Taking everything along and bringing it into a new book: the same files, the same animals, the same
// history, the same plans.
#include <rapidcheck.h>

#include "base/text.h"
#include "exchange/bring.h"
#include "exchange/leave.h"
#include "room/room.h"
#include "support/any_book.h"
#include "support/husbandry.h"

using namespace burrow;
using namespace burrow::exchange;
using namespace burrow::test;

namespace {

using Files = std::map<std::string, std::string>;

Files filesOf(Book& book) {
    const ScratchFolder folder;
    LeaveOptions options;
    options.json = false;
    const auto report = leave(book, folder.path() / "out", options);
    Files files;
    for (const auto& path : report.value().files) files[path.filename().string()] = slurp(path);
    return files;
}

void bringInto(Book& book, const Files& files) {
    const std::vector<CsvSource> sources{{CsvKind::events, files.at("events.csv")},
                                         {CsvKind::tags, files.at("tags.csv")},
                                         {CsvKind::animals, files.at("animals.csv")},
                                         {CsvKind::enclosures, files.at("enclosures.csv")},
                                         {CsvKind::settings, files.at("settings.csv")}};
    for (const auto& source : sources) RC_ASSERT(recogniseCsv(source.text) == source.kind);
    const auto brought = bring(book, sources, {});
    if (!brought) {
        for (const auto& source : sources) RC_LOG() << source.text << "\n";
        RC_FAIL(brought.error().message.id);
    }
    const auto& report = *brought;
    for (const auto& bad : report.bad) {
        RC_LOG() << name(bad.kind) << " " << bad.line << " " << bad.column << " " << bad.reason.id
                 << "\n"
                 << bad.raw;
    }
    RC_ASSERT(report.isDone);
}

/// Everyone in the order of the files, with their facts, and every identifier as its place in the book:
/// two books that hold the same give the same.
struct Told {
    std::vector<Kept> everyone;
    std::vector<std::vector<Fact>> facts;
    std::vector<Plan> plans;
};

class Teller {
public:
    explicit Teller(Book& book) : book_(book) {}

    Told tell(CivilDay today) {
        static const Profiles profiles = shippedProfiles();
        static const Rules rules = shippedRules();
        const auto room = Room::load(book_, {profiles, rules}, {today, Zone::utc()}).value();
        auto residents = std::vector<ResidentPtr>(room.residents().begin(), room.residents().end());
        // Made in the order of the files, and so in the order of their identifiers.
        const auto isBefore = [](const auto& aName, const auto& aId, const auto& bName,
                                 const auto& bId) {
            const int order = compareNatural(aName, bName);
            return order != 0 ? order < 0 : std::tie(aName, aId) < std::tie(bName, bId);
        };
        std::sort(residents.begin(), residents.end(), [&](const auto& a, const auto& b) {
            return isBefore(a->subject().number, a->subject().id, b->subject().number,
                            b->subject().id);
        });
        auto homes = enclosures(book_).value();
        std::sort(homes.begin(), homes.end(), [&](const auto& a, const auto& b) {
            return isBefore(a.name, a.id, b.name, b.id);
        });
        for (std::size_t i = 0; i < residents.size(); ++i) {
            number(residents[i]->subject().id.uuid, i);
        }
        for (std::size_t i = 0; i < homes.size(); ++i) number(homes[i].id.uuid, 1000 + i);
        std::size_t entries = 2000;
        for (const auto& resident : residents) {
            const auto facts = factsOf(book_.connection(), resident->subject().id).value();
            for (const auto& fact : facts) number(fact.id.uuid, entries++);
        }
        Told told;
        for (const auto& resident : residents) {
            told.facts.push_back(numbered(resident->subject().id));
            told.everyone.push_back(numbered(resident->kept));
            told.plans.push_back(resident->plan);
        }
        return told;
    }

private:
    void number(const Uuid& id, std::size_t n) { numbers_[id] = Uuid::named(std::to_string(n)); }
    template <class Id>
    void swap(std::optional<Id>& id) const {
        if (id) swap(*id);
    }
    template <class Thing>
    void swap(Id<Thing>& id) const {
        const auto found = numbers_.find(id.uuid);
        if (found != numbers_.end()) id.uuid = found->second;
    }
    [[nodiscard]] std::vector<Fact> numbered(SubjectId subject) {
        auto facts = factsOf(book_.connection(), subject).value();
        for (auto& fact : facts) {
            swap(fact.id);
            swap(fact.subject);
            swap(fact.body.about);
            swap(fact.body.enclosure);
            fact.stamp = 0;
        }
        return facts;
    }
    [[nodiscard]] Kept numbered(Kept kept) const {
        swap(kept.subject.id);
        swap(kept.subject.mother);
        swap(kept.subject.father);
        swap(kept.subject.enclosure);
        return kept;
    }

    Book& book_;
    std::map<Uuid, Uuid> numbers_;
};

void compare(Book& first, Book& second, CivilDay today) {
    const auto before = Teller(first).tell(today);
    const auto after = Teller(second).tell(today);
    RC_ASSERT(before.everyone.size() == after.everyone.size());
    for (std::size_t i = 0; i < before.everyone.size(); ++i) {
        RC_ASSERT(before.everyone[i].subject == after.everyone[i].subject);
        RC_ASSERT(before.everyone[i].place == after.everyone[i].place);
        RC_ASSERT(before.everyone[i].digest == after.everyone[i].digest);
        RC_ASSERT(before.everyone[i].tagCode == after.everyone[i].tagCode);
        RC_ASSERT(before.everyone[i].quarantinedSince == after.everyone[i].quarantinedSince);
        RC_ASSERT(before.facts[i] == after.facts[i]);
        RC_ASSERT(before.plans[i].answers == after.plans[i].answers);
    }
}

}  // namespace

int main() {
    bool ok = true;
    ok &= rc::check("what is taken along comes back the same", [] {
        AnyBook first(60);
        const auto files = filesOf(first->book);
        TestBook second;
        second.clock.set(first->clock.now());
        bringInto(second.book, files);
        const auto again = filesOf(second.book);
        for (const auto& [name, text] : files) {
            RC_LOG() << name << "\n" << text << "\nagain\n" << again.at(name);
            RC_ASSERT(again.at(name) == text);
        }
        const auto today = first->surroundings().today();
        compare(first->book, second.book, today);
        compare(first->book, second.book, today + 40);
    });
    ok &= rc::check("any text survives a cell", [] {
        const auto text = anyText() + *rc::gen::string<std::string>();
        if (!isUtf8(text)) return;
        const auto table = "a,b\r\n" + csvCell(guardedText(text), ',') + ",x\r\n";
        auto reader = CsvReader::open(table).value();
        const auto row = reader.next().value();
        RC_ASSERT(!row.problem);
        auto expected = text;
        for (std::size_t at; (at = expected.find('\0')) != std::string::npos;) {
            expected.replace(at, 1, "\xEF\xBF\xBD");
        }
        RC_ASSERT(std::string(plainText(row.cells[0])) == expected);
        // What a spreadsheet would compute never begins a cell.
        if (!text.empty()) {
            const auto cell = guardedText(text);
            RC_ASSERT(std::string_view("=+-@\t\r\n").find(cell.front()) == std::string_view::npos);
        }
    });
    return ok ? 0 : 1;
}
