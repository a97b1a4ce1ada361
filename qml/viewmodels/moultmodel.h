// A moult was found: its photos, its size, and when. Saved as one act. Whose it is may be left to the tag in
// its photo. Or more photos of one that is on record, such as those of the dried skin.
#pragma once

#include "ports/darkroom.h"
#include "ports/photographer.h"
#include "ports/scanner.h"
#include "viewmodels/dayentry.h"
#include "viewmodels/moultfiling.h"
#include "viewmodels/moultshots.h"

namespace burrow {

class MoultModel : public QObject {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(burrow::Desk* desk READ desk WRITE setDesk NOTIFY givenChanged REQUIRED FINAL)
    Q_PROPERTY(burrow::Darkroom* darkroom READ darkroom WRITE setDarkroom NOTIFY givenChanged
                   REQUIRED FINAL)
    Q_PROPERTY(burrow::Photographer* photographer READ photographer WRITE setPhotographer NOTIFY
                   givenChanged FINAL)
    /// The camera that the photographer uses.
    Q_PROPERTY(burrow::Scanner* scanner READ scanner WRITE setScanner NOTIFY givenChanged FINAL)
    /// Why there is no picture, in words; empty while there is one, or none is wanted.
    Q_PROPERTY(QString cameraTrouble READ cameraTrouble NOTIFY cameraChanged FINAL)
    /// Empty until a tag in a photo, or the keeper, says whose it is.
    Q_PROPERTY(QString subject READ subject WRITE setSubject NOTIFY givenChanged REQUIRED FINAL)
    /// The entry of a moult on record: then photos are added to it, and nothing else is asked. Empty for one
    /// that was found.
    Q_PROPERTY(QString moult READ moult WRITE setMoult NOTIFY givenChanged FINAL)

    // Whose.
    Q_PROPERTY(bool missing READ isMissing NOTIFY changed FINAL)
    Q_PROPERTY(bool unfiled READ isUnfiled NOTIFY changed FINAL)
    Q_PROPERTY(burrow::MoultFiling* filing READ filing CONSTANT FINAL)
    Q_PROPERTY(QString tag READ tag NOTIFY changed FINAL)
    Q_PROPERTY(QString binomial READ binomial NOTIFY changed FINAL)
    Q_PROPERTY(QString about READ about NOTIFY changed FINAL)
    Q_PROPERTY(QString punch READ punch NOTIFY changed FINAL)
    /// What to take care of with this shed skin; empty for nothing in particular.
    Q_PROPERTY(QString caution READ caution NOTIFY changed FINAL)

    // What was found.
    Q_PROPERTY(bool adding READ isAdding NOTIFY changed FINAL)
    /// "More photos of the moult of 5 May"; empty for a new one.
    Q_PROPERTY(QString addingTo READ addingTo NOTIFY changed FINAL)
    Q_PROPERTY(burrow::DayEntry* when READ when CONSTANT FINAL)
    /// "A moult of 8 May is on record. What you enter is added to it."
    Q_PROPERTY(QString onRecord READ onRecord NOTIFY changed FINAL)
    /// "Is this the moult of 5 May?": one of the last weeks, in which none follows. Empty for none.
    Q_PROPERTY(QString recent READ recent NOTIFY changed FINAL)
    Q_PROPERTY(QString carapace READ carapace WRITE setCarapace NOTIFY changed FINAL)
    Q_PROPERTY(QString carapaceError READ carapaceError NOTIFY changed FINAL)
    Q_PROPERTY(QString span READ span WRITE setSpan NOTIFY changed FINAL)
    Q_PROPERTY(QString spanLabel READ spanLabel NOTIFY changed FINAL)
    Q_PROPERTY(QString spanError READ spanError NOTIFY changed FINAL)
    Q_PROPERTY(bool canBeUltimate READ canBeUltimate NOTIFY changed FINAL)
    Q_PROPERTY(bool ultimate READ isUltimate WRITE setUltimate NOTIFY changed FINAL)
    /// [{picture, dried, state, read, trouble}] to show, in the order in which they were added: whether it can
    /// be measured, and why not.
    Q_PROPERTY(QVariantList photos READ photos NOTIFY photosChanged FINAL)
    Q_PROPERTY(bool canTakeMore READ canTakeMore NOTIFY photosChanged FINAL)
    /// A picture is being taken or looked over: it belongs to the moult before that can be saved.
    Q_PROPERTY(bool developing READ isDeveloping NOTIFY photosChanged FINAL)
    /// Those that are added from now on show the moult after it has dried.
    Q_PROPERTY(bool dried READ isDried WRITE setDried NOTIFY photosChanged FINAL)
    /// Why the last picture was not taken up, in words.
    Q_PROPERTY(QString photoTrouble READ photoTrouble NOTIFY photosChanged FINAL)

    // Saving.
    Q_PROPERTY(bool canSave READ canSave NOTIFY photosChanged FINAL)
    /// It was said once that photos are not saved yet.
    Q_PROPERTY(bool warned READ isWarned NOTIFY changed FINAL)
    Q_PROPERTY(bool busy READ isBusy NOTIFY changed FINAL)
    Q_PROPERTY(bool saved READ isSaved NOTIFY changed FINAL)
    /// The entry of the moult once it is saved; before that empty.
    Q_PROPERTY(QString savedMoult READ savedMoult NOTIFY changed FINAL)
    /// Until when feeding is held back, as verb and reason.
    Q_PROPERTY(QString verb READ verb NOTIFY changed FINAL)
    Q_PROPERTY(QString reason READ reason NOTIFY changed FINAL)
    Q_PROPERTY(QString nextPunch READ nextPunch NOTIFY changed FINAL)
    /// "No room for the photo. The moult is saved without it."
    Q_PROPERTY(QString lostPhotos READ lostPhotos NOTIFY changed FINAL)
    /// The moult that was saved, where it has a photo to look at for the sex; else empty.
    Q_PROPERTY(QString toSex READ toSex NOTIFY changed FINAL)
    /// The same to measure it.
    Q_PROPERTY(QString toMeasure READ toMeasure NOTIFY changed FINAL)

public:
    explicit MoultModel(QObject* parent = nullptr);

    [[nodiscard]] Desk* desk() const { return desk_; }
    void setDesk(Desk* desk);
    [[nodiscard]] Darkroom* darkroom() const { return darkroom_; }
    void setDarkroom(Darkroom* darkroom);
    [[nodiscard]] Photographer* photographer() const { return photographer_; }
    void setPhotographer(Photographer* photographer);
    [[nodiscard]] Scanner* scanner() const { return scanner_; }
    void setScanner(Scanner* scanner);
    [[nodiscard]] QString cameraTrouble() const;
    [[nodiscard]] QString subject() const { return subject_; }
    void setSubject(const QString& subject);
    [[nodiscard]] QString moult() const { return added_; }
    void setMoult(const QString& moult);

    [[nodiscard]] bool isMissing() const;
    [[nodiscard]] bool isUnfiled() const { return subject_.isEmpty() && !isAdding(); }
    [[nodiscard]] bool isAdding() const { return !added_.isEmpty(); }
    [[nodiscard]] QString addingTo() const;
    [[nodiscard]] MoultFiling* filing() { return &filing_; }
    [[nodiscard]] QString tag() const;
    [[nodiscard]] QString binomial() const;
    [[nodiscard]] QString about() const;
    [[nodiscard]] QString punch() const;
    [[nodiscard]] QString caution() const;

    [[nodiscard]] DayEntry* when() { return &when_; }
    [[nodiscard]] QString onRecord() const;
    [[nodiscard]] QString recent() const;
    [[nodiscard]] QString carapace() const { return carapace_; }
    void setCarapace(const QString& text);
    [[nodiscard]] QString carapaceError() const { return carapaceError_; }
    [[nodiscard]] QString span() const { return span_; }
    void setSpan(const QString& text);
    [[nodiscard]] QString spanLabel() const;
    [[nodiscard]] QString spanError() const { return spanError_; }
    [[nodiscard]] bool canBeUltimate() const;
    [[nodiscard]] bool isUltimate() const { return ultimate_; }
    void setUltimate(bool on);
    [[nodiscard]] QVariantList photos() const { return shots_.list(); }
    [[nodiscard]] bool canTakeMore() const { return shots_.canTakeMore(); }
    [[nodiscard]] bool isDeveloping() const;
    [[nodiscard]] bool isDried() const { return shots_.isDried(); }
    void setDried(bool dried) { shots_.setDried(dried); }
    [[nodiscard]] QString photoTrouble() const { return shots_.trouble(); }

    [[nodiscard]] bool canSave() const;
    [[nodiscard]] bool isWarned() const { return warned_; }
    [[nodiscard]] bool isBusy() const { return busy_; }
    [[nodiscard]] bool isSaved() const { return moult_.has_value(); }
    [[nodiscard]] QString savedMoult() const;
    [[nodiscard]] QString verb() const;
    [[nodiscard]] QString reason() const;
    [[nodiscard]] QString nextPunch() const;
    [[nodiscard]] QString lostPhotos() const { return lostPhotos_; }
    [[nodiscard]] QString toSex() const;
    [[nodiscard]] QString toMeasure() const;

public slots:
    void takePhoto();
    void addFiles(const QList<QUrl>& files);
    void removePhoto(int at) { shots_.remove(at); }
    /// From fresh to dried and back.
    void turnDried(int at) { shots_.turnDried(at); }
    /// It is the recent moult: what is entered is added to that one.
    void joinRecent();
    void save();
    /// Emits left(), or says once that there are photos that are not saved yet.
    void leave();
    /// Another try for the photos that could not be kept.
    void keepPhotosAgain();

signals:
    void givenChanged();
    void changed();
    void photosChanged();
    void cameraChanged();
    void left();

private:
    void read();
    void readAdded();
    [[nodiscard]] std::optional<CivilDay> recentMoult() const;
    void addBytes(const QByteArray& bytes);
    [[nodiscard]] bool readBody(FactBody& body);
    [[nodiscard]] bool readSize(FactBody& body, const char* field, const QString& label,
                                const QString& text, QString& error) const;
    void write(FactBody body, MoultShots::Kept kept);
    void writePhotos(const EntryId& moult, MoultShots::Kept kept);
    void end(const Result<ChangeSet>& done, MoultShots::Kept kept);
    void lookWhetherUndone();

    QPointer<Desk> desk_;
    QPointer<Darkroom> darkroom_;
    QPointer<Photographer> photographer_;
    QPointer<Scanner> scanner_;
    QString subject_;
    QString added_;                ///< the entry to which photos are added, as it was given
    std::optional<Fact> addedTo_;  ///< the same, once it was read
    bool isAddedRead_ = false;
    ResidentPtr resident_;
    DayEntry when_;
    QString carapace_;
    QString carapaceError_;
    QString span_;
    QString spanError_;
    bool ultimate_ = false;
    MoultFiling filing_;
    MoultShots shots_;        ///< not kept yet
    MoultShots::Shots kept_;  ///< with the moult that is saved
    bool warned_ = false;
    bool busy_ = false;
    std::optional<EntryId> moult_;  ///< once it is saved
    std::size_t writings_ = 0;      ///< of it in the book since then, at least
    QString lostPhotos_;
};

}  // namespace burrow
