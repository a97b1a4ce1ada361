// Who is kept: a new animal, group or lot with its tag, or what is known of one, to change.
#pragma once

#include "tags/code.h"
#include "viewmodels/formmodel.h"
#include "viewmodels/wording.h"

namespace burrow {

class AnimalForm : public burrow::FormModel {
    Q_OBJECT
    QML_ELEMENT
    /// Empty for a new one.
    Q_PROPERTY(QString subject READ subject WRITE setSubject NOTIFY shapeChanged FINAL)
    /// The code of a scanned tag that hangs on nobody yet, for a new one; empty to draw a code.
    Q_PROPERTY(QString tagCode READ tagCode WRITE setTagCode NOTIFY shapeChanged FINAL)
    /// How wide the square of that tag is printed, in mm; 0 for as usual.
    Q_PROPERTY(qreal tagSide MEMBER tagSide_ NOTIFY shapeChanged FINAL)
    Q_PROPERTY(QString saveText READ saveText NOTIFY shapeChanged FINAL)

public:
    explicit AnimalForm(QObject* parent = nullptr) : FormModel(parent) {}

    [[nodiscard]] QString subject() const { return subject_; }
    void setSubject(const QString& subject);
    [[nodiscard]] QString tagCode() const { return tagCode_; }
    void setTagCode(const QString& code);
    [[nodiscard]] QString saveText() const;

public slots:
    void save() override;

protected:
    void read() override;

private:
    /// What is read from the book before the form can be filled in.
    struct Start {
        std::string number;
        std::optional<Enclosure> enclosure;
    };

    void build();
    void addWho();
    void addHome();
    void addOrigin();
    void fill(const Start& start);
    void follow();
    void noteNumber();
    void noteSpecies();
    [[nodiscard]] bool readSubject(Subject& subject);
    [[nodiscard]] bool readParent(const char* name, std::optional<SubjectId>& into);
    [[nodiscard]] Result<std::string> code() const;

    QString subject_;
    QString tagCode_;
    qreal tagSide_ = 0;
    Subject before_;
    int gone_ = 0;  ///< of its count died or left: the record counts who was put in
    bool isNew_ = true;
    HomeFields home_;
};

}  // namespace burrow
