// Readings of the air: typed, taken in from a logger's file, shown by place, and known to the plan.
#include <QAbstractItemModelTester>
#include <QSignalSpy>
#include <fstream>

#include "viewmodels/airfilemodel.h"
#include "viewmodels/airmodel.h"
#include "viewmodels/airplacemodel.h"
#include "viewmodels/keeping.h"

using namespace burrow;
using namespace burrow::test;

namespace {

QList<QUrl> file(DeskFixture& at, const std::string& text) {
    const auto path = at.folder.path() / "logger.csv";
    std::ofstream(path, std::ios::binary) << text;
    return {QUrl::fromLocalFile(QString::fromStdString(path.string()))};
}

constexpr const char* threeHours =
    "Time;Temperature °C;Humidity %\n"
    "2026-05-08 06:00;24,0;60\n"
    "2026-05-08 07:00;25,0;62\n"
    "2026-05-08 08:00;warm;63\n"
    "2026-05-08 09:00;27,0;64\n";

void type(DeskFixture& at, AirModel& air, const char* place, const char* temperature,
          const char* humidity) {
    air.write(place, temperature, humidity);
    at.settle();
    at.settle();
}

}  // namespace

class TestAirModels : public QObject {
    Q_OBJECT

private slots:
    void modelsCanBeShownBeforeThereIsADesk() {
        AirModel air;
        AirPlaceModel place;
        AirFileModel logger;
        QCOMPARE(air.rowCount(), 0);
        QVERIFY(air.summary().isEmpty() && air.choices().isEmpty());
        QVERIFY(place.title().isEmpty() && place.now().isEmpty() && place.labels().isEmpty());
        QVERIFY(place.warmthWords().isEmpty() && place.spans().isEmpty());
        QVERIFY(logger.contents().isEmpty() && logger.placeName().isEmpty() && !logger.hasAny());
        air.write("A", "20", "");
        logger.takeIn();
    }

    void aTypedReadingIsWrittenAndTakenBack() {
        DeskFixture at;
        at.openRoom();
        AirModel air;
        const QAbstractItemModelTester tester(&air);
        air.setDesk(&at.desk);
        at.settle();
        QCOMPARE(air.rowCount(), 0);
        QCOMPARE(column(air.choices(), "name").first(), QString("Shelf A"));
        QSignalSpy kept(&air, &AirModel::kept);
        type(at, air, "A", "24,5", "65 %");
        QCOMPARE(kept.count(), 1);
        QCOMPARE(at.desk.doneTag(), QString("Shelf A"));
        QCOMPARE(at.desk.doneText(), QString("wrote down 24.5 °C, 65 % humidity"));
        QCOMPARE(column(air, AirModel::NameRole), QStringList{"Shelf A"});
        QCOMPARE(column(air, AirModel::ValueRole), QStringList{"24.5 °C, 65 % humidity"});
        QCOMPARE(column(air, AirModel::WhenRole), QStringList{"8 May, 19:14"});
        QCOMPARE(resident(at, at.hamorii)->warmth->mean.value, 24.5);
        QVERIFY(!resident(at, at.group)->warmth);  // on another shelf
        at.desk.undo();
        at.settle();
        at.settle();
        QCOMPARE(air.rowCount(), 0);
        QVERIFY(!resident(at, at.hamorii)->warmth);
    }

    void slipsOfTheFingerAreRefused() {
        DeskFixture at;
        at.openRoom();
        AirModel air;
        air.setDesk(&at.desk);
        type(at, air, " ", "2450", "110");
        QVERIFY(air.placeError().startsWith("No place was named"));
        QVERIFY(air.temperatureError().startsWith("\"2450\" is no temperature"));
        QVERIFY(air.humidityError().startsWith("\"110\" is no relative humidity"));
        type(at, air, "A", "", " ");
        QVERIFY(air.temperatureError().startsWith("Neither a temperature nor a humidity"));
        QCOMPARE(air.rowCount(), 0);
    }

    void aHeatWaveIsSeenByThePlanAndTheList() {
        DeskFixture at;
        at.openRoom();
        AirModel air;
        const QAbstractItemModelTester tester(&air);
        air.setDesk(&at.desk);
        type(at, air, "A", "36", "");
        QVERIFY(column(air, AirModel::AlarmRole).first().startsWith("Up to 36 °C"));
        QCOMPARE(air.summary(), QString("One place, something is wrong in one"));
        // Water goes faster in a heat wave.
        QCOMPARE(resident(at, at.hamorii)->plan.of(Care::water).because, Because::heat);
    }

    void aLoggersFileIsLookedAtAndTakenIn() {
        DeskFixture at;
        at.openRoom();
        AirFileModel logger;
        const QAbstractItemModelTester tester(&logger);
        logger.setDesk(&at.desk);
        logger.setPlace("A");
        logger.choose(file(at, threeHours));
        at.settle();
        QCOMPARE(logger.trouble(), QString());
        QCOMPARE(logger.contents().first(), QString("3 readings, 8 May to 8 May"));
        QCOMPARE(logger.badText(), QString("One row can't be read and stay out."));
        QCOMPARE(column(logger, AirFileModel::WhereRole), QStringList{"Line 4"});
        QCOMPARE(column(logger, AirFileModel::WhyRole),
                 QStringList{"\"warm\" is no temperature of a room"});
        QVERIFY(at.desk.doneText().isEmpty());
        QSignalSpy taken(&logger, &AirFileModel::taken);
        logger.takeIn();
        at.settle();
        QCOMPARE(taken.count(), 1);
        QCOMPARE(at.desk.doneText(), QString("took in 3 readings"));
        // From 24 to 25 in an hour, from 25 to 27 in two: 24.5 and twice 26.
        QVERIFY(std::abs(resident(at, at.hamorii)->warmth->mean.value - 76.5 / 3) < 1e-9);
        logger.choose(file(at, threeHours));
        at.settle();
        QVERIFY(logger.contents().contains("All of them are in the book already."));
        QVERIFY(!logger.hasAny());
    }

    void datesThatMayBeEitherAreAskedAbout() {
        DeskFixture at;
        at.openRoom();
        AirFileModel logger;
        logger.setDesk(&at.desk);
        logger.setPlace("A");
        logger.choose(file(at, "Time,Temp\n03/04/2026 06:00,24\n"));
        at.settle();
        QVERIFY(logger.asksDates());
        QVERIFY(!logger.trouble().isEmpty());
        logger.setDates(1);
        at.settle();
        QCOMPARE(logger.trouble(), QString());
        QCOMPARE(logger.contents().first(), QString("One reading, 4 March to 4 March"));
    }

    void whatIsNoTableIsRefused() {
        DeskFixture at;
        at.openRoom();
        AirFileModel logger;
        logger.setDesk(&at.desk);
        logger.setPlace("A");
        logger.choose(file(at, std::string("\x00\x01\x02", 3)));
        at.settle();
        QVERIFY2(logger.trouble().startsWith("This file is no table"),
                 qPrintable(logger.trouble()));
        logger.choose({QUrl("https://example.org/logger.csv")});
        QVERIFY(!logger.trouble().isEmpty());
    }

    void aPlaceShowsWhatFollowsFromItsReadings() {
        DeskFixture at;
        at.openRoom();
        AirModel air;
        air.setDesk(&at.desk);
        type(at, air, "A", "25", "60");
        AirPlaceModel place;
        const QAbstractItemModelTester tester(&place);
        place.setDesk(&at.desk);
        place.setPlace("A");
        at.settle();
        QCOMPARE(place.title(), QString("Shelf A"));
        const auto now = place.now();
        // WMO-No. 8, Annex 4.B: e_w(25) = 31.60 hPa; 60 % of it saturates at 16.7 degrees.
        QCOMPARE(lineNamed(now, "Dew point")["value"].toString(), QString("16.7 °C"));
        QCOMPARE(lineNamed(now, "Vapour pressure deficit")["value"].toString(),
                 QString("12.6 hPa"));
        QCOMPARE(lineNamed(now, "Water in the air")["value"].toString(), QString("13.8 g/m³"));
        QVERIFY(place.hasWanted());
        QVERIFY(place.wanted().contains("suit all 2 that stand here"));
        QVERIFY(place.wanted().contains("% humidity around the tubs suits them"));
        QCOMPARE(place.rowCount(), 1);
        QCOMPARE(column(place, AirPlaceModel::ValueRole), QStringList{"25 to 25 °C, 60 to 60 %"});
        QCOMPARE(place.warmth().size(), 1);
        QVERIFY(place.warmth().first().toMap()["gap"].toBool());
        QCOMPARE(place.labels().size(), 14);
        QVERIFY(place.warmthWords().startsWith("From 8 May to 8 May: between 25 and 25 °C"));
        place.setSpan(0);
        at.settle();
        QCOMPARE(place.labels().size(), 3);
        QCOMPARE(place.alarms().size(), 0);
    }
};

QTEST_GUILESS_MAIN(TestAirModels)
#include "tst_air_models.moc"
