// What can be logged, by one tap or by a form: every kind of thing that can happen.
#include <QSignalSpy>

#include "viewmodels/factform.h"
#include "viewmodels/keeping.h"
#include "viewmodels/logmodel.h"

using namespace burrow;
using namespace burrow::test;

namespace {

/// The kinds on the tiles, as files spell them.
QStringList kindsFor(DeskFixture& at, SubjectId id) {
    LogModel log;
    log.setDesk(&at.desk);
    log.setSubject(at.id(id));
    QStringList kinds;
    for (const auto& group : log.groups()) {
        kinds += column(group.toMap().value("tiles").toList(), "kind");
    }
    return kinds;
}

QStringList titlesFor(DeskFixture& at, SubjectId id) {
    LogModel log;
    log.setDesk(&at.desk);
    log.setSubject(at.id(id));
    QStringList titles;
    for (const auto& group : log.groups()) {
        titles += column(group.toMap().value("tiles").toList(), "text");
    }
    return titles;
}

}  // namespace

class TestLog : public QObject {
    Q_OBJECT

private slots:
    void everyKindOfEntryHasATile() {
        DeskFixture at;
        at.openRoom();
        auto kinds = kindsFor(at, at.hamorii);
        log(at, at.hamorii, FactKind::lent, 1);
        kinds += kindsFor(at, at.hamorii);
        for (const auto& row : factKinds())
            QVERIFY2(kinds.contains(row.name.data()), row.name.data());
        for (const auto& title : titlesFor(at, at.group)) QVERIFY(!title.startsWith("["));
    }

    void everyTileLeadsToAnEntry_data() {
        QTest::addColumn<QString>("kind");
        for (const auto& row : factKinds())
            QTest::newRow(row.name.data()) << QString(row.name.data());
    }
    void everyTileLeadsToAnEntry() {
        QFETCH(QString, kind);
        DeskFixture at;
        at.openRoom();
        if (kind == "returned") log(at, at.hamorii, FactKind::lent, 1);
        LogModel tiles;
        tiles.setDesk(&at.desk);
        tiles.setSubject(at.id(at.hamorii));
        QSignalSpy logged(&tiles, &LogModel::logged);
        QSignalSpy moult(&tiles, &LogModel::moultWanted);
        QSignalSpy photo(&tiles, &LogModel::photoWanted);
        QSignalSpy formWanted(&tiles, &LogModel::formWanted);
        tiles.choose(kind);
        at.settle();
        QCOMPARE(logged.count() + moult.count() + photo.count() + formWanted.count(), 1);
        QCOMPARE(moult.count(), kind == "moulted" ? 1 : 0);
        QCOMPARE(photo.count(), kind == "photo" ? 1 : 0);
        if (moult.count() + photo.count() > 0) return;
        FactForm form;
        form.setDesk(&at.desk);
        QSignalSpy saved(&form, &FactForm::saved);
        if (formWanted.count() == 1) {
            form.begin(at.id(at.hamorii), kind);
            QVERIFY(form.isReady() && !form.title().startsWith('['));
            if (auto* outcome = form.field("outcome")) outcome->choose(0);
            if (auto* text = form.field("text")) text->enter("seen on the round");
            if (auto* sex = form.field("sex")) sex->choose(0);
            form.save();
            at.settle();
            QCOMPARE(saved.count(), 1);
        }
        QCOMPARE(QString(spec(at.history(at.hamorii).front().kind).name.data()), kind);
        QCOMPARE(at.desk.doneTag(), QString("214"));
        QVERIFY2(!at.desk.doneText().startsWith('['), qPrintable(at.desk.doneText()));
    }

    void aGroupIsCountedAndNotSexed() {
        DeskFixture at;
        at.openRoom();
        const auto kinds = kindsFor(at, at.group);
        QVERIFY(!kinds.contains("sexed") && !kinds.contains("lent"));
        QVERIFY(titlesFor(at, at.group).contains("Count heads"));
        LogModel log;
        log.setDesk(&at.desk);
        log.setSubject(at.id(at.group));
        QSignalSpy form(&log, &LogModel::formWanted);
        log.choose("seen");  // how many is asked for
        QCOMPARE(form.count(), 1);
        QVERIFY(titlesFor(at, at.hamorii).contains("Seen"));
    }

    void whatCanHappenFollowsWhereItStands() {
        DeskFixture at;
        at.openRoom();
        QCOMPARE(kindsFor(at, at.gone), (QStringList{"note"}));
        QVERIFY(!kindsFor(at, at.hamorii).contains("returned"));
        log(at, at.hamorii, FactKind::lent, 1);
        QCOMPARE(kindsFor(at, at.hamorii),
                 (QStringList{"note", "died", "sold", "given", "returned"}));
        log(at, at.hamorii, FactKind::died, 0);
        QCOMPARE(kindsFor(at, at.hamorii), (QStringList{"measured", "note", "photo"}));
    }

    void someOfAGroupMayLeave() {
        DeskFixture at;
        at.openRoom();
        log(at, at.group, FactKind::died, 1, {.count = 2});
        QVERIFY(kindsFor(at, at.group).contains("offered"));  // ten are left
        log(at, at.group, FactKind::sold, 0, {.count = 10});
        QCOMPARE(kindsFor(at, at.group), (QStringList{"note"}));
    }

    void whatIsNoKindIsNotLogged() {
        DeskFixture at;
        at.openRoom();
        LogModel log;
        log.setDesk(&at.desk);
        log.setSubject(at.id(SubjectId{Uuid::named("nobody")}));
        QVERIFY(log.isMissing() && log.groups().isEmpty() && log.tag().isEmpty());
        QSignalSpy form(&log, &LogModel::formWanted);
        log.choose("note");
        log.setSubject(at.id(at.hamorii));
        log.choose("flew away");
        at.settle();
        QCOMPARE(form.count(), 0);
        QCOMPARE(at.history(at.hamorii).size(), 4U);
    }
};

QTEST_GUILESS_MAIN(TestLog)
#include "tst_log.moc"
