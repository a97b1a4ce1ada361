// Taking in a file from another phone or another keeper: what is in it is shown first, then all of it is
// taken in or nothing, and all of it can be undone until the next one.
#pragma once

#include <QUrl>
#include <QVariantList>

#include "ports/darkroom.h"
#include "viewmodels/filework.h"

namespace burrow {

class TakeInModel : public QObject {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(burrow::Desk* desk READ desk WRITE setDesk NOTIFY changed REQUIRED FINAL)
    Q_PROPERTY(burrow::Darkroom* darkroom MEMBER darkroom_ NOTIFY changed REQUIRED FINAL)
    Q_PROPERTY(Step step READ step NOTIFY changed FINAL)
    Q_PROPERTY(burrow::FileWork* work READ work CONSTANT FINAL)
    /// "Kiln Row, 17 May, 18:06"
    Q_PROPERTY(QString title READ title NOTIFY changed FINAL)
    /// What the file holds: [{name, value, sub}]
    Q_PROPERTY(QVariantList contents READ contents NOTIFY changed FINAL)
    /// The file is of another room's book: its animals would become part of this one.
    Q_PROPERTY(bool foreign READ isForeign NOTIFY changed FINAL)
    /// How many animals: here before, in the file, here now.
    Q_PROPERTY(int before READ before NOTIFY changed FINAL)
    Q_PROPERTY(int inFile READ inFile NOTIFY changed FINAL)
    Q_PROPERTY(int now READ now NOTIFY changed FINAL)
    /// What taking it in did: [{name, value, sub}]
    Q_PROPERTY(QVariantList outcome READ outcome NOTIFY changed FINAL)
    /// What the keeper has to know: [{happened, advice}]
    Q_PROPERTY(QVariantList warnings READ warnings NOTIFY changed FINAL)
    Q_PROPERTY(QString trouble READ trouble NOTIFY changed FINAL)
    /// The last file can be taken back: "Kiln Row phone.burrow, 143 entries, brought in on 17 May".
    Q_PROPERTY(QString last READ last NOTIFY changed FINAL)

public:
    /// `Locked`: the file is sealed, and its passphrase is asked for.
    enum class Step { Choosing, Looking, Locked, Looked, TakingIn, TakenIn, TakingBack };
    Q_ENUM(Step)

    explicit TakeInModel(QObject* parent = nullptr) : QObject(parent), work_(this) {}

    [[nodiscard]] Desk* desk() const { return desk_; }
    void setDesk(Desk* desk);
    [[nodiscard]] Step step() const { return step_; }
    [[nodiscard]] FileWork* work() { return &work_; }
    [[nodiscard]] QString title() const;
    [[nodiscard]] QVariantList contents() const;
    [[nodiscard]] bool isForeign() const;
    [[nodiscard]] int before() const { return before_; }
    [[nodiscard]] int inFile() const;
    [[nodiscard]] int now() const { return now_; }
    [[nodiscard]] QVariantList outcome() const;
    [[nodiscard]] QVariantList warnings() const;
    [[nodiscard]] QString trouble() const { return trouble_; }
    [[nodiscard]] QString last() const;

public slots:
    void look(const QUrl& file);
    /// For a sealed file.
    void unlock(const QString& passphrase);
    void takeIn();
    /// Takes back all that the last file brought.
    void undoAll();
    /// Back to choosing, with nothing changed.
    void putAside();

signals:
    void changed();

private:
    void peek();
    void show(Result<exchange::Contents> contents);
    void showTakenIn(const Result<ChangeSet>& done, std::shared_ptr<exchange::TakenIn> taken);
    void readLast();
    void enter(Step step);
    [[nodiscard]] int animalsHere() const;

    QPointer<Desk> desk_;
    QPointer<Darkroom> darkroom_;
    FileWork work_;
    Step step_ = Step::Choosing;
    std::filesystem::path path_;
    std::string passphrase_;
    std::optional<exchange::Contents> contents_;
    std::shared_ptr<exchange::TakenIn> taken_;
    std::optional<Arrival> last_;
    BookId book_;
    int before_ = 0;
    int now_ = 0;
    QString trouble_;
};

}  // namespace burrow
