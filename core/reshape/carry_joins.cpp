#include "core/reshape/carry_joins.h"

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

#include "core/rounds/piece_graph.h"

namespace roundwright {
namespace {

class JoinCarrier {
  public:
    JoinCarrier(const Piece& old, const Piece& made)
        : before_(stitch_counts(piece_graph(old).graph)),
          after_(stitch_counts(piece_graph(made).graph)),
          turned_(old.starts_at_top != made.starts_at_top) {
        const auto shorter = std::min(old.rounds.size(), made.rounds.size());
        while (!turned_ && alike_ < shorter && old.rounds[alike_] == made.rounds[alike_]) ++alike_;
    }

    [[nodiscard]] bool turned() const { return turned_; }

    void carry(JoinPlace& place) const {
        const int rounds = static_cast<int>(before_.size());
        if (rounds == 0 || after_.empty() || place.round >= rounds) return;
        if (place.round < 0 || place.round == rounds - 1) return carry_end(place);
        if (std::cmp_less(place.round, alike_) && place.round < last() - 1) return;
        const int round = at_same_height(place.round, rounds);
        place.stitches_right = at_same_angle(place, round);
        place.round = round;
    }

  private:
    [[nodiscard]] int last() const { return static_cast<int>(after_.size()) - 1; }

    void carry_end(JoinPlace& place) const {
        const bool at_start = (place.round < 0) != turned_;
        place.round = at_start ? -1 : last();
    }

    [[nodiscard]] int at_same_height(int round, int rounds) const {
        const double part = static_cast<double>(round + 1) / rounds;
        const double height = (turned_ ? 1 - part : part) * static_cast<double>(after_.size());
        return std::clamp(static_cast<int>(std::lround(height)) - 1, 0, std::max(0, last() - 1));
    }

    [[nodiscard]] double at_same_angle(const JoinPlace& place, int round) const {
        const int count = before_[static_cast<std::size_t>(place.round)];
        if (count == 0) return place.stitches_right;
        const double stitches =
            place.stitches_right * after_[static_cast<std::size_t>(round)] / static_cast<double>(count);
        return std::round(2 * stitches) / 2;
    }

    std::vector<int> before_;
    std::vector<int> after_;
    bool turned_;
    std::size_t alike_ = 0;
};

}  // namespace

Toy with_piece_remade(const Toy& toy, std::size_t piece, Piece made) {
    Toy remade = toy;
    if (piece >= toy.pieces.size()) return remade;
    const PieceId id = toy.pieces.id(piece);
    if (!toy.joins.empty()) {
        const JoinCarrier carrier(toy.pieces[piece], made);
        for (Join& join : remade.joins) {
            if (join.onto.piece == id) carrier.carry(join.at);
            if (join.piece.piece == id && carrier.turned())
                join.end = join.end == JoinedEnd::start ? JoinedEnd::end : JoinedEnd::start;
        }
    }
    remade.pieces[piece] = std::move(made);
    return remade;
}

}  // namespace roundwright
