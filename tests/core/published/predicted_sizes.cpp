#include "tests/core/published/predicted_sizes.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <numeric>

#include "core/gauge/fabric_thickness.h"
#include "core/reshape/finished_piece.h"
#include "core/study/piece_study.h"

namespace roundwright::testing {
namespace {

constexpr double hook_not_stated_mm = 3.5;

Toy toy_of(const PublishedPiece& published, GaugeSource gauge) {
    Toy toy;
    toy.hook_mm = published.hook_mm.value_or(hook_not_stated_mm);
    toy.gauge = std::move(gauge);
    toy.yarns.emplace_back().weight = published.weight.value_or(YarnWeight::medium);
    toy.pieces.push_back(published.piece);
    return toy;
}

PieceStudy study_of(const Toy& toy) { return with_sizes(study_shape(toy, 0), toy, 0); }

/// A round of a piece that lies in two layers, measured as if it stood open.
double circle_of_flattened(const PieceMeasures& measures) {
    return measures.flattened ? 2 / std::numbers::pi : 1;
}

/// Of the even rounds that end a piece, the first: the round before it is as wide as the last.
std::size_t loop_below_even_rounds(const ShapeProblem& problem) {
    std::size_t loop = problem.rest_loop_mm.size() - 1;
    while (loop > 0 && problem.rest_loop_mm[loop - 1] == problem.rest_loop_mm.back()) --loop;
    return loop;
}

double even_height_mm(const PieceStudy& study) {
    const auto& loops = study.measures().loops;
    return std::abs(loops.back().height_mm - loops[loop_below_even_rounds(study.problem())].height_mm);
}

Range scaled(const Range& range, double scale) { return {range.low * scale, range.high * scale}; }

/// The size and its range. Lengths along the rounds share the errors of the width, and those across them the
/// errors of the height.
void predict(const PieceStudy& study, PredictedSize& size) {
    const PieceMeasures& measures = study.measures();
    const double across = circle_of_flattened(measures);
    const auto as_share_of = [&](double mm, double whole_mm, const Range& range) {
        size.mm = mm;
        size.range_mm = scaled(range, mm / whole_mm);
    };
    switch (size.stated.of) {
        case SizeOf::width:
            return as_share_of(measures.width_mm * across, measures.width_mm, study.size().width_mm);
        case SizeOf::around:
            return as_share_of(measures.width_mm * across * std::numbers::pi, measures.width_mm,
                               study.size().width_mm);
        case SizeOf::height:
            return as_share_of(measures.height_mm, measures.height_mm, study.size().height_mm);
        case SizeOf::even_height:
            return as_share_of(even_height_mm(study), measures.height_mm, study.size().height_mm);
    }
}

void add(std::vector<PredictedSize>& sizes, const PublishedPiece& published, KnownBy known, const Toy& toy) {
    const PieceStudy study = study_of(toy);
    for (const StatedSize& stated : published.sizes) {
        PredictedSize size{&published, stated, known, 0, {}, 0};
        size.thickness_mm = fabric_thickness(toy.yarns.front().weight, study.gauge.stitch_width_mm).mm;
        predict(study, size);
        sizes.push_back(size);
    }
}

const PublishedPiece& titled(const std::vector<PublishedPiece>& pieces, const std::string& title) {
    return *std::ranges::find(pieces, title, &PublishedPiece::title);
}

MeasuredOf measured_of(SizeOf of) {
    if (of == SizeOf::around) return MeasuredOf::circumference;
    return of == SizeOf::width ? MeasuredOf::width : MeasuredOf::height;
}

/// The toy with the gauge that the other piece's size gives.
Toy after_finished(const PublishedPiece& published, const PublishedPiece& other) {
    std::vector<Measured> measured;
    for (const StatedSize& size : other.sizes)
        measured.push_back({measured_of(size.of), size.mm, size.tolerance_mm()});
    const Calibration found = calibrate_piece(other.piece, measured);
    Toy toy = toy_of(published, GivenGauge{found.gauge, other.title});
    toy.pieces[0].area_stretch = found.area_stretch;
    return toy;
}

void add_cover(std::vector<PredictedSize>& sizes, const PublishedPiece& published) {
    const Toy toy = toy_of(published, EstimatedGauge{*published.weight});
    const FabricThickness fabric =
        fabric_thickness(*published.weight, gauge_from(toy.gauge, toy.hook_mm)->stitch_width_mm);
    const double mm = *published.core_mm + fabric.mm;
    for (const StatedSize& stated : published.sizes)
        sizes.push_back({&published,
                         stated,
                         KnownBy::rigid_core,
                         mm,
                         {mm - fabric.error_mm, mm + fabric.error_mm},
                         fabric.mm});
}

}  // namespace

std::string_view words_of(KnownBy known) {
    switch (known) {
        case KnownBy::weight_and_hook:
            return "weight and hook";
        case KnownBy::stated_gauge:
            return "stated gauge";
        case KnownBy::own_circle:
            return "own circle";
        case KnownBy::own_piece:
            return "own finished piece";
        case KnownBy::rigid_core:
            return "rigid core";
    }
    return {};
}

std::string PredictedSize::name() const {
    switch (stated.of) {
        case SizeOf::width:
            return piece->title + ", width";
        case SizeOf::height:
            return piece->title + ", height";
        case SizeOf::around:
            return piece->title + ", around";
        case SizeOf::even_height:
            return piece->title + ", height of its even rounds";
    }
    return piece->title;
}

std::vector<PredictedSize> predicted_sizes(const std::vector<PublishedPiece>& pieces) {
    std::vector<PredictedSize> sizes;
    for (const PublishedPiece& published : pieces) {
        if (published.core_mm) {
            add_cover(sizes, published);
            continue;
        }
        if (published.weight)
            add(sizes, published, KnownBy::weight_and_hook,
                toy_of(published, EstimatedGauge{*published.weight}));
        if (published.swatch)
            add(sizes, published, KnownBy::stated_gauge, toy_of(published, *published.swatch));
        if (published.circle)
            add(sizes, published, KnownBy::own_circle, toy_of(published, *published.circle));
        if (published.finished)
            add(sizes, published, KnownBy::own_piece,
                after_finished(published, titled(pieces, *published.finished)));
    }
    return sizes;
}

std::vector<PredictedSize> measured_outside(std::vector<PredictedSize> sizes) {
    for (PredictedSize& size : sizes) {
        if (size.piece->what == "circle" || size.stated.of == SizeOf::even_height) continue;
        const double more = size.thickness_mm * (size.stated.of == SizeOf::around ? std::numbers::pi : 1);
        size.mm += more;
        size.range_mm = {size.range_mm.low + more, size.range_mm.high + more};
    }
    return sizes;
}

Agreement agreement(std::span<const PredictedSize> sizes) {
    Agreement found;
    if (sizes.empty()) return found;
    found.sizes = static_cast<int>(sizes.size());
    std::vector<double> errors;
    for (const PredictedSize& size : sizes) {
        errors.push_back(size.error());
        found.mean_absolute_error += std::abs(size.error()) / found.sizes;
        found.mean_half_range += (size.range_mm.high - size.range_mm.low) / 2 / size.mm / found.sizes;
        found.in_range += size.in_range() ? 1 : 0;
        found.agree += size.agrees() ? 1 : 0;
    }
    std::ranges::sort(errors);
    found.median_error = (errors[(errors.size() - 1) / 2] + errors[errors.size() / 2]) / 2;
    return found;
}

}  // namespace roundwright::testing
