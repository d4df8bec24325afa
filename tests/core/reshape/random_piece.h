#pragma once

#include <random>
#include <vector>

#include "core/toy/toy.h"

namespace roundwright::testing {

/// A piece of these counts, worked evenly in single crochet from a magic ring.
Piece piece_of(const std::vector<int>& counts, End end = End::drawn_closed);

/// The ball of common practice: n rounds of six increases, n even rounds, then six decreases a round.
Piece ball_piece(int n);

/// Counts of a piece of `piece`'s rounds as they are stored; for pieces of even rounds only.
std::vector<int> even_counts(const Piece& piece);

/// A workable piece as makers draft them: grows, runs on and closes by turns; rings and tubes, open and
/// closed, single, half double and double crochet, bands of yarn, marks and notes.
Piece random_piece(std::mt19937& random);

/// A fabric from fine to bulky, rounds between 0.8 and 1.15 times as high as a stitch is wide.
Gauge random_gauge(std::mt19937& random);

/// One of 0 ... n - 1.
int one_of(std::mt19937& random, int n);

}  // namespace roundwright::testing
