// A picture that is at hand, to be looked at closely and pointed at.
#pragma once

#include <QHash>

#include "ports/picture.h"
#include "ports/zoom_view.h"

namespace burrow {

/// Places in the picture are parts of it, from (0, 0) at the top left to (1, 1).
class PictureView : public burrow::ZoomView {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(burrow::Picture picture READ picture WRITE setPicture NOTIFY pictureChanged FINAL)
    /// Which picture it is, whatever light it is shown in: one that was seen before in this view comes back
    /// as it was looked at. Set it before the picture.
    Q_PROPERTY(QString key READ key WRITE setKey NOTIFY pictureChanged FINAL)
    /// Darkened, and with less blue than red.
    Q_PROPERTY(bool warm READ isWarm WRITE setWarm NOTIFY warmChanged FINAL)
    /// Units of the item for one pixel of the picture; 0 where there is none.
    Q_PROPERTY(qreal pixelSize READ pixelSize NOTIFY viewChanged FINAL)

public:
    explicit PictureView(QQuickItem* parent = nullptr);

    [[nodiscard]] const Picture& picture() const { return picture_; }
    void setPicture(const Picture& picture);
    [[nodiscard]] QString key() const { return key_; }
    void setKey(const QString& key);
    [[nodiscard]] bool isWarm() const { return warm_; }
    void setWarm(bool warm);
    [[nodiscard]] qreal pixelSize() const;

    /// From the item's coordinates to the picture's.
    Q_INVOKABLE [[nodiscard]] QPointF partAt(const QPointF& place) const;

    void draw(QPainter& painter, const QRectF& rect) override;

signals:
    void pictureChanged();
    void warmChanged();

private:
    [[nodiscard]] QSizeF shape() const override { return picture_.image().size(); }

    struct Seen {
        qreal zoom = 1;
        QPointF centre;
    };

    Picture picture_;
    QString key_;
    QString shown_;  // the key of the picture
    QHash<QString, Seen> seen_;
    bool warm_ = false;
};

}  // namespace burrow
