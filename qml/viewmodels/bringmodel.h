// Bringing records in from CSV files: what is in them is looked at first, and nothing is written until
// the keeper says so.
#pragma once

#include <QUrl>
#include <QVariantList>
#include <atomic>

#include "ports/darkroom.h"
#include "viewmodels/bringfiles.h"
#include "viewmodels/desk.h"

namespace burrow {

class BringModel : public QObject {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(burrow::Desk* desk READ desk WRITE setDesk NOTIFY deskChanged REQUIRED FINAL)
    /// Where photos are kept that stand beside tables of events; without one they stay where they are.
    Q_PROPERTY(burrow::Darkroom* darkroom MEMBER darkroom_ NOTIFY changed FINAL)
    Q_PROPERTY(Step step READ step NOTIFY changed FINAL)
    /// [{name, kind, mapped, open}]: mapped are those whose columns have names of their own, open those of
    /// them that something has to be asked about.
    Q_PROPERTY(QVariantList files READ files NOTIFY changed FINAL)
    /// What could not be used among the chosen files, or went wrong, in words.
    Q_PROPERTY(QString trouble READ trouble NOTIFY changed FINAL)
    /// "12 animals, 2 enclosures and 80 events"
    Q_PROPERTY(QString contents READ contents NOTIFY changed FINAL)
    /// "3 rows can't be read"; empty for none.
    Q_PROPERTY(QString badText READ badText NOTIFY changed FINAL)
    /// [{where, reason, raw}], the first of them.
    Q_PROPERTY(QVariantList badRows READ badRows NOTIFY changed FINAL)
    /// "And 40 more"; empty where all are listed.
    Q_PROPERTY(QString moreBad READ moreBad NOTIFY changed FINAL)
    Q_PROPERTY(bool hasGood READ hasGood NOTIFY changed FINAL)
    /// "15,000 rows read"
    Q_PROPERTY(QString progress READ progress NOTIFY progressChanged FINAL)
    /// Where the rows that were left out are, in words; empty where none were.
    Q_PROPERTY(QString leftOut READ leftOut NOTIFY changed FINAL)
    /// Those rows could not be put beside their file: a folder has to be chosen for them.
    Q_PROPERTY(bool needsFolder READ needsFolder NOTIFY changed FINAL)

public:
    /// `Reading` and `Writing` can be stopped. `Asking` waits for answers about a file. After `Finished`
    /// there is the way back.
    enum class Step { Choosing, Reading, Asking, Ready, Writing, Finished };
    Q_ENUM(Step)

    explicit BringModel(QObject* parent = nullptr) : QObject(parent) {}
    ~BringModel() override { stop(); }

    [[nodiscard]] Desk* desk() const { return desk_; }
    void setDesk(Desk* desk);
    [[nodiscard]] Step step() const { return step_; }
    [[nodiscard]] QVariantList files() const;
    [[nodiscard]] QString trouble() const { return trouble_; }
    [[nodiscard]] QString contents() const;
    [[nodiscard]] QString badText() const;
    [[nodiscard]] QVariantList badRows() const;
    [[nodiscard]] QString moreBad() const;
    [[nodiscard]] bool hasGood() const;
    [[nodiscard]] QString progress() const;
    [[nodiscard]] QString leftOut() const;
    [[nodiscard]] bool needsFolder() const;

    /// The file of that place; nullptr where there is none.
    [[nodiscard]] const ChosenFile* chosen(int at) const;
    /// Another reading of the columns of a file: all are looked at again.
    void setMapping(int at, exchange::Mapping mapping);

public slots:
    /// More files; all that were chosen are looked at again, since they may name each other.
    void addFiles(const QList<QUrl>& files);
    void removeFile(int at);
    /// All rows; does nothing while some are bad.
    void bringAll() { bring(false); }
    void bringGood() { bring(true); }
    void stop();
    /// For the rows that could not be put beside their file.
    void keepLeftOutIn(const QUrl& folder);
    /// Takes back all that was brought in.
    void undoAll();

signals:
    void deskChanged();
    void changed();
    void progressChanged();

private:
    /// Rows that were left out, as a file.
    struct LeftOut {
        std::filesystem::path path;
        std::string text;
        bool isPlaced = false;
    };

    void look(std::vector<std::filesystem::path> paths, ChosenFiles known);
    void show(const BringLook& look);
    void bring(bool skipBad);
    void end(const Result<ChangeSet>& done, std::vector<LeftOut> left);
    static Done placeLeftOut(LeftOut& left);
    void begin(Step step);
    [[nodiscard]] std::function<bool(std::int64_t)> watch();

    QPointer<Desk> desk_;
    QPointer<Darkroom> darkroom_;
    Step step_ = Step::Choosing;
    ChosenFiles files_;
    QString trouble_;
    exchange::BringReport report_;
    std::int64_t rows_ = 0;
    std::shared_ptr<std::atomic_bool> goOn_;  ///< of what is under way in the book's thread
    std::vector<EntryId> brought_;
    std::vector<LeftOut> leftOut_;
};

}  // namespace burrow
