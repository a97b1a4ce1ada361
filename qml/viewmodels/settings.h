// How the app looks and behaves on this device. Kept on the device, not in the book.
#pragma once

#include <QtQml/qqmlregistration.h>
#include <QObject>
#include <QSettings>

namespace burrow {

class Settings : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("The program makes the settings.")
    Q_PROPERTY(bool daylight READ daylight WRITE setDaylight NOTIFY changed FINAL)
    /// 0.85 to 2.
    Q_PROPERTY(qreal textScale READ textScale WRITE setTextScale NOTIFY changed FINAL)
    Q_PROPERTY(bool reducedMotion READ reducedMotion WRITE setReducedMotion NOTIFY changed FINAL)
    Q_PROPERTY(bool leftHanded READ leftHanded WRITE setLeftHanded NOTIFY changed FINAL)
    /// How long something can be undone from the bar, in ms; 0 until the next tap.
    Q_PROPERTY(int undoTime READ undoTime WRITE setUndoTime NOTIFY changed FINAL)
    /// After a tap in a round: the scanner, else the next tub in the order of the shelf.
    Q_PROPERTY(bool scanNext READ scanNext WRITE setScanNext NOTIFY changed FINAL)

public:
    /// Reads and writes that file.
    explicit Settings(const QString& file, QObject* parent = nullptr);

    [[nodiscard]] bool daylight() const { return flag("daylight", false); }
    [[nodiscard]] qreal textScale() const;
    [[nodiscard]] bool reducedMotion() const { return flag("reducedMotion", false); }
    [[nodiscard]] bool leftHanded() const { return flag("leftHanded", false); }
    [[nodiscard]] int undoTime() const;
    [[nodiscard]] bool scanNext() const { return flag("scanNext", true); }

    void setDaylight(bool on) { set("daylight", on); }
    void setTextScale(qreal scale);
    void setReducedMotion(bool on) { set("reducedMotion", on); }
    void setLeftHanded(bool on) { set("leftHanded", on); }
    void setUndoTime(int ms) { set("undoTime", ms); }
    void setScanNext(bool on) { set("scanNext", on); }

    /// The book that was open last; empty for none.
    [[nodiscard]] QString lastBook() const { return file_.value("lastBook").toString(); }
    void setLastBook(const QString& path) { file_.setValue("lastBook", path); }

    /// How the keeper wants to be called in answers to other keepers; empty for nothing yet.
    [[nodiscard]] QString judgeName() const { return file_.value("judgeName").toString(); }
    void setJudgeName(const QString& name) { file_.setValue("judgeName", name); }

    /// What reminders keep on this device: what was chosen, and what was told of each book.
    [[nodiscard]] QVariant reminder(const QString& name, const QVariant& usual = {}) const {
        return file_.value(QStringLiteral("reminders/") + name, usual);
    }
    void setReminder(const QString& name, const QVariant& value) {
        file_.setValue(QStringLiteral("reminders/") + name, value);
    }

    /// The folder that a book is shared through; empty for none.
    [[nodiscard]] QString sharedFolder(const QString& book) const {
        return file_.value(sharedKey(book)).toString();
    }
    void setSharedFolder(const QString& book, const QString& folder) {
        file_.setValue(sharedKey(book), folder);
    }

signals:
    void changed();

private:
    [[nodiscard]] bool flag(const char* name, bool usual) const {
        return file_.value(name, usual).toBool();
    }
    void set(const char* name, const QVariant& value);
    /// A path may hold characters that are no good in a key.
    [[nodiscard]] static QString sharedKey(const QString& book) {
        return QStringLiteral("shared/") + QString::fromLatin1(book.toUtf8().toHex());
    }

    QSettings file_;
};

}  // namespace burrow
