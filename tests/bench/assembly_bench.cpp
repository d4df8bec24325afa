#include <benchmark/benchmark.h>

#include "core/assembly/assembled_studies.h"
#include "core/assembly/study_solved.h"
#include "core/assembly/toy_measures.h"
#include "core/study/study_surface.h"

// From an edit to the placed surfaces: twenty pieces of about 500 stitches, all sewn to the first. `a_join`,
// `a_piece`: without the solve; `a_round_typed`, `the_body_typed`: with stitches, shape and surface of the
// piece that was typed into, as the window works them out; `all`: from nothing.

namespace roundwright {
namespace {

Piece ball(int most) {
    Piece piece;
    for (int n = 6; n < most; n += 6)
        piece.rounds.push_back({.working = WorkedEvenly{.stitches = n}, .note = {}});
    for (int i = 0; i < most / 6; ++i)
        piece.rounds.push_back({.working = WorkedEvenly{.stitches = most}, .note = {}});
    return piece;
}

struct TwentyPieces {
    Toy toy;
    std::vector<PieceStudy> studies;
    std::vector<std::shared_ptr<const StitchSurface>> own;
    RevolveOptions options{.relief = Relief::shaded, .most_triangles = most_picture_triangles / 8};

    TwentyPieces() {
        Piece body = ball(60);
        body.end = End::drawn_closed;
        for (int n = 54; n > 0; n -= 6)
            body.rounds.push_back({.working = WorkedEvenly{.stitches = n}, .note = {}});
        toy.pieces.push_back(body);
        for (int i = 1; i < 20; ++i) {
            toy.pieces.push_back(ball(48));
            toy.joins.push_back({.piece = {toy.pieces.id(static_cast<std::size_t>(i)), 0},
                                 .onto = {toy.pieces.id(0), 0},
                                 .at = {.round = 4 + i, .stitches_right = 7.0 * i}});
        }
        for (std::size_t i = 0; i < toy.pieces.size(); ++i) {
            studies.push_back(study_shape(toy, i));
            own.push_back(std::make_shared<const StitchSurface>(study_surface(toy, i, studies[i], options)));
        }
    }

    [[nodiscard]] std::vector<SolvedPiece> solved(const AssembledToy* before = nullptr) const {
        std::vector<SolvedPiece> all;
        for (std::size_t i = 0; i < studies.size(); ++i)
            all.push_back(solved_piece(toy, i, studies[i], before ? &before->solved[i] : nullptr));
        return all;
    }
    [[nodiscard]] std::size_t stitches() const {
        std::size_t sum = 0;
        for (const auto& surface : own) sum += surface->stitches.size();
        return sum;
    }
};

void a_join_moved(benchmark::State& state) {
    TwentyPieces toy;
    AssembledToy before = assemble(toy.toy, toy.solved(), toy.own);
    for (auto _ : state) {
        toy.toy.joins[3].at.stitches_right += 1;
        before = assemble(toy.toy, toy.solved(&before), toy.own, &before);
    }
    state.counters["placed again"] = static_cast<double>(before.placed_again);
    state.counters["stitches"] = static_cast<double>(toy.stitches());
}
BENCHMARK(a_join_moved)->Unit(benchmark::kMillisecond);

void a_piece_changed(benchmark::State& state) {
    TwentyPieces toy;
    AssembledToy before = assemble(toy.toy, toy.solved(), toy.own);
    const auto other = study_shape(toy.toy, 5), same = toy.studies[5];
    bool turn = false;
    for (auto _ : state) {
        toy.studies[5] = (turn = !turn) ? other : same;
        toy.own[5] = std::make_shared<const StitchSurface>(*toy.own[5]);
        before = assemble(toy.toy, toy.solved(&before), toy.own, &before);
    }
    state.counters["placed again"] = static_cast<double>(before.placed_again);
}
BENCHMARK(a_piece_changed)->Unit(benchmark::kMillisecond);

/// A round more and a round less of one piece, from the count to the placed surfaces.
void typed(benchmark::State& state, std::size_t piece, std::size_t round) {
    TwentyPieces toy;
    std::vector<Shared<SurfaceStage>> surfaces(toy.studies.size());
    AssembledToy before = assemble(toy.toy, toy.solved(), toy.own);
    int stitches =
        std::get<WorkedEvenly>(std::as_const(toy.toy).pieces[piece].rounds[round].working).stitches;
    int way = 1;
    for (auto _ : state) {
        Piece next = std::as_const(toy.toy).pieces[piece];
        std::get<WorkedEvenly>(next.rounds[round].working).stitches = stitches += way;
        way = -way;
        toy.toy.pieces[piece] = next;
        toy.studies[piece] = study_shape(toy.toy, piece, &toy.studies[piece]);
        surfaces[piece] = surface_stage(toy.toy, piece, toy.studies[piece], toy.options, surfaces[piece]);
        toy.own[piece] = {surfaces[piece], &surfaces[piece]->surface};
        before = assemble(toy.toy, toy.solved(&before), toy.own, &before);
    }
    state.counters["placed again"] = static_cast<double>(before.placed_again);
}
void a_round_typed(benchmark::State& state) { typed(state, 5, 9); }
void the_body_typed(benchmark::State& state) { typed(state, 0, 12); }
BENCHMARK(a_round_typed)->Unit(benchmark::kMillisecond);
BENCHMARK(the_body_typed)->Unit(benchmark::kMillisecond);

void all_placed(benchmark::State& state) {
    const TwentyPieces toy;
    for (auto _ : state) benchmark::DoNotOptimize(assemble(toy.toy, toy.solved(), toy.own));
}
BENCHMARK(all_placed)->Unit(benchmark::kMillisecond);

void all_measured(benchmark::State& state) {
    const TwentyPieces toy;
    const AssembledToy made = assemble(toy.toy, toy.solved(), toy.own);
    for (auto _ : state) benchmark::DoNotOptimize(toy_measures(made, toy.studies));
}
BENCHMARK(all_measured)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace roundwright
