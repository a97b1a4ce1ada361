// From the bytes of a 12 megapixel photo to its flattened picture, against decoding the JPEG and one
// warpPerspective of OpenCV to the same size: the ratio should stay under 1.5. The live hint should take
// under 67 ms on a frame of 720 lines. Says the most memory that was held, too.
#include <benchmark/benchmark.h>
#include <sys/resource.h>

#include <cstdio>
#include <cstdlib>
#include <opencv2/core.hpp>
#include <opencv2/imgproc.hpp>

#include "measure/flatten.h"
#include "measure/hint.h"
#include "support/mat_photo.h"

namespace {

using namespace burrow;
using namespace burrow::measure;

constexpr auto paper = MatPaper::a5;

test::Shot usualShot() {
    test::Shot shot;
    shot.tilt = 15;
    shot.azimuth = 40;
    shot.roll = 5;
    shot.radial = -0.03;
    return shot;
}

const Bytes& photoBytes() {
    static const auto bytes = [] {
        const auto sheet = test::matSheet(paper, {.hasTag = true});
        const auto shot = usualShot();
        const auto camera = test::cameraOf(shot, test::seenOf(paper));
        return pictures::encodeJpeg(test::developed(sheet, shot, camera), 90).value();
    }();
    return bytes;
}

void flattenOurs(benchmark::State& state) {
    const auto& bytes = photoBytes();
    for (auto _ : state) {
        const auto photo = pictures::decode(bytes).value();
        const auto found = survey(photo).value();
        FlattenOptions options;
        options.balance = balanceOf(photo, found).value();
        const auto flat = flatten(photo, found, options).value();
        benchmark::DoNotOptimize(flat.row(0));
    }
}

void decodeAndWarp(benchmark::State& state) {
    const auto& bytes = photoBytes();
    const auto shot = usualShot();
    const auto camera = test::cameraOf(shot, test::seenOf(paper));
    // From a pixel of the result, 20 to a millimetre, to the photo.
    const auto map = product(camera.toPicture, {0.05, 0, 0, 0, 0.05, 0, 0, 0, 1});
    const cv::Mat matrix(3, 3, CV_64F, const_cast<double*>(map.data()));
    for (auto _ : state) {
        // Fresh memory for the picture, as in ours: its pages cost a fifth of the warp.
        cv::Mat out;
        auto photo = pictures::decode(bytes).value();
        const cv::Mat in(photo.height(), photo.width(), CV_8UC3, photo.row(0));
        cv::warpPerspective(in, out, matrix, {148 * 20, 210 * 20},
                            cv::INTER_LINEAR | cv::WARP_INVERSE_MAP);
        benchmark::DoNotOptimize(out.data);
    }
}

void liveHint(benchmark::State& state) {
    auto shot = usualShot();
    shot.megapixels = 1280 * 960 / 1e6;
    shot.isPortrait = false;
    shot.fill = 0.7;  // 1280 by 720 of it
    const auto sheet = test::matSheet(paper, {.hasTag = true});
    shot.roll = 90;
    const auto photo = test::developed(sheet, shot, test::cameraOf(shot, test::seenOf(paper)));
    constexpr int width = 1280, height = 720;
    std::vector<std::uint8_t> grey;
    for (int y = 0; y < height; ++y) {
        for (int x = 0; x < width; ++x) grey.push_back(photo.row(y + 120)[3 * x + 1]);
    }
    for (auto _ : state) {
        const auto live = hintFor({grey.data(), width, height, width});
        if (live.hint != Hint::ready) state.SkipWithError("not ready");
        benchmark::DoNotOptimize(live);
    }
}

BENCHMARK(flattenOurs)->Unit(benchmark::kMillisecond)->MeasureProcessCPUTime()->UseRealTime();
BENCHMARK(decodeAndWarp)->Unit(benchmark::kMillisecond)->MeasureProcessCPUTime()->UseRealTime();
BENCHMARK(liveHint)->Unit(benchmark::kMillisecond);

/// The most memory held while one photo is made flat, in a process that did nothing else: asked for with
/// --memory PHOTO.
int memory(const char* path) {
    DeviceFiles files;
    const auto bytes = files.read(path, 100'000'000).value();
    const auto photo = pictures::decode(bytes).value();
    const auto found = survey(photo).value();
    const auto flat = flatten(photo, found, {.balance = balanceOf(photo, found).value()}).value();
    rusage usage{};
    getrusage(RUSAGE_SELF, &usage);
    std::printf("%d by %d pixels from %d by %d: at most %ld MB\n", flat.width(), flat.height(),
                photo.width(), photo.height(), usage.ru_maxrss / 1000);
    return 0;
}

}  // namespace

int main(int argc, char** argv) {
    if (argc == 3 && std::string(argv[1]) == "--memory") return memory(argv[2]);
    benchmark::Initialize(&argc, argv);
    benchmark::RunSpecifiedBenchmarks();
    // In a process of its own, which holds neither OpenCV's pictures nor the camera's.
    const auto path = std::filesystem::temp_directory_path() / "burrow_bench_flatten.jpg";
    DeviceFiles files;
    if (!files.write(path, photoBytes())) return 1;
    const int status = std::system(
        ("\"" + std::string(argv[0]) + "\" --memory \"" + path.string() + "\"").c_str());
    static_cast<void>(files.remove(path));
    return status == 0 ? 0 : 1;
}
