// Records as the words and shapes that pages show: texts through the catalogue, and the data of the
// moult line. Everything visible about a resident is made here, so that it reads the same everywhere.
#pragma once

#include <QString>
#include <QStringList>
#include <QVariantList>

#include "viewmodels/desk.h"

namespace burrow {

[[nodiscard]] inline QString toQt(const std::string& text) { return QString::fromStdString(text); }

/// "Shelf A"; "No place yet" for none.
[[nodiscard]] QString shelfText(const Place& place, const Desk& desk);
/// "Shelf A, tub 3"
[[nodiscard]] QString placeText(const Place& place, const Desk& desk);
/// The valid name where the species is known, else as recorded.
[[nodiscard]] QString speciesText(const Resident& resident);
/// "Juvenile female", "Group of 16", "Lot of 60"
[[nodiscard]] QString aboutText(const Resident& resident, const Desk& desk);
/// "carapace 15.8 mm", "62 mm leg span"; empty where nothing was measured.
[[nodiscard]] QString sizeText(const Resident& resident, const Desk& desk);
/// The gravest first: "Strong venom", "Fast".
[[nodiscard]] QStringList cautionWords(const Resident& resident, const Desk& desk);

/// The shape that stands for an answer: a kind of the component Punch.
[[nodiscard]] QString punchFor(const Resident& resident, const Answer& answer);
/// The shape that stands for what a resident is when nothing is asked: blank, group, sold ...
[[nodiscard]] QString punchFor(const Resident& resident);
/// What to do while food is held back, by its reason.
[[nodiscard]] QString holdAdvice(const Answer& answer, const Desk& desk);
/// "Feed."
[[nodiscard]] QString verbText(const Resident& resident, const Answer& answer, const Desk& desk);

/// What the moult line draws: lists of maps as the component takes them.
struct MoultLineData {
    QVariantList marks;
    QVariantList feedings;
    int startDay = 0;
    int nowDay = 0;
    QString description;

    friend bool operator==(const MoultLineData&, const MoultLineData&) = default;
};
/// How tall a moult's mark is: its carapace; where only the span was measured, about what that would be;
/// 0, the lowest mark, where nothing was.
[[nodiscard]] double markHeight(const std::optional<Millimetres>& carapace,
                                const std::optional<Millimetres>& span, const Resident& resident,
                                const Rules& rules);
/// From the digest: the last few moults and meals, for rows and label headers.
[[nodiscard]] MoultLineData recentMoultLine(const Resident& resident, const Desk& desk);

/// What to say in the undo slot after a fact was logged: "took 1 locust".
[[nodiscard]] Message saidOf(const FactDraft& draft, Form form);

}  // namespace burrow
