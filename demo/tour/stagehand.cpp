#include "tour/stagehand.h"

#include <QtTest>
#include <algorithm>

#include "viewmodels/roundmodel.h"

namespace burrow::demo {
namespace {

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
        const auto least = origin - parent->property("topMargin").toReal();
        parent->setProperty("contentY", std::max(least, std::min(at - parent->height() / 2, most)));
        return;
    }
}

bool isControl(const QQuickItem* item) {
    return item->metaObject()->indexOfSignal("activated()") >= 0 && item->isEnabled();
}

QString textOf(const QQuickItem* item) { return item->property("text").toString(); }

/// "RuleStrip" of RuleStrip.qml.
QString fileOf(const QObject* item) {
    return QString::fromLatin1(item->metaObject()->className()).section('_', 0, 0);
}

QQuickItem* stackOf(const QQuickWindow& window) {
    return window.property("stack").value<QQuickItem*>();
}

}  // namespace

void Stagehand::settle() {
    // A question asked now is answered after everything that was given to the book before.
    for (int round = 0; round < 2; ++round) {
        bool answered = false;
        desk_.ask<int>(
            &desk_, [](Book&) -> Result<int> { return 1; },
            [&answered](const Result<int>&) { answered = true; });
        if (!QTest::qWaitFor([&] { return answered && desk_.state() != Desk::State::Opening; })) {
            qFatal("The desk does not answer");
        }
        if (!QTest::qWaitFor([&] { return !stackOf(window_)->property("busy").toBool(); })) {
            qFatal("A page does not come to rest");
        }
        QTest::qWait(20);
    }
}

QImage Stagehand::picture() {
    settle();
    return window_.grabWindow();
}

QList<QQuickItem*> Stagehand::visibleItems() {
    QList<QQuickItem*> items;
    collect(window_.contentItem(), items);
    return items;
}

QQuickItem* Stagehand::control(const QString& text) {
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

QList<QQuickItem*> Stagehand::controls() {
    auto items = visibleItems();
    items.removeIf([](const QQuickItem* item) { return !isControl(item); });
    return items;
}

QQuickItem* Stagehand::named(const QString& objectName) {
    for (auto* item : visibleItems()) {
        if (item->objectName() == objectName) return item;
    }
    qFatal("There is no item named %s", qPrintable(objectName));
}

QQuickItem* Stagehand::first(const QString& file) {
    for (auto* item : visibleItems()) {
        if (fileOf(item) == file) return item;
    }
    qFatal("There is no %s", qPrintable(file));
}

void Stagehand::click(QQuickItem* item) {
    scrollTo(item);
    settle();
    const auto middle = item->mapToScene({item->width() / 2, item->height() / 2}).toPoint();
    QTest::mouseClick(&window_, Qt::LeftButton, {}, middle);
    // Touches within 250 ms on the same control count once.
    QTest::qWait(260);
    settle();
}

void Stagehand::drag(QQuickItem* item, const QPoint& to) {
    const auto from = item->mapToScene({item->width() / 2, item->height() / 2}).toPoint();
    constexpr int steps = 8;
    QTest::mousePress(&window_, Qt::LeftButton, {}, from);
    for (int i = 1; i <= steps; ++i) {
        QTest::mouseMove(&window_, from + (to - from) * i / steps);
        QTest::qWait(5);
    }
    QTest::mouseRelease(&window_, Qt::LeftButton, {}, to);
    settle();
}

void Stagehand::key(Qt::Key key) {
    QTest::keyClick(&window_, key);
    settle();
}

void Stagehand::type(const QString& text) {
    for (const auto character : text) QTest::keyClick(&window_, character.toLatin1());
    settle();
}

void Stagehand::fill(const QString& label, const QString& text) {
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

void Stagehand::search(const QString& text) {
    auto* line = first(QStringLiteral("SearchLine"));
    line->property("field").value<QQuickItem*>()->forceActiveFocus(Qt::TabFocusReason);
    type(text);
}

void Stagehand::toTheEnd() {
    auto* page = stackOf(window_)->property("currentItem").value<QQuickItem*>();
    for (auto* item : page->findChildren<QQuickItem*>()) {
        const auto height = item->property("contentHeight");
        if (!height.isValid() || !item->isVisible() || height.toReal() <= item->height()) continue;
        item->setProperty("contentY", item->property("originY").toReal() + height.toReal() -
                                          item->height() + item->property("bottomMargin").toReal());
    }
    settle();
}

QObject* Stagehand::dialog(const QString& name) {
    QObject* found = nullptr;
    if (!QTest::qWaitFor([&] {
            found = window_.findChild<QObject*>(name);
            return found != nullptr;
        })) {
        qFatal("There is no dialog %s", qPrintable(name));
    }
    return found;
}

void Stagehand::chooseFiles(const std::vector<std::filesystem::path>& chosen) {
    QList<QUrl> urls;
    for (const auto& file : chosen) {
        urls.append(QUrl::fromLocalFile(QString::fromStdString(file.string())));
    }
    auto* open = dialog(QStringLiteral("fileDialog"));
    QMetaObject::invokeMethod(open, "filesChosen", Q_ARG(QVariant, QVariant::fromValue(urls)));
    QMetaObject::invokeMethod(open, "reject");
    settle();
}

void Stagehand::chooseFolder(const std::filesystem::path& chosen) {
    auto* open = dialog(QStringLiteral("folderDialog"));
    QMetaObject::invokeMethod(
        open, "folderChosen",
        Q_ARG(QUrl, QUrl::fromLocalFile(QString::fromStdString(chosen.string()))));
    QMetaObject::invokeMethod(open, "reject");
    settle();
}

QString Stagehand::words() {
    QStringList all;
    for (const auto* item : visibleItems()) {
        if (const auto text = textOf(item); !text.isEmpty() && !all.contains(text))
            all.append(text);
    }
    return all.join(QStringLiteral(" | "));
}

QString Stagehand::page() {
    return fileOf(stackOf(window_)->property("currentItem").value<QQuickItem*>());
}

void Stagehand::waitFor(const QString& page) {
    constexpr int patience = 20'000;
    if (!QTest::qWaitFor([&] { return this->page() == page; }, patience)) {
        qFatal("%s does not open; there is: %s", qPrintable(page), qPrintable(words()));
    }
    settle();
}

QObject* Stagehand::kit(const char* part) {
    return window_.property("kit").value<QObject*>()->property(part).value<QObject*>();
}

void Stagehand::go(const QString& page, const QVariantMap& properties) {
    QMetaObject::invokeMethod(kit("navigation"), "pushed", Q_ARG(QString, page),
                              Q_ARG(QVariant, QVariant(properties)));
    settle();
}

void Stagehand::round(const QString& subject) {
    qobject_cast<RoundModel*>(kit("round"))->goTo(subject);
    go(QStringLiteral("RoundPage"));
}

}  // namespace burrow::demo
