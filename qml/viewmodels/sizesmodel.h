// Each kind of length over the moults of one animal, and which leg span its carapace promises.
#pragma once

#include "room/sizes.h"
#include "viewmodels/wording.h"

namespace burrow {

class SizesModel : public QObject {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(burrow::Desk* desk READ desk WRITE setDesk NOTIFY givenChanged REQUIRED FINAL)
    Q_PROPERTY(QString subject READ subject WRITE setSubject NOTIFY givenChanged REQUIRED FINAL)
    Q_PROPERTY(bool ready READ isReady NOTIFY changed FINAL)
    Q_PROPERTY(QString tag READ tag NOTIFY changed FINAL)
    Q_PROPERTY(QString binomial READ binomial NOTIFY changed FINAL)
    Q_PROPERTY(QString about READ about NOTIFY changed FINAL)
    /// [{name, rows, points, labels, spoken}]: each kind that was measured, in each skin.
    Q_PROPERTY(QVariantList kinds READ kinds NOTIFY changed FINAL)
    /// What the keeper's own pairs say of the last carapace, or why they say nothing.
    Q_PROPERTY(QString says READ says NOTIFY changed FINAL)
    Q_PROPERTY(int nowDay READ nowDay NOTIFY changed FINAL)

public:
    explicit SizesModel(QObject* parent = nullptr) : QObject(parent) {}

    [[nodiscard]] Desk* desk() const { return desk_; }
    void setDesk(Desk* desk);
    [[nodiscard]] QString subject() const { return subject_; }
    void setSubject(const QString& subject);
    [[nodiscard]] bool isReady() const { return found_.has_value() && resident_; }
    [[nodiscard]] QString tag() const;
    [[nodiscard]] QString binomial() const;
    [[nodiscard]] QString about() const;
    [[nodiscard]] QVariantList kinds() const;
    [[nodiscard]] QString says() const;
    [[nodiscard]] int nowDay() const { return desk_ ? desk_->today().days : 0; }

signals:
    void givenChanged();
    void changed();

private:
    struct Found {
        std::vector<Fact> facts;
        std::optional<Sizes> sizes;
    };

    void read();

    QPointer<Desk> desk_;
    QString subject_;
    std::optional<Found> found_;
    ResidentPtr resident_;
};

}  // namespace burrow
