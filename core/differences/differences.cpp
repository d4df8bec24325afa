#include "core/differences/differences.h"

#include <array>

#include "core/differences/match.h"
#include "core/differences/piece_differences.h"

namespace roundwright {
namespace {

/// Two toys, and what was found to differ so far.
class ToyComparison {
  public:
    ToyComparison(const Toy& before, const Toy& after)
        : before_(before), after_(after), yarns_(matched_yarns()), pieces_(matched_pieces(before, after)) {}

    std::vector<Difference> run(const std::stop_token& stop) && {
        for (std::size_t k = 0; k < after_.pieces.size() && !stop.stop_requested(); ++k) compare_piece(k);
        for (std::size_t i = 0; i < before_.pieces.size(); ++i) {
            if (!pieces_.after_of[i])
                add_piece(DifferenceCode::piece_gone, before_.pieces[i], i).then =
                    round_counts(before_.pieces[i]);
        }
        add_if(!pieces_.in_order(), DifferenceCode::pieces_in_other_order);
        compare_yarns();
        compare_rest();
        add_if(found_.empty() && !(before_ == after_), DifferenceCode::other);
        return std::move(found_);
    }

  private:
    [[nodiscard]] Match matched_yarns() const {
        const auto& then = before_.yarns;
        const auto& now = after_.yarns;
        const std::array<IsSame, 3> ways{
            [&](std::size_t i, std::size_t k) { return then[i] == now[k]; },
            [&](std::size_t i, std::size_t k) { return then[i].name == now[k].name; },
            [](std::size_t i, std::size_t k) { return i == k; }};
        return match(then.size(), now.size(), ways);
    }

    Difference& add(DifferenceCode code) {
        found_.emplace_back().code = code;
        return found_.back();
    }
    void add_if(bool differs, DifferenceCode code) {
        if (differs) add(code);
    }
    Difference& add_named(DifferenceCode code, const std::string& name, std::size_t place) {
        Difference& difference = add(code);
        difference.name = name;
        difference.place = static_cast<int>(place);
        return difference;
    }
    Difference& add_piece(DifferenceCode code, const Piece& piece, std::size_t place) {
        return add_named(code, piece.name, place);
    }

    void compare_piece(std::size_t k) {
        const Piece& now = after_.pieces[k];
        const auto i = pieces_.before_of[k];
        if (!i) {
            add_piece(DifferenceCode::piece_new, now, k).now = round_counts(now);
            return;
        }
        if (same_piece(before_.pieces, *i, after_.pieces, k) && yarns_.in_order() && !some_yarn_is_gone())
            return;
        const Piece& then = before_.pieces[*i];
        if (then.name != now.name) add_piece(DifferenceCode::piece_renamed, now, k).old_name = then.name;
        for (Difference& difference : piece_differences(then, now, yarns_.after_of)) {
            difference.name = now.name;
            difference.place = static_cast<int>(k);
            found_.push_back(std::move(difference));
        }
    }

    [[nodiscard]] bool some_yarn_is_gone() const {
        for (std::size_t i = 0; i < yarns_.after_of.size(); ++i) {
            if (yarns_.after_of[i] != i) return true;
        }
        return false;
    }

    void compare_yarns() {
        const auto& then = before_.yarns;
        const auto& now = after_.yarns;
        for (std::size_t k = 0; k < now.size(); ++k) {
            const auto i = yarns_.before_of[k];
            if (!i) {
                add_named(DifferenceCode::yarn_new, now[k].name, k);
                continue;
            }
            Yarn as_named = then[*i];
            as_named.name = now[k].name;
            if (then[*i].name != now[k].name)
                add_named(DifferenceCode::yarn_renamed, now[k].name, k).old_name = then[*i].name;
            if (!(as_named == now[k])) add_named(DifferenceCode::yarn_changed, now[k].name, k);
        }
        for (std::size_t i = 0; i < then.size(); ++i) {
            if (!yarns_.after_of[i]) add_named(DifferenceCode::yarn_gone, then[i].name, i);
        }
        add_if(!yarns_.in_order(), DifferenceCode::yarns_in_other_order);
    }

    void compare_rest() {
        if (before_.hook_mm != after_.hook_mm) {
            Difference& hook = add(DifferenceCode::hook);
            hook.then_value = before_.hook_mm;
            hook.now_value = after_.hook_mm;
        }
        add_if(!(before_.gauge == after_.gauge), DifferenceCode::gauge);
        add_if(before_.title != after_.title, DifferenceCode::title);
        add_if(before_.designer != after_.designer, DifferenceCode::designer);
        add_if(before_.notes != after_.notes, DifferenceCode::notes);
        add_if(before_.private_notes != after_.private_notes, DifferenceCode::private_notes);
        add_if(!same_words(), DifferenceCode::pattern_words);
        add_if(!(before_.making == after_.making), DifferenceCode::making);
    }

    /// What the words were written for follows the pieces, not the maker.
    [[nodiscard]] bool same_words() const {
        PatternText then = before_.text;
        then.written_for = after_.text.written_for;
        return then == after_.text;
    }

    const Toy& before_;
    const Toy& after_;
    Match yarns_;
    Match pieces_;
    std::vector<Difference> found_;
};

}  // namespace

Match matched_pieces(const Toy& before, const Toy& after) {
    const PieceList& then = before.pieces;
    const PieceList& now = after.pieces;
    const std::array<IsSame, 2> ways{
        [&](std::size_t i, std::size_t k) { return then.id(i) == now.id(k); },
        [&](std::size_t i, std::size_t k) { return then[i].name == now[k].name; }};
    return match(then.size(), now.size(), ways);
}

std::vector<Difference> differences(const Toy& before, const Toy& after, const std::stop_token& stop) {
    if (before == after) return {};
    return ToyComparison(before, after).run(stop);
}

}  // namespace roundwright
