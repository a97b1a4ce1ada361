// Homographies and lenses whatever the camera: there and back, in any order of the points.
#include <rapidcheck.h>

#include <cmath>

#include "measure/homography.h"
#include "measure/mat.h"
#include "support/mat_photo.h"

using namespace burrow;
using namespace burrow::measure;

namespace {

double between(double least, double most) {
    return least + (most - least) * *rc::gen::inRange(0, 100'001) / 100'000;
}

Projection anyCamera() {
    test::Shot shot;
    shot.megapixels = between(0.5, 24);
    shot.tilt = between(0, 45);
    shot.azimuth = between(0, 360);
    shot.roll = between(0, 360);
    shot.radial = between(-0.08, 0.08);
    return test::cameraOf(shot, test::seenOf(MatPaper::a5));
}

MatPoint anyPlace() { return {{between(0, 148)}, {between(0, 210)}}; }

double apart(ImagePoint a, ImagePoint b) { return std::hypot(a.x - b.x, a.y - b.y); }

std::vector<PointPair> pairsOf(const Projection& camera, std::size_t count, double error) {
    std::vector<PointPair> pairs;
    for (std::size_t i = 0; i < count; ++i) {
        // One in each corner first, so that they never lie on one line.
        const double x = i % 2 == 0 ? between(0, 50) : between(98, 148);
        const double y = i / 2 % 2 == 0 ? between(0, 70) : between(140, 210);
        auto to = mapped(camera.toPicture, {x, y});
        to.x += between(-error, error);
        to.y += between(-error, error);
        pairs.push_back({{x, y}, to});
    }
    return pairs;
}

}  // namespace

int main() {
    bool ok = rc::check("to the photo and back is where it was", [] {
        const auto camera = anyCamera();
        const auto place = anyPlace();
        const auto back = matOf(camera, photoOf(camera, place));
        RC_ASSERT(back.has_value());
        RC_ASSERT(std::abs(back->x.value - place.x.value) < 1e-8);
        RC_ASSERT(std::abs(back->y.value - place.y.value) < 1e-8);
    });
    ok &= rc::check("the inverse of the inverse is the same", [] {
        const auto h = anyCamera().toPicture;
        const auto back = inverse(h).value();
        const auto twice = inverse(back).value();
        const auto place = anyPlace();
        const ImagePoint point{place.x.value, place.y.value};
        RC_ASSERT(apart(mapped(h, point), mapped(twice, point)) < 1e-6);
        RC_ASSERT(apart(mapped(back, mapped(h, point)), point) < 1e-8);
    });
    ok &= rc::check("exact points give the camera back", [] {
        const auto camera = anyCamera();
        const auto count = static_cast<std::size_t>(*rc::gen::inRange(4, 12));
        const auto pairs = pairsOf(camera, count, 0);
        const auto fit = fitHomography(pairs).value();
        const auto place = anyPlace();
        const ImagePoint point{place.x.value, place.y.value};
        RC_ASSERT(apart(mapped(fit.homography, point), mapped(camera.toPicture, point)) < 1e-3);
    });
    ok &= rc::check("the order of the points does not matter", [] {
        const auto camera = anyCamera();
        auto pairs = pairsOf(camera, static_cast<std::size_t>(*rc::gen::inRange(5, 12)), 1);
        const auto first = fitHomography(pairs).value();
        for (std::size_t i = pairs.size(); i > 1; --i) {
            std::swap(pairs[i - 1],
                      pairs[static_cast<std::size_t>(*rc::gen::inRange(0, static_cast<int>(i)))]);
        }
        const auto second = fitHomography(pairs).value();
        RC_ASSERT(std::abs(first.sumOfSquares - second.sumOfSquares) <
                  1e-6 * (1 + first.sumOfSquares));
        for (const auto& pair : pairs) {
            RC_ASSERT(apart(mapped(first.homography, pair.from),
                            mapped(second.homography, pair.from)) < 1e-4);
        }
    });
    ok &= rc::check("no better sum of squares lies nearby", [] {
        const auto pairs =
            pairsOf(anyCamera(), static_cast<std::size_t>(*rc::gen::inRange(5, 12)), 2);
        const auto fit = fitHomography(pairs).value();
        auto other = fit.homography;
        const auto i = static_cast<std::size_t>(*rc::gen::inRange(0, 8));
        other[i] *= 1 + between(-1e-4, 1e-4);
        double sum = 0;
        for (const auto& pair : pairs) {
            const double miss = apart(mapped(other, pair.from), pair.to);
            sum += miss * miss;
        }
        RC_ASSERT(sum >= fit.sumOfSquares * (1 - 1e-9));
    });
    ok &= rc::check("any bytes are a square of a mat or none", [] {
        const auto text = *rc::gen::arbitrary<std::string>();
        if (const auto mark = parseMatPayload(text)) RC_ASSERT(matPayload(*mark) == text);
        RC_ASSERT(!parseMatPayload("BURROWBOOK-MAT:" + text + "*"));
    });
    return ok ? 0 : 1;
}
