// Another keeper's question: its photos, and the answer to it.
#pragma once

#include <QTemporaryDir>
#include <QUrl>

#include "exchange/opinion.h"
#include "ports/sharer.h"
#include "viewmodels/settings.h"
#include "viewmodels/wording.h"

namespace burrow {

class JudgeModel : public QObject {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(burrow::Desk* desk READ desk WRITE setDesk NOTIFY changed REQUIRED FINAL)
    Q_PROPERTY(burrow::Sharer* sharer READ sharer WRITE setSharer NOTIFY changed REQUIRED FINAL)
    /// Where the name is kept from one answer to the next.
    Q_PROPERTY(burrow::Settings* settings READ settings WRITE setSettings NOTIFY changed FINAL)
    Q_PROPERTY(bool open READ isOpen NOTIFY changed FINAL)
    /// "A moult of Grammostola pulchra, carapace 15.8 mm, with 2 photos."
    Q_PROPERTY(QString about READ about NOTIFY changed FINAL)
    Q_PROPERTY(QString asked READ asked NOTIFY changed FINAL)
    /// [{files, url, thumbnail, name}]
    Q_PROPERTY(QVariantList photos READ photos NOTIFY changed FINAL)
    /// [{drawing, name}]
    Q_PROPERTY(QVariantList drawings READ drawings NOTIFY changed FINAL)
    /// How many millimetres show the place to look at.
    Q_PROPERTY(double closeMm READ closeMm NOTIFY changed FINAL)
    /// 0 female, 1 male, 2 can't tell; -1 for none yet.
    Q_PROPERTY(int choice READ choice WRITE setChoice NOTIFY changed FINAL)
    Q_PROPERTY(QVariantList choices READ choices NOTIFY changed FINAL)
    Q_PROPERTY(int clarity READ clarity WRITE setClarity NOTIFY changed FINAL)
    Q_PROPERTY(QList<QString> clarities READ clarities NOTIFY changed FINAL)
    /// How the keeper wants to be called.
    Q_PROPERTY(QString name READ name WRITE setName NOTIFY changed FINAL)
    Q_PROPERTY(QString note READ note WRITE setNote NOTIFY changed FINAL)
    Q_PROPERTY(bool complete READ isComplete NOTIFY changed FINAL)
    /// What the answer lacks, in words; empty where nothing, or no question is open.
    Q_PROPERTY(QString missing READ missing NOTIFY changed FINAL)
    Q_PROPERTY(bool canShare READ canShare NOTIFY changed FINAL)
    Q_PROPERTY(QString doneText READ doneText NOTIFY changed FINAL)
    Q_PROPERTY(QString trouble READ trouble NOTIFY changed FINAL)

public:
    explicit JudgeModel(QObject* parent = nullptr) : QObject(parent) {}

    [[nodiscard]] Desk* desk() const { return desk_; }
    void setDesk(Desk* desk);
    [[nodiscard]] Sharer* sharer() const { return sharer_; }
    void setSharer(Sharer* sharer);
    [[nodiscard]] Settings* settings() const { return settings_; }
    void setSettings(Settings* settings);
    [[nodiscard]] bool isOpen() const { return question_.has_value(); }
    [[nodiscard]] QString about() const;
    [[nodiscard]] QString asked() const;
    [[nodiscard]] QVariantList photos() const;
    [[nodiscard]] QVariantList drawings() const;
    [[nodiscard]] double closeMm() const;
    [[nodiscard]] int choice() const { return choice_; }
    void setChoice(int choice);
    [[nodiscard]] QVariantList choices() const;
    [[nodiscard]] int clarity() const { return clarity_; }
    void setClarity(int clarity);
    [[nodiscard]] QStringList clarities() const;
    [[nodiscard]] QString name() const { return name_; }
    void setName(const QString& name);
    [[nodiscard]] QString note() const { return note_; }
    void setNote(const QString& note);
    [[nodiscard]] bool isComplete() const { return question_ && missing().isEmpty(); }
    [[nodiscard]] QString missing() const;
    [[nodiscard]] bool canShare() const { return sharer_ && sharer_->canShare(); }
    [[nodiscard]] QString doneText() const { return doneText_; }
    [[nodiscard]] QString trouble() const { return trouble_; }

public slots:
    /// Its photos stand in a folder that goes with this model.
    void read(const QUrl& file);
    void saveTo(const QUrl& folder);
    void share();

signals:
    void changed();

private:
    Result<std::filesystem::path> writeInto(const std::filesystem::path& folder);
    void tell(const QString& done);
    void tell(const Error& error);

    QPointer<Desk> desk_;
    QPointer<Sharer> sharer_;
    QPointer<Settings> settings_;
    std::unique_ptr<QTemporaryDir> folder_;
    std::string stem_;
    std::optional<exchange::OpinionQuestion> question_;
    int choice_ = -1;
    int clarity_ = -1;
    QString name_;
    QString note_;
    QString doneText_;
    QString trouble_;
};

}  // namespace burrow
