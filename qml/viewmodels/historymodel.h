// Everything that happened to a subject, newest first, read in portions.
#pragma once

#include "viewmodels/factwords.h"
#include "viewmodels/rows.h"

namespace burrow {

struct HistoryRow {
    QString key;    ///< of the entry
    QString month;  ///< "May 2026", on the first row of each month
    QString day;    ///< "Friday 8 May"
    QString title;
    QString detail;
    QString note;
    QString glyph;

    friend bool operator==(const HistoryRow&, const HistoryRow&) = default;
};

/// A fact as a row shows it, without its month.
[[nodiscard]] HistoryRow historyRow(const Fact& fact, const Resident& resident, const Desk& desk,
                                    const EnclosureNames& names);

class HistoryModel : public burrow::RowsModel {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(burrow::Desk* desk READ desk WRITE setDesk NOTIFY deskChanged REQUIRED FINAL)
    Q_PROPERTY(QString subject READ subject WRITE setSubject NOTIFY headChanged REQUIRED FINAL)
    Q_PROPERTY(QString tag READ tag NOTIFY headChanged FINAL)
    Q_PROPERTY(QString binomial READ binomial NOTIFY headChanged FINAL)
    Q_PROPERTY(bool missing READ isMissing NOTIFY headChanged FINAL)
    Q_PROPERTY(int count READ count NOTIFY countChanged FINAL)
    /// Read at least once.
    Q_PROPERTY(bool ready READ isReady NOTIFY countChanged FINAL)

public:
    enum Role {
        EntryRole = Qt::UserRole + 1,
        MonthRole,
        DayRole,
        TitleRole,
        DetailRole,
        NoteRole,
        GlyphRole
    };
    /// Entries read at a time.
    static constexpr int portion = 60;

    explicit HistoryModel(QObject* parent = nullptr) : RowsModel(parent) {}

    [[nodiscard]] Desk* desk() const { return desk_; }
    void setDesk(Desk* desk);
    [[nodiscard]] QString subject() const { return subject_; }
    void setSubject(const QString& subject);
    [[nodiscard]] QString tag() const;
    [[nodiscard]] QString binomial() const;
    [[nodiscard]] bool isMissing() const;
    [[nodiscard]] int count() const { return static_cast<int>(rows_.size()); }
    [[nodiscard]] bool isReady() const { return ready_; }
    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override {
        return countOf(rows_, parent);
    }
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QHash<int, QByteArray> roleNames() const override;
    [[nodiscard]] bool canFetchMore(const QModelIndex& parent) const override;
    void fetchMore(const QModelIndex& parent) override;

signals:
    void deskChanged();
    void headChanged();
    void countChanged();

private:
    struct Portion;

    void read();
    void show(const Portion& portion);

    QPointer<Desk> desk_;
    QString subject_;
    std::vector<HistoryRow> rows_;
    int wanted_ = portion;
    bool isReading_ = false;
    bool hasMore_ = false;
    bool ready_ = false;
};

}  // namespace burrow
