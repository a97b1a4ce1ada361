// Lengths in photos of moults: by a mat whose photo is rendered, by hand, refused, and over the moults.
#include <QSignalSpy>

#include "journal/fields.h"
#include "room/mats.h"
#include "support/mat_jpeg.h"
#include "viewmodels/measuremodel.h"
#include "viewmodels/moult_bench.h"

using namespace burrow;
using namespace burrow::test;

namespace {

enum Kind { carapace, width, span, fang, segment };

const QByteArray& matPhoto() {
    static const auto photo = matJpeg();
    return photo;
}

/// A saved moult with its photos, open to be measured.
class Bench {
public:
    explicit Bench(const std::vector<QByteArray>& photos, const QString& day = {}) {
        if (!day.isEmpty()) saving.model.when()->type(day);
        int number = 0;
        for (const auto& photo : photos) {
            saving.addFile(saving.file(qPrintable(QString("%1.jpg").arg(++number)), photo));
        }
        saving.save();
        moult = saving.facts(FactKind::moulted).front();
        open(QString::fromStdString(moult.id.text()));
    }

    void open(const QString& entry) {
        model = std::make_unique<MeasureModel>();
        model->setDesk(&saving.at.desk);
        model->setDarkroom(&saving.darkroom);
        model->setMoult(entry);
        saving.at.settle();
        QTRY_VERIFY_WITH_TIMEOUT(!model->isLooking(), 30'000);
    }
    void point() {
        const auto ends = carapaceEnds();
        model->moveEnd(MeasureModel::From, ends[0]);
        model->moveEnd(MeasureModel::To, ends[1]);
    }
    void save() {
        model->save();
        QTRY_VERIFY(!model->isBusy());
        saving.at.settle();
    }
    std::vector<Fact> measured() {
        auto facts = saving.facts(FactKind::measured);
        std::erase_if(facts, [](const Fact& fact) { return !fact.body.about; });
        return facts;
    }
    /// "15.2 mm"
    [[nodiscard]] double length() const { return model->length().section(' ', 0, 0).toDouble(); }
    void keepBar(double mm) {
        const PrintedMat mat{"7Q2M", measure::MatPaper::a5, Millimetres{mm}};
        Deed deed;
        deed.compose = [mat](Book& book) -> Result<std::vector<Draft>> {
            return std::vector<Draft>{SetDraft{ThingType::book, book.id().uuid, matFields(mat)}};
        };
        saving.at.desk.act(&saving.at.desk, std::move(deed));
        saving.at.settle();
    }

    MoultBench saving;
    Fact moult;
    std::unique_ptr<MeasureModel> model;
};

}  // namespace

class TestMeasure : public QObject {
    Q_OBJECT

private slots:
    void aCarapaceOnTheMatIsMeasured() {
        Bench bench({matPhoto()});
        auto& model = *bench.model;
        QVERIFY2(model.canMeasure(), qPrintable(model.refusal()));
        QVERIFY(model.scaleText().contains("mat 7Q2M"));
        QVERIFY(!model.picture().isEmpty());
        model.setHeight(0);  // what is drawn lies on the paper
        bench.point();
        QVERIFY2(std::abs(bench.length() - 15) <= 0.2, qPrintable(model.result()));
        // "15 mm, 14.4 to 15.6": the truth lies within, and a mat that was not measured is not sure.
        const auto words = model.result().split(' ');
        QVERIFY2(words.size() == 5 && words[3] == "to", qPrintable(model.result()));
        const double low = words[2].toDouble(), high = words[4].toDouble();
        QVERIFY2(low < 15 && 15 < high && high - low > 0.8, qPrintable(model.result()));
        QCOMPARE(model.sources().front().toMap()["name"].toString(),
                 QString("How the mat was printed"));
        QCOMPARE(model.unmeasuredMat(), QString("A5 7Q2M"));
    }

    /// 97.5 mm instead of 100: what seems 15 mm is 14.6.
    void theBarPutsLengthsRight() {
        Bench bench({matPhoto()});
        bench.model->setHeight(0);
        bench.point();
        const double before = bench.length();
        bench.keepBar(97.5);
        QVERIFY2(std::abs(bench.length() - 0.975 * before) < 0.11,
                 qPrintable(bench.model->result()));
        QVERIFY(bench.model->unmeasuredMat().isEmpty());
        QVERIFY(bench.model->sources().front().toMap()["name"] != "How the mat was printed");
    }

    /// The bar was measured before the sheet was copied at 96 percent; the tag that lies on it was not copied.
    void aCopiedMatIsSaid() {
        SheetOptions copy;
        copy.hasTag = true;
        copy.copiedAt = 0.96;
        Bench bench({matJpeg(copy)});
        bench.keepBar(100);
        QVERIFY2(bench.model->canMeasure(), qPrintable(bench.model->refusal()));
        QVERIFY2(bench.model->copied().contains("one of them is a copy"),
                 qPrintable(bench.model->copied()));
        SheetOptions whole;
        whole.hasTag = true;
        Bench sound({matJpeg(whole)});
        sound.keepBar(100);
        QVERIFY2(sound.model->copied().isEmpty(), qPrintable(sound.model->copied()));
    }

    void whatStandsHigherIsSmallerThanItLooks() {
        Bench bench({matPhoto()});
        bench.keepBar(100);
        bench.model->setHeight(0);
        bench.point();
        const double flat = bench.length();
        bench.model->setHeight(3);
        QVERIFY(bench.length() < flat);
        QCOMPARE(bench.model->heights().size(), 4);
    }

    void endsMoveByTenthsOfAMillimetre() {
        Bench bench({matPhoto()});
        bench.keepBar(100);
        auto& model = *bench.model;
        model.setHeight(0);
        bench.point();
        const double before = bench.length();
        for (int i = 0; i < 10; ++i) model.nudge(MeasureModel::To, 0, 1);
        QVERIFY2(std::abs(bench.length() - before - 1) < 0.11, qPrintable(model.result()));
        for (int i = 0; i < 10; ++i) model.stretch(MeasureModel::From, -1);
        QVERIFY2(std::abs(bench.length() - before) < 0.11, qPrintable(model.result()));
        // An end never leaves the picture.
        model.moveEnd(MeasureModel::To, {7, -3});
        QCOMPARE(model.to(), QPointF(1, 0));
    }

    /// On a copy at 80 percent a step is still a tenth of a real millimetre.
    void stepsAreOfTheRealSheet() {
        Bench bench({matPhoto()});
        bench.keepBar(80);
        bench.open(QString::fromStdString(bench.moult.id.text()));
        auto& model = *bench.model;
        model.setHeight(0);
        bench.point();
        QVERIFY2(std::abs(bench.length() - 0.8 * 15) <= 0.2, qPrintable(model.result()));
        const double before = bench.length();
        for (int i = 0; i < 10; ++i) model.nudge(MeasureModel::To, 0, 1);
        QVERIFY2(std::abs(bench.length() - before - 1) < 0.11, qPrintable(model.result()));
    }

    void oneEndOnTheOtherIsNoLength() {
        Bench bench({matPhoto()});
        auto& model = *bench.model;
        model.moveEnd(MeasureModel::From, model.from());
        model.moveEnd(MeasureModel::To, model.from());
        QVERIFY2(model.endsTrouble().contains("Both points are the same"),
                 qPrintable(model.endsTrouble()));
        QVERIFY(model.result().isEmpty());
        QVERIFY(!model.canSave());
    }

    void aLengthIsSavedWithItsIntervalAboutTheMoult() {
        Bench bench({matPhoto()}, "2026-05-01");
        auto& model = *bench.model;
        QSignalSpy saved(&model, &MeasureModel::saved);
        model.setHeight(0);
        bench.point();
        bench.save();
        QCOMPARE(saved.size(), 1);
        const auto facts = bench.measured();
        QCOMPARE(facts.size(), 1U);
        const auto& body = facts[0].body;
        QCOMPARE(body.about, bench.moult.id);
        QCOMPARE(facts[0].day, bench.moult.day);
        QVERIFY(body.method == Method::photo);
        QVERIFY(std::abs(body.carapace->value - 15) < 0.2);
        QVERIFY(body.low < body.carapace && body.carapace < body.high);
        QCOMPARE(body.height, Millimetres{0});
        const auto marks =
            bench.saving.at.desk.room()->find(bench.saving.at.hamorii)->kept.digest.recentMoults;
        QCOMPARE(marks.back().carapace, body.carapace);
        QCOMPARE(model.history().size(), 1);

        bench.saving.at.desk.undo();
        bench.saving.at.settle();
        QVERIFY(bench.measured().empty());
        QVERIFY(model.history().isEmpty());
    }

    void eachKindHasAFieldOfItsOwn() {
        Bench bench({matPhoto()});
        auto& model = *bench.model;
        model.setKind(width);
        bench.point();
        bench.save();
        QVERIFY(bench.measured().front().body.carapaceWidth);
        model.setKind(span);
        bench.point();
        bench.save();
        QVERIFY(bench.measured().front().body.span);
        model.setKind(fang);
        QVERIFY(!model.isOfLeg());
        bench.point();
        bench.save();
        QVERIFY(bench.measured().front().body.fang);
        model.setKind(segment);
        QVERIFY(model.isOfLeg());
        model.setLeg(3);
        model.setSegment(2);
        bench.point();
        bench.save();
        const auto body = bench.measured().front().body;
        QCOMPARE(body.segment, std::string("leg 4 tibia"));
        QVERIFY(body.segmentLength && !body.fang && !body.carapace);
        QCOMPARE(model.history().size(), 1);  // another segment's history is another one
        model.setSegment(0);
        QVERIFY(model.history().isEmpty());
    }

    /// Ends stand somewhere before anyone has moved them: that is no length.
    void nothingIsMeasuredBeforeBothEndsAreSet() {
        Bench bench({matPhoto(), matJpeg({}, smallShot(12))});
        auto& model = *bench.model;
        const auto isOpen = [&] {
            return model.length().isEmpty() && model.result().isEmpty() &&
                   model.growth().isEmpty() && !model.canSave() &&
                   model.hint() == "Drag both ends to what you measure.";
        };
        QVERIFY2(isOpen(), qPrintable(model.hint() + model.result()));
        model.moveEnd(MeasureModel::From, carapaceEnds()[0]);
        QVERIFY2(isOpen(), qPrintable(model.hint() + model.result()));
        model.save();
        QVERIFY(!model.isBusy());
        bench.point();
        QVERIFY(model.canSave() && model.hint().isEmpty() && !model.result().isEmpty());
        model.setKind(fang);
        QVERIFY(isOpen());
        model.setKind(segment);
        bench.point();
        model.setLeg(1);
        QVERIFY(isOpen());
        bench.point();
        model.setSegment(1);
        QVERIFY(isOpen());
        bench.point();
        model.setPhoto(1);
        QTRY_VERIFY_WITH_TIMEOUT(!model.isLooking(), 30'000);
        QVERIFY(isOpen());
        QVERIFY(bench.measured().empty());
    }

    /// An end that was set in a close view stays so exact, however the picture is looked at afterwards.
    void theIntervalIsThatOfTheViewInWhichAnEndWasSet() {
        Bench bench({matPhoto()});
        bench.keepBar(100);
        auto& model = *bench.model;
        model.setHeight(0);
        model.setScreenScale(4);
        bench.point();
        const auto close = model.result();
        model.setScreenScale(0.2);
        QCOMPARE(model.result(), close);
        const auto width = [&] {
            const auto words = model.result().split(' ');
            return words[4].toDouble() - words[2].toDouble();
        };
        const double both = width();
        model.moveEnd(MeasureModel::To, carapaceEnds()[1]);
        const double one = width();
        model.moveEnd(MeasureModel::From, carapaceEnds()[0]);
        QVERIFY2(both < one && one < width(), qPrintable(close + ", " + model.result()));
        model.setScreenScale(4);
        QVERIFY(width() > one);
    }

    void aTypedLengthGoesBeforeThePhoto() {
        Bench bench({matPhoto()});
        auto& model = *bench.model;
        bench.point();
        model.setTyped("15,8");
        bench.save();
        const auto body = bench.measured().front().body;
        QCOMPARE(body.carapace, Millimetres{15.8});
        QVERIFY(body.method == Method::ruler);
        QVERIFY(!body.low && !body.high && !body.height);
        QVERIFY(model.typed().isEmpty());
        model.setTyped("as long as my thumb");
        model.save();
        QVERIFY(!model.isBusy());
        QVERIFY2(!model.typedError().isEmpty(), qPrintable(model.typedError()));
        QCOMPARE(bench.measured().size(), 1U);
    }

    void aPhotoWithoutMatIsRefusedAndStillShown() {
        Bench bench({moultPhoto({800, 600})});
        auto& model = *bench.model;
        QVERIFY(!model.canMeasure());
        QVERIFY2(model.refusal().contains("No mat and no tag"), qPrintable(model.refusal()));
        QVERIFY(!model.picture().isEmpty());
        QVERIFY(!model.canSave());
        model.setTyped("12.4");
        QVERIFY(model.canSave());
        bench.save();
        QCOMPARE(bench.measured().front().body.carapace, Millimetres{12.4});
    }

    void aMoultWithoutPhotosCanBeTyped() {
        Bench bench({});
        auto& model = *bench.model;
        QVERIFY2(model.refusal().contains("no photo of this moult"), qPrintable(model.refusal()));
        model.setTyped("12.4");
        bench.save();
        QCOMPARE(bench.measured().size(), 1U);
    }

    void aPhotoThatIsGoneSaysSo() {
        Bench bench({moultPhoto({400, 300})});
        const auto photo = bench.saving.facts(FactKind::photo).front().body;
        const pictures::Store store(pictures::Store::folderFor(bench.saving.at.path),
                                    bench.saving.files);
        std::filesystem::remove(store.originalPath(*photo.original));
        bench.open(QString::fromStdString(bench.moult.id.text()));
        QVERIFY(!bench.model->picture().isEmpty());  // the copy is as good as it gets
        std::filesystem::remove(store.picturePath(*photo.picture));
        bench.open(QString::fromStdString(bench.moult.id.text()));
        QVERIFY(bench.model->picture().isEmpty());
        QVERIFY2(bench.model->refusal().contains("not on this device"),
                 qPrintable(bench.model->refusal()));
    }

    void aPhotoOpensItsMoult() {
        Bench bench({moultPhoto({400, 300}, 90), moultPhoto({400, 300}, 150)});
        const auto photos = bench.saving.facts(FactKind::photo);
        bench.open(QString::fromStdString(photos.front().id.text()));  // the newest one
        QCOMPARE(bench.model->photos().size(), 2);
        QCOMPARE(bench.model->photo(), 1);
        bench.model->setPhoto(0);
        QTRY_VERIFY(!bench.model->isLooking());
        QVERIFY(!bench.model->picture().isEmpty());
    }

    void growthIsSaidAgainstTheMoultBefore() {
        Bench bench({matPhoto()});
        auto& at = bench.saving.at;
        Deed deed;
        FactDraft before{at.hamorii,
                         FactKind::moulted,
                         {.carapace = Millimetres{12}},
                         Instant{fridayEvening.ms - 200 * msPerDay}};
        deed.compose = [before](Book&) -> Result<std::vector<Draft>> {
            return std::vector<Draft>{before};
        };
        at.desk.act(&at.desk, std::move(deed));
        at.settle();
        bench.model->setHeight(0);
        bench.point();
        QVERIFY2(bench.model->growth().contains("mm more than on"),
                 qPrintable(bench.model->growth()));
        QVERIFY(bench.model->points().isEmpty());
        bench.save();
        QCOMPARE(bench.model->points().size(), 2);
        QCOMPARE(bench.model->history().size(), 2);
        QVERIFY(bench.model->pointsText().contains("12"));
        const auto sub = bench.model->history().first().toMap()["sub"].toString();
        QVERIFY2(sub.startsWith("1.2") && sub.contains("times the one before") &&
                     sub.contains("mm, from a photo"),
                 qPrintable(sub));
    }

    /// Three pairs of the species in the book make a line; before that it is said how many there are.
    void aCarapaceSaysWhichSpanGoesWithIt() {
        Bench bench({matPhoto()});
        auto& at = bench.saving.at;
        auto& model = *bench.model;
        model.setHeight(0);
        bench.point();
        QVERIFY2(model.spanText().contains("it takes 3"), qPrintable(model.spanText()));
        Deed deed;
        std::vector<Draft> drafts;
        int day = -900;
        for (const double carapace : {6.0, 8.0, 10.0}) {
            FactBody body;
            body.carapace = Millimetres{carapace};
            body.span = Millimetres{6.1 * carapace + carapace * carapace / 100};
            drafts.emplace_back(FactDraft{at.hamorii, FactKind::moulted, body,
                                          Instant{fridayEvening.ms + day * msPerDay}});
            day += 200;
        }
        deed.compose = [drafts](Book&) -> Result<std::vector<Draft>> { return drafts; };
        at.desk.act(&at.desk, std::move(deed));
        at.settle();
        QVERIFY2(model.spanText().startsWith("By 3 pairs of your own, a carapace of 15") ||
                     model.spanText().startsWith("By 3 pairs of your own, a carapace of 14.9"),
                 qPrintable(model.spanText()));
        QVERIFY(model.spanText().contains("the range is a guess"));
        model.setKind(fang);
        bench.point();
        QVERIFY(model.spanText().isEmpty());
    }

    /// The fixture's animal was measured alive before: that is no moult, and counts only where its skin has
    /// no size of its own.
    void sizesOfTheAnimalAreNoMoults() {
        Bench bench({}, "2026-05-01");
        auto& model = *bench.model;
        model.setKind(span);
        QCOMPARE(model.history().size(), 1);
        QVERIFY(model.history().first().toMap()["sub"].toString().contains("of the animal"));
        model.setTyped("150");
        bench.save();
        auto& at = bench.saving.at;
        Deed deed;
        FactDraft alive{at.hamorii, FactKind::measured, {.span = Millimetres{155}}, fridayEvening};
        deed.compose = [alive](Book&) -> Result<std::vector<Draft>> {
            return std::vector<Draft>{alive};
        };
        at.desk.act(&at.desk, std::move(deed));
        at.settle();
        QCOMPARE(model.history().size(), 2);  // before the moult, and of it
        QCOMPARE(model.history().first().toMap()["value"].toString(), QString("150 mm"));
    }

    void anUnknownMoultIsMissing() {
        DeskFixture at;
        at.openRoom();
        FakeFiles files;
        QtDeveloper developer;
        Darkroom darkroom(files, developer);
        MeasureModel model;
        model.setDesk(&at.desk);
        model.setDarkroom(&darkroom);
        model.setMoult("01890a5d-ac96-774b-bcce-b302099a8057");
        at.settle();
        QVERIFY(model.isMissing());
        QVERIFY(!model.canSave());
    }
};

QTEST_MAIN(TestMeasure)
#include "tst_measure.moc"
