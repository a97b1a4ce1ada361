// Measuring in a photo of a moult: two ends that are dragged, the length between them and how sure it is,
// or a length as it was typed.
#pragma once

#include "measure/length.h"
#include "ports/darkroom.h"
#include "ports/errands.h"
#include "room/sizes.h"
#include "viewmodels/lengthkinds.h"
#include "viewmodels/measuredphoto.h"
#include "viewmodels/sizelines.h"

namespace burrow {

class MeasureModel : public QObject {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(burrow::Desk* desk READ desk WRITE setDesk NOTIFY givenChanged REQUIRED FINAL)
    Q_PROPERTY(burrow::Darkroom* darkroom READ darkroom WRITE setDarkroom NOTIFY givenChanged
                   REQUIRED FINAL)
    /// The entry of the moult, or of a photo of it.
    Q_PROPERTY(QString moult READ moult WRITE setMoult NOTIFY givenChanged REQUIRED FINAL)

    // Whose.
    Q_PROPERTY(bool missing READ isMissing NOTIFY changed FINAL)
    Q_PROPERTY(QString tag READ tag NOTIFY changed FINAL)
    Q_PROPERTY(QString binomial READ binomial NOTIFY changed FINAL)
    Q_PROPERTY(QString about READ about NOTIFY changed FINAL)
    /// "Moult of 3 May"
    Q_PROPERTY(QString title READ title NOTIFY changed FINAL)

    // The photo.
    /// [{word, sub}] of this moult, and the one that is measured in.
    Q_PROPERTY(QVariantList photos READ photos NOTIFY changed FINAL)
    Q_PROPERTY(int photo READ photo WRITE setPhoto NOTIFY changed FINAL)
    Q_PROPERTY(bool looking READ isLooking NOTIFY photoChanged FINAL)
    Q_PROPERTY(burrow::Picture picture READ picture NOTIFY photoChanged FINAL)
    Q_PROPERTY(bool canMeasure READ canMeasure NOTIFY photoChanged FINAL)
    /// Why it can't be measured in, and what to do.
    Q_PROPERTY(QString refusal READ refusal NOTIFY photoChanged FINAL)
    /// By what its scale is known: "By mat 7Q2M, seen straight from above."
    Q_PROPERTY(QString scaleText READ scaleText NOTIFY photoChanged FINAL)
    /// "A5 7Q2M": a mat whose bar was not measured; empty where there is none.
    Q_PROPERTY(QString unmeasuredMat READ unmeasuredMat NOTIFY changed FINAL)
    /// What to do where the tag on the mat says that the sheet is a copy; else empty.
    Q_PROPERTY(QString copied READ copied NOTIFY changed FINAL)

    // The ends, as parts of the picture.
    Q_PROPERTY(QPointF from READ from NOTIFY endsChanged FINAL)
    Q_PROPERTY(QPointF to READ to NOTIFY endsChanged FINAL)
    /// Units of the screen for one pixel of the picture: how exactly an end can be set.
    Q_PROPERTY(
        qreal screenScale READ screenScale WRITE setScreenScale NOTIFY screenScaleChanged FINAL)
    /// What to do while an end, or both, stand where they were at the start; empty afterwards.
    Q_PROPERTY(QString hint READ hint NOTIFY endsChanged FINAL)

    // What is measured.
    Q_PROPERTY(QVariantList kinds READ kinds NOTIFY changed FINAL)
    Q_PROPERTY(int kind READ kind WRITE setKind NOTIFY changed FINAL)
    Q_PROPERTY(bool ofLeg READ isOfLeg NOTIFY changed FINAL)
    Q_PROPERTY(QVariantList legs READ legs NOTIFY changed FINAL)
    Q_PROPERTY(int leg READ leg WRITE setLeg NOTIFY changed FINAL)
    Q_PROPERTY(QVariantList segments READ segments NOTIFY changed FINAL)
    Q_PROPERTY(int segment READ segment WRITE setSegment NOTIFY changed FINAL)
    Q_PROPERTY(QVariantList heights READ heights NOTIFY changed FINAL)
    Q_PROPERTY(int height READ height WRITE setHeight NOTIFY changed FINAL)

    // What comes of it.
    /// "15.2 mm"; empty where nothing can be said.
    Q_PROPERTY(QString length READ length NOTIFY endsChanged FINAL)
    /// "15.2 mm, 14.9 to 15.5"
    Q_PROPERTY(QString result READ result NOTIFY endsChanged FINAL)
    /// Why there is no length between these ends.
    Q_PROPERTY(QString endsTrouble READ endsTrouble NOTIFY endsChanged FINAL)
    /// [{name, value, sub}]: where the uncertainty comes from, the largest first.
    Q_PROPERTY(QVariantList sources READ sources NOTIFY endsChanged FINAL)
    /// A length as typed; where there is one, it is what is saved.
    Q_PROPERTY(QString typed READ typed WRITE setTyped NOTIFY typedChanged FINAL)
    Q_PROPERTY(QString typedError READ typedError NOTIFY typedChanged FINAL)
    Q_PROPERTY(bool canSave READ canSave NOTIFY endsChanged FINAL)
    Q_PROPERTY(bool busy READ isBusy NOTIFY busyChanged FINAL)

    // What was measured before.
    /// [{name, value, sub, page, properties}]: the same length in each skin, the last one first.
    Q_PROPERTY(QVariantList history READ history NOTIFY changed FINAL)
    /// "+4.5 mm since 2 March"; empty where there is nothing to compare with.
    Q_PROPERTY(QString growth READ growth NOTIFY endsChanged FINAL)
    /// What the keeper's own pairs say of the leg span that goes with this carapace, or why they say nothing;
    /// empty for other lengths.
    Q_PROPERTY(QString spanText READ spanText NOTIFY endsChanged FINAL)
    /// For the plot; fewer than two are none.
    Q_PROPERTY(QVariantList points READ points NOTIFY changed FINAL)
    Q_PROPERTY(QVariantList pointLabels READ pointLabels NOTIFY changed FINAL)
    Q_PROPERTY(QString pointsText READ pointsText NOTIFY changed FINAL)
    Q_PROPERTY(int nowDay READ nowDay NOTIFY changed FINAL)

public:
    enum End { From, To };
    Q_ENUM(End)

    explicit MeasureModel(QObject* parent = nullptr);
    ~MeasureModel() override { looking_.dropWaiting(); }

    [[nodiscard]] Desk* desk() const { return desk_; }
    void setDesk(Desk* desk);
    [[nodiscard]] Darkroom* darkroom() const { return darkroom_; }
    void setDarkroom(Darkroom* darkroom);
    [[nodiscard]] QString moult() const { return moult_; }
    void setMoult(const QString& moult);

    [[nodiscard]] bool isMissing() const { return isRead_ && !resident_; }
    [[nodiscard]] QString tag() const;
    [[nodiscard]] QString binomial() const;
    [[nodiscard]] QString about() const;
    [[nodiscard]] QString title() const;

    [[nodiscard]] QVariantList photos() const;
    [[nodiscard]] int photo() const { return photo_; }
    void setPhoto(int photo);
    [[nodiscard]] bool isLooking() const { return asked_ != answered_; }
    [[nodiscard]] Picture picture() const;
    [[nodiscard]] bool canMeasure() const { return measured_ && measured_->canBeMeasured(); }
    [[nodiscard]] QString refusal() const { return refusal_; }
    [[nodiscard]] QString scaleText() const;
    [[nodiscard]] QString unmeasuredMat() const;
    [[nodiscard]] QString copied() const;

    [[nodiscard]] QPointF from() const { return ends_[From]; }
    [[nodiscard]] QPointF to() const { return ends_[To]; }
    [[nodiscard]] qreal screenScale() const { return screenScale_; }
    void setScreenScale(qreal scale);
    [[nodiscard]] QString hint() const;

    [[nodiscard]] QVariantList kinds() const;
    [[nodiscard]] int kind() const { return kind_; }
    void setKind(int kind);
    [[nodiscard]] bool isOfLeg() const;
    [[nodiscard]] QVariantList legs() const;
    [[nodiscard]] int leg() const { return leg_; }
    void setLeg(int leg);
    [[nodiscard]] QVariantList segments() const;
    [[nodiscard]] int segment() const { return segment_; }
    void setSegment(int segment);
    [[nodiscard]] QVariantList heights() const;
    [[nodiscard]] int height() const { return height_; }
    void setHeight(int height);

    [[nodiscard]] QString length() const;
    [[nodiscard]] QString result() const;
    [[nodiscard]] QString endsTrouble() const { return endsTrouble_; }
    [[nodiscard]] QVariantList sources() const;
    [[nodiscard]] QString typed() const { return typed_; }
    void setTyped(const QString& typed);
    [[nodiscard]] QString typedError() const { return typedError_; }
    [[nodiscard]] bool canSave() const;
    [[nodiscard]] bool isBusy() const { return busy_; }

    [[nodiscard]] QVariantList history() const;
    [[nodiscard]] QString growth() const;
    [[nodiscard]] QString spanText() const;
    [[nodiscard]] QVariantList points() const;
    [[nodiscard]] QVariantList pointLabels() const;
    [[nodiscard]] QString pointsText() const;
    [[nodiscard]] int nowDay() const;

public slots:
    /// To a part of the picture; stays within it.
    void moveEnd(burrow::MeasureModel::End end, const QPointF& part);
    /// By tenths of a millimetre to the right and down, as it is shown.
    void nudge(burrow::MeasureModel::End end, int right, int down);
    /// The length grows by so many tenths of a millimetre, at that end.
    void stretch(burrow::MeasureModel::End end, int tenths);
    /// Writes the length down as an entry about the moult.
    void save();

signals:
    void givenChanged();
    void changed();
    void photoChanged();
    void endsChanged();
    void screenScaleChanged();
    void typedChanged();
    void busyChanged();
    void saved();

private:
    /// With the keeper's own numbers.
    [[nodiscard]] const measure::MeasureRules& rules() const;
    /// What the book has about the moult, facts newest first.
    struct Record {
        std::optional<Fact> moult;
        std::vector<Fact> facts;  ///< of its animal
        std::optional<Sizes> sizes;
        std::optional<EntryId> photo;
    };

    void read();
    static Result<Record> recordOf(Book& book, const EntryId& id, const Profiles& profiles);
    void take(const Record& record);
    void look();
    void show(Result<MeasuredPhoto> photo);
    void measure();
    void forgetEnds();
    [[nodiscard]] bool areEndsSet() const { return isSet_[From] && isSet_[To]; }
    [[nodiscard]] const LengthKind& chosen() const;
    [[nodiscard]] std::string chosenSegment() const;
    [[nodiscard]] measure::PrintScale print() const;
    [[nodiscard]] std::vector<growth::Measured> skins() const;
    [[nodiscard]] SizeLines sizes() const;
    [[nodiscard]] std::string kindWord() const;
    [[nodiscard]] bool readTyped(FactBody& body);
    void putMeasured(FactBody& body) const;
    void write(FactBody body);

    QPointer<Desk> desk_;
    QPointer<Darkroom> darkroom_;
    QString moult_;
    bool isRead_ = false;
    Record record_;
    ResidentPtr resident_;
    std::vector<Fact> photos_;  ///< of the moult, the first one first
    int photo_ = 0;
    int asked_ = 0;     ///< how often a photo was looked at
    int answered_ = 0;  ///< and the last that was answered
    std::optional<MeasuredPhoto> measured_;
    QString refusal_;
    std::array<QPointF, 2> ends_{QPointF(0.5, 0.35), QPointF(0.5, 0.65)};
    std::array<bool, 2> isSet_{};  ///< by the keeper: nobody measures from where they stand first
    std::array<double, 2> deviations_{};  ///< of each end as it was set, in pixels of the photo
    qreal screenScale_ = 1;
    int kind_ = 0;
    int leg_ = 0;
    int segment_ = 0;
    int height_ = 0;
    std::optional<measure::Length> length_;
    QString endsTrouble_;
    QString typed_;
    QString typedError_;
    bool busy_ = false;
    Errands looking_;  ///< last, so that what is under way ends first
};

}  // namespace burrow
