// "Feed. Ate 9 days ago": a verb in bold and its reason, flowing as one text.
#pragma once

#include <QColor>
#include <QFont>
#include <QQuickPaintedItem>
#include <QTextLayout>

namespace burrow {

/// Sets `verb` and `reason` as one paragraph in two fonts and two colours. Both are plain text:
/// nothing in them is read as markup. Wraps to the item's width, breaking a word only when a line
/// cannot hold it; the implicit height follows the width, so nothing is cut.
class LeadShape : public QQuickPaintedItem {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(QString verb MEMBER verb_ NOTIFY textChanged)
    Q_PROPERTY(QString reason MEMBER reason_ NOTIFY textChanged)
    Q_PROPERTY(QFont verbFont MEMBER verbFont_ NOTIFY textChanged)
    Q_PROPERTY(QFont reasonFont MEMBER reasonFont_ NOTIFY textChanged)
    Q_PROPERTY(qreal lineHeight MEMBER lineHeight_ NOTIFY textChanged)
    Q_PROPERTY(QColor verbColor MEMBER verbColor_ NOTIFY colorChanged)
    Q_PROPERTY(QColor reasonColor MEMBER reasonColor_ NOTIFY colorChanged)
    Q_PROPERTY(int lineCount READ lineCount NOTIFY lineCountChanged)

public:
    explicit LeadShape(QQuickItem* parent = nullptr);

    [[nodiscard]] int lineCount() const { return layout_.lineCount(); }
    void paint(QPainter* painter) override;

signals:
    void textChanged();
    void colorChanged();
    void lineCountChanged();

protected:
    void geometryChange(const QRectF& now, const QRectF& before) override;
    void componentComplete() override;

private:
    void relayout();
    void breakLines();
    [[nodiscard]] QList<QTextLayout::FormatRange> formats() const;

    QString verb_;
    QString reason_;
    QFont verbFont_;
    QFont reasonFont_;
    qreal lineHeight_ = 20;
    QColor verbColor_ = Qt::black;
    QColor reasonColor_ = Qt::darkGray;
    QTextLayout layout_;
};

}  // namespace burrow
