// What this program is, and under which licences its parts come.
#pragma once

#include <QtQml/qqmlregistration.h>
#include <QObject>
#include <QVariantList>

namespace burrow {

class AboutModel : public QObject {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(QString version READ version CONSTANT FINAL)
    /// [{name, licence, text}]: the fonts, with the whole text of their licence.
    Q_PROPERTY(QVariantList fonts READ fonts CONSTANT FINAL)
    /// [{name, value}]: the libraries, with their licence.
    Q_PROPERTY(QVariantList libraries READ libraries CONSTANT FINAL)

public:
    explicit AboutModel(QObject* parent = nullptr) : QObject(parent) {}

    [[nodiscard]] QString version() const;
    [[nodiscard]] QVariantList fonts() const;
    [[nodiscard]] QVariantList libraries() const;
};

}  // namespace burrow
