// The punch: a state as a shape cut through the strip.
#pragma once

#include <QColor>
#include <QQuickPaintedItem>

namespace burrow {

/// Draws one punch, as large as the item is wide. `kind` is one of the names in `Kind`, in lower
/// case; an unknown name draws nothing and says so in the log. Repaints only when a property
/// changes.
class PunchShape : public QQuickPaintedItem {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(QString kind READ kindName WRITE setKindName NOTIFY kindChanged)
    /// Of the ring and of what is drawn inside.
    Q_PROPERTY(QColor tone MEMBER tone_ NOTIFY changed)
    /// What shows through the hole.
    Q_PROPERTY(QColor hole MEMBER hole_ NOTIFY changed)

public:
    enum class Kind {
        none,      ///< nothing at all
        blank,     ///< an empty hole: no state to show
        feed,      ///< due
        hold,      ///< hardening
        premoult,  ///< about to moult
        group,     ///< communal enclosure
        sac,       ///< egg sac held or guarded
        look,      ///< wants eyes, or danger
        done,      ///< logged today
        sold,      ///< gone from the room
        slash,     ///< held, in a round
        current,   ///< the tub in hand, in a round
    };
    Q_ENUM(Kind)

    explicit PunchShape(QQuickItem* parent = nullptr);

    [[nodiscard]] QString kindName() const;
    void setKindName(const QString& name);
    void paint(QPainter* painter) override;

signals:
    void kindChanged();
    void changed();

private:
    Kind kind_ = Kind::blank;
    QColor tone_ = Qt::black;
    QColor hole_ = Qt::transparent;
};

}  // namespace burrow
