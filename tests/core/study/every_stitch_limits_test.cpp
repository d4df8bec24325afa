// What mathematics and mechanics say of any fabric, held against the shape of every stitch.
#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <gtest/gtest.h>
#include <map>
#include <numbers>

#include "core/rounds/piece_graph.h"
#include "core/shape/fabric/cells_start.h"
#include "tests/core/study/every_stitch.h"

namespace roundwright::test {
namespace {

using std::numbers::pi;

template <class Corners>
double angle(const Corners& corners, std::size_t k) {
    const auto a = (corners[(k + 1) % 3] - corners[k]).normalized();
    const auto b = (corners[(k + 2) % 3] - corners[k]).normalized();
    return std::acos(std::clamp(a.dot(b), -1.0, 1.0));
}

/// What the angles about the nodes within come to beyond a full turn each, as `corners_of` a triangle lie.
template <class CornersOf>
double angle_excess(const StitchCells& cells, const CornersOf& corners_of) {
    std::map<std::int32_t, double> about;
    for (const FabricTriangle& triangle : cells.problem.triangles)
        for (std::size_t k = 0; k < 3; ++k) about[triangle.nodes[k]] += angle(corners_of(triangle), k);
    for (const EdgeNode& node : cells.edges.back().nodes) about.erase(node.node);
    double excess = 0;
    for (const auto& [node, sum] : about) excess += sum - 2 * pi;
    return excess;
}

/// k increases a round make two trapezoids each from half a stitch below to one above, whose sides lean by
/// atan(w / 4 h). The edge turns by so much, and by Gauss and Bonnet the angles within make up for it (do
/// Carmo, Differential Geometry of Curves and Surfaces, 4.5). In the limit of many small stitches that is the
/// cone's k w / h - 2 pi.
TEST(EveryStitchLimits, IncreasesHaveTheAngleExcessOfTheirCount) {
    for (const int increases : {5, 6, 7, 8, 12}) {
        SCOPED_TRACE(increases);
        const Toy toy = with_spacing(toy_of(disc(increases, 8)), Spacing::staggered);
        const PieceStudy round = study_shape(toy, 0);
        const StitchCells cells = stitch_cells(toy.pieces[0], round.graph().graph, round.gauge, {}, 0);
        const double excess =
            angle_excess(cells, [](const FabricTriangle& triangle) { return triangle.rest; });
        EXPECT_NEAR(excess, 4 * increases * std::atan(0.25) - 2 * pi, 1e-9);
        EXPECT_NEAR(excess, increases - 2 * pi, 0.021 * increases);
    }
}

// Fabric stretches little, so the solved ruffle has it too.
TEST(EveryStitchLimits, ARuffleIsCurvedByItsAngleExcess) {
    for (const int increases : {7, 8}) {
        SCOPED_TRACE(increases);
        const Both both = solved(with_spacing(toy_of(disc(increases, 8)), Spacing::staggered));
        ASSERT_TRUE(both.every().converged());
        const SolvedStitches& found = both.solved();
        const double excess = angle_excess(found.cells, [&](const FabricTriangle& triangle) {
            std::array<Vec3, 3> corners;
            for (std::size_t k = 0; k < 3; ++k)
                corners[k] = found.shape.nodes[static_cast<std::size_t>(triangle.nodes[k])];
            return corners;
        });
        EXPECT_GT(excess, 0.15 * (increases - 2 * pi));
        EXPECT_LT(excess, 1.05 * (increases - 2 * pi));
    }
}

// What is not curved within itself can lie flat and does (Gauss, Disquisitiones generales circa superficies
// curvas, 1827).
TEST(EveryStitchLimits, RowsLieFlat) {
    Toy toy = toy_of({12, 12, 12, 12, 12, 12, 12, 12});
    toy.pieces[0].start = OpenTube{12};
    toy.pieces[0].joining = Joining::rows;
    const Both both = solved(toy);
    ASSERT_TRUE(both.every().converged());
    EXPECT_NEAR(both.every().width_mm, 12 * h, 1e-3);
    EXPECT_NEAR(both.every().height_mm, 8 * h, 1e-3);
    EXPECT_LT(both.every().depth_mm, 1e-3);
}

// Down one side of a chain, three into its end and up the other, turned there: half a sole, and as flat.
TEST(EveryStitchLimits, RowsAroundAChainLieFlat) {
    Toy toy = toy_of({});
    toy.pieces[0].start = OvalChain{8};
    toy.pieces[0].joining = Joining::rows;
    add(toy, "sc 7, 3 sc in next st, 2 sc in next st, sc 7");
    add(toy, "sc 8, inc x 3, sc 8");
    add(toy, "sc 8, (inc, sc 1) x 3, sc 8");
    add(toy, "sc 8, (sc 2, inc) x 3, sc 8");
    const Both both = solved(toy);
    ASSERT_TRUE(both.every().converged());
    EXPECT_LT(both.every().height_mm, 1);
    EXPECT_NEAR(both.every().width_mm, (8 + 4) * h, 0.05 * 12 * h);
    EXPECT_NEAR(both.every().depth_mm, 2 * 4 * h, 0.1 * 8 * h);
}

/// A tube of so many stitches and rounds, its last round joined to its first.
struct Ring {
    StitchCells cells;
    std::vector<Vec3> start;
};

Ring ring_of(int stitches, int rounds) {
    Toy toy = stuffed_toy_of(std::vector<int>(static_cast<std::size_t>(rounds), stitches));
    toy.pieces[0].start = OpenTube{stitches};
    toy.pieces[0].joining = Joining::joined;
    toy.pieces[0].end = End::left_open;
    const PieceStudy study = study_shape(toy, 0);
    Ring ring{stitch_cells(toy.pieces[0], study.graph().graph, study.gauge, {}, 0), {}};
    std::map<std::int32_t, std::int32_t> joined;
    for (std::size_t k = 0; k < ring.cells.edges.back().nodes.size(); ++k)
        joined[ring.cells.edges.back().nodes[k].node] = ring.cells.edges.front().nodes[k].node;
    for (FabricTriangle& triangle : ring.cells.problem.triangles)
        for (std::int32_t& node : triangle.nodes)
            if (joined.contains(node)) node = joined[node];
    ring.cells.edges.pop_back();
    ring.cells.problem.nodes -= stitches;
    const double radius = stitches * h / (2 * pi), about = rounds * h / (2 * pi);
    ring.start.resize(static_cast<std::size_t>(ring.cells.problem.nodes));
    for (std::size_t i = 0; i < ring.cells.edges.size(); ++i)
        for (const EdgeNode& node : ring.cells.edges[i].nodes) {
            const double along = 2 * pi * static_cast<double>(i) / rounds,
                         around = -2 * pi * node.at / stitches;
            const double out = about + radius * std::cos(around);
            ring.start[static_cast<std::size_t>(node.node)] = {
                out * std::cos(along), radius * std::sin(around), out * std::sin(along)};
        }
    return ring;
}

// A ring of fabric that was straight: outside it is taut, inside it has length to spare; its volume is that
// of its section on the way of the section's middle (Pappus and Guldin), and no round is another than the
// rest.
TEST(EveryStitchLimits, ATubeJoinedEndToEndIsARing) {
    constexpr int stitches = 12, rounds = 40;
    const Ring ring = ring_of(stitches, rounds);
    ASSERT_GT(enclosed_mm3(ring.cells, ring.start), 0);
    const FabricShape shape = solve_fabric(ring.cells.problem, ring.start);
    ASSERT_EQ(shape.termination, Termination::converged);
    Vec3 middle = Vec3::Zero();
    for (const Vec3& node : shape.nodes) middle += node / static_cast<double>(shape.nodes.size());
    double area = 0, way = 0, least = 1e9, most = 0, inner = 1e9, outer = 0;
    for (const CellEdge& edge : ring.cells.edges) {
        double twice = 0, moment = 0, length = 0;
        for (std::size_t k = 1; k < edge.nodes.size(); ++k) {
            const Vec3 a = shape.nodes[static_cast<std::size_t>(edge.nodes[k - 1].node)] - middle;
            const Vec3 b = shape.nodes[static_cast<std::size_t>(edge.nodes[k].node)] - middle;
            const double ra = std::hypot(a.x(), a.z()), rb = std::hypot(b.x(), b.z());
            twice += ra * b.y() - rb * a.y();
            moment += (ra * b.y() - rb * a.y()) * (ra + rb) / 3;
            length += (b - a).norm();
            inner = std::min(inner, ra);
            outer = std::max(outer, ra);
        }
        area += std::abs(twice) / 2 / rounds;
        way += 2 * pi * moment / twice / rounds;
        least = std::min(least, length);
        most = std::max(most, length);
    }
    EXPECT_NEAR(most / least, 1, 0.01);
    EXPECT_NEAR(shape.volume_mm3 / (area * way), 1, 0.01);
    EXPECT_GT(2 * pi * outer, rounds * h);
    EXPECT_LT(2 * pi * outer, 1.15 * rounds * h);
    EXPECT_LT(2 * pi * inner, 0.75 * rounds * h);
}

double turn_at(const PieceMeasures& measures, std::size_t edge) {
    const auto way = [&](std::size_t i) {
        return Vec2(measures.loops[i + 1].radius_mm - measures.loops[i].radius_mm,
                    measures.loops[i + 1].height_mm - measures.loops[i].height_mm)
            .normalized();
    };
    return std::acos(way(edge - 1).dot(way(edge)));
}

// Worked into the back loops alone, the first round of a wall turns up more sharply.
TEST(EveryStitchLimits, ARoundIntoOneLoopMakesAnEdge) {
    const auto pot = [](const std::string& around) {
        Toy toy = with_spacing(stuffed_toy_of({6, 12, 18, 24, 30}), Spacing::staggered);
        add(toy, around + "sc in each st around");
        add(toy, "sc in each st around", 6);
        toy.pieces[0].end = End::left_open;
        return solved(toy);
    };
    const Both plain = pot(""), into_one = pot("BLO ");
    ASSERT_TRUE(plain.every().converged() && into_one.every().converged());
    EXPECT_GT(turn_at(into_one.every(), 5), turn_at(plain.every(), 5));
}

// A slant winds the columns about the tube, to the right going up, and changes no size.
TEST(EveryStitchLimits, ASlantWindsColumnsAndKeepsSizes) {
    constexpr int stitches = 24, rounds = 12;
    Toy toy = stuffed_toy_of(std::vector<int>(rounds, stitches));
    toy.pieces[0].start = OpenTube{stitches};
    toy.pieces[0].joining = Joining::joined;
    toy.pieces[0].end = End::left_open;
    const PieceStudy round = study_shape(toy, 0);
    const auto with_slant = [&](double slant) {
        return fabric_stage(toy.pieces[0], round, nullptr, {}, slant);
    };
    const FabricStage upright = with_slant(0), leaning = with_slant(0.5), other = with_slant(-0.5);
    for (const FabricStage* stage : {&upright, &leaning, &other})
        ASSERT_TRUE(stage->shape->measures.converged());
    const auto wound = [&](const FabricStage& stage) {
        const auto angle_of = [&](std::size_t edge) {
            const Vec3 at =
                test::at(*stage.shape->stitched, stage.shape->stitched->cells.edges[edge].nodes[0]);
            return std::atan2(at.x(), at.z());
        };
        return std::remainder(angle_of(rounds) - angle_of(0), 2 * pi) / (2 * pi);
    };
    EXPECT_NEAR(wound(upright), 0, 0.01);
    EXPECT_NEAR(wound(leaning), 0.5 * rounds / stitches, 0.03);
    EXPECT_NEAR(wound(other), -0.5 * rounds / stitches, 0.03);
    EXPECT_NEAR(leaning.shape->measures.width_mm / upright.shape->measures.width_mm, 1, 0.01);
    EXPECT_NEAR(leaning.shape->measures.height_mm / upright.shape->measures.height_mm, 1, 0.01);
    EXPECT_EQ(fabric_stage(toy.pieces[0], round, leaning.shape, {}, 0.5).shape, leaning.shape);
    EXPECT_NE(fabric_stage(toy.pieces[0], round, leaning.shape).shape, leaning.shape) << "another slant";
}

}  // namespace
}  // namespace roundwright::test
