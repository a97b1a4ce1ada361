// Says something through the screen reader without moving the focus.
#pragma once

#include <QQuickItem>

namespace burrow {

/// An invisible item; whoever owns it calls `say`. Where Qt knows announcements (6.8) one is sent;
/// before that the item raises an alert and its accessible name is the text.
class Announcer : public QQuickItem {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(QString text READ text NOTIFY textChanged)

public:
    using QQuickItem::QQuickItem;

    [[nodiscard]] QString text() const { return text_; }
    Q_INVOKABLE void say(const QString& text);

signals:
    void textChanged();

private:
    QString text_;
};

}  // namespace burrow
