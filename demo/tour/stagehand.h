// Works the real pages from outside, as a keeper's finger would: finds what can be seen, presses it,
// types. For the tour and for the tests of pages.
#pragma once

#include <QQuickItem>
#include <QQuickWindow>

#include "viewmodels/desk.h"

namespace burrow::demo {

/// Ends the program with a sentence where it is asked for what is not there.
class Stagehand {
public:
    /// Of the window of Main.qml; both outlive the stagehand.
    Stagehand(QQuickWindow& window, Desk& desk) : window_(window), desk_(desk) {}

    /// Lets everything that is under way come to rest: the book's thread, fades, layouts.
    void settle();
    [[nodiscard]] QImage picture();

    /// The visible control with that text, whole or at its beginning.
    QQuickItem* control(const QString& text);
    /// All that can be pressed.
    [[nodiscard]] QList<QQuickItem*> controls();
    /// The visible item with that object name.
    QQuickItem* named(const QString& objectName);
    /// The first visible item of that file, "RuleStrip".
    QQuickItem* first(const QString& file);
    /// A real press and release in the middle of it, scrolled into view first.
    void click(QQuickItem* item);
    void click(const QString& text) { click(control(text)); }
    /// Takes it, goes with it to that place in the window in small steps, and lets go.
    void drag(QQuickItem* item, const QPoint& to);
    void key(Qt::Key key);
    void type(const QString& text);
    /// Types into the line with that label.
    void fill(const QString& label, const QString& text);
    /// Types into the search line.
    void search(const QString& text);
    /// Answers the dialog of the device that was opened.
    void chooseFiles(const std::vector<std::filesystem::path>& chosen);
    void chooseFolder(const std::filesystem::path& chosen);
    /// Scrolls what lies on top to its end.
    void toTheEnd();

    /// All text that can be seen, for looking for a sentence.
    [[nodiscard]] QString words();
    [[nodiscard]] bool has(const QString& text) { return words().contains(text); }
    /// The name of the page on top, "RoundPage".
    [[nodiscard]] QString page();
    /// Waits until that page is on top.
    void waitFor(const QString& page);
    /// Opens a page as the navigation would.
    void go(const QString& page, const QVariantMap& properties = {});
    /// To the round, at that animal.
    void round(const QString& subject);

private:
    [[nodiscard]] QList<QQuickItem*> visibleItems();
    [[nodiscard]] QObject* kit(const char* part);
    QObject* dialog(const QString& name);

    QQuickWindow& window_;
    Desk& desk_;
};

}  // namespace burrow::demo
