// The page of one animal, group or lot: all that is known of it.
#pragma once

#include "viewmodels/animalfacts.h"
#include "viewmodels/animallines.h"

namespace burrow {

class AnimalModel : public QObject {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(burrow::Desk* desk READ desk WRITE setDesk NOTIFY deskChanged REQUIRED FINAL)
    Q_PROPERTY(QString subject READ subject WRITE setSubject NOTIFY changed REQUIRED FINAL)
    /// The book has no such animal (any more).
    Q_PROPERTY(bool missing READ isMissing NOTIFY changed FINAL)
    /// Its history is read too.
    Q_PROPERTY(bool ready READ isReady NOTIFY changed FINAL)

    // Its label.
    Q_PROPERTY(QString tag READ tag NOTIFY changed FINAL)
    Q_PROPERTY(QString punch READ punch NOTIFY changed FINAL)
    Q_PROPERTY(QString side READ side NOTIFY changed FINAL)
    Q_PROPERTY(QString place READ place NOTIFY changed FINAL)
    Q_PROPERTY(QString binomial READ binomial NOTIFY changed FINAL)
    Q_PROPERTY(QString about READ about NOTIFY changed FINAL)
    Q_PROPERTY(QString size READ size NOTIFY changed FINAL)
    Q_PROPERTY(QString nextPunch READ nextPunch NOTIFY changed FINAL)
    Q_PROPERTY(QString verb READ verb NOTIFY changed FINAL)
    Q_PROPERTY(QString reason READ reason NOTIFY changed FINAL)
    Q_PROPERTY(QList<QString> cautions READ cautions NOTIFY changed FINAL)
    Q_PROPERTY(bool kept READ isKept NOTIFY changed FINAL)

    // Its life.
    Q_PROPERTY(QVariantList marks READ marks NOTIFY changed FINAL)
    Q_PROPERTY(QVariantList feedings READ feedings NOTIFY changed FINAL)
    Q_PROPERTY(QVariantList lineLabels READ lineLabels NOTIFY changed FINAL)
    Q_PROPERTY(int nowDay READ nowDay NOTIFY changed FINAL)
    Q_PROPERTY(QString lineText READ lineText NOTIFY changed FINAL)
    Q_PROPERTY(QVariantList growthPoints READ growthPoints NOTIFY changed FINAL)
    Q_PROPERTY(QVariantList growthLabels READ growthLabels NOTIFY changed FINAL)
    Q_PROPERTY(QString growthUnit READ growthUnit NOTIFY changed FINAL)
    Q_PROPERTY(QString growthText READ growthText NOTIFY changed FINAL)

    // What is known, line by line.
    Q_PROPERTY(QVariantList facts READ facts NOTIFY changed FINAL)
    Q_PROPERTY(QVariantList why READ why NOTIFY changed FINAL)
    /// "Female"; empty where nothing shows it and nobody said it.
    Q_PROPERTY(QString sex READ sex NOTIFY changed FINAL)
    Q_PROPERTY(QVariantList sexLines READ sexLines NOTIFY changed FINAL)
    /// The first thing that disagrees in the evidence; empty for none.
    Q_PROPERTY(QString sexConflict READ sexConflict NOTIFY changed FINAL)
    /// [{url, entry, text}], newest first.
    Q_PROPERTY(QVariantList photos READ photos NOTIFY changed FINAL)
    /// [{entry, day, title, detail, note, glyph}], the last few.
    Q_PROPERTY(QVariantList entries READ entries NOTIFY changed FINAL)
    Q_PROPERTY(int entryCount READ entryCount NOTIFY changed FINAL)

public:
    explicit AnimalModel(QObject* parent = nullptr) : QObject(parent) {}

    [[nodiscard]] Desk* desk() const { return desk_; }
    void setDesk(Desk* desk);
    [[nodiscard]] QString subject() const { return subject_; }
    void setSubject(const QString& subject);
    [[nodiscard]] bool isMissing() const { return desk_ && desk_->room() && !resident_; }
    [[nodiscard]] bool isReady() const { return resident_ != nullptr && isRead_; }

    [[nodiscard]] QString tag() const;
    [[nodiscard]] QString punch() const;
    [[nodiscard]] QString side() const;
    [[nodiscard]] QString place() const;
    [[nodiscard]] QString binomial() const;
    [[nodiscard]] QString about() const;
    [[nodiscard]] QString size() const;
    [[nodiscard]] QString nextPunch() const;
    [[nodiscard]] QString verb() const;
    [[nodiscard]] QString reason() const;
    [[nodiscard]] QStringList cautions() const;
    [[nodiscard]] bool isKept() const { return resident_ && resident_->subject().isKept(); }

    [[nodiscard]] QVariantList marks() const { return life_.line.marks; }
    [[nodiscard]] QVariantList feedings() const { return life_.line.feedings; }
    [[nodiscard]] QVariantList lineLabels() const { return life_.labels; }
    [[nodiscard]] int nowDay() const { return life_.line.nowDay; }
    [[nodiscard]] QString lineText() const { return life_.line.description; }
    [[nodiscard]] QVariantList growthPoints() const { return growth_.points; }
    [[nodiscard]] QVariantList growthLabels() const { return growth_.labels; }
    [[nodiscard]] QString growthUnit() const { return growth_.unit; }
    [[nodiscard]] QString growthText() const { return growth_.description; }

    [[nodiscard]] QVariantList facts() const { return facts_; }
    [[nodiscard]] QVariantList why() const { return why_; }
    [[nodiscard]] QString sex() const { return sex_; }
    [[nodiscard]] QVariantList sexLines() const { return sexLines_; }
    [[nodiscard]] QString sexConflict() const { return sexConflict_; }
    [[nodiscard]] QVariantList photos() const { return photos_; }
    [[nodiscard]] QVariantList entries() const { return entries_; }
    [[nodiscard]] int entryCount() const { return entryCount_; }

public slots:
    /// The entry of a mark of the moult line; empty for none.
    QString entryOfMark(int mark) const { return life_.entries.value(mark); }

signals:
    void deskChanged();
    void changed();

private:
    void read();
    void show(const AnimalRecord& record);
    void showEntries(const AnimalRecord& record);

    QPointer<Desk> desk_;
    QString subject_;
    ResidentPtr resident_;
    bool isRead_ = false;
    LifeLine life_;
    Growth growth_;
    QVariantList facts_;
    QVariantList why_;
    QString sex_;
    QVariantList sexLines_;
    QString sexConflict_;
    QVariantList photos_;
    QVariantList entries_;
    int entryCount_ = 0;
};

}  // namespace burrow
