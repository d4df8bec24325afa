#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "core/base/text_span.h"
#include "core/language/round/read_diagnostic.h"
#include "core/language/words/lexer.h"
#include "core/language/words/terms.h"
#include "core/stitches/stitch.h"

namespace roundwright {

/// How often something is worked.
struct Extent {
    enum class Kind : std::uint8_t { times, around, to_last };
    Kind kind = Kind::times;
    bool stated = false;  ///< the words say it; a bracket without a number is worked once
    int number = 1;       ///< times; loops left alone by `to_last`
};

/// A stitch of a unit. `own_part`: the words say which loop it is worked into, so "in BLO:" before does not
/// matter.
struct Member {
    Stitch stitch;
    bool own_part = false;
};

/// Stitches worked in one place, some number of times: "sc 4", "inc", "(sc, hdc, sc) in next st", "sk 2".
struct Work {
    std::vector<Member> members;
    bool in_same = false;  ///< the first member shares the foot of the stitch before
    bool in_last = false;  ///< "in last ch": at the end of an oval, both sides of the chain
    Extent extent;
    TextSpan where;
};

struct Node;
struct Group {
    std::vector<Node> body;
    Extent extent;
    TextSpan where;   ///< the bracket or star that opens it
    TextSpan closed;  ///< what closes it; length 0 when nothing does
};
struct YarnChange {
    int yarn = 0;
};
struct PartChange {
    LoopPart part = LoopPart::both;
};

/// One instruction. Where honest hands mean different things by the same words, `choice` numbers the question
/// and the other answer is kept: the one that proves is taken, the first one if both do.
struct Node {
    std::variant<Work, Group, YarnChange, PartChange> what;
    int choice = -1;
    std::optional<Work> other_work;
    int other_times = 0;
};

struct StatedCount {
    int count = 0;
    TextSpan where;
};

/// A name of a stitch as it stands in the words: tokens [first, first + length).
struct NameUse {
    std::size_t first = 0;
    std::size_t length = 1;
    StitchKind kind = StitchKind::single_crochet;
};

enum class RingKind : std::uint8_t { magic, chain };

/// Words of one round, taken apart but not yet worked.
struct RoundSyntax {
    std::vector<Node> nodes;
    int choices = 0;  ///< questions asked by nodes
    std::optional<RingKind> ring;
    bool into_ring = false;  ///< "in ring", "in MR": a ring is named as the place to work in
    int foundation = 0;      ///< chains of a foundation made in these words; 0: none
    bool foundation_joined = false;
    int from_hook = 0;        ///< the foundation is worked from this chain on, counted from the hook
    bool other_side = false;  ///< worked on along the other side of the foundation
    bool joined = false;      ///< closed with a slip stitch
    bool turned = false;
    bool finished = false;             ///< "fasten off"
    bool unworked = false;             ///< the rest of the round is left unworked
    int starts_at = 0;                 ///< loops passed over before the first stitch, left on the edge
    int rounds = 1;                    ///< "for 5 rounds"
    int repeats_from = 0;              ///< "rep rnds 3-4": 3; -1: the round before
    int repeats_to = 0;                ///< 4
    int repeats_until = 0;             ///< "rep rnds 3-4 up to rnd 10": 10
    int repeat_times = 0;              ///< "rep the last two rnds 3 times": 3
    int grows_on = 0;                  ///< "continue increasing like this": 1; decreasing: -1
    int evenly_to = 0;                 ///< "inc to 18": so many stitches, spaced evenly
    int evenly_more = 0;               ///< "inc 6 evenly", "dec 3 evenly": so many more or (below 0) fewer
    bool around_may_be_all = false;    ///< "sc 1, inc around": both, or the last alone
    bool may_be_bare_numbers = false;  ///< "3, inc, 4": numbers that stand alone may be stitches
    bool same_may_be_next = false;     ///< "2 sc in same st around"
    bool may_be_around = false;        ///< "inc (12)": one stitch that is not said to be worked around
    std::optional<StatedCount> last_number;  ///< ", 12" at the end may be a count
    std::vector<StatedCount> stated;
    std::vector<std::string> notes;
    std::vector<NameUse> names;
    std::size_t body_end = 0;  ///< tokens that say what is worked; after them come count and notes
    std::vector<ReadDiagnostic> diagnostics;
    bool open = false;  ///< ends in the middle of something
};

struct YarnTable {
    std::vector<std::string> names;  ///< by index; empty: the toy has a yarn there that was never named
    bool first_is_free = false;      ///< nothing is worked yet: the first yarn named is the first yarn
};

struct ParseOptions {
    Terms terms = Terms::us;
    bool into_ring = false;                        ///< there is no round below yet
    StitchKind even = StitchKind::single_crochet;  ///< what "work even" works
    // Readings in another hand, tried where the plain one does not come out:
    bool around_is_all = false;
    bool numbers_are_stitches = false;
    bool same_is_next = false;
    bool alone_is_around = false;
};

/// Takes the words of one round apart. Never throws; what cannot be understood is named in `diagnostics` and
/// passed over. New yarn names are added to `yarns`.
[[nodiscard]] RoundSyntax parse_round(const std::vector<Token>& tokens, const ParseOptions& options,
                                      YarnTable& yarns);

}  // namespace roundwright
