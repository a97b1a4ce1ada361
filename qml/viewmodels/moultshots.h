// The photos of a moult before they are saved: looked over, read for tags, and kept beside the book.
#pragma once

#include <QVariantList>

#include "ports/darkroom.h"
#include "viewmodels/moultentry.h"
#include "viewmodels/photosight.h"
#include "viewmodels/wording.h"

namespace burrow {

/// Lives in the thread of the interface; decoding and reading are done beside it.
class MoultShots : public QObject {
    Q_OBJECT

public:
    /// As many as show one moult from all sides; each is held in memory until it is saved.
    static constexpr std::size_t most = 6;

    struct Shot {
        Negative negative;
        bool isDried = false;
        bool isRead = false;
        QString trouble;  ///< why it can't be measured, in words
        int key = 0;      ///< each another
    };
    using Shots = std::vector<Shot>;

    explicit MoultShots(QObject* parent = nullptr) : QObject(parent) {}
    ~MoultShots() override { reading_.dropWaiting(); }

    void setDesk(Desk* desk) { desk_ = desk; }
    void setDarkroom(Darkroom* darkroom) { darkroom_ = darkroom; }

    [[nodiscard]] bool isEmpty() const { return shots_.empty(); }
    /// [{picture, dried, state, read, trouble}], in the order in which they were added.
    [[nodiscard]] QVariantList list() const;
    [[nodiscard]] bool canTakeMore() const;
    [[nodiscard]] bool isDeveloping() const { return underWay_ > 0; }
    /// Why the last one was not taken up, in words.
    [[nodiscard]] QString trouble() const { return trouble_; }
    void tell(const QString& text);
    void clearTrouble();

    void addBytes(const QByteArray& bytes);
    void addFiles(const QList<QUrl>& files);
    void remove(int at);
    /// Whether the moult has dried: of those that are added from now on.
    [[nodiscard]] bool isDried() const { return isDried_; }
    void setDried(bool dried);
    void turnDried(int at);

    /// What became of the photos: those that are on the device, and those still to be kept.
    struct Kept {
        std::vector<TakenPhoto> photos;
        Shots shots;  ///< of the photos
        Shots left;
        QString why;  ///< they are left, in words
    };
    void keep(std::function<void(Kept)> then);
    void replace(Shots shots);
    /// Before those that are there.
    void putBack(const Shots& shots);

signals:
    void changed();
    /// The tags that lie in a photo.
    void tagsSeen(const std::vector<std::string>& codes);

private:
    void add(const Result<Negative>& negative);
    void read(const Shot& shot);
    void show(int key, const PhotoSight& sight);

    QPointer<Desk> desk_;
    QPointer<Darkroom> darkroom_;
    Shots shots_;
    int nextKey_ = 0;
    int underWay_ = 0;  ///< pictures being looked over
    bool isDried_ = false;
    QString trouble_;
    Errands reading_;  ///< last, so that what is under way ends first
};

}  // namespace burrow
