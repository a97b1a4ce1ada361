// What the printed sheets say about a resident, gathered from its record, its species and the rules.
#pragma once

#include "documents/caresheet.h"
#include "documents/tagsheet.h"
#include "room/room.h"
#include "tags/code.h"

namespace burrow {

[[nodiscard]] documents::TagLabel tagLabelFor(const Resident& resident);

/// `facts` are those of the resident, in any order.
[[nodiscard]] documents::CareSheet careSheetFor(const Resident& resident, const Room& room,
                                                std::span<const Fact> facts, const Words& words);

/// Hangs a printed tag on a subject.
[[nodiscard]] SetDraft hangTag(const std::string& code, SubjectId subject,
                               Millimetres side = tags::printedSide);

/// Draws a code for everyone who has no tag yet, as one act.
Done giveTags(Book& book, std::span<const ResidentPtr> residents);

}  // namespace burrow
