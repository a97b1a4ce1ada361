// Two things side by side at the same scale: a millimetre is equally long in both.
#pragma once

#include <QPointer>

#include "ports/zoom_view.h"

namespace burrow {

/// Whichever of the two is moved closer or farther takes the other along. Where one of them does not know its
/// scale, each is looked at by itself. One that has just come takes over the scale of the one that is there.
class ScaleLink : public QObject {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(burrow::ZoomView* first READ first WRITE setFirst NOTIFY changed REQUIRED FINAL)
    Q_PROPERTY(burrow::ZoomView* second READ second WRITE setSecond NOTIFY changed REQUIRED FINAL)
    /// Both know their scale, and so it is the same.
    Q_PROPERTY(bool linked READ isLinked NOTIFY changed FINAL)

public:
    explicit ScaleLink(QObject* parent = nullptr) : QObject(parent) {}

    [[nodiscard]] ZoomView* first() const { return first_.view; }
    void setFirst(ZoomView* view);
    [[nodiscard]] ZoomView* second() const { return second_.view; }
    void setSecond(ZoomView* view);
    [[nodiscard]] bool isLinked() const { return isLinked_; }

public slots:
    /// Both in the middle, and so far away that the whole of both is seen.
    void whole();

signals:
    void changed();

private:
    struct Side {
        QPointer<ZoomView> view;
        qreal fittedPerMm = 0;  // when it was looked at last
    };

    void give(Side& side, ZoomView* view);
    void follow(Side& moved, Side& other);

    Side first_;
    Side second_;
    bool isLinked_ = false;
    bool isFollowing_ = false;
};

}  // namespace burrow
