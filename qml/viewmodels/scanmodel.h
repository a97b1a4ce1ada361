// What the scanner sees, in terms of the book: whose tag it is, or why it is nobody's.
#pragma once

#include "ports/scanner.h"
#include "tags/code.h"
#include "viewmodels/desk.h"

namespace burrow {

class ScanModel : public QObject {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(burrow::Desk* desk READ desk WRITE setDesk NOTIFY deskChanged REQUIRED FINAL)
    Q_PROPERTY(burrow::Scanner* scanner READ scanner WRITE setScanner NOTIFY scannerChanged FINAL)
    /// What to do with what is in view: nothing yet, or found, or a message, or a tag to hang up.
    Q_PROPERTY(Sight sight READ sight NOTIFY sightChanged FINAL)

    // Found.
    Q_PROPERTY(QString subject READ subject NOTIFY sightChanged FINAL)
    Q_PROPERTY(QString tag READ tag NOTIFY sightChanged FINAL)
    Q_PROPERTY(QString binomial READ binomial NOTIFY sightChanged FINAL)
    Q_PROPERTY(QString punch READ punch NOTIFY sightChanged FINAL)
    Q_PROPERTY(QString verb READ verb NOTIFY sightChanged FINAL)
    Q_PROPERTY(QList<QString> cautions READ cautions NOTIFY sightChanged FINAL)

    // A message.
    Q_PROPERTY(QString message READ message NOTIFY sightChanged FINAL)
    /// Why there is no picture, in words; empty while there is one, or none is wanted.
    Q_PROPERTY(QString cameraTrouble READ cameraTrouble NOTIFY cameraChanged FINAL)

    // A tag without an animal, or an enclosure with several: [{subject, tag, binomial}].
    Q_PROPERTY(QString unboundCode READ unboundCode NOTIFY sightChanged FINAL)
    /// How wide its square is printed, in mm.
    Q_PROPERTY(qreal unboundSide READ unboundSide NOTIFY sightChanged FINAL)
    Q_PROPERTY(QVariantList choices READ choices NOTIFY sightChanged FINAL)

public:
    enum class Sight { Nothing, Found, Message, Unbound, Several };
    Q_ENUM(Sight)

    explicit ScanModel(QObject* parent = nullptr) : QObject(parent) {}

    [[nodiscard]] Desk* desk() const { return desk_; }
    void setDesk(Desk* desk);
    [[nodiscard]] Scanner* scanner() const { return scanner_; }
    void setScanner(Scanner* scanner);
    [[nodiscard]] Sight sight() const { return sight_; }
    [[nodiscard]] QString subject() const;
    [[nodiscard]] QString tag() const;
    [[nodiscard]] QString binomial() const;
    [[nodiscard]] QString punch() const;
    [[nodiscard]] QString verb() const;
    [[nodiscard]] QStringList cautions() const;
    [[nodiscard]] QString message() const { return message_; }
    [[nodiscard]] QString cameraTrouble() const;
    /// As people read it, "7Q2M ZX89 K".
    [[nodiscard]] QString unboundCode() const;
    [[nodiscard]] qreal unboundSide() const;
    [[nodiscard]] QVariantList choices() const;

public slots:
    void start();
    void stop();
    /// Forgets what was seen and looks again.
    void clear();
    /// A number, or a code from under the square.
    void typed(const QString& text);
    /// One of several behind the same tag.
    void choose(const QString& subject);
    /// Hangs the unbound tag on an animal, by its number.
    void hangOn(const QString& number);

signals:
    void deskChanged();
    void scannerChanged();
    void sightChanged();
    void cameraChanged();
    /// Its page, or its tub in a round, can be opened.
    void found(const QString& subject);
    /// A tag was hung on it.
    void bound(const QString& subject);

private:
    void see(const QByteArray& payload);
    void lookUp(const tags::OwnTag& tag);
    void show(const ResidentPtr& resident);
    void tell(const Message& message);
    void reset(Sight sight);

    QPointer<Desk> desk_;
    QPointer<Scanner> scanner_;
    Sight sight_ = Sight::Nothing;
    ResidentPtr resident_;
    QString message_;
    std::optional<tags::OwnTag> unbound_;
    std::vector<ResidentPtr> several_;
};

}  // namespace burrow
