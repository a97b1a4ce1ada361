// The care sheet of one animal, as it will be printed.
#pragma once

#include "room/room.h"
#include "viewmodels/sheetmodel.h"

namespace burrow {

class CareSheetModel : public burrow::SheetModel {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(QString subject READ subject WRITE setSubject NOTIFY subjectChanged REQUIRED FINAL)
    Q_PROPERTY(bool missing READ isMissing NOTIFY pagesChanged FINAL)
    Q_PROPERTY(QString tag READ tag NOTIFY pagesChanged FINAL)
    Q_PROPERTY(QString binomial READ binomial NOTIFY pagesChanged FINAL)
    /// There is no line yet that says how to reach the keeper.
    Q_PROPERTY(bool lacksContact READ lacksContact NOTIFY pagesChanged FINAL)
    /// What the sheet can't say, because nothing is known of the species; empty where it can.
    Q_PROPERTY(QString gap READ gap NOTIFY pagesChanged FINAL)

public:
    explicit CareSheetModel(QObject* parent = nullptr) : SheetModel(parent) {}

    [[nodiscard]] QString subject() const { return subject_; }
    void setSubject(const QString& subject);
    [[nodiscard]] bool isMissing() const { return isReady() && !resident_; }
    [[nodiscard]] QString tag() const;
    [[nodiscard]] QString binomial() const;
    [[nodiscard]] bool lacksContact() const;
    [[nodiscard]] QString gap() const;

signals:
    void subjectChanged();

protected:
    void read() override;
    [[nodiscard]] std::string stem() const override;
    [[nodiscard]] std::string title() const override;

private:
    QString subject_;
    ResidentPtr resident_;
};

}  // namespace burrow
