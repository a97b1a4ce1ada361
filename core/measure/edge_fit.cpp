#include "measure/edge_fit.h"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <map>

namespace burrow::measure {
namespace {

using Vector = Eigen::VectorXd;
using Matrix = Eigen::MatrixXd;
/// By the nine parameters that all symbols share.
using Slope = Eigen::Matrix<double, static_cast<int>(parameterCount), 1>;

constexpr Eigen::Index radialAt = 8;
constexpr auto shared = static_cast<Eigen::Index>(parameterCount);

FitFrame frameOf(std::span<const EdgePoint> edges, const Radial& lens) {
    double x0 = edges.front().at.x.value, x1 = x0, y0 = edges.front().at.y.value, y1 = y0;
    for (const auto& edge : edges) {
        x0 = std::min(x0, edge.at.x.value);
        x1 = std::max(x1, edge.at.x.value);
        y0 = std::min(y0, edge.at.y.value);
        y1 = std::max(y1, edge.at.y.value);
    }
    return {{{0.5 * (x0 + x1)}, {0.5 * (y0 + y1)}},
            0.5 * std::max(x1 - x0, y1 - y0),
            lens.centre,
            lens.radius};
}

/// What a piece of edge says, linearised at the current parameters.
struct Row {
    double miss = 0;  ///< pixels across the edge, seen less expected
    Slope slope;      ///< of what is expected; by the grown dark it is the polarity
};

class Problem {
public:
    Problem(std::span<const EdgePoint> edges, int symbols, const FitFrame& frame,
            const RadialBelief& belief)
        : edges_(edges),
          frame_(frame),
          belief_(belief),
          size_(shared + symbols),
          weights_(edges.size()) {
        for (std::size_t i = 0; i < edges.size(); ++i) weights_[i] = edges[i].weight;
    }

    [[nodiscard]] Eigen::Index size() const { return size_; }
    [[nodiscard]] const std::vector<double>& weights() const { return weights_; }
    [[nodiscard]] std::vector<double>& weights() { return weights_; }

    void fill(Row& row, const EdgePoint& edge, const Vector& p) const;
    [[nodiscard]] double miss(const EdgePoint& edge, const Vector& p) const;
    [[nodiscard]] double cost(const Vector& p) const;
    void normal(const Vector& p, Matrix& matrix, Vector& right) const;
    void addBelief(const Vector& p, Matrix& matrix, Vector& right) const;

private:
    /// The point in the photo and its derivatives by the place on the sheet, in the frame.
    struct Seen {
        double x, y, w, u, v, rho, factor;
        double ux, uy, vx, vy;  ///< of the point that the lens shows
    };
    [[nodiscard]] Seen seen(const EdgePoint& edge, const Vector& p) const;

    std::span<const EdgePoint> edges_;
    const FitFrame& frame_;
    RadialBelief belief_;
    Eigen::Index size_;
    std::vector<double> weights_;
};

Problem::Seen Problem::seen(const EdgePoint& edge, const Vector& p) const {
    Seen s{};
    s.x = (edge.at.x.value - frame_.centre.x.value) / frame_.extent;
    s.y = (edge.at.y.value - frame_.centre.y.value) / frame_.extent;
    s.w = p(6) * s.x + p(7) * s.y + 1;
    s.u = (p(0) * s.x + p(1) * s.y + p(2)) / s.w;
    s.v = (p(3) * s.x + p(4) * s.y + p(5)) / s.w;
    s.rho = s.u * s.u + s.v * s.v;
    const double k = p(radialAt);
    s.factor = 1 + k * s.rho;
    const double ux = (p(0) - p(6) * s.u) / s.w, uy = (p(1) - p(7) * s.u) / s.w;
    const double vx = (p(3) - p(6) * s.v) / s.w, vy = (p(4) - p(7) * s.v) / s.w;
    const double a = s.factor + 2 * k * s.u * s.u, b = 2 * k * s.u * s.v;
    const double c = s.factor + 2 * k * s.v * s.v;
    s.ux = a * ux + b * vx;
    s.uy = a * uy + b * vy;
    s.vx = b * ux + c * vx;
    s.vy = b * uy + c * vy;
    return s;
}

/// Across the edge, towards growing x or y on the sheet.
struct Across {
    double x, y;
};
template <class Seen>
Across across(const Seen& s, bool isUpright) {
    // Along the edge runs the derivative by the other coordinate.
    const double alongX = isUpright ? s.uy : s.ux;
    const double alongY = isUpright ? s.vy : s.vx;
    const double towardsX = isUpright ? s.ux : s.uy;
    const double towardsY = isUpright ? s.vx : s.vy;
    const double length = std::sqrt(alongX * alongX + alongY * alongY);
    Across n{alongY / length, -alongX / length};
    if (n.x * towardsX + n.y * towardsY < 0) n = {-n.x, -n.y};
    return n;
}

double Problem::miss(const EdgePoint& edge, const Vector& p) const {
    const auto s = seen(edge, p);
    const auto n = across(s, edge.isUpright);
    const double dx = edge.seen.x - frame_.middle.x - frame_.radius * s.factor * s.u;
    const double dy = edge.seen.y - frame_.middle.y - frame_.radius * s.factor * s.v;
    return n.x * dx + n.y * dy - edge.polarity * p(shared + edge.symbol);
}

void Problem::fill(Row& row, const EdgePoint& edge, const Vector& p) const {
    const auto s = seen(edge, p);
    const auto n = across(s, edge.isUpright);
    const double dx = edge.seen.x - frame_.middle.x - frame_.radius * s.factor * s.u;
    const double dy = edge.seen.y - frame_.middle.y - frame_.radius * s.factor * s.v;
    row.miss = n.x * dx + n.y * dy - edge.polarity * p(shared + edge.symbol);
    // By the chain rule through the point of the straight lens.
    const double k = p(radialAt);
    const double a = s.factor + 2 * k * s.u * s.u, b = 2 * k * s.u * s.v;
    const double c = s.factor + 2 * k * s.v * s.v;
    const double byU = frame_.radius * (n.x * a + n.y * b) / s.w;
    const double byV = frame_.radius * (n.x * b + n.y * c) / s.w;
    const double byW = -(byU * s.u + byV * s.v);
    row.slope << byU * s.x, byU * s.y, byU, byV * s.x, byV * s.y, byV, byW * s.x, byW * s.y,
        frame_.radius * s.rho * (n.x * s.u + n.y * s.v);
}

double Problem::cost(const Vector& p) const {
    double sum = 0;
    for (std::size_t i = 0; i < edges_.size(); ++i) {
        if (weights_[i] == 0) continue;
        const double r = weights_[i] * miss(edges_[i], p);
        sum += r * r;
    }
    if (belief_.deviation > 0) {
        const double r = (p(radialAt) - belief_.mean) / belief_.deviation;
        sum += r * r;
    }
    return sum;
}

void Problem::addBelief(const Vector& p, Matrix& matrix, Vector& right) const {
    if (belief_.deviation > 0) {
        const double weight = 1 / (belief_.deviation * belief_.deviation);
        matrix(radialAt, radialAt) += weight;
        right(radialAt) += weight * (belief_.mean - p(radialAt));
    } else {
        matrix.row(radialAt).setZero();
        matrix.col(radialAt).setZero();
        matrix(radialAt, radialAt) = 1;
        right(radialAt) = 0;
    }
}

void Problem::normal(const Vector& p, Matrix& matrix, Vector& right) const {
    matrix.setZero(size_, size_);
    right.setZero(size_);
    // Only a symbol's own pieces know its grown dark: most of the matrix stays empty.
    Eigen::Matrix<double, shared, shared> common = Eigen::Matrix<double, shared, shared>::Zero();
    Slope commonRight = Slope::Zero();
    Row row;
    for (std::size_t i = 0; i < edges_.size(); ++i) {
        if (weights_[i] == 0) continue;
        const auto& edge = edges_[i];
        fill(row, edge, p);
        const double weight = weights_[i] * weights_[i];
        const Slope weighted = weight * row.slope;
        common.noalias() += weighted * row.slope.transpose();
        commonRight += row.miss * weighted;
        const auto own = shared + edge.symbol;
        matrix.col(own).head<shared>() += edge.polarity * weighted;
        matrix(own, own) += weight;
        right(own) += weight * edge.polarity * row.miss;
    }
    matrix.topLeftCorner<shared, shared>() = common;
    right.head<shared>() = commonRight;
    for (Eigen::Index own = shared; own < size_; ++own) {
        matrix.row(own).head<shared>() = matrix.col(own).head<shared>().transpose();
    }
    addBelief(p, matrix, right);
}

/// Whether it settled somewhere.
bool settle(const Problem& problem, Vector& p, double enough) {
    double damping = 1e-4;
    double cost = problem.cost(p);
    Matrix matrix;
    Vector right;
    constexpr int mostSteps = 30;
    for (int step = 0; step < mostSteps; ++step) {
        problem.normal(p, matrix, right);
        matrix.diagonal() *= 1 + damping;
        const Vector change = matrix.ldlt().solve(right);
        if (!change.allFinite()) return false;
        const Vector next = p + change;
        const double after = problem.cost(next);
        if (after <= cost) {
            const double gain = cost - after;
            p = next;
            cost = after;
            damping = std::max(1e-12, damping / 10);
            if (gain <= enough * cost) return true;
        } else {
            damping *= 10;
            if (damping > 1e8) return std::isfinite(cost);
        }
    }
    return std::isfinite(cost);
}

double medianOf(std::vector<double>& values) {
    const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
    std::nth_element(values.begin(), middle, values.end());
    return *middle;
}

/// The scatter of each symbol's pieces, by the median, so that what does not belong hardly counts.
std::vector<double> scatter(std::span<const EdgePoint> edges, int symbols, const Problem& problem,
                            const Vector& p) {
    std::vector<std::vector<double>> distances(static_cast<std::size_t>(symbols));
    for (const auto& edge : edges) {
        distances[static_cast<std::size_t>(edge.symbol)].push_back(edge.weight *
                                                                   std::abs(problem.miss(edge, p)));
    }
    std::vector<double> result;
    for (auto& each : distances) {
        // 1.4826 turns the median distance of a normal distribution into its deviation.
        constexpr double least = 0.005;  // pixels: nothing is known better than that
        result.push_back(each.empty() ? 1 : std::max(least, 1.4826 * medianOf(each)));
    }
    return result;
}

/// Weights from the scatter; none for what is too far out.
void weigh(std::span<const EdgePoint> edges, Problem& problem, const Vector& p,
           const std::vector<double>& noise, double widening) {
    constexpr double outside = 4;
    for (std::size_t i = 0; i < edges.size(); ++i) {
        const auto& edge = edges[i];
        const double deviation = noise[static_cast<std::size_t>(edge.symbol)];
        const double distance = edge.weight * std::abs(problem.miss(edge, p)) / deviation;
        problem.weights()[i] = distance > outside * widening ? 0 : edge.weight / deviation;
    }
}

/// By how much the sums over whole lines scatter more than those of single pieces would, on the average
/// of the homography's parameters.
double clusteringOf(std::span<const EdgePoint> edges, const Problem& problem, const Vector& p,
                    const Matrix& inverse, double each, double free, std::size_t& lineCount) {
    std::map<int, Vector> lines;
    Row row;
    for (std::size_t i = 0; i < edges.size(); ++i) {
        const double weight = problem.weights()[i];
        if (weight == 0) continue;
        problem.fill(row, edges[i], p);
        auto& sum = lines.try_emplace(edges[i].line, Vector::Zero(problem.size())).first->second;
        const double pull = weight * weight * row.miss;
        sum.head<shared>() += pull * row.slope;
        sum(shared + edges[i].symbol) += pull * edges[i].polarity;
    }
    lineCount = lines.size();
    Matrix scattered = Matrix::Zero(problem.size(), problem.size());
    for (const auto& [line, sum] : lines) scattered += sum * sum.transpose();
    const auto count = static_cast<double>(lines.size());
    const Matrix covariance = inverse * scattered * inverse * (count / std::max(1.0, count - free));
    double ratio = 0;
    for (Eigen::Index i = 0; i < 8; ++i) ratio += covariance(i, i) / (each * inverse(i, i)) / 8;
    return std::max(1.0, ratio);
}

/// Fills in how well it fits, and makes the weights those of what is known, so that what is believed
/// beforehand counts as much as it should.
void judge(EdgeFit& fit, std::span<const EdgePoint> edges, Problem& problem, const Vector& p,
           bool hasRadial) {
    Matrix matrix;
    Vector right;
    problem.normal(p, matrix, right);
    const Matrix inverse = matrix.ldlt().solve(Matrix::Identity(problem.size(), problem.size()));
    double squares = 0;
    for (std::size_t i = 0; i < edges.size(); ++i) {
        if (problem.weights()[i] == 0) continue;
        const double miss = problem.miss(edges[i], p);
        ++fit.used;
        squares += miss * miss;
        fit.sumOfSquares += problem.weights()[i] * problem.weights()[i] * miss * miss;
    }
    const auto free = static_cast<double>(problem.size() - (hasRadial ? 0 : 1));
    fit.freedom = static_cast<int>(static_cast<double>(fit.used) - free);
    if (fit.freedom <= 0) return;
    fit.residual = std::sqrt(squares / static_cast<double>(fit.used));
    const double each = fit.sumOfSquares / fit.freedom;
    fit.clustering = clusteringOf(edges, problem, p, inverse, each, free, fit.lines);
    for (auto& weight : problem.weights()) weight /= std::sqrt(each * fit.clustering);
}

void setCovariance(EdgeFit& fit, const Problem& problem, const Vector& p, bool hasRadial) {
    Matrix matrix;
    Vector right;
    problem.normal(p, matrix, right);
    Matrix covariance = matrix.ldlt().solve(Matrix::Identity(problem.size(), problem.size()));
    if (!hasRadial) {
        covariance.row(radialAt).setZero();
        covariance.col(radialAt).setZero();
    }
    for (Eigen::Index i = 0; i < shared; ++i) {
        for (Eigen::Index k = 0; k < shared; ++k) {
            fit.covariance[static_cast<std::size_t>(i * shared + k)] = covariance(i, k);
        }
    }
}

constexpr std::size_t leastEdges = 40;

Vector startOf(const Problem& problem, const Homography& start, const FitFrame& frame,
               const RadialBelief& belief) {
    Vector p = Vector::Zero(problem.size());
    const auto begun = parametersOf(start, frame);
    for (std::size_t i = 0; i < 8; ++i) p(static_cast<Eigen::Index>(i)) = begun[i];
    if (belief.deviation > 0) p(radialAt) = belief.mean;
    return p;
}

/// Comes near, and leaves out what does not belong. The first round keeps more than will stay, since the
/// start may be off.
bool approach(std::span<const EdgePoint> edges, int symbols, Problem& problem, Vector& p,
              std::vector<double>& noise) {
    constexpr double roughly = 1e-3;
    if (!p.allFinite()) return false;
    for (const double widening : {2.0, 1.0}) {
        if (!settle(problem, p, roughly)) return false;
        noise = scatter(edges, symbols, problem, p);
        weigh(edges, problem, p, noise, widening);
    }
    return true;
}

}  // namespace

Result<EdgeFit> fitEdges(std::span<const EdgePoint> edges, int symbols, const Homography& start,
                         const Radial& lens, const RadialBelief& belief) {
    const auto unfit = [] { return fail(Trouble::badInput, {"measure.unfit"}); };
    if (edges.size() < leastEdges) return unfit();
    EdgeFit fit;
    fit.frame = frameOf(edges, lens);
    Problem problem(edges, symbols, fit.frame, belief);
    auto p = startOf(problem, start, fit.frame, belief);
    if (!approach(edges, symbols, problem, p, fit.noise)) return unfit();
    constexpr double well = 1e-7;
    if (!settle(problem, p, well)) return unfit();
    judge(fit, edges, problem, p, belief.deviation > 0);
    if (fit.used < leastEdges || fit.freedom <= 0 || !settle(problem, p, well)) return unfit();
    setCovariance(fit, problem, p, belief.deviation > 0);
    for (std::size_t i = 0; i < parameterCount; ++i) {
        fit.parameters[i] = p(static_cast<Eigen::Index>(i));
    }
    for (int i = 0; i < symbols; ++i) fit.spread.push_back(p(shared + i));
    return fit;
}

std::optional<SymbolFit> fitSymbol(std::span<const EdgePoint> edges, const Homography& start,
                                   const Radial& lens) {
    if (edges.size() < leastEdges) return std::nullopt;
    const auto frame = frameOf(edges, lens);
    const RadialBelief none;
    Problem problem(edges, 1, frame, none);
    auto p = startOf(problem, start, frame, none);
    std::vector<double> noise;
    constexpr double enough = 1e-4;
    if (!approach(edges, 1, problem, p, noise) || !settle(problem, p, enough)) return std::nullopt;
    Parameters parameters{};
    for (std::size_t i = 0; i < 8; ++i) parameters[i] = p(static_cast<Eigen::Index>(i));
    return SymbolFit{projectionOf(parameters, frame).toPicture, noise.front()};
}

}  // namespace burrow::measure
