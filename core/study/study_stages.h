#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <stop_token>
#include <variant>
#include <vector>

#include "core/checks/check.h"
#include "core/gauge/fabric_thickness.h"
#include "core/gauge/gauge.h"
#include "core/mesh/revolve.h"
#include "core/rounds/piece_graph.h"
#include "core/shape/fabric_signs.h"
#include "core/shape/lie.h"
#include "core/shape/measure_shape.h"
#include "core/shape/size_range.h"
#include "core/toy/toy.h"

namespace roundwright {

struct SolvedStitches;

/// Everything computed from a piece, in stages:
///
///     stitches -> shape -> sizes
///                       -> surface
///                       -> checks
///
/// A stage is a value that nobody changes any more. It remembers what it was computed from, so that the next
/// study can tell, by value, whether it is still right, and share it. Each function below gives `before`
/// itself where that is so, and computes a stage otherwise; `before` may be null.
template <class Stage>
using Shared = std::shared_ptr<const Stage>;

/// The stage of nothing at all.
template <class Stage>
[[nodiscard]] const Shared<Stage>& no_stage() {
    static const auto none = std::make_shared<const Stage>();
    return none;
}

// --- stitches

/// A round as its stitches are derived from it: without its mark and its note.
struct RoundInputs {
    std::variant<WorkedEvenly, AsWritten> working;
    std::size_t yarn = 0;

    friend bool operator==(const RoundInputs&, const RoundInputs&) = default;
};
struct StitchInputs {
    Start start;
    std::vector<RoundInputs> rounds;

    friend bool operator==(const StitchInputs&, const StitchInputs&) = default;
};
struct StitchStage {
    StitchInputs inputs;
    PieceGraph graph;                  ///< none for a piece over the limit of stitches
    std::vector<std::uint16_t> yarns;  ///< those that its stitches are worked in, ascending
};
/// `graph` (may be null): of the piece, where it is known.
[[nodiscard]] Shared<StitchStage> stitch_stage(const Piece& piece, const Shared<StitchStage>& before,
                                               const SharedGraph* graph = nullptr);

// --- shape

/// The shape and how its fabric lies. The problem says all that the solver reads.
struct ShapeStage {
    ShapeProblem problem;
    PieceMeasures measures;
    std::vector<RoundLie> lies;     ///< one a round; none without a shape
    std::vector<FabricSign> signs;  ///< none without a shape
    /// What the round solver found; not usable where `measures` are those of another.
    Shape revolved;
    /// What the solver of every stitch found, and of which stitches; null where `measures` are not its own.
    std::shared_ptr<const SolvedStitches> stitched{};
    Shared<StitchStage> stitches{};
    /// Of a shape of every stitch: the round solver's, of the same problem. Null for that one itself.
    Shared<ShapeStage> round_solved{};
};
/// The round solver's stage of a shape of either kind; the stage itself where it is that.
[[nodiscard]] const ShapeStage& round_stage(const ShapeStage& stage);
[[nodiscard]] const Shared<ShapeStage>& round_stage(const Shared<ShapeStage>& stage);
/// Solved by the round solver, from the shape before where there is one. A finer shape of the same problem
/// stays; one that did not converge is tried again.
[[nodiscard]] Shared<ShapeStage> shape_stage(const ShapeProblem& problem, const Shared<ShapeStage>& before,
                                             std::stop_token stop);

/// Shapes of one piece may come in steps, a quick one first. Whether `next`, which came later, takes the
/// place of `shown`: always where it is of another problem; of the same one only where it is no coarser, and
/// never where it did not converge and the one shown did. A shape of every stitch is also of its own
/// stitches.
[[nodiscard]] bool takes_the_place_of(const ShapeStage& next, const ShapeStage& shown);

// --- sizes

/// Between what sizes the piece may come out. Those of a shape of every stitch are as far from its size, in
/// proportion, as the round solver's are from its own: the same errors of gauge and stuffing stretch both.
struct SizeStage {
    Shared<ShapeStage> shape;
    Gauge gauge;
    double stretch_error = 0;
    SizeRange size;  ///< the size itself where no range was found
    /// With the errors that a gauge circle would leave; none where it would not help much.
    std::optional<SizeRange> with_circle;
    Shared<SizeStage> round_solved{};  ///< of the round solver's shape, where `shape` is another
};
[[nodiscard]] Shared<SizeStage> size_stage(const Shared<ShapeStage>& shape, const Gauge& gauge,
                                           double stretch_error, const Shared<SizeStage>& before);

// --- surface

/// A yarn as the surface shows it.
struct YarnLook {
    Colour colour;
    bool brushed = false;

    friend bool operator==(const YarnLook&, const YarnLook&) = default;
};
struct SurfaceInputs {
    Shared<StitchStage> stitches;
    Shared<ShapeStage> shape;
    Joining joining = Joining::spiral;
    End end = End::left_open;
    bool starts_at_top = false;
    std::vector<std::optional<YarnLook>> yarns;  ///< of `StitchStage::yarns`; none: the toy has no such yarn
    double stitch_width_mm = 0;
    Relief relief = Relief::solid;
    std::size_t most_triangles = 0;

    friend bool operator==(const SurfaceInputs&, const SurfaceInputs&) = default;
};
struct SurfaceStage {
    SurfaceInputs inputs;
    StitchSurface surface;  ///< empty where there is no shape to turn
};

// --- checks

/// A piece as its checks see it.
struct CheckInputs {
    Shared<StitchStage> stitches;
    Shared<ShapeStage> shape;
    Gauge gauge;
    bool gauge_known = true;
    Piece piece;  ///< but for what no check reads: its name, how many are made, how far it is worked
    FabricThickness fabric{};

    friend bool operator==(const CheckInputs&, const CheckInputs&) = default;
};
struct CheckStage {
    CheckInputs inputs;
    int piece_index = 0;
    bool complete = false;  ///< every cure was tried that was to be tried
    std::vector<Check> checks;
};

}  // namespace roundwright
