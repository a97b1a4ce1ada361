// Files as the keeper chooses and names them.
#include <QFile>
#include <QtTest>

#include "support/book.h"
#include "viewmodels/files.h"

using namespace burrow;
using namespace burrow::test;

class TestFiles : public QObject {
    Q_OBJECT

private slots:
    void photosAreToldFromABook() {
        const auto handed =
            handedOver({"/tmp/a.JPG", "/tmp/kiln-row.book", "/tmp/b.jpeg", "/tmp/c.png"});
        QCOMPARE(handed.book, QString("/tmp/kiln-row.book"));
        QCOMPARE(handed.photos,
                 (QList<QUrl>{QUrl::fromLocalFile("/tmp/a.JPG"), QUrl::fromLocalFile("/tmp/b.jpeg"),
                              QUrl::fromLocalFile("/tmp/c.png")}));
        const auto book = handedOver({"kiln-row.book"});
        QCOMPARE(book.book, QString("kiln-row.book"));
        QVERIFY(book.photos.isEmpty());
        QVERIFY(handedOver({}).book.isEmpty());
        // From the folder in which it was started.
        QVERIFY(handedOver({"d.png"}).photos.front().toLocalFile().startsWith('/'));
    }

    void whatIsElsewhereIsRefusedByName() {
        QCOMPARE(pathOf(QUrl("file:///photos/a%20b.jpg"))->string(),
                 std::string("/photos/a b.jpg"));
        for (const char* url : {"https://example.org/a.jpg", "content://provider/a.jpg"}) {
            const auto path = pathOf(QUrl(url));
            QVERIFY(!path);
            QCOMPARE(path.error().message.id, std::string("file.elsewhere"));
            QCOMPARE(std::get<std::string>(*path.error().message.find("file")),
                     std::string("a.jpg"));
        }
        QVERIFY(!pathOf(QUrl()));
    }

    void namesFitAnyDevice_data() {
        QTest::addColumn<QString>("text");
        QTest::addColumn<QString>("stem");
        QTest::newRow("plain") << "KR-214-care-sheet"
                               << "KR-214-care-sheet";
        QTest::newRow("slash") << "KR 214/a"
                               << "KR-214-a";
        QTest::newRow("way up") << "../../etc/passwd"
                                << "etc-passwd";
        QTest::newRow("hidden") << ".profile"
                                << "profile";
        QTest::newRow("drive") << "C:\\sheets"
                               << "C-sheets";
        QTest::newRow("dots at the end") << "sheet..."
                                         << "sheet";
        QTest::newRow("letters with marks") << "Gr\u00F6\u00DFe"
                                            << "Gr-e";
        QTest::newRow("none") << "\u7A92"
                              << "sheet";
        QTest::newRow("nothing") << ""
                                 << "sheet";
    }
    void namesFitAnyDevice() {
        QFETCH(QString, text);
        QFETCH(QString, stem);
        QCOMPARE(QString::fromStdString(fileStem(text.toStdString())), stem);
    }

    void nothingIsWrittenOver() {
        const ScratchFolder folder;
        const auto& place = folder.path();
        for (const char* name : {"sheet.pdf", "sheet-2.pdf", "sheet-3.pdf"}) {
            const auto path = freePath(place, "sheet", ".pdf");
            QCOMPARE(path, place / name);
            QFile file(QString::fromStdString(path.string()));
            QVERIFY(file.open(QIODevice::WriteOnly));
        }
        QCOMPARE(freePath(place, "sheet", ".csv"), place / "sheet.csv");
        QCOMPARE(freePath(place / "not-there-yet", "sheet", ".pdf"),
                 place / "not-there-yet" / "sheet.pdf");
    }
};

QTEST_APPLESS_MAIN(TestFiles)
#include "tst_files.moc"
