#include "measure/homography.h"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <random>

namespace burrow::measure {
namespace {

using Matrix3 = Eigen::Matrix<double, 3, 3, Eigen::RowMajor>;
using Pairs = std::span<const PointPair>;

tl::unexpected<Error> unsolvable() { return fail(Trouble::badInput, {"measure.noPlane"}); }

Homography arrayOf(const Matrix3& matrix) {
    Homography h{};
    Eigen::Map<Matrix3>(h.data()) = matrix;
    return h;
}
Matrix3 matrixOf(const Homography& h) { return Eigen::Map<const Matrix3>(h.data()); }

/// Moves the centroid to the origin and brings the mean distance from it to the root of two.
template <class Get>
Matrix3 normalising(Pairs pairs, Get get) {
    Eigen::Vector2d centre(0, 0);
    for (const auto& pair : pairs) centre += Eigen::Vector2d(get(pair).x, get(pair).y);
    centre /= static_cast<double>(pairs.size());
    double distance = 0;
    for (const auto& pair : pairs) {
        distance += std::hypot(get(pair).x - centre.x(), get(pair).y - centre.y());
    }
    const double scale = std::sqrt(2.0) * static_cast<double>(pairs.size()) / distance;
    Matrix3 result;
    result << scale, 0, -scale * centre.x(), 0, scale, -scale * centre.y(), 0, 0, 1;
    return result;
}

ImagePoint from(const PointPair& pair) { return pair.from; }
ImagePoint to(const PointPair& pair) { return pair.to; }

Eigen::Vector2d miss(const Matrix3& h, const PointPair& pair) {
    const Eigen::Vector3d at = h * Eigen::Vector3d(pair.from.x, pair.from.y, 1);
    return {at.x() / at.z() - pair.to.x, at.y() / at.z() - pair.to.y};
}

double squares(const Matrix3& h, Pairs pairs) {
    double sum = 0;
    for (const auto& pair : pairs) sum += miss(h, pair).squaredNorm();
    return sum;
}

/// Levenberg and Marquardt over the first eight elements, the last being 1. Points are normalised.
Matrix3 refined(Matrix3 h, Pairs pairs) {
    h /= h(2, 2);
    double damping = 1e-3;
    double sum = squares(h, pairs);
    constexpr int mostSteps = 100;
    for (int step = 0; step < mostSteps; ++step) {
        Eigen::Matrix<double, 8, 8> normal = Eigen::Matrix<double, 8, 8>::Zero();
        Eigen::Matrix<double, 8, 1> right = Eigen::Matrix<double, 8, 1>::Zero();
        for (const auto& pair : pairs) {
            const double x = pair.from.x;
            const double y = pair.from.y;
            const Eigen::Vector3d at = h * Eigen::Vector3d(x, y, 1);
            const double u = at.x() / at.z();
            const double v = at.y() / at.z();
            Eigen::Matrix<double, 2, 8> slope;
            slope << x, y, 1, 0, 0, 0, -u * x, -u * y, 0, 0, 0, x, y, 1, -v * x, -v * y;
            slope /= at.z();
            normal += slope.transpose() * slope;
            right -= slope.transpose() * miss(h, pair);
        }
        auto damped = normal;
        damped.diagonal() *= 1 + damping;
        const Eigen::Matrix<double, 8, 1> change = damped.ldlt().solve(right);
        Matrix3 next = h;
        for (Eigen::Index i = 0; i < 8; ++i) next(i / 3, i % 3) += change(i);
        const double after = squares(next, pairs);
        if (after <= sum) {
            const bool isSettled = change.norm() < 1e-14 * (1 + h.norm());
            h = next;
            sum = after;
            damping = std::max(1e-15, damping / 10);
            if (isSettled) break;
        } else {
            damping *= 10;
            if (damping > 1e12) break;
        }
    }
    return h;
}

struct Normalised {
    Matrix3 before;
    Matrix3 after;
    std::vector<PointPair> pairs;

    explicit Normalised(Pairs given)
        : before(normalising(given, from)), after(normalising(given, to)) {
        for (const auto& pair : given) {
            pairs.push_back({mapped(arrayOf(before), pair.from), mapped(arrayOf(after), pair.to)});
        }
    }
    [[nodiscard]] Matrix3 undone(const Matrix3& h) const {
        const Matrix3 result = after.inverse() * h * before;
        return result / result(2, 2);
    }
};

std::optional<Matrix3> direct(Pairs normalised) {
    Eigen::Matrix<double, Eigen::Dynamic, 9> rows(2 * static_cast<Eigen::Index>(normalised.size()),
                                                  9);
    Eigen::Index at = 0;
    for (const auto& pair : normalised) {
        const double x = pair.from.x;
        const double y = pair.from.y;
        const double u = pair.to.x;
        const double v = pair.to.y;
        rows.row(at++) << -x, -y, -1, 0, 0, 0, u * x, u * y, u;
        rows.row(at++) << 0, 0, 0, -x, -y, -1, v * x, v * y, v;
    }
    const Eigen::JacobiSVD<Eigen::MatrixXd> svd(rows, Eigen::ComputeFullV);
    const auto& values = svd.singularValues();
    // With three points on a line more than one matrix does it.
    constexpr double least = 1e-9;
    if (!(values(7) > least * values(0))) return std::nullopt;
    const Eigen::Matrix<double, 9, 1> h = svd.matrixV().col(8);
    Matrix3 result = Eigen::Map<const Matrix3>(h.data());
    if (!(std::abs(result(2, 2)) > least) || !result.allFinite()) return std::nullopt;
    return result;
}

bool isUsable(Pairs pairs) {
    return pairs.size() >= 4 && std::all_of(pairs.begin(), pairs.end(), [](const PointPair& pair) {
               return std::isfinite(pair.from.x) && std::isfinite(pair.from.y) &&
                      std::isfinite(pair.to.x) && std::isfinite(pair.to.y);
           });
}

std::vector<bool> within(const Homography& h, Pairs pairs, double tolerance) {
    std::vector<bool> isNear;
    for (const auto& pair : pairs) {
        isNear.push_back(miss(matrixOf(h), pair).norm() <= tolerance);
    }
    return isNear;
}

std::vector<PointPair> chosen(Pairs pairs, const std::vector<bool>& isUsed) {
    std::vector<PointPair> some;
    for (std::size_t i = 0; i < pairs.size(); ++i) {
        if (isUsed[i]) some.push_back(pairs[i]);
    }
    return some;
}

/// Those that agree with the sample of four with which most agree.
std::vector<bool> agreeing(Pairs pairs, double tolerance) {
    std::mt19937 engine(1);  // fixed: the same photo always measures the same
    std::vector<std::size_t> order(pairs.size());
    for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
    std::vector<bool> best(pairs.size(), false);
    std::ptrdiff_t most = -1;
    constexpr int samples = 300;
    for (int sample = 0; sample < samples; ++sample) {
        for (std::size_t i = 0; i < 4; ++i) {
            std::swap(order[i], order[i + engine() % (order.size() - i)]);
        }
        const std::array four{pairs[order[0]], pairs[order[1]], pairs[order[2]], pairs[order[3]]};
        const auto h = directHomography(four);
        if (!h) continue;
        const auto isNear = within(*h, pairs, tolerance);
        const auto count = std::count(isNear.begin(), isNear.end(), true);
        if (count > most) {
            most = count;
            best = isNear;
        }
        if (count == static_cast<std::ptrdiff_t>(pairs.size())) break;
    }
    return best;
}

}  // namespace

Result<Homography> directHomography(std::span<const PointPair> pairs) {
    if (!isUsable(pairs)) return unsolvable();
    const Normalised normalised(pairs);
    if (!normalised.before.allFinite() || !normalised.after.allFinite()) return unsolvable();
    const auto h = direct(normalised.pairs);
    if (!h) return unsolvable();
    const auto result = normalised.undone(*h);
    if (!result.allFinite()) return unsolvable();
    return arrayOf(result);
}

Result<HomographyFit> fitHomography(std::span<const PointPair> pairs,
                                    std::optional<double> tolerance) {
    if (!isUsable(pairs)) return unsolvable();
    HomographyFit fit;
    fit.isUsed.assign(pairs.size(), true);
    if (tolerance) fit.isUsed = agreeing(pairs, *tolerance);
    // Refining may bring others within reach, or put some out of it.
    constexpr int rounds = 5;
    for (int round = 0; round < rounds; ++round) {
        const auto some = chosen(pairs, fit.isUsed);
        BURROW_TRY(const auto start, directHomography(some));
        const Normalised normalised(some);
        const Matrix3 begun = normalised.after * matrixOf(start) * normalised.before.inverse();
        fit.homography = arrayOf(normalised.undone(refined(begun, normalised.pairs)));
        fit.sumOfSquares = squares(matrixOf(fit.homography), some);
        if (!tolerance) break;
        auto isNear = within(fit.homography, pairs, *tolerance);
        if (isNear == fit.isUsed) break;
        fit.isUsed = std::move(isNear);
    }
    return fit;
}

}  // namespace burrow::measure
