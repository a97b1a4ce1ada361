// The tour: a keeper's evening on the invented room, played through the real pages without a display.
// The scanner reads films of printed tags, and a moult on a printed mat is measured. Writes its pictures, a
// tag sheet, a care sheet and a mat to a folder.
#include <QGuiApplication>
#include <QQmlApplicationEngine>
#include <QQuickStyle>
#include <QTemporaryDir>
#include <QtTest>
#include <cstdio>

#include "camera/frame_photographer.h"
#include "camera/video_scanner.h"
#include "demo_room.h"
#include "files/developer.h"
#include "files/reference.h"
#include "files/reminder_file.h"
#include "fonts.h"
#include "measure/mat.h"
#include "ports/darkroom.h"
#include "print/pdf_printer.h"
#include "share/desktop_sharer.h"
#include "tour/film.h"
#include "tour/scenery.h"
#include "tour/stagehand.h"
#include "viewmodels/bookcase.h"
#include "viewmodels/foldershare.h"
#include "viewmodels/reminders.h"

namespace burrow::demo {
namespace {

namespace fs = std::filesystem;

// A Friday evening in spring, so that the tour is the same whenever it is played.
const CivilDay tourDay = *civilDay({2026, 5, 8});
const Instant evening{tourDay.days * std::int64_t{86'400'000} + 69'240'000};

/// What looks for tags and takes photos: one film at a time.
struct Eye {
    std::unique_ptr<Scanner> scanner;
    std::unique_ptr<Photographer> photographer;  // destroyed before the scanner it uses
};

class Tour {
public:
    Tour(const Reference& reference, fs::path out)
        : reference_(reference),
          out_(std::move(out)),
          settings_(QString::fromStdString(scratch() / "settings.ini")),
          desk_({reference.words, reference.profiles, reference.rules, reference.numbers, clock_,
                 random_, Zone::utc()}),
          bookcase_(desk_, settings_, scratch(), [this](const fs::path& path) -> Done {
              Options options;
              options.until = tourDay;
              BURROW_TRY(const auto made,
                         makeRoom(path, options, {reference_.profiles, reference_.rules}));
              static_cast<void>(made);
              return {};
          }) {
        engine_.addImportPath("qrc:/qt/qml");
        engine_.setInitialProperties({{"desk", QVariant::fromValue(&desk_)},
                                      {"settings", QVariant::fromValue(&settings_)},
                                      {"bookcase", QVariant::fromValue(&bookcase_)},
                                      {"darkroom", QVariant::fromValue(&darkroom_)},
                                      {"printer", QVariant::fromValue<Printer*>(&printer_)},
                                      {"sharer", QVariant::fromValue<Sharer*>(&sharer_)},
                                      {"share", QVariant::fromValue(&share_)},
                                      {"reminders", QVariant::fromValue(&reminders_)}});
        QObject::connect(&engine_, &QQmlApplicationEngine::warnings, [this](const auto& warnings) {
            for (const auto& warning : warnings) {
                std::fprintf(stderr, "%s\n", qPrintable(warning.toString()));
            }
            hasWarned_ = true;
        });
        engine_.load(QUrl("qrc:/qt/qml/Burrow/Pages/Main.qml"));
        window_ = qobject_cast<QQuickWindow*>(engine_.rootObjects().value(0));
        if (window_ == nullptr) qFatal("The pages do not load");
        if (!QTest::qWaitForWindowExposed(window_)) qFatal("The window does not show");
        hand_ = std::make_unique<Stagehand>(*window_, desk_);
    }

    [[nodiscard]] Done play() {
        firstSteps();
        BURROW_DO(filmTheRoom());
        round();
        animal();
        moult();
        sheets();
        shelvesAndRoom();
        lookOfThings();
        return {};
    }
    [[nodiscard]] bool hasWarned() const { return hasWarned_; }

private:
    [[nodiscard]] fs::path scratch() const { return folder_.path().toStdString(); }

    void keep(const char* name, const char* what) {
        hand_->settle();
        keepAtOnce(name, what);
    }

    void keepAtOnce(const char* name, const char* what) {
        const auto file = QString("%1-%2.png").arg(++pictures_, 2, 10, QChar('0')).arg(name);
        if (!window_->grabWindow().save(QString::fromStdString(out_ / file.toStdString()))) {
            qFatal("The picture %s can't be written", qPrintable(file));
        }
        std::printf("%s  %s\n", qPrintable(file), what);
    }

    ResidentPtr resident(const char* number) {
        for (const auto& each : desk_.room()->residents()) {
            if (each->subject().number == number) return each;
        }
        qFatal("There is no animal %s", number);
    }
    QString id(const char* number) {
        return QString::fromStdString(resident(number)->subject().id.text());
    }

    /// Puts a film in front of the camera.
    void show(const char* film) {
        Eye next;
        next.scanner = std::make_unique<VideoScanner>(
            QUrl::fromLocalFile(QString::fromStdString(scratch() / film)));
        next.photographer = std::make_unique<FramePhotographer>(*next.scanner);
        window_->setProperty("scanner", QVariant::fromValue(next.scanner.get()));
        window_->setProperty("photographer", QVariant::fromValue(next.photographer.get()));
        std::swap(eye_, next);
    }

    void firstSteps() {
        hand_->settle();
        keep("first-run", "No book yet");
        hand_->click("Look at a demo");
        if (!QTest::qWaitFor([this] { return desk_.state() == Desk::State::Open; }, 60'000)) {
            qFatal("The invented room does not open: %s", qPrintable(desk_.refusal()));
        }
        keep("due", "What is due today, and why");
    }

    Done filmTheRoom() {
        BURROW_TRY(const auto tags,
                   printedTags({resident("044"), resident("062")}, reference_.words, scratch()));
        BURROW_DO(filmTag(tags.at(0), scratch() / "044.mp4"));
        BURROW_DO(filmTag(tags.at(1), scratch() / "062.mp4"));
        BURROW_TRY(const auto mat, printedMat(reference_.words, scratch()));
        return filmStill(moultOnMat(mat, tags.at(0)), scratch() / "moult.mp4");
    }

    void round() {
        show("044.mp4");
        hand_->click(hand_->first("ShelfHead"));
        keep("round-begins", "A round starts at the shelf: the first tub is on hold");
        hand_->click("Leave it");
        // It is read within moments: the picture is taken as soon as the number shows.
        if (!QTest::qWaitFor([this] { return hand_->has("044"); }, 20'000)) {
            qFatal("The tag is not read");
        }
        keepAtOnce("scanning", "The printed tag of 044 is read");
        hand_->waitFor("RoundPage");
        keep("round", "Read: what 044 gets, and one tap for it");
        show("062.mp4");
        hand_->click("Took it");
        hand_->waitFor("RoundPage");
        keep("next-tub", "The next tag was read; the last tap can be undone");
        hand_->click("Undo");
        keep("undone", "And is");
        hand_->key(Qt::Key_Escape);
    }

    void animal() {
        hand_->go("AnimalPage", {{"subject", id("044")}});
        keep("animal", "Its moult line and its growth");
        hand_->toTheEnd();
        keep("animal-end", "Its last entries");
        hand_->click("Log for 044");
        keep("log", "Anything else that can happen");
        hand_->key(Qt::Key_Escape);
        hand_->key(Qt::Key_Escape);
    }

    void moult() {
        show("moult.mp4");
        hand_->go("MoultPage", {{"subject", ""}});
        hand_->click("Photo");
        waitForText("Ready");
        keepAtOnce("moult-camera", "A moult on its mat, under the camera");
        hand_->click("Take the photo");
        waitForText("Filed under 044");
        keep("moult-filed", "The tag on the mat says whose it is");
        hand_->click("Done");
        hand_->fill("Leg span", "96");
        keep("moult", "Photographed, and the leg span typed");
        hand_->click("Save moult");
        waitForText("The moult is saved");
        keep("moult-saved", "Saved: no food until the fangs are hard");
        measure();
        hand_->click("Look at it for the sex");
        hand_->click("Female");
        hand_->click(hand_->named("stop 3"));
        keep("sexing", "What the photo says about the sex");
        hand_->click("Write it down");
        hand_->key(Qt::Key_Escape);
    }

    /// The carapace, from end to end.
    void measure() {
        hand_->click("Measure it in the photo");
        hand_->waitFor("MeasurePage");
        waitForText("Drag both ends");
        const auto* view = hand_->named("measured");
        const auto shown = view->property("contentRect").toRectF();
        // What is shown is the place for the moult, and 4 mm around it.
        const auto& place = burrow::measure::layoutOf(burrow::measure::MatPaper::a5).moult;
        const auto at = [&](const QPointF& onMat) {
            const QPointF part((onMat.x() - place.x.value + 4) / (place.width.value + 8),
                               (onMat.y() - place.y.value + 4) / (place.height.value + 8));
            return view
                ->mapToScene(
                    {shown.x() + shown.width() * part.x(), shown.y() + shown.height() * part.y()})
                .toPoint();
        };
        const auto ends = carapaceOnMat();
        hand_->drag(hand_->named("firstEnd"), at(ends[0]));
        hand_->drag(hand_->named("secondEnd"), at(ends[1]));
        keep("measure", "The carapace by the mat, and how sure it is");
        hand_->click("Save the length");
        hand_->key(Qt::Key_Escape);  // to the moult
    }

    void sheets() {
        desk_.settle();
        hand_->go("CareSheetPage", {{"subject", id("044")}});
        keep("care-sheet", "The care sheet for a buyer");
        hand_->click("Save PDF");
        hand_->chooseFolder(out_);
        waitForText("Saved as");
        keep("care-sheet-saved", "Saved");
        hand_->key(Qt::Key_Escape);
        hand_->go("TagSheetPage");
        keep("tags", "Tags for the whole room");
        hand_->click("Save PDF");
        hand_->chooseFolder(out_);
        waitForText("Saved as");
        hand_->key(Qt::Key_Escape);
        hand_->go("MatPage");
        keep("mat", "The mat for photos of moults");
        hand_->click("Save PDF");
        hand_->chooseFolder(out_);
        waitForText("Saved as");
        hand_->key(Qt::Key_Escape);
    }

    void waitForText(const char* text) {
        // The words stand in a strip's `happened`, which shows as text.
        if (!QTest::qWaitFor([&] { return hand_->has(text); }, 20'000)) {
            qFatal("There is no \"%s\"; there is: %s", text, qPrintable(hand_->words()));
        }
    }

    void shelvesAndRoom() {
        hand_->click("Shelves");
        keep("shelves", "The room as a map: a hole for every tub");
        hand_->search("hamorii");
        keep("search", "Found by species");
        hand_->go("RoomPage");
        keep("room", "The room and its files");
        hand_->click("Rules of thumb");
        keep("rules", "Every rule with its source, to be changed");
        hand_->key(Qt::Key_Escape);
        hand_->key(Qt::Key_Escape);
    }

    void lookOfThings() {
        settings_.setDaylight(true);
        hand_->click("Due");
        keep("daylight", "The same list at a fair, in daylight");
        settings_.setTextScale(1.6);
        keep("large-text", "With larger text");
        hand_->round(id("062"));
        keep("round-large-text", "And at the tub");
    }

    const Reference& reference_;
    const fs::path out_;
    QTemporaryDir folder_;
    FixedClock clock_{evening};
    SystemRandom random_;
    Settings settings_;
    Desk desk_;
    Bookcase bookcase_;
    DeviceFiles files_;
    QtDeveloper developer_;
    Darkroom darkroom_{files_, developer_};
    PdfPrinter printer_{files_};
    DesktopSharer sharer_{scratch() / "shared"};
    FolderShare share_{desk_, settings_, darkroom_};
    Reminders reminders_{desk_, settings_, loadReminderRules().value()};
    Eye eye_;
    QQmlApplicationEngine engine_;
    QQuickWindow* window_ = nullptr;
    std::unique_ptr<Stagehand> hand_;
    int pictures_ = 0;
    bool hasWarned_ = false;
};

int run(const fs::path& out) {
    const auto reference = loadReference();
    if (!loadFonts() || !reference) {
        std::fputs("The fonts, words or species of this build are broken. Build it anew.\n",
                   stderr);
        return 1;
    }
    std::error_code error;
    fs::create_directories(out, error);
    if (error) {
        std::fprintf(stderr, "The folder %s can't be made. Nothing was written. Name another.\n",
                     out.c_str());
        return 1;
    }
    Tour tour(*reference, fs::absolute(out));
    const auto played = tour.play();
    if (!played) {
        std::fprintf(stderr, "%s\n", reference->words.say(played.error().message, tourDay).c_str());
        return 1;
    }
    return tour.hasWarned() ? 1 : 0;
}

}  // namespace
}  // namespace burrow::demo

int main(int argc, char* argv[]) {
    QGuiApplication app(argc, argv);
    QQuickStyle::setStyle("Basic");
    if (argc != 2) {
        std::fprintf(stderr,
                     "Usage: burrow_tour FOLDER\nPlays the tour and writes its pictures there.\n");
        return 2;
    }
    return burrow::demo::run(argv[1]);
}
