// A round glass over a place of a picture, which shows it larger.
#pragma once

#include <QColor>
#include <QPointer>
#include <QQuickPaintedItem>

#include "ports/picture_view.h"

namespace burrow {

/// Shows what lies at `place` of the view, `times` as large, with a cross where exactly that is.
class LoupeView : public QQuickPaintedItem {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(burrow::PictureView* view READ view WRITE setView NOTIFY changed REQUIRED FINAL)
    /// In the view's coordinates.
    Q_PROPERTY(QPointF place MEMBER place_ NOTIFY changed FINAL)
    Q_PROPERTY(qreal times MEMBER times_ NOTIFY changed FINAL)
    Q_PROPERTY(QColor ground MEMBER ground_ NOTIFY changed FINAL)
    Q_PROPERTY(QColor ink MEMBER ink_ NOTIFY changed FINAL)
    Q_PROPERTY(qreal lineWidth MEMBER lineWidth_ NOTIFY changed FINAL)

public:
    explicit LoupeView(QQuickItem* parent = nullptr);

    [[nodiscard]] PictureView* view() const { return view_; }
    void setView(PictureView* view);

    void paint(QPainter* painter) override;

signals:
    void changed();

private:
    QPointer<PictureView> view_;
    QPointF place_;
    qreal times_ = 2;
    QColor ground_ = Qt::black;
    QColor ink_ = Qt::white;
    qreal lineWidth_ = 2;
};

}  // namespace burrow
