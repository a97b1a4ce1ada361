// Which book lies on the desk: a new one, the last one, the invented one, or none.
#include <QFile>
#include <QSignalSpy>

#include "viewmodels/bookcase.h"
#include "viewmodels/desk_fixture.h"

using namespace burrow;
using namespace burrow::test;
using DeskState = Desk::State;

namespace {

class Bench {
public:
    Bench()
        : settings(QString::fromStdString((at.folder.path() / "s.ini").string())),
          bookcase(at.desk, settings, books(), [this](const std::filesystem::path& path) -> Done {
              if (failsToMake) return fail(Trouble::full, {"book.noRoom"});
              SystemRandom random;
              const auto book =
                  Book::create(path, "Invented", "IN", {at.clock, random, Zone::utc()});
              if (!book) return failAs(book);
              return {};
          }) {}

    [[nodiscard]] std::filesystem::path books() const { return at.folder.path() / "books"; }
    void start(const QString& room, const QString& code) {
        bookcase.startBook(room, code);
        QTRY_VERIFY(at.desk.state() != DeskState::Opening);
    }
    void openDemo() {
        bookcase.openDemo();
        QTRY_VERIFY(!bookcase.isBusy() && at.desk.state() != DeskState::Opening);
    }

    DeskFixture at;
    Settings settings;
    std::atomic<bool> failsToMake = false;
    Bookcase bookcase;
};

}  // namespace

class TestBookcase : public QObject {
    Q_OBJECT

private slots:
    void beginsEmpty() {
        Bench bench;
        QVERIFY(!bench.bookcase.hasOwnBook());
        bench.bookcase.openLast();
        QCOMPARE(bench.at.desk.state(), DeskState::NoBook);
    }

    void filesAreNamedAfterTheirRoom_data() {
        QTest::addColumn<QString>("room");
        QTest::addColumn<QString>("file");
        QTest::newRow("plain") << "Kiln Row"
                               << "kiln-row.book";
        QTest::newRow("signs") << " Kiln/Row: 2! "
                               << "kiln-row-2.book";
        QTest::newRow("path") << "../../Kiln"
                              << "kiln.book";
        QTest::newRow("no letter that files have") << "\u7A92"
                                                   << "room.book";
    }
    void filesAreNamedAfterTheirRoom() {
        QFETCH(QString, room);
        QFETCH(QString, file);
        Bench bench;
        bench.start(room, "KR");
        QCOMPARE(bench.at.desk.state(), DeskState::Open);
        QCOMPARE(bench.at.desk.bookPath(), bench.books() / file.toStdString());
        QCOMPARE(bench.at.desk.roomName(), room.trimmed());
    }

    void theLastBookIsOpenedAgain() {
        Bench bench;
        bench.start("Kiln Row", "KR");
        bench.start("Kiln Row", "KR");  // beside the first one
        QCOMPARE(bench.at.desk.bookPath().filename().string(), std::string("kiln-row-2.book"));
        bench.at.desk.close();
        QVERIFY(bench.bookcase.hasOwnBook());
        bench.bookcase.openLast();
        QTRY_COMPARE(bench.at.desk.state(), DeskState::Open);
        QCOMPARE(bench.at.desk.bookPath().filename().string(), std::string("kiln-row-2.book"));
    }

    void aRoomNeedsANameAndACode() {
        Bench bench;
        bench.start("  ", "KR");
        QCOMPARE(bench.at.desk.state(), DeskState::Refused);
        QVERIFY(bench.at.desk.refusal().contains("needs the name of the room"));
        QVERIFY(!bench.bookcase.hasOwnBook());
        QVERIFY(!std::filesystem::exists(bench.books() / "room.book"));
        bench.start("Kiln Row", "KR");
        QCOMPARE(bench.at.desk.state(), DeskState::Open);
    }

    void aLastBookThatCannotBeOpenedIsSaidAndNotForgotten_data() {
        QTest::addColumn<bool>("isGone");
        QTest::addColumn<QString>("words");
        QTest::newRow("gone") << true << "There is no book kiln-row.book";
        QTest::newRow("no book") << false << "This file is no Burrowbook";
    }
    void aLastBookThatCannotBeOpenedIsSaidAndNotForgotten() {
        QFETCH(bool, isGone);
        QFETCH(QString, words);
        Bench bench;
        bench.start("Kiln Row", "KR");
        const auto path = bench.at.desk.bookPath();
        bench.at.desk.close();
        bench.at.settle();
        const auto aside = bench.at.folder.path() / "aside.book";
        std::filesystem::rename(path, aside);
        if (!isGone) write(path, QByteArray(8000, 'x'));
        bench.bookcase.openLast();
        QTRY_COMPARE(bench.at.desk.state(), DeskState::Refused);
        QVERIFY2(bench.at.desk.refusal().startsWith(words), qPrintable(bench.at.desk.refusal()));
        QVERIFY(bench.bookcase.hasOwnBook());
        std::filesystem::rename(aside, path);  // the keeper puts it back
        bench.bookcase.openLast();
        QTRY_COMPARE(bench.at.desk.state(), DeskState::Open);
    }

    void theInventedRoomIsNoBookOfTheKeepers() {
        Bench bench;
        QSignalSpy busy(&bench.bookcase, &Bookcase::busyChanged);
        bench.bookcase.openDemo();
        QVERIFY(bench.bookcase.isBusy());
        bench.bookcase.openDemo();  // does nothing while it is being made
        QTRY_COMPARE(bench.at.desk.state(), DeskState::Open);
        QVERIFY(busy.count() >= 2);
        QVERIFY(bench.at.desk.isDemo());
        QVERIFY(!bench.bookcase.hasOwnBook());
        bench.bookcase.leaveDemo();
        QCOMPARE(bench.at.desk.state(), DeskState::NoBook);
    }

    void fromTheInventedRoomThereIsAWayBack() {
        Bench bench;
        bench.start("Kiln Row", "KR");
        const auto own = bench.at.desk.bookPath();
        bench.openDemo();
        QCOMPARE(bench.at.desk.roomName(), QString("Invented"));
        bench.bookcase.leaveDemo();
        QTRY_COMPARE(bench.at.desk.state(), DeskState::Open);
        QCOMPARE(bench.at.desk.bookPath(), own);
        QVERIFY(!bench.at.desk.isDemo());
    }

    void anInventedRoomThatWasNotFinishedIsMadeAnew() {
        Bench bench;
        std::filesystem::create_directories(bench.books() / "demo");
        write(bench.books() / "demo" / "kiln-row-demo.book.part", "half of it");
        bench.openDemo();
        QCOMPARE(bench.at.desk.state(), DeskState::Open);
        QVERIFY(!std::filesystem::exists(bench.books() / "demo" / "kiln-row-demo.book.part"));
    }

    void anInventedRoomThatCannotBeMadeCanBeTriedAgain() {
        Bench bench;
        bench.failsToMake = true;
        bench.openDemo();
        QCOMPARE(bench.at.desk.state(), DeskState::Refused);
        QVERIFY(bench.at.desk.refusal().startsWith("No room left on this device"));
        bench.failsToMake = false;
        bench.openDemo();
        QCOMPARE(bench.at.desk.state(), DeskState::Open);
    }

    void endsWhileTheInventedRoomIsBeingMade() {
        Bench bench;
        bench.bookcase.openDemo();
    }

private:
    static void write(const std::filesystem::path& path, const QByteArray& bytes) {
        QFile file(QString::fromStdString(path.string()));
        QVERIFY(file.open(QIODevice::WriteOnly));
        file.write(bytes);
    }
};

QTEST_GUILESS_MAIN(TestBookcase)
#include "tst_bookcase.moc"
