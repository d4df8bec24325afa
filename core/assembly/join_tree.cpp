#include "core/assembly/join_tree.h"

#include <algorithm>
#include <map>

namespace roundwright {
namespace {

class TreeBuilder {
  public:
    explicit TreeBuilder(const Toy& toy) : toy_(toy) {
        for (std::size_t i = 0; i < toy.pieces.size(); ++i)
            for (int copy = 0; copy < toy.pieces[i].make; ++copy) add({toy.pieces.id(i), copy}, i);
    }

    JoinTree build() {
        for (std::size_t i = 0; i < toy_.joins.size(); ++i) take(i);
        break_circles();
        put_in_order();
        std::ranges::sort(tree_.problems, {}, &JoinProblem::join);
        return std::move(tree_);
    }

  private:
    void add(PieceCopy copy, std::size_t piece) {
        index_.emplace(copy, all_.size());
        all_.push_back({.copy = copy, .piece = piece, .join = {}, .onto = {}, .mirrored = false});
    }

    void problem(std::size_t join, JoinFault fault) {
        const JoinProblem found{join, fault};
        if (std::ranges::find(tree_.problems, found) == tree_.problems.end()) tree_.problems.push_back(found);
    }

    [[nodiscard]] bool is_there(std::size_t join, const PieceCopy& copy) {
        if (index_.contains(copy)) return true;
        const bool piece = toy_.pieces.index_of(copy.piece).has_value();
        problem(join, piece ? JoinFault::no_such_copy : JoinFault::no_such_piece);
        return false;
    }

    void take(std::size_t join) {
        const Join& said = toy_.joins[join];
        if (!is_there(join, said.onto)) return;
        hang(join, said.piece, false);
        if (said.pair) hang(join, {said.piece.piece, said.piece.copy + 1}, true);
    }

    void hang(std::size_t join, const PieceCopy& copy, bool mirrored) {
        if (!is_there(join, copy)) return;
        JoinedCopy& joined = all_[index_.at(copy)];
        if (joined.join) return problem(join, JoinFault::joined_twice);
        joined.join = join;
        joined.onto = index_.at(toy_.joins[join].onto);
        joined.mirrored = mirrored;
    }

    // Each copy has one way up, so that walking it marks every circle in linear time.
    void break_circles() {
        std::vector<std::size_t> walk_of(all_.size(), 0);
        for (std::size_t start = 0; start < all_.size(); ++start) {
            std::size_t at = start;
            while (walk_of[at] == 0 && all_[at].onto) {
                walk_of[at] = start + 1;
                at = *all_[at].onto;
            }
            if (walk_of[at] == start + 1 && all_[at].onto) open_circle(at);
        }
    }

    void open_circle(std::size_t at) {
        while (all_[at].onto) {
            const std::size_t next = *all_[at].onto;
            problem(*all_[at].join, JoinFault::in_a_circle);
            all_[at].join.reset();
            all_[at].onto.reset();
            all_[at].mirrored = false;
            at = next;
        }
    }

    void put_in_order() {
        std::vector<std::vector<std::size_t>> hanging(all_.size());
        std::vector<std::size_t> order;
        for (std::size_t i = 0; i < all_.size(); ++i) {
            if (all_[i].onto)
                hanging[*all_[i].onto].push_back(i);
            else
                order.push_back(i);
        }
        for (std::size_t i = 0; i < order.size(); ++i)
            order.insert(order.end(), hanging[order[i]].begin(), hanging[order[i]].end());
        std::vector<std::size_t> place(all_.size());
        for (std::size_t i = 0; i < order.size(); ++i) place[order[i]] = i;
        for (const std::size_t from : order) {
            JoinedCopy copy = all_[from];
            if (copy.onto) copy.onto = place[*copy.onto];
            tree_.copies.push_back(copy);
        }
    }

    const Toy& toy_;
    std::map<PieceCopy, std::size_t> index_;
    std::vector<JoinedCopy> all_;
    JoinTree tree_;
};

}  // namespace

JoinTree join_tree(const Toy& toy) { return TreeBuilder(toy).build(); }

}  // namespace roundwright
