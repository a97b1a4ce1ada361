// One row of a table of thumb: a line for each of its numbers, empty while the shipped one holds. What the
// table can't take is said, and nothing is written.
#pragma once

#include "room/own_numbers.h"
#include "viewmodels/formmodel.h"

namespace burrow {

class NumberForm : public burrow::FormModel {
    Q_OBJECT
    QML_ELEMENT
    /// "sexing/moult/7_to_11.clearly"
    Q_PROPERTY(QString row READ row WRITE setRow NOTIFY shapeChanged REQUIRED FINAL)
    /// "Sexing: a moult looked at for a plate"
    Q_PROPERTY(QString table READ table NOTIFY shapeChanged FINAL)
    /// The numbers of the row that can't be changed, and why; empty for none.
    Q_PROPERTY(QString bound READ bound NOTIFY shapeChanged FINAL)
    /// None of its numbers can be changed.
    Q_PROPERTY(bool fixed READ isFixed NOTIFY shapeChanged FINAL)
    /// Whether any of its numbers is the keeper's own.
    Q_PROPERTY(bool own READ isOwn NOTIFY shapeChanged FINAL)

public:
    explicit NumberForm(QObject* parent = nullptr) : FormModel(parent) {}

    [[nodiscard]] QString row() const { return row_; }
    void setRow(const QString& row);
    [[nodiscard]] QString table() const { return table_; }
    [[nodiscard]] QString bound() const { return bound_; }
    [[nodiscard]] bool isFixed() const { return shown_ && all().isEmpty(); }
    [[nodiscard]] bool isOwn() const;

public slots:
    void save() override;
    /// All shipped numbers of the row hold again; in one act.
    void shipAgain();

protected:
    void read() override;

private:
    using Changes = std::vector<NumberChange>;

    void keepUp();
    void build();
    void addNumber(const TableNumber& number, const std::string& source);
    /// The row as it holds in the room now; nothing where there is none.
    [[nodiscard]] std::optional<NumberRow> found() const;
    /// What was typed; where something is no number, that is said at its line.
    [[nodiscard]] Changes typed();
    /// Says at the lines what can't stand there by itself, and the rest of it for the whole form.
    void showRefusal(const Changes& changes, const Error& why);
    void writeChanges(Changes changes, Message said);

    QString row_;
    QString table_;
    QString bound_;
    std::optional<NumberRow> shown_;  ///< as it was when the form was filled
};

}  // namespace burrow
