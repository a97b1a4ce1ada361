// The tables that follow from the journal, as text that two books can be compared by.
#pragma once

#include <array>

namespace burrow {

struct Projection {
    const char* table;
    const char* rows;  ///< as one JSON text each, in key order
};

inline constexpr std::array projections{
    Projection{"correction",
               "SELECT json_array(hex(target), hlc, hex(entry), kind, body, hex(device), seq) FROM "
               "correction ORDER BY target, hlc, entry"},
    Projection{
        "fact",
        "SELECT json_array(hex(subject), happened_at, hlc, hex(entry), kind, day, body) FROM "
        "fact ORDER BY subject, happened_at, hlc, entry"},
    Projection{
        "field",
        "SELECT json_array(hex(thing), name, hlc, hex(entry), type, value, hex(device), seq, over, "
        "retracted) FROM field ORDER BY thing, name, hlc, entry"},
    Projection{
        "digest",
        "SELECT json_array(hex(subject), last_at, last_hlc, hex(last_entry), hex(state)) FROM "
        "digest ORDER BY subject"},
    Projection{"subject",
               "SELECT json_array(hex(id), number, form, species, sex, hatched, acquired, source, "
               "standing, quarantined, mature, hex(enclosure), place, hex(mother), hex(father), "
               "headcount, note) FROM subject ORDER BY id"},
    Projection{
        "enclosure",
        "SELECT json_array(hex(id), name, length_mm, width_mm, height_mm, substrate_mm, place, "
        "note) FROM enclosure ORDER BY id"},
    Projection{"tag",
               "SELECT json_array(code, side_mm, hex(subject), hex(enclosure)) FROM tag ORDER BY "
               "code"},
    Projection{"setting", "SELECT json_array(name, value) FROM setting ORDER BY name"},
    Projection{"difference",
               "SELECT json_array(kind, hex(about), type, name) FROM difference ORDER BY kind, "
               "about, type, name"},
    Projection{"confidential", "SELECT json_array(hex(entry)) FROM confidential ORDER BY entry"},
    Projection{"searchable",
               "SELECT json_array(kind, hex(origin), hex(about), at, number, place, source, note) "
               "FROM searchable ORDER BY origin, kind"},
    Projection{"fork", "SELECT json_array(hex(device), seq) FROM fork ORDER BY device, seq"},
};

}  // namespace burrow
