// A photo of a moult looked at closely, and what stands beside it: one of our drawings, an earlier moult of
// the same animal, or another photo of this one.
#pragma once

#include <atomic>

#include "ports/darkroom.h"
#include "ports/errands.h"
#include "viewmodels/measuredphoto.h"
#include "viewmodels/wording.h"

namespace burrow {

class LookMoultModel : public QObject {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(burrow::Desk* desk READ desk WRITE setDesk NOTIFY givenChanged REQUIRED FINAL)
    Q_PROPERTY(burrow::Darkroom* darkroom READ darkroom WRITE setDarkroom NOTIFY givenChanged
                   REQUIRED FINAL)
    /// [{files, name}]: of this moult, and of earlier ones. The first of the files that is there is shown.
    Q_PROPERTY(QVariantList photos READ photos WRITE setPhotos NOTIFY givenChanged REQUIRED FINAL)
    Q_PROPERTY(QVariantList earlier READ earlier WRITE setEarlier NOTIFY givenChanged FINAL)
    /// [{drawing, name}]
    Q_PROPERTY(QVariantList drawings READ drawings WRITE setDrawings NOTIFY givenChanged FINAL)
    /// Which photo of this moult is shown first.
    Q_PROPERTY(int at READ at WRITE setAt NOTIFY givenChanged FINAL)
    /// Which of the earlier ones stands beside it first; -1 for what comes before them.
    Q_PROPERTY(int earlierAt READ earlierAt WRITE setEarlierAt NOTIFY givenChanged FINAL)

    Q_PROPERTY(burrow::Picture picture READ picture NOTIFY changed FINAL)
    Q_PROPERTY(QString name READ name NOTIFY changed FINAL)
    /// Whichever light it is shown in. Changes before the picture does.
    Q_PROPERTY(QString key READ key NOTIFY keyChanged FINAL)
    /// Pixels of the picture for a millimetre; 0 where nothing in it says so.
    Q_PROPERTY(qreal unit READ unit NOTIFY changed FINAL)
    Q_PROPERTY(burrow::Picture besidePicture READ besidePicture NOTIFY changed FINAL)
    Q_PROPERTY(QString besideName READ besideName NOTIFY changed FINAL)
    Q_PROPERTY(QString besideKey READ besideKey NOTIFY keyChanged FINAL)
    Q_PROPERTY(qreal besideUnit READ besideUnit NOTIFY changed FINAL)
    /// There is anything to stand beside it; a drawing by its name, or else a photo.
    Q_PROPERTY(bool hasBeside READ hasBeside NOTIFY changed FINAL)
    Q_PROPERTY(QString drawing READ drawing NOTIFY changed FINAL)
    Q_PROPERTY(bool isDrawing READ isDrawing NOTIFY changed FINAL)
    Q_PROPERTY(bool severalPhotos READ hasSeveralPhotos NOTIFY changed FINAL)
    Q_PROPERTY(bool severalBeside READ hasSeveralBeside NOTIFY changed FINAL)
    /// "Both at the same scale", or why they are not.
    Q_PROPERTY(QString scaleText READ scaleText NOTIFY changed FINAL)
    /// A photo that can't be shown says why.
    Q_PROPERTY(QString trouble READ trouble NOTIFY changed FINAL)
    Q_PROPERTY(bool looking READ isLooking NOTIFY changed FINAL)
    /// What is pale is made easier to see.
    Q_PROPERTY(bool contrast READ hasContrast WRITE setContrast NOTIFY changed FINAL)

public:
    explicit LookMoultModel(QObject* parent = nullptr) : QObject(parent) {}
    ~LookMoultModel() override { looking_.dropWaiting(); }

    [[nodiscard]] Desk* desk() const { return desk_; }
    void setDesk(Desk* desk);
    [[nodiscard]] Darkroom* darkroom() const { return darkroom_; }
    void setDarkroom(Darkroom* darkroom);
    [[nodiscard]] QVariantList photos() const { return photos_; }
    void setPhotos(const QVariantList& photos);
    [[nodiscard]] QVariantList earlier() const { return earlier_; }
    void setEarlier(const QVariantList& earlier);
    [[nodiscard]] QVariantList drawings() const { return drawings_; }
    void setDrawings(const QVariantList& drawings);
    [[nodiscard]] int at() const { return at_; }
    void setAt(int at);
    [[nodiscard]] int earlierAt() const { return earlierAt_; }
    void setEarlierAt(int at);

    [[nodiscard]] Picture picture() const { return pictureOf(shown_); }
    [[nodiscard]] QString name() const { return shown_.name; }
    [[nodiscard]] QString key() const { return shown_.key; }
    [[nodiscard]] qreal unit() const { return unitOf(shown_); }
    [[nodiscard]] Picture besidePicture() const { return pictureOf(beside_); }
    [[nodiscard]] QString besideName() const { return beside_.name; }
    [[nodiscard]] QString besideKey() const { return beside_.key; }
    [[nodiscard]] qreal besideUnit() const { return unitOf(beside_); }
    [[nodiscard]] bool hasBeside() const { return !beside_.name.isEmpty(); }
    [[nodiscard]] QString drawing() const { return drawing_; }
    [[nodiscard]] bool isDrawing() const { return !drawing_.isEmpty(); }
    [[nodiscard]] bool hasSeveralPhotos() const { return photos_.size() > 1; }
    [[nodiscard]] bool hasSeveralBeside() const { return others().size() > 1; }
    [[nodiscard]] QString scaleText() const;
    [[nodiscard]] QString trouble() const;
    [[nodiscard]] bool isLooking() const { return shown_.isLooking() || beside_.isLooking(); }
    [[nodiscard]] bool hasContrast() const { return contrast_; }
    void setContrast(bool contrast);

public slots:
    /// The next photo of this moult.
    void nextPhoto();
    /// The next one beside it, and the one before.
    void next() { step(1); }
    void before() { step(-1); }

signals:
    void givenChanged();
    void keyChanged();
    void changed();

private:
    /// What was read of a photo, in another thread.
    struct Read {
        std::optional<MeasuredPhoto> photo;
        std::optional<Message> trouble;
        Picture contrasted;
    };
    /// One of the two panes.
    struct Side {
        QString key;
        QString name;
        Read read;
        int asked = 0;
        int answered = 0;
        /// What is asked for now; whatever waits for an older one is not done any more.
        std::shared_ptr<std::atomic<int>> newest = std::make_shared<std::atomic<int>>(0);

        [[nodiscard]] bool isLooking() const { return asked != answered; }
    };

    void begin();
    [[nodiscard]] QVariantList others() const;
    void step(int by);
    void putBeside();
    void put(Side& side, const QVariantMap& photo);
    void look(Side& side, const QVariantMap& photo);
    void read(Side& side, const QVariantMap& photo, int asked);
    void raise(Side& side);
    void answer(Side& side, int asked, Read read);
    [[nodiscard]] Picture pictureOf(const Side& side) const;
    /// By what part of a length the printers of two mats may make their scales differ: the half of 95
    /// percent. Both photos are of mats.
    [[nodiscard]] double printsApart() const;
    [[nodiscard]] qreal unitOf(const Side& side) const;

    QPointer<Desk> desk_;
    QPointer<Darkroom> darkroom_;
    QVariantList photos_;
    QVariantList earlier_;
    QVariantList drawings_;
    int at_ = 0;
    int earlierAt_ = -1;
    int besideAt_ = 0;  ///< among the others
    Side shown_;
    Side beside_;
    QString drawing_;
    bool contrast_ = false;
    Errands looking_;  ///< last, so that what is under way ends first
};

}  // namespace burrow
