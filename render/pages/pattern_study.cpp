#include "render/pages/pattern_study.h"

#include <algorithm>
#include <cmath>

#include "core/assembly/seam_measures.h"
#include "core/assembly/study_solved.h"
#include "core/assembly/worked_pieces.h"
#include "core/gauge/usual_gauge.h"
#include "core/shape/own_depth.h"
#include "core/shape/reads_as_flat.h"
#include "core/study/fabric_stage.h"
#include "core/study/study_surface.h"
#include "render/wording/pattern/pattern_words.h"

namespace roundwright::render {
namespace {

/// Stitches by which a swatch may differ, each way.
constexpr int swatch_steps = 2;

/// A whole number nearer to the toy's own stitches would say the same as they do.
constexpr double least_difference = 0.3;

/// A table of sizes for very many pieces would be read by nobody.
constexpr std::size_t most_pieces_at_gauges = 12;

bool has_shape(const PieceStudy& study) { return study.measures().usable(); }

void set_gauge(PatternStudy& pattern) {
    const std::optional<Gauge> known = gauge_from(pattern.toy.gauge, pattern.toy.hook_mm);
    pattern.gauge_known = known.has_value();
    pattern.gauge = known.value_or(usual_gauge(pattern.toy.hook_mm));
}

Estimate estimate(double likely, const Range& range) { return {likely, range.low, range.high}; }

bool is_flat(const PieceStudy& study, const PieceMeasures& measures) {
    return reads_as_flat(study.problem(), measures.width_mm, measures.height_mm);
}

double wave_height_mm(const PieceStudy& study) {
    double highest = 0;
    if (!is_flat(study, study.measures())) return highest;
    for (const RoundLie& lie : study.lies())
        if (lie.lie == Lie::ruffles) highest = std::max(highest, lie.wave_height_mm);
    return highest;
}

std::optional<Estimate> depth_of(const PieceStudy& study) {
    const auto depth = own_depth_mm(study.measures());
    if (!depth) return std::nullopt;
    return estimate(*depth, depth_range(study.measures(), study.size().width_mm));
}

void add_piece(PatternStudy& pattern, std::size_t i, const Progress& progress) {
    pattern.pieces.push_back(
        as_worked(study_piece(pattern.toy, i, nullptr, progress.stop), pattern.toy, i, progress.stop));
    const PieceStudy& study = pattern.pieces.back();
    std::optional<FinishedSize> size;
    if (has_shape(study)) {
        size = {estimate(study.measures().width_mm, study.size().width_mm),
                estimate(study.measures().height_mm, study.size().height_mm),
                wave_height_mm(study),
                study.problem().limp,
                is_flat(study, study.measures()),
                depth_of(study)};
    }
    pattern.sizes.push_back(size);
}

/// The gauge of a maker whose stitches are so wide and otherwise alike: the round height keeps its
/// proportion.
Gauge gauge_at_width(const Gauge& gauge, double stitch_width_mm) {
    return {stitch_width_mm, gauge.round_height_mm * stitch_width_mm / gauge.stitch_width_mm, 0, 0};
}

std::optional<FinishedSize> size_at(const PatternStudy& pattern, std::size_t i, const Gauge& gauge) {
    const PieceStudy& study = pattern.pieces[i];
    if (!has_shape(study)) return std::nullopt;
    const PieceMeasures shape = measures_at(gauge, pattern.toy.pieces[i], study);
    if (!shape.usable()) return std::nullopt;
    FinishedSize size{exactly(shape.width_mm), exactly(shape.height_mm), 0, study.problem().limp,
                      is_flat(study, shape)};
    if (own_depth_mm(study.measures())) size.depth_mm = exactly(shape.depth_mm);
    return size;
}

/// Whole numbers of stitches around the toy's own, which stands among them.
std::vector<SizeAtGauge> gauge_rows(double own) {
    const int below = static_cast<int>(std::floor(own - least_difference));
    const int above = static_cast<int>(std::ceil(own + least_difference));
    std::vector<SizeAtGauge> rows;
    for (int n = below - swatch_steps + 1; n <= below; ++n) {
        if (n > 0) rows.push_back({static_cast<double>(n), false, {}});
    }
    rows.push_back({own, true, {}});
    for (int n = above; n < above + swatch_steps; ++n) rows.push_back({static_cast<double>(n), false, {}});
    return rows;
}

void add_gauges(PatternStudy& pattern, LengthUnit units, const Progress& progress) {
    if (pattern.pieces.size() > most_pieces_at_gauges) return;
    pattern.at_gauges = gauge_rows(stitches_in_swatch(pattern.gauge.stitch_width_mm, units));
    for (SizeAtGauge& row : pattern.at_gauges) {
        if (progress.stop.stop_requested()) return;
        const Gauge gauge = gauge_at_width(pattern.gauge, stitches_in_swatch(row.stitches, units));
        for (std::size_t i = 0; i < pattern.pieces.size(); ++i)
            row.pieces.push_back(size_at(pattern, i, gauge));
    }
}

void add_materials(PatternStudy& pattern) {
    pattern.materials = materials(pattern.toy, worked_pieces(pattern.toy, pattern.pieces));
}

/// All the copies in one picture have so many triangles, however many there are.
constexpr std::size_t most_toy_triangles = 2 * most_page_triangles;

/// Only where something is joined: nothing else is pictured as a whole.
std::vector<std::shared_ptr<const StitchSurface>> own_surfaces(const PatternStudy& pattern) {
    std::vector<std::shared_ptr<const StitchSurface>> surfaces(pattern.pieces.size());
    if (pattern.toy.joins.empty()) return surfaces;
    std::size_t copies = 1;
    for (const Piece& piece : pattern.toy.pieces) copies += static_cast<std::size_t>(piece.make);
    RevolveOptions options;
    options.most_triangles = std::min(most_page_triangles, most_toy_triangles / copies);
    for (std::size_t i = 0; i < surfaces.size(); ++i)
        surfaces[i] =
            std::make_shared<const StitchSurface>(study_surface(pattern.toy, i, pattern.pieces[i], options));
    return surfaces;
}

/// Which rounds a seam really lies over, now that its line is known.
void find_covered_rounds(PatternStudy& pattern) {
    const AssembledToy& toy = *pattern.together;
    for (SewingStep& step : pattern.sewing) {
        if (!step.covers) continue;
        const auto copy = std::ranges::find_if(toy.placed.pieces, [&](const PlacedPiece& placed) {
            return placed.join == step.join && !placed.mirrored;
        });
        if (copy == toy.placed.pieces.end()) continue;
        const auto at = static_cast<std::size_t>(copy - toy.placed.pieces.begin());
        const auto seam = seam_measures(toy.toy, toy.placed, toy.solved, at);
        if (!seam || seam->lowest_round > seam->highest_round) continue;
        // Between the gaps after rounds a and b, from 0, lie rounds a + 2 to b + 1, from 1.
        step.covers = RoundSpan{seam->lowest_round + 2, seam->highest_round + 1};
        if (step.covers->first >= step.covers->last) step.covers.reset();
    }
}

void put_together(PatternStudy& pattern) {
    std::vector<std::vector<int>> counts;
    std::vector<SolvedPiece> solved;
    for (std::size_t i = 0; i < pattern.pieces.size(); ++i) {
        solved.push_back(solved_piece(pattern.toy, i, pattern.pieces[i]));
        counts.push_back(solved.back().stitches);
    }
    pattern.together =
        std::make_shared<const AssembledToy>(assemble(pattern.toy, std::move(solved), own_surfaces(pattern)));
    pattern.sewing = sewing_steps(pattern.toy, counts, pattern.gauge);
    if (pattern.toy.joins.empty()) return;
    pattern.measures = toy_measures(*pattern.together, pattern.pieces);
    find_covered_rounds(pattern);
}

}  // namespace

std::optional<PatternStudy> study_pattern(const Toy& toy, const PatternOptions& options,
                                          const Progress& progress) {
    PatternStudy pattern;
    pattern.toy = toy;
    set_gauge(pattern);
    const int steps = static_cast<int>(toy.pieces.size()) + 1;
    for (std::size_t i = 0; i < toy.pieces.size(); ++i) {
        if (progress.report) progress.report(static_cast<int>(i), steps);
        add_piece(pattern, i, progress);
        if (progress.stop.stop_requested()) return std::nullopt;
    }
    if (options.contents.gauge_table) add_gauges(pattern, options.units, progress);
    add_materials(pattern);
    put_together(pattern);
    if (progress.report) progress.report(steps, steps);
    if (progress.stop.stop_requested()) return std::nullopt;
    return pattern;
}

}  // namespace roundwright::render
