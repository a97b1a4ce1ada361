// The whole room on one day: everyone in it with profile and plan, in the order of a walk along the
// shelves. A room is a snapshot: it is made from a book, holds no connection to it, and may be read
// from any thread. What one entry changes is replaced, the rest is shared with the snapshot before.
#pragma once

#include <iterator>
#include <memory>
#include <span>
#include <vector>

#include "husbandry/due_list.h"
#include "husbandry/profiles.h"
#include "journal/roster.h"
#include "room/resident.h"

namespace burrow {

class NumberTables;

/// The tasks of one subject today: at least one line.
struct Visit {
    ResidentPtr resident;
    std::vector<Answer> answers;  ///< due or held, in the order of `Care`
};

/// Some neighbours in the walk, shared between snapshots. Identifiers stand apart: one is soon found.
struct Neighbours {
    std::vector<SubjectId> ids;
    std::vector<StubPtr> stubs;
};

/// Everyone in walking order, unpacked one by one as they are come to. Lives no longer than its room.
class Residents {
public:
    using Runs = std::vector<std::shared_ptr<const Neighbours>>;

    class Iterator {
    public:
        using iterator_category = std::forward_iterator_tag;
        using value_type = ResidentPtr;
        using difference_type = std::ptrdiff_t;
        using pointer = const ResidentPtr*;
        using reference = const ResidentPtr&;

        Iterator() = default;
        Iterator(const Runs& runs, std::size_t run) : runs_(&runs), run_(run) {}
        reference operator*() const { return stub().resident(); }
        pointer operator->() const { return &stub().resident(); }
        Iterator& operator++();
        Iterator operator++(int) {
            auto before = *this;
            ++*this;
            return before;
        }
        [[nodiscard]] const Stub& stub() const { return *(*runs_)[run_]->stubs[at_]; }
        friend bool operator==(const Iterator& a, const Iterator& b) {
            return a.run_ == b.run_ && a.at_ == b.at_;
        }

    private:
        const Runs* runs_ = nullptr;
        std::size_t run_ = 0;
        std::size_t at_ = 0;
    };

    /// Everyone unpacked and in one row, made when it is first asked for.
    struct Row {
        std::once_flag once;
        std::vector<ResidentPtr> all;
    };
    Residents(const Runs& runs, std::size_t count, Row& row)
        : runs_(&runs), count_(count), row_(&row) {}

    [[nodiscard]] std::size_t size() const { return count_; }
    [[nodiscard]] bool empty() const { return count_ == 0; }
    [[nodiscard]] Iterator begin() const { return {*runs_, 0}; }
    [[nodiscard]] Iterator end() const { return {*runs_, runs_->size()}; }
    [[nodiscard]] const ResidentPtr& front() const {
        return runs_->front()->stubs.front()->resident();
    }
    [[nodiscard]] const ResidentPtr& operator[](std::size_t at) const;
    /// For whoever takes some of them in one row. As long as its room lives.
    operator std::span<const ResidentPtr>() const;

private:
    const Runs* runs_;
    std::size_t count_;
    Row* row_;
};

class Room {
public:
    /// What does not change with the book. Must outlive every room made with it.
    struct Reference {
        const Profiles& profiles;  ///< as shipped, without the keeper's own
        const Rules& rules;        ///< as shipped, without the keeper's own
        /// As shipped, likewise; where there are none, plans leave the air out.
        const NumberTables* numbers = nullptr;
    };

    /// Reads everything. Rules the keeper changed to something impossible are passed over, and the
    /// shipped value holds.
    static Result<Room> load(Book& book, const Reference& reference, const PlanDay& day);
    /// Only those named, as far as they are in the book: see isWhole().
    static Result<Room> loadOnly(Book& book, const Reference& reference, const PlanDay& day,
                                 std::span<const SubjectId> those);
    /// The room after a transaction: reads again only whom it touched, and plans again only those and
    /// whom a changed rule concerns. The same as loading it.
    [[nodiscard]] Result<Room> after(Book& book, const Reference& reference,
                                     const ChangeSet& changes) const;

    /// False for the first of a large room, which is shown until everyone is read (front.h).
    [[nodiscard]] bool isWhole() const { return isWhole_; }
    [[nodiscard]] const RoomInfo& info() const { return *info_; }
    [[nodiscard]] const PlanDay& day() const { return basis_->day; }
    /// Those for everyone, and in them those for one species, place or animal (Rules::of).
    [[nodiscard]] const Rules& rules() const { return *basis_->rules; }
    /// The trade's numbers with the keeper's own; null where the reference had none.
    [[nodiscard]] const std::shared_ptr<const RoomTables>& tables() const { return basis_->tables; }
    /// The species known here: those shipped, and the keeper's own.
    [[nodiscard]] const Profiles& profiles() const { return *basis_->profiles; }
    [[nodiscard]] Rules rulesFor(const Resident& resident) const {
        return rules().of(resident.input().ruleSubject());
    }
    /// In walking order, those in quarantine last. Includes those who died or left. Unpacks whom it comes
    /// to: of thousands, forEach() looks at all much sooner.
    [[nodiscard]] Residents residents() const { return {runs_, count_, *row_}; }
    [[nodiscard]] std::size_t size() const { return count_; }
    /// Everyone in the same order, packed.
    template <class Each>
    void forEach(Each each) const {
        for (const auto& run : runs_) {
            for (const auto& stub : run->stubs) each(stub);
        }
    }
    [[nodiscard]] StubPtr stub(SubjectId id) const;
    [[nodiscard]] ResidentPtr find(SubjectId id) const;
    /// Everyone with something due or a feeding held back, in walking order.
    [[nodiscard]] std::vector<StubPtr> listed() const;
    /// The same, unpacked, with their answers.
    [[nodiscard]] std::vector<Visit> visits() const;

private:
    struct At {
        std::size_t run = 0;
        std::size_t place = 0;
    };

    Room() = default;
    [[nodiscard]] StubPtr make(const Kept& kept) const;
    [[nodiscard]] Result<Room> withSettings(Book& book, const Reference& reference) const;
    Done readSettings(Book& book, const Reference& reference, const PlanDay& day);
    void fill(std::vector<StubPtr> stubs);
    [[nodiscard]] std::vector<SubjectId> touchedBy(const ChangeSet& changes) const;
    [[nodiscard]] std::optional<At> placeOf(SubjectId id) const;
    void remove(At at);
    void put(At at, StubPtr stub);
    void insert(StubPtr stub);
    void bring(std::optional<Kept> changed, SubjectId id);

    std::shared_ptr<const RoomInfo> info_;
    std::shared_ptr<const PlanBasis> basis_;
    Residents::Runs runs_;  // none of them empty
    std::size_t count_ = 0;
    std::shared_ptr<Residents::Row> row_ = std::make_shared<Residents::Row>();
    bool isWhole_ = true;
};

/// The tasks of one subject today; no answers where it is not listed.
[[nodiscard]] Visit visitOf(const Stub& stub);

}  // namespace burrow
