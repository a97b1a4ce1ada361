// Each kind of length over the moults of an animal.
#include "viewmodels/desk_fixture.h"
#include "viewmodels/sizesmodel.h"

using namespace burrow;
using namespace burrow::test;

namespace {

void write(DeskFixture& at, std::vector<Draft> drafts) {
    Deed deed;
    deed.compose = [drafts](Book&) -> Result<std::vector<Draft>> { return drafts; };
    at.desk.act(&at.desk, std::move(deed));
    at.settle();
}

FactDraft moult(DeskFixture& at, int daysAgo, double carapace, double span) {
    FactBody body;
    body.carapace = Millimetres{carapace};
    body.span = Millimetres{span};
    body.method = Method::ruler;
    return {at.hamorii, FactKind::moulted, body, Instant{fridayEvening.ms - daysAgo * msPerDay}};
}

QVariantMap kindNamed(const SizesModel& model, const QString& name) {
    for (const auto& kind : model.kinds()) {
        if (kind.toMap()["name"] == name) return kind.toMap();
    }
    return {};
}

}  // namespace

class TestSizesModel : public QObject {
    Q_OBJECT

private slots:
    void eachKindHasItsHistory() {
        DeskFixture at;
        at.openRoom();
        SizesModel model;
        model.setDesk(&at.desk);
        model.setSubject(at.id(at.hamorii));
        at.settle();
        QVERIFY(model.isReady());
        QCOMPARE(model.kinds().size(), 1);  // its span was measured once
        QVERIFY(model.says().isEmpty());

        FactBody tibia;
        tibia.segment = "leg 4 tibia";
        tibia.segmentLength = Millimetres{12};
        tibia.low = Millimetres{11.8};
        tibia.high = Millimetres{12.2};
        tibia.method = Method::photo;
        write(at, {moult(at, 900, 8, 48), moult(at, 500, 10, 61), moult(at, 300, 13, 82),
                   FactDraft{at.hamorii, FactKind::measured, tibia, std::nullopt}});
        QCOMPARE(model.kinds().size(), 3);
        const auto rows = kindNamed(model, "Carapace")["rows"].toList();
        QCOMPARE(rows.size(), 3);
        QCOMPARE(rows[0].toMap()["value"].toString(), QString("13 mm"));
        QCOMPARE(rows[0].toMap()["sub"].toString(), QString("1.3 times the one before, by ruler"));
        QCOMPARE(rows[2].toMap()["sub"].toString(), QString("by ruler"));
        QCOMPARE(kindNamed(model, "Carapace")["points"].toList().size(), 3);
        const auto segment = kindNamed(model, "Segment: leg 4 tibia")["rows"].toList();
        QCOMPARE(segment.size(), 1);
        QVERIFY(segment[0].toMap()["sub"].toString().startsWith("11.8 to 12.2 mm, from a photo"));
        QVERIFY2(model.says().startsWith("By 3 pairs of your own, a carapace of 13 mm"),
                 qPrintable(model.says()));
    }

    void nobodyHasNone() {
        DeskFixture at;
        at.openRoom();
        SizesModel model;
        model.setDesk(&at.desk);
        model.setSubject("01890a5d-ac96-774b-bcce-b302099a8057");
        at.settle();
        QVERIFY(!model.isReady() && model.kinds().isEmpty());
    }
};

QTEST_MAIN(TestSizesModel)
#include "tst_sizes_model.moc"
