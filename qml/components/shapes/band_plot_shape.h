// What swings: the lowest and the highest of each stretch of time.
#pragma once

#include <QColor>
#include <QFont>
#include <QQuickPaintedItem>
#include <QVariantList>

namespace burrow {

/// A band from low to high with the middle as a line, broken where nothing is known, and the range that
/// is wanted between two dashed lines. The vertical axis is cut: it runs from round number to round
/// number around what there is, with at most four grid lines, the lowest labelled. Lists hold maps or
/// gadgets with the fields named below; `at` runs from 0 to 1.
class BandPlotShape : public QQuickPaintedItem {
    Q_OBJECT
    QML_ELEMENT
    /// {at, low, middle, high}, in order; `gap` is true where nothing is known before it.
    Q_PROPERTY(QVariantList points READ points WRITE setPoints NOTIFY changed)
    /// {at, text} under the axis; one that would touch another is left out.
    Q_PROPERTY(QVariantList labels READ labels WRITE setLabels NOTIFY changed)
    Q_PROPERTY(bool hasWanted MEMBER hasWanted_ NOTIFY changed)
    Q_PROPERTY(qreal wantedLow MEMBER wantedLow_ NOTIFY changed)
    Q_PROPERTY(qreal wantedHigh MEMBER wantedHigh_ NOTIFY changed)

    Q_PROPERTY(QFont tickFont MEMBER tickFont_ NOTIFY changed)
    Q_PROPERTY(qreal tickLine MEMBER tickLine_ NOTIFY changed)
    Q_PROPERTY(QColor ink MEMBER ink_ NOTIFY changed)
    Q_PROPERTY(QColor soft MEMBER soft_ NOTIFY changed)
    Q_PROPERTY(QColor edge MEMBER edge_ NOTIFY changed)
    Q_PROPERTY(QColor rule MEMBER rule_ NOTIFY changed)

public:
    explicit BandPlotShape(QQuickItem* parent = nullptr);

    [[nodiscard]] const QVariantList& points() const { return pointsGiven_; }
    void setPoints(const QVariantList& points);
    [[nodiscard]] const QVariantList& labels() const { return labelsGiven_; }
    void setLabels(const QVariantList& labels);

    /// From which round number to which an axis runs that must hold both, and how far its lines are
    /// apart: 1, 2 or 5 times a power of ten, with at most four lines.
    struct Cut {
        qreal least = 0;
        qreal most = 1;
        qreal step = 1;
    };
    [[nodiscard]] static Cut cutFor(qreal least, qreal most);

    void paint(QPainter* painter) override;

signals:
    void changed();

private:
    struct Point {
        qreal at = 0;
        qreal low = 0;
        qreal middle = 0;
        qreal high = 0;
        bool gap = false;
    };
    struct Label {
        qreal at = 0;
        QString text;
    };
    struct Axes {
        qreal left, right, top, base;
        Cut cut;
        [[nodiscard]] qreal x(qreal at) const { return left + (right - left) * at; }
        [[nodiscard]] qreal y(qreal value) const {
            return base - (base - top) * (value - cut.least) / (cut.most - cut.least);
        }
    };

    [[nodiscard]] Axes axes() const;
    void paintGrid(QPainter& painter, const Axes& at) const;
    void paintLabels(QPainter& painter, const Axes& at) const;
    void paintWanted(QPainter& painter, const Axes& at) const;
    void paintBand(QPainter& painter, const Axes& at) const;

    QVariantList pointsGiven_;
    QVariantList labelsGiven_;
    QList<Point> points_;
    QList<Label> labels_;
    bool hasWanted_ = false;
    qreal wantedLow_ = 0;
    qreal wantedHigh_ = 0;
    QFont tickFont_;
    qreal tickLine_ = 16;
    QColor ink_ = Qt::black;
    QColor soft_ = Qt::darkGray;
    QColor edge_ = Qt::gray;
    QColor rule_ = Qt::lightGray;
};

}  // namespace burrow
