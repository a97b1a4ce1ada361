// The tables of leave(), each with its header, written row by row.
#pragma once

#include <functional>
#include <string_view>

#include "exchange/bring.h"
#include "exchange/gathered.h"

namespace burrow::exchange {

/// Takes what is written, piece by piece.
using Sink = std::function<Done(std::string_view)>;

/// Everything but events. Lines end with CRLF, as RFC 4180 has it.
Done writeTable(CsvKind kind, const Gathered& all, const Sink& sink);

/// The events of one animal in history order, and of its photos a second list.
class EventTables {
public:
    EventTables(const Gathered& all, Sink events, Sink photos)
        : all_(all), events_(std::move(events)), photos_(std::move(photos)) {}

    Done writeHeaders();
    Done write(const GatheredAnimal& animal, const Fact& fact);

private:
    [[nodiscard]] std::string cell(std::string_view column, const Fact& fact) const;
    const Gathered& all_;
    Sink events_;
    Sink photos_;
};

/// Where a photo lies beside the tables, "photos/<SHA-256>.jpg".
[[nodiscard]] std::string photoName(const Sha256& picture);

}  // namespace burrow::exchange
