// Something flat to look at closely: it fits the view, or is larger and moved about behind it. What is
// outside the view is not drawn, so no zoom costs more memory than the view itself.
#pragma once

#include <QPointF>
#include <QQuickPaintedItem>
#include <QRectF>

namespace burrow {

class ZoomView : public QQuickPaintedItem {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("What there is to look at decides.")
    /// 1 fits the view, `mostZoom` is as close as it goes.
    Q_PROPERTY(qreal zoom READ zoom WRITE setZoom NOTIFY viewChanged FINAL)
    Q_PROPERTY(bool canCloser READ canCloser NOTIFY viewChanged FINAL)
    Q_PROPERTY(bool canFarther READ canFarther NOTIFY viewChanged FINAL)
    /// Where the whole of it lies, in the item's coordinates; reaches beyond the item when close.
    Q_PROPERTY(QRectF contentRect READ contentRect NOTIFY viewChanged FINAL)
    /// How many units of its own width, such as pixels, show a millimetre; 0 where nobody knows.
    Q_PROPERTY(qreal unit READ unit WRITE setUnit NOTIFY viewChanged FINAL)
    /// Units of the item for a millimetre, and for the bar of `barMm`; 0 where nobody knows.
    Q_PROPERTY(qreal perMm READ perMm WRITE setPerMm NOTIFY viewChanged FINAL)
    Q_PROPERTY(qreal barLength READ barLength NOTIFY viewChanged FINAL)

public:
    static constexpr qreal mostZoom = 8;
    static constexpr qreal barMm = 5;

    explicit ZoomView(QQuickItem* parent = nullptr);

    [[nodiscard]] qreal zoom() const { return zoom_; }
    void setZoom(qreal zoom);
    [[nodiscard]] bool canCloser() const { return zoom_ < most(); }
    [[nodiscard]] bool canFarther() const { return zoom_ > least(); }
    [[nodiscard]] QRectF contentRect() const;
    [[nodiscard]] qreal unit() const { return unit_; }
    void setUnit(qreal unit);
    [[nodiscard]] qreal perMm() const { return zoom_ * fittedPerMm(); }
    /// About the middle of the view, as near to it as the view goes.
    void setPerMm(qreal perMm);
    [[nodiscard]] qreal barLength() const { return barMm * perMm(); }
    /// The same when it fits the view, and when it is as close as it goes.
    [[nodiscard]] qreal fittedPerMm() const;
    [[nodiscard]] qreal closestPerMm() const;
    /// Lets the view go as far away and as close as another one does, in units for a millimetre; 0 for no
    /// farther and closer than it goes by itself.
    void setReach(qreal leastPerMm, qreal mostPerMm);

    void paint(QPainter* painter) final;

public slots:
    void closer();
    void farther();
    /// Fits the view again.
    void whole();
    /// So close that so many millimetres fill its shorter side, about its middle.
    void showMm(qreal millimetres);
    /// Brings a place of the item to its middle.
    void lookAt(const QPointF& place);
    /// Moves what is seen, in the item's units.
    void shift(qreal dx, qreal dy);
    /// To that zoom, with what is at `place` staying there.
    void zoomAt(qreal zoom, const QPointF& place);

signals:
    void viewChanged();

protected:
    void geometryChange(const QRectF& newGeometry, const QRectF& oldGeometry) override;
    /// There is something else to see: it fits the view.
    void renew();
    /// What stands in the middle, as parts of the whole.
    [[nodiscard]] QPointF centre() const { return centre_; }
    void show(qreal zoom, const QPointF& centre);

private:
    /// Width and height in any unit; empty for nothing to see.
    [[nodiscard]] virtual QSizeF shape() const = 0;
    /// Draws the whole into `rect`; the painter is clipped to the item.
    virtual void draw(QPainter& painter, const QRectF& rect) = 0;
    void changed();
    [[nodiscard]] qreal least() const;
    [[nodiscard]] qreal most() const;

    qreal zoom_ = 1;
    qreal unit_ = 0;
    qreal leastPerMm_ = 0;
    qreal mostPerMm_ = 0;
    QPointF centre_{0.5, 0.5};  // what stands in the middle, as parts of the whole
};

}  // namespace burrow
