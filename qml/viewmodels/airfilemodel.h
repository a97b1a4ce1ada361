// A temperature logger's file: chosen, looked at, and only then taken in.
#pragma once

#include <QUrl>

#include "room/air_file.h"
#include "viewmodels/rows.h"
#include "viewmodels/wording.h"

namespace burrow {

struct BadAirRow {
    int key = 0;  ///< its line
    QString where;
    QString why;

    friend bool operator==(const BadAirRow&, const BadAirRow&) = default;
};

/// The rows of the file that can't be read, at most `most`.
class AirFileModel : public burrow::RowsModel {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(burrow::Desk* desk READ desk WRITE setDesk NOTIFY deskChanged REQUIRED FINAL)
    /// Where the logger lies, as it is written.
    Q_PROPERTY(QString place READ place WRITE setPlace NOTIFY placeChanged FINAL)
    Q_PROPERTY(QString placeName READ placeName NOTIFY placeChanged FINAL)
    Q_PROPERTY(QString fileName READ fileName NOTIFY changed FINAL)
    Q_PROPERTY(bool busy READ isBusy NOTIFY changed FINAL)
    /// There is something to take in.
    Q_PROPERTY(bool any READ hasAny NOTIFY changed FINAL)
    /// Nothing can be read before it is said whether day or month comes first: choose dates 0 or 1.
    Q_PROPERTY(bool asksDates READ asksDates NOTIFY changed FINAL)
    Q_PROPERTY(int dates READ dates WRITE setDates NOTIFY changed FINAL)
    /// What is in it, in sentences.
    Q_PROPERTY(QStringList contents READ contents NOTIFY changed FINAL)
    Q_PROPERTY(QString badText READ badText NOTIFY changed FINAL)
    Q_PROPERTY(QString moreBad READ moreBad NOTIFY changed FINAL)
    Q_PROPERTY(QString trouble READ trouble NOTIFY changed FINAL)

public:
    enum Role { WhereRole = Qt::UserRole + 1, WhyRole };
    static constexpr std::size_t most = 20;

    explicit AirFileModel(QObject* parent = nullptr) : RowsModel(parent) {}

    [[nodiscard]] Desk* desk() const { return desk_; }
    void setDesk(Desk* desk);
    [[nodiscard]] QString place() const { return place_; }
    void setPlace(const QString& place);
    [[nodiscard]] QString placeName() const;
    [[nodiscard]] QString fileName() const { return fileName_; }
    [[nodiscard]] bool isBusy() const { return isBusy_; }
    [[nodiscard]] bool hasAny() const { return look_.added > 0; }
    [[nodiscard]] bool asksDates() const { return asksDates_; }
    [[nodiscard]] int dates() const { return dates_; }
    void setDates(int dates);
    [[nodiscard]] QStringList contents() const;
    [[nodiscard]] QString badText() const;
    [[nodiscard]] QString moreBad() const;
    [[nodiscard]] QString trouble() const { return trouble_; }
    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override {
        return countOf(rows_, parent);
    }
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QHash<int, QByteArray> roleNames() const override;

public slots:
    /// Looks at the first of the files; nothing is written.
    void choose(const QList<QUrl>& files);
    /// Writes what was looked at.
    void takeIn();

signals:
    void deskChanged();
    void placeChanged();
    void changed();
    /// It is on the device.
    void taken();

private:
    /// What a look at the file gave.
    struct Look {
        std::shared_ptr<const AirFile> file;
        int added = 0;
        int known = 0;
    };

    void look();
    void show(Result<Look> looked);

    QPointer<Desk> desk_;
    QString place_;
    std::filesystem::path path_;
    QString fileName_;
    Look look_;
    std::vector<BadAirRow> rows_;
    QString trouble_;
    int dates_ = -1;
    bool asksDates_ = false;
    bool isBusy_ = false;
};

}  // namespace burrow
