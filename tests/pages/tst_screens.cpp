// Every page of the app, in both themes and at two text sizes, against committed pictures.
#include <QAccessible>
#include <QtTest>
#include <fstream>
#include <functional>

#include "exchange/bundle.h"
#include "journal/fields.h"
#include "pages/earlier_moult.h"
#include "pages/logger_file.h"
#include "pages/stage.h"
#include "ports/picture.h"
#include "support/mat_jpeg.h"
#include "support/moult_photo.h"

using namespace burrow::test;

namespace {

struct Scene {
    const char* name;
    Stage::Start start;
    std::function<void(Stage&)> arrive;
};

Scene page(const char* name, const char* file,
           const std::function<QVariantMap(Stage&)>& properties = {}) {
    return {name, Stage::Start::DemoRoom, [file, properties](Stage& stage) {
                stage.go(file, properties ? properties(stage) : QVariantMap());
            }};
}

/// A page whose plan is worked out before it is shown.
Scene ahead(const char* name, const char* file, const char* words) {
    return {name, Stage::Start::DemoRoom, [file, words](Stage& stage) {
                stage.go(file);
                if (!QTest::qWaitFor([&] { return stage.has(words); }, 20'000)) qFatal("%s", words);
            }};
}

Scene lowerPart(const char* name, Scene of) {
    return {name, of.start, [arrive = of.arrive](Stage& stage) {
                arrive(stage);
                stage.toTheEnd();
            }};
}

Scene inRoom(const char* name, std::function<void(Stage&)> arrive) {
    return {name, Stage::Start::DemoRoom, std::move(arrive)};
}

std::function<QVariantMap(Stage&)> of(const char* number) {
    return [number](Stage& stage) { return QVariantMap{{"subject", stage.id(number)}}; };
}

QVariantMap ofRule(Stage&) { return {{"rule", "feed.interval.adult"}}; }
QVariantMap ofNumber(Stage&) { return {{"row", "sexing/moult/7_to_11.clearly"}}; }

/// One number of the row is the keeper's own, and the undo slot is empty again.
void changeANumber(Stage& stage) {
    stage.go("NumberPage", ofNumber(stage));
    stage.fill("Where a plate shows", "10");
    stage.click("Keep the change");
    stage.desk->settle();
    stage.go("NumberPage", ofNumber(stage));
}

void atTheScanner(Stage& stage) {
    stage.scanner.showPicture(moultPicture({1280, 960}));
    stage.go("ScanPage");
}

void bringBadRows(Stage& stage) {
    const auto path = stage.folder.path() / "slings.csv";
    std::ofstream(path) << "code,species,hatched_on,source\n"
                           "401,Brachypelma hamorii,2026-03-01,Bred here\n"
                           "402,Brachypelma hamorii,last spring,Bred here\n"
                           "403,,2026-03-01,Bred here\n";
    stage.go("BringPage");
    stage.click("Choose files");
    stage.chooseFiles({path});
}

/// A spreadsheet with columns of its own, and a date that can be read in two ways.
void chooseSpreadsheet(Stage& stage) {
    const auto path = stage.folder.path() / "my-list.csv";
    std::ofstream(path) << "Nr.,Scientific name,Sex,Born,Size (in),Last fed,Colour\n"
                           "501,B. hamorii,F,14.3.2021,5 1/2,2.5.2026,red\n"
                           "502,Brachypelma hamorei,neither,2.3.2022,4\",3.5.2026,\n"
                           "503,Mexican red knee,m,,2.5 in,1.5.2026,pale\n";
    stage.go("BringPage");
    stage.click("Choose files");
    stage.chooseFiles({path});
}

/// The first in walking order that is of that form.
QString firstOf(Stage& stage, burrow::Form form) {
    for (const auto& resident : stage.desk->room()->residents()) {
        const auto& subject = resident->subject();
        if (subject.form == form) return QString::fromStdString(subject.id.text());
    }
    qFatal("Nobody in the room is of that form");
}

const QByteArray& matPhoto() {
    static const auto photo = matJpeg();
    return photo;
}

/// Where a part of the picture in a view is in the window.
QPoint placeIn(QQuickItem* view, const QPointF& part) {
    const auto rect = view->property("contentRect").toRectF();
    return view
        ->mapToScene({rect.x() + part.x() * rect.width(), rect.y() + part.y() * rect.height()})
        .toPoint();
}

void saveMoultWithPhoto(Stage& stage, const QByteArray& photo = moultPhoto()) {
    stage.photographer.prepare(photo);
    stage.scanner.showPicture(moultPicture({1280, 960}));
    stage.go("MoultPage", {{"subject", stage.id("044")}});
    stage.click("Photo");
    stage.click("Take the photo");
    if (!QTest::qWaitFor([&] { return stage.has("Done"); })) qFatal("There is no photo");
    stage.click("Done");
    stage.fill("Leg span", "96");
    stage.click("Save moult");
    if (!QTest::qWaitFor([&] { return stage.has("Look at it"); })) qFatal("The moult is not saved");
}

/// Photos are read and looked through beside the interface.
void waitForPhotos(Stage& stage) {
    const auto isThere = [&] {
        return !stage.named("photo")->property("picture").value<burrow::Picture>().isEmpty();
    };
    if (!QTest::qWaitFor(isThere, 30'000)) qFatal("The photo is not shown");
}

/// A file of another phone with this room: somebody new, and another note on 044.
std::filesystem::path fileOfAnotherPhone(Stage& stage) {
    const auto start = stage.folder.path() / "start.burrow";
    bool made = false;
    stage.desk->ask<burrow::exchange::Manifest>(
        stage.desk.get(),
        [start](burrow::Book& book) { return burrow::exchange::exportBundle(book, start, {}); },
        [&made](const auto& manifest) { made = manifest.has_value(); });
    if (!QTest::qWaitFor([&] { return made; })) qFatal("No file is made");
    burrow::DeviceFiles files;
    burrow::SeededRandom random(5);
    const burrow::Surroundings around{stage.clock, random, burrow::Zone::utc()};
    const auto path = stage.folder.path() / "other.book";
    if (!burrow::exchange::joinFromBundle(path, start, files, around)) qFatal("Nobody joins");
    auto book = burrow::Book::open(path, burrow::storage::Access::readWrite, around).value();
    burrow::Subject sling;
    sling.number = "901";
    sling.species = "Brachypelma hamorii";
    const auto known = stage.resident("044")->subject().id.uuid;
    book
        .record(std::vector<burrow::Draft>{
            burrow::SetDraft{burrow::ThingType::subject, book.newId(), burrow::toFields(sling)},
            burrow::SetDraft{burrow::ThingType::subject, known, {{"note", "Bolts at night"}}}})
        .value();
    const auto file = stage.folder.path() / "kiln-row-2.burrow";
    if (!burrow::exchange::exportBundle(book, file, {})) qFatal("No file is made there");
    return file;
}

void takeInWithADifference(Stage& stage) {
    const auto file = fileOfAnotherPhone(stage);
    burrow::Deed deed;
    deed.compose = [id = stage.resident("044")->subject().id](
                       burrow::Book&) -> burrow::Result<std::vector<burrow::Draft>> {
        return std::vector<burrow::Draft>{burrow::SetDraft{
            burrow::ThingType::subject, id.uuid, {{"note", "Calm, webs over the dish"}}}};
    };
    stage.desk->act(stage.desk.get(), std::move(deed));
    stage.settle();
    stage.go("TakeInPage");
    stage.click("Choose a file");
    stage.chooseFiles({file});
    if (!QTest::qWaitFor([&] { return stage.has("Take it in"); })) qFatal("The file is not read");
}

std::vector<Scene> scenes() {
    const auto place = [](const char* word) { return [word](Stage& stage) { stage.click(word); }; };
    std::vector<Scene> all{
        {"first", Stage::Start::NoBook, [](Stage&) {}},
        {"new_room", Stage::Start::NoBook,
         [](Stage& stage) {
             stage.click("Tag an animal");
             stage.fill("Name of the room", "Kiln Row");
         }},
        inRoom("due", [](Stage&) {}),
        inRoom("due_end", [](Stage& stage) { stage.toTheEnd(); }),
        inRoom("due_filter", [](Stage& stage) { stage.click("Show a part"); }),
        inRoom("due_part",
               [](Stage& stage) {
                   stage.click("Show a part");
                   stage.click("Feeding");
                   stage.click("Close");
               }),
        inRoom("shelves", place("Shelves")),
        inRoom("shelves_list",
               [](Stage& stage) {
                   stage.click("Shelves");
                   stage.click("List");
               }),
        inRoom("shelf",
               [](Stage& stage) {
                   stage.click("Shelves");
                   stage.click(stage.first("ShelfMapRow"));
               }),
        inRoom("shelves_nobody",
               [](Stage& stage) {
                   stage.click("Shelves");
                   stage.search("zzqx");
               }),
        inRoom("shelves_found",
               [](Stage& stage) {
                   stage.click("Shelves");
                   stage.search("hamorii");
               }),
        inRoom("whole_shelf",
               [](Stage& stage) {
                   stage.click("Shelves");
                   stage.click("Shelf A");
                   stage.click("Water or dampen all of it");
               }),
        inRoom("pairings", place("Pairings")),
        inRoom("stall", place("Stall")),
        inRoom("round", [](Stage& stage) { stage.round("044"); }),
        inRoom("hold", [](Stage& stage) { stage.round("002"); }),
        inRoom("round_undo",
               [](Stage& stage) {
                   stage.settings->setScanNext(false);
                   stage.round("044");
                   stage.click("Took it");
               }),
        inRoom("scan", atTheScanner),
        inRoom("scan_found",
               [](Stage& stage) {
                   atTheScanner(stage);
                   stage.scanner.showTag(stage.payloadOf("044"));
               }),
        page("animal", "AnimalPage", of("044")),
        lowerPart("animal_end", page("animal", "AnimalPage", of("044"))),
        page("group", "AnimalPage",
             [](Stage& stage) {
                 return QVariantMap{{"subject", firstOf(stage, burrow::Form::group)}};
             }),
        inRoom("entry",
               [](Stage& stage) {
                   stage.go("AnimalPage", of("044")(stage));
                   stage.click(stage.first("EntryRow"));
               }),
        page("enclosure", "EnclosurePage",
             [](Stage& stage) {
                 const auto home = stage.resident("044")->subject().enclosure.value();
                 return QVariantMap{{"enclosure", QString::fromStdString(home.text())}};
             }),
        page("log", "LogPage", of("044")),
        inRoom("log_form",
               [](Stage& stage) {
                   stage.go("LogPage", of("044")(stage));
                   stage.click("Offered food");
               }),
        page("history", "HistoryPage", of("044")),
        page("animal_form", "AnimalFormPage"),
        page("animal_change", "AnimalFormPage", of("044")),
        page("moult", "MoultPage", of("044")),
        inRoom("moult_saved",
               [](Stage& stage) {
                   stage.go("MoultPage", of("044")(stage));
                   stage.fill("Leg span", "96");
                   stage.click("Save moult");
               }),
        inRoom("measure",
               [](Stage& stage) {
                   saveMoultWithPhoto(stage, matPhoto());
                   stage.click("Measure it in the photo");
                   const auto isFound = [&] { return stage.has("Drag both ends"); };
                   if (!QTest::qWaitFor(isFound, 30'000)) qFatal("The mat is not found");
                   const auto ends = carapaceEnds();
                   stage.drag(stage.named("firstEnd"), placeIn(stage.named("measured"), ends[0]));
                   stage.drag(stage.named("secondEnd"), placeIn(stage.named("measured"), ends[1]));
               }),
        page("sizes", "SizesPage", of("044")),
        inRoom("sex_queue",
               [](Stage& stage) {
                   saveMoultWithPhoto(stage);
                   stage.click("Done");
                   stage.go("SexQueuePage");
               }),
        inRoom("sex",
               [](Stage& stage) {
                   saveMoultWithPhoto(stage);
                   stage.click("Look at it for the sex");
                   stage.click("Female");
               }),
        inRoom("sex_look",
               [](Stage& stage) {
                   saveMoultWithPhoto(stage);
                   stage.click("Look at it for the sex");
                   stage.click("Closer");
                   stage.click(stage.named("next"));
                   waitForPhotos(stage);
               }),
        inRoom("sex_beside",
               [](Stage& stage) {
                   saveMoultWithPhoto(stage, matPhoto());
                   addAnEarlierMoult(stage);
                   stage.click("Look at it for the sex");
                   stage.click("Closer");
                   stage.click(stage.named("before"));
                   waitForPhotos(stage);
                   const auto isLinked = [&] { return stage.has("Both at the same scale"); };
                   if (!QTest::qWaitFor(isLinked, 30'000)) qFatal("The mats are not found");
               }),
        inRoom("sex_evidence",
               [](Stage& stage) {
                   saveMoultWithPhoto(stage);
                   stage.click("Look at it for the sex");
                   stage.click("Female");
                   stage.click(stage.named("stop 3"));
                   stage.click("Write it down");
                   stage.go("SexEvidencePage", of("044")(stage));
               }),
        page("judge", "JudgePage"),
        inRoom("opinion",
               [](Stage& stage) {
                   saveMoultWithPhoto(stage);
                   stage.click("Look at it for the sex");
                   stage.click("Ask another keeper");
               }),
        inRoom("mat",
               [](Stage& stage) {
                   stage.go("MatPage");
                   // Each sheet has a name of its own, so that its squares are never the same.
                   stage.first("SheetView")->setOpacity(0);
               }),
        inRoom("moult_camera",
               [](Stage& stage) {
                   stage.scanner.showPicture(moultPicture({1280, 960}));
                   stage.go("MoultPage", of("044")(stage));
                   stage.click("Photo");
               }),
        page("care_sheet", "CareSheetPage", of("044")),
        page("tag_sheet", "TagSheetPage"),
        ahead("prey", "PreyPage", "80 of 100 cases"),
        lowerPart("prey_end", ahead("prey", "PreyPage", "80 of 100 cases")),
        ahead("evenings", "EveningsPage", "in the next 14 days"),
        ahead("away", "AwayPage", "Before you go"),
        lowerPart("away_end", ahead("away", "AwayPage", "Before you go")),
        page("bring", "BringPage"),
        inRoom("bring_bad", bringBadRows),
        inRoom("bring_asking", chooseSpreadsheet),
        inRoom("mapping",
               [](Stage& stage) {
                   chooseSpreadsheet(stage);
                   stage.click("Say what its columns are");
               }),
        inRoom("mapping_end",
               [](Stage& stage) {
                   chooseSpreadsheet(stage);
                   stage.click("Say what its columns are");
                   stage.toTheEnd();
               }),
        inRoom("mapping_target",
               [](Stage& stage) {
                   chooseSpreadsheet(stage);
                   stage.click("Say what its columns are");
                   stage.click(stage.first("PickRow"));
               }),
        page("leave", "LeavePage"),
        page("calendar", "CalendarPage"),
        page("homes", "HomesPage"),
        page("air", "AirPage"),
        inRoom("air_place", takeInLoggersFile),
        lowerPart("air_place_end", inRoom("air_place", takeInLoggersFile)),
        page("air_file", "AirFilePage"),
        page("room", "RoomPage"),
        lowerPart("room_end", page("room", "RoomPage")),
        page("make_file", "MakeFilePage"),
        inRoom("make_file_made",
               [](Stage& stage) {
                   stage.go("MakeFilePage");
                   stage.click("Make it");
                   if (!QTest::qWaitFor([&] { return stage.has("Read back and complete"); })) {
                       qFatal("The file is not made");
                   }
               }),
        page("take_in", "TakeInPage"),
        inRoom("take_in_looked", takeInWithADifference),
        inRoom("take_in_taken",
               [](Stage& stage) {
                   takeInWithADifference(stage);
                   stage.click("Take it in");
                   if (!QTest::qWaitFor([&] { return stage.has("Nothing was deleted"); })) {
                       qFatal("The file is not taken in");
                   }
               }),
        page("differences", "DifferencesPage"),
        page("backups", "BackupsPage"),
        inRoom("backups_made",
               [](Stage& stage) {
                   stage.go("BackupsPage");
                   stage.click("Make one now");
                   if (!QTest::qWaitFor([&] { return stage.has("Made by hand"); })) {
                       qFatal("No copy is made");
                   }
               }),
        page("shared_folder", "SharedFolderPage"),
        {"join", Stage::Start::NoBook, [](Stage& stage) { stage.click("From my other phone"); }},
        page("look", "LookPage"),
        page("why", "WhyPage",
             [](Stage& stage) {
                 return QVariantMap{{"subject", stage.id("044")}, {"care", "feed"}};
             }),
        page("reminders", "RemindersPage"),
        page("rules", "RulesPage"),
        page("rule", "RulePage", ofRule),
        lowerPart("rule_end", page("rule", "RulePage", ofRule)),
        inRoom("rule_preview",
               [](Stage& stage) {
                   stage.go("RulePage", ofRule(stage));
                   stage.fill("Your value", "9-11");
                   stage.click("See what changes");
                   if (!QTest::qWaitFor([&] { return stage.has("It concerns"); })) {
                       qFatal("There is no preview");
                   }
               }),
        page("numbers", "NumbersPage"),
        page("number", "NumberPage", ofNumber),
        inRoom("number_own", changeANumber),
        inRoom("number_refused",
               [](Stage& stage) {
                   stage.go("NumberPage", ofNumber(stage));
                   stage.fill("Where a plate shows", "5000");
                   stage.click("Keep the change");
               }),
        page("species", "SpeciesPage"),
        page("species_new", "ProfileFormPage"),
        page("species_change", "ProfileFormPage",
             [](Stage&) {
                 return QVariantMap{{"species", "Poecilotheria metallica"}};
             }),
        page("profile", "ProfilePage",
             [](Stage&) {
                 return QVariantMap{{"species", "Poecilotheria metallica"}};
             }),
        page("about", "AboutPage"),
    };
    return all;
}

const Scene& sceneNamed(const QString& name) {
    static const auto all = scenes();
    return *std::find_if(all.begin(), all.end(),
                         [&name](const Scene& scene) { return name == QLatin1String(scene.name); });
}

/// Comes to the scene, without what is different each time: how much time there is left to undo, and
/// where the book of the test stands.
void arrive(Stage& stage, const QString& scene) {
    stage.settings->setUndoTime(0);
    sceneNamed(scene).arrive(stage);
    stage.settle();
    for (auto* item : stage.window->findChildren<QQuickItem*>("bookFile")) {
        item->setProperty("text", "/home/keeper/kiln-row.book");
        stage.settle();
        if (scene.endsWith("_end")) stage.toTheEnd();
    }
}

}  // namespace

class Screens : public QObject {
    Q_OBJECT

private slots:
    void lookAsBefore_data() {
        QTest::addColumn<QString>("scene");
        QTest::addColumn<double>("scale");
        for (const auto& scene : scenes()) {
            for (const double scale : {1.0, 1.6}) {
                const auto name = QLatin1String(scene.name) + suffix({false, scale});
                QTest::newRow(qPrintable(name)) << QString::fromLatin1(scene.name) << scale;
            }
        }
    }

    /// In the dark, and then the same page in daylight.
    void lookAsBefore() {
        QFETCH(QString, scene);
        QFETCH(double, scale);
        Stage stage(sceneNamed(scene).start, {false, scale});
        arrive(stage, scene);
        for (const bool day : {false, true}) {
            const Look look{day, scale};
            stage.wear(look);
            QCOMPARE(compareScreen(stage.picture(), QLatin1String("page_") + scene + suffix(look)),
                     QString());
        }
    }

    void everyControlIsNamedAndLargeEnough_data() {
        QTest::addColumn<QString>("scene");
        for (const auto& scene : scenes())
            QTest::newRow(scene.name) << QString::fromLatin1(scene.name);
    }

    void everyControlIsNamedAndLargeEnough() {
        QFETCH(QString, scene);
        constexpr double target = 48;
        Stage stage(sceneNamed(scene).start, {});
        sceneNamed(scene).arrive(stage);
        stage.settle();
        auto controls = stage.hand->controls();
        // Only what is pressed itself, not what passes a press on.
        controls.removeIf(
            [](const QQuickItem* item) { return !item->inherits("QQuickAbstractButton"); });
        QVERIFY(!controls.isEmpty());
        for (auto* control : controls) {
            auto* spoken = QAccessible::queryAccessibleInterface(control);
            const auto what = QString("%1 \"%2\", %3 by %4")
                                  .arg(QString::fromLatin1(control->metaObject()->className()),
                                       control->property("text").toString())
                                  .arg(control->width())
                                  .arg(control->height());
            QVERIFY2(spoken != nullptr && !spoken->text(QAccessible::Name).isEmpty(),
                     qPrintable(what));
            QVERIFY2(control->width() >= target && control->height() >= target, qPrintable(what));
        }
    }

    // Small, large and wide: nothing may be cut.
    void fitOtherScreens_data() {
        QTest::addColumn<QString>("scene");
        QTest::addColumn<QSize>("size");
        QTest::addColumn<double>("scale");
        for (const auto* scene : {"first", "due", "round", "hold", "animal", "log"}) {
            const auto row = [&](const char* tag, const QSize& size, double scale) {
                QTest::newRow(qPrintable(QLatin1String(scene) + QLatin1String(tag)))
                    << QString::fromLatin1(scene) << size << scale;
            };
            row("_small", {360, 640}, 1.0);
            row("_small_200", {360, 640}, 2.0);
            row("_tablet", {900, 1200}, 1.0);
        }
    }

    void fitOtherScreens() {
        QFETCH(QString, scene);
        QFETCH(QSize, size);
        QFETCH(double, scale);
        Stage stage(sceneNamed(scene).start, {.textScale = scale}, size);
        arrive(stage, scene);
        QCOMPARE(compareScreen(stage.picture(),
                               QLatin1String("page_") + QLatin1String(QTest::currentDataTag())),
                 QString());
    }
};

QTEST_MAIN(Screens)
#include "tst_screens.moc"
