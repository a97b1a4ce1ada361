// Writing into the book on a desk, and reading what lists of lines say.
#pragma once

#include "viewmodels/desk_fixture.h"

namespace burrow::test {

/// One act, as another page would write it.
inline void write(DeskFixture& at, std::vector<Draft> drafts) {
    Deed deed;
    deed.compose = [drafts = std::move(drafts)](Book&) -> Result<std::vector<Draft>> {
        return drafts;
    };
    at.desk.act(&at.desk, std::move(deed));
    at.settle();
    QVERIFY2(at.desk.trouble().isEmpty(), qPrintable(at.desk.trouble()));
}

inline Instant daysAgo(int days) { return {fridayEvening.ms - days * msPerDay}; }

/// What happened so many days before today, in the evening.
inline void log(DeskFixture& at, SubjectId id, FactKind kind, int days, FactBody body = {}) {
    write(at, {FactDraft{id, kind, std::move(body), daysAgo(days)}});
}

/// Fields of a subject, as files spell them.
inline void set(DeskFixture& at, SubjectId id, FieldValues fields) {
    write(at, {SetDraft{ThingType::subject, id.uuid, std::move(fields)}});
}

inline SubjectId addSubject(DeskFixture& at, const Subject& subject) {
    const SubjectId id{Uuid::named("subject " + subject.number)};
    set(at, id, toFields(subject));
    return id;
}

inline EnclosureId addEnclosure(DeskFixture& at, const Enclosure& enclosure) {
    const EnclosureId id{Uuid::named("enclosure " + enclosure.name)};
    write(at, {SetDraft{ThingType::enclosure, id.uuid, toFields(enclosure)}});
    return id;
}

inline ResidentPtr resident(const DeskFixture& at, SubjectId id) {
    return at.desk.room()->find(id);
}

/// An answer of the book.
template <class T>
T asked(DeskFixture& at, std::function<Result<T>(Book&)> question) {
    std::optional<T> answer;
    at.desk.ask<T>(&at.desk, std::move(question),
                   [&](const Result<T>& found) { answer = found.value(); });
    at.settle();
    return *answer;
}

inline std::vector<Enclosure> enclosuresOf(DeskFixture& at) {
    return asked<std::vector<Enclosure>>(at, [](Book& book) { return enclosures(book); });
}

/// One column of a list of lines.
inline QStringList column(const QVariantList& lines, const char* key) {
    QStringList values;
    for (const auto& line : lines) values.append(line.toMap().value(key).toString());
    return values;
}

/// The first line of that name; empty where there is none.
inline QVariantMap lineNamed(const QVariantList& lines, const QString& name) {
    for (const auto& line : lines) {
        if (line.toMap().value("name") == name) return line.toMap();
    }
    return {};
}

/// One role of every row.
inline QStringList column(const QAbstractItemModel& rows, int role) {
    QStringList values;
    for (int row = 0; row < rows.rowCount(); ++row) {
        values.append(rows.data(rows.index(row, 0), role).toString());
    }
    return values;
}

}  // namespace burrow::test
