// What a keeper does, from the first tap to the last, by real clicks on the real pages.
#include <QtTest>
#include <fstream>

#include "pages/stage.h"
#include "support/moult_photo.h"
#include "tags/code.h"

using namespace burrow::test;
using burrow::Fact;
using burrow::FactKind;
using burrow::Outcome;

namespace {

/// What stands in the book about an animal, newest first.
std::vector<Fact> history(Stage& stage, const QString& number) {
    std::vector<Fact> facts;
    const auto id = stage.resident(number)->subject().id;
    stage.desk->ask<std::vector<Fact>>(
        stage.desk.get(), [id](burrow::Book& book) { return burrow::history(book, id, 1000); },
        [&facts](const burrow::Result<std::vector<Fact>>& read) { facts = read.value(); });
    stage.settle();
    return facts;
}

void write(const std::filesystem::path& path, const std::string& text) {
    std::ofstream(path, std::ios::binary) << text;
}

std::string start(const std::filesystem::path& path, std::size_t length) {
    std::string text(length, '\0');
    std::ifstream(path, std::ios::binary).read(text.data(), static_cast<std::streamsize>(length));
    return text;
}

}  // namespace

class Keeper : public QObject {
    Q_OBJECT

private slots:
    void walksAShelfByScanning() {
        Stage stage;
        stage.click(stage.first("ShelfHead"));
        QCOMPARE(stage.page(), QString("RoundPage"));
        QVERIFY(stage.has("Hold until"));
        stage.click("Leave it");
        QCOMPARE(stage.page(), QString("ScanPage"));
        const auto before = history(stage, "044").size();
        stage.scanner.showTag(stage.payloadOf("044"));
        stage.hand->waitFor("RoundPage");
        QVERIFY(stage.has("044"));
        stage.click("Took it");  // one tap, with the water it was due
        QCOMPARE(stage.page(), QString("ScanPage"));
        const auto fed = history(stage, "044");
        QCOMPARE(fed.size(), before + 2);
        stage.scanner.showTag(stage.payloadOf("062"));
        stage.hand->waitFor("RoundPage");
        QVERIFY(stage.has("took 1 cricket"));
        stage.click("Undo");
        QCOMPARE(history(stage, "044").size(), before);
    }

    void logsARefusalAndAHold() {
        Stage stage;
        stage.settings->setScanNext(false);
        stage.round("044");
        stage.click("Refused");
        const auto facts = history(stage, "044");
        QVERIFY(std::any_of(facts.begin(), facts.begin() + 2, [](const Fact& fact) {
            return fact.kind == FactKind::offered && fact.body.outcome == Outcome::refused;
        }));
        stage.round("002");
        stage.click("Fangs black");
        QCOMPARE(history(stage, "002").front().kind, FactKind::fangsBlack);
        stage.round("003");
        stage.click("Note");
        stage.fill("What you saw", "dug all night");
        stage.click("Keep the note");
        QCOMPARE(history(stage, "003").front().body.text, std::string("dug all night"));
    }

    void changesThePrey() {
        Stage stage;
        stage.round("044");
        stage.click("Smaller prey");
        stage.click("Other prey or count");
        stage.click("locust");
        stage.click("Done");
        QVERIFY(stage.has("1 locust"));
        stage.click("Took it");
        const auto facts = history(stage, "044");
        const auto meal = std::find_if(facts.begin(), facts.end(), [](const Fact& fact) {
            return fact.kind == FactKind::offered;
        });
        QCOMPARE(meal->body.prey, std::string("locust"));
    }

    void foreignAndDamagedTagsGetTheirWords_data() {
        QTest::addColumn<QByteArray>("payload");
        QTest::addColumn<QString>("words");
        QTest::newRow("a web address")
            << QByteArray("HTTPS://EXAMPLE.ORG/T/7Q2MZX89") << "holds a web address, not a tag";
        QTest::newRow("3 kB of binary") << QByteArray(3000, '\x07') << "something else than a tag";
        const auto good = burrow::tags::payload("7Q2MZX89", burrow::tags::printedSide);
        auto forged = good;  // another check character
        const auto at = forged.find("7Q2MZX89") + 8;
        forged[at] = forged[at] == 'A' ? 'B' : 'A';
        QTest::newRow("a forged check character")
            << QByteArray::fromStdString(forged) << "Can't read this tag";
    }

    void foreignAndDamagedTagsGetTheirWords() {
        QFETCH(QByteArray, payload);
        QFETCH(QString, words);
        Stage stage;
        stage.go("ScanPage");
        stage.scanner.showTag(payload);
        stage.settle();
        QVERIFY2(stage.has(words), qPrintable(stage.words()));
        QCOMPARE(stage.page(), QString("ScanPage"));
    }

    void aTypedTagMayBeSloppy() {
        Stage stage;
        const auto code = stage.resident("044")->kept.tagCode.value();
        auto typed = QString::fromStdString(code).toLower();
        typed.replace('0', 'o');
        stage.go("ScanPage");
        stage.click("Type tag");
        stage.fill("Its number", typed);
        stage.key(Qt::Key_Return);
        QTRY_VERIFY(stage.page() == QString("AnimalPage") || stage.page() == QString("RoundPage"));
        QVERIFY(stage.has("044"));
    }

    void aBlankTagIsBoundToANewAnimal() {
        Stage stage;
        stage.go("ScanPage");
        const std::string code = "7Q2MZX89";
        stage.scanner.showTag(
            QByteArray::fromStdString(burrow::tags::payload(code, burrow::tags::printedSide)));
        stage.settle();
        stage.click("Tag a new animal");
        QCOMPARE(stage.page(), QString("AnimalFormPage"));
        stage.fill("Species", "Brachypelma hamorii");
        stage.click("Tag it");
        QCOMPARE(stage.page(), QString("AnimalPage"));
        QCOMPARE(stage.resident("121")->kept.tagCode, code);
    }

    void photographsAMoultAndSexesIt() {
        Stage stage;
        stage.scanner.showPicture(moultPicture({1280, 960}));
        stage.photographer.prepare(moultPhoto());
        stage.go("MoultPage", {{"subject", stage.id("044")}});
        stage.click("Photo");
        stage.click("Take the photo");
        QTRY_VERIFY(stage.has("Done"));
        stage.click("Done");
        stage.fill("Leg span", "999999");
        stage.click("Save moult");
        QVERIFY(!stage.has("The moult is saved."));
        stage.fill("Leg span", "96");
        stage.click("Save moult");
        QTRY_VERIFY(stage.has("The moult is saved."));
        stage.click("Done");
        stage.go("SexQueuePage");
        QTRY_VERIFY(stage.has("044"));
        stage.click(stage.first("SexQueueRow"));
        QTRY_VERIFY(stage.has("Where to look"));
        stage.click("Female");
        stage.click(stage.named("stop 3"));
        stage.click("Write it down");
        QTRY_COMPARE(stage.page(), QString("SexQueuePage"));
        QTRY_VERIFY(stage.has("No moult waits"));
        QCOMPARE(history(stage, "044").front().kind, FactKind::sexed);
    }

    void photosAreNotLeftByOneTouch() {
        Stage stage;
        stage.photographer.prepare(moultPhoto());
        stage.scanner.showPicture(moultPicture({1280, 960}));
        stage.go("MoultPage", {{"subject", stage.id("044")}});
        stage.click("Photo");
        stage.click("Take the photo");
        QTRY_VERIFY(stage.has("Done"));
        stage.click("Done");
        stage.click("Back");
        QCOMPARE(stage.page(), QString("MoultPage"));
        QVERIFY(stage.has("The photos are not saved yet."));
        stage.click("Back");
        QVERIFY(stage.page() != QString("MoultPage"));
    }

    void handsOverACareSheet() {
        Stage stage;
        const auto folder = stage.folder.path() / "to hand over";
        std::filesystem::create_directories(folder);
        stage.go("AnimalPage", {{"subject", stage.id("044")}});
        stage.click("Care sheet");
        for (const auto* name : {"KR-044-care-sheet.pdf", "KR-044-care-sheet-2.pdf"}) {
            stage.click("Save PDF");
            stage.chooseFolder(folder);
            QTRY_VERIFY2(std::filesystem::exists(folder / name), name);
            QTRY_VERIFY(stage.has(name));
            QCOMPARE(start(folder / name, 5), std::string("%PDF-"));
        }
        stage.click("Share");
        QTRY_COMPARE(stage.sharer.shared().size(), std::size_t{1});
    }

    void printsBlankTags() {
        Stage stage;
        stage.go("TagSheetPage");
        stage.click("Blank");
        stage.fill("How many blank tags", "0");
        QVERIFY(stage.has("A whole number from 1"));
        stage.fill("How many blank tags", "30");
        QTRY_VERIFY(stage.has("30 tags on 2 pages."));
        stage.click("Save PDF");
        stage.chooseFolder(stage.folder.path());
        QTRY_VERIFY(stage.has("Saved as"));
    }

    void findsAndWatersAWholeShelf() {
        Stage stage;
        stage.click("Shelves");
        stage.search("hamorii");
        QTRY_VERIFY(stage.has("3 found"));
        stage.click("062");
        QCOMPARE(stage.page(), QString("AnimalPage"));
        stage.key(Qt::Key_Escape);
        stage.click("Empty the search");
        const auto before = history(stage, "001").size();
        stage.click("Shelf A");
        QCOMPARE(stage.page(), QString("ShelfPage"));
        stage.click("Water or dampen all of it");
        stage.click("002");  // left out
        stage.click("Watered");
        QCOMPARE(history(stage, "001").size(), before + 1);
        QVERIFY(history(stage, "002").front().kind != FactKind::watered ||
                history(stage, "002").front().day != stage.desk->today());
        stage.click("Undo");
        QCOMPARE(history(stage, "001").size(), before);
    }

    void logsAmendsAndTakesOut() {
        Stage stage;
        stage.go("AnimalPage", {{"subject", stage.id("044")}});
        stage.click("Log for 044");
        stage.click("Measured");
        stage.click("A day earlier");
        stage.fill("Carapace", "not a number");
        stage.click("Log it");
        QVERIFY2(stage.has("Can't read \"not a number\""), qPrintable(stage.words()));
        stage.fill("Carapace", "15.9");
        stage.click("Log it");
        QCOMPARE(stage.page(), QString("AnimalPage"));
        const auto measured = history(stage, "044").front();
        QCOMPARE(measured.kind, FactKind::measured);
        QCOMPARE(measured.day, stage.desk->today() - 1);
        stage.go("EntryPage", {{"entry", QString::fromStdString(measured.id.text())}});
        stage.click("Amend");
        stage.fill("Carapace", "16.1");
        stage.click("Keep the change");
        QCOMPARE(history(stage, "044").front().body.carapace->value, 16.1);
        const auto count = history(stage, "044").size();
        stage.click("Take it out of the history");
        QCOMPARE(history(stage, "044").size(), count - 1);
        stage.click("Undo");
        QCOMPARE(history(stage, "044").size(), count);
    }

    void startsWithNoBook() {
        Stage stage(Stage::Start::NoBook);
        stage.click("Tag an animal");
        stage.fill("Name of the room", "Kiln Row");
        stage.fill("Code on tags", "K R!");
        stage.click("Start the book");
        QVERIFY(stage.has("letters and digits"));
        stage.fill("Code on tags", "kr");
        stage.click("Start the book");
        QTRY_COMPARE(stage.page(), QString("AnimalFormPage"));
        stage.click("Tag it");
        QVERIFY(stage.has("Something above can't be used yet"));
        stage.fill("Species", "Brachypelma hamorii");
        stage.click("Back");
        QVERIFY(stage.has("What you filled in is not saved yet."));
        stage.click("Tag it");
        QTRY_COMPARE(stage.page(), QString("AnimalPage"));
        QVERIFY(stage.has("Kiln Row"));
        stage.key(Qt::Key_Escape);
        stage.click("Shelves");
        QVERIFY2(stage.has("001"), qPrintable(stage.words()));
    }

    void bringsInAFileAndTakesItBack() {
        Stage stage(Stage::Start::NoBook);
        stage.click("Bring in a table");
        stage.fill("Name of the room", "Kiln Row");
        stage.click("Start the book");
        QTRY_COMPARE(stage.page(), QString("BringPage"));
        const auto file = stage.folder.path() / "animals.csv";
        write(file, "code,species\n401,Brachypelma hamorii\n402,\n");
        stage.click("Choose files");
        stage.chooseFiles({file});
        QTRY_VERIFY(stage.has("One row can't be read"));
        QVERIFY(stage.has("line 3"));
        QVERIFY(stage.desk->room()->residents().empty());
        stage.click("Leave those out");
        QTRY_VERIFY(stage.has("Brought in"));
        QCOMPARE(stage.desk->room()->residents().size(), std::size_t{1});
        QVERIFY(std::filesystem::exists(stage.folder.path() / "animals.bad.csv"));
        stage.click("Undo all");
        QTRY_VERIFY(stage.desk->room()->residents().empty());
    }

    void aBookThatCannotBeOpenedSaysWhy() {
        Stage stage(Stage::Start::NoBook);
        const auto path = stage.folder.path() / "broken.book";
        write(path, "this is no book at all, whatever its name says");
        stage.desk->open(path);
        stage.settle();
        QVERIFY2(stage.has("This file is no Burrowbook. Nothing was changed."),
                 qPrintable(stage.words()));
        stage.click("Look at a demo");
        QTRY_VERIFY(stage.has("Due today"));
        stage.click("Shelves");
        stage.click("Kiln Row");
        stage.click("Leave the demo");
        QTRY_VERIFY(stage.has("Tag your first tub"));
    }

    void worksByKeyboardAlone() {
        Stage stage;
        stage.settings->setScanNext(false);
        stage.round("044");
        const auto before = history(stage, "044").size();
        for (int step = 0; step < 40; ++step) {
            const auto* focused = stage.window->activeFocusItem();
            if (focused != nullptr && focused->property("text").toString() == "Took it") break;
            stage.key(Qt::Key_Tab);
        }
        QCOMPARE(stage.window->activeFocusItem()->property("text").toString(), QString("Took it"));
        stage.key(Qt::Key_Space);
        QVERIFY(history(stage, "044").size() > before);
    }
};

QTEST_MAIN(Keeper)
#include "tst_keeper.moc"
