// One species: everything that is known of it, and where it comes from.
#pragma once

#include "viewmodels/profilewords.h"

namespace burrow {

class ProfileModel : public QObject {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(burrow::Desk* desk READ desk WRITE setDesk NOTIFY changed REQUIRED FINAL)
    /// Any of its names.
    Q_PROPERTY(QString species READ species WRITE setSpecies NOTIFY changed REQUIRED FINAL)
    Q_PROPERTY(bool missing READ isMissing NOTIFY changed FINAL)
    Q_PROPERTY(QString name READ name NOTIFY changed FINAL)
    Q_PROPERTY(QString kind READ kind NOTIFY changed FINAL)
    /// [{word, advice}], the gravest first.
    Q_PROPERTY(QVariantList cautions READ cautions NOTIFY changed FINAL)
    /// [{name, value, sub}]: every fact, with its source below.
    Q_PROPERTY(QVariantList lines READ lines NOTIFY changed FINAL)
    /// The keeper's own profile, and whether there is a shipped one that would count without it.
    Q_PROPERTY(bool own READ isOwn NOTIFY changed FINAL)
    Q_PROPERTY(bool overShipped READ isOverShipped NOTIFY changed FINAL)
    /// "from you", "shipped"
    Q_PROPERTY(QString origin READ origin NOTIFY changed FINAL)

public:
    explicit ProfileModel(QObject* parent = nullptr) : QObject(parent) {}

    [[nodiscard]] Desk* desk() const { return desk_; }
    void setDesk(Desk* desk);
    [[nodiscard]] QString species() const { return species_; }
    void setSpecies(const QString& species);
    [[nodiscard]] bool isMissing() const { return profile() == nullptr; }
    [[nodiscard]] QString name() const;
    [[nodiscard]] QString kind() const;
    [[nodiscard]] QVariantList cautions() const;
    [[nodiscard]] QVariantList lines() const;
    [[nodiscard]] bool isOwn() const;
    [[nodiscard]] bool isOverShipped() const;
    [[nodiscard]] QString origin() const;

public slots:
    /// Takes the keeper's own profile out: the shipped one counts again, where there is one.
    void drop();

signals:
    void changed();

private:
    [[nodiscard]] const Profile* profile() const;

    QPointer<Desk> desk_;
    QString species_;
};

}  // namespace burrow
