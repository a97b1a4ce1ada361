// The whole app on a stage: the real window, pages, view-models and desk on the invented room, with a
// clock that stands still and a camera that sees what the test shows it. Clicks are real clicks.
#pragma once

#include <QQmlApplicationEngine>
#include <QQuickItem>
#include <QQuickWindow>
#include <memory>

#include "base/clock.h"
#include "fake/fake_files.h"
#include "fake/fake_notifier.h"
#include "fake/fake_photographer.h"
#include "fake/fake_scanner.h"
#include "fake/fake_sharer.h"
#include "files/developer.h"
#include "files/reference.h"
#include "files/reminder_file.h"
#include "ports/darkroom.h"
#include "print/pdf_printer.h"
#include "support/book.h"
#include "support/screens.h"
#include "tour/stagehand.h"
#include "viewmodels/bookcase.h"
#include "viewmodels/foldershare.h"
#include "viewmodels/reminders.h"

namespace burrow::test {

class Stage {
public:
    enum class Start { DemoRoom, NoBook };

    explicit Stage(Start start = Start::DemoRoom, const Look& look = {},
                   const QSize& size = {412, 915});
    ~Stage();

    // What the stagehand does.
    void settle() { hand->settle(); }
    [[nodiscard]] QImage picture() { return hand->picture(); }
    QQuickItem* control(const QString& text) { return hand->control(text); }
    QQuickItem* named(const QString& objectName) { return hand->named(objectName); }
    QQuickItem* first(const QString& file) { return hand->first(file); }
    void click(QQuickItem* item) { hand->click(item); }
    void click(const QString& text) { hand->click(text); }
    void drag(QQuickItem* item, const QPoint& to) { hand->drag(item, to); }
    void key(Qt::Key key) { hand->key(key); }
    void type(const QString& text) { hand->type(text); }
    void fill(const QString& label, const QString& text) { hand->fill(label, text); }
    void search(const QString& text) { hand->search(text); }
    void chooseFiles(const std::vector<std::filesystem::path>& chosen) {
        hand->chooseFiles(chosen);
    }
    void chooseFolder(const std::filesystem::path& chosen) { hand->chooseFolder(chosen); }
    void toTheEnd() { hand->toTheEnd(); }
    [[nodiscard]] QString words() { return hand->words(); }
    [[nodiscard]] bool has(const QString& text) { return hand->has(text); }
    [[nodiscard]] QString page() { return hand->page(); }
    void go(const QString& page, const QVariantMap& properties = {}) { hand->go(page, properties); }
    void round(const QString& number) { hand->round(id(number)); }

    void wear(const Look& look);
    void resize(const QSize& size);
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
    std::unique_ptr<FolderShare> share;
    FakeNotifier notifier;
    std::unique_ptr<Reminders> reminders;
    std::unique_ptr<QQmlApplicationEngine> engine;
    QQuickWindow* window = nullptr;
    std::unique_ptr<demo::Stagehand> hand;
};

}  // namespace burrow::test
