// Taking everything along, and due dates for a calendar: into a folder, to another app, and what is said
// where that is not possible.
#include <QFile>
#include <QSignalSpy>

#include "fake/fake_sharer.h"
#include "support/assets.h"
#include "viewmodels/calendarmodel.h"
#include "viewmodels/desk_fixture.h"
#include "viewmodels/leavemodel.h"

using namespace burrow;
using namespace burrow::test;

namespace {

class Bench {
public:
    Bench() {
        at.openRoom();
        std::filesystem::create_directories(folder());
        leave.setDesk(&at.desk);
        dates.setDesk(&at.desk);
        dates.setSharer(&sharer);
    }
    [[nodiscard]] std::filesystem::path folder() const { return at.folder.path() / "Documents"; }
    [[nodiscard]] QUrl url() const {
        return QUrl::fromLocalFile(QString::fromStdString(folder().string()));
    }
    void save() {
        leave.saveTo(url());
        at.settle();
    }

    DeskFixture at;
    FakeSharer sharer{at.folder.path() / "shared"};
    LeaveModel leave;
    CalendarModel dates;
};

}  // namespace

class TestLeaveModel : public QObject {
    Q_OBJECT

private slots:
    void everythingGoesIntoAFolderOfItsOwn() {
        Bench bench;
        QVERIFY(bench.leave.contents().startsWith("4 animals and all that was written down"));
        bench.save();
        const auto out = bench.folder() / "Kiln-Row-2026-05-08";
        QVERIFY2(bench.leave.trouble().isEmpty(), qPrintable(bench.leave.trouble()));
        QVERIFY(bench.leave.savedText().startsWith(
            "Everything is in Kiln-Row-2026-05-08: 4 animals, "));
        QVERIFY(std::filesystem::exists(out / "animals.csv"));
        QVERIFY(std::filesystem::exists(out / "book.json"));
        // Once more: beside it, never over it.
        bench.save();
        QVERIFY(std::filesystem::exists(bench.folder() / "Kiln-Row-2026-05-08-2" / "book.json"));
    }

    void whatIsLeftOutStaysOut() {
        Bench bench;
        bench.leave.setTables(false);
        QVERIFY(!bench.leave.hasTables() && bench.leave.hasDocument());
        bench.leave.setDocument(false);  // one of the two has to go
        QVERIFY(bench.leave.hasTables() && !bench.leave.hasDocument());
        bench.leave.setPhotos(false);
        bench.save();
        const auto out = bench.folder() / "Kiln-Row-2026-05-08";
        QVERIFY(std::filesystem::exists(out / "events.csv"));
        QVERIFY(!std::filesystem::exists(out / "book.json"));
    }

    void troubleIsSaidAndNothingIsLeft() {
        Bench bench;
        bench.leave.saveTo(QUrl("content://provider/folder"));
        QVERIFY(bench.leave.trouble().contains("not on this device"));
        QFile blocker(QString::fromStdString((bench.folder() / "file").string()));
        QVERIFY(blocker.open(QIODevice::WriteOnly));
        bench.leave.saveTo(QUrl::fromLocalFile(blocker.fileName()));
        bench.at.settle();
        QVERIFY(!bench.leave.trouble().isEmpty() && !bench.leave.isWorking());
        QVERIFY(bench.leave.savedText().isEmpty());
    }

    void canBeStopped() {
        Bench bench;
        for (int i = 0; i < 3; ++i) {
            bench.at.desk.act(&bench.leave, {.compose = [id = bench.at.hamorii](
                                                            Book&) -> Result<std::vector<Draft>> {
                return std::vector<Draft>(2000, FactDraft{id, FactKind::watered, {}, std::nullopt});
            }});
        }
        bench.at.settle();
        QSignalSpy changed(&bench.leave, &LeaveModel::changed);
        auto held = bench.at.holdBook();
        bench.leave.saveTo(bench.url());
        QVERIFY(bench.leave.isWorking());
        bench.leave.stop();
        held.reset();
        bench.at.settle();
        QVERIFY(bench.leave.trouble().startsWith("Stopped. Nothing was written"));
        QVERIFY(std::filesystem::is_empty(bench.folder()));
    }

    void datesGoIntoAFolderOrToAnotherApp() {
        Bench bench;
        QVERIFY(bench.dates.hasAny());
        QVERIFY(bench.dates.contents().endsWith("due dates"));
        QVERIFY(!bench.dates.first().isEmpty());
        bench.dates.saveTo(bench.url());
        QCOMPARE(bench.dates.savedText(), QString("Saved as Kiln-Row-due.ics in Documents."));
        const auto text = slurp(bench.folder() / "Kiln-Row-due.ics");
        QVERIFY(text.starts_with("BEGIN:VCALENDAR\r\n"));
        QVERIFY(text.find("SUMMARY:Feed: KR-214 Brachypelma hamorii\r\n") != std::string::npos);
        bench.dates.share();
        QCOMPARE(bench.sharer.shared().size(), 1U);
        QCOMPARE(slurp(bench.sharer.shared().front()), text);
        bench.sharer.setNobodyThere();
        bench.dates.share();
        QVERIFY(!bench.dates.trouble().isEmpty());
        bench.dates.saveTo(QUrl("content://provider/folder"));
        QVERIFY(bench.dates.trouble().contains("not on this device"));
    }

    void fartherAheadThereIsMore() {
        Bench bench;
        QCOMPARE(bench.dates.spans().size(), 3);
        bench.dates.setSpan(0);
        const auto near = bench.dates.contents();
        bench.dates.setSpan(2);
        QVERIFY(near != bench.dates.contents());
        bench.dates.setSpan(9);
        QCOMPARE(bench.dates.span(), 2);
    }
};

QTEST_GUILESS_MAIN(TestLeaveModel)
#include "tst_leave_model.moc"
