// Fields to fill in, saved as one act. What can't be used is said at its field, and nothing is written.
#pragma once

#include <QQmlListProperty>
#include <QQmlParserStatus>

#include "viewmodels/desk.h"
#include "viewmodels/formfield.h"
#include "viewmodels/homefields.h"

namespace burrow {

class FormModel : public QObject, public QQmlParserStatus {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("A form is made for what it is about.")
    Q_INTERFACES(QQmlParserStatus)
    Q_PROPERTY(burrow::Desk* desk READ desk WRITE setDesk NOTIFY deskChanged REQUIRED FINAL)
    Q_PROPERTY(QString title READ title NOTIFY shapeChanged FINAL)
    Q_PROPERTY(QQmlListProperty<burrow::FormField> fields READ fields NOTIFY shapeChanged FINAL)
    /// What the form is about is read, and its fields hold it.
    Q_PROPERTY(bool ready READ isReady NOTIFY shapeChanged FINAL)
    /// What it is about is not in the book.
    Q_PROPERTY(bool missing READ isMissing NOTIFY shapeChanged FINAL)
    /// What is wrong with the whole, in words; empty for nothing.
    Q_PROPERTY(QString error READ error NOTIFY stateChanged FINAL)
    Q_PROPERTY(bool busy READ isBusy NOTIFY stateChanged FINAL)
    /// The keeper has entered something that is not saved.
    Q_PROPERTY(bool touched READ isTouched NOTIFY edited FINAL)

public:
    explicit FormModel(QObject* parent = nullptr) : QObject(parent) {}

    // In QML reading waits until everything that the form is about is given.
    void classBegin() override { isComplete_ = false; }
    void componentComplete() override;

    [[nodiscard]] Desk* desk() const { return desk_; }
    void setDesk(Desk* desk);
    [[nodiscard]] QString title() const { return title_; }
    [[nodiscard]] QQmlListProperty<FormField> fields() { return {this, &fields_}; }
    [[nodiscard]] const QList<FormField*>& all() const { return fields_; }
    [[nodiscard]] bool isReady() const { return ready_; }
    [[nodiscard]] bool isMissing() const { return missing_; }
    [[nodiscard]] QString error() const { return error_; }
    [[nodiscard]] bool isBusy() const { return busy_; }
    [[nodiscard]] bool isTouched() const { return touched_; }
    /// The field of that name; null for none.
    [[nodiscard]] FormField* field(const QString& name) const;

public slots:
    virtual void save() = 0;

signals:
    void deskChanged();
    void shapeChanged();
    void stateChanged();
    /// By the keeper.
    void edited();
    /// Written; `thing` is what it was about or what was made.
    void saved(const QString& thing);

protected:
    /// Fills the form from the book. Called when all that it needs is given.
    virtual void read() = 0;
    /// What the form is about has changed.
    void readAgain();

    FormField& add(FormField::Type type, const char* name, const char* labelId);
    FormField& add(FormField::Type type, const QString& name, const QString& label);
    HomeFields addHomeFields();
    void setShape(const QString& title, bool ready, bool missing = false);
    void clearFields();
    void clearErrors();
    /// Whether any field that is wanted shows an error.
    [[nodiscard]] bool hasErrors() const;
    void setError(const QString& error);
    /// The field of that name, which must be there.
    [[nodiscard]] FormField& at(const char* name) const;
    /// What was entered; empty for a field that is not wanted.
    [[nodiscard]] QString value(const char* name) const;
    /// Writes; what stands in `thing` afterwards is handed to saved().
    void write(Deed deed, std::shared_ptr<const QString> thing);

    QPointer<Desk> desk_;

private:
    QList<FormField*> fields_;  // children
    QString title_;
    QString error_;
    bool ready_ = false;
    bool missing_ = false;
    bool busy_ = false;
    bool touched_ = false;
    bool isComplete_ = true;
};

}  // namespace burrow
