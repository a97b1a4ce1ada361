// A day to type or to reach by steps. It is always a day of the calendar, or none.
#pragma once

#include <QtQml/qqmlregistration.h>
#include <QObject>
#include <optional>

#include "base/civil.h"
#include "words/words.h"

namespace burrow {

class DayEntry : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("A form makes its days.")
    Q_PROPERTY(bool known READ isKnown NOTIFY changed FINAL)
    Q_PROPERTY(bool canBeUnknown READ canBeUnknown CONSTANT FINAL)
    /// "12 May 2021"; "Not recorded" for none.
    Q_PROPERTY(QString words READ words NOTIFY changed FINAL)
    /// "Today", "Yesterday", "Wednesday 6 May": how far back it is, at a glance.
    Q_PROPERTY(QString glance READ glance NOTIFY changed FINAL)
    /// What stands in the line to type in, "2026-05-08".
    Q_PROPERTY(QString typed READ typed NOTIFY changed FINAL)
    Q_PROPERTY(QString error READ error NOTIFY changed FINAL)
    Q_PROPERTY(QString dayText READ dayText NOTIFY changed FINAL)
    Q_PROPERTY(QString monthText READ monthText NOTIFY changed FINAL)
    Q_PROPERTY(QString yearText READ yearText NOTIFY changed FINAL)
    Q_PROPERTY(bool canLater READ canLater NOTIFY changed FINAL)

public:
    enum class Unit { Day, Month, Year };
    Q_ENUM(Unit)

    explicit DayEntry(QObject* parent = nullptr) : QObject(parent) {}

    /// What today is, and how days are named. `words` must outlive this object.
    void prepare(const Words& words, CivilDay today);
    /// Days after today are refused.
    void forbidFuture() { latest_ = today_; }
    void requireKnown() { canBeUnknown_ = false; }

    [[nodiscard]] std::optional<CivilDay> day() const { return day_; }
    void setDay(std::optional<CivilDay> day);
    /// What was typed can't be read, or is a day that can't be.
    [[nodiscard]] bool isWrong() const { return !error_.isEmpty(); }

    [[nodiscard]] bool isKnown() const { return day_.has_value(); }
    [[nodiscard]] bool canBeUnknown() const { return canBeUnknown_; }
    [[nodiscard]] QString words() const;
    [[nodiscard]] QString glance() const;
    [[nodiscard]] QString typed() const { return typed_; }
    [[nodiscard]] QString error() const { return error_; }
    [[nodiscard]] QString dayText() const;
    [[nodiscard]] QString monthText() const;
    [[nodiscard]] QString yearText() const;
    [[nodiscard]] bool canLater() const;

public slots:
    void type(const QString& text);
    /// From today where no day is known. A day that a month doesn't have becomes its last.
    void step(burrow::DayEntry::Unit unit, int by);
    void clear();
    void setToday() { setDay(today_); }

signals:
    void changed();

private:
    [[nodiscard]] QString say(const Message& message) const;

    const Words* words_ = nullptr;
    CivilDay today_;
    std::optional<CivilDay> latest_;
    std::optional<CivilDay> day_;
    QString typed_;
    QString error_;
    bool canBeUnknown_ = true;
};

}  // namespace burrow
