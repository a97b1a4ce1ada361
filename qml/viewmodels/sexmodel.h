// One moult's photos, and what they say about the sex.
#pragma once

#include <QUrl>

#include "room/sex_case.h"
#include "viewmodels/wording.h"

namespace burrow {

class SexModel : public QObject {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(burrow::Desk* desk READ desk WRITE setDesk NOTIFY givenChanged REQUIRED FINAL)
    /// The moult's entry.
    Q_PROPERTY(QString moult READ moult WRITE setMoult NOTIFY givenChanged REQUIRED FINAL)
    Q_PROPERTY(bool ready READ isReady NOTIFY changed FINAL)
    /// The book has no such moult, or no photo of it.
    Q_PROPERTY(bool missing READ isMissing NOTIFY changed FINAL)
    Q_PROPERTY(QString subject READ subject NOTIFY changed FINAL)
    Q_PROPERTY(QString tag READ tag NOTIFY changed FINAL)
    Q_PROPERTY(QString binomial READ binomial NOTIFY changed FINAL)
    Q_PROPERTY(QString about READ about NOTIFY changed FINAL)
    /// "Moult of 3 May, carapace 15.8 mm"
    Q_PROPERTY(QString title READ title NOTIFY changed FINAL)
    /// Where to look and what that is worth, paragraph by paragraph.
    Q_PROPERTY(QList<QString> guidance READ guidance NOTIFY changed FINAL)
    /// [{files, url, thumbnail, name}]: of this moult.
    Q_PROPERTY(QVariantList photos READ photos NOTIFY changed FINAL)
    /// [{files, url, thumbnail, name}]: of the same animal's earlier moults, the last one first.
    Q_PROPERTY(QVariantList earlier READ earlier NOTIFY changed FINAL)
    /// [{drawing, name}]: our own drawings to hold it against; none for other orders than tarantulas.
    Q_PROPERTY(QVariantList drawings READ drawings NOTIFY changed FINAL)
    /// How many millimetres show the place to look at, and not much else.
    Q_PROPERTY(double closeMm READ closeMm NOTIFY changed FINAL)
    /// What was said of this moult before; empty for nothing.
    Q_PROPERTY(QString verdict READ verdict NOTIFY changed FINAL)

    // The keeper's choice.
    /// 0 female, 1 male, 2 can't tell; -1 for none yet.
    Q_PROPERTY(int choice READ choice WRITE setChoice NOTIFY changed FINAL)
    Q_PROPERTY(QVariantList choices READ choices NOTIFY changed FINAL)
    /// 0 barely to 4 beyond doubt; -1 for none yet.
    Q_PROPERTY(int clarity READ clarity WRITE setClarity NOTIFY changed FINAL)
    Q_PROPERTY(QList<QString> clarities READ clarities NOTIFY changed FINAL)
    /// P(female), 0 to 1, without this moult and with what is chosen for it.
    Q_PROPERTY(double before READ before NOTIFY changed FINAL)
    Q_PROPERTY(double after READ after NOTIFY changed FINAL)
    /// "Female", "Could be either": with what is chosen.
    Q_PROPERTY(QString finding READ finding NOTIFY changed FINAL)
    /// "88 before, 97 in 100 with this moult"
    Q_PROPERTY(QString preview READ preview NOTIFY changed FINAL)
    /// What disagrees with what, with what is chosen.
    Q_PROPERTY(QList<QString> conflicts READ conflicts NOTIFY changed FINAL)
    /// Looks of others at this moult, in words: "Wren sees a female. Seen: clearly"
    Q_PROPERTY(QList<QString> opinions READ opinions NOTIFY changed FINAL)
    Q_PROPERTY(bool busy READ isBusy NOTIFY changed FINAL)

public:
    explicit SexModel(QObject* parent = nullptr) : QObject(parent) {}

    [[nodiscard]] Desk* desk() const { return desk_; }
    void setDesk(Desk* desk);
    [[nodiscard]] QString moult() const { return moult_; }
    void setMoult(const QString& moult);
    [[nodiscard]] bool isReady() const { return resident_ && !photos_.isEmpty(); }
    [[nodiscard]] bool isMissing() const { return isRead_ && !isReady(); }
    [[nodiscard]] QString subject() const;
    [[nodiscard]] QString tag() const;
    [[nodiscard]] QString binomial() const;
    [[nodiscard]] QString about() const;
    [[nodiscard]] QString title() const { return title_; }
    [[nodiscard]] QStringList guidance() const;
    [[nodiscard]] QVariantList photos() const { return photos_; }
    [[nodiscard]] QVariantList earlier() const { return earlier_; }
    [[nodiscard]] QVariantList drawings() const;
    [[nodiscard]] double closeMm() const;
    [[nodiscard]] QString verdict() const;
    [[nodiscard]] int choice() const { return choice_; }
    void setChoice(int choice);
    [[nodiscard]] QVariantList choices() const;
    [[nodiscard]] int clarity() const { return clarity_; }
    void setClarity(int clarity);
    [[nodiscard]] QStringList clarities() const;
    [[nodiscard]] double before() const { return before_.female; }
    [[nodiscard]] double after() const { return after_.female; }
    [[nodiscard]] QString finding() const;
    [[nodiscard]] QString preview() const;
    [[nodiscard]] QStringList conflicts() const;
    [[nodiscard]] QStringList opinions() const { return opinions_; }
    [[nodiscard]] bool isBusy() const { return busy_; }

public slots:
    /// Writes the choice down; what was said of this moult before is replaced by it.
    void save();

signals:
    void givenChanged();
    void changed();
    void saved();

private:
    struct Record;

    void read();
    void show(const Record& record);
    void showPhotos(const std::vector<Fact>& facts, const Fact& moult);
    void weigh();
    [[nodiscard]] bool isTarantula() const;
    static Result<Record> recordOf(Book& book, const EntryId& moult,
                                   const sexing::SexingRules& rules, const Profiles& profiles);

    QPointer<Desk> desk_;
    QString moult_;
    ResidentPtr resident_;
    bool isRead_ = false;
    QString title_;
    QVariantList photos_;
    QVariantList earlier_;
    std::optional<Fact> said_;              ///< the keeper's examination on record
    std::vector<sexing::Sighting> others_;  ///< all that was seen, without that examination
    std::optional<Millimetres> carapace_;
    sexing::Finding before_;
    sexing::Finding after_;
    QStringList opinions_;
    int choice_ = -1;
    int clarity_ = -1;
    bool busy_ = false;
};

}  // namespace burrow
