// A round along the shelves: which tub is next, what is to be done there, and one tap for it.
#pragma once

#include <set>

#include "viewmodels/deeds.h"
#include "viewmodels/wording.h"

namespace burrow {

class RoundModel : public QObject {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(burrow::Desk* desk READ desk WRITE setDesk NOTIFY deskChanged REQUIRED FINAL)

    // Where the round stands.
    Q_PROPERTY(bool active READ isActive NOTIFY changed FINAL)
    Q_PROPERTY(QString title READ title NOTIFY changed FINAL)
    Q_PROPERTY(QString progress READ progress NOTIFY changed FINAL)
    Q_PROPERTY(QStringList holes READ holes NOTIFY changed FINAL)

    // Who is at hand.
    Q_PROPERTY(QString subject READ subject NOTIFY changed FINAL)
    Q_PROPERTY(QString tag READ tag NOTIFY changed FINAL)
    Q_PROPERTY(QString binomial READ binomial NOTIFY changed FINAL)
    Q_PROPERTY(QString about READ about NOTIFY changed FINAL)
    Q_PROPERTY(QList<QString> cautions READ cautions NOTIFY changed FINAL)
    Q_PROPERTY(QString punch READ punch NOTIFY changed FINAL)
    Q_PROPERTY(QVariantList marks READ marks NOTIFY changed FINAL)
    Q_PROPERTY(QVariantList feedings READ feedings NOTIFY changed FINAL)
    Q_PROPERTY(int nowDay READ nowDay NOTIFY changed FINAL)
    Q_PROPERTY(QString lineText READ lineText NOTIFY changed FINAL)

    // What is to be done.
    Q_PROPERTY(Task task READ task NOTIFY changed FINAL)
    Q_PROPERTY(QString verb READ verb NOTIFY changed FINAL)
    Q_PROPERTY(QString reason READ reason NOTIFY changed FINAL)
    Q_PROPERTY(QString advice READ advice NOTIFY changed FINAL)
    Q_PROPERTY(QString mainText READ mainText NOTIFY changed FINAL)
    /// [{action, text, glyph}], four of them.
    Q_PROPERTY(QVariantList outcomes READ outcomes NOTIFY changed FINAL)
    /// [{text, on}]: what is due besides, done with the same tap.
    Q_PROPERTY(QVariantList extras READ extras NOTIFY changed FINAL)
    /// What the main tap writes besides: "watered too"; empty for nothing.
    Q_PROPERTY(QString alsoText READ alsoText NOTIFY changed FINAL)

    // The prey.
    Q_PROPERTY(QString amount READ amount NOTIFY changed FINAL)
    Q_PROPERTY(QString amountNote READ amountNote NOTIFY changed FINAL)
    Q_PROPERTY(qreal preyLength READ preyLength NOTIFY changed FINAL)
    Q_PROPERTY(qreal carapace READ carapace NOTIFY changed FINAL)
    Q_PROPERTY(QString preyText READ preyText NOTIFY changed FINAL)
    Q_PROPERTY(QString carapaceText READ carapaceText NOTIFY changed FINAL)
    Q_PROPERTY(bool canLess READ canLess NOTIFY changed FINAL)
    Q_PROPERTY(bool canMore READ canMore NOTIFY changed FINAL)
    /// The feeders to choose from, [{word, sub}]; `preyKind` is the chosen one's place.
    Q_PROPERTY(QVariantList preyKinds READ preyKinds NOTIFY changed FINAL)
    Q_PROPERTY(int preyKind READ preyKind NOTIFY changed FINAL)
    Q_PROPERTY(int preyCount READ preyCount NOTIFY changed FINAL)

public:
    enum class Task { Nothing, Feed, Hold, Leftovers, Look, Care, Waiting, Finished };
    Q_ENUM(Task)

    explicit RoundModel(QObject* parent = nullptr) : QObject(parent) {}

    [[nodiscard]] Desk* desk() const { return desk_; }
    void setDesk(Desk* desk);

    [[nodiscard]] bool isActive() const { return !tour_.empty(); }
    [[nodiscard]] QString title() const;
    [[nodiscard]] QString progress() const;
    [[nodiscard]] QStringList holes() const;

    [[nodiscard]] QString subject() const;
    [[nodiscard]] QString tag() const;
    [[nodiscard]] QString binomial() const;
    [[nodiscard]] QString about() const;
    [[nodiscard]] QStringList cautions() const;
    [[nodiscard]] QString punch() const;
    [[nodiscard]] QVariantList marks() const { return line_.marks; }
    [[nodiscard]] QVariantList feedings() const { return line_.feedings; }
    [[nodiscard]] int nowDay() const { return line_.nowDay; }
    [[nodiscard]] QString lineText() const { return line_.description; }

    [[nodiscard]] Task task() const { return task_; }
    [[nodiscard]] QString verb() const;
    [[nodiscard]] QString reason() const;
    [[nodiscard]] QString advice() const;
    [[nodiscard]] QString mainText() const;
    [[nodiscard]] QVariantList outcomes() const;
    [[nodiscard]] QVariantList extras() const;
    [[nodiscard]] QString alsoText() const;

    [[nodiscard]] QString amount() const;
    [[nodiscard]] QString amountNote() const;
    [[nodiscard]] qreal preyLength() const { return prey_.length.value; }
    [[nodiscard]] qreal carapace() const;
    [[nodiscard]] QString preyText() const;
    [[nodiscard]] QString carapaceText() const;
    [[nodiscard]] bool canLess() const { return prey_.length.value > shortestPrey; }
    [[nodiscard]] bool canMore() const { return prey_.length.value < longestPrey; }
    [[nodiscard]] QVariantList preyKinds() const;
    [[nodiscard]] int preyKind() const;
    [[nodiscard]] int preyCount() const { return prey_.count; }

public slots:
    /// Begins at the first open tub of a shelf, by its heading; of the whole room for an empty one.
    void start(const QString& shelf);
    /// Goes to a tub: by tapping its row, or by its tag. Follows it to another shelf.
    void goTo(const QString& subject);
    /// Goes to the next open tub, or finishes.
    void next();
    void finish();

    void doMain();
    /// One of the actions in `outcomes`.
    void doOutcome(const QString& action);
    void writeNote(const QString& text);
    void toggleExtra(int place);

    void less();
    void more();
    void chooseKind(int place);
    void chooseCount(int count);

signals:
    void deskChanged();
    void changed();
    /// Something was done here and the round may go on.
    void advanced();
    /// A page is needed for what was chosen: a moult to photograph, a note to write, anything else.
    void moultWanted(const QString& subject);
    void noteWanted();
    void otherWanted(const QString& subject);

private:
    static constexpr double shortestPrey = 1;
    static constexpr double longestPrey = 60;

    struct Extra {
        Care care;
        bool isOn = true;
    };

    void read();
    void settleTask();
    void setTour(const Place& shelf, bool wholeRoom);
    [[nodiscard]] const Answer* mainAnswer() const;
    [[nodiscard]] bool isOpen(const SubjectId& id) const;
    void logAll(std::vector<FactDraft> facts);
    [[nodiscard]] FactDraft fact(FactKind kind) const;
    void stepPrey(int direction);
    [[nodiscard]] std::vector<std::string> kinds() const;
    void goOn();

    QPointer<Desk> desk_;
    std::vector<SubjectId> tour_;
    QString shelfTitle_;
    ResidentPtr resident_;
    Task task_ = Task::Nothing;
    MoultLineData line_;
    PreySuggestion prey_;
    bool preyChanged_ = false;
    bool feedAnyway_ = false;
    std::vector<Extra> extras_;
};

}  // namespace burrow
