// Printed mats as settings of the book, and what their bars say.
#include <QtTest>

#include "journal/roster.h"
#include "room/mats.h"
#include "support/book.h"

using namespace burrow;
using measure::MatPaper;
using test::TestBook;

namespace {

measure::PrintScale scaleOf(const RoomInfo& info, const measure::MatName& name) {
    return printScaleOf(info, name, measure::shippedRules());
}

}  // namespace

class TestMats : public QObject {
    Q_OBJECT

private slots:
    void textsReadBack() {
        const PrintedMat plain{"7Q2M", MatPaper::a4, std::nullopt};
        QCOMPARE(matText(plain), std::string("a4"));
        QVERIFY(readMat("mat.7Q2M", "a4") == plain);
        const PrintedMat measured{"7Q2M", MatPaper::a5, Millimetres{99.6}};
        QCOMPARE(matText(measured), std::string("a5 99.6 mm"));
        QVERIFY(readMat("mat.7Q2M", matText(measured)) == measured);
    }

    void oddSettingsAreNone_data() {
        QTest::addColumn<QString>("setting");
        QTest::addColumn<QString>("text");
        QTest::newRow("another") << "sitter.call"
                                 << "a5";
        QTest::newRow("no name") << "mat."
                                 << "a5";
        QTest::newRow("long name") << "mat.7Q2M7"
                                   << "a5";
        QTest::newRow("odd name") << "mat.7Q2O"
                                  << "a5";
        QTest::newRow("empty") << "mat.7Q2M"
                               << "";
        QTest::newRow("another paper") << "mat.7Q2M"
                                       << "a3";
        QTest::newRow("no number") << "mat.7Q2M"
                                   << "a5 long mm";
        QTest::newRow("too short") << "mat.7Q2M"
                                   << "a5 12 mm";
        QTest::newRow("endless") << "mat.7Q2M"
                                 << "a5 inf mm";
    }
    void oddSettingsAreNone() {
        QFETCH(QString, setting);
        QFETCH(QString, text);
        QVERIFY(!readMat(setting.toStdString(), text.toStdString()));
    }

    void barsAreReadAsPeopleWriteThem() {
        QCOMPARE(readBar("99.6").value(), Millimetres{99.6});
        QCOMPARE(readBar(" 99,6 mm ").value(), Millimetres{99.6});
        QCOMPARE(readBar("100 MM").value(), Millimetres{100});
        QCOMPARE(readBar("about ten").error().message.id, std::string("mat.unreadable"));
        QCOMPARE(readBar("").error().message.id, std::string("mat.unreadable"));
        QCOMPARE(readBar("9.96").error().message.id, std::string("measure.badBar"));
    }

    void theBookKeepsThem() {
        TestBook room;
        const auto keep = [&](const PrintedMat& mat) {
            room.book.record(SetDraft{ThingType::book, room.book.id().uuid, matFields(mat)})
                .value();
        };
        keep({"7Q2M", MatPaper::a5, std::nullopt});
        keep({"0A1B", MatPaper::a4, Millimetres{97.5}});
        auto info = roomInfo(room.book).value();
        const auto mats = matsOf(info);
        QCOMPARE(mats.size(), std::size_t{2});
        QCOMPARE(mats[0].name, std::string("0A1B"));
        QCOMPARE(mats[1].name, std::string("7Q2M"));

        // 97.5 mm instead of 100: everything came out at 97.5 percent.
        QCOMPARE(scaleOf(info, "0A1B").factor, 0.975);
        QVERIFY(scaleOf(info, "0A1B").deviation < 0.002);
        // One that was not measured may be off by percents, and so may one that the book does not know.
        QCOMPARE(scaleOf(info, "7Q2M").factor, 1.0);
        QCOMPARE(scaleOf(info, "7Q2M").deviation, measure::shippedRules().unmeasuredPrint);
        QCOMPARE(scaleOf(info, "ZZZZ").deviation, measure::shippedRules().unmeasuredPrint);

        keep({"7Q2M", MatPaper::a5, Millimetres{100.2}});
        info = roomInfo(room.book).value();
        QCOMPARE(scaleOf(info, "7Q2M").factor, 1.002);
        room.book.undo().value();
        QCOMPARE(scaleOf(roomInfo(room.book).value(), "7Q2M").factor, 1.0);
        QVERIFY(setting::isOwn(settingOf("7Q2M")));  // taken along when the keeper leaves
    }
};

QTEST_APPLESS_MAIN(TestMats)
#include "tst_mats.moc"
