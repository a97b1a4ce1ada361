// One field of a form: a line to type in, a choice, a count, a day. Its value is text as the core
// reads it; how it is shown and chosen is up to its type.
#pragma once

#include <QStringList>
#include <QVariantList>
#include <vector>

#include "viewmodels/dayentry.h"

namespace burrow {

/// One thing to choose: what is written down for it, and how it is called.
struct FieldChoice {
    QString value;
    QString word;
    QString sub = {};
};

class FormField : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("A form makes its fields.")
    Q_PROPERTY(Type type READ type CONSTANT FINAL)
    Q_PROPERTY(QString name READ name CONSTANT FINAL)
    Q_PROPERTY(QString label READ label NOTIFY changed FINAL)
    Q_PROPERTY(QString hint READ hint NOTIFY changed FINAL)
    /// Something to know about what was entered, which is no error.
    Q_PROPERTY(QString notice READ notice NOTIFY changed FINAL)
    Q_PROPERTY(QString error READ error NOTIFY changed FINAL)
    Q_PROPERTY(bool wanted READ isWanted NOTIFY changed FINAL)
    Q_PROPERTY(QString text READ text NOTIFY changed FINAL)
    /// An enclosure by its name.
    Q_PROPERTY(QString shown READ shown NOTIFY changed FINAL)
    /// [{word, sub}]; `chosen` is the place of the one that counts, -1 for none.
    Q_PROPERTY(QVariantList options READ options NOTIFY changed FINAL)
    Q_PROPERTY(int chosen READ chosen NOTIFY changed FINAL)
    Q_PROPERTY(int count READ count NOTIFY changed FINAL)
    Q_PROPERTY(int least READ least NOTIFY changed FINAL)
    Q_PROPERTY(int most READ most NOTIFY changed FINAL)
    Q_PROPERTY(bool on READ isOn NOTIFY changed FINAL)
    /// What may be meant, to tap instead of typing.
    Q_PROPERTY(QList<QString> suggestions READ suggestions NOTIFY changed FINAL)
    Q_PROPERTY(burrow::DayEntry* day READ day CONSTANT FINAL)

public:
    enum class Type { Text, Code, Number, Count, Choice, Flag, Day, Enclosure };
    Q_ENUM(Type)

    FormField(Type type, QString name, QString label, QObject* parent);

    [[nodiscard]] Type type() const { return type_; }
    [[nodiscard]] QString name() const { return name_; }
    [[nodiscard]] QString label() const { return label_; }
    [[nodiscard]] QString hint() const { return hint_; }
    [[nodiscard]] QString notice() const { return notice_; }
    [[nodiscard]] QString error() const { return error_; }
    [[nodiscard]] bool isWanted() const { return wanted_; }
    /// Empty where nothing was entered.
    [[nodiscard]] QString text() const;
    [[nodiscard]] std::string value() const { return text().trimmed().toStdString(); }
    [[nodiscard]] QString shown() const { return shown_; }
    [[nodiscard]] QVariantList options() const;
    [[nodiscard]] int chosen() const;
    [[nodiscard]] int count() const;
    [[nodiscard]] int least() const { return least_; }
    [[nodiscard]] int most() const { return most_; }
    [[nodiscard]] bool isOn() const { return text_ == u"yes"; }
    [[nodiscard]] QStringList suggestions() const { return suggestions_; }
    [[nodiscard]] DayEntry* day() const { return day_; }

    // The form's side.
    FormField& setText(const QString& text);
    FormField& setLabel(const QString& label);
    FormField& setHint(const QString& hint);
    FormField& setNotice(const QString& notice);
    FormField& setError(const QString& error);
    FormField& setWanted(bool wanted);
    FormField& setChoices(std::vector<FieldChoice> choices);
    FormField& setRange(int least, int most);
    FormField& setSuggestions(const QStringList& suggestions);
    void setEnclosure(const QString& id, const QString& shown);

public slots:
    // The keeper's side.
    void enter(const QString& text);
    void choose(int place);
    void setCount(int count);
    void turn(bool on);
    /// An enclosure from the list.
    void pick(const QString& id, const QString& shown);

signals:
    void changed();
    /// By the keeper.
    void edited();

private:
    template <class Value>
    FormField& put(Value& member, const Value& value);
    void take(const QString& text);

    Type type_;
    QString name_;
    QString label_;
    QString hint_;
    QString notice_;
    QString error_;
    bool wanted_ = true;
    QString text_;
    QString shown_;
    std::vector<FieldChoice> choices_;
    int least_ = 0;
    int most_ = 9999;
    QStringList suggestions_;
    DayEntry* day_ = nullptr;  // a child
};

}  // namespace burrow
