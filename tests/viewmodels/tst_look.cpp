// How the app looks on this device, and what it is made of.
#include <QDir>
#include <QFile>
#include <QSignalSpy>
#include <QtTest>

#include "support/book.h"
#include "viewmodels/aboutmodel.h"
#include "viewmodels/lookmodel.h"

using namespace burrow;
using namespace burrow::test;

class TestLook : public QObject {
    Q_OBJECT

private slots:
    void textGrowsAndShrinksByStepsUpToDouble() {
        Settings settings(file());
        LookModel look;
        QVERIFY(!look.canLarger() && look.textSize().isEmpty());
        look.setSettings(&settings);
        QCOMPARE(look.textSize(), QString("100 %"));
        look.larger();
        QCOMPARE(look.textSize(), QString("115 %"));
        for (int i = 0; i < 20; ++i) look.larger();
        QCOMPARE(look.textSize(), QString("200 %"));
        QVERIFY(!look.canLarger() && look.canSmaller());
        int steps = 0;
        for (; look.canSmaller(); ++steps) look.smaller();
        QCOMPARE(look.textSize(), QString("85 %"));
        QCOMPARE(steps, 7);
        look.smaller();
        QCOMPARE(look.textSize(), QString("85 %"));
    }

    void aSizeBetweenTheStepsGoesToTheNextOne() {
        Settings settings(file());
        settings.setTextScale(1.2);
        LookModel look;
        look.setSettings(&settings);
        look.larger();
        QCOMPARE(look.textSize(), QString("130 %"));
        settings.setTextScale(1.2);
        look.smaller();
        QCOMPARE(look.textSize(), QString("115 %"));
    }

    void undoTimeIsOneOfThree() {
        Settings settings(file());
        LookModel look;
        QCOMPARE(look.undoTime(), -1);
        look.setSettings(&settings);
        QCOMPARE(look.undoTime(), 0);
        look.setUndoTime(2);
        QCOMPARE(settings.undoTime(), 0);  // until the next tap
        QCOMPARE(look.undoTime(), 2);
        look.setUndoTime(7);
        QCOMPARE(look.undoTime(), 2);
        settings.setUndoTime(12'345);
        QCOMPARE(look.undoTime(), -1);
    }

    void changesAreTold() {
        Settings settings(file());
        LookModel look;
        look.setSettings(&settings);
        QSignalSpy changed(&look, &LookModel::changed);
        settings.setLeftHanded(true);
        QCOMPARE(changed.count(), 1);
        settings.setLeftHanded(true);
        QCOMPARE(changed.count(), 1);
    }

    void aFileWrittenByHandIsKeptWithinBounds() {
        {
            QFile odd(file());
            QVERIFY(odd.open(QIODevice::WriteOnly));
            odd.write("[General]\ntextScale=40\nundoTime=-5\ndaylight=true\n");
        }
        const Settings settings(file());
        QCOMPARE(settings.textScale(), 2.0);
        QCOMPARE(settings.undoTime(), 0);
        QVERIFY(settings.daylight());
        QVERIFY(settings.lastBook().isEmpty());
    }

    void aSpoiledFileGivesTheUsualLook() {
        {
            QFile odd(file());
            QVERIFY(odd.open(QIODevice::WriteOnly));
            odd.write("[General]\ntextScale=nan\nundoTime=soon\n");
        }
        const Settings settings(file());
        QCOMPARE(settings.textScale(), 1.0);
        QCOMPARE(settings.undoTime(), 8000);
    }

    void everyFontComesWithItsLicence() {
        const AboutModel about;
        QStringList texts;
        for (const auto& font : about.fonts()) {
            const auto map = font.toMap();
            const auto text = map.value("text").toString();
            QVERIFY2(text.contains("SIL OPEN FONT LICENSE Version 1.1", Qt::CaseInsensitive),
                     qPrintable(map.value("name").toString()));
            texts.append(text);
        }
        // Each text of a licence that travels along is shown.
        const QDir folder(":/burrow/fonts");
        for (const auto& name : folder.entryList({"*-OFL.txt"})) {
            QFile licence(folder.filePath(name));
            QVERIFY(licence.open(QIODevice::ReadOnly));
            QVERIFY2(texts.contains(QString::fromUtf8(licence.readAll())), qPrintable(name));
        }
    }

    void librariesAreNamedWithTheirLicence() {
        const AboutModel about;
        QStringList names;
        for (const auto& library : about.libraries()) {
            QVERIFY(!library.toMap().value("value").toString().isEmpty());
            names.append(library.toMap().value("name").toString());
        }
        for (const char* linked : {"Qt", "SQLite", "zxing-cpp", "libsodium", "libcsv", "fmt"}) {
            QVERIFY2(names.contains(linked), linked);
        }
        QCoreApplication::setApplicationVersion("1.2.3");
        QCOMPARE(about.version(), QString("1.2.3"));
    }

    void init() { folder_ = std::make_unique<ScratchFolder>(); }

private:
    [[nodiscard]] QString file() const {
        return QString::fromStdString((folder_->path() / "settings.ini").string());
    }
    std::unique_ptr<ScratchFolder> folder_;
};

QTEST_GUILESS_MAIN(TestLook)
#include "tst_look.moc"
