// The numbers of assets/rules/tables with the keeper's own in their places. The book holds each of those as a
// setting, "number." and its place ("number.sexing/moult/7_to_11.clearly/plate_ratio"), whose value is the
// number as text: so they are undone, merged and asked about like every other value.
#pragma once

#include <map>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "journal/roster.h"
#include "room/table_texts.h"

namespace burrow {

struct RoomTables;

/// The place of a number: the file, the table in it, the row and the column.
struct NumberKey {
    std::string file;    ///< "sexing"
    std::string table;   ///< "moult"
    std::string row;     ///< "7_to_11.clearly"
    std::string column;  ///< "plate_ratio"

    /// "sexing/moult/7_to_11.clearly/plate_ratio"
    [[nodiscard]] std::string text() const;
    /// Nothing for a text that has not four parts.
    [[nodiscard]] static std::optional<NumberKey> parse(std::string_view text);

    friend bool operator==(const NumberKey&, const NumberKey&) = default;
};

struct TableNumber {
    NumberKey key;
    double value = 0;    ///< that holds
    double shipped = 0;  ///< what holds without the keeper's own
    bool isOwn = false;
    /// Can't be changed: the limits of size bands, which only hold together, and what the running camera
    /// goes by.
    bool isFixed = false;
};

struct NumberRow {
    std::string id;
    std::string source;  ///< of the shipped numbers
    std::vector<TableNumber> numbers;
};

struct NumberTable {
    std::string file;
    std::string table;
    std::vector<NumberRow> rows;  ///< those that have numbers, in the order of the file

    [[nodiscard]] int ownNumbers() const;
};

/// Whether both hold the same numbers of the keeper's own.
[[nodiscard]] bool haveSameNumbers(const RoomInfo& a, const RoomInfo& b);

/// A change of one number, before it is made.
struct NumberChange {
    NumberKey key;
    std::optional<double> value;  ///< nothing where the shipped number is to hold again
};

/// Immutable; safe to read from any thread.
class NumberTables {
public:
    /// Fails as RoomTables::fromJson does.
    static Result<NumberTables> fromJson(TableTexts texts);

    /// As the program brings them.
    [[nodiscard]] const std::shared_ptr<const RoomTables>& shipped() const { return shipped_; }
    /// With the keeper's own. What is unknown here or can't be is passed over, and the shipped number
    /// holds; those are named in `passedOver` where that is not null.
    [[nodiscard]] std::shared_ptr<const RoomTables> with(
        const RoomInfo& info, std::vector<std::string>* passedOver = nullptr) const;
    /// All of them, as they hold in this room.
    [[nodiscard]] std::vector<NumberTable> list(const RoomInfo& info) const;
    /// What is to be written into the book for several changes; empty where nothing differs. Fails with
    /// `notFound` for a place that is not there, and with `badInput` for a number that can't stand there:
    /// outside of its limits, or one with which the table no longer holds together.
    [[nodiscard]] Result<FieldValues> fieldsOf(std::span<const NumberChange> changes,
                                               const RoomInfo& info) const;

private:
    explicit NumberTables(TableTexts texts, std::shared_ptr<const RoomTables> shipped)
        : texts_(std::move(texts)), shipped_(std::move(shipped)) {}

    TableTexts texts_;
    std::shared_ptr<const RoomTables> shipped_;
};

}  // namespace burrow
