#include "pages/stage.h"

#include <QtTest>
#include <fstream>

#include "demo_room.h"
#include "tags/code.h"

namespace burrow::test {
namespace {

/// The invented room, made once for a test program and copied for each stage.
const std::filesystem::path& demoBook() {
    static const ScratchFolder folder;
    static const auto path = [] {
        auto book = folder.path() / "demo.book";
        const auto reference = loadReference().value();
        demo::Options options;
        options.until = *civilDay({2026, 5, 8});
        const auto made = demo::makeRoom(book, options, {reference.profiles, reference.rules});
        if (!made) qFatal("%s", made.error().message.id.c_str());
        return book;
    }();
    return path;
}

}  // namespace

Stage::Stage(Start start, const Look& look, const QSize& size)
    : reference(loadReference().value()) {
    const auto& path = folder.path();
    settings = std::make_unique<Settings>(QString::fromStdString((path / "settings.ini").string()));
    desk = std::make_unique<Desk>(Knowledge{reference.words, reference.profiles, reference.rules,
                                            reference.numbers, clock, random, Zone::utc()});
    bookcase = std::make_unique<Bookcase>(*desk, *settings, path,
                                          [](const std::filesystem::path& to) -> Done {
                                              std::filesystem::create_directories(to.parent_path());
                                              std::filesystem::copy_file(demoBook(), to);
                                              return {};
                                          });
    share = std::make_unique<FolderShare>(*desk, *settings, darkroom);
    reminders = std::make_unique<Reminders>(*desk, *settings, loadReminderRules().value());
    reminders->setNotifier(&notifier);
    if (start == Start::DemoRoom) {
        std::filesystem::copy_file(demoBook(), path / "room.book");
        desk->open(path / "room.book");
    }
    wear(look);
    engine = std::make_unique<QQmlApplicationEngine>();
    prepare(*engine);
    QObject::connect(engine.get(), &QQmlApplicationEngine::warnings, [](const auto& warnings) {
        for (const auto& warning : warnings) QTest::qFail(qPrintable(warning.toString()), "", 0);
    });
    engine->setInitialProperties(
        {{"desk", QVariant::fromValue(desk.get())},
         {"settings", QVariant::fromValue(settings.get())},
         {"bookcase", QVariant::fromValue(bookcase.get())},
         {"darkroom", QVariant::fromValue(&darkroom)},
         {"printer", QVariant::fromValue<Printer*>(&printer)},
         {"sharer", QVariant::fromValue<Sharer*>(&sharer)},
         {"share", QVariant::fromValue(share.get())},
         {"reminders", QVariant::fromValue(reminders.get())},
         {"scanner", QVariant::fromValue<Scanner*>(&scanner)},
         {"photographer", QVariant::fromValue<Photographer*>(&photographer)},
         {"width", size.width()},
         {"height", size.height()}});
    engine->load(QUrl(QStringLiteral("qrc:/qt/qml/Burrow/Pages/Main.qml")));
    if (engine->rootObjects().isEmpty()) qFatal("The window does not load");
    window = qobject_cast<QQuickWindow*>(engine->rootObjects().first());
    if (!QTest::qWaitForWindowExposed(window)) qFatal("The window is not shown");
    hand = std::make_unique<demo::Stagehand>(*window, *desk);
    settle();
}

Stage::~Stage() {
    engine.reset();
    reminders.reset();
    share.reset();
    desk.reset();
}

void Stage::wear(const Look& look) {
    settings->setDaylight(look.day);
    settings->setTextScale(look.textScale);
    settings->setReducedMotion(look.reducedMotion);
    settings->setLeftHanded(look.leftHanded);
}

void Stage::resize(const QSize& size) {
    window->resize(size);
    settle();
}

ResidentPtr Stage::resident(const QString& number) {
    for (const auto& resident : desk->room()->residents()) {
        if (resident->subject().number == number.toStdString()) return resident;
    }
    qFatal("There is no animal %s", qPrintable(number));
}

QString Stage::id(const QString& number) {
    return QString::fromStdString(resident(number)->subject().id.text());
}

QByteArray Stage::payloadOf(const QString& number) {
    return QByteArray::fromStdString(
        tags::payload(resident(number)->kept.tagCode.value(), tags::printedSide));
}

}  // namespace burrow::test
