// Taking everything along: the whole book as files that other programs read, in a folder of their own.
#pragma once

#include <QUrl>
#include <atomic>

#include "exchange/leave.h"
#include "viewmodels/desk.h"

namespace burrow {

class LeaveModel : public QObject {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(burrow::Desk* desk READ desk WRITE setDesk NOTIFY changed REQUIRED FINAL)
    /// "120 animals and all that was written down of them ..."
    Q_PROPERTY(QString contents READ contents NOTIFY changed FINAL)
    Q_PROPERTY(bool tables READ hasTables WRITE setTables NOTIFY changed FINAL)
    Q_PROPERTY(bool document READ hasDocument WRITE setDocument NOTIFY changed FINAL)
    Q_PROPERTY(bool photos READ hasPhotos WRITE setPhotos NOTIFY changed FINAL)
    Q_PROPERTY(bool working READ isWorking NOTIFY changed FINAL)
    /// "15,000 events written"
    Q_PROPERTY(QString progress READ progress NOTIFY progressChanged FINAL)
    Q_PROPERTY(QString savedText READ savedText NOTIFY changed FINAL)
    /// What could not go along, in words; empty where all did.
    Q_PROPERTY(QString missing READ missing NOTIFY changed FINAL)
    Q_PROPERTY(QString trouble READ trouble NOTIFY changed FINAL)

public:
    explicit LeaveModel(QObject* parent = nullptr) : QObject(parent) {}
    ~LeaveModel() override { stop(); }

    [[nodiscard]] Desk* desk() const { return desk_; }
    void setDesk(Desk* desk);
    [[nodiscard]] QString contents() const;
    [[nodiscard]] bool hasTables() const { return options_.csv; }
    void setTables(bool wanted);
    [[nodiscard]] bool hasDocument() const { return options_.json; }
    void setDocument(bool wanted);
    [[nodiscard]] bool hasPhotos() const { return options_.photos; }
    void setPhotos(bool wanted);
    [[nodiscard]] bool isWorking() const { return working_; }
    [[nodiscard]] QString progress() const;
    [[nodiscard]] QString savedText() const { return savedText_; }
    [[nodiscard]] QString missing() const { return missing_; }
    [[nodiscard]] QString trouble() const { return trouble_; }

public slots:
    /// Into a new folder, "Kiln-Row-2026-05-08", inside the one that is given.
    void saveTo(const QUrl& folder);
    /// Nothing is kept of what was under way.
    void stop();

signals:
    void changed();
    void progressChanged();

private:
    void set(bool& option, bool wanted);
    void end(const Result<exchange::LeaveReport>& report, const std::filesystem::path& folder);

    QPointer<Desk> desk_;
    exchange::LeaveOptions options_;
    bool working_ = false;
    std::int64_t written_ = 0;
    std::shared_ptr<std::atomic_bool> goOn_;  ///< of what is under way in the book's thread
    QString savedText_;
    QString missing_;
    QString trouble_;
};

}  // namespace burrow
