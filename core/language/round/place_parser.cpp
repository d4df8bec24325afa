#include "core/language/round/place_parser.h"

#include <algorithm>
#include <array>

namespace roundwright {
namespace {

constexpr auto around_phrases = std::to_array<std::string_view>({"around",
                                                                 "all around",
                                                                 "all the way around",
                                                                 "all the way",
                                                                 "around and around",
                                                                 "across",
                                                                 "all across",
                                                                 "even",
                                                                 "evenly",
                                                                 "evenly around",
                                                                 "even around",
                                                                 "to end",
                                                                 "to the end",
                                                                 "until end",
                                                                 "until the end",
                                                                 "till end",
                                                                 "till the end",
                                                                 "til end",
                                                                 "til the end",
                                                                 "to the end of",
                                                                 "to marker",
                                                                 "to the marker",
                                                                 "until marker",
                                                                 "rest of rnd",
                                                                 "rest of round",
                                                                 "rest of the round",
                                                                 "rest of the rnd",
                                                                 "all round",
                                                                 "the rest of the round",
                                                                 "round"});
constexpr auto around_tails = std::to_array<std::string_view>(
    {"of rnd", "of round", "of the rnd", "of the round", "of row", "of the row", "of this round", "rnd",
     "round", "the round", "the rnd", "row", "the row", "of ch", "of chain", "of the chain", "the circle",
     "entire round", "the entire round"});
constexpr auto ring_names = std::to_array<std::string_view>(
    {"magic ring", "magic circle", "magic loop", "mr", "adjustable ring", "adjustable loop",
     "adjustable circle", "sliding ring", "sliding loop", "slip ring"});
constexpr auto chain_ring_names =
    std::to_array<std::string_view>({"ring", "circle", "center of ring", "centre of ring",
                                     "center of the ring", "centre of the ring", "chain ring", "ch ring"});
constexpr auto back_names = std::to_array<std::string_view>(
    {"blo", "bl", "blos", "tbl", "through back loop", "through the back loop", "back loop", "back loops",
     "back lp", "back lps", "back loop only", "back loops only", "bl only", "back lp only", "back lps only",
     "blo only"});
constexpr auto front_names = std::to_array<std::string_view>(
    {"flo", "fl", "flos", "tfl", "through front loop", "through the front loop", "front loop", "front loops",
     "front lp", "front lps", "front loop only", "front loops only", "fl only", "front lp only",
     "front lps only", "flo only"});
constexpr auto both_names = std::to_array<std::string_view>({"both loops", "both lps", "both loops again"});
// What lies behind the loops of a chain is worked into like the chain itself.
constexpr auto bumps = std::to_array<std::string_view>(
    {"back bump of", "back bumps of", "back bump", "back bumps", "back ridge of", "back ridges of",
     "back ridge", "back hump of", "back humps of", "back hump", "bump of", "bumps of", "bottom bump of",
     "bottom bumps of"});
constexpr auto prepositions =
    std::to_array<std::string_view>({"in", "into", "on", "onto", "over", "through", "thru", "using", "inside",
                                     "to", "along", "under", "for", "at", "within", "from"});
constexpr auto from_hook_phrases = std::to_array<std::string_view>(
    {"ch from hook", "chain from hook", "ch from the hook", "chain from the hook", "st from hook",
     "stitch from hook", "st from the hook", "chain from your hook", "ch from your hook", "from hook",
     "from the hook"});

}  // namespace

Extent Where::extent() const {
    if (to_last >= 0) return {Extent::Kind::to_last, true, to_last};
    if (around || place == Place::each) return {Extent::Kind::around, true, 0};
    return {Extent::Kind::times, is_over_next(), is_over_next() ? loops : 1};
}

Where merged(const Where& where, const Where& more) {
    Where both = where;
    if (more.place != Where::Place::none) {
        both = more;
        both.around = where.around || more.around;
        both.to_last = std::max(where.to_last, more.to_last);
    } else {
        both.around = where.around || more.around;
        both.to_last = std::max(where.to_last, more.to_last);
    }
    both.part = more.part ? more.part : where.part;
    return both;
}

Where PlaceParser::parse_where() {
    Where where;
    while (!done() && parse_where_once(where)) {
    }
    return where;
}

bool PlaceParser::parse_where_once(Where& where) {
    const std::size_t start = at_;
    if (parse_around(where) || parse_part(where)) return true;
    const bool preposition = accept_one_of(prepositions);
    if (skip_articles(where) || parse_around(where) || parse_part(where) || parse_ring(where, preposition) ||
        parse_place(where, preposition))
        return true;
    at_ = start;
    return false;
}

// True when the articles turn out to be "all sts".
bool PlaceParser::skip_articles(Where& where) {
    while (!done()) {
        if (accept("the") || accept("an") || accept("of")) continue;
        if (is("a") && !is_separator(1) && accept("a")) continue;
        if (accept_any(bumps)) continue;
        if (!accept("all")) break;
        if (!accept_loop_name()) continue;
        where.place = Where::Place::each;
        return true;
    }
    return false;
}

bool PlaceParser::accept_around() {
    if (!accept_any(around_phrases)) return false;
    accept_any(around_tails);
    return true;
}

bool PlaceParser::parse_around(Where& where) {
    if (parse_to_last(where)) return true;
    if (!accept_around()) return false;
    where.around = true;
    return true;
}

// "to last 2 sts", "until last st", "to within last 3 sts", "until 2 sts remain"
bool PlaceParser::parse_to_last(Where& where) {
    const std::size_t start = at_;
    if (!(accept("to") || accept("until") || accept("till") || accept("til"))) return false;
    accept("within");
    accept("the");
    const bool last = accept("last") || accept("final");
    int number = last ? 1 : 0;
    if (is_number()) number = tokens_[at_++].number;
    accept_loop_name();
    const bool remain = accept("remain") || accept("remains") || accept("left") || accept("rem");
    if (number > 0 && (last || remain)) {
        where.to_last = number;
        return true;
    }
    at_ = start;
    return false;
}

bool PlaceParser::parse_part(Where& where) {
    static constexpr std::array parts{std::pair(Phrases(back_names), LoopPart::back),
                                      std::pair(Phrases(front_names), LoopPart::front),
                                      std::pair(Phrases(both_names), LoopPart::both)};
    for (const auto& [names, part] : parts) {
        if (!accept_any(names)) continue;
        accept("only");
        where.part = part;
        return true;
    }
    return false;
}

// "mc" is a magic circle only where a ring can be; elsewhere it is the main colour.
bool PlaceParser::parse_ring(Where& where, bool preposition) {
    const bool magic = accept_any(ring_names) || (preposition && options_.into_ring && accept("mc"));
    if (!magic && !(preposition && accept_any(chain_ring_names))) return false;
    where.place = Where::Place::ring;
    syntax_.into_ring = true;
    if (magic || !syntax_.ring) syntax_.ring = magic ? RingKind::magic : RingKind::chain;
    return true;
}

bool PlaceParser::parse_place(Where& where, bool preposition) {
    if (!is_round_word_at(1) && (accept("each") || accept("every") || accept("ea"))) return parse_each(where);
    if (accept("next") || accept("following") || accept("foll") || accept("nxt")) return parse_next(where);
    if (accept("same")) return parse_same(where);
    if (is("st") && is("same", 1) && accept("st") && accept("same")) return parse_same(where);
    if (accept("rem") || accept("remaining") || accept("rest")) return parse_rest(where);
    if (accept("last") || accept("final")) {
        where.last = true;
        return parse_next(where);
    }
    if (is_kind(TokenKind::ordinal)) return parse_ordinal(where);
    return preposition && parse_bare_place(where);
}

// "in 4 sts", "in st", "in 4"
bool PlaceParser::parse_bare_place(Where& where) {
    if (is_number()) return !is_times_next(1) && !is_round_word_at(1) && !is("more", 1) && parse_next(where);
    if (done() || !accept_loop_name()) return false;
    where.place = Where::Place::next;
    return true;
}

bool PlaceParser::parse_each(Where& where) {
    accept("of");
    accept("the");
    const bool next =
        accept("next") || accept("following") || accept("foll") || accept("last") || accept("first");
    accept("rem") || accept("remaining");
    const bool number = is_number() && !is_times_next(1);
    if (number) where.loops = tokens_[at_++].number;
    where.place = next || number ? Where::Place::each_of_next : Where::Place::each;
    accept_loop_name();
    return true;
}

bool PlaceParser::parse_next(Where& where) {
    where.place = Where::Place::next;
    where.loops = 1;
    if (is_number() && !is_times_next(1)) {
        where.number_said = true;
        where.loops = tokens_[at_++].number;
    } else if (is_kind(TokenKind::ordinal) && peek()->number == 1) {  // "in next 1st"
        ++at_;
    }
    accept_loop_name();
    return true;
}

bool PlaceParser::parse_same(Where& where) {
    syntax_.same_may_be_next = true;
    if (options_.same_is_next) {
        where.loops = 1;
        where.place = Where::Place::next;
        accept_loop_name();
        return true;
    }
    where.place = Where::Place::same;
    accept_loop_name();
    const std::size_t before = at_;
    const bool two = (accept("and") || accept("&")) && (accept("the"), accept("next"));
    if (two)
        accept_loop_name();
    else
        at_ = before;
    return true;
}

bool PlaceParser::parse_rest(Where& where) {
    where.place = Where::Place::each;
    if (is_number()) ++at_;
    accept_loop_name();
    return true;
}

// "2nd ch from hook", "first st"; other stitches by number are not understood.
bool PlaceParser::parse_ordinal(Where& where) {
    const std::size_t start = at_;
    const int number = peek()->number;
    ++at_;
    if (accept_any(from_hook_phrases)) {
        where.place = Where::Place::from_hook;
        syntax_.from_hook = number;
        return true;
    }
    if (number == 1) return parse_next(where);
    at_ = start;
    return false;
}

}  // namespace roundwright
