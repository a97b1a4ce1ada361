#include "pages/stage.h"

#include <QtTest>
#include <fstream>

#include "demo_room.h"
#include "tags/code.h"
#include "viewmodels/roundmodel.h"

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

void collect(QQuickItem* item, QList<QQuickItem*>& into) {
    if (item == nullptr || !item->isVisible() || item->opacity() == 0) return;
    into.append(item);
    for (auto* child : item->childItems()) collect(child, into);
}

/// Moves the nearest thing that scrolls so that the item lies in its middle.
void scrollTo(QQuickItem* item) {
    for (auto* parent = item->parentItem(); parent != nullptr; parent = parent->parentItem()) {
        const auto contentY = parent->property("contentY");
        auto* content = parent->property("contentItem").value<QQuickItem*>();
        if (!contentY.isValid() || content == nullptr) continue;
        const auto at = item->mapToItem(content, {0, item->height() / 2}).y();
        const auto origin = parent->property("originY").toReal();
        const auto most = origin + parent->property("contentHeight").toReal() - parent->height();
        parent->setProperty("contentY",
                            std::max(origin, std::min(at - parent->height() / 2, most)));
        return;
    }
}

bool isControl(const QQuickItem* item) {
    return item->metaObject()->indexOfSignal("activated()") >= 0 && item->isEnabled();
}

/// "RuleStrip" of RuleStrip.qml.
QString fileOf(const QObject* item) {
    return QString::fromLatin1(item->metaObject()->className()).section('_', 0, 0);
}

QString textOf(const QQuickItem* item) { return item->property("text").toString(); }

}  // namespace

Stage::Stage(Start start, const Look& look, const QSize& size) : reference(loadReference().value()) {
    const auto& path = folder.path();
    settings = std::make_unique<Settings>(QString::fromStdString((path / "settings.ini").string()));
    desk = std::make_unique<Desk>(Knowledge{reference.words, reference.profiles, reference.rules,
                                            clock, random, Zone::utc()});
    bookcase = std::make_unique<Bookcase>(
        *desk, *settings, path, [](const std::filesystem::path& to) -> Done {
            std::filesystem::create_directories(to.parent_path());
            std::filesystem::copy_file(demoBook(), to);
            return {};
        });
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
    engine->setInitialProperties({{"desk", QVariant::fromValue(desk.get())},
                                  {"settings", QVariant::fromValue(settings.get())},
                                  {"bookcase", QVariant::fromValue(bookcase.get())},
                                  {"darkroom", QVariant::fromValue(&darkroom)},
                                  {"printer", QVariant::fromValue<Printer*>(&printer)},
                                  {"sharer", QVariant::fromValue<Sharer*>(&sharer)},
                                  {"scanner", QVariant::fromValue<Scanner*>(&scanner)},
                                  {"photographer", QVariant::fromValue<Photographer*>(&photographer)},
                                  {"width", size.width()},
                                  {"height", size.height()}});
    engine->load(QUrl(QStringLiteral("qrc:/qt/qml/Burrow/Pages/Main.qml")));
    if (engine->rootObjects().isEmpty()) qFatal("The window does not load");
    window = qobject_cast<QQuickWindow*>(engine->rootObjects().first());
    if (!QTest::qWaitForWindowExposed(window)) qFatal("The window is not shown");
    settle();
}

Stage::~Stage() {
    engine.reset();
    desk.reset();
}

void Stage::settle() {
    // A question asked now is answered after everything that was given to the book before.
    for (int round = 0; round < 2; ++round) {
        bool answered = false;
        desk->ask<int>(
            desk.get(), [](Book&) -> Result<int> { return 1; },
            [&answered](const Result<int>&) { answered = true; });
        if (!QTest::qWaitFor([&] { return answered && desk->state() != Desk::State::Opening; })) {
            qFatal("The desk does not answer");
        }
        if (window == nullptr) return;
        auto* stack = window->property("stack").value<QQuickItem*>();
        if (!QTest::qWaitFor([&] { return !stack->property("busy").toBool(); })) {
            qFatal("A page does not come to rest");
        }
        QTest::qWait(20);
    }
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

QImage Stage::picture() {
    settle();
    return window->grabWindow();
}

QList<QQuickItem*> Stage::visibleItems() {
    QList<QQuickItem*> items;
    collect(window->contentItem(), items);
    return items;
}

QQuickItem* Stage::control(const QString& text) {
    const auto items = visibleItems();
    // What lies on top comes later; a sheet's button wins over one of the page below.
    for (const bool whole : {true, false}) {
        for (auto item = items.crbegin(); item != items.crend(); ++item) {
            const auto own = textOf(*item);
            const bool fits = whole ? own == text : own.startsWith(text);
            if (fits && isControl(*item)) return *item;
        }
    }
    qFatal("There is no control \"%s\"; there is: %s", qPrintable(text), qPrintable(words()));
}

bool Stage::has(const QString& text) { return words().contains(text); }

QQuickItem* Stage::named(const QString& objectName) {
    const auto items = visibleItems();
    for (auto* item : items) {
        if (item->objectName() == objectName) return item;
    }
    qFatal("There is no item named %s", qPrintable(objectName));
}

void Stage::click(QQuickItem* item) {
    scrollTo(item);
    settle();
    const auto middle = item->mapToScene({item->width() / 2, item->height() / 2}).toPoint();
    QTest::mouseClick(window, Qt::LeftButton, {}, middle);
    // Touches within 250 ms on the same control count once.
    QTest::qWait(260);
    settle();
}

void Stage::key(Qt::Key key) {
    QTest::keyClick(window, key);
    settle();
}

void Stage::type(const QString& text) {
    for (const auto character : text) QTest::keyClick(window, character.toLatin1());
    settle();
}

QQuickItem* Stage::first(const QString& file) {
    for (auto* item : visibleItems()) {
        if (fileOf(item) == file) return item;
    }
    qFatal("There is no %s", qPrintable(file));
}

void Stage::search(const QString& text) {
    auto* line = first(QStringLiteral("SearchLine"));
    line->property("field").value<QQuickItem*>()->forceActiveFocus(Qt::TabFocusReason);
    type(text);
}

QObject* Stage::dialog(const QString& name) {
    QObject* found = nullptr;
    if (!QTest::qWaitFor([&] {
            found = window->findChild<QObject*>(name);
            return found != nullptr;
        })) {
        qFatal("There is no dialog %s", qPrintable(name));
    }
    return found;
}

void Stage::chooseFiles(const std::vector<std::filesystem::path>& chosen) {
    QList<QUrl> urls;
    for (const auto& file : chosen) {
        urls.append(QUrl::fromLocalFile(QString::fromStdString(file.string())));
    }
    auto* open = dialog(QStringLiteral("fileDialog"));
    QMetaObject::invokeMethod(open, "filesChosen", Q_ARG(QVariant, QVariant::fromValue(urls)));
    QMetaObject::invokeMethod(open, "reject");
    settle();
}

void Stage::chooseFolder(const std::filesystem::path& chosen) {
    auto* open = dialog(QStringLiteral("folderDialog"));
    QMetaObject::invokeMethod(
        open, "folderChosen",
        Q_ARG(QUrl, QUrl::fromLocalFile(QString::fromStdString(chosen.string()))));
    QMetaObject::invokeMethod(open, "reject");
    settle();
}

void Stage::fill(const QString& label, const QString& text) {
    const auto items = visibleItems();
    for (auto item = items.crbegin(); item != items.crend(); ++item) {
        auto* field = (*item)->property("field").value<QQuickItem*>();
        if (field == nullptr || !(*item)->property("label").toString().startsWith(label)) continue;
        field->forceActiveFocus(Qt::TabFocusReason);
        field->setProperty("text", QString());
        type(text);
        return;
    }
    qFatal("There is no line \"%s\"", qPrintable(label));
}

QString Stage::words() {
    QStringList all;
    for (const auto* item : visibleItems()) {
        if (const auto text = textOf(item); !text.isEmpty() && !all.contains(text)) all.append(text);
    }
    return all.join(QStringLiteral(" | "));
}

QString Stage::page() {
    auto* stack = window->property("stack").value<QQuickItem*>();
    auto* top = stack->property("currentItem").value<QQuickItem*>();
    return fileOf(top);
}

void Stage::go(const QString& page, const QVariantMap& properties) {
    auto* kit = window->property("kit").value<QObject*>();
    auto* navigation = kit->property("navigation").value<QObject*>();
    QMetaObject::invokeMethod(navigation, "pushed", Q_ARG(QString, page),
                              Q_ARG(QVariant, QVariant(properties)));
    settle();
}

void Stage::round(const QString& number) {
    auto* kit = window->property("kit").value<QObject*>();
    kit->property("round").value<RoundModel*>()->goTo(id(number));
    go(QStringLiteral("RoundPage"));
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
