// A list of lines in words, some under a heading: what several pages show.
#pragma once

#include "viewmodels/rows.h"

namespace burrow {

struct LineRow {
    QString key;
    QString heading;  ///< on the first line of each group
    QString note;     ///< beside the heading: "14 meals"
    QString tag;
    QString name;
    QString value;
    QString sub;
    QString subject;         ///< whose page it opens; empty for none
    bool estimated = false;  ///< the value is worked out
    bool marked = false;     ///< it wants attention

    friend bool operator==(const LineRow&, const LineRow&) = default;
};

class LinesModel : public burrow::RowsModel {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("Lines are of something.")
    Q_PROPERTY(int count READ count NOTIFY countChanged FINAL)

public:
    enum Role {
        KeyRole = Qt::UserRole + 1,
        HeadingRole,
        NoteRole,
        TagRole,
        NameRole,
        ValueRole,
        SubRole,
        SubjectRole,
        EstimatedRole,
        MarkedRole
    };

    explicit LinesModel(QObject* parent = nullptr) : RowsModel(parent) {}

    [[nodiscard]] int count() const { return rowCount(); }
    [[nodiscard]] const std::vector<LineRow>& rows() const { return rows_; }
    void show(std::vector<LineRow> rows);
    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override {
        return countOf(rows_, parent);
    }
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QHash<int, QByteArray> roleNames() const override;

signals:
    void countChanged();

private:
    std::vector<LineRow> rows_;
};

}  // namespace burrow
