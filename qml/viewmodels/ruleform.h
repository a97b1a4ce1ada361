// One rule of thumb: for whom its value is to be changed, the value, every layer that says something for
// them, and what would hold if one were taken back. Nothing is written here: a change is shown first.
#pragma once

#include "viewmodels/answerwords.h"
#include "viewmodels/formmodel.h"
#include "viewmodels/rulechange.h"

namespace burrow {

class RuleForm : public burrow::FormModel {
    Q_OBJECT
    QML_ELEMENT
    /// Its id.
    Q_PROPERTY(QString rule READ rule WRITE setRule NOTIFY shapeChanged REQUIRED FINAL)
    /// Opened for this one; may be empty.
    Q_PROPERTY(QString subject READ subject WRITE setSubject NOTIFY shapeChanged FINAL)
    /// "10 to 14 days for everyone, as shipped"
    Q_PROPERTY(QString holding READ holding NOTIFY layersChanged FINAL)
    /// [{key, value, from, source, note, holds}]: what holds first, the shipped value last; `key` is
    /// empty for what can't be taken back.
    Q_PROPERTY(QVariantList layers READ layers NOTIFY layersChanged FINAL)
    /// [{key, value, from}]: values of this rule for others; `key` is empty for shipped ones.
    Q_PROPERTY(QVariantList others READ others NOTIFY layersChanged FINAL)

public:
    explicit RuleForm(QObject* parent = nullptr) : FormModel(parent) {}

    [[nodiscard]] QString rule() const { return rule_; }
    void setRule(const QString& rule);
    [[nodiscard]] QString subject() const { return subject_; }
    void setSubject(const QString& subject);
    [[nodiscard]] QString holding() const { return holding_; }
    [[nodiscard]] QVariantList layers() const { return layers_; }
    [[nodiscard]] QVariantList others() const { return others_; }

public slots:
    /// Looks at what was entered, and asks for the preview of it.
    void save() override;
    /// Asks for the preview of taking one of the keeper's own values back.
    void takeBack(const QString& key);
    /// Turns to those that another value is for.
    void turnTo(const QString& key);

signals:
    void layersChanged();
    /// What is to be shown before it is written: an empty value takes the own one back.
    void previewWanted(const QString& key, const QString& value);

protected:
    void read() override;

private:
    /// Whom the form is about. Owns what a RuleSubject refers to.
    struct Target {
        RuleScope scope = RuleScope::everyone;
        std::string of;  ///< as in a key
        std::string species;
        Place place;
        const Profile* profile = nullptr;
        SubjectId id;

        [[nodiscard]] RuleSubject subject() const { return {id, species, place, profile}; }
    };

    void build(const RuleKey& start);
    void follow();
    void showTarget(const Target& target);
    void showLayers(const std::vector<Rule>& layers);
    void showOthers(const std::vector<Rule>& layers);
    void keepUp();
    [[nodiscard]] const Rule* shipped() const;
    [[nodiscard]] std::optional<Target> target() const;
    [[nodiscard]] std::optional<Target> animalTarget() const;
    [[nodiscard]] std::vector<Rule> layersOf(const Target& target) const;
    [[nodiscard]] std::optional<RuleKey> keyOfTarget();
    [[nodiscard]] QString noteFor(const std::vector<Rule>& layers, std::size_t at) const;
    [[nodiscard]] std::int64_t countFor(const Target& target) const;
    [[nodiscard]] std::vector<Rule> ownOfRule() const;

    QString rule_;
    QString subject_;
    bool valueTyped_ = false;
    std::vector<Rule> own_;  ///< the keeper's own values of it when the form was filled
    QString holding_;
    QVariantList layers_;
    QVariantList others_;
};

}  // namespace burrow
