#include "core/assembly/check_joins.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/assembly/join_tree.h"
#include "core/assembly/seam_measures.h"
#include "core/assembly/study_solved.h"
#include "core/shape/curled_strip.h"
#include "core/study/toy_checks.h"
#include "core/toy/join_edits.h"

namespace roundwright {
namespace {

class JoinChecker {
  public:
    JoinChecker(const Toy& toy, RoundCounts counts) : toy_(toy), counts_(counts), tree_(join_tree(toy)) {}

    std::vector<Check> run() {
        for (const JoinProblem& problem : tree_.problems) add_problem(problem);
        for (std::size_t i = 0; i < toy_.joins.size(); ++i) add_missing_round(i);
        for (std::size_t i = 0; i < toy_.pieces.size(); ++i) add_worked_on(i);
        if (!toy_.joins.empty())
            for (std::size_t i = 0; i < toy_.pieces.size(); ++i) add_open_edges(i);
        add_changes();
        return std::move(checks_);
    }

  private:
    [[nodiscard]] std::string name(PieceId id) const {
        const auto index = toy_.pieces.index_of(id);
        return index ? toy_.pieces[*index].name : std::string();
    }
    [[nodiscard]] int index(PieceId id) const {
        const auto index = toy_.pieces.index_of(id);
        return index ? static_cast<int>(*index) : -1;
    }

    Check& add(CheckCode code, Severity severity, int piece, std::vector<Argument> arguments) {
        return checks_.emplace_back(Check{code, severity, piece, -1, std::move(arguments), {}});
    }

    static Cure remove(std::size_t join) {
        Cure cure{CureKind::remove_join, {}, 0, 0};
        cure.join = JoinCure{join, std::nullopt};
        return cure;
    }

    void add_problem(const JoinProblem& problem) {
        const Join& join = toy_.joins[problem.join];
        const bool circle = problem.fault == JoinFault::in_a_circle;
        const CheckCode code = circle                                     ? CheckCode::joined_in_a_circle
                               : problem.fault == JoinFault::joined_twice ? CheckCode::joined_twice
                                                                          : CheckCode::join_without_piece;
        const int piece = index(join.piece.piece);
        const bool known = piece >= 0;
        add(code, circle ? Severity::error : Severity::warning, known ? piece : index(join.onto.piece),
            {known ? name(join.onto.piece) : std::string(), join.piece.copy + 1})
            .cures = {remove(problem.join)};
    }

    void add_missing_round(std::size_t i) {
        const Join& join = toy_.joins[i];
        const auto onto = toy_.pieces.index_of(join.onto.piece);
        const int piece = index(join.piece.piece);
        if (!onto || piece < 0) return;
        const int rounds = static_cast<int>(counts_[*onto].size());
        if (join.at.round < rounds) return;
        Check& check = add(CheckCode::join_without_round, Severity::warning, piece,
                           {name(join.onto.piece), join.at.round + 1, rounds});
        if (rounds == 0) return;
        Cure cure{CureKind::move_join, {}, 0, 0};
        cure.join = JoinCure{i, join};
        cure.join->becomes->at.round = rounds - 1;
        check.cures = {std::move(cure)};
    }

    void add_worked_on(std::size_t piece) {
        const auto* start = std::get_if<WorkedOn>(&toy_.pieces[piece].start);
        if (start == nullptr) return;
        const std::optional<int> loops = loops_of_edges(toy_, piece, counts_);
        if (loops == start->stitches) return;
        const auto edges = static_cast<int>(worked_on_edges(toy_, piece).size());
        Check& check = add(CheckCode::worked_on_other_count, Severity::warning, static_cast<int>(piece),
                           {start->stitches, loops.value_or(0), edges});
        if (!loops || *loops < 1) return;
        Cure cure{CureKind::change_start, {}, 0, 0};
        WorkedOn becomes = *start;
        becomes.stitches = *loops;
        cure.start = Start{becomes};
        check.cures = {std::move(cure)};
    }

    // --- open edges

    [[nodiscard]] bool is_sewn(std::size_t piece, JoinedEnd end) const {
        const PieceId id = toy_.pieces.id(piece);
        const int last = static_cast<int>(counts_[piece].size()) - 1;
        return std::ranges::any_of(toy_.joins, [&](const Join& join) {
            const bool own = join.piece.piece == id && join.end == end && join.seam != Seam::hung;
            const bool others = join.onto.piece == id &&
                                (end == JoinedEnd::start ? join.at.round < 0 : join.at.round >= last);
            return own || others;
        });
    }

    void add_open_edge(std::size_t piece, JoinedEnd end, int stitches) {
        if (is_sewn(piece, end)) return;
        add(CheckCode::edge_not_sewn, Severity::note, static_cast<int>(piece),
            {stitches, end == JoinedEnd::start ? 0 : 1});
    }

    /// A piece that is not stuffed may be open on purpose: a hat, a cup.
    void add_open_edges(std::size_t index) {
        const Piece& piece = toy_.pieces[index];
        if (curls(piece, counts_[index])) return;
        if (piece.area_stretch <= 0 || counts_[index].empty() || toy_.pieces.size() < 2) return;
        if (piece.end == End::left_open) add_open_edge(index, JoinedEnd::end, counts_[index].back());
        if (const auto* tube = std::get_if<OpenTube>(&piece.start))
            add_open_edge(index, JoinedEnd::start, tube->chains);
    }

    // --- words

    void add_changes() {
        if (toy_.text.assembly.empty() || toy_.text.assembly_then.empty()) return;
        for (const JoinChange& change : join_changes(toy_.text.assembly_then, toy_.joins)) {
            const Join& join = change.now ? *change.now : *change.then;
            const int now = change.now ? change.now->at.round + 1 : -1;
            const int then = change.then ? change.then->at.round + 1 : -1;
            add(CheckCode::joins_changed, Severity::warning, index(join.piece.piece),
                {name(join.onto.piece), then, now,
                 change.then && change.then->onto.piece != join.onto.piece ? name(change.then->onto.piece)
                                                                           : std::string()})
                .cures = {{CureKind::words_still_fit, {}, 0, 0}};
        }
    }

    const Toy& toy_;
    RoundCounts counts_;
    JoinTree tree_;
    std::vector<Check> checks_;
};

Join without_kept(Join join) {
    join.kept = {};
    return join;
}

const Join* join_of(const std::vector<Join>& joins, const PieceCopy& copy) {
    const auto found = std::ranges::find(joins, copy, &Join::piece);
    return found == joins.end() ? nullptr : &*found;
}

std::optional<Check> check_seam(const AssembledToy& toy, std::size_t copy) {
    const PlacedPiece& placed = toy.placed.pieces[copy];
    const auto seam = seam_measures(toy.toy, toy.placed, toy.solved, copy);
    if (!seam || !placed.join || seam->stitches == 0 || seam->line_mm <= 0) return std::nullopt;
    if (toy.toy.joins[*placed.join].seam == Seam::worked_on) return std::nullopt;
    const double stretch = seam->stretch();
    const double seen = stretch < 0 ? seen_gathering : seen_stretching;
    if (std::abs(stretch) < seen) return std::nullopt;
    // By how much of the line: so much of the edge is over, or is missing.
    const double share = std::abs(seam->stitches_mm / seam->line_mm - 1);
    return Check{stretch < 0 ? CheckCode::seam_gathers : CheckCode::seam_stretches,
                 std::abs(stretch) < 2 * seen ? Severity::note : Severity::warning,
                 static_cast<int>(placed.solved),
                 -1,
                 {toy.solved[toy.placed.pieces[*placed.onto].solved].piece->name, seam->stitches,
                  Millimetres{seam->line_mm}, 100 * share},
                 {}};
}

}  // namespace

std::vector<Check> check_seams(const AssembledToy& toy) {
    std::vector<Check> checks;
    for (std::size_t i = 0; i < toy.placed.pieces.size(); ++i)
        if (auto check = check_seam(toy, i)) checks.push_back(std::move(*check));
    return checks;
}

std::vector<Check> check_overlaps(const AssembledToy& toy, const std::vector<PieceOverlap>& overlaps) {
    std::vector<Check> checks;
    for (const PieceOverlap& overlap : overlaps) {
        const std::size_t one = toy.placed.pieces[overlap.one].solved;
        const std::size_t other = toy.placed.pieces[overlap.other].solved;
        std::vector<Argument> arguments{overlap.volume_mm3};
        // Two copies of one piece need no name of the other.
        if (one != other) arguments.insert(arguments.begin(), toy.solved[one].piece->name);
        checks.push_back(
            {CheckCode::pieces_overlap, Severity::warning, static_cast<int>(other), -1, arguments, {}});
    }
    return checks;
}

AssembledToy assembled(const Toy& toy, std::span<const PieceStudy> studies) {
    std::vector<SolvedPiece> solved;
    for (std::size_t i = 0; i < studies.size(); ++i) solved.push_back(solved_piece(toy, i, studies[i]));
    return assemble(toy, std::move(solved),
                    std::vector<std::shared_ptr<const StitchSurface>>(studies.size()));
}

std::vector<Check> checks_of_joins(const Toy& toy, std::span<const PieceStudy> studies) {
    std::vector<Check> checks = check_joins(toy, counts_of_pieces(studies));
    if (toy.joins.empty()) return checks;
    const AssembledToy together = assembled(toy, studies);
    for (Check& check : check_seams(together)) checks.push_back(std::move(check));
    for (Check& check : check_overlaps(together, pieces_that_overlap(together)))
        checks.push_back(std::move(check));
    return checks;
}

std::vector<Check> check_joins(const Toy& toy, RoundCounts counts) { return JoinChecker(toy, counts).run(); }

std::vector<JoinChange> join_changes(const std::vector<Join>& then, const std::vector<Join>& now) {
    std::vector<JoinChange> changes;
    for (const Join& join : now) {
        const Join* before = join_of(then, join.piece);
        if (before == nullptr)
            changes.push_back({std::nullopt, join});
        else if (without_kept(*before) != without_kept(join))
            changes.push_back({*before, join});
    }
    for (const Join& join : then)
        if (join_of(now, join.piece) == nullptr) changes.push_back({join, std::nullopt});
    return changes;
}

bool is_cure_of_joins(const Cure& cure) {
    return cure.join || cure.start || cure.kind == CureKind::words_still_fit;
}

Toy cured_joins(const Toy& toy, const Check& check, const Cure& cure) {
    Toy cured = toy;
    if (cure.kind == CureKind::words_still_fit) cured.text.assembly_then = toy.joins;
    if (cure.join)
        cured = cure.join->becomes ? change_join(cured, cure.join->join, *cure.join->becomes)
                                   : remove_join(cured, cure.join->join);
    const auto piece = static_cast<std::size_t>(std::max(check.piece, 0));
    if (cure.start && check.piece >= 0 && piece < cured.pieces.size())
        cured.pieces[piece].start = *cure.start;
    return cured;
}

Toy with_joins_remembered(const Toy& before, Toy after) {
    if (after.text.assembly_then != before.text.assembly_then) return after;
    if (after.text.assembly.empty())
        after.text.assembly_then.clear();
    else if (after.text.assembly != before.text.assembly)
        after.text.assembly_then = after.joins;
    else if (after.text.assembly_then.empty() && after.joins != before.joins)
        after.text.assembly_then = before.joins;
    return after;
}

}  // namespace roundwright
