#include "core/assembly/first_joins.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>
#include <optional>

#include "core/assembly/join_tree.h"
#include "core/assembly/sewing_steps.h"
#include "core/base/limits.h"
#include "core/rounds/piece_graph.h"
#include "core/shape/curled_strip.h"
#include "core/toy/join_edits.h"

namespace roundwright {
namespace {

/// Where on the trunk: how far up (0 to 1), and which part of the way round from the middle of its face.
struct Spot {
    double up = 0.5;
    double round_to = 0;
};

constexpr std::array pair_spots{Spot{0.72, 0.25}, Spot{0.12, 0.14}, Spot{0.45, 0.25},
                                Spot{0.88, 0.2},  Spot{0.12, 0.36}, Spot{0.3, 0.25}};
constexpr std::array single_spots{Spot{0.2, 0.5},  Spot{0.5, 0},    Spot{0.75, 0.5},
                                  Spot{0.25, 0.0}, Spot{0.45, 0.5}, Spot{0.8, 0}};

constexpr double least_rounds_apart = 2;
constexpr double least_part_apart = 0.125;
constexpr int most_tries = 4'000;

std::size_t stitches_of(const Piece& piece) {
    const std::vector<int> counts = stitch_counts(piece_graph(piece).graph);
    return std::accumulate(counts.begin(), counts.end(), std::size_t{0},
                           [](std::size_t sum, int count) { return sum + static_cast<std::size_t>(count); });
}

/// The first of those with the most stitches; one of less than two rounds has no place between them.
std::optional<std::size_t> largest(const Toy& toy, const std::vector<std::size_t>& pieces) {
    std::optional<std::size_t> best;
    std::size_t most = 0;
    for (const std::size_t piece : pieces) {
        const std::size_t stitches = stitches_of(toy.pieces[piece]);
        if (toy.pieces[piece].rounds.size() < 2 || stitches <= most) continue;
        most = stitches;
        best = piece;
    }
    return best;
}

/// Pieces whose first copy is not joined on.
std::vector<std::size_t> standing(const JoinTree& tree) {
    std::vector<std::size_t> pieces;
    for (const JoinedCopy& copy : tree.copies)
        if (!copy.join && copy.copy.copy == 0) pieces.push_back(copy.piece);
    return pieces;
}

/// Finds the places of one piece's copies.
class FirstPlaces {
  public:
    FirstPlaces(const Toy& toy, std::size_t piece)
        : toy_(toy), id_(toy.pieces.id(piece)), index_(piece), piece_(toy.pieces[piece]) {
        std::vector<bool> joined(static_cast<std::size_t>(piece_.make), false);
        const JoinTree tree = join_tree(toy);
        stands_ = standing(tree);
        for (const JoinedCopy& copy : tree.copies)
            if (copy.copy.piece == id_ && copy.join) joined[static_cast<std::size_t>(copy.copy.copy)] = true;
        for (int i = 0; i < piece_.make; ++i)
            if (!joined[static_cast<std::size_t>(i)]) free_.push_back(i);
    }

    std::vector<Join> find() {
        if (std::holds_alternative<WorkedOn>(piece_.start) && !is_worked_on() && work_on())
            return std::move(made_);
        const auto trunk = find_trunk();
        if (!trunk || free_.empty()) return {};
        trunk_ = *trunk;
        counts_ = stitch_counts(piece_graph(toy_.pieces[trunk_]).graph);
        for (std::size_t i = 0; i < free_.size();) {
            const bool pair = i + 1 < free_.size() && free_[i + 1] == free_[i] + 1;
            place(free_[i], pair);
            i += pair ? 2 : 1;
        }
        return std::move(made_);
    }

  private:
    // --- worked on the edges of others

    [[nodiscard]] bool is_free_edge(std::size_t piece) const {
        const Piece& other = toy_.pieces[piece];
        if (piece == index_ || other.end != End::left_open || other.rounds.empty()) return false;
        return std::ranges::none_of(toy_.joins, [&](const Join& join) {
            return join.seam == Seam::worked_on &&
                   (join.piece.piece == toy_.pieces.id(piece) ||
                    (join.onto.piece == toy_.pieces.id(piece) && join.at.round >= 0));
        });
    }

    [[nodiscard]] bool is_worked_on() const {
        return free_.empty() || std::ranges::any_of(toy_.joins, [&](const Join& join) {
                   return join.onto.piece == id_ && join.seam == Seam::worked_on && join.at.round < 0;
               });
    }

    /// Two edges, one on each side of the start; or the only one, which it goes on from.
    bool work_on() {
        std::vector<PieceCopy> edges;
        for (const std::size_t piece : stands_) {
            if (!is_free_edge(piece)) continue;
            for (int copy = 0; copy < toy_.pieces[piece].make && edges.size() < 2; ++copy)
                edges.push_back({toy_.pieces.id(piece), copy});
        }
        if (edges.empty()) return false;
        if (edges.size() == 1) return go_on_from(edges.front());
        for (std::size_t i = 0; i < edges.size(); ++i) {
            const double side = i == 0 ? -90 : 90;
            made_.push_back({.piece = edges[i],
                             .onto = {id_, 0},
                             .seam = Seam::worked_on,
                             .at = {.round = -1, .stitches_right = side / 360 * stitches_begun_over()}});
        }
        return true;
    }

    [[nodiscard]] double stitches_begun_over() const { return std::get<WorkedOn>(piece_.start).stitches; }

    bool go_on_from(const PieceCopy& below) {
        const auto onto = toy_.pieces.index_of(below.piece);
        const int last = static_cast<int>(toy_.pieces[*onto].rounds.size()) - 1;
        made_.push_back({.piece = {id_, 0},
                         .onto = below,
                         .end = JoinedEnd::start,
                         .seam = Seam::worked_on,
                         .at = {.round = last, .around = true}});
        return true;
    }

    // --- sewn on

    [[nodiscard]] std::optional<std::size_t> find_trunk() const {
        std::vector<std::size_t> others = stands_;
        std::erase(others, index_);
        return largest(toy_, others);
    }

    void place(int copy, bool pair) {
        Join join{.piece = {id_, copy}, .onto = {toy_.pieces.id(trunk_), 0}, .pair = pair, .at = {}};
        say_how(join);
        const JoinPlace top{.round = trunk_starts_at_top() ? -1 : last_round(), .around = true};
        if (!pair && is_free(top)) {
            join.at = top;
        } else {
            join.at = pair ? first_free(pair_spots) : first_free(single_spots);
        }
        made_.push_back(std::move(join));
    }

    void say_how(Join& join) const {
        const bool open_start = std::holds_alternative<OpenTube>(piece_.start);
        if (curls(piece_, stitch_counts(piece_graph(piece_).graph))) {
            join.end = JoinedEnd::start;
            join.seam = Seam::closed;
        } else if (piece_.end == End::sewn_straight) {
            join.seam = Seam::straight;
        } else if (piece_.end == End::drawn_closed) {
            join.end = JoinedEnd::start;
            join.seam = open_start ? Seam::edge : Seam::closed;
        }
    }

    [[nodiscard]] bool trunk_starts_at_top() const { return toy_.pieces[trunk_].starts_at_top; }
    [[nodiscard]] int last_round() const { return static_cast<int>(toy_.pieces[trunk_].rounds.size()) - 1; }

    [[nodiscard]] double count_at(int round) const {
        if (round < 0 || counts_.empty()) return 1;
        return std::max(1, counts_[std::min(static_cast<std::size_t>(round), counts_.size() - 1)]);
    }

    [[nodiscard]] JoinPlace place_of(const Spot& spot) const {
        const double from_start = trunk_starts_at_top() ? 1 - spot.up : spot.up;
        const int round = std::clamp(static_cast<int>(std::lround(from_start * last_round())), 0,
                                     std::max(0, last_round() - 1));
        return {.round = round, .stitches_right = std::round(spot.round_to * count_at(round))};
    }

    template <class Spots>
    [[nodiscard]] JoinPlace first_free(const Spots& spots) const {
        for (const Spot& spot : spots)
            if (const JoinPlace place = place_of(spot); is_free(place)) return place;
        // Spread over all of it by two irrational steps, so that none comes twice.
        constexpr double golden = 0.6180339887498949;
        constexpr double root_two = 0.4142135623730951;
        JoinPlace place;
        for (int i = 1; i <= most_tries; ++i) {
            const double up = 0.05 + 0.9 * std::fmod(i * golden, 1.0);
            place = place_of({up, std::fmod(i * root_two, 1.0) * 0.5});
            if (i < most_tries / 2 ? is_free(place) : !is_taken(place)) return place;
        }
        return place;
    }

    // --- what is taken

    [[nodiscard]] bool on_axis(const JoinPlace& place) const {
        return place.around || place.round < 0 || place.round >= last_round();
    }

    /// How far round from the middle of the face, without its side: the two of a pair are on both.
    [[nodiscard]] double part_round(const JoinPlace& place) const {
        const double part = std::abs(std::fmod(place.stitches_right / count_at(place.round), 1.0));
        return std::min(part, 1 - part);
    }

    [[nodiscard]] bool close(const JoinPlace& a, const JoinPlace& b) const {
        if (std::abs(a.round - b.round) >= least_rounds_apart) return false;
        if (on_axis(a) || on_axis(b)) return true;
        return std::abs(part_round(a) - part_round(b)) < least_part_apart;
    }

    template <class Test>
    [[nodiscard]] bool any_on_trunk(const Test& test) const {
        const auto holds = [&](const Join& join) {
            return join.onto == PieceCopy{toy_.pieces.id(trunk_), 0} && test(join.at);
        };
        return std::ranges::any_of(toy_.joins, holds) || std::ranges::any_of(made_, holds);
    }

    [[nodiscard]] bool is_free(const JoinPlace& place) const {
        return !any_on_trunk([&](const JoinPlace& other) { return close(place, other); });
    }
    [[nodiscard]] bool is_taken(const JoinPlace& place) const {
        return any_on_trunk([&](const JoinPlace& other) {
            return place.round == other.round && part_round(place) == part_round(other);
        });
    }

    const Toy& toy_;
    PieceId id_;
    std::size_t index_;
    const Piece& piece_;
    std::vector<std::size_t> stands_;  ///< pieces whose first copy is not joined on
    std::vector<int> free_;            ///< copies of the piece that are not joined on
    std::size_t trunk_ = 0;
    std::vector<int> counts_;  ///< of the trunk
    std::vector<Join> made_;
};

}  // namespace

std::vector<Join> first_joins(const Toy& toy, std::size_t piece) {
    return piece < toy.pieces.size() ? FirstPlaces(toy, piece).find() : std::vector<Join>{};
}

Toy with_first_joins(Toy toy, std::size_t piece) {
    for (Join& join : first_joins(toy, piece))
        if (toy.joins.size() < max_joins) toy.joins.push_back(std::move(join));
    return toy;
}

Toy put_together(Toy toy) {
    const auto is_worked_on = [&toy](std::size_t piece) {
        return std::holds_alternative<WorkedOn>(std::as_const(toy).pieces[piece].start);
    };
    // What is worked on comes first: it takes the edges that would else be sewn on.
    for (std::size_t piece = 0; piece < toy.pieces.size(); ++piece)
        if (is_worked_on(piece)) toy = with_first_joins(std::move(toy), piece);
    const auto trunk = largest(toy, standing(join_tree(toy)));
    for (std::size_t piece = 0; piece < toy.pieces.size(); ++piece)
        if (piece != trunk) toy = with_first_joins(std::move(toy), piece);
    return toy;
}

Toy made_times(const Toy& toy, std::size_t piece, int make) {
    Toy made = set_made(toy, piece, make);
    if (piece >= toy.pieces.size() || toy.joins.empty()) return made;
    const PieceCopy first{toy.pieces.id(piece), 0};
    const auto other = std::ranges::find(made.joins, PieceCopy{first.piece, 1}, &Join::piece);
    const auto aside = std::ranges::find(made.joins, first, &Join::piece);
    if (make == 2 && other == made.joins.end() && aside != made.joins.end() && !aside->at.around &&
        aside->at.stitches_right != 0)
        aside->pair = true;
    return with_first_joins(std::move(made), piece);
}

Toy begun_with(const Toy& toy, std::size_t piece, const Start& start) {
    Toy begun = toy;
    if (piece >= toy.pieces.size()) return begun;
    begun.pieces[piece].start = start;
    if (std::holds_alternative<WorkedOn>(start)) return begun;
    const PieceId id = toy.pieces.id(piece);
    std::erase_if(begun.joins, [id](const Join& join) {
        return join.seam == Seam::worked_on && ((join.onto.piece == id && join.at.round < 0) ||
                                                (join.piece.piece == id && join.end == JoinedEnd::start));
    });
    return begun;
}

namespace {

/// Two legs that are sewn onto a piece, as the edges that it is begun on.
void begin_on_sewn_pair(Toy& toy, std::size_t piece) {
    const PieceId id = toy.pieces.id(piece);
    const auto pair = std::ranges::find_if(toy.joins, [&](const Join& join) {
        const auto leg = toy.pieces.index_of(join.piece.piece);
        return join.onto.piece == id && join.pair && join.seam == Seam::edge && join.end == JoinedEnd::end &&
               leg && std::as_const(toy).pieces[*leg].end == End::left_open;
    });
    if (pair == toy.joins.end()) return;
    const double quarter = std::get<WorkedOn>(std::as_const(toy).pieces[piece].start).stitches / 4.0;
    *pair = {.piece = pair->piece,
             .onto = pair->onto,
             .pair = true,
             .seam = Seam::worked_on,
             .at = {.round = -1, .stitches_right = quarter},
             .kept = pair->kept};
}

/// One that was sewn on until now is worked on instead.
Toy with_edges_to_begin_on(Toy toy, std::size_t piece) {
    const PieceId id = toy.pieces.id(piece);
    Toy freed = toy;
    std::erase_if(freed.joins, [id](const Join& join) { return join.piece.piece == id; });
    freed = with_first_joins(std::move(freed), piece);
    if (!worked_on_edges(freed, piece).empty()) return freed;
    begin_on_sewn_pair(toy, piece);
    return toy;
}

}  // namespace

Toy begun_on_edges(const Toy& toy, std::size_t piece, int chains_between) {
    if (piece >= toy.pieces.size()) return toy;
    const std::vector<int> own = stitch_counts(piece_graph(toy.pieces[piece]).graph);
    WorkedOn start{.stitches = own.empty() || own.front() < 1 ? WorkedOn{}.stitches : own.front(),
                   .chains_between = std::max(0, chains_between)};
    Toy begun = begun_with(toy, piece, start);
    if (worked_on_edges(begun, piece).empty()) begun = with_edges_to_begin_on(std::move(begun), piece);
    std::vector<std::vector<int>> counts;
    for (const Piece& each : std::as_const(begun).pieces)
        counts.push_back(stitch_counts(piece_graph(each).graph));
    if (const auto loops = loops_of_edges(begun, piece, counts); loops && *loops > 0) {
        start.stitches = *loops;
        begun.pieces[piece].start = start;
    }
    return begun;
}

}  // namespace roundwright
