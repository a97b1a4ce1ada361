// A second phone for the same room: its book starts from a file that the first one made.
#pragma once

#include <QUrl>

#include "ports/darkroom.h"
#include "viewmodels/bookcase.h"
#include "viewmodels/filework.h"

namespace burrow {

class JoinModel : public QObject {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(burrow::Desk* desk READ desk WRITE setDesk NOTIFY changed REQUIRED FINAL)
    Q_PROPERTY(burrow::Bookcase* bookcase MEMBER bookcase_ NOTIFY changed REQUIRED FINAL)
    Q_PROPERTY(burrow::Darkroom* darkroom MEMBER darkroom_ NOTIFY changed REQUIRED FINAL)
    Q_PROPERTY(Step step READ step NOTIFY changed FINAL)
    Q_PROPERTY(burrow::FileWork* work READ work CONSTANT FINAL)
    /// "Kiln Row, 17 May, 18:06"
    Q_PROPERTY(QString title READ title NOTIFY changed FINAL)
    /// "2,047 entries and 312 photos, small"
    Q_PROPERTY(QString text READ text NOTIFY changed FINAL)
    Q_PROPERTY(QString trouble READ trouble NOTIFY changed FINAL)

public:
    enum class Step { Choosing, Looking, Locked, Looked, Joining };
    Q_ENUM(Step)

    explicit JoinModel(QObject* parent = nullptr) : QObject(parent), work_(this) {}

    [[nodiscard]] Desk* desk() const { return desk_; }
    void setDesk(Desk* desk);
    [[nodiscard]] Step step() const { return step_; }
    [[nodiscard]] FileWork* work() { return &work_; }
    [[nodiscard]] QString title() const;
    [[nodiscard]] QString text() const;
    [[nodiscard]] QString trouble() const { return trouble_; }

public slots:
    void look(const QUrl& file);
    void unlock(const QString& passphrase);
    /// Answered by joined(), or by `trouble`.
    void join();

signals:
    void changed();
    /// The room's book lies open here too.
    void joined();

private:
    void peek();
    void show(const Result<exchange::Contents>& contents);
    void follow();
    void enter(Step step, const QString& trouble = {});

    QPointer<Desk> desk_;
    QPointer<Bookcase> bookcase_;
    QPointer<Darkroom> darkroom_;
    FileWork work_;
    Errands errands_;
    Step step_ = Step::Choosing;
    std::filesystem::path path_;
    std::string passphrase_;
    std::optional<exchange::Contents> contents_;
    QString trouble_;
};

}  // namespace burrow
