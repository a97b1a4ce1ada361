// Our homographies, our lens and our local contrast beside OpenCV's, on the same points and pixels; and
// the mat as it is printed, photographed by OpenCV and measured by `burrow`.
#include <QtTest>

#include <QProcess>
#include <QTemporaryDir>
#include <cmath>
#include <fstream>
#include <nlohmann/json.hpp>
#include <random>

#include "measure/contrast.h"
#include "measure/homography.h"

using namespace burrow;
using namespace burrow::measure;
using nlohmann::json;

namespace {

json pointJson(ImagePoint point) { return {point.x, point.y}; }

void addHomography(json& object, std::mt19937& engine) {
    std::uniform_real_distribution<double> x(0, 148), y(0, 210), error(-2, 2);
    const Homography camera{14, 0.8, 300, -0.7, 15, 250, 3e-4, 5e-4, 1};
    std::vector<PointPair> pairs;
    for (int i = 0; i < 24; ++i) {
        // OpenCV keeps points as float32 on its way: these lose nothing by it.
        const auto exact = [](double value) { return std::round(value * 64) / 64; };
        const ImagePoint from{exact(x(engine)), exact(y(engine))};
        auto to = mapped(camera, from);
        to = {exact(to.x + error(engine)), exact(to.y + error(engine))};
        pairs.push_back({from, to});
    }
    const auto fit = fitHomography(pairs).value();
    object["squares"] = fit.sumOfSquares;
    for (const auto& pair : pairs) {
        object["from"].push_back(pointJson(pair.from));
        object["to"].push_back(pointJson(pair.to));
        object["mapped"].push_back(pointJson(mapped(fit.homography, pair.from)));
    }
}

void addLens(json& object, std::mt19937& engine) {
    const auto lens = Radial::about(4000, 3000, -0.06);
    object["radius"] = lens.radius;
    object["centre"] = pointJson(lens.centre);
    object["k"] = lens.k;
    std::uniform_real_distribution<double> x(0, 3800), y(0, 2800);
    for (int i = 0; i < 50; ++i) {
        const ImagePoint seen{100 + x(engine), 100 + y(engine)};
        object["seen"].push_back(pointJson(seen));
        object["straight"].push_back(pointJson(undistorted(lens, seen).value()));
    }
}

void addContrast(json& object, std::mt19937& engine, int width, int height,
                 const ContrastOptions& options) {
    std::vector<std::uint8_t> grey;
    for (int y = 0; y < height; ++y) {
        for (int x = 0; x < width; ++x) {
            grey.push_back(static_cast<std::uint8_t>(90 + x * 60 / width + (x / 7 + y / 5) % 3 * 9 +
                                                     static_cast<int>(engine() % 6)));
        }
    }
    const auto out = equalised({grey.data(), width, height, width}, options);
    object["contrast"].push_back({{"width", width},
                                  {"height", height},
                                  {"columns", options.columns},
                                  {"rows", options.rows},
                                  {"clip", options.clip},
                                  {"grey", grey},
                                  {"out", out}});
}

}  // namespace

class TestOpenCv : public QObject {
    Q_OBJECT

    static void runs(const QStringList& arguments) {
        QProcess python;
        python.setProcessChannelMode(QProcess::MergedChannels);
        python.start(BURROW_PYTHON, QStringList{BURROW_ORACLES "/measure_mat.py"} + arguments);
        QVERIFY(python.waitForFinished(3'600'000));
        const auto said = python.readAll();
        qInfo("%s", said.constData());
        QCOMPARE(python.exitCode(), 0);
    }

private slots:
    void sameNumbers() {
        std::mt19937 engine(5);
        json object;
        addHomography(object, engine);
        addLens(object, engine);
        addContrast(object, engine, 160, 120, {2, 8, 8});
        addContrast(object, engine, 203, 151, {3, 8, 4});
        addContrast(object, engine, 128, 97, {40, 4, 4});
        QTemporaryDir folder;
        const auto path = folder.filePath("ours.json");
        std::ofstream(path.toStdString()) << object;
        runs({"numbers", path});
    }
    void printedPhotographedMeasured() {
        QTemporaryDir folder;
        const auto count = qEnvironmentVariable("BURROW_PHOTOS", "5");
        runs({"photos", BURROW_PROGRAM, folder.path(), count});
    }
};

QTEST_APPLESS_MAIN(TestOpenCv)
#include "tst_opencv.moc"
