// What to do so that a photo of the mat can be measured, while the camera looks at it.
#pragma once

#include <QVariantList>

#include "ports/scanner.h"
#include "viewmodels/desk.h"

namespace burrow {

/// The scanner looks for a mat as long as this lives and is `active`.
class MatHintModel : public QObject {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(burrow::Desk* desk READ desk WRITE setDesk NOTIFY givenChanged REQUIRED FINAL)
    Q_PROPERTY(burrow::Scanner* scanner READ scanner WRITE setScanner NOTIFY givenChanged FINAL)
    Q_PROPERTY(bool active READ isActive WRITE setActive NOTIFY givenChanged FINAL)
    /// "Only 3 corners show. Move back a little."; empty before the first picture.
    Q_PROPERTY(QString text READ text NOTIFY changed FINAL)
    /// A photo taken now could be measured.
    Q_PROPERTY(bool good READ isGood NOTIFY changed FINAL)
    /// Whether each square of the mat shows: top left, top right, bottom right, bottom left.
    Q_PROPERTY(QList<bool> corners READ corners NOTIFY changed FINAL)

public:
    explicit MatHintModel(QObject* parent = nullptr) : QObject(parent) {}
    ~MatHintModel() override { stopLooking(); }

    [[nodiscard]] Desk* desk() const { return desk_; }
    void setDesk(Desk* desk);
    [[nodiscard]] Scanner* scanner() const { return scanner_; }
    void setScanner(Scanner* scanner);
    [[nodiscard]] bool isActive() const { return isActive_; }
    void setActive(bool active);
    [[nodiscard]] QString text() const { return text_; }
    [[nodiscard]] bool isGood() const { return shown_ && shown_->isGood; }
    [[nodiscard]] QList<bool> corners() const;

signals:
    void givenChanged();
    void changed();

private:
    void see(const MatSight& sight);
    void forget();
    void stopLooking();

    QPointer<Desk> desk_;
    QPointer<Scanner> scanner_;
    bool isActive_ = true;
    std::optional<MatSight> last_;
    std::optional<MatSight> shown_;
    QString text_;
};

}  // namespace burrow
