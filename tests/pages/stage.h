// The whole app on a stage: the real window, pages, view-models and desk on the invented room, with a
// clock that stands still and a camera that sees what the test shows it. Clicks are real clicks.
#pragma once

#include <QQmlApplicationEngine>
#include <QQuickItem>
#include <QQuickWindow>
#include <memory>

#include "base/clock.h"
#include "fake/fake_files.h"
#include "fake/fake_photographer.h"
#include "fake/fake_scanner.h"
#include "fake/fake_sharer.h"
#include "files/developer.h"
#include "files/reference.h"
#include "ports/darkroom.h"
#include "print/pdf_printer.h"
#include "support/book.h"
#include "support/screens.h"
#include "viewmodels/bookcase.h"

namespace burrow::test {

class Stage {
public:
    enum class Start { DemoRoom, NoBook };

    explicit Stage(Start start = Start::DemoRoom, const Look& look = {},
                   const QSize& size = {412, 915});
    ~Stage();

    /// Lets everything that is under way come to rest: the book's thread, fades, layouts.
    void settle();
    void wear(const Look& look);
    void resize(const QSize& size);
    [[nodiscard]] QImage picture();

    /// The visible control with that text, whole or at its beginning; fails the test for none.
    QQuickItem* control(const QString& text);
    [[nodiscard]] bool has(const QString& text);
    /// The visible item with that object name.
    QQuickItem* named(const QString& objectName);
    /// A real press and release in the middle of it, scrolled into view first.
    void click(QQuickItem* item);
    void click(const QString& text) { click(control(text)); }
    void key(Qt::Key key);
    void type(const QString& text);
    /// The first visible item of that file, "RuleStrip".
    QQuickItem* first(const QString& file);
    /// Types into the search line.
    void search(const QString& text);
    /// Answers the dialog of the device that was opened.
    void chooseFiles(const std::vector<std::filesystem::path>& chosen);
    void chooseFolder(const std::filesystem::path& chosen);
    /// Types into the line with that label.
    void fill(const QString& label, const QString& text);
    /// All text that can be seen, for looking for a sentence.
    [[nodiscard]] QString words();
    /// The name of the page on top, "RoundPage".
    [[nodiscard]] QString page();

    /// Opens a page as the navigation would.
    void go(const QString& page, const QVariantMap& properties = {});
    /// To the round, at that animal.
    void round(const QString& number);
    [[nodiscard]] ResidentPtr resident(const QString& number);
    [[nodiscard]] QString id(const QString& number);
    /// What a tag of that animal holds.
    [[nodiscard]] QByteArray payloadOf(const QString& number);

    FixedClock clock{fridayEvening};
    SystemRandom random;
    ScratchFolder folder;
    Reference reference;
    std::unique_ptr<Settings> settings;
    std::unique_ptr<Desk> desk;
    std::unique_ptr<Bookcase> bookcase;
    FakeScanner scanner;
    FakePhotographer photographer;
    FakeFiles files;  ///< of the printer and the darkroom
    QtDeveloper developer;
    Darkroom darkroom{files, developer};
    PdfPrinter printer{files};
    FakeSharer sharer{folder.path() / "shared"};
    std::unique_ptr<QQmlApplicationEngine> engine;
    QQuickWindow* window = nullptr;

private:
    [[nodiscard]] QList<QQuickItem*> visibleItems();
    QObject* dialog(const QString& name);
};

}  // namespace burrow::test
