// A viewfinder that is painted, for where VideoOutput stays blank: the software renderer.
#pragma once

#include <QList>
#include <QPointF>
#include <QQuickPaintedItem>
#include <QRectF>
#include <QVideoFrame>
#include <QVideoSink>

namespace burrow {

/// Shows the newest frame of its sink, upright, filling the item and cut where the shapes differ.
/// Draws nothing before the first frame. Converts a frame only when it is drawn, so frames that come
/// faster than the screen cost nothing. `videoSink` and `contentRect` mean what they do in VideoOutput.
class FrameView : public QQuickPaintedItem {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(QVideoSink* videoSink READ videoSink CONSTANT FINAL)
    Q_PROPERTY(QRectF contentRect READ contentRect NOTIFY contentRectChanged FINAL)

public:
    explicit FrameView(QQuickItem* parent = nullptr);

    [[nodiscard]] QVideoSink* videoSink() { return &sink_; }
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
    void take(const QVideoFrame& frame);
    void lay();

    QVideoSink sink_;
    QVideoFrame frame_;
    QSizeF shape_;
    QRectF contentRect_;
};

}  // namespace burrow
