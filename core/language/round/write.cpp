#include "core/language/round/write.h"

#include <algorithm>
#include <map>
#include <optional>
#include <span>
#include <tuple>

#include "core/language/round/worked_on_words.h"
#include "core/language/words/fold.h"
#include "core/language/words/in_language.h"

namespace roundwright {
namespace {

using Stitches = std::vector<Stitch>;

bool is_shell_member(const Stitch& stitch) { return stitch.same_foot && stitch.feet == 1; }

// Length of what is worked as one thing from `first` on: a stitch with all that shares its foot, chains
// between them included; or a single stitch.
std::size_t group_length(std::span<const GraphStitch> made, std::size_t first) {
    const Stitch& head = made[first].stitch;
    std::size_t end = first + 1;
    if (head.feet != 1 || head.same_foot || head.kind == StitchKind::skip) return 1;
    for (std::size_t next = end; next < made.size(); ++next) {
        const Stitch& stitch = made[next].stitch;
        if (is_shell_member(stitch) && stitch.yarn == head.yarn)
            end = next + 1;
        else if (stitch.kind != StitchKind::chain || stitch.yarn != head.yarn)
            break;
    }
    return end - first;
}

std::string part_prefix(LoopPart part) {
    switch (part) {
        case LoopPart::front:
            return "FLO ";
        case LoopPart::back:
            return "BLO ";
        case LoopPart::both:
            break;
    }
    return "";
}

std::string name(StitchKind kind, Terms terms) { return std::string(abbreviation(kind, terms)); }

std::string decrease_name(const Stitch& stitch, Terms terms) {
    if (stitch.kind == StitchKind::single_crochet && stitch.feet == 2)
        return stitch.invisible ? "invdec" : "dec";
    return (stitch.invisible ? "invisible " : "") + name(stitch.kind, terms) + std::to_string(stitch.feet) +
           "tog";
}

std::string stitch_name(const Stitch& stitch, Terms terms) {
    return part_prefix(stitch.part) +
           (stitch.feet > 1 ? decrease_name(stitch, terms) : name(stitch.kind, terms));
}

bool all_alike(const Stitches& group) {
    return std::all_of(group.begin() + 1, group.end(), [&](const Stitch& stitch) {
        return stitch.kind == group[0].kind && stitch.part == group[0].part && stitch.feet == 1;
    });
}

std::string chains(std::size_t count, Terms terms) {
    return name(StitchKind::chain, terms) + " " + std::to_string(count);
}

std::string shell_members(const Stitches& group, Terms terms) {
    std::string words;
    for (std::size_t i = 0; i < group.size();) {
        std::size_t end = i + 1;
        while (group[i].kind == StitchKind::chain && end < group.size() &&
               group[end].kind == StitchKind::chain)
            ++end;
        if (i > 0) words += ", ";
        words += group[i].kind == StitchKind::chain ? chains(end - i, terms) : stitch_name(group[i], terms);
        i = end;
    }
    return words;
}

/// Words of one thing worked, `count` times on end; `whole` when it goes all the way round.
class GroupWords {
  public:
    GroupWords(const Stitches& group, Terms terms) : group_(group), head_(group.front()), terms_(terms) {}

    std::string run(int count) const {
        if (head_.kind == StitchKind::chain) return chains(static_cast<std::size_t>(count), terms_);
        if (head_.kind == StitchKind::skip) return skipped(count);
        if (head_.same_foot) return in_same(count);
        if (is_increase()) return repeated(part_prefix(head_.part) + "inc", count);
        if (group_.size() > 1) return shell() + " in " + next(count, true);
        if (head_.feet > 1) return repeated(stitch_name(head_, terms_), count);
        return plain(count);
    }

    std::string around(std::string_view loop, const std::string& way) const {
        if (is_increase()) return part_prefix(head_.part) + "inc" + way;
        if (group_.size() == 1 && head_.feet > 1) return stitch_name(head_, terms_) + way;
        return (group_.size() > 1 ? shell() : stitch_name(head_, terms_)) + " in each " + std::string(loop) +
               way;
    }

    bool can_go_around() const {
        return head_.kind != StitchKind::chain && head_.kind != StitchKind::skip && !head_.same_foot;
    }

  private:
    bool is_increase() const {
        return group_.size() == 2 && head_.kind == StitchKind::single_crochet && all_alike(group_);
    }

    std::string shell() const {
        if (all_alike(group_)) return std::to_string(group_.size()) + " " + stitch_name(head_, terms_);
        return "(" + shell_members(group_, terms_) + ")";
    }

    // In a list, "sc, inc x 2" could mean the inc alone or both; brackets leave one reading.
    static std::string repeated(const std::string& one, int count) {
        if (count == 1) return one;
        return count == 2 ? one + ", " + one : "[" + one + "] x " + std::to_string(count);
    }

    static std::string next(int count, bool each) {
        if (count == 1) return "next st";
        return std::string(each ? "each of " : "") + "next " + std::to_string(count) + " sts";
    }

    std::string skipped(int count) const { return name(StitchKind::skip, terms_) + " " + next(count, false); }

    std::string in_same(int count) const {
        const std::string one =
            stitch_name(head_, terms_) + (head_.feet > 1 ? " in same st and next st" : " in same st");
        std::string words = one;
        for (int i = 1; i < count; ++i) words += ", " + one;
        return words;
    }

    std::string plain(int count) const {
        const std::string words = stitch_name(head_, terms_);
        if (count == 1) return words;
        const bool by_number = head_.kind != StitchKind::slip_stitch && head_.kind != StitchKind::bobble;
        return words + (by_number ? " " + std::to_string(count) : " in " + next(count, false));
    }

    const Stitches& group_;
    const Stitch& head_;
    Terms terms_;
};

/// The different things worked in a round, numbered, and the order they come in.
struct RoundItems {
    std::vector<Stitches> groups;
    std::vector<int> order;
    bool one_yarn = true;
};

struct GroupOrder {
    static auto key(const Stitch& s) {
        return std::tuple(s.kind, s.part, s.feet, s.same_foot, s.invisible, s.yarn);
    }
    bool operator()(const Stitches& a, const Stitches& b) const {
        return std::lexicographical_compare(a.begin(), a.end(), b.begin(), b.end(),
                                            [](const Stitch& x, const Stitch& y) { return key(x) < key(y); });
    }
};

std::string ordinal(int number) {
    const int tens = number % 100 / 10;
    const int ones = tens == 1 ? 0 : number % 10;
    return std::to_string(number) + (ones == 1 ? "st" : ones == 2 ? "nd" : ones == 3 ? "rd" : "th");
}

constexpr int any_yarn = -2;

bool has_part(const Stitch& stitch) {
    return stitch.kind != StitchKind::chain && stitch.kind != StitchKind::skip;
}

int yarn_of(const Stitches& group) {
    return group[0].kind == StitchKind::skip ? any_yarn : static_cast<int>(group[0].yarn);
}

// The loop that every stitch of the round is worked into; `both` when they differ.
LoopPart shared_part(const GraphRound& round) {
    std::optional<LoopPart> part;
    for (const GraphStitch& made : round.stitches) {
        if (!has_part(made.stitch)) continue;
        if (part && *part != made.stitch.part) return LoopPart::both;
        part = made.stitch.part;
    }
    return part.value_or(LoopPart::both);
}

GraphRound without_parts(GraphRound round) {
    for (GraphStitch& made : round.stitches) made.stitch.part = LoopPart::both;
    return round;
}

bool all_one_yarn(const std::vector<Stitches>& groups) {
    int yarn = any_yarn;
    for (const Stitches& group : groups) {
        if (yarn_of(group) == any_yarn) continue;
        if (yarn != any_yarn && yarn != yarn_of(group)) return false;
        yarn = yarn_of(group);
    }
    return true;
}

RoundItems items_of(const GraphRound& round) {
    RoundItems items;
    std::map<Stitches, int, GroupOrder> number_of;
    const std::span<const GraphStitch> made(round.stitches);
    for (std::size_t first = 0; first < made.size();) {
        const std::size_t length = group_length(made, first);
        Stitches group;
        for (std::size_t i = first; i < first + length; ++i) group.push_back(made[i].stitch);
        const auto [place, fresh] = number_of.try_emplace(group, static_cast<int>(items.groups.size()));
        if (fresh) items.groups.push_back(group);
        items.order.push_back(place->second);
        first += length;
    }
    items.one_yarn = all_one_yarn(items.groups);
    return items;
}

class RoundWriter {
  public:
    RoundWriter(const GraphRound& round, Terms terms, Joining joining)
        : round_(round), items_(items_of(round)), terms_(terms), rows_(joining == Joining::rows) {}

    std::string in_ring(std::string_view ring) const {
        if (items_.groups.size() == 1 && items_.one_yarn)
            return std::to_string(items_.order.size()) + " " + stitch_name(items_.groups[0][0], terms_) +
                   " in " + std::string(ring);
        return "in " + std::string(ring) + ": " + folded();
    }

    std::string over_loops(std::string_view loop) const {
        if (is_partial()) return start_place() + explicit_words() + ", leave rem sts unworked";
        const bool whole = loops_taken_by_all() == round_.loops_below;
        if (whole && items_.groups.size() == 1 && GroupWords(items_.groups[0], terms_).can_go_around())
            return GroupWords(items_.groups[0], terms_).around(loop, rows_ ? " across" : " around");
        return explicit_words();
    }

  private:
    int loops_taken_by_all() const {
        int taken = 0;
        for (const GraphStitch& made : round_.stitches) taken += loops_taken(made.stitch);
        return taken;
    }

    std::string folded() const {
        std::vector<int> width;
        for (const Stitches& group : items_.groups)
            width.push_back(static_cast<int>(GroupWords(group, terms_).run(1).size()) +
                            (items_.one_yarn ? 0 : 4));
        int yarn = any_yarn;
        return words_of(fold_repeats(items_.order, width), yarn);
    }

    bool is_partial() const {
        int own = 0;
        for (const GraphStitch& made : round_.stitches) own += loops_left(made.stitch);
        return round_.first_below > 0 || round_.loops_left > own;
    }

    std::string start_place() const {
        if (round_.first_below == 0) return "";
        return "starting in " + ordinal(round_.first_below + 1) + " st, ";
    }

    std::string explicit_words() const {
        return shared_part(round_) == LoopPart::both ? folded() : folded_in_part();
    }

    std::string folded_in_part() const {
        const GraphRound plain = without_parts(round_);
        return std::string(shared_part(round_) == LoopPart::front ? "in FLO: " : "in BLO: ") +
               RoundWriter(plain, terms_, Joining::spiral).folded();
    }

    std::string words_of(const std::vector<Fold>& folds, int& yarn) const {
        std::string words;
        for (const Fold& fold : folds) {
            if (!words.empty()) words += ", ";
            words += fold.item < 0 ? repeat(fold, yarn) : run(fold, yarn);
        }
        return words;
    }

    std::string run(const Fold& fold, int& yarn) const {
        const Stitches& group = items_.groups[fold.item];
        return with_yarn(yarn_of(group), yarn) + GroupWords(group, terms_).run(fold.count);
    }

    // A body that changes yarn says so at its own start, so that it reads the same every time round.
    std::string repeat(const Fold& fold, int& yarn) const {
        const int only = only_yarn(fold);
        const std::string before = only == several_yarns ? "" : with_yarn(only, yarn);
        if (only == several_yarns) yarn = any_yarn;
        return before + "[" + words_of(fold.body, yarn) + "] x " + std::to_string(fold.count);
    }

    static constexpr int several_yarns = -1;

    int only_yarn(const Fold& fold) const {
        if (fold.item >= 0) return yarn_of(items_.groups[fold.item]);
        int only = any_yarn;
        for (const Fold& part : fold.body) {
            const int yarn = only_yarn(part);
            if (yarn == any_yarn || yarn == only) continue;
            if (only != any_yarn || yarn == several_yarns) return several_yarns;
            only = yarn;
        }
        return only;
    }

    std::string with_yarn(int wanted, int& yarn) const {
        if (items_.one_yarn || wanted == yarn || wanted == any_yarn) return "";
        yarn = wanted;
        return "with " + yarn_letter(wanted) + ", ";
    }

    const GraphRound& round_;
    RoundItems items_;
    Terms terms_;
    bool rows_;
};

}  // namespace

std::string yarn_letter(int yarn) {
    if (yarn < 26) return std::string(1, static_cast<char>('A' + yarn));
    return "yarn " + std::to_string(yarn + 1);
}

std::string round_words(const GraphRound& round, bool first, Terms terms, const Piece& piece) {
    if (!is_english(terms)) return said_in(round_words(round, first, Terms::us, piece), terms);
    if (round.stitches.empty()) return "";
    const RoundWriter writer(round, terms, piece.joining);
    if (round.loops_below == 0 && round.first_below == 0)
        return writer.in_ring(std::holds_alternative<ChainRing>(piece.start) ? "ring" : "magic ring");
    const bool on_chain =
        std::holds_alternative<OpenTube>(piece.start) || std::holds_alternative<OvalChain>(piece.start);
    return writer.over_loops(first && on_chain ? "ch" : "st");
}

std::string round_words(const StitchGraph& graph, int round, Terms terms, const Piece& piece) {
    return round_words(graph.rounds.at(static_cast<std::size_t>(round)), round == 0, terms, piece);
}

std::string round_words(const StitchGraph& graph, int round, Terms terms, const Start& start) {
    Piece piece;
    piece.start = start;
    return round_words(graph, round, terms, piece);
}

std::string start_words(const Piece& piece, Terms terms) {
    if (!is_english(terms)) return said_in(start_words(piece, Terms::us), terms);
    const std::string ch = name(StitchKind::chain, terms);
    const std::string Ch = "C" + ch.substr(1);
    const std::string sl = name(StitchKind::slip_stitch, terms);
    if (const auto* ring = std::get_if<ChainRing>(&piece.start))
        return Ch + " " + std::to_string(ring->chains) + ", " + sl + " in first " + ch + " to form a ring.";
    if (const auto* oval = std::get_if<OvalChain>(&piece.start))
        return Ch + " " + std::to_string(oval->chains + 1) + ". Start in 2nd " + ch +
               " from hook and work around both sides of the " + ch + ".";
    if (const auto* on = std::get_if<WorkedOn>(&piece.start)) return worked_on_words(*on, "", false);
    const auto* tube = std::get_if<OpenTube>(&piece.start);
    if (tube == nullptr) return "";
    if (piece.joining == Joining::rows)
        return Ch + " " + std::to_string(tube->chains + 1) + ". Start in 2nd " + ch + " from hook.";
    return Ch + " " + std::to_string(tube->chains) + ", " + sl + " in first " + ch + " to join.";
}

}  // namespace roundwright
