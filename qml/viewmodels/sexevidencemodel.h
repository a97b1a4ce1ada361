// The chance that an animal is female, with the ledger of all evidence, what disagrees in it, and what would
// settle it.
#pragma once

#include <QUrl>

#include "room/sex_case.h"
#include "viewmodels/wording.h"

namespace burrow {

class SexEvidenceModel : public QObject {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(burrow::Desk* desk READ desk WRITE setDesk NOTIFY givenChanged REQUIRED FINAL)
    Q_PROPERTY(QString subject READ subject WRITE setSubject NOTIFY givenChanged REQUIRED FINAL)
    Q_PROPERTY(bool ready READ isReady NOTIFY changed FINAL)
    Q_PROPERTY(QString tag READ tag NOTIFY changed FINAL)
    Q_PROPERTY(QString binomial READ binomial NOTIFY changed FINAL)
    Q_PROPERTY(QString about READ about NOTIFY changed FINAL)
    /// "Female", "Could be either"
    Q_PROPERTY(QString verdict READ verdict NOTIFY changed FINAL)
    /// "97 in 100 that it is a female"
    Q_PROPERTY(QString chance READ chance NOTIFY changed FINAL)
    /// The names of the five stops, and the one that is reached; -1 below the first.
    Q_PROPERTY(QList<QString> stops READ stops NOTIFY changed FINAL)
    Q_PROPERTY(int stop READ stop NOTIFY changed FINAL)
    /// 0 male to 1 female, of which nothing was known, and of which all is.
    Q_PROPERTY(double before READ before NOTIFY changed FINAL)
    Q_PROPERTY(double female READ female NOTIFY changed FINAL)
    /// [{day, head, text, counted, judge, source, before, after, counts, corrected}], as it was seen.
    Q_PROPERTY(QVariantList ledger READ ledger NOTIFY changed FINAL)
    Q_PROPERTY(QList<QString> conflicts READ conflicts NOTIFY changed FINAL)
    /// [{text, range, moult}]; `moult` is the entry of one that waits, else empty.
    Q_PROPERTY(QVariantList wouldSettle READ wouldSettle NOTIFY changed FINAL)
    /// What is to be known of the numbers, or that there are none.
    Q_PROPERTY(QString note READ note NOTIFY changed FINAL)
    /// "Write it down as female", where that is settled and not on record; else empty.
    Q_PROPERTY(QString writeText READ writeText NOTIFY changed FINAL)
    /// The newest moult with a photo: what another keeper can be asked about; else empty.
    Q_PROPERTY(QString askable READ askable NOTIFY changed FINAL)
    Q_PROPERTY(bool busy READ isBusy NOTIFY changed FINAL)

public:
    explicit SexEvidenceModel(QObject* parent = nullptr) : QObject(parent) {}

    [[nodiscard]] Desk* desk() const { return desk_; }
    void setDesk(Desk* desk);
    [[nodiscard]] QString subject() const { return subject_; }
    void setSubject(const QString& subject);
    [[nodiscard]] bool isReady() const { return case_.has_value() && resident_; }
    [[nodiscard]] QString tag() const;
    [[nodiscard]] QString binomial() const;
    [[nodiscard]] QString about() const;
    [[nodiscard]] QString verdict() const;
    [[nodiscard]] QString chance() const;
    [[nodiscard]] QStringList stops() const;
    [[nodiscard]] int stop() const;
    [[nodiscard]] double before() const { return case_ ? case_->finding.prior : 0.5; }
    [[nodiscard]] double female() const { return case_ ? case_->finding.female : 0.5; }
    [[nodiscard]] QVariantList ledger() const;
    [[nodiscard]] QStringList conflicts() const;
    [[nodiscard]] QVariantList wouldSettle() const;
    [[nodiscard]] QString note() const;
    [[nodiscard]] QString writeText() const;
    [[nodiscard]] QString askable() const;
    [[nodiscard]] bool isBusy() const { return busy_; }

public slots:
    /// Writes the settled sex on the animal's record.
    void write();

signals:
    void givenChanged();
    void changed();

private:
    void read();
    [[nodiscard]] bool canWrite() const;

    QPointer<Desk> desk_;
    QString subject_;
    ResidentPtr resident_;
    std::optional<SexCase> case_;
    bool busy_ = false;
};

}  // namespace burrow
