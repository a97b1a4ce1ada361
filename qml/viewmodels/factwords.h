// What happened, in words: the title of an entry, what there is to it, and the names of its fields.
#pragma once

#include <QHash>
#include <QVariantList>
#include <string_view>

#include "viewmodels/desk.h"
#include "viewmodels/wording.h"

namespace burrow {

/// Enclosures by their id, as facts name them.
using EnclosureNames = QHash<QString, QString>;
[[nodiscard]] Result<EnclosureNames> enclosureNames(Book& book);

/// "12 May 2021", always with its year.
[[nodiscard]] QString dayText(CivilDay day, const Desk& desk);
/// "30 by 20 by 20 cm"; empty where no size is recorded.
[[nodiscard]] QString innerSizeText(const Enclosure& enclosure, const Desk& desk);

/// "Ate", "Moulted", "Sold"
[[nodiscard]] QString factTitle(const Fact& fact, const Desk& desk);
/// "1 cricket, 14 mm"; empty where there is no more to say. Without the note.
[[nodiscard]] QString factDetail(const Fact& fact, const Resident& resident, const Desk& desk,
                                 const EnclosureNames& names);
/// The note on it; of a fact of kind `note` its whole text.
[[nodiscard]] QString factNote(const Fact& fact, const Desk& desk);
/// An icon for what happened.
[[nodiscard]] QString factGlyph(FactKind kind);

/// The names of the fields that a kind may have, as one fills them in.
[[nodiscard]] std::vector<std::string_view> fieldsOf(FactKind kind);
[[nodiscard]] FieldType fieldType(std::string_view field);

/// "Offered food": as one chooses what to log.
[[nodiscard]] QString kindTitle(FactKind kind, const Desk& desk);
/// "Leg span"; that of a scorpion or vinegaroon is its body length.
[[nodiscard]] QString fieldLabel(std::string_view field, const Resident& resident,
                                 const Desk& desk);
/// A field's value in words; empty for what has none, such as a photo's hash.
[[nodiscard]] QString fieldText(const FactBody& body, std::string_view field, const Desk& desk,
                                const EnclosureNames& names);
/// A field's value as the core reads it back; empty for none.
[[nodiscard]] QString fieldValue(const FactBody& body, const std::string& field);
/// Every field of a fact that has a value in words: [{name, value}].
[[nodiscard]] QVariantList fieldLines(FactKind kind, const FactBody& body, const Resident& resident,
                                      const Desk& desk, const EnclosureNames& names);

/// A message of the core about a field, with the name that the keeper sees.
[[nodiscard]] QString sayOfField(Message message, const QString& label, const QString& kind,
                                 const Desk& desk);

}  // namespace burrow
