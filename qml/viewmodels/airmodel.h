// The places whose air is watched: the last reading of each, and what is wrong there. A reading is
// written down here, too.
#pragma once

#include "room/air_report.h"
#include "viewmodels/rows.h"
#include "viewmodels/wording.h"

namespace burrow {

struct AirRow {
    QString key;    ///< the place as it is written
    QString name;   ///< "Shelf A"
    QString value;  ///< "24.5 °C, 65 % humidity"
    QString when;
    QString alarm;  ///< the gravest that still lasts, or the newest of the last day

    friend bool operator==(const AirRow&, const AirRow&) = default;
};

class AirModel : public burrow::RowsModel {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(burrow::Desk* desk READ desk WRITE setDesk NOTIFY deskChanged REQUIRED FINAL)
    Q_PROPERTY(bool ready READ isReady NOTIFY changed FINAL)
    Q_PROPERTY(int count READ count NOTIFY changed FINAL)
    /// "3 places, one of them too cold"
    Q_PROPERTY(QString summary READ summary NOTIFY changed FINAL)
    /// Places to write a reading for: [{name, place}]. Those that have readings come first.
    Q_PROPERTY(QVariantList choices READ choices NOTIFY changed FINAL)
    /// Why the reading that was typed can't be written; empty where it can.
    Q_PROPERTY(QString placeError READ placeError NOTIFY errorsChanged FINAL)
    Q_PROPERTY(QString temperatureError READ temperatureError NOTIFY errorsChanged FINAL)
    Q_PROPERTY(QString humidityError READ humidityError NOTIFY errorsChanged FINAL)

public:
    enum Role { PlaceRole = Qt::UserRole + 1, NameRole, ValueRole, WhenRole, AlarmRole };

    explicit AirModel(QObject* parent = nullptr) : RowsModel(parent) {}

    [[nodiscard]] Desk* desk() const { return desk_; }
    void setDesk(Desk* desk);
    [[nodiscard]] bool isReady() const { return isReady_; }
    [[nodiscard]] int count() const { return countOf(rows_, {}); }
    [[nodiscard]] QString summary() const;
    [[nodiscard]] QVariantList choices() const { return choices_; }
    [[nodiscard]] QString placeError() const { return placeError_; }
    [[nodiscard]] QString temperatureError() const { return temperatureError_; }
    [[nodiscard]] QString humidityError() const { return humidityError_; }
    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override {
        return countOf(rows_, parent);
    }
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QHash<int, QByteArray> roleNames() const override;

public slots:
    /// Writes a reading of now down, or says what of it can't be read.
    void write(const QString& place, const QString& temperature, const QString& humidity);
    void clearErrors();

signals:
    void deskChanged();
    void changed();
    void errorsChanged();
    /// The reading is on the device.
    void kept();

private:
    void read();
    void show(const std::vector<AirReport>& reports);
    [[nodiscard]] QVariantList choicesFor(const std::vector<AirReport>& reports) const;

    QPointer<Desk> desk_;
    std::vector<AirRow> rows_;
    QVariantList choices_;
    bool isReady_ = false;
    QString placeError_;
    QString temperatureError_;
    QString humidityError_;
};

}  // namespace burrow
