// One entry: what happened, how it came to read as it does, and taking it out of the history.
#pragma once

#include "viewmodels/factwords.h"

namespace burrow {

class EntryModel : public QObject {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(burrow::Desk* desk READ desk WRITE setDesk NOTIFY deskChanged REQUIRED FINAL)
    Q_PROPERTY(QString entry READ entry WRITE setEntry NOTIFY changed REQUIRED FINAL)
    Q_PROPERTY(bool ready READ isReady NOTIFY changed FINAL)
    /// The book has no such entry, or it was taken out.
    Q_PROPERTY(bool missing READ isMissing NOTIFY changed FINAL)
    Q_PROPERTY(QString subject READ subject NOTIFY changed FINAL)
    Q_PROPERTY(QString tag READ tag NOTIFY changed FINAL)
    Q_PROPERTY(QString binomial READ binomial NOTIFY changed FINAL)
    Q_PROPERTY(QString title READ title NOTIFY changed FINAL)
    Q_PROPERTY(QString glyph READ glyph NOTIFY changed FINAL)
    Q_PROPERTY(QString day READ day NOTIFY changed FINAL)
    /// [{name, value}]
    Q_PROPERTY(QVariantList lines READ lines NOTIFY changed FINAL)
    /// [{name, value, sub}]: every reading, the first one first; empty where nothing was amended.
    Q_PROPERTY(QVariantList readings READ readings NOTIFY changed FINAL)
    /// The moult that the entry is, shows or judges, where there is a photo of it to be looked at for the sex;
    /// else empty.
    Q_PROPERTY(QString toSex READ toSex NOTIFY changed FINAL)
    /// The photo; empty for none.
    Q_PROPERTY(QUrl picture READ picture NOTIFY changed FINAL)
    Q_PROPERTY(bool hasPicture READ hasPicture NOTIFY changed FINAL)
    /// The entry itself, where it is a moult or a photo of one, to be measured; else empty.
    Q_PROPERTY(QString toMeasure READ toMeasure NOTIFY changed FINAL)
    /// The entry itself, where it is a moult, to add photos to it; else empty.
    Q_PROPERTY(QString toPhotograph READ toPhotograph NOTIFY changed FINAL)
    Q_PROPERTY(bool busy READ isBusy NOTIFY busyChanged FINAL)

public:
    explicit EntryModel(QObject* parent = nullptr) : QObject(parent) {}

    [[nodiscard]] Desk* desk() const { return desk_; }
    void setDesk(Desk* desk);
    [[nodiscard]] QString entry() const { return entry_; }
    void setEntry(const QString& entry);
    [[nodiscard]] bool isReady() const { return resident_ != nullptr; }
    [[nodiscard]] bool isMissing() const { return isRead_ && !resident_; }
    [[nodiscard]] QString subject() const;
    [[nodiscard]] QString tag() const;
    [[nodiscard]] QString binomial() const;
    [[nodiscard]] QString title() const;
    [[nodiscard]] QString glyph() const;
    [[nodiscard]] QString day() const;
    [[nodiscard]] QVariantList lines() const { return lines_; }
    [[nodiscard]] QVariantList readings() const { return readings_; }
    [[nodiscard]] QString toSex() const { return resident_ ? toSex_ : QString(); }
    [[nodiscard]] QUrl picture() const;
    [[nodiscard]] bool hasPicture() const { return !picture().isEmpty(); }
    [[nodiscard]] QString toMeasure() const;
    [[nodiscard]] QString toPhotograph() const;
    [[nodiscard]] bool isBusy() const { return busy_; }

public slots:
    void takeOut();

signals:
    void deskChanged();
    void changed();
    void busyChanged();
    void takenOut();

private:
    struct Found;

    void read();
    void show(const Found& found);

    QPointer<Desk> desk_;
    QString entry_;
    std::optional<Fact> fact_;
    ResidentPtr resident_;
    QString toSex_;
    QVariantList lines_;
    QVariantList readings_;
    bool isRead_ = false;
    bool busy_ = false;
};

}  // namespace burrow
