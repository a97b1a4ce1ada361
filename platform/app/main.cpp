// Burrowbook: the only place where the app is put together.
#include <QCommandLineParser>
#include <QGuiApplication>
#include <QQmlApplicationEngine>
#include <QQuickStyle>
#include <QStandardPaths>

#include "camera/camera_photographer.h"
#include "camera/video_scanner.h"
#include "demo_room.h"
#include "files/reference.h"
#include "fonts.h"
#include "viewmodels/bookcase.h"

using namespace burrow;

namespace {

std::filesystem::path pathOf(const QString& path) { return path.toStdString(); }

QString folder(QStandardPaths::StandardLocation location) {
    return QStandardPaths::writableLocation(location);
}

/// What was asked for on the command line.
struct Asked {
    QString book;
    QString film;
    bool demo = false;
};

Asked readCommandLine(const QGuiApplication& app) {
    QCommandLineParser parser;
    parser.setApplicationDescription("The record book of an arachnid room.");
    parser.addHelpOption();
    parser.addVersionOption();
    const QCommandLineOption demo("demo", "Open the invented room.");
    const QCommandLineOption film("film", "Look at a film instead of the camera.", "FILE");
    parser.addOptions({demo, film});
    parser.addPositionalArgument("BOOK", "The book to open (the one that was open last).", "[BOOK]");
    parser.process(app);
    return {parser.positionalArguments().value(0), parser.value(film), parser.isSet(demo)};
}

int run(QGuiApplication& app, const Reference& reference) {
    const auto asked = readCommandLine(app);
    const SystemClock clock;
    SystemRandom random;
    const auto zone = Zone::ofDevice();
    Settings settings(folder(QStandardPaths::AppConfigLocation) + "/settings.ini");
    Desk desk({reference.words, reference.profiles, reference.rules, clock, random, zone});
    Bookcase bookcase(desk, settings, pathOf(folder(QStandardPaths::AppDataLocation)),
                      [&](const std::filesystem::path& path) -> Done {
                          demo::Options options;
                          options.until = zone.dayOf(clock.now());
                          options.zone = zone;
                          BURROW_TRY(const auto made,
                                     demo::makeRoom(path, options,
                                                    {reference.profiles, reference.rules}));
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

    std::unique_ptr<Scanner> scanner;
    std::unique_ptr<Photographer> photographer;
    if (asked.film.isEmpty()) {
        auto camera = std::make_unique<CameraScanner>();
        photographer = std::make_unique<CameraPhotographer>(*camera);
        scanner = std::move(camera);
    } else {
        scanner = std::make_unique<VideoScanner>(QUrl::fromLocalFile(asked.film));
        photographer = std::make_unique<FramePhotographer>(*scanner);
    }

    QQmlApplicationEngine engine;
    engine.addImportPath("qrc:/qt/qml");
    engine.setInitialProperties({
        {"desk", QVariant::fromValue(&desk)},
        {"settings", QVariant::fromValue(&settings)},
        {"bookcase", QVariant::fromValue(&bookcase)},
        {"scanner", QVariant::fromValue(scanner.get())},
        {"photographer", QVariant::fromValue(photographer.get())},
    });
    QObject::connect(
        &engine, &QQmlApplicationEngine::objectCreationFailed, &app, [] { QCoreApplication::exit(1); },
        Qt::QueuedConnection);
    engine.load("qrc:/qt/qml/Burrow/Pages/Main.qml");
    QObject::connect(&app, &QGuiApplication::applicationStateChanged, &desk,
                     [&](Qt::ApplicationState state) {
                         if (state == Qt::ApplicationActive) desk.refresh();
                     });
    return QGuiApplication::exec();
}

}  // namespace

int main(int argc, char* argv[]) {
    QGuiApplication app(argc, argv);
    QGuiApplication::setApplicationName("burrowbook");
    QGuiApplication::setApplicationDisplayName("Burrowbook");
    QGuiApplication::setApplicationVersion(BURROW_VERSION);
    QQuickStyle::setStyle("Basic");
    if (!loadFonts()) return 1;
    const auto reference = loadReference();
    if (!reference) {
        qCritical("%s", reference.error().message.id.c_str());
        return 1;
    }
    return run(app, *reference);
}
