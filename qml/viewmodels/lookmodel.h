// The choices of look and handling, as steps and tiles.
#pragma once

#include <QtQml/qqmlregistration.h>
#include <QPointer>

#include "viewmodels/settings.h"

namespace burrow {

class LookModel : public QObject {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(
        burrow::Settings* settings READ settings WRITE setSettings NOTIFY changed REQUIRED FINAL)
    /// "115 %"
    Q_PROPERTY(QString textSize READ textSize NOTIFY changed FINAL)
    Q_PROPERTY(bool canLarger READ canLarger NOTIFY changed FINAL)
    Q_PROPERTY(bool canSmaller READ canSmaller NOTIFY changed FINAL)
    /// 0 for 8 seconds, 1 for 20 seconds, 2 until the next scan; -1 for another time.
    Q_PROPERTY(int undoTime READ undoTime WRITE setUndoTime NOTIFY changed FINAL)

public:
    explicit LookModel(QObject* parent = nullptr) : QObject(parent) {}

    [[nodiscard]] Settings* settings() const { return settings_; }
    void setSettings(Settings* settings);
    [[nodiscard]] QString textSize() const;
    [[nodiscard]] bool canLarger() const;
    [[nodiscard]] bool canSmaller() const;
    [[nodiscard]] int undoTime() const;
    void setUndoTime(int choice);

public slots:
    void larger();
    void smaller();

signals:
    void changed();

private:
    QPointer<Settings> settings_;
};

}  // namespace burrow
