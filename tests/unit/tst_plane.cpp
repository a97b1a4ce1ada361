// The plane of a mat: homographies, the lens, how uncertainty goes into a length, and local contrast,
// against values that were computed with other people's programs.
#include <QtTest>

#include <cmath>

#include "measure/contrast.h"
#include "measure/homography.h"
#include "measure/length.h"
#include "measure/mat.h"
#include "support/ciede2000.h"
#include "tags/code.h"
#include "tags/symbol.h"

using namespace burrow;
using namespace burrow::measure;

namespace {

/// A card of 85.60 by 53.98 mm (ISO/IEC 7810, ID-1) seen in a photo.
const std::vector<PointPair> card{{{100, 120}, {0, 0}},
                                  {{900, 160}, {85.60, 0}},
                                  {{860, 700}, {85.60, 53.98}},
                                  {{80, 640}, {0, 53.98}}};
/// With the middles of its long sides, which do not quite lie in the plane.
std::vector<PointPair> cardWithMiddles() {
    auto pairs = card;
    pairs.push_back({{495.3, 138.9}, {42.8, 0}});
    pairs.push_back({{472.1, 671.6}, {42.8, 53.98}});
    return pairs;
}

void compare(const Homography& h, const Homography& expected, double tolerance) {
    for (std::size_t i = 0; i < 9; ++i) {
        QVERIFY2(
            std::abs(h[i] - expected[i]) <= tolerance * std::max(1e-3, std::abs(expected[i])),
            qPrintable(QStringLiteral("%1: %2, expected %3").arg(i).arg(h[i]).arg(expected[i])));
    }
}

/// What a survey of the card would be, if its corners were all that was known.
Survey cardSurvey(const std::vector<PointPair>& pairs) {
    std::vector<PointPair> turned;
    for (const auto& pair : pairs) turned.push_back({pair.to, pair.from});
    Survey survey;
    survey.photoWidth = 1000;
    survey.photoHeight = 800;
    survey.frame = {{{42.8}, {26.99}}, 42.8, {500, 400}, 0.5 * std::hypot(1000, 800)};
    survey.parameters = parametersOf(directHomography(turned).value(), survey.frame);
    return survey;
}

}  // namespace

class TestPlane : public QObject {
    Q_OBJECT

private slots:
    /// Solved in exact rational numbers (Python's fractions): H with its last element 1.
    void fourPointsAreExact() {
        const auto h = directHomography(card).value();
        compare(
            h,
            {0.111238340419984, 0.00427839770846093, -11.6372417670137, -0.00506246384849871,
             0.101249276969974, -11.643666851547, 5.37527489953077e-05, -4.22972793715501e-05, 1},
            1e-10);
        const auto at = mapped(h, {480, 400});
        QVERIFY(std::abs(at.x - 43.085814940595) < 1e-10);
        QVERIFY(std::abs(at.y - 26.1934008222) < 1e-9);
        compare(fitHomography(card)->homography, h, 1e-10);
    }
    /// Least squares of scipy 1.10.1 (OpenCV 4.6.0 has the same sum).
    void sixPointsAreLeastSquares() {
        const auto fit = fitHomography(cardWithMiddles()).value();
        QVERIFY(std::abs(fit.sumOfSquares - 0.572903145432) < 1e-9);
        compare(fit.homography,
                {0.1093337807527, 0.00375531756232, -11.39241782940, -0.005528160457938,
                 0.1000822571104, -11.21995241265, 3.384075214887e-05, -4.293024329300e-05, 1},
                1e-6);
        // Hartley's normalised linear solution alone has a larger sum (numpy 1.24).
        const auto direct = directHomography(cardWithMiddles()).value();
        QVERIFY(std::abs(direct[0] - 0.1093472474447) < 1e-9);
    }
    void outliersAreLeftOut() {
        auto pairs = card;
        const auto h = directHomography(card).value();
        for (const ImagePoint p : {ImagePoint{300, 300}, {500, 520}, {480, 400}, {700, 250}}) {
            pairs.push_back({p, mapped(h, p)});
        }
        pairs.push_back({{600, 600}, {10, 10}});
        const auto fit = fitHomography(pairs, 0.5).value();
        QCOMPARE(std::count(fit.isUsed.begin(), fit.isUsed.end(), true), 8);
        QVERIFY(!fit.isUsed.back());
        compare(fit.homography, h, 1e-8);
    }
    void whatSaysNothingIsRefused() {
        QVERIFY(!directHomography(std::span(card).first(3)));
        const std::vector<PointPair> line{
            {{0, 0}, {0, 0}}, {{1, 1}, {1, 1}}, {{2, 2}, {2, 2}}, {{3, 3}, {3, 3}}};
        QCOMPARE(directHomography(line).error().message.id, std::string("measure.noPlane"));
        const std::vector<PointPair> same(4, PointPair{{1, 1}, {2, 2}});
        QVERIFY(!fitHomography(same));
        auto odd = card;
        odd[0].from.x = std::nan("");
        QVERIFY(!fitHomography(odd));
    }

    void lensAndBack() {
        const auto lens = Radial::about(4000, 3000, -0.05);
        for (const ImagePoint p : {ImagePoint{0, 0}, {2000, 1500}, {3999, 12}, {100, 2900}}) {
            const auto seen = distorted(lens, p);
            const auto back = undistorted(lens, seen).value();
            QVERIFY(std::hypot(back.x - p.x, back.y - p.y) < 1e-9);
        }
        // A corner of the photo comes nearer by the term itself.
        const auto corner = distorted(lens, {4000, 3000});
        QVERIFY(std::abs(corner.x - (2000 + 0.95 * 2000)) < 1e-9);
        QVERIFY(!undistorted(Radial::about(400, 300, -0.5), {400, 300}));
    }

    /// By a numerical Jacobian over all twelve coordinates (numpy 1.24), half a pixel on each; 20,000
    /// random draws gave 0.0796.
    void uncertaintyOfALength() {
        auto survey = cardSurvey(card);
        const auto plain =
            lengthBetween(survey, {300, 300}, {500, 520}, {.pointDeviation = 0.5}).value();
        QVERIFY(std::abs(plain.value.value - 31.267469877778) < 1e-9);
        QVERIFY(std::abs(plain.deviations.points.value - 0.074527465) < 1e-5);
        // The corners' half pixel, carried into the parameters.
        constexpr double step = 1e-3;
        for (std::size_t i = 0; i < 8; ++i) {
            auto more = card, less = card;
            (i % 2 == 0 ? more[i / 2].from.x : more[i / 2].from.y) += step;
            (i % 2 == 0 ? less[i / 2].from.x : less[i / 2].from.y) -= step;
            const auto above = cardSurvey(more).parameters;
            const auto below = cardSurvey(less).parameters;
            for (std::size_t row = 0; row < 8; ++row) {
                for (std::size_t column = 0; column < 8; ++column) {
                    survey.covariance[row * parameterCount + column] +=
                        0.25 * (above[row] - below[row]) * (above[column] - below[column]) /
                        (4 * step * step);
                }
            }
        }
        const auto length =
            lengthBetween(survey, {300, 300}, {500, 520}, {.pointDeviation = 0.5}).value();
        QVERIFY(std::abs(length.deviations.plane.value - 0.026534617) < 1e-5);
        QVERIFY(std::abs(length.deviation().value - 0.079110233) < 1e-5);
        QVERIFY(std::abs(length.high.value - length.value.value - 1.959964 * 0.079110233) < 1e-4);
    }
    void theTableOfRules() {
        const auto& rules = shippedRules();
        QCOMPARE(rules.heights.size(), std::size_t{4});
        QVERIFY(rules.leastLevel < 1 && rules.unmeasuredPrint < 0.1);
        const std::string text(measureRulesText());
        const auto without = [&](const std::string& what, const std::string& instead) {
            auto changed = text;
            changed.replace(changed.find(what), what.size(), instead);
            return MeasureRules::fromJson(changed);
        };
        QVERIFY(without("grey_gain", "grey_gain"));
        QCOMPARE(without("grey_gain", "grey_pain").error().message,
                 (Message{"measure.rules", {{"row", std::string("grey_gain")}}}));
        QVERIFY(!without("\"value\": 0.72", "\"value\": 0"));
        QVERIFY(!without("\"source\": \"common practice, no source\"", "\"source\": \"\""));
        QVERIFY(!MeasureRules::fromJson("{}"));
    }
    void heightAndPrint() {
        const auto survey = cardSurvey(card);
        const ImagePoint from{300, 300}, to{500, 520};
        const double plain = lengthBetween(survey, from, to)->value.value;
        const double camera = cameraHeight(survey).value;
        QVERIFY(camera > 50 && camera < 200);
        // Similar triangles: at a tenth of the camera's height everything looks 10/9 as large.
        const auto raised =
            lengthBetween(survey, from, to, {.height = {{camera / 10}, {1}}}).value();
        QVERIFY(std::abs(raised.value.value - 0.9 * plain) < 1e-9);
        QVERIFY(raised.deviations.height.value > plain / camera);
        // A copy at 97 percent whose bar was measured as 97 mm.
        const auto copy = PrintScale::fromBar({97}, {0.2}).value();
        const auto scaled = lengthBetween(survey, from, to, {.print = copy}).value();
        QVERIFY(std::abs(scaled.value.value - 0.97 * plain) < 1e-9);
        QVERIFY(std::abs(scaled.deviations.print.value - 0.002 * plain) < 1e-9);
        QVERIFY(!PrintScale::fromBar({50}));
    }
    void pointsThatSayNothing() {
        const auto survey = cardSurvey(card);
        const auto id = [&](ImagePoint a, ImagePoint b) {
            return lengthBetween(survey, a, b).error().message.id;
        };
        QCOMPARE(id({-1, 5}, {10, 10}), std::string("measure.outside"));
        QCOMPARE(id({10, 10}, {10, 900}), std::string("measure.outside"));
        QCOMPARE(id({10, 10}, {10, 10}), std::string("measure.samePoint"));
        QCOMPARE(
            lengthBetween(survey, {300, 300}, {301, 300}, {.pointDeviation = 2}).error().message.id,
            std::string("measure.unsure"));
    }

    void squaresSayWhereTheyAre() {
        SeededRandom random(3);
        for (const auto paper : {MatPaper::a5, MatPaper::a4}) {
            const auto name = drawMatName(random);
            QVERIFY(isMatName(name));
            const auto& layout = layoutOf(paper);
            for (const auto corner : matCorners) {
                const MatMark mark{paper, corner, name};
                const auto text = matPayload(mark);
                QCOMPARE(parseMatPayload(text).value(), mark);
                QVERIFY(tags::encode(text)->version() >= 2);
                // Not a tag of an enclosure.
                QVERIFY(!std::holds_alternative<tags::OwnTag>(tags::parsePayload(text)));
                for (std::size_t i = 0; i < text.size(); ++i) {
                    auto wrong = text;
                    wrong[i] = wrong[i] == 'A' ? 'B' : 'A';
                    QVERIFY2(!parseMatPayload(wrong), wrong.c_str());
                }
                const auto box = layout.square(corner);
                QVERIFY(box.x.value > 5 && (box.x + box.width).value < layout.width.value - 5);
            }
        }
        QVERIFY(!parseMatPayload(""));
        QVERIFY(!parseMatPayload("BURROWBOOK-MAT:"));
        QVERIFY(!parseMatPayload("BURROWBOOK:7Q2MZX89K/20"));
    }

    /// OpenCV 4.6.0, createCLAHE(2.0, (4, 4)), on 64 by 64 pixels of ((2x + y) mod 256) / 4 + 60.
    void contrastIsOpenCvs() {
        std::vector<std::uint8_t> grey;
        for (int y = 0; y < 64; ++y) {
            for (int x = 0; x < 64; ++x) {
                grey.push_back(static_cast<std::uint8_t>((2 * x + y) % 256 / 4 + 60));
            }
        }
        const auto out = equalised({grey.data(), 64, 64, 64}, {2, 4, 4});
        QCOMPARE(out.size(), grey.size());
        long sum = 0;
        for (const auto value : out) sum += value;
        QCOMPARE(sum, 398205L);
        QCOMPARE(int{*std::min_element(out.begin(), out.end())}, 63);
        QCOMPARE(int{*std::max_element(out.begin(), out.end())}, 131);
        QCOMPARE(int{out[0]}, 63);
        QCOMPARE(int{out[63]}, 108);
        QCOMPARE(int{out[63 * 64]}, 84);
        QCOMPARE(int{out[63 * 64 + 63]}, 131);
        QVERIFY(equalised({nullptr, 64, 64, 64}).empty());
    }

    /// IEC 61966-2-1, the values from its formulas.
    void lightIsLinear() {
        QVERIFY(std::abs(linearLight(255) - 1) < 1e-12);
        QVERIFY(std::abs(linearLight(102) - 0.1328683) < 1e-6);
        QVERIFY(std::abs(linearLight(10) - 10.0 / 255 / 12.92) < 1e-12);
        for (int i = 0; i < 256; ++i) {
            const auto byte = static_cast<std::uint8_t>(i);
            QCOMPARE(codedLight(linearLight(byte)), byte);
        }
    }

    /// Pairs published by Sharma, Wu and Dalal (2005), Table 1.
    void colourDifference() {
        struct Row {
            test::Lab p, q;
            double difference;
        };
        for (const auto& row :
             {Row{{50, 2.6772, -79.7751}, {50, 0, -82.7485}, 2.0425},
              {{50, 3.1571, -77.2803}, {50, 0, -82.7485}, 2.8615},
              {{50, -1.3802, -84.2814}, {50, 0, -82.7485}, 1.0000},
              {{50, 2.5, 0}, {73, 25, -18}, 27.1492},
              {{60.2574, -34.0099, 36.2677}, {60.4626, -34.1751, 39.4387}, 1.2644},
              {{2.0776, 0.0795, -1.1350}, {0.9033, -0.0636, -0.5514}, 0.9082}}) {
            QVERIFY(std::abs(test::ciede2000(row.p, row.q) - row.difference) < 5e-5);
        }
    }
};

QTEST_APPLESS_MAIN(TestPlane)
#include "tst_plane.moc"
