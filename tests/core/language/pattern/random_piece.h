#pragma once

#include <algorithm>
#include <cstdint>
#include <random>
#include <vector>

#include "core/language/round/write.h"
#include "core/rounds/piece_graph.h"
#include "core/stitches/stitch_graph.h"
#include "core/toy/toy.h"

namespace roundwright::testing {

/// Random pieces with everything the language can say: every stitch, increases, shells, decreases, chains,
/// skips, loops, colours, partial rounds, nested repeats, all starts.
class RandomPiece {
  public:
    explicit RandomPiece(unsigned seed) : engine_(seed) {}

    Piece piece() {
        Piece piece;
        piece.name = pick<const char*>({"Head", "Body", "Left flipper", "Beak", "Arm 1"});
        piece.start = start();
        piece.end = pick<End>({End::drawn_closed, End::left_open, End::sewn_straight});
        piece.joining = pick<Joining>({Joining::spiral, Joining::spiral, Joining::joined, Joining::rows});
        piece.make = chance(20) ? between(2, 5) : 1;
        RoundBelow below = RoundBelow::start(piece.start);
        const int rounds = between(1, 5);
        for (int i = 0; i < rounds; ++i) piece.rounds.push_back(round(below, piece, i == 0));
        return piece;
    }

    /// A round over `below` loops; 0: into a ring.
    GraphRound graph_round(int below, bool may_be_partial) {
        GraphRound round;
        several_yarns_ = chance(15);
        yarn_ = between(0, 2);
        if (below > 3 && may_be_partial && chance(6)) return partial(below);
        round.loops_below = below;
        if (below == 0)
            fill_ring(round);
        else
            fill(round, below);
        for (const GraphStitch& made : round.stitches) round.loops_left += loops_left(made.stitch);
        return round;
    }

    int between(int least, int most) { return std::uniform_int_distribution<int>(least, most)(engine_); }
    bool chance(int percent) { return between(1, 100) <= percent; }

  private:
    template <class T>
    T pick(std::vector<T> choices) {
        return choices[static_cast<std::size_t>(between(0, static_cast<int>(choices.size()) - 1))];
    }

    Start start() {
        switch (between(0, 3)) {
            case 0:
                return ChainRing{between(2, 8)};
            case 1:
                return OpenTube{between(2, 24)};
            case 2:
                return OvalChain{between(2, 12)};
            default:
                return MagicRing{};
        }
    }

    Round round(RoundBelow& below, const Piece& piece, bool first) {
        Round round;
        round.yarn = chance(80) ? last_yarn_ : static_cast<std::size_t>(between(0, 3));
        if (chance(10))
            round.note =
                pick<const char*>({"Place a marker in the first st.", "Stuff lightly here, 3 pinches."});
        GraphRound made;
        if (below.loops > 70 || chance(45)) {
            const WorkedEvenly even = evenly(below.loops);
            const SpacingPhase phase = phase_of(even, below.loops, below.phase);
            made = even_round(even, below.loops, phase, static_cast<std::uint16_t>(round.yarn));
            round.working = even;
            below.add(made, &even);
        } else {
            made = graph_round(below.loops, !first);
            round.yarn = static_cast<std::size_t>(only_yarn(made).value_or(static_cast<int>(round.yarn)));
            round.working = AsWritten{round_words(made, first, Terms::us, piece)};
            below.add(made, nullptr);
        }
        last_yarn_ = round.yarn;
        return round;
    }

    WorkedEvenly evenly(int below) {
        WorkedEvenly even;
        const int least = std::max(1, below / 3);
        const int most = std::max(least, std::min(60, below * 2 + 6));
        even.stitches = below == 0 ? between(3, 10) : between(least, most);
        even.kind = pick<StitchKind>({StitchKind::single_crochet, StitchKind::single_crochet,
                                      StitchKind::half_double_crochet, StitchKind::double_crochet,
                                      StitchKind::treble_crochet});
        if (chance(6))
            even.kind = pick<StitchKind>({StitchKind::chain, StitchKind::slip_stitch, StitchKind::bobble});
        even.part = part();
        even.spacing = chance(50) ? Spacing::stacked : Spacing::staggered;
        return even;
    }

    LoopPart part() {
        if (chance(85)) return LoopPart::both;
        return chance(50) ? LoopPart::front : LoopPart::back;
    }

    GraphRound partial(int below) {
        GraphRound round;
        round.first_below = chance(50) ? between(1, below - 2) : 0;
        round.loops_below = between(1, below - 1 - round.first_below);
        fill(round, round.loops_below);
        int left = 0;
        for (const GraphStitch& made : round.stitches) left += loops_left(made.stitch);
        round.loops_left = left + below - round.loops_below;
        return round;
    }

    StitchKind kind() {
        return pick<StitchKind>({StitchKind::single_crochet, StitchKind::single_crochet,
                                 StitchKind::single_crochet, StitchKind::half_double_crochet,
                                 StitchKind::double_crochet, StitchKind::treble_crochet,
                                 StitchKind::slip_stitch, StitchKind::bobble});
    }

    Stitch stitch() {
        Stitch stitch;
        stitch.kind = kind();
        stitch.part = part();
        stitch.yarn = static_cast<std::uint16_t>(yarn_);
        return stitch;
    }

    Stitch chain() {
        Stitch chain;
        chain.kind = StitchKind::chain;
        chain.feet = 0;
        chain.yarn = static_cast<std::uint16_t>(yarn_);
        return chain;
    }

    static Stitch skip() {
        Stitch skip;
        skip.kind = StitchKind::skip;
        return skip;
    }

    // Stitches of one thing worked, and the loops they take.
    std::vector<Stitch> thing(int loops, bool first) {
        if (several_yarns_ && chance(30)) yarn_ = between(0, 2);
        const int kind_of_thing = between(0, 19);
        if (kind_of_thing < 9) return {stitch()};
        if (kind_of_thing < 12) return increase();
        if (kind_of_thing < 14 && loops >= 2) return {decrease(between(2, std::min(4, loops)))};
        if (kind_of_thing == 14) return shell();
        if (kind_of_thing == 15) return std::vector<Stitch>(static_cast<std::size_t>(between(1, 3)), chain());
        if (kind_of_thing == 16 && !first) return {skip()};
        if (kind_of_thing == 17 && !first && loops >= 1) return {in_same(std::min(loops + 1, between(1, 3)))};
        return std::vector<Stitch>(static_cast<std::size_t>(std::min(loops, between(1, 6))), stitch());
    }

    std::vector<Stitch> increase() {
        std::vector<Stitch> made(static_cast<std::size_t>(between(2, 4)), stitch());
        for (std::size_t i = 1; i < made.size(); ++i) made[i].same_foot = true;
        return made;
    }

    Stitch decrease(int feet) {
        Stitch made = stitch();
        made.feet = static_cast<std::uint16_t>(feet);
        made.invisible = chance(40);
        return made;
    }

    Stitch in_same(int feet) {
        Stitch made = stitch();
        made.feet = static_cast<std::uint16_t>(std::max(feet, 1));
        made.same_foot = true;
        return made;
    }

    std::vector<Stitch> shell() {
        std::vector<Stitch> made{stitch()};
        const int more = between(1, 3);
        for (int i = 0; i < more; ++i) {
            if (chance(30)) made.push_back(chain());
            made.push_back(stitch());
            made.back().same_foot = true;
        }
        return made;
    }

    void put(GraphRound& round, const std::vector<Stitch>& stitches, int& taken) {
        for (const Stitch& made : stitches) {
            round.stitches.push_back({made, taken - (made.same_foot ? 1 : 0)});
            taken += loops_taken(made);
        }
    }

    static int loops_of(const std::vector<Stitch>& stitches) {
        int loops = 0;
        for (const Stitch& made : stitches) loops += loops_taken(made);
        return loops;
    }

    void fill(GraphRound& round, int below) {
        int taken = 0;
        while (taken < below) {
            std::vector<Stitch> body;
            const int things = between(1, 4);
            for (int i = 0; i < things; ++i) {
                const int left = below - taken - loops_of(body);
                if (left <= 0) break;
                const auto next = thing(left, taken == 0 && body.empty());
                if (loops_of(next) <= left) body.insert(body.end(), next.begin(), next.end());
            }
            const int loops = loops_of(body);
            if (loops == 0) continue;
            const int most = (below - taken) / loops;
            const int repeats = chance(50) ? most : between(1, most);
            // What shares a foot with the stitch before it cannot begin a round.
            const auto footed =
                std::find_if(body.begin(), body.end(), [](const Stitch& made) { return made.feet > 0; });
            if (taken == 0 && footed->same_foot) continue;
            for (int i = 0; i < repeats; ++i) put(round, body, taken);
        }
        const bool leaves =
            std::any_of(round.stitches.begin(), round.stitches.end(),
                        [](const GraphStitch& made) { return made.stitch.kind != StitchKind::skip; });
        if (leaves) return;
        round.stitches.clear();
        taken = 0;
        put(round, std::vector<Stitch>(static_cast<std::size_t>(below), stitch()), taken);
    }

    void fill_ring(GraphRound& round) {
        const int things = between(1, 4);
        for (int i = 0; i < things; ++i) {
            Stitch made = stitch();
            made.part = LoopPart::both;
            const int count = between(1, 8);
            for (int n = 0; n < count; ++n) {
                round.stitches.push_back({made, 0});
                if (chance(10)) round.stitches.push_back({chain(), 0});
            }
        }
    }

    std::mt19937 engine_;
    bool several_yarns_ = false;
    int yarn_ = 0;
    std::size_t last_yarn_ = 0;
};

}  // namespace roundwright::testing
