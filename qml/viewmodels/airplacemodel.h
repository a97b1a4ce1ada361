// The air of one place: what it is now, how it went, what was wrong, day by day.
#pragma once

#include "room/air_report.h"
#include "viewmodels/rows.h"
#include "viewmodels/wording.h"

namespace burrow {

struct AirDayRow {
    QString key;  ///< the day
    QString day;  ///< "Friday", "2 May"
    QString value;
    QString sub;

    friend bool operator==(const AirDayRow&, const AirDayRow&) = default;
};

/// The days of the place, the newest first.
class AirPlaceModel : public burrow::RowsModel {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(burrow::Desk* desk READ desk WRITE setDesk NOTIFY deskChanged REQUIRED FINAL)
    /// As it is written: "Warm room", "A / 2".
    Q_PROPERTY(QString place READ place WRITE setPlace NOTIFY placeChanged REQUIRED FINAL)
    Q_PROPERTY(QString title READ title NOTIFY changed FINAL)
    Q_PROPERTY(bool ready READ isReady NOTIFY changed FINAL)
    Q_PROPERTY(int count READ count NOTIFY changed FINAL)
    /// The last reading and what follows from it: [{name, value, sub}].
    Q_PROPERTY(QVariantList now READ now NOTIFY changed FINAL)
    /// "18 to 26 °C suit all 12 that stand here"
    Q_PROPERTY(QString wanted READ wanted NOTIFY changed FINAL)
    /// The newest first, at most five.
    Q_PROPERTY(QStringList alarms READ alarms NOTIFY changed FINAL)

    // How far back is shown: [{word}].
    Q_PROPERTY(QVariantList spans READ spans NOTIFY changed FINAL)
    Q_PROPERTY(int span READ span WRITE setSpan NOTIFY changed FINAL)

    // What the plots draw.
    Q_PROPERTY(QVariantList warmth READ warmth NOTIFY changed FINAL)
    Q_PROPERTY(QVariantList humidity READ humidity NOTIFY changed FINAL)
    Q_PROPERTY(QVariantList labels READ labels NOTIFY changed FINAL)
    Q_PROPERTY(bool hasWanted READ hasWanted NOTIFY changed FINAL)
    Q_PROPERTY(double wantedLow READ wantedLow NOTIFY changed FINAL)
    Q_PROPERTY(double wantedHigh READ wantedHigh NOTIFY changed FINAL)
    Q_PROPERTY(QString warmthWords READ warmthWords NOTIFY changed FINAL)
    Q_PROPERTY(QString humidityWords READ humidityWords NOTIFY changed FINAL)

public:
    enum Role { DayRole = Qt::UserRole + 1, ValueRole, SubRole };
    /// The plot is cut into so many stretches.
    static constexpr int stretches = 160;

    explicit AirPlaceModel(QObject* parent = nullptr) : RowsModel(parent) {}

    [[nodiscard]] Desk* desk() const { return desk_; }
    void setDesk(Desk* desk);
    [[nodiscard]] QString place() const { return place_; }
    void setPlace(const QString& place);
    [[nodiscard]] QString title() const;
    [[nodiscard]] bool isReady() const { return isReady_; }
    [[nodiscard]] int count() const { return countOf(rows_, {}); }
    [[nodiscard]] QVariantList now() const;
    [[nodiscard]] QString wanted() const;
    [[nodiscard]] QStringList alarms() const;
    [[nodiscard]] QVariantList spans() const;
    [[nodiscard]] int span() const { return span_; }
    void setSpan(int span);
    [[nodiscard]] QVariantList warmth() const { return warmth_; }
    [[nodiscard]] QVariantList humidity() const { return humidity_; }
    [[nodiscard]] QVariantList labels() const;
    [[nodiscard]] bool hasWanted() const { return report_.wanted.has_value(); }
    [[nodiscard]] double wantedLow() const;
    [[nodiscard]] double wantedHigh() const;
    [[nodiscard]] QString warmthWords() const;
    [[nodiscard]] QString humidityWords() const;
    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override {
        return countOf(rows_, parent);
    }
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QHash<int, QByteArray> roleNames() const override;

signals:
    void deskChanged();
    void placeChanged();
    void changed();

private:
    void read();
    void show(AirReport report);
    [[nodiscard]] Range<Instant> shown() const;
    [[nodiscard]] QVariantList plotOf(AirValue which) const;
    [[nodiscard]] QString wordsOf(AirValue which) const;
    [[nodiscard]] AirDayRow rowOf(const AirDay& day) const;

    QPointer<Desk> desk_;
    QString place_;
    AirReport report_;
    std::vector<AirDayRow> rows_;
    QVariantList warmth_;
    QVariantList humidity_;
    int span_ = 1;
    bool isReady_ = false;
};

}  // namespace burrow
