// A species profile of the keeper's own: a new one, or one that is known here to change. Whatever is
// changed is marked as from the keeper, unless another source is given for it.
#pragma once

#include "viewmodels/profilefields.h"

namespace burrow {

class ProfileForm : public burrow::FormModel {
    Q_OBJECT
    QML_ELEMENT
    /// The one to change, by any of its names; empty for a new one.
    Q_PROPERTY(QString species READ species WRITE setSpecies NOTIFY shapeChanged FINAL)
    /// What a new one may be called, as typed elsewhere.
    Q_PROPERTY(QString suggested READ suggested WRITE setSuggested NOTIFY shapeChanged FINAL)

public:
    explicit ProfileForm(QObject* parent = nullptr) : FormModel(parent) {}

    [[nodiscard]] QString species() const { return species_; }
    void setSpecies(const QString& species);
    [[nodiscard]] QString suggested() const { return suggested_; }
    void setSuggested(const QString& name);

public slots:
    void save() override;

protected:
    void read() override;

private:
    void build();
    void addFact(const ProfileFact& fact);
    void follow();
    void showSources();
    /// Fills in the facts of a species that is like a new one.
    void takeOver();
    void markSource(const ProfileFact& fact);
    void check(const ProfileFact& fact);
    void showError(const std::string& field, const Error& error);
    [[nodiscard]] nlohmann::json entered(const ProfileFact& fact) const;
    [[nodiscard]] FormField& fieldOf(const std::string& name) const;
    [[nodiscard]] bool isNew() const { return species_.isEmpty(); }

    QString species_;
    QString suggested_;
    std::string own_;  ///< the valid name under which the keeper's own one stands; may be empty
    nlohmann::json before_;  ///< what the form started with, as a file
    QString takenOver_;      ///< the species that a new one was made like
};

}  // namespace burrow
