// The copies of the book that are kept on this device, and the way back to one of them.
#pragma once

#include <QVariantList>

#include "journal/restore.h"
#include "viewmodels/desk.h"

namespace burrow {

class BackupsModel : public QObject {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(burrow::Desk* desk READ desk WRITE setDesk NOTIFY changed REQUIRED FINAL)
    Q_PROPERTY(bool ready READ isReady NOTIFY changed FINAL)
    /// Newest first: [{when, why, size}]
    Q_PROPERTY(QVariantList copies READ copies NOTIFY changed FINAL)
    Q_PROPERTY(bool busy READ isBusy NOTIFY changed FINAL)
    Q_PROPERTY(QString trouble READ trouble NOTIFY changed FINAL)
    Q_PROPERTY(QString told READ told NOTIFY changed FINAL)
    /// The copy that is looked at; -1 for none.
    Q_PROPERTY(int chosen READ chosen NOTIFY changed FINAL)
    /// "Friday 8 May, 19:14"
    Q_PROPERTY(QString chosenTitle READ chosenTitle NOTIFY changed FINAL)
    /// What going back to it would do: [{name, value, sub}]
    Q_PROPERTY(QVariantList preview READ preview NOTIFY changed FINAL)

public:
    explicit BackupsModel(QObject* parent = nullptr) : QObject(parent) {}

    [[nodiscard]] Desk* desk() const { return desk_; }
    void setDesk(Desk* desk);
    [[nodiscard]] bool isReady() const { return ready_; }
    [[nodiscard]] QVariantList copies() const;
    [[nodiscard]] bool isBusy() const { return busy_; }
    [[nodiscard]] QString trouble() const { return trouble_; }
    [[nodiscard]] QString told() const { return told_; }
    [[nodiscard]] int chosen() const { return chosen_; }
    [[nodiscard]] QString chosenTitle() const;
    [[nodiscard]] QVariantList preview() const;

public slots:
    void makeNow();
    /// Looks at what going back would do.
    void choose(int copy);
    void putAway();
    /// Puts the chosen copy in the place of the book, which becomes a copy itself first.
    void goBack();

signals:
    void changed();

private:
    void read();
    void begin();
    void tell(const Error& error);
    [[nodiscard]] QString momentText(Instant at) const;
    [[nodiscard]] QVariantMap factOf(const char* name, const OnlyHere& only) const;

    QPointer<Desk> desk_;
    std::vector<Backup> copies_;
    std::optional<RestorePreview> preview_;
    bool ready_ = false;
    bool busy_ = false;
    int chosen_ = -1;
    QString trouble_;
    QString told_;
};

}  // namespace burrow
