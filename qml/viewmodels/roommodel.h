// The room as a whole: its name, what waits to be sexed, and whether its book is in order.
#pragma once

#include "viewmodels/desk.h"

namespace burrow {

class RoomModel : public QObject {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(burrow::Desk* desk READ desk WRITE setDesk NOTIFY deskChanged REQUIRED FINAL)
    Q_PROPERTY(QString name READ name NOTIFY changed FINAL)
    Q_PROPERTY(QString code READ code NOTIFY changed FINAL)
    Q_PROPERTY(QString contact READ contact NOTIFY changed FINAL)
    /// "KR. 104 animals, groups and lots kept"
    Q_PROPERTY(QString summary READ summary NOTIFY changed FINAL)
    /// "2 moults wait"
    Q_PROPERTY(QString toSex READ toSex NOTIFY changed FINAL)
    /// "2 differ, you choose"; empty for none.
    Q_PROPERTY(QString differences READ differences NOTIFY changed FINAL)
    /// The file that holds the book.
    Q_PROPERTY(QString file READ file NOTIFY changed FINAL)

    // Editing the room.
    Q_PROPERTY(QString nameError READ nameError NOTIFY editChanged FINAL)
    Q_PROPERTY(QString codeError READ codeError NOTIFY editChanged FINAL)

    // Finding one animal by its number.
    Q_PROPERTY(QString findTrouble READ findTrouble NOTIFY findChanged FINAL)

    // Looking the book over.
    Q_PROPERTY(Check check READ check NOTIFY checkChanged FINAL)
    /// "The book is whole: 4,102 entries, 120 subjects."
    Q_PROPERTY(QString checkText READ checkText NOTIFY checkChanged FINAL)
    Q_PROPERTY(QList<QString> findings READ findings NOTIFY checkChanged FINAL)
    /// What was found can be put right without losing an entry.
    Q_PROPERTY(bool canRepair READ canRepair NOTIFY checkChanged FINAL)

public:
    enum class Check { NotYet, UnderWay, Sound, Unsound };
    Q_ENUM(Check)

    explicit RoomModel(QObject* parent = nullptr) : QObject(parent) {}

    [[nodiscard]] Desk* desk() const { return desk_; }
    void setDesk(Desk* desk);
    [[nodiscard]] QString name() const;
    [[nodiscard]] QString code() const;
    [[nodiscard]] QString contact() const;
    [[nodiscard]] QString summary() const;
    [[nodiscard]] QString toSex() const;
    [[nodiscard]] QString differences() const;
    [[nodiscard]] QString file() const;
    [[nodiscard]] QString nameError() const { return nameError_; }
    [[nodiscard]] QString codeError() const { return codeError_; }
    [[nodiscard]] QString findTrouble() const { return findTrouble_; }
    [[nodiscard]] Check check() const { return check_; }
    [[nodiscard]] QString checkText() const { return checkText_; }
    [[nodiscard]] QStringList findings() const { return findings_; }
    [[nodiscard]] bool canRepair() const { return canRepair_; }

public slots:
    /// Writes what differs from what stands there.
    void save(const QString& name, const QString& code, const QString& contact);
    void clearErrors();
    /// Answered by found(), or by `findTrouble`.
    void find(const QString& number);
    void checkBook();
    void repairBook();

signals:
    void deskChanged();
    void changed();
    void editChanged();
    void saved();
    void findChanged();
    void found(const QString& subject);
    void checkChanged();

private:
    void read();
    void countWhatWaits();
    void setCheck(Check check, const QString& text);
    void showReport(const Message& message, const std::vector<Message>& findings);

    QPointer<Desk> desk_;
    std::int64_t toSex_ = 0;
    std::int64_t differences_ = 0;
    QString nameError_;
    QString codeError_;
    QString findTrouble_;
    Check check_ = Check::NotYet;
    QString checkText_;
    QStringList findings_;
    bool canRepair_ = false;
};

}  // namespace burrow
