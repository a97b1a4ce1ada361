// An enclosure: its name, its inner sizes, where it stands and who lives in it.
#pragma once

#include "viewmodels/formmodel.h"
#include "viewmodels/wording.h"

namespace burrow {

class EnclosureForm : public burrow::FormModel {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(
        QString enclosure READ enclosure WRITE setEnclosure NOTIFY shapeChanged REQUIRED FINAL)
    /// [{subject, tag, binomial, about}]
    Q_PROPERTY(QVariantList residents READ residents NOTIFY residentsChanged FINAL)

public:
    explicit EnclosureForm(QObject* parent = nullptr) : FormModel(parent) {}

    [[nodiscard]] QString enclosure() const { return enclosure_; }
    void setEnclosure(const QString& enclosure);
    [[nodiscard]] QVariantList residents() const;

public slots:
    void save() override;

signals:
    void residentsChanged();

protected:
    void read() override;

private:
    void build(const Enclosure& enclosure);

    QString enclosure_;
    Enclosure before_;
    HomeFields home_;
};

}  // namespace burrow
