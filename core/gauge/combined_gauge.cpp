#include "core/gauge/combined_gauge.h"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>

#include "core/gauge/gauge_belief.h"
#include "core/gauge/gauge_prior.h"
#include "core/gauge/source_belief.h"

namespace roundwright {

namespace {

/// Even what was given as exact is not.
constexpr double least_deviation = 1e-3;

/// What one measurement says: numbers = directions x, with errors that go together.
struct Said {
    Eigen::MatrixX2d directions;
    Eigen::VectorXd numbers;
    Eigen::MatrixXd covariance;
    std::optional<GaugeBounds> bounds;

    [[nodiscard]] bool empty() const { return numbers.size() == 0 && !bounds; }
};

/// How its numbers move where both sizes, or the ratio alone, are larger by a logarithm of 1.
Eigen::VectorXd moved_by_size(const Said& said) { return said.directions * Eigen::Vector2d(1, 1); }
Eigen::VectorXd moved_by_ratio(const Said& said) { return said.directions * Eigen::Vector2d(-0.5, 0.5); }

/// `size_deviation` is common to all its numbers.
Said said_of(const GaugeFindings& findings, double size_deviation) {
    const auto count = static_cast<Eigen::Index>(findings.evidence.size());
    Said said{Eigen::MatrixX2d(count, 2), Eigen::VectorXd(count), Eigen::MatrixXd::Zero(count, count),
              findings.bounds};
    for (Eigen::Index i = 0; i < count; ++i) {
        const GaugeEvidence& evidence = findings.evidence[static_cast<std::size_t>(i)];
        said.directions.row(i) = evidence.direction.transpose();
        said.numbers[i] = evidence.value;
        said.covariance(i, i) = std::pow(std::max(evidence.deviation, least_deviation), 2);
    }
    const Eigen::VectorXd common = moved_by_size(said) * size_deviation;
    said.covariance += common * common.transpose();
    return said;
}

/// The numbers less what is believed, and the covariance that this should have.
struct Innovation {
    Eigen::VectorXd off;
    Eigen::MatrixXd covariance;
};
Innovation innovation(const GaugeBelief& belief, const Said& said) {
    return {said.numbers - said.directions * belief.mean,
            said.directions * belief.covariance * said.directions.transpose() + said.covariance};
}

/// Limits seen twice are no narrower than seen once, so those along one direction are laid over one another.
GaugeBelief within_all(GaugeBelief belief, std::vector<GaugeBounds> bounds) {
    std::vector<GaugeBounds> merged;
    for (const GaugeBounds& one : bounds) {
        const auto same = std::ranges::find_if(
            merged, [&](const GaugeBounds& other) { return other.direction == one.direction; });
        if (same == merged.end() || std::max(same->low, one.low) >= std::min(same->high, one.high)) {
            merged.push_back(one);
            continue;
        }
        same->low = std::max(same->low, one.low);
        same->high = std::min(same->high, one.high);
    }
    for (const GaugeBounds& one : merged) belief = bounded(belief, one);
    return belief;
}

/// All that was said but for what `except` says: information matrices add up.
GaugeBelief belief_from(const std::vector<Said>& all, double hook_mm, const Said* except = nullptr) {
    const GaugeBelief before = belief_before_measuring(hook_mm);
    Eigen::Matrix2d information = before.covariance.inverse();
    Eigen::Vector2d side = information * before.mean;
    std::vector<GaugeBounds> bounds;
    for (const Said& said : all) {
        if (&said == except) continue;
        if (said.bounds) bounds.push_back(*said.bounds);
        if (said.numbers.size() == 0) continue;
        const Eigen::LDLT<Eigen::MatrixXd> errors(said.covariance);
        information += said.directions.transpose() * errors.solve(Eigen::MatrixXd(said.directions));
        side += said.directions.transpose() * errors.solve(said.numbers);
    }
    const Eigen::Matrix2d covariance = information.inverse();
    return within_all({covariance * side, covariance}, bounds);
}

/// The 95th percentile of chi squared (Wilson and Hilferty, The Distribution of Chi-square, 1931).
double no_chance_above(double numbers) {
    constexpr double standard_95 = 1.6449;
    const double part = 2 / (9 * numbers);
    return numbers * std::pow(1 - part + standard_95 * std::sqrt(part), 3);
}

void set_distance(MeasurementPart& part, const Said& said, const GaugeBelief& others) {
    const Innovation step = innovation(others, said);
    const Eigen::LDLT<Eigen::MatrixXd> factor(step.covariance);
    const Eigen::VectorXd weighed = factor.solve(step.off);
    part.off = std::sqrt(std::max(0.0, step.off.dot(weighed)));
    const auto fit = [&](const Eigen::VectorXd& moved) {
        const double information = moved.dot(factor.solve(moved));
        return information > 0 ? moved.dot(weighed) / information : 0;
    };
    const auto explained = [&](const Eigen::VectorXd& moved) { return fit(moved) * moved.dot(weighed); };
    constexpr double clearly = 1.05;
    part.how = explained(moved_by_ratio(said)) > clearly * explained(moved_by_size(said)) ? Differs::ratio
                                                                                          : Differs::size;
    part.by = std::expm1(fit(part.how == Differs::ratio ? moved_by_ratio(said) : moved_by_size(said)));
}

/// The trace of the measurement's information times the covariance of all: what it adds, in numbers known.
double numbers_known_by(const Said& said, const GaugeBelief& all) {
    if (said.numbers.size() == 0) return 0;
    const Eigen::MatrixXd seen = said.directions * all.covariance * said.directions.transpose();
    return Eigen::LDLT<Eigen::MatrixXd>(said.covariance).solve(seen).trace();
}

void share_out(std::vector<MeasurementPart>& parts) {
    double all = 0;
    for (const MeasurementPart& part : parts) all += part.share;
    if (!(all > 0)) return;
    for (MeasurementPart& part : parts) part.share /= all;
}

void find_disagreement(CombinedGauge& combined, const std::vector<Said>& said) {
    double furthest = 0;
    for (std::size_t i = 0; i < said.size(); ++i) {
        const auto numbers = static_cast<double>(said[i].numbers.size());
        if (numbers == 0) continue;
        const double beyond = std::pow(combined.parts[i].off, 2) / no_chance_above(numbers);
        if (beyond > std::max(1.0, furthest)) combined.disagrees = i;
        furthest = std::max(furthest, beyond);
    }
}

std::optional<GaugeFindings> usable_findings(const GaugeMeasurement& measurement, double hook_mm) {
    if (!measurement.counts) return std::nullopt;
    return std::visit([&](const auto& what) { return findings_of(what, hook_mm); }, measurement.what);
}

std::vector<std::optional<GaugeFindings>> all_findings(const SeveralGauge& several, double hook_mm) {
    std::vector<std::optional<GaugeFindings>> found;
    for (const GaugeMeasurement& measurement : several.measurements)
        found.push_back(usable_findings(measurement, hook_mm));
    return found;
}

/// One a measurement; empty where it does not count. Other days tell nothing of one that stands alone.
std::vector<Said> all_said(const std::vector<std::optional<GaugeFindings>>& found) {
    const auto counted = std::ranges::count_if(found, [](const auto& one) { return one.has_value(); });
    std::vector<Said> said;
    for (const auto& one : found)
        said.push_back(said_of(one.value_or(GaugeFindings{}), counted > 1 ? day_to_day_spread : 0));
    return said;
}

GaugeSource as_source(const SwatchGauge& swatch) { return swatch; }
GaugeSource as_source(const CircleGauge& circle) { return circle; }
GaugeSource as_source(const GivenGauge& given) { return given; }
GaugeSource as_source(const FinishedPieceGauge&) { return {}; }  // whose lines alone may say too little

std::optional<Gauge> gauge_by_itself(const GaugeMeasurement& measurement, double hook_mm) {
    return gauge_from(std::visit([](const auto& what) { return as_source(what); }, measurement.what),
                      hook_mm);
}

}  // namespace

std::size_t CombinedGauge::counted() const {
    return static_cast<std::size_t>(
        std::ranges::count_if(parts, [](const MeasurementPart& part) { return part.share > 0; }));
}

std::optional<CombinedGauge> combined_gauge(const SeveralGauge& several, double hook_mm) {
    const std::vector<Said> said = all_said(all_findings(several, hook_mm));
    if (std::ranges::all_of(said, &Said::empty)) return std::nullopt;
    const GaugeBelief belief = belief_from(said, hook_mm);
    CombinedGauge combined{gauge_of(belief), std::vector<MeasurementPart>(said.size()), {}};
    for (std::size_t i = 0; i < said.size(); ++i) combined.parts[i].share = numbers_known_by(said[i], belief);
    share_out(combined.parts);
    if (combined.counted() < 2) {
        const auto alone = std::ranges::max_element(combined.parts, {}, &MeasurementPart::share);
        const auto at = static_cast<std::size_t>(alone - combined.parts.begin());
        combined.gauge = gauge_by_itself(several.measurements[at], hook_mm).value_or(combined.gauge);
        return combined;
    }
    for (std::size_t i = 0; i < said.size(); ++i)
        if (said[i].numbers.size() > 0)
            set_distance(combined.parts[i], said[i], belief_from(said, hook_mm, &said[i]));
    find_disagreement(combined, said);
    return combined;
}

std::vector<GaugeMeasurement> measurements_of(const GaugeSource& source) {
    if (const auto* several = std::get_if<SeveralGauge>(&source)) return several->measurements;
    if (const auto* swatch = std::get_if<SwatchGauge>(&source)) return {{*swatch, {}, {}}};
    if (const auto* circle = std::get_if<CircleGauge>(&source)) return {{*circle, {}, {}}};
    if (const auto* given = std::get_if<GivenGauge>(&source)) return {{*given, {}, {}}};
    return {};
}

}  // namespace roundwright
