// The moult line: an animal's life so far as one line, with the next moult as a fading band.
#pragma once

#include <QColor>
#include <QElapsedTimer>
#include <QFont>
#include <QQuickPaintedItem>
#include <QVariantList>

namespace burrow {

/// Time runs along a linear scale of day numbers; ticks are moults, as tall as the carapace is
/// long; hatched blocks are hardening spans; dots are feedings; a ring is now; the band is the next
/// moult. Entries of lists are maps or gadgets with the fields named below. Anything not given is
/// not drawn. Repaints only when a property changes; all lists are small and copied.
class MoultLineShape : public QQuickPaintedItem {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(Size size MEMBER size_ NOTIFY changed)
    /// {day, height (mm), hardening (days), photo (bool)}, oldest first.
    Q_PROPERTY(QVariantList marks READ marks WRITE setMarks NOTIFY marksChanged)
    /// {day, took (bool)}, oldest first.
    Q_PROPERTY(QVariantList feedings READ feedings WRITE setFeedings NOTIFY changed)
    /// {from, median, to} as day numbers; an empty map draws no band.
    Q_PROPERTY(QVariantMap forecast READ forecast WRITE setForecast NOTIFY changed)
    /// {day, text} under the line; one that would touch another is left out. Page size only.
    Q_PROPERTY(QVariantList labels READ labels WRITE setLabels NOTIFY changed)
    Q_PROPERTY(QString nowLabel MEMBER nowLabel_ NOTIFY changed)
    Q_PROPERTY(QString forecastLabel MEMBER forecastLabel_ NOTIFY changed)
    /// Where the line begins; 0 means at the first mark or feeding.
    Q_PROPERTY(int startDay MEMBER startDay_ NOTIFY changed)
    Q_PROPERTY(int nowDay MEMBER nowDay_ NOTIFY changed)
    Q_PROPERTY(bool tappable READ tappable WRITE setTappable NOTIFY changed)
    /// The mark that the arrow keys have reached; -1 for none.
    Q_PROPERTY(int current READ current NOTIFY currentChanged)

    Q_PROPERTY(QFont tickFont MEMBER tickFont_ NOTIFY changed)
    Q_PROPERTY(qreal tickLine MEMBER tickLine_ NOTIFY changed)
    Q_PROPERTY(QColor ink MEMBER ink_ NOTIFY changed)
    Q_PROPERTY(QColor soft MEMBER soft_ NOTIFY changed)
    Q_PROPERTY(QColor edge MEMBER edge_ NOTIFY changed)
    Q_PROPERTY(QColor est MEMBER est_ NOTIFY changed)
    Q_PROPERTY(QColor hatch MEMBER hatch_ NOTIFY changed)
    Q_PROPERTY(QColor hole MEMBER hole_ NOTIFY changed)
    Q_PROPERTY(qreal bandPeak MEMBER bandPeak_ NOTIFY changed)

public:
    enum Size { InRow, InHeader, OnPage };
    Q_ENUM(Size)

    /// Width of the area around a mark that answers a tap; the nearest mark wins.
    static constexpr qreal kHitWidth = 48;
    /// A row has room for the last few moults and feedings only.
    static constexpr qsizetype kRowMarks = 4;
    static constexpr qsizetype kRowFeedings = 4;

    explicit MoultLineShape(QQuickItem* parent = nullptr);

    [[nodiscard]] const QVariantList& marks() const { return marksGiven_; }
    void setMarks(const QVariantList& marks);
    [[nodiscard]] const QVariantList& feedings() const { return feedingsGiven_; }
    void setFeedings(const QVariantList& feedings);
    [[nodiscard]] const QVariantMap& forecast() const { return forecastGiven_; }
    void setForecast(const QVariantMap& forecast);
    [[nodiscard]] const QVariantList& labels() const { return labelsGiven_; }
    void setLabels(const QVariantList& labels);
    [[nodiscard]] bool tappable() const { return tappable_; }
    void setTappable(bool tappable);
    [[nodiscard]] int current() const { return current_; }

    /// The mark whose hit area holds this point, or -1.
    [[nodiscard]] Q_INVOKABLE int markAt(qreal x) const;
    /// The horizontal place of a day.
    [[nodiscard]] Q_INVOKABLE qreal xOf(int day) const;

    void paint(QPainter* painter) override;

signals:
    void changed();
    void marksChanged();
    void currentChanged();
    void markTapped(int index);

protected:
    void mousePressEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

private:
    struct Mark {
        int day = 0;
        qreal height = 0;
        int hardening = 0;
        bool photo = false;
    };
    struct Feeding {
        int day = 0;
        bool took = true;
    };
    struct Label {
        int day = 0;
        QString text;
    };
    struct Span {
        int from = 0;
        int median = 0;
        int to = 0;
    };
    /// Where things stand for one size: all in dp from the item's top left.
    struct Frame {
        qreal left, right, top, base, tallest, dots;
        qreal lead;  // of the line before the first day
        qreal tail;  // after the band
        qreal stub;  // after now, where there is no band
        qreal axisPen, tickPen, ring, ringPen, dot, dotPitch, leastHatch, hatchPitch;
    };

    [[nodiscard]] Frame frame() const;
    [[nodiscard]] bool hasForecast() const { return forecast_.to > forecast_.from; }
    [[nodiscard]] qsizetype firstShown() const;
    [[nodiscard]] int firstDay() const;
    [[nodiscard]] qreal lastDay(int first) const;
    void setCurrent(int index);
    void paintBand(QPainter& painter, const Frame& at) const;
    void paintAxis(QPainter& painter, const Frame& at) const;
    void paintMarks(QPainter& painter, const Frame& at) const;
    void paintFeedings(QPainter& painter, const Frame& at) const;
    void paintRecentFeedings(QPainter& painter, const Frame& at) const;
    void paintLabels(QPainter& painter, const Frame& at) const;
    void paintText(QPainter& painter, const QString& text, const QRectF& box,
                   const QColor& color) const;

    Size size_ = OnPage;
    QVariantList marksGiven_;
    QVariantList feedingsGiven_;
    QVariantList labelsGiven_;
    QVariantMap forecastGiven_;
    QList<Mark> marks_;
    QList<Feeding> feedings_;
    QList<Label> labels_;
    Span forecast_;
    QString nowLabel_;
    QString forecastLabel_;
    int startDay_ = 0;
    int nowDay_ = 0;
    bool tappable_ = false;
    int current_ = -1;
    int pressed_ = -1;
    QElapsedTimer sinceTap_;
    QFont tickFont_;
    qreal tickLine_ = 16;
    QColor ink_ = Qt::black;
    QColor soft_ = Qt::darkGray;
    QColor edge_ = Qt::gray;
    QColor est_ = Qt::magenta;
    QColor hatch_ = Qt::gray;
    QColor hole_ = Qt::white;
    qreal bandPeak_ = 0.4;
};

}  // namespace burrow
