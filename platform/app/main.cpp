// Burrowbook: the only place where the app is put together.
#include <QCommandLineParser>
#include <QFile>
#include <QGuiApplication>
#include <QQmlApplicationEngine>
#include <QQuickStyle>
#include <QQuickWindow>
#include <QStandardPaths>
#include <cstdlib>
#include <functional>
#include <future>
#include <memory>
#include <optional>
#include <utility>

#include "app/heap.h"
#include "app/open_eye.h"
#include "demo_room.h"
#include "files/developer.h"
#include "files/reference.h"
#include "files/reminder_file.h"
#include "fonts.h"
#include "notify/device_notifier.h"
#include "ports/darkroom.h"
#include "print/pdf_printer.h"
#include "share/desktop_sharer.h"
#include "viewmodels/bookcase.h"
#include "viewmodels/caretaker.h"
#include "viewmodels/files.h"
#include "viewmodels/foldershare.h"
#include "viewmodels/reminders.h"

using namespace burrow;

namespace {

std::filesystem::path pathOf(const QString& path) { return path.toStdString(); }

QString folder(QStandardPaths::StandardLocation location) {
    return QStandardPaths::writableLocation(location);
}

/// What was asked for on the command line.
struct Asked {
    QString book;
    QList<QUrl> photos;
    QString film;
    bool demo = false;
    bool measureStart = false;
};

Asked readCommandLine(const QGuiApplication& app) {
    QCommandLineParser parser;
    parser.setApplicationDescription("The record book of an arachnid room.");
    parser.addHelpOption();
    parser.addVersionOption();
    const QCommandLineOption demo("demo", "Open the invented room.");
    const QCommandLineOption film("film", "Look at a film instead of the camera.", "FILE");
    const QCommandLineOption measure("measure-start",
                                     "Quit once the first list is on the screen, and say how much "
                                     "memory that took. For measurements.");
    parser.addOptions({demo, film, measure});
    parser.addPositionalArgument("BOOK", "The book to open (the one that was open last).",
                                 "[BOOK]");
    parser.addPositionalArgument("PHOTO", "Photos of a moult, JPEG or PNG.", "[PHOTO...]");
    parser.process(app);
    const auto handed = handedOver(parser.positionalArguments());
    return {handed.book, handed.photos, parser.value(film), parser.isSet(demo),
            parser.isSet(measure)};
}

/// Calls `then` once, after the first frame that shows the room, or that there is none to show.
void onceShown(QQuickWindow& window, const Desk& desk, std::function<void()> then) {
    const auto connection = std::make_shared<QMetaObject::Connection>();
    *connection =
        QObject::connect(&window, &QQuickWindow::frameSwapped, &window,
                         [&window, &desk, connection, then = std::move(then)] {
                             if (desk.state() == Desk::State::Opening) return;
                             QObject::disconnect(*connection);
                             QMetaObject::invokeMethod(&window, then, Qt::QueuedConnection);
                         });
}

/// For measurements.
[[noreturn]] void sayMemoryAndQuit() {
    QFile status("/proc/self/status");
    if (status.open(QIODevice::ReadOnly)) {
        for (const auto& line : status.readAll().split('\n')) {
            if (line.startsWith("VmRSS")) qInfo("%s", line.constData());
        }
    }
    std::_Exit(0);
}

/// What is read while the window system wakes up: the words, species and rules, and the device's zone,
/// for which the whole list of zones is gone through.
struct Read {
    Result<Reference> reference;
    Result<ReminderRules> reminders;
    Zone zone;
};

int run(QGuiApplication& app, const Reference& reference, const ReminderRules& remindersBy,
        const Zone& zone) {
    const auto asked = readCommandLine(app);
    const SystemClock clock;
    SystemRandom random;
    Settings settings(folder(QStandardPaths::AppConfigLocation) + "/settings.ini");
    Desk desk({reference.words, reference.profiles, reference.rules, reference.numbers, clock,
               random, zone});
    Bookcase bookcase(desk, settings, pathOf(folder(QStandardPaths::AppDataLocation)),
                      [&](const std::filesystem::path& path) -> Done {
                          demo::Options options;
                          options.until = zone.dayOf(clock.now());
                          options.zone = zone;
                          BURROW_TRY(
                              const auto made,
                              demo::makeRoom(path, options, {reference.profiles, reference.rules}));
                          static_cast<void>(made);
                          return {};
                      });
    // The book is read in its own thread while the pages are loaded.
    if (asked.demo) {
        bookcase.openDemo();
    } else if (!asked.book.isEmpty()) {
        desk.open(pathOf(asked.book));
    } else {
        bookcase.openLast();
    }

    DeviceFiles files;
    QtDeveloper developer;
    Darkroom darkroom(files, developer);
    PdfPrinter printer(files);
    DesktopSharer sharer(pathOf(folder(QStandardPaths::CacheLocation)) / "shared");
    FolderShare share(desk, settings, darkroom);
    Reminders reminders(desk, settings, remindersBy);
    std::unique_ptr<Notifier> notifier;
    std::optional<Caretaker> caretaker;
    Eye eye;
    QQmlApplicationEngine engine;
    engine.addImportPath("qrc:/qt/qml");
    engine.setInitialProperties({
        {"desk", QVariant::fromValue(&desk)},
        {"settings", QVariant::fromValue(&settings)},
        {"bookcase", QVariant::fromValue(&bookcase)},
        {"darkroom", QVariant::fromValue(&darkroom)},
        {"printer", QVariant::fromValue<Printer*>(&printer)},
        {"sharer", QVariant::fromValue<Sharer*>(&sharer)},
        {"share", QVariant::fromValue(&share)},
        {"reminders", QVariant::fromValue(&reminders)},
        {"photos", QVariant::fromValue(asked.photos)},
    });
    QObject::connect(
        &engine, &QQmlApplicationEngine::objectCreationFailed, &app,
        [] { QCoreApplication::exit(1); }, Qt::QueuedConnection);
    engine.load("qrc:/qt/qml/Burrow/Pages/Main.qml");
    auto* window = qobject_cast<QQuickWindow*>(engine.rootObjects().value(0));
    if (window == nullptr) return 1;
    onceShown(*window, desk, [&] {
        if (asked.measureStart) sayMemoryAndQuit();
        // Loading what uses the camera takes as long as a page does: it waits until one stands.
        caretaker.emplace(desk);
        notifier = deviceNotifier();
        reminders.setNotifier(notifier.get());
        eye = openEye(asked.film);
        window->setProperty("scanner", QVariant::fromValue(eye.scanner.get()));
        window->setProperty("photographer", QVariant::fromValue(eye.photographer.get()));
    });
    // Another program may have written while the app was away, and the day may have changed.
    bool wasAway = false;
    QObject::connect(&app, &QGuiApplication::applicationStateChanged, &desk,
                     [&](Qt::ApplicationState state) {
                         if (state == Qt::ApplicationActive && std::exchange(wasAway, false)) {
                             desk.refresh();
                         } else if (state != Qt::ApplicationActive) {
                             wasAway = window->isExposed();
                         }
                     });
    return QGuiApplication::exec();
}

}  // namespace

int main(int argc, char* argv[]) {
    prepareHeap();
    auto reading = std::async(std::launch::async, [] {
        growHeap();
        return Read{loadReference(), loadReminderRules(), Zone::ofDevice()};
    });
    QGuiApplication app(argc, argv);
    QGuiApplication::setApplicationName("burrowbook");
    QGuiApplication::setApplicationDisplayName("Burrowbook");
    QGuiApplication::setApplicationVersion(BURROW_VERSION);
    QQuickStyle::setStyle("Basic");
    if (!loadFonts()) return 1;
    const auto read = reading.get();
    if (!read.reference) {
        qCritical("%s", read.reference.error().message.id.c_str());
        return 1;
    }
    if (!read.reminders) {
        qCritical("%s", read.reminders.error().message.id.c_str());
        return 1;
    }
    return run(app, *read.reference, *read.reminders, read.zone);
}
