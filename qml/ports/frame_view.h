// A viewfinder that is painted, for where VideoOutput stays blank: the software renderer.
//
// Knows nothing of Qt Multimedia, so that a program can show its first page before that is loaded.
#pragma once

#include <QImage>
#include <QList>
#include <QPointF>
#include <QQuickPaintedItem>
#include <QRectF>
#include <functional>

namespace burrow {

/// A frame as it is meant to be seen. Its pixels are made when they are asked for.
struct ShownFrame {
    QSizeF size;                    ///< upright; not valid where there is no frame
    std::function<QImage()> image;  ///< of any size with that shape
};

/// Shows the newest frame, filling the item and cut where the shapes differ. Draws nothing before the
/// first frame. Asks for pixels only when it is drawn, so frames that come faster than the screen cost
/// nothing. `contentRect` means what it does in VideoOutput.
class FrameView : public QQuickPaintedItem {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(QRectF contentRect READ contentRect NOTIFY contentRectChanged FINAL)

public:
    explicit FrameView(QQuickItem* parent = nullptr);

    /// One without a size clears the view.
    void show(ShownFrame frame);
    [[nodiscard]] const ShownFrame& frame() const { return frame_; }
    /// Where the whole frame lies, in the item's coordinates; reaches beyond the item where it is cut,
    /// empty before the first frame.
    [[nodiscard]] QRectF contentRect() const { return contentRect_; }
    /// Places in the frame, from (0, 0) to (1, 1), in the item's coordinates.
    Q_INVOKABLE [[nodiscard]] QList<QPointF> toItem(const QList<QPointF>& places) const;

    void paint(QPainter* painter) override;

signals:
    void contentRectChanged();

protected:
    void geometryChange(const QRectF& newGeometry, const QRectF& oldGeometry) override;

private:
    void lay();

    ShownFrame frame_;
    QRectF contentRect_;
};

}  // namespace burrow
