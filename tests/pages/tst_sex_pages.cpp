// Looking at a moult, the evidence, and second opinions, by real clicks on the invented room.
#include <QtTest>
#include <algorithm>
#include <cmath>

#include "journal/roster.h"
#include "pages/earlier_moult.h"
#include "pages/stage.h"
#include "ports/picture.h"
#include "support/mat_jpeg.h"
#include "support/moult_photo.h"

using namespace burrow;
using namespace burrow::test;

namespace {

/// 044 with a moult whose photo was taken in the app, shown on the page of its sex.
void lookAtAMoult(test::Stage& stage, const QByteArray& photo = moultPhoto()) {
    stage.scanner.showPicture(moultPicture({1280, 960}));
    stage.photographer.prepare(photo);
    stage.go("MoultPage", {{"subject", stage.id("044")}});
    stage.click("Photo");
    stage.click("Take the photo");
    QTRY_VERIFY(stage.has("Done"));
    stage.click("Done");
    stage.fill("Leg span", "96");
    stage.click("Save moult");
    QTRY_VERIFY(stage.has("The moult is saved."));
    stage.click("Look at it for the sex");
    QTRY_VERIFY(stage.has("Where to look"));
}

std::filesystem::path withEnding(const std::filesystem::path& folder, const char* ending) {
    for (const auto& entry : std::filesystem::directory_iterator(folder)) {
        if (entry.path().extension() == ending) return entry.path();
    }
    return {};
}

}  // namespace

class SexPages : public QObject {
    Q_OBJECT

private slots:
    void theChoiceShowsWhatItWouldMean() {
        test::Stage stage;
        lookAtAMoult(stage);
        QVERIFY(stage.has("50 in 100 female before, 50 in 100 with this moult"));
        stage.click("Female");
        stage.click(stage.named("stop 3"));
        // Not measured, a plate, clearly: 8 to 1.
        QVERIFY(stage.has("50 in 100 female before, 89 in 100 with this moult"));
    }

    void aMoultIsLookedAtBesideADrawing() {
        test::Stage stage;
        lookAtAMoult(stage);
        stage.click("Closer");
        QCOMPARE(stage.page(), QString("SexLookPage"));
        auto* drawing = stage.named("drawing");
        QVERIFY(drawing != nullptr);
        QCOMPARE(drawing->property("name").toString(), QString("where"));
        stage.click(stage.named("next"));
        QCOMPARE(drawing->property("name").toString(), QString("plate"));
        QVERIFY(stage.has("Female: a flap and two pouches"));
        stage.click(stage.named("before"));
        QCOMPARE(drawing->property("name").toString(), QString("where"));
        auto* photo = stage.named("photo");
        const auto shown = [photo] { return photo->property("picture").value<Picture>(); };
        QTRY_VERIFY_WITH_TIMEOUT(!shown().isEmpty(), 30'000);
        const auto plain = shown();
        stage.click("More contrast");
        QTRY_VERIFY_WITH_TIMEOUT(!(shown() == plain), 30'000);
        stage.click("As it is");
        QVERIFY(shown() == plain);
    }

    void anEarlierMoultStandsBesideItAtTheSameScale() {
        test::Stage stage;
        lookAtAMoult(stage, matJpeg());
        addAnEarlierMoult(stage);
        QTRY_VERIFY(stage.has("Its earlier moults"));
        stage.click("Closer");
        stage.click(stage.named("before"));  // the last one is the oldest moult
        QTRY_VERIFY_WITH_TIMEOUT(stage.has("Both at the same scale"), 30'000);
        auto* photo = stage.named("photo");
        auto* beside = stage.named("beside");
        QVERIFY(photo->property("perMm").toReal() > 0);
        stage.click(stage.named("closeUp"));
        // 12 mm, since nothing was measured, across the shorter side of the pane.
        QCOMPARE(photo->property("perMm").toReal(), std::min(photo->width(), photo->height()) / 12);
        const auto ratio = photo->property("perMm").toReal() / beside->property("perMm").toReal();
        QVERIFY2(std::abs(ratio - 1) < 1e-9, qPrintable(QString::number(ratio)));
        stage.click("Whole");
        QVERIFY(photo->property("perMm").toReal() < photo->height() / 12);
    }

    void anEntryLeadsBackToTheLook() {
        test::Stage stage;
        lookAtAMoult(stage);
        stage.click("Female");
        stage.click("Write it down");
        QTRY_VERIFY(stage.page() != QString("SexPage"));
        stage.go("AnimalPage", {{"subject", stage.id("044")}});
        stage.click(stage.first("EntryRow"));
        QCOMPARE(stage.page(), QString("EntryPage"));
        stage.click("Look at it for the sex");
        QTRY_VERIFY(stage.has("Where to look"));
        QVERIFY(stage.has("You saw a female"));
    }

    void theEvidenceIsShownAndAskedAbout() {
        test::Stage stage;
        lookAtAMoult(stage);
        stage.click("Female");
        stage.click(stage.named("stop 3"));
        stage.click("Write it down");
        QTRY_VERIFY(stage.page() != QString("SexPage"));
        stage.go("SexEvidencePage", {{"subject", stage.id("044")}});
        QTRY_VERIFY(stage.has("89 in 100 that it is a female"));
        QVERIFY(stage.has("What was seen"));
        QVERIFY(stage.has("8 times likelier in a female"));
        stage.click("Ask");
        QCOMPARE(stage.page(), QString("OpinionPage"));
        const auto folder = stage.folder.path() / "asked";
        std::filesystem::create_directories(folder);
        stage.click("Keep");
        stage.chooseFolder(folder);
        QTRY_VERIFY(!withEnding(folder, ".burrowask").empty());

        stage.go("JudgePage");
        stage.click("Choose the question");
        stage.chooseFiles({withEnding(folder, ".burrowask")});
        QTRY_VERIFY(stage.has("Inside the abdomen skin"));
        QVERIFY(stage.has("Still missing: what the photos show"));
        stage.click("Female");
        stage.click(stage.named("stop 4"));
        QVERIFY(stage.has("Still missing: how you want to be called"));
        stage.fill("How you want to be called", "Wren");
        QVERIFY(!stage.has("Still missing"));
        stage.click("Hand over");
        QTRY_COMPARE(stage.sharer.shared().size(), std::size_t{1});
        // One after the other, and the name is typed once.
        stage.click("Another question");
        stage.chooseFiles({withEnding(folder, ".burrowask")});
        QTRY_VERIFY(stage.has("Still missing: what the photos show"));
        stage.go("JudgePage");
        QCOMPARE(stage.settings->judgeName(), QString("Wren"));

        stage.go("SexQueuePage");
        stage.click("Answer");
        stage.chooseFiles({stage.sharer.shared().front()});
        QTRY_VERIFY(stage.has("Wren sees a female"));
        QVERIFY(stage.has("Undo"));
    }

    void aBadFileIsRefusedInWords() {
        test::Stage stage;
        const auto bad = stage.folder.path() / "bad.burrowsaid";
        must(DeviceFiles().write(bad, bytesOf("no answer")));
        stage.go("SexQueuePage");
        stage.click("Answer");
        stage.chooseFiles({bad});
        QTRY_VERIFY(stage.has("Nothing was changed"));
    }
};

QTEST_MAIN(SexPages)
#include "tst_sex_pages.moc"
