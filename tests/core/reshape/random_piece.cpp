#include "tests/core/reshape/random_piece.h"

#include <algorithm>

namespace roundwright::testing {
namespace {

int between(std::mt19937& random, int low, int high) {
    return std::uniform_int_distribution<int>(low, high)(random);
}
double between(std::mt19937& random, double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random);
}
bool one_in(std::mt19937& random, int n) { return between(random, 1, n) == 1; }

Round even_round_of(int count) {
    Round round;
    round.working = WorkedEvenly{count};
    return round;
}

void run_of_rounds(std::mt19937& random, std::vector<int>& counts, int count, int change) {
    for (int rounds = between(random, 1, 8); rounds > 0; --rounds) {
        const int next = std::clamp(count + change, std::max(4, (count + 1) / 2), std::min(90, 2 * count));
        counts.push_back(next);
        count = next;
    }
}

std::vector<int> random_counts(std::mt19937& random, int first) {
    std::vector<int> counts{first};
    const int runs = between(random, 2, 6);
    for (int run = 0; run < runs; ++run) {
        const int changes[] = {6, 6, 0, 0, -6, 3, -3, between(random, -8, 8)};
        run_of_rounds(random, counts, counts.back(), changes[between(random, 0, 7)]);
    }
    return counts;
}

void close(std::vector<int>& counts) {
    while (counts.back() > 9) counts.push_back(std::max((counts.back() + 1) / 2, counts.back() - 6));
}

void decorate(std::mt19937& random, Piece& piece) {
    std::size_t yarn = 0;
    StitchKind kind = StitchKind::single_crochet;
    for (Round& round : piece.rounds) {
        if (one_in(random, 6)) yarn = std::size_t(between(random, 0, 2));
        if (one_in(random, 12)) kind = StitchKind::half_double_crochet;
        if (one_in(random, 8)) kind = StitchKind::single_crochet;
        round.yarn = yarn;
        std::get<WorkedEvenly>(round.working).kind = kind;
        round.lies_flat = one_in(random, 10);
        if (one_in(random, 10)) round.note = "note " + std::to_string(&round - piece.rounds.data());
    }
}

}  // namespace

Piece piece_of(const std::vector<int>& counts, End end) {
    Piece piece;
    piece.end = end;
    for (int count : counts) piece.rounds.push_back(even_round_of(count));
    return piece;
}

Piece ball_piece(int n) {
    std::vector<int> counts;
    for (int i = 1; i <= n; ++i) counts.push_back(6 * i);
    for (int i = 0; i < n; ++i) counts.push_back(6 * n);
    for (int i = n - 1; i >= 1; --i) counts.push_back(6 * i);
    return piece_of(counts);
}

std::vector<int> even_counts(const Piece& piece) {
    std::vector<int> counts;
    for (const Round& round : piece.rounds) counts.push_back(std::get<WorkedEvenly>(round.working).stitches);
    return counts;
}

Piece random_piece(std::mt19937& random) {
    const bool ring = !one_in(random, 4);
    const int first = ring ? between(random, 4, 8) : 3 * between(random, 3, 16);
    auto counts = random_counts(random, first);
    const bool closed = one_in(random, 2);
    if (closed) close(counts);
    Piece piece = piece_of(counts, closed ? End::drawn_closed : End::left_open);
    if (!ring) piece.start = OpenTube{first};
    const double stretches[] = {light_stuffing_stretch, medium_stuffing_stretch, firm_stuffing_stretch};
    piece.area_stretch = stretches[between(random, 0, 2)];
    decorate(random, piece);
    return piece;
}

Gauge random_gauge(std::mt19937& random) {
    const double width = between(random, 2.5, 9.0);
    return {width, width * between(random, 0.8, 1.15), 0, 0};
}

int one_of(std::mt19937& random, int n) { return between(random, 0, n - 1); }

}  // namespace roundwright::testing
