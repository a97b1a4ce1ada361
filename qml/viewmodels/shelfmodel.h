// Everything on one shelf at once: watered or dampened, all but those that are left out.
#pragma once

#include <QSet>

#include "viewmodels/rows.h"
#include "viewmodels/wording.h"

namespace burrow {

struct ShelfRow {
    QString key;  ///< of the subject
    QString tag;
    QString binomial;
    bool included = true;

    friend bool operator==(const ShelfRow&, const ShelfRow&) = default;
};

class ShelfModel : public burrow::RowsModel {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(burrow::Desk* desk READ desk WRITE setDesk NOTIFY deskChanged REQUIRED FINAL)
    /// As ShelvesModel names it; choosing another includes everyone again.
    Q_PROPERTY(QString shelf READ shelf WRITE setShelf NOTIFY countChanged FINAL)
    Q_PROPERTY(QString title READ title NOTIFY countChanged FINAL)
    /// A round along it has something to do.
    Q_PROPERTY(bool due READ isDue NOTIFY countChanged FINAL)
    Q_PROPERTY(int included READ included NOTIFY countChanged FINAL)

public:
    enum Role { SubjectRole = Qt::UserRole + 1, TagRole, BinomialRole, IncludedRole };

    explicit ShelfModel(QObject* parent = nullptr) : RowsModel(parent) {}

    [[nodiscard]] Desk* desk() const { return desk_; }
    void setDesk(Desk* desk);
    [[nodiscard]] QString shelf() const { return shelf_; }
    void setShelf(const QString& shelf);
    [[nodiscard]] QString title() const;
    [[nodiscard]] bool isDue() const { return isDue_; }
    [[nodiscard]] int included() const;
    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override {
        return countOf(rows_, parent);
    }
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QHash<int, QByteArray> roleNames() const override;

public slots:
    void toggle(const QString& subject);
    /// One act for all who are included.
    void water() { log(FactKind::watered); }
    void dampen() { log(FactKind::dampened); }

signals:
    void deskChanged();
    void countChanged();
    void logged();

private:
    void read();
    void log(FactKind kind);

    QPointer<Desk> desk_;
    QString shelf_;
    QSet<QString> leftOut_;
    bool isDue_ = false;
    std::vector<ShelfRow> rows_;
};

}  // namespace burrow
