// Asking another keeper about a moult by file, and taking the answer in.
#pragma once

#include <QUrl>

#include "exchange/opinion.h"
#include "ports/sharer.h"
#include "viewmodels/wording.h"

namespace burrow {

class OpinionModel : public QObject {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(burrow::Desk* desk READ desk WRITE setDesk NOTIFY changed REQUIRED FINAL)
    Q_PROPERTY(burrow::Sharer* sharer READ sharer WRITE setSharer NOTIFY changed REQUIRED FINAL)
    /// The moult that is asked about; empty where only an answer is taken in.
    Q_PROPERTY(QString moult READ moult WRITE setMoult NOTIFY changed FINAL)
    /// The number of the animal, for the name of the file.
    Q_PROPERTY(QString tag MEMBER tag_ NOTIFY changed FINAL)
    /// What the keeper asks, in the keeper's words.
    Q_PROPERTY(QString note READ note WRITE setNote NOTIFY changed FINAL)
    Q_PROPERTY(QString privacy READ privacy NOTIFY changed FINAL)
    Q_PROPERTY(bool canShare READ canShare NOTIFY changed FINAL)
    Q_PROPERTY(bool busy READ isBusy NOTIFY changed FINAL)
    /// What was done, in words.
    Q_PROPERTY(QString doneText READ doneText NOTIFY changed FINAL)
    Q_PROPERTY(QString trouble READ trouble NOTIFY changed FINAL)

public:
    explicit OpinionModel(QObject* parent = nullptr) : QObject(parent) {}

    [[nodiscard]] Desk* desk() const { return desk_; }
    void setDesk(Desk* desk);
    [[nodiscard]] Sharer* sharer() const { return sharer_; }
    void setSharer(Sharer* sharer);
    [[nodiscard]] QString moult() const { return moult_; }
    void setMoult(const QString& moult);
    [[nodiscard]] QString note() const { return note_; }
    void setNote(const QString& note);
    [[nodiscard]] QString privacy() const;
    [[nodiscard]] bool canShare() const { return sharer_ && sharer_->canShare(); }
    [[nodiscard]] bool isBusy() const { return busy_; }
    [[nodiscard]] QString doneText() const { return doneText_; }
    [[nodiscard]] QString trouble() const { return trouble_; }

public slots:
    /// Writes the question into a folder, beside what is there.
    void saveTo(const QUrl& folder);
    /// Makes the question and hands it to another app.
    void share();
    /// An answer becomes an examination by whoever gave it, or nothing is changed.
    void takeIn(const QUrl& file);

signals:
    void changed();

private:
    using Then = std::function<void(const std::filesystem::path&)>;
    void make(const std::filesystem::path& folder, Then then);
    void tell(const QString& done);
    void tell(const Error& error);

    QPointer<Desk> desk_;
    QPointer<Sharer> sharer_;
    QString moult_;
    QString tag_;
    QString note_;
    QString doneText_;
    QString trouble_;
    bool busy_ = false;
};

}  // namespace burrow
