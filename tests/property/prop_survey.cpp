// How well photos of mats and tags are measured, by a camera of which everything is known. In each band
// of difficulty a length of 15 mm is near enough, and the interval that is stated holds as often as it
// says; photos that are hopeless are refused rather than measured wrongly. BURROW_PHOTOS=300 takes so
// many photos in each band; an argument chooses bands by a part of their names, or "hopeless".
#include <cstdio>
#include <cstdlib>
#include <functional>

#include "measure/length.h"
#include "measure/survey.h"
#include "support/mat_photo.h"
#include "support/survey_tally.h"

using namespace burrow;
using namespace burrow::measure;
using namespace burrow::test;

namespace {

struct Band {
    const char* name;
    double megapixels;
    MatPaper paper;
    Range tilt;
    Range blur;
    double noise;
    Range quality;
    Range radial;
    bool isShaded = false;
    bool isTagOnly = false;
    Range lift{0, 0};  ///< of a sheet that is curled, mm
};

constexpr auto a5 = MatPaper::a5;
constexpr auto a4 = MatPaper::a4;
constexpr std::array bands{
    Band{"12 Mpx, A5, level", 12, a5, {0, 20}, {0.4, 0.8}, 2, {85, 95}, {0, 0}},
    Band{"12 Mpx, A5, lens", 12, a5, {0, 20}, {0.4, 1.5}, 3, {70, 95}, {-0.06, 0}},
    Band{"12 Mpx, A4", 12, a4, {0, 20}, {0.4, 1.0}, 2, {80, 95}, {-0.03, 0}},
    Band{"12 Mpx, A5, tilted", 12, a5, {20, 35}, {0.4, 1.0}, 2, {80, 95}, {-0.03, 0}},
    Band{"12 Mpx, A5, blur 1.5, shade", 12, a5, {0, 35}, {1.4, 1.5}, 4, {70, 80}, {-0.06, 0}, true},
    Band{"24 Mpx, A4", 24, a4, {0, 35}, {0.4, 1.5}, 3, {70, 95}, {-0.06, 0}},
    Band{"5 Mpx, A5", 5, a5, {0, 35}, {0.4, 1.5}, 3, {70, 95}, {-0.06, 0}, true},
    Band{"2 Mpx, A5", 2, a5, {0, 35}, {0.4, 1.0}, 3, {70, 95}, {-0.03, 0}},
    Band{"2 Mpx, A5, blur 1.5, shade", 2, a5, {0, 35}, {1.4, 1.5}, 4, {70, 80}, {-0.06, 0}, true},
    Band{"2 Mpx, A4", 2, a4, {0, 30}, {0.4, 0.7}, 2, {80, 95}, {-0.03, 0}},
    Band{"5 Mpx, A5, mildly curled",
         5,
         a5,
         {0, 25},
         {0.4, 1.0},
         2,
         {80, 95},
         {-0.03, 0},
         false,
         false,
         {1, 3}},
    Band{"tag, 12 Mpx", 12, a5, {0, 20}, {0.4, 1.0}, 2, {80, 95}, {-0.06, 0}, false, true},
    Band{"tag, 5 Mpx, tilted", 5, a5, {20, 35}, {0.4, 1.5}, 3, {70, 95}, {-0.06, 0}, false, true},
    Band{"tag, 2 Mpx", 2, a5, {0, 35}, {0.4, 1.0}, 3, {70, 95}, {-0.06, 0}, false, true},
};

/// Across its width, its height or a diagonal.
Curl curlOf(Range lift, Dice& dice) {
    if (lift.most == 0) return {};
    return {dice.in(lift), 45 * std::floor(dice.in({0, 8})),
            static_cast<CurlShape>(static_cast<int>(dice.in({0, 3})))};
}

Shot shotOf(const Band& band, Dice& dice, std::uint32_t seed) {
    Shot shot;
    shot.megapixels = band.megapixels;
    shot.tilt = dice.in(band.tilt);
    shot.azimuth = dice.in({0, 360});
    shot.roll = 90 * std::floor(dice.in({0, 4})) + dice.in({-10, 10});
    shot.isPortrait = std::abs(std::cos(shot.roll * std::numbers::pi / 180)) > 0.7;
    shot.fill = dice.in({0.85, 0.97});
    shot.aside = dice.in({-0.01, 0.01});
    shot.radial = dice.in(band.radial);
    shot.blur = dice.in(band.blur);
    shot.noise = band.noise;
    shot.quality = static_cast<int>(dice.in(band.quality));
    shot.unevenness = dice.in({0.1, 0.5});
    shot.isShaded = band.isShaded;
    shot.curl = curlOf(band.lift, dice);
    shot.seed = seed;
    return shot;
}

/// Clicks are off by half a pixel, as is said of them.
constexpr double clickDeviation = 0.5;

/// What of a photo is measured.
Tally measureSome(const Survey& survey, const CurledSheet& sheet, const MatBox& within,
                  Dice& dice) {
    constexpr int each = 10;
    Tally tally;
    for (int i = 0; i < each; ++i) {
        const double printed = i % 2 == 0 ? 15 : dice.in({5, 40});
        const double angle = dice.in({0, 2 * std::numbers::pi});
        const MatPoint middle{within.x + Millimetres{dice.in({0, within.width.value})},
                              within.y + Millimetres{dice.in({0, within.height.value})}};
        const Millimetres dx{0.5 * printed * std::cos(angle)}, dy{0.5 * printed * std::sin(angle)};
        const MatPoint a{middle.x - dx, middle.y - dy}, b{middle.x + dx, middle.y + dy};
        const double truth = sheet.between(a, b);
        auto from = sheet.photoOf(a), to = sheet.photoOf(b);
        const auto exact = lengthBetween(survey, from, to);
        for (auto* point : {&from, &to}) {
            point->x += dice.normal(clickDeviation);
            point->y += dice.normal(clickDeviation);
        }
        const auto length = lengthBetween(survey, from, to, {.pointDeviation = clickDeviation});
        if (!length || !exact) continue;
        const double error = std::abs(length->value.value - truth);
        ++tally.lengths;
        tally.covered += length->low.value <= truth && truth <= length->high.value;
        const double half = length->high.value - length->value.value;
        tally.farOff += error > 3 * half;
        tally.planeCovered += exact->low.value <= truth && truth <= exact->high.value;
        tally.widest = std::max(tally.widest, half / truth);
        if (i % 2 == 0) {
            tally.errors.push_back(error);
            tally.exact.push_back(std::abs(exact->value.value - truth));
        }
        const double share = length->deviations.plane / length->deviation();
        tally.planeShare += share * share;
    }
    if (tally.lengths > 0) tally.shares.push_back(tally.coverage());
    return tally;
}

Tally takePhotos(const Band& band, int photos, std::uint32_t seed) {
    Dice dice(seed);
    Tally tally;
    for (int i = 0; i < photos; ++i) {
        const auto own = seed + static_cast<std::uint32_t>(i);
        SheetOptions options;
        options.printer = own;
        options.perMm = band.paper == a4 ? 14 : 20;
        const auto sheet = band.isTagOnly ? tagOnly(own) : matSheet(band.paper, options);
        const auto shot = shotOf(band, dice, own);
        const MatBox seen = band.isTagOnly ? MatBox{{15}, {12}, {70}, {56}} : seenOf(band.paper);
        const auto camera = cameraOf(shot, seen);
        const auto photo = photographed(sheet, shot, camera);
        const auto found = survey(photo);
        ++tally.photos;
        if (!found) {
            ++tally.refused;
            if (std::getenv("BURROW_PHOTOS") != nullptr) {
                std::printf("  refused: %s\n", found.error().message.id.c_str());
            }
            continue;
        }
        const MatBox within =
            band.isTagOnly ? MatBox{{30}, {22}, {40}, {36}} : layoutOf(band.paper).moult;
        tally.add(measureSome(*found, curledSheet(sheet, shot, camera), within, dice));
    }
    return tally;
}

/// Of few photos coverage says little. No length is far outside of its interval, and no interval so wide
/// that nothing could be.
bool isBounded(const Band& band, const Tally& tally) {
    return tally.lengths > 0 && tally.farOff == 0 && tally.widest <= (band.isTagOnly ? 0.15 : 0.1);
}

bool isCovered(const Tally& tally, Range stated) {
    const double chance = tally.chance();
    return tally.coverage() >= stated.least - chance && tally.coverage() <= stated.most + chance;
}

bool isGood(const Band& band, const Tally& tally, bool isLong) {
    const double worst = Tally::percentile95(tally.errors);
    const double plane = Tally::percentile95(tally.exact);
    std::printf(
        "%-30s %4d photos, %3d refused; %5d lengths; 15 mm within %.4f mm, clicked %.3f mm "
        "(95 %%); interval holds in %.1f %% (chance %.1f), %d far off, widest %.1f %%; the "
        "plane's share %.1f %%, alone it holds in %.1f %%\n",
        band.name, tally.photos, tally.refused, tally.lengths, plane, worst, 100 * tally.coverage(),
        100 * tally.chance(), tally.farOff, 100 * tally.widest,
        100 * tally.planeShare / tally.lengths, 100.0 * tally.planeCovered / tally.lengths);
    std::fflush(stdout);
    bool ok = isLong ? isCovered(tally, {0.93, 0.97}) : isBounded(band, tally);
    // On A4 half a pixel at either end is 0.15 mm already; what the photo gives is well within it.
    if (band.megapixels >= 12 && band.tilt.most <= 20 && !band.isTagOnly) {
        ok &= (band.paper == a4 ? plane : worst) <= 0.15;
    }
    // At two megapixels a module has four pixels: with a blur of 1.5 some squares cannot be read. A curled
    // sheet may always be refused.
    const double refusable = band.megapixels > 3 ? 0.05 : 0.2;
    ok &= !isLong || band.lift.most > 0 || tally.refused <= refusable * tally.photos;
    if (!ok) std::printf("  does not hold\n");
    return ok;
}

/// Photos from which nothing good can come, each made hopeless in one way.
using Spoil = std::function<void(Shot&, Dice&)>;
using Rework = std::function<pictures::Raster(pictures::Raster)>;
struct Hopeless {
    const char* name;
    Spoil spoil;
    Rework rework = [](pictures::Raster photo) { return photo; };
    bool isOnScreen = false;
};

/// The same mat a second time, beside itself.
pictures::Raster twice(pictures::Raster photo) {
    pictures::Raster both(2 * photo.width(), photo.height());
    for (int y = 0; y < photo.height(); ++y) {
        auto* end = std::copy_n(photo.row(y), photo.stride(), both.row(y));
        std::copy_n(photo.row(y), photo.stride(), end);
    }
    return both;
}

/// Something grey over a quarter of it.
pictures::Raster covered(pictures::Raster photo) {
    const std::size_t half = 3 * static_cast<std::size_t>(photo.width() / 2);
    for (int y = photo.height() / 2; y < photo.height(); ++y) {
        std::fill_n(photo.row(y) + half, photo.stride() - half, std::uint8_t{120});
    }
    return photo;
}

/// A mat as a screen shows it: dots with dark lines between them.
const Sheet& onScreen() {
    static const auto sheet = [] {
        auto shown = matSheet(a5);
        constexpr double pitch = 0.25, line = 0.0625;
        for (double x = 0; x < 148; x += pitch) shown.fill(x, 0, x + line, 210, 60);
        for (double y = 0; y < 210; y += pitch) shown.fill(0, y, 148, y + line, 60);
        return shown;
    }();
    return sheet;
}
const std::array hopeless{
    Hopeless{"blur of 4 to 8 pixels",
             [](Shot& s, Dice& d) {
                 s.blur = d.in({4, 8});
             }},
    Hopeless{"tilt of 50 to 75 degrees",
             [](Shot& s, Dice& d) {
                 s.tilt = d.in({50, 75});
             }},
    Hopeless{"0.05 to 0.3 Mpx",
             [](Shot& s, Dice& d) {
                 s.megapixels = d.in({0.05, 0.3});
             }},
    Hopeless{"dark",
             [](Shot& s, Dice& d) {
                 s.exposure = d.in({0.0005, 0.004});
                 s.noise = 6;
             }},
    Hopeless{"a corner outside",
             [](Shot& s, Dice& d) {
                 s.cut = d.in({0.2, 0.4});
             }},
    Hopeless{"noise of 60 to 120",
             [](Shot& s, Dice& d) {
                 s.noise = d.in({60, 120});
                 s.quality = 20;
             }},
    Hopeless{"mirrored", [](Shot&, Dice&) {}, turnedOver},
    Hopeless{"two mats",
             [](Shot& s, Dice& d) {
                 s.megapixels = 5;
                 s.tilt = d.in({0, 20});
             },
             twice},
    Hopeless{"a square covered",
             [](Shot& s, Dice& d) {
                 s.tilt = d.in({0, 20});
             },
             covered},
    Hopeless{"on a screen",
             [](Shot& s, Dice& d) {
                 s.megapixels = 8;
                 s.tilt = d.in({0, 15});
                 s.blur = 0.5;
             },
             [](pictures::Raster photo) { return photo; }, true},
    Hopeless{"a curled sheet",
             [](Shot& s, Dice& d) {
                 s.megapixels = 5;
                 s.tilt = d.in({0, 25});
                 s.fill = 0.8;
                 s.curl = curlOf({8, 25}, d);
             }},
};

/// Whether so many of the intervals may miss by chance: three standard deviations of the count.
bool isByChance(int missed, int lengths) {
    const double expected = 0.05 * lengths;
    return missed <= expected + 3 * std::sqrt(0.95 * expected);
}

bool refuseHopeless(int photos) {
    int all = 0, refused = 0, wrong = 0, lengths = 0, missed = 0;
    SheetOptions options;
    options.hasTag = true;
    const auto sheet = matSheet(a5, options);
    for (const auto& kind : hopeless) {
        Dice dice(99);
        int refusedHere = 0, wrongHere = 0;
        for (int i = 0; i < photos; ++i) {
            auto shot = shotOf(bands[7], dice, static_cast<std::uint32_t>(i));
            kind.spoil(shot, dice);
            const auto camera = cameraOf(shot, seenOf(a5));
            auto photo = photographed(kind.isOnScreen ? onScreen() : sheet, shot, camera);
            const auto found = survey(kind.rework(std::move(photo)));
            if (!found) {
                ++refusedHere;
                continue;
            }
            const auto tally =
                measureSome(*found, curledSheet(sheet, shot, camera), layoutOf(a5).moult, dice);
            // One in twenty lies outside of its interval by its nature; of ten, four hardly ever do (one
            // photo in a thousand), and none so far off.
            wrongHere += tally.farOff > 0 || tally.lengths - tally.covered >= 4;
            lengths += tally.lengths;
            missed += tally.lengths - tally.covered;
        }
        std::printf("%-30s %4d photos, %4d refused, %d of the others wrong\n", kind.name, photos,
                    refusedHere, wrongHere);
        std::fflush(stdout);
        all += photos;
        refused += refusedHere;
        wrong += wrongHere;
    }
    std::printf("hopeless: %d photos, %d refused, %d wrong; %d of %d lengths outside\n", all,
                refused, wrong, missed, lengths);
    // Of few lengths chance says nothing.
    const bool isHonest = lengths < 100 || isByChance(missed, lengths);
    return wrong * 200 <= all && refused * 10 >= all * 8 && isHonest;
}

}  // namespace

int main(int argc, char** argv) {
    // Only bands whose names hold this.
    const std::string only = argc > 1 ? argv[1] : "";
    const char* wanted = std::getenv("BURROW_PHOTOS");
    const bool isLong = wanted != nullptr;
    const int photos = isLong ? std::max(1, std::atoi(wanted)) : 2;
    bool ok = true;
    Tally all;
    for (std::size_t i = 0; i < bands.size(); ++i) {
        if (std::string(bands[i].name).find(only) == std::string::npos) continue;
        // A short pass takes one of the first band, and leaves the other large ones out.
        const bool isLarge = bands[i].megapixels > 5;
        if (!isLong && isLarge && i > 0) continue;
        const auto tally = takePhotos(bands[i],
                                      isLong    ? photos
                                      : isLarge ? 1
                                                : 2,
                                      1000 * static_cast<std::uint32_t>(i + 1));
        ok &= isGood(bands[i], tally, isLong);
        all.add(tally);
    }
    // Of a short pass only all bands together have photos enough for chance to be told from them.
    if (!isLong && only.empty()) {
        std::printf("all bands: interval holds in %.1f %% of %d photos (chance %.1f)\n",
                    100 * all.coverage(), all.photos, 100 * all.chance());
        ok &= isCovered(all, {0.95, 0.95});
    }
    if (only.empty() || only == "hopeless") ok &= refuseHopeless(isLong ? photos : 1);
    return ok ? 0 : 1;
}
