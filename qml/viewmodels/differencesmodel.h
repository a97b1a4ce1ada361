// Differences between books that were united, one at a time: what was said on either side, which of it
// counts, and where the other goes.
#pragma once

#include <QVariantList>

#include "journal/differences.h"
#include "viewmodels/factwords.h"

namespace burrow {

class DifferencesModel : public QObject {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(burrow::Desk* desk READ desk WRITE setDesk NOTIFY changed REQUIRED FINAL)
    Q_PROPERTY(bool ready READ isReady NOTIFY changed FINAL)
    Q_PROPERTY(int count READ count NOTIFY changed FINAL)
    /// "2 differ, you choose"; "Nothing differs"
    Q_PROPERTY(QString summary READ summary NOTIFY changed FINAL)
    /// "1 of 2"
    Q_PROPERTY(QString position READ position NOTIFY changed FINAL)
    /// "087", for the first words of the card; empty where it is about no animal.
    Q_PROPERTY(QString tag READ tag NOTIFY changed FINAL)
    /// "carapace, moult of 2 March"
    Q_PROPERTY(QString title READ title NOTIFY changed FINAL)
    /// What was said: [{word, sub}], the one that counts now first.
    Q_PROPERTY(QVariantList choices READ choices NOTIFY changed FINAL)
    /// The chosen one; starts as the better evidence.
    Q_PROPERTY(int choice READ choice WRITE setChoice NOTIFY changed FINAL)
    /// "The other value stays in the history of 087."
    Q_PROPERTY(QString stays READ stays NOTIFY changed FINAL)

public:
    explicit DifferencesModel(QObject* parent = nullptr) : QObject(parent) {}

    [[nodiscard]] Desk* desk() const { return desk_; }
    void setDesk(Desk* desk);
    [[nodiscard]] bool isReady() const { return ready_; }
    [[nodiscard]] int count() const { return static_cast<int>(found_.size()); }
    [[nodiscard]] QString summary() const;
    [[nodiscard]] QString position() const;
    [[nodiscard]] QString tag() const;
    [[nodiscard]] QString title() const;
    [[nodiscard]] QVariantList choices() const;
    [[nodiscard]] int choice() const { return choice_; }
    void setChoice(int choice);
    [[nodiscard]] QString stays() const;

public slots:
    /// The chosen value counts from now on, on every device that takes in the next file.
    void settle();
    /// The next one, with this one left as it is.
    void next();

signals:
    void changed();

private:
    /// A difference with what is needed to say it.
    struct Found {
        Difference difference;
        QString thing;  ///< name of an enclosure or code of a tag
        std::optional<Fact> fact;
    };
    struct Look {
        std::vector<Found> found;
        EnclosureNames names;
        DeviceId device;
    };

    void read();
    void show(Look look);
    void begin(std::size_t at);
    [[nodiscard]] const Found* current() const;
    [[nodiscard]] ResidentPtr resident() const;
    [[nodiscard]] QString word(const Found& found, const Choice& choice) const;
    [[nodiscard]] QString sub(const Found& found, const Choice& choice) const;
    [[nodiscard]] QString bodyText(const Found& found, const Choice& choice) const;
    [[nodiscard]] QString profileText(const Found& found, const Choice& choice) const;
    [[nodiscard]] static std::size_t betterOf(const Difference& difference);

    QPointer<Desk> desk_;
    bool ready_ = false;
    std::vector<Found> found_;
    EnclosureNames names_;
    DeviceId device_;
    std::size_t at_ = 0;
    int choice_ = 0;
};

}  // namespace burrow
