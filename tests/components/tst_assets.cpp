// What travels inside the program: fonts with every character that is used, icons of one kind,
// data.
#include <QDirIterator>
#include <QFile>
#include <QJsonDocument>
#include <QPainterPath>
#include <QRawFont>
#include <QSvgRenderer>
#include <QXmlStreamReader>
#include <QtTest>

#include "fonts.h"

class AssetsTest : public QObject {
    Q_OBJECT

private slots:
    void fontsAreThere() { QVERIFY(burrow::loadFonts()); }
    void licencesTravelWithTheFonts();
    void readingFacesHaveEveryCharacterOfTheWords();
    void binomialFaceHasTheLettersOfNames();
    void zeroAndOhDiffer();
    void iconsAreDrawnAlike();
    void drawingsAreDrawnAlike();
    void dataIsReadable();

private:
    static QByteArray read(const QString& path) {
        QFile file(path);
        return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
    }
    static QRawFont face(const char* file) {
        return QRawFont(QStringLiteral(":/burrow/fonts/%1.ttf").arg(QLatin1String(file)), 20);
    }
    static QStringList filesUnder(const QString& folder, const QString& pattern) {
        QStringList paths;
        QDirIterator files(folder, {pattern}, QDir::Files, QDirIterator::Subdirectories);
        while (files.hasNext()) paths.append(files.next());
        return paths;
    }
};

void AssetsTest::licencesTravelWithTheFonts() {
    const QStringList licences =
        filesUnder(QStringLiteral(":/burrow/fonts"), QStringLiteral("*-OFL.txt"));
    QCOMPARE(licences.size(), 3);
    for (const QString& path : licences) {
        QVERIFY2(read(path).contains("SIL OPEN FONT LICENSE Version 1.1"), qPrintable(path));
    }
}

void AssetsTest::readingFacesHaveEveryCharacterOfTheWords() {
    // The letters of names and places in Latin script, and what numbers and prices need.
    QString used = QString::fromUtf8(
        "0123456789.,:;?()/%+-×±°£€$½…’‘“”–— áàâäãåæçéèêëíìîïñóòôöõø"
        "œßúùûüýÿčćđšžłńśźżőűğışțăĂÁÉÍÓÚÄÖÜÅØŁŠŽ");
    used += QChar(0x00A0);  // keeps a number and its unit together
    for (const QString& path :
         filesUnder(QStringLiteral(":/burrow/words"), QStringLiteral("*.json"))) {
        used += QString::fromUtf8(read(path)).remove(QLatin1Char('\n'));
    }
    for (const char* file :
         {"AtkinsonHyperlegibleNext-Regular", "AtkinsonHyperlegibleNext-SemiBold",
          "AtkinsonHyperlegibleNext-Bold"}) {
        const QRawFont font = face(file);
        QVERIFY2(font.isValid(), file);
        for (const QChar c : used) {
            QVERIFY2(font.supportsCharacter(c),
                     qPrintable(QStringLiteral("%1 has no U+%2 (%3)")
                                    .arg(QLatin1String(file))
                                    .arg(c.unicode(), 4, 16, QLatin1Char('0'))
                                    .arg(c)));
        }
    }
    for (const char* file : {"AtkinsonHyperlegibleMono-Medium", "AtkinsonHyperlegibleMono-SemiBold",
                             "AtkinsonHyperlegibleMono-Bold"}) {
        const QRawFont font = face(file);
        for (const QChar c : QString::fromUtf8(
                 "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789.,:/%+-±£€$ ")) {
            QVERIFY2(font.supportsCharacter(c), qPrintable(QString(c)));
        }
    }
}

void AssetsTest::binomialFaceHasTheLettersOfNames() {
    const QRawFont font = face("Vollkorn-MediumItalic");
    for (const QChar c : QString::fromUtf8("ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz"
                                           ". '\"×-()?0123456789áéíóúäöüßñç")) {
        QVERIFY2(font.supportsCharacter(c), qPrintable(QString(c)));
    }
}

void AssetsTest::zeroAndOhDiffer() {
    const QRawFont font = face("AtkinsonHyperlegibleMono-Bold");
    const QList<quint32> glyphs = font.glyphIndexesForString(QStringLiteral("0O1Il"));
    for (qsizetype a = 0; a < glyphs.size(); ++a) {
        for (qsizetype b = a + 1; b < glyphs.size(); ++b) {
            QVERIFY(font.pathForGlyph(glyphs[a]) != font.pathForGlyph(glyphs[b]));
        }
    }
}

void AssetsTest::iconsAreDrawnAlike() {
    const QStringList icons = filesUnder(QStringLiteral(":/burrow/icons"), QStringLiteral("*.svg"));
    QVERIFY(icons.size() > 60);
    for (const QString& path : icons) {
        const QByteArray drawing = read(path);
        QXmlStreamReader xml(drawing);
        QVERIFY(xml.readNextStartElement());
        const QXmlStreamAttributes root = xml.attributes();
        QCOMPARE(root.value(QLatin1String("viewBox")), QLatin1String("0 0 24 24"));
        QCOMPARE(root.value(QLatin1String("stroke")), QLatin1String("currentColor"));
        QCOMPARE(root.value(QLatin1String("stroke-width")), QLatin1String("2"));
        QCOMPARE(root.value(QLatin1String("stroke-linecap")), QLatin1String("round"));
        QVERIFY2(!drawing.contains('#'), qPrintable(path + QStringLiteral(" has its own colour")));
        QVERIFY2(QSvgRenderer(drawing).isValid(), qPrintable(path));
    }
}

/// Ink, paper and what is meant, and no other colour; no text, which would need a language.
void AssetsTest::drawingsAreDrawnAlike() {
    const QStringList drawings =
        filesUnder(QStringLiteral(":/burrow/drawings"), QStringLiteral("*.svg"));
    QCOMPARE(drawings.size(), 8);
    for (const QString& path : drawings) {
        QByteArray drawing = read(path);
        QVERIFY2(QSvgRenderer(drawing).isValid(), qPrintable(path));
        QXmlStreamReader xml(drawing);
        QVERIFY(xml.readNextStartElement());
        QVERIFY(xml.attributes().value(QLatin1String("viewBox")).contains(QLatin1String(" 400 ")));
        QCOMPARE(xml.attributes().value(QLatin1String("stroke-linejoin")), QLatin1String("round"));
        QVERIFY2(drawing.contains("currentColor"), qPrintable(path));
        QVERIFY2(!drawing.contains("<text"), qPrintable(path));
        drawing.replace("#FFFFFF", "").replace("#C86400", "");
        QVERIFY2(!drawing.contains('#'), qPrintable(path + QStringLiteral(" has its own colour")));
    }
}

void AssetsTest::dataIsReadable() {
    const QStringList words = filesUnder(QStringLiteral(":/burrow/words/en"), QStringLiteral("*"));
    QVERIFY(!words.isEmpty());
    for (const QString& folder :
         {QStringLiteral("words"), QStringLiteral("rules"), QStringLiteral("species")}) {
        for (const QString& path :
             filesUnder(QStringLiteral(":/burrow/") + folder, QStringLiteral("*.json"))) {
            QVERIFY2(!QJsonDocument::fromJson(read(path)).isNull(), qPrintable(path));
        }
    }
}

QTEST_MAIN(AssetsTest)
#include "tst_assets.moc"
