// The keeper's own numbers in the places of the tables': what can't be is refused or passed over, and the
// room goes by what holds.
#include <QtTest>

#include "room/own_numbers.h"
#include "room/room.h"
#include "room/tables.h"
#include "support/assets.h"
#include "support/book.h"
#include "support/planning.h"

using namespace burrow;
using test::TestBook;

namespace {

const NumberTables& numbers() {
    static const auto tables = NumberTables::fromJson(test::tableTexts()).value();
    return tables;
}

NumberKey keyOf(std::string_view text) { return NumberKey::parse(text).value(); }
const auto plate = std::string("sexing/moult/7_to_11.clearly/plate_ratio");

double plateRatio(const RoomTables& tables) {
    return tables.sexing.moult(Sex::female, Clarity::clearly, Millimetres{9}).value;
}

RoomInfo infoWith(std::map<std::string, std::string> own) {
    RoomInfo info;
    for (auto& [key, value] : own) info.others["number." + key] = value;
    return info;
}

Result<FieldValues> fieldsOf(std::string_view key, std::optional<double> value,
                             const RoomInfo& info = {}) {
    const std::array changes{NumberChange{keyOf(key), value}};
    return numbers().fieldsOf(changes, info);
}

std::string refusalOf(std::string_view key, double value, const RoomInfo& info = {}) {
    const auto fields = fieldsOf(key, value, info);
    return fields ? std::string() : fields.error().message.id;
}

const TableNumber* find(const std::vector<NumberTable>& tables, const std::string& key) {
    for (const auto& table : tables) {
        for (const auto& row : table.rows) {
            for (const auto& number : row.numbers) {
                if (number.key.text() == key) return &number;
            }
        }
    }
    return nullptr;
}

}  // namespace

class TestOwnNumbers : public QObject {
    Q_OBJECT

private slots:
    void keysReadBack() {
        QCOMPARE(keyOf(plate).row, std::string("7_to_11.clearly"));
        QCOMPARE(keyOf(plate).text(), plate);
        for (const char* odd : {"", "sexing", "sexing/moult/row", "a/b/c/d/e", "a//c/d"}) {
            QVERIFY2(!NumberKey::parse(odd), odd);
        }
    }

    void withoutAnyNothingIsMade() {
        QCOMPARE(numbers().with({}), numbers().shipped());
        QCOMPARE(plateRatio(*numbers().shipped()), 12.0);
    }

    void anOwnNumberHolds() {
        const auto info = infoWith({{plate, "7.5"}, {"measure/numbers/tag_print/value", "0.01"}});
        const auto tables = numbers().with(info);
        QCOMPARE(plateRatio(*tables), 7.5);
        QCOMPARE(tables->measure.tagPrint, 0.01);
        const auto said = tables->sexing.moult(Sex::female, Clarity::clearly, Millimetres{9});
        QCOMPARE(said.source, std::string("your own; shipped: common practice, no source"));
        QCOMPARE(plateRatio(*numbers().shipped()), 12.0);
        const auto list = numbers().list(info);
        const auto* number = find(list, plate);
        QVERIFY(number != nullptr && number->isOwn && !number->isFixed);
        QCOMPARE(number->value, 7.5);
        QCOMPARE(number->shipped, 12.0);
        int own = 0;
        for (const auto& table : list) own += table.ownNumbers();
        QCOMPARE(own, 2);
    }

    void whatCantBeIsPassedOver() {
        std::vector<std::string> passedOver;
        const auto info = infoWith({{plate, "0.5"},  // speaks for a male where a plate was seen
                                    {"sexing/moult/7_to_11.clearly/none_ratio", "0.3"},
                                    {"sexing/moult/7_to_11.clearly/from_mm", "6"},
                                    {"sexing/moult/nobody/plate_ratio", "6"},
                                    {"away/waiting/adult/water_days", "a week"},
                                    {"no key", "1"}});
        const auto tables = numbers().with(info, &passedOver);
        QCOMPARE(plateRatio(*tables), 12.0);
        QCOMPARE(tables->sexing.moult(Sex::male, Clarity::clearly, Millimetres{9}).value, 0.3);
        QCOMPARE(passedOver.size(), std::size_t{5});
        QVERIFY(!find(numbers().list(info), plate)->isOwn);
    }

    void everyNumberThatIsOfferedCanBeTyped() {
        int offered = 0;
        for (const auto& table : numbers().list({})) {
            QVERIFY(!table.rows.empty());
            for (const auto& row : table.rows) {
                QVERIFY(!row.source.empty());
                for (const auto& number : row.numbers) {
                    if (number.isFixed) continue;
                    ++offered;
                    // The shipped number itself is no change, and no number is far beyond all limits.
                    const auto key = number.key.text();
                    QVERIFY2(fieldsOf(key, number.shipped).value().empty(), key.c_str());
                    QVERIFY2(!fieldsOf(key, -1e9), key.c_str());
                    QVERIFY2(!fieldsOf(key, 1e9), key.c_str());
                }
            }
        }
        QVERIFY(offered > 150);
    }

    void refusalsSayWhy() {
        QCOMPARE(refusalOf(plate, 0.5), std::string("numbers.range"));
        QCOMPARE(refusalOf("sexing/stops/partly/least", 0.9), std::string("numbers.together"));
        QCOMPARE(refusalOf("sexing/moult/7_to_11.clearly/from_mm", 6),
                 std::string("numbers.fixed"));
        // Days and minutes are counted whole.
        QCOMPARE(refusalOf("away/waiting/adult/water_days", 2.5), std::string("numbers.together"));
        QCOMPARE(refusalOf("air/gaps/joined/minutes", 30.5), std::string("numbers.together"));
        QCOMPARE(refusalOf("prey/bands/cricket.small/least_mm", 3), std::string("numbers.fixed"));
        QCOMPARE(refusalOf("measure/numbers/hint_share/value", 0.4), std::string("numbers.fixed"));
        QCOMPARE(refusalOf("sexing/moult/7_to_11.clearly/plates", 6),
                 std::string("numbers.unknown"));
        const auto refused = fieldsOf("away/waiting/adult/water_days", 1e6).error().message;
        QVERIFY(refused.find("most") != nullptr);
        QCOMPARE(std::get<std::string>(*refused.find("value")), std::string("1000000"));
    }

    void severalMoveTogether() {
        // One alone would stand above the next.
        const std::array changes{NumberChange{keyOf("sexing/stops/partly/least"), 0.88},
                                 NumberChange{keyOf("sexing/stops/fairly/least"), 0.9}};
        const auto fields = numbers().fieldsOf(changes, {}).value();
        QCOMPARE(fields.size(), std::size_t{2});
        QCOMPARE(fields.at("number.sexing/stops/partly/least"), nlohmann::json("0.88"));
    }

    void takenBack() {
        const auto info = infoWith({{plate, "7.5"}});
        const auto name = "number." + plate;
        QCOMPARE(fieldsOf(plate, std::nullopt, info).value().at(name), nlohmann::json());
        QCOMPARE(fieldsOf(plate, 12, info).value().at(name), nlohmann::json());
        QVERIFY(fieldsOf(plate, 7.5, info).value().empty());
        QVERIFY(fieldsOf(plate, std::nullopt).value().empty());
    }

    void aRoomGoesByThem() {
        TestBook room;
        auto& book = room.book;
        const Room::Reference reference{test::sharedProfiles(), test::sharedRules(), &numbers()};
        const PlanDay day{Zone::utc().dayOf(room.clock.now()), Zone::utc()};
        const auto before = Room::load(book, reference, day).value();
        QCOMPARE(before.tables(), numbers().shipped());
        const auto fields = fieldsOf(plate, 20).value();
        const auto changes = book.record(SetDraft{ThingType::book, book.id().uuid, fields}).value();
        const auto after = before.after(book, reference, changes).value();
        QCOMPARE(plateRatio(*after.tables()), 20.0);
        QCOMPARE(plateRatio(*before.tables()), 12.0);
        const auto renamed =
            book.record(SetDraft{ThingType::book, book.id().uuid, {{setting::room, "Kiln Row"}}})
                .value();
        const auto later = after.after(book, reference, renamed).value();
        QCOMPARE(later.info().name, std::string("Kiln Row"));
        QCOMPARE(later.tables(), after.tables());
        QVERIFY(book.undo());
        const auto undone = book.undo().value();
        QCOMPARE(plateRatio(*after.after(book, reference, undone.first).value().tables()), 12.0);
        const Room::Reference bare{test::sharedProfiles(), test::sharedRules()};
        QVERIFY(!Room::load(book, bare, day).value().tables());
    }
};

QTEST_APPLESS_MAIN(TestOwnNumbers)
#include "tst_own_numbers.moc"
