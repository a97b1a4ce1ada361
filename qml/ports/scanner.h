// The eye that looks for tags: a camera on a device, a film or a script in tests and demonstrations.
//
// Lives in the thread of the interface and emits everything there. Nothing it does throws or waits
// for the device: what goes wrong becomes a state, and start() may be tried again from every state.
#pragma once

#include <QtQml/qqmlregistration.h>
#include <QByteArray>
#include <QImage>
#include <QList>
#include <QObject>
#include <QPointF>
#include <QPointer>
#include <QString>

#include "ports/mat_sight.h"

namespace burrow {

class Scanner : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("The program makes the scanner.")
    Q_PROPERTY(State state READ state NOTIFY stateChanged FINAL)
    Q_PROPERTY(QString trouble READ trouble NOTIFY stateChanged FINAL)
    Q_PROPERTY(bool torchAvailable READ torchAvailable NOTIFY torchAvailableChanged FINAL)
    Q_PROPERTY(bool torchOn READ torchOn WRITE setTorchOn NOTIFY torchOnChanged FINAL)
    Q_PROPERTY(bool matWanted READ matWanted WRITE setMatWanted NOTIFY matWantedChanged FINAL)
    Q_PROPERTY(
        QObject* viewfinder READ viewfinder WRITE setViewfinder NOTIFY viewfinderChanged FINAL)

public:
    enum class State {
        Idle,        ///< not asked to look
        Starting,    ///< asked, no picture yet
        Running,     ///< pictures arrive
        NoCamera,    ///< the device has none, or it was unplugged; starts by itself when one comes
        NotAllowed,  ///< the keeper or the system refuses the camera
        Broken       ///< the camera is there and gives no pictures
    };
    Q_ENUM(State)

    explicit Scanner(QObject* parent = nullptr) : QObject(parent) {}

    [[nodiscard]] State state() const { return state_; }
    /// The id of the sentence for a state that needs one: camera.none, camera.notAllowed or
    /// camera.broken. Empty otherwise.
    [[nodiscard]] QString trouble() const;

    /// Known from Running on.
    [[nodiscard]] bool torchAvailable() const { return torchAvailable_; }
    /// Whether the torch is wanted; it burns only while pictures are taken. It is lit at its lowest
    /// level where the platform has levels.
    [[nodiscard]] bool torchOn() const { return torchOn_; }
    /// Does nothing where there is no torch.
    void setTorchOn(bool on);

    /// Whether a mat is looked for too: then matSeen() says how a photo of it would come out.
    [[nodiscard]] bool matWanted() const { return matWanted_; }
    void setMatWanted(bool wanted);

    /// What shows every picture: a FrameView, or the videoSink of a VideoOutput. Not owned; may go
    /// away.
    [[nodiscard]] QObject* viewfinder() const { return viewfinder_; }
    void setViewfinder(QObject* viewfinder);

    /// The newest picture at full size, upright; null before the first and after stop().
    [[nodiscard]] virtual QImage latestPicture() const = 0;

public slots:
    virtual void start() = 0;
    virtual void stop() = 0;

signals:
    void stateChanged();
    void torchAvailableChanged();
    void torchOnChanged();
    void matWantedChanged();
    void viewfinderChanged();

    /// The symbol nearest the middle of the picture was the same twice in a row. Said once, and again
    /// only after it was lost or another one was sighted. `payload` is for tags::parsePayload. The
    /// corners are top left, top right, bottom right and bottom left of the symbol as it was printed,
    /// each from (0, 0) at the top left of the picture as it is shown to (1, 1).
    void sighted(const QByteArray& payload, const QList<QPointF>& corners);
    /// Where the symbol nearest the middle is now, whether sighted or not: for the brackets.
    void glimpsed(const QList<QPointF>& corners);
    /// The symbol that was glimpsed is gone: no more brackets.
    void lost();
    /// How the newest picture shows the mat; only while that is wanted, as often as there is time.
    void matSeen(const burrow::MatSight& sight);

protected:
    void setState(State state);
    void setTorchAvailable(bool available);

private:
    virtual void applyTorch(bool on) = 0;

    State state_ = State::Idle;
    bool torchAvailable_ = false;
    bool torchOn_ = false;
    bool matWanted_ = false;
    QPointer<QObject> viewfinder_;
};

}  // namespace burrow
