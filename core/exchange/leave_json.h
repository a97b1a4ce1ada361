// The whole book as one JSON document (book.schema.json), written record by record: a line holds one record,
// so that the document can also be compared and searched as text.
#pragma once

#include "exchange/leave_tables.h"

namespace burrow::exchange {

class JsonDocument {
public:
    JsonDocument(const Gathered& all, Sink sink) : all_(all), sink_(std::move(sink)) {}

    /// The room, the enclosures and the tags; then the list of animals is open.
    Done begin(const Book& book, Instant writtenAt);
    Done beginAnimal(const GatheredAnimal& animal);
    Done event(const Fact& fact);
    Done endAnimal();
    /// The journal, entry by entry in the order of their arrival, and the end.
    Done end(Book& book);

private:
    Done item(const std::string& record);
    Done list(std::string_view name);
    const Gathered& all_;
    Sink sink_;
    bool isFirst_ = true;  // of the list that is open
    bool hasEvents_ = false;
};

}  // namespace burrow::exchange
