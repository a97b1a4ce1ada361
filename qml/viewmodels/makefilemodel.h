// Making a file of the book, or of a part of it: for another phone, for somebody else, or to keep.
#pragma once

#include <QUrl>
#include <QVariantList>

#include "ports/darkroom.h"
#include "ports/sharer.h"
#include "viewmodels/filework.h"

namespace burrow {

class MakeFileModel : public QObject {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(burrow::Desk* desk READ desk WRITE setDesk NOTIFY deskChanged REQUIRED FINAL)
    Q_PROPERTY(burrow::Darkroom* darkroom MEMBER darkroom_ NOTIFY deskChanged REQUIRED FINAL)
    Q_PROPERTY(burrow::Sharer* sharer MEMBER sharer_ NOTIFY deskChanged REQUIRED FINAL)
    /// Only these; empty for the whole book.
    Q_PROPERTY(QList<QString> subjects READ subjects WRITE setSubjects NOTIFY changed FINAL)
    Q_PROPERTY(Step step READ step NOTIFY changed FINAL)
    /// [{word, sub}]: everything, or what one of the known devices lacks.
    Q_PROPERTY(QVariantList extents READ extents NOTIFY changed FINAL)
    Q_PROPERTY(int extent READ extent WRITE setExtent NOTIFY changed FINAL)
    Q_PROPERTY(Photos photos READ photos WRITE setPhotos NOTIFY changed FINAL)
    Q_PROPERTY(bool confidential READ isConfidential WRITE setConfidential NOTIFY changed FINAL)
    Q_PROPERTY(QString passphrase READ passphrase WRITE setPassphrase NOTIFY changed FINAL)
    Q_PROPERTY(burrow::FileWork* work READ work CONSTANT FINAL)
    /// How many animals go in, as the label says it: "240".
    Q_PROPERTY(QString animals READ animals NOTIFY changed FINAL)
    /// "Kiln Row, 17 May, 18:06"
    Q_PROPERTY(QString madeTitle READ madeTitle NOTIFY changed FINAL)
    /// "2,047 entries and 312 photos, small"
    Q_PROPERTY(QString madeText READ madeText NOTIFY changed FINAL)
    /// "2.1 MB"
    Q_PROPERTY(QString madeSize READ madeSize NOTIFY changed FINAL)
    /// Photos that could not go in, in words; empty for none.
    Q_PROPERTY(QString missingText READ missingText NOTIFY changed FINAL)
    Q_PROPERTY(QString savedText READ savedText NOTIFY changed FINAL)
    Q_PROPERTY(QString trouble READ trouble NOTIFY changed FINAL)
    Q_PROPERTY(bool canShare READ canShare NOTIFY deskChanged FINAL)

public:
    enum class Step { Choosing, Making, Made };
    Q_ENUM(Step)
    enum class Photos { Out, Small, Full };
    Q_ENUM(Photos)

    explicit MakeFileModel(QObject* parent = nullptr) : QObject(parent), work_(this) {}

    [[nodiscard]] Desk* desk() const { return desk_; }
    void setDesk(Desk* desk);
    [[nodiscard]] QStringList subjects() const { return subjects_; }
    void setSubjects(const QStringList& subjects);
    [[nodiscard]] Step step() const { return step_; }
    [[nodiscard]] QVariantList extents() const;
    [[nodiscard]] int extent() const { return extent_; }
    void setExtent(int extent);
    [[nodiscard]] Photos photos() const { return photos_; }
    void setPhotos(Photos photos);
    [[nodiscard]] bool isConfidential() const { return confidential_; }
    void setConfidential(bool confidential);
    [[nodiscard]] QString passphrase() const { return passphrase_; }
    void setPassphrase(const QString& passphrase);
    [[nodiscard]] FileWork* work() { return &work_; }
    [[nodiscard]] QString animals() const;
    [[nodiscard]] QString madeTitle() const;
    [[nodiscard]] QString madeText() const;
    [[nodiscard]] QString madeSize() const;
    [[nodiscard]] QString missingText() const;
    [[nodiscard]] QString savedText() const { return savedText_; }
    [[nodiscard]] QString trouble() const { return trouble_; }
    [[nodiscard]] bool canShare() const { return sharer_ && sharer_->canShare(); }

public slots:
    /// Writes the file and reads it back.
    void make();
    /// Hands the made file to another app.
    void handOver();
    /// Keeps the made file in a folder, beside what is there.
    void keepIn(const QUrl& folder);

signals:
    void deskChanged();
    void changed();

private:
    /// What was made.
    struct Made {
        std::filesystem::path path;
        exchange::Manifest manifest;
        std::uint64_t bytes = 0;
    };

    void chooseAnew();
    [[nodiscard]] exchange::ExportOptions options();
    void show(Result<Made> made);
    void tell(const Done& done);

    QPointer<Desk> desk_;
    QPointer<Darkroom> darkroom_;
    QPointer<Sharer> sharer_;
    FileWork work_;
    QStringList subjects_;
    std::vector<exchange::KnownPeer> peers_;
    Step step_ = Step::Choosing;
    int extent_ = 0;
    Photos photos_ = Photos::Small;
    bool confidential_ = false;
    QString passphrase_;
    std::optional<Made> made_;
    QString savedText_;
    QString trouble_;
};

}  // namespace burrow
