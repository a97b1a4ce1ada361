// One step of the type scale: a font and the height of its lines at the present text size.
#pragma once

#include <QtQml/qqmlregistration.h>
#include <QFont>
#include <QObject>
#include <cmath>
#include <optional>

namespace burrow {

/// What a step is made of is given once; `factor` follows the keeper's text size. The font's own
/// measures are looked up when they are first asked for: most pages use a few steps only, and loading
/// a face takes a while.
class TypeStep : public QObject {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(QString family MEMBER family_ NOTIFY changed REQUIRED)
    Q_PROPERTY(int size MEMBER size_ NOTIFY changed REQUIRED)
    Q_PROPERTY(int line MEMBER line_ NOTIFY changed REQUIRED)
    Q_PROPERTY(int weight MEMBER weight_ NOTIFY changed REQUIRED)
    Q_PROPERTY(bool italic MEMBER italic_ NOTIFY changed)
    Q_PROPERTY(qreal factor READ factor WRITE setFactor NOTIFY changed REQUIRED)

    Q_PROPERTY(int pixels READ pixels NOTIFY changed)
    Q_PROPERTY(int lineHeight READ lineHeight NOTIFY changed)
    Q_PROPERTY(QFont font READ font NOTIFY changed)
    /// What a line has over the font's own height; negative where it is set tighter.
    Q_PROPERTY(qreal lead READ lead NOTIFY changed)
    /// The half of the lead that belongs over the text.
    Q_PROPERTY(qreal above READ above NOTIFY changed)
    /// The width of a character of the monospaced steps.
    Q_PROPERTY(qreal digit READ digit NOTIFY changed)

public:
    explicit TypeStep(QObject* parent = nullptr);

    [[nodiscard]] qreal factor() const { return factor_; }
    void setFactor(qreal factor);
    [[nodiscard]] int pixels() const { return qRound(size_ * factor_); }
    [[nodiscard]] int lineHeight() const { return qRound(line_ * factor_); }
    [[nodiscard]] QFont font() const;
    [[nodiscard]] qreal lead() const { return lineHeight() - measures().height; }
    [[nodiscard]] qreal above() const { return std::floor(lead() / 2 + 0.5); }
    [[nodiscard]] qreal digit() const { return measures().digit; }

signals:
    void changed();

private:
    struct Measures {
        qreal height = 0;
        qreal digit = 0;
    };
    const Measures& measures() const;

    QString family_;
    int size_ = 0;
    int line_ = 0;
    int weight_ = 400;
    bool italic_ = false;
    qreal factor_ = 1;
    mutable std::optional<Measures> measures_;
};

}  // namespace burrow
