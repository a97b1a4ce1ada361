// Enclosures: one with its sizes and who lives in it, and all of them to choose from.
#include <QAbstractItemModelTester>
#include <QSignalSpy>

#include "viewmodels/enclosureform.h"
#include "viewmodels/enclosurelist.h"
#include "viewmodels/keeping.h"

using namespace burrow;
using namespace burrow::test;

namespace {

EnclosureId addHome(DeskFixture& at, const std::string& name, double length, const char* place) {
    Enclosure home;
    home.name = name;
    home.length = home.width = Millimetres{length};
    home.place = Place::parse(place);
    return addEnclosure(at, home);
}

QString text(EnclosureId id) { return QString::fromStdString(id.text()); }

class Filled : public EnclosureForm {
public:
    Filled(DeskFixture& at, const QString& enclosure) : at_(at) {
        setEnclosure(enclosure);
        setDesk(&at.desk);
        at.settle();
    }
    FormField& operator[](const char* name) { return *field(QString::fromLatin1(name)); }
    bool isKept() {
        QSignalSpy saves(this, &EnclosureForm::saved);
        save();
        at_.settle();
        return saves.count() == 1;
    }

private:
    DeskFixture& at_;
};

}  // namespace

class TestEnclosures : public QObject {
    Q_OBJECT

private slots:
    void movingATubMovesAllWhoLiveInIt() {
        DeskFixture at;
        at.openRoom();
        const auto home = addHome(at, "E-1", 300, "B / 1");
        for (const auto id : {at.hamorii, at.group, at.gone}) {
            set(at, id, {{"enclosure", home.text()}});
        }
        Filled form(at, text(home));
        QCOMPARE(form.title(), QString("E-1"));
        QCOMPARE(form["home_length"].text(), QString("300"));
        QVERIFY(form["home_height"].text().isEmpty());  // not recorded
        // Who was sold does not live there any more.
        QCOMPARE(column(form.residents(), "tag"), (QStringList{"214", "260"}));
        QCOMPARE(column(form.residents(), "about"), (QStringList{"Adult, unsexed", "Group of 12"}));
        form["home_place"].enter("C / 9");
        QVERIFY(form.isKept());
        QCOMPARE(resident(at, at.hamorii)->kept.place.text(), std::string("C / 9"));
        QCOMPARE(resident(at, at.group)->kept.place.text(), std::string("C / 9"));
        QCOMPARE(at.desk.doneTag(), QString("E-1"));
        at.desk.undo();
        at.settle();
        QCOMPARE(resident(at, at.hamorii)->kept.place.text(), std::string("B / 1"));
    }

    void sizesAreReadAsTheyAreTyped() {
        DeskFixture at;
        at.openRoom();
        const auto home = addHome(at, "E-1", 300, "B / 1");
        Filled form(at, text(home));
        form["home_length"].enter("");
        form["home_width"].enter("200,5");
        form["home_height"].enter(" 310.25 ");
        form["note"].enter("lid sticks");
        QVERIFY(form.isKept());
        const auto kept = enclosuresOf(at).front();
        QCOMPARE(kept.length.value, 0.0);
        QCOMPARE(kept.width.value, 200.5);
        QCOMPARE(kept.height.value, 310.25);
        QCOMPARE(kept.note, std::string("lid sticks"));
    }

    void sizesThatCannotBeAreRefused_data() {
        QTest::addColumn<QString>("typed");
        for (const char* typed : {"30 cm", "-1", "5001", "1e9", "nan", "wide"}) {
            QTest::newRow(typed) << QString(typed);
        }
    }
    void sizesThatCannotBeAreRefused() {
        QFETCH(QString, typed);
        DeskFixture at;
        at.openRoom();
        const auto home = addHome(at, "E-1", 300, "B / 1");
        Filled form(at, text(home));
        form["home_width"].enter(typed);
        form["home_name"].enter("E-2");
        QVERIFY(!form.isKept());
        QVERIFY2(form["home_width"].error().contains(typed),
                 qPrintable(form["home_width"].error()));
        QVERIFY(!form.error().isEmpty());
        QCOMPARE(enclosuresOf(at).front().name, std::string("E-1"));
    }

    void aNameIsNeeded() {
        DeskFixture at;
        at.openRoom();
        Filled form(at, text(addHome(at, "E-1", 300, "B / 1")));
        form["home_name"].enter("   ");
        QVERIFY(!form.isKept());
        QVERIFY(form["home_name"].error().contains("needs a name"));
    }

    void onlyWhatWasChangedIsWritten() {
        DeskFixture at;
        at.openRoom();
        const auto home = addHome(at, "E-1", 300, "B / 1");
        Filled form(at, text(home));
        write(at, {SetDraft{ThingType::enclosure, home.uuid, {{"name", "E-7"}}}});
        form["home_height"].enter("250");
        QVERIFY(form.isKept());
        QCOMPARE(enclosuresOf(at).front().name, std::string("E-7"));
        QCOMPARE(enclosuresOf(at).front().height.value, 250.0);
    }

    void whatIsNotInTheBookIsMissing() {
        DeskFixture at;
        at.openRoom();
        QVERIFY(Filled(at, text(EnclosureId{Uuid::named("none")})).isMissing());
        Filled form(at, "no id at all");
        QVERIFY(form.isMissing() && form.residents().isEmpty());
        QVERIFY(!form.isKept());
    }

    // --- the list ------------------------------------------------------------------------------

    void emptyOnesComeFirst() {
        DeskFixture at;
        at.openRoom();
        const auto taken = addHome(at, "E-1", 300, "B / 1");
        const auto left = addHome(at, "E-2", 0, "B / 2");
        addHome(at, "E-3", 205, "");
        set(at, at.hamorii, {{"enclosure", taken.text()}});
        set(at, at.gone, {{"enclosure", left.text()}});
        EnclosureList list;
        const QAbstractItemModelTester tester(&list);
        list.setDesk(&at.desk);
        list.read();
        at.settle();
        QCOMPARE(column(list, EnclosureList::NameRole), (QStringList{"E-2", "E-3", "E-1"}));
        QCOMPARE(column(list, EnclosureList::NoteRole),
                 (QStringList{"Shelf B, tub 2. Empty", "20.5 by 20.5 cm, No place yet. Empty",
                              "30 by 30 cm, Shelf B, tub 1. 214 lives there"}));
        QCOMPARE(column(list, EnclosureList::EnclosureRole).last(), text(taken));
    }

    void theTubOfWhoIsOnLoanIsNotEmpty() {
        DeskFixture at;
        at.openRoom();
        const auto home = addHome(at, "E-1", 300, "B / 1");
        set(at, at.hamorii, {{"enclosure", home.text()}});
        log(at, at.hamorii, FactKind::lent, 3);
        EnclosureList list;
        list.setDesk(&at.desk);
        list.read();
        at.settle();
        QVERIFY(column(list, EnclosureList::NoteRole).first().contains("214 lives there"));
    }

    void oneIsFoundByNamePlaceOrWhoLivesThere() {
        DeskFixture at;
        at.openRoom();
        const auto taken = addHome(at, "E-1", 300, "B / 1");
        addHome(at, "Glass box", 450, "Rack 2 / B / 5");
        set(at, at.hamorii, {{"enclosure", taken.text()}});
        EnclosureList list;
        const QAbstractItemModelTester tester(&list);
        list.setDesk(&at.desk);
        list.read();
        at.settle();
        for (const auto& [query, name] : std::map<QString, QString>{{"214", "E-1"},
                                                                    {" GLASS ", "Glass box"},
                                                                    {"tub 5", "Glass box"},
                                                                    {"45 by", "Glass box"}}) {
            list.setQuery(query);
            QCOMPARE(column(list, EnclosureList::NameRole), QStringList{name});
        }
        list.setQuery("nothing like it");
        QCOMPARE(list.rowCount(), 0);
        list.read();  // opened again: what was searched for is forgotten
        at.settle();
        QVERIFY(list.query().isEmpty());
        QCOMPARE(list.rowCount(), 2);
    }

    void whatIsTooMuchToShowIsCounted() {
        DeskFixture at;
        at.openRoom();
        std::vector<Draft> drafts;
        for (int i = 100; i < 143; ++i) {
            const auto name = "E-" + std::to_string(i);
            drafts.emplace_back(
                SetDraft{ThingType::enclosure, Uuid::named(name), {{"name", name}}});
        }
        write(at, drafts);
        EnclosureList list;
        const QAbstractItemModelTester tester(&list);
        list.setDesk(&at.desk);
        list.read();
        at.settle();
        QCOMPARE(list.rowCount(), 40);
        QVERIFY(list.rest().startsWith("3 more."));
        list.setQuery("E-142");  // beyond those shown
        QCOMPARE(list.rowCount(), 1);
        QVERIFY(list.rest().isEmpty());
    }
};

QTEST_GUILESS_MAIN(TestEnclosures)
#include "tst_enclosures.moc"
