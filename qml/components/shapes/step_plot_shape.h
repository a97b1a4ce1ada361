// Growth in steps: size changes only at a moult.
#pragma once

#include <QColor>
#include <QFont>
#include <QQuickPaintedItem>
#include <QVariantList>

namespace burrow {

/// Measured moults as squares joined by steps, a ring for now, and what is expected as a band that
/// fades away from now with a dashed median. The vertical axis starts at zero and has at most four
/// grid lines at round numbers. Lists hold maps or gadgets with the fields named below.
class StepPlotShape : public QQuickPaintedItem {
    Q_OBJECT
    QML_ELEMENT
    /// {day, value}, oldest first.
    Q_PROPERTY(QVariantList points READ points WRITE setPoints NOTIFY changed)
    /// {day, low, median, high}, from now on; empty draws no band.
    Q_PROPERTY(QVariantList band READ band WRITE setBand NOTIFY changed)
    /// {day, text} under the axis; one that would touch another is left out.
    Q_PROPERTY(QVariantList labels READ labels WRITE setLabels NOTIFY changed)
    Q_PROPERTY(int nowDay MEMBER nowDay_ NOTIFY changed)

    Q_PROPERTY(QFont tickFont MEMBER tickFont_ NOTIFY changed)
    Q_PROPERTY(qreal tickLine MEMBER tickLine_ NOTIFY changed)
    Q_PROPERTY(QColor ink MEMBER ink_ NOTIFY changed)
    Q_PROPERTY(QColor soft MEMBER soft_ NOTIFY changed)
    Q_PROPERTY(QColor edge MEMBER edge_ NOTIFY changed)
    Q_PROPERTY(QColor rule MEMBER rule_ NOTIFY changed)
    Q_PROPERTY(QColor est MEMBER est_ NOTIFY changed)
    Q_PROPERTY(QColor hole MEMBER hole_ NOTIFY changed)
    Q_PROPERTY(qreal bandPeak MEMBER bandPeak_ NOTIFY changed)

public:
    explicit StepPlotShape(QQuickItem* parent = nullptr);

    [[nodiscard]] const QVariantList& points() const { return pointsGiven_; }
    void setPoints(const QVariantList& points);
    [[nodiscard]] const QVariantList& band() const { return bandGiven_; }
    void setBand(const QVariantList& band);
    [[nodiscard]] const QVariantList& labels() const { return labelsGiven_; }
    void setLabels(const QVariantList& labels);

    /// The distance between grid lines for an axis that must hold `most`: 1, 2 or 5 times a power
    /// of ten, the smallest that needs at most four lines above zero.
    [[nodiscard]] static qreal gridStep(qreal most);

    void paint(QPainter* painter) override;

signals:
    void changed();

private:
    struct Point {
        int day = 0;
        qreal value = 0;
    };
    struct Reach {
        int day = 0;
        qreal low = 0;
        qreal median = 0;
        qreal high = 0;
    };
    struct Label {
        int day = 0;
        QString text;
    };
    /// From days and values to places.
    struct Axes {
        qreal left, right, top, base;
        qreal firstDay, lastDay, most;
        [[nodiscard]] qreal x(qreal day) const;
        [[nodiscard]] qreal y(qreal value) const;
    };

    [[nodiscard]] Axes axes() const;
    [[nodiscard]] qreal mostValue() const;
    void paintGrid(QPainter& painter, const Axes& at) const;
    void paintLabels(QPainter& painter, const Axes& at) const;
    void paintBand(QPainter& painter, const Axes& at) const;
    void paintSteps(QPainter& painter, const Axes& at) const;

    QVariantList pointsGiven_;
    QVariantList bandGiven_;
    QVariantList labelsGiven_;
    QList<Point> points_;
    QList<Reach> band_;
    QList<Label> labels_;
    int nowDay_ = 0;
    QFont tickFont_;
    qreal tickLine_ = 16;
    QColor ink_ = Qt::black;
    QColor soft_ = Qt::darkGray;
    QColor edge_ = Qt::gray;
    QColor rule_ = Qt::lightGray;
    QColor est_ = Qt::magenta;
    QColor hole_ = Qt::white;
    qreal bandPeak_ = 0.35;
};

}  // namespace burrow
