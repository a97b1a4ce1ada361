// The map of the room, the search, the page of a shelf, and parts of the due list, by real clicks.
#include <QAccessible>
#include <QtTest>

#include "pages/stage.h"

using namespace burrow::test;
using burrow::FactKind;

namespace {

QString spokenName(QQuickItem* item) {
    auto* spoken = QAccessible::queryAccessibleInterface(item);
    return spoken != nullptr ? spoken->text(QAccessible::Name) : QString();
}

void note(Stage& stage, const QString& number, const char* text) {
    burrow::Deed deed;
    const auto id = stage.resident(number)->subject().id;
    deed.compose = [id, text](burrow::Book&) -> burrow::Result<std::vector<burrow::Draft>> {
        burrow::FactBody body;
        body.text = text;
        return std::vector<burrow::Draft>{
            burrow::FactDraft{id, FactKind::note, body, std::nullopt}};
    };
    stage.desk->act(stage.desk.get(), std::move(deed));
    stage.settle();
}

}  // namespace

class Finding : public QObject {
    Q_OBJECT

private slots:
    void theMapLeadsToAShelfAndToAnAnimal() {
        Stage stage;
        stage.click("Shelves");
        auto* shelf = stage.first("ShelfMapRow");
        QVERIFY2(spokenName(shelf).startsWith("Shelf A, "), qPrintable(spokenName(shelf)));
        QVERIFY2(spokenName(shelf).contains(" tubs"), qPrintable(spokenName(shelf)));
        stage.click(shelf);
        QCOMPARE(stage.page(), QString("ShelfPage"));
        QVERIFY(stage.has("Shelf A") && stage.has("001"));
        stage.click("002");
        QCOMPARE(stage.page(), QString("AnimalPage"));
        stage.key(Qt::Key_Escape);
        stage.click("Start a round here");
        QCOMPARE(stage.page(), QString("RoundPage"));
        stage.key(Qt::Key_Escape);
        stage.click("Back");
        QVERIFY(stage.has("a hole for each tub"));
    }

    void theListIsStillThere() {
        Stage stage;
        stage.click("Shelves");
        stage.click("List");
        QVERIFY(stage.has("001") && stage.has("Also those who left"));
        stage.click("Shelf A");  // its head opens what can be done for all of it
        QVERIFY(stage.has("Whoever got nothing can be left out."));
        stage.click("Close");
        stage.click("Map");
        QVERIFY(!stage.has("Also those who left"));
        QCOMPARE(stage.first("ShelfMapRow")->property("name").toString(), QString("Shelf A"));
    }

    void anOldNameANoteAndASlipAreSearchedFor() {
        Stage stage;
        note(stage, "044", "webbed over the dish");
        stage.click("Shelves");
        stage.search("webbed di");
        QTRY_VERIFY2(stage.has("1 found") && stage.has("044"), qPrintable(stage.words()));
        const auto reason = stage.first("StripRow")->property("reason").toString();
        QVERIFY2(reason.contains("webbed over the dish"), qPrintable(reason));
        stage.click("Empty the search");
        QVERIFY(stage.has("a hole for each tub"));
        stage.search("NEAR(\" *");
        QTRY_VERIFY2(stage.has("Nobody here is called that"), qPrintable(stage.words()));
    }

    void theSearchIsWorkedByKeyboard() {
        Stage stage;
        stage.click("Shelves");
        stage.search("044");
        QTRY_VERIFY(stage.has("1 found"));
        for (int step = 0; step < 10; ++step) {
            const auto* focused = stage.window->activeFocusItem();
            if (focused != nullptr && focused->property("text").toString() == "044" &&
                focused->inherits("QQuickAbstractButton")) {
                break;
            }
            stage.key(Qt::Key_Tab);
        }
        QVERIFY(spokenName(stage.window->activeFocusItem()).startsWith("044, "));
        stage.key(Qt::Key_Return);
        QCOMPARE(stage.page(), QString("AnimalPage"));
    }

    void aPartOfTheDueListIsShownAndAllOfItAgain() {
        Stage stage;
        auto* list = stage.named("dueList");
        const int all = list->property("count").toInt();
        stage.click("Show a part");
        stage.click("On hold");
        stage.click("Close");
        const int held = list->property("count").toInt();
        QVERIFY(held > 0 && held < all);
        QVERIFY2(stage.has("only on hold"), qPrintable(stage.words()));
        stage.click("Show everything");
        QCOMPARE(list->property("count").toInt(), all);
        QVERIFY(!stage.has("only on hold"));
        stage.click("Show a part");
        stage.click("Feeding");
        stage.click("Late");
        stage.click("On hold");
        stage.click("Show everything");  // the sheet's own
        QCOMPARE(list->property("count").toInt(), all);
    }
};

QTEST_MAIN(Finding)
#include "tst_finding.moc"
