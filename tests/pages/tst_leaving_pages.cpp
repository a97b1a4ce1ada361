// Lists of the keeper's own coming in, and everything going out, by real clicks.
#include <QtTest>
#include <fstream>

#include "pages/stage.h"

using namespace burrow::test;

namespace {

void write(const std::filesystem::path& path, const std::string& text) {
    std::ofstream(path, std::ios::binary) << text;
}

std::filesystem::path spreadsheet(Stage& stage) {
    const auto path = stage.folder.path() / "my-list.csv";
    write(path,
          "Nr.,Scientific name,Sex,Born,Size (in),Last fed\n"
          "501,B. hamorii,F,14.3.2021,5 1/2,2.5.2026\n"
          "502,Brachypelma hamorei,neither,2.3.2022,,3.5.2026\n");
    return path;
}

/// The row of one column of the spreadsheet.
QQuickItem* rowOf(Stage& stage, const QString& column) {
    for (auto* item : stage.hand->controls()) {
        if (item->property("name") == column) return item;
    }
    return nullptr;
}

}  // namespace

class LeavingPages : public QObject {
    Q_OBJECT

private slots:
    void aSpreadsheetIsAskedAboutAndComesIn() {
        Stage stage;
        stage.go("BringPage");
        stage.click("Choose files");
        stage.chooseFiles({spreadsheet(stage)});
        QTRY_VERIFY(stage.has("Say what its columns are"));
        stage.click("Say what its columns are");
        QCOMPARE(stage.page(), QString("MappingPage"));
        QVERIFY(stage.has("One question has to be answered"));
        QVERIFY(stage.has("5 1/2 \u2192 139.7"));
        // Not before the question is answered.
        const auto controls = stage.hand->controls();
        QVERIFY(std::none_of(controls.begin(), controls.end(), [](const QQuickItem* item) {
            return item->property("text") == "Read it like this";
        }));
        stage.click("Day first");
        QVERIFY(stage.has("2 things are not known here"));
        stage.click("unknown");
        stage.click("Answer");
        stage.click("Brachypelma hamorii");
        QVERIFY(stage.has("Nothing is left to be asked"));
        stage.click("Read it like this");
        QTRY_COMPARE(stage.page(), QString("BringPage"));
        QTRY_VERIFY(stage.has("2 animals, 0 enclosures and 3 events can be brought in"));
        stage.click("Bring in");
        QTRY_VERIFY(stage.has("Brought in"));
        QCOMPARE(stage.resident("502")->subject().species, std::string("Brachypelma hamorii"));
        QCOMPARE(stage.resident("501")->kept.digest.lastAccepted->day,
                 *burrow::civilDay({2026, 5, 2}));
    }

    void aColumnIsPutRight() {
        Stage stage;
        stage.go("BringPage");
        stage.click("Choose files");
        stage.chooseFiles({spreadsheet(stage)});
        QTRY_VERIFY(stage.has("Say what its columns are"));
        stage.click("Say what its columns are");
        stage.click(rowOf(stage, "Last fed"));
        stage.click("Left out");
        QVERIFY(!stage.has("One question has to be answered"));
        stage.click("Lengths in inches");
        stage.click("centimetres");
        QVERIFY(stage.has("5 1/2 \u2192 55"));
        stage.click("Save");
        stage.chooseFolder(stage.folder.path());
        QTRY_VERIFY(stage.has("Saved as my-list.map.json"));
        QVERIFY(std::filesystem::exists(stage.folder.path() / "my-list.map.json"));
    }

    void everythingGoesIntoAFolder() {
        Stage stage;
        stage.go("RoomPage");
        stage.click("Take everything along");
        QCOMPARE(stage.page(), QString("LeavePage"));
        stage.click("Photos");
        stage.click("Choose a folder");
        stage.chooseFolder(stage.folder.path());
        QTRY_VERIFY_WITH_TIMEOUT(stage.has("Everything is in Kiln-Row-2026-05-08"), 20'000);
        QVERIFY(std::filesystem::exists(stage.folder.path() / "Kiln-Row-2026-05-08" / "book.json"));
    }

    void dueDatesGoToAFolderAndToAnotherApp() {
        Stage stage;
        stage.go("RoomPage");
        stage.click("Due dates for a calendar");
        QCOMPARE(stage.page(), QString("CalendarPage"));
        stage.click("30 days");
        stage.click("Save the file");
        stage.chooseFolder(stage.folder.path());
        QTRY_VERIFY(stage.has("Saved as Kiln-Row-due.ics"));
        stage.click("Share");
        QCOMPARE(stage.sharer.shared().size(), std::size_t{1});
    }
};

QTEST_MAIN(LeavingPages)
#include "tst_leaving_pages.moc"
