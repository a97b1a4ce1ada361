// What happened to a subject, filled in: for logging it, and for amending it later. Its fields follow
// from the core's table of kinds.
#pragma once

#include "viewmodels/factwords.h"
#include "viewmodels/formmodel.h"

namespace burrow {

class FactForm : public burrow::FormModel {
    Q_OBJECT
    QML_ELEMENT
    /// Whether anything is being filled in.
    Q_PROPERTY(bool open READ isOpen NOTIFY shapeChanged FINAL)
    /// What to keep in mind while doing it: a hold, a caution, the law.
    Q_PROPERTY(QList<QString> warnings READ warnings NOTIFY shapeChanged FINAL)
    Q_PROPERTY(QString saveText READ saveText NOTIFY shapeChanged FINAL)
    /// The day it happened; at the earliest today's.
    Q_PROPERTY(burrow::DayEntry* when READ when CONSTANT FINAL)

public:
    explicit FactForm(QObject* parent = nullptr);

    [[nodiscard]] bool isOpen() const { return kind_.has_value(); }
    [[nodiscard]] QStringList warnings() const { return warnings_; }
    [[nodiscard]] QString saveText() const;
    [[nodiscard]] DayEntry* when() { return &when_; }

public slots:
    /// For something new; `kind` as files spell it.
    void begin(const QString& subject, const QString& kind);
    /// For an entry that is to read differently.
    void amend(const QString& entry);
    void close();
    void save() override;

protected:
    void read() override {}

private:
    void build(FactKind kind, const ResidentPtr& resident);
    void addField(std::string_view field);
    void addHome();
    void addMove();
    void showBody(const FactBody& body, const EnclosureNames& names);
    void suggestMeal();
    void warn();
    [[nodiscard]] bool isShown(std::string_view field) const;
    [[nodiscard]] bool readBody(FactBody& body);
    [[nodiscard]] bool readField(FactBody& body, FormField& field);
    [[nodiscard]] std::optional<Instant> happenedAt() const;
    /// The enclosure that is made along; nothing for none.
    [[nodiscard]] std::optional<Enclosure> newHome() const;
    [[nodiscard]] Deed logDeed(FactBody body) const;
    [[nodiscard]] Deed amendDeed(FactBody body) const;

    DayEntry when_;
    std::optional<FactKind> kind_;
    ResidentPtr resident_;
    std::optional<Fact> before_;  ///< the entry that is amended
    QStringList warnings_;
    HomeFields home_;  ///< for a rehousing into a new enclosure
};

}  // namespace burrow
