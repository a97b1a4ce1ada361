// When a symbol counts as pointed at.
#include <QtTest>

#include "camera/steadiness.h"

using namespace burrow;

namespace {

/// Frames as letters, a dot for one without a symbol; the news as the letter that was sighted, or -
/// where it was lost.
QString newsOf(const QString& frames) {
    Steadiness steadiness;
    QString news;
    for (const auto letter : frames) {
        const auto seen =
            letter == '.' ? std::nullopt : std::optional(QByteArray(1, letter.toLatin1()));
        const auto told = steadiness.next(seen);
        if (told.sighted) news += letter;
        if (told.lost) news += '-';
    }
    return news;
}

const QString tenMisses(10, '.');

}  // namespace

class TestSteadiness : public QObject {
    Q_OBJECT

private slots:
    void tells_data() {
        QTest::addColumn<QString>("frames");
        QTest::addColumn<QString>("news");
        QTest::newRow("nothing") << tenMisses + tenMisses << "";
        QTest::newRow("a glimpse") << "A"
                                   << "";
        QTest::newRow("twice in a row") << "AA"
                                        << "A";
        QTest::newRow("it stays") << "AAAAAAAA"
                                  << "A";
        QTest::newRow("not in a row") << "A.A.A.A"
                                      << "";
        QTest::newRow("in passing") << "AABAACAADAA"
                                    << "A";
        QTest::newRow("never twice") << "ABABABAB"
                                     << "";
        QTest::newRow("another one wins") << "AABB"
                                          << "AB";
        QTest::newRow("and the first wins again") << "AABBAA"
                                                  << "ABA";
        QTest::newRow("a blurred moment") << "AA.........AA"
                                          << "A";
        QTest::newRow("lost and back") << "AA" + tenMisses + "AA"
                                       << "A-A";
        QTest::newRow("lost once") << "AA" + tenMisses + tenMisses + tenMisses << "A-";
        QTest::newRow("a glimpse is lost too") << "A" + tenMisses << "-";
        QTest::newRow("misses count from the last sight") << "AA.....A.....A.....AA"
                                                          << "A";
        QTest::newRow("a gap and another") << "AA...BB"
                                           << "AB";
    }
    void tells() {
        QFETCH(QString, frames);
        QFETCH(QString, news);
        QCOMPARE(newsOf(frames), news);
    }

    void holdsUntilLost() {
        Steadiness steadiness;
        QVERIFY(!steadiness.holds());
        (void)steadiness.next("A");
        QVERIFY(steadiness.holds());
        for (int i = 0; i < 9; ++i) QVERIFY(!steadiness.next(std::nullopt).lost);
        QVERIFY(steadiness.holds());
        QVERIFY(steadiness.next(std::nullopt).lost);
        QVERIFY(!steadiness.holds());
    }
};

QTEST_APPLESS_MAIN(TestSteadiness)
#include "tst_steadiness.moc"
