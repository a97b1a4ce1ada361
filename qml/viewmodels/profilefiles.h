// Species profiles as files: the keeper's own given away, those of others taken in.
#pragma once

#include <QUrl>

#include "ports/sharer.h"
#include "viewmodels/desk.h"

namespace burrow {

class ProfileFiles : public QObject {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(burrow::Desk* desk READ desk WRITE setDesk NOTIFY changed REQUIRED FINAL)
    Q_PROPERTY(burrow::Sharer* sharer READ sharer WRITE setSharer NOTIFY changed REQUIRED FINAL)
    /// The one that is given away, by any of its names; empty for all of the keeper's own.
    Q_PROPERTY(QString species MEMBER species_ NOTIFY changed FINAL)
    /// Of the keeper's own.
    Q_PROPERTY(int ownCount READ ownCount NOTIFY changed FINAL)
    Q_PROPERTY(bool canShare READ canShare NOTIFY changed FINAL)
    /// What was done, in words.
    Q_PROPERTY(QString doneText READ doneText NOTIFY changed FINAL)
    /// Which species were taken in, and what became of them.
    Q_PROPERTY(QString doneDetail READ doneDetail NOTIFY changed FINAL)
    Q_PROPERTY(QString trouble READ trouble NOTIFY changed FINAL)

public:
    explicit ProfileFiles(QObject* parent = nullptr) : QObject(parent) {}

    [[nodiscard]] Desk* desk() const { return desk_; }
    void setDesk(Desk* desk);
    [[nodiscard]] Sharer* sharer() const { return sharer_; }
    void setSharer(Sharer* sharer);
    [[nodiscard]] int ownCount() const;
    [[nodiscard]] bool canShare() const { return sharer_ && sharer_->canShare(); }
    [[nodiscard]] QString doneText() const { return doneText_; }
    [[nodiscard]] QString doneDetail() const { return doneDetail_; }
    [[nodiscard]] QString trouble() const { return trouble_; }

public slots:
    /// Writes the file into a folder, beside what is there.
    void saveTo(const QUrl& folder);
    /// Makes the file and hands it to another app.
    void share();
    /// All species of a file become the keeper's own, in one act, or none.
    void takeIn(const QUrl& file);

signals:
    void changed();

private:
    [[nodiscard]] std::vector<Profile> chosen() const;
    [[nodiscard]] std::string stem() const;
    [[nodiscard]] Done write(const std::filesystem::path& path) const;
    void tell(const QString& done, const QString& detail = {});
    void tell(const Error& error);

    QPointer<Desk> desk_;
    QPointer<Sharer> sharer_;
    QString species_;
    QString doneText_;
    QString doneDetail_;
    QString trouble_;
};

}  // namespace burrow
