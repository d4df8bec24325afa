#include "core/language/round/remark_parser.h"

#include <algorithm>
#include <array>

namespace roundwright {
namespace {

constexpr auto finishes =
    std::to_array<std::string_view>({"fasten off", "fo", "finish off", "cut yarn", "break yarn",
                                     "cut the yarn", "end off", "bind off", "break off", "fasten"});
constexpr auto joins =
    std::to_array<std::string_view>({"join", "joining", "joined", "close rnd", "close round"});
constexpr auto markers = std::to_array<std::string_view>(
    {"pm", "place marker", "place a marker", "place stitch marker", "place a stitch marker", "move marker",
     "sm", "move the marker", "mark", "place st marker", "place a st marker", "stitch marker", "st marker",
     "slip marker"});
constexpr auto manners = std::to_array<std::string_view>(
    {"skipping the picots", "skipping picots", "skip the picots", "skip picots", "ignoring the picots",
     "ignore the picots", "behind the picots", "working left to right", "working from left to right",
     "from left to right"});
constexpr auto turns =
    std::to_array<std::string_view>({"turn", "and turn", "turn work", "turning", "turn the work"});
constexpr auto denials = std::to_array<std::string_view>({"do not", "don't", "dont", "without", "never"});
constexpr auto starts = std::to_array<std::string_view>({"starting", "start", "begin", "beginning", "beg"});
constexpr auto sides = std::to_array<std::string_view>(
    {"other side", "opposite side", "both sides", "second side", "rotate", "underside"});
constexpr auto side_tails =
    std::to_array<std::string_view>({"of", "the", "ch", "chain", "foundation", "chains", "work"});
constexpr auto ring_makers =
    std::to_array<std::string_view>({"make", "form", "create", "work", "a", "an", "with", "the"});

bool is_chain(const Work& work) { return work.members[0].stitch.kind == StitchKind::chain; }

}  // namespace

void RemarkParser::note(std::size_t from, std::size_t to) {
    says_work_ = false;
    syntax_.notes.push_back(said(std::span(tokens_).subspan(from, to - from)));
}

// --- joins, turns, markers, fastening off

bool RemarkParser::try_remark(NodeList& list) {
    const std::size_t start = at_;
    if (accept_any(finishes)) return finish(start);
    if (accept_any(markers) || says_manner()) return remark(start);
    if (is_joining_slip_stitch(list) || accept_any(joins)) return join(list, start);
    if (accept_any(turns)) return turn(list);
    if (try_picot() || try_spelled_picot(list)) return true;
    if (accept_any(denials)) return remark(start);
    if (is("leave") || is("leaving")) return leave(start);
    return try_start() || (is("for") && try_for_rounds()) || try_side();
}

// How a stitch is worked, which the graph does not hold.
bool RemarkParser::says_manner() {
    const bool begins = is("skipping") || is("skip") || is("ignoring") || is("ignore") || is("behind") ||
                        is("working") || is("from");
    return begins && accept_any(manners);
}

// A remark goes on to the end of its sentence, or of its clause, but not over a count or a closing bracket.
std::size_t RemarkParser::clause_end(bool at_comma) const {
    std::size_t end = at_;
    for (; end < tokens_.size(); ++end) {
        const Token& token = tokens_[end];
        if (token.is(".") || token.is(";") || (at_comma && token.is(",")) || is_closer(token)) break;
        if (line_of_work_begins(end)) break;
        if (is_opener(token) && end + 1 < tokens_.size() && tokens_[end + 1].kind == TokenKind::number) break;
    }
    return end;
}

// A remark without a full stop ends where a line of stitches begins, as long as no count has been said.
bool RemarkParser::line_of_work_begins(std::size_t at) const {
    if (at == 0 || !syntax_.stated.empty() || tokens_[at].where.line == tokens_[at - 1].where.line)
        return false;
    const std::size_t ahead = at - at_;
    return is_opener(tokens_[at]) || tokens_[at].is("*") || starts_item(ahead);
}

// "picot", "ch-3 picot": chains closed into the stitch they stand on; no loop is taken and none is left.
bool RemarkParser::try_picot() {
    std::size_t ahead = 0;
    if (is_number() && (is("ch", 1) || is("chain", 1))) ahead = 2;
    if (ahead == 0 && (is("ch") || is("chain"))) ahead = is("-", 1) ? 2 : 1;
    if (ahead > 0 && is_number(ahead)) ++ahead;
    if (ahead > 0 && is("-", ahead)) ++ahead;
    if (!is("picot", ahead) && !is("picots", ahead)) return false;
    const std::size_t start = at_;
    at_ += ahead + 1;
    accept_noun();
    note(start, at_);
    says_work_ = true;
    return true;
}

// "ch 3, sl st in third ch from hook", "ch 3, sl st in the base of the ch" behind a stitch: a picot spelled
// out. "In same st" may as well be a stitch of its own, and is read as one.
bool RemarkParser::try_spelled_picot(const NodeList& list) {
    const Work* before = list.nodes.empty() ? nullptr : std::get_if<Work>(&list.nodes.back().what);
    if (before == nullptr || is_chain(*before)) return false;
    const std::size_t length = closed_chain_ahead();
    if (length == 0) return false;
    const std::size_t start = at_;
    at_ += length;
    accept_loop_name();
    note(start, at_);
    says_work_ = true;
    return true;
}

/// Words of a few chains and the slip stitch into one of them; 0 where something else stands.
std::size_t RemarkParser::closed_chain_ahead() const {
    constexpr int most_chains = 6;
    const auto is_any = [this](std::size_t at, std::initializer_list<std::string_view> words) {
        return std::ranges::any_of(words, [&](std::string_view word) { return is(word, at); });
    };
    const bool lead = is_number() && is_any(1, {"ch", "chain"});
    if (!lead && !(is_any(0, {"ch", "chain"}) && (is_number(1) || (is("-", 1) && is_number(2))))) return 0;
    std::size_t ahead = lead ? 2 : is("-", 1) ? 3 : 2;
    const int chains = peek(lead ? 0 : ahead - 1)->number;
    while (is_any(ahead, {",", "and", "then"})) ++ahead;
    const auto slip = name_ahead(ahead);
    const bool closes = slip && slip->what == NameKind::stitch && slip->stitch == StitchKind::slip_stitch;
    if (chains < 2 || chains > most_chains || !closes) return 0;
    ahead += static_cast<std::size_t>(slip->length);
    if (!is_any(ahead++, {"in", "into", "to"})) return 0;
    while (is("the", ahead)) ++ahead;
    const bool of_chain = is_kind(TokenKind::ordinal, ahead) && is_any(ahead + 1, {"ch", "chain"});
    if (!of_chain && !is_any(ahead, {"base", "top"})) return 0;
    ++ahead;
    while (is_any(ahead, {"ch", "chain", "from", "hook", "the", "of", "your", "made"})) ++ahead;
    return ahead;
}

bool RemarkParser::remark(std::size_t start) {
    at_ = clause_end(true);
    note(start, at_);
    return true;
}

bool RemarkParser::finish(std::size_t start) {
    syntax_.finished = true;
    at_ = clause_end(false);
    note(start, at_);
    return true;
}

// A chain just before the turn only lifts the hook to the next row.
bool RemarkParser::turn(NodeList& list) {
    syntax_.turned = true;
    if (list.nodes.size() < 2) return true;
    const Work* last = std::get_if<Work>(&list.nodes.back().what);
    if (last != nullptr && is_chain(*last)) list.nodes.pop_back();
    return true;
}

// "sl st in first st", "sl st to join", "sl st to form a ring"; "first 3 sts" are worked.
bool RemarkParser::is_joining_slip_stitch(const NodeList& list) {
    const auto name = name_ahead();
    if (!name || name->what != NameKind::stitch || name->stitch != StitchKind::slip_stitch ||
        list.nodes.empty())
        return false;
    const std::size_t from = at_ + static_cast<std::size_t>(name->length);
    constexpr std::size_t longest = 9;
    for (std::size_t i = from; i < std::min(tokens_.size(), from + longest); ++i) {
        const Token& token = tokens_[i];
        if (token.kind == TokenKind::mark && !token.is("-")) break;
        const bool first =
            token.is("first") && (i + 1 >= tokens_.size() || tokens_[i + 1].kind != TokenKind::number);
        if (!first && !token.is("top") && !token.is("join") && !token.is("form") && !token.is("beginning") &&
            !token.is("beg"))
            continue;
        use_name(*name);
        at_ = from;
        return true;
    }
    return false;
}

bool RemarkParser::join(NodeList& list, std::size_t start) {
    std::size_t end = clause_end(true);
    for (std::size_t i = start; i + 1 < end; ++i)
        if (tokens_[i].is("and") &&
            has_any_word(std::span(tokens_).subspan(i + 1, 1), {"turn", "fasten", "ch", "cut"}))
            end = i;
    const auto words = std::span(tokens_).subspan(start, end - start);
    at_ = std::max(end, at_);
    if (!take_foundation(list)) {
        syntax_.joined = true;
    } else {
        syntax_.foundation_joined = true;
        if (has_any_word(words, {"ring", "circle", "form"})) syntax_.ring = RingKind::chain;
    }
    return true;
}

bool RemarkParser::take_foundation(NodeList& list) {
    if (list.nodes.size() != 1) return false;
    const Work* work = std::get_if<Work>(&list.nodes[0].what);
    if (work == nullptr || !is_chain(*work) || work->extent.kind != Extent::Kind::times) return false;
    syntax_.foundation = work->extent.number;
    list.nodes.clear();
    worked_ = false;
    return true;
}

bool RemarkParser::leave(std::size_t start) {
    ++at_;
    at_ = clause_end(true);
    if (has_any_word(std::span(tokens_).subspan(start, at_ - start), {"unworked", "unstitched"}))
        syntax_.unworked = true;
    else
        note(start, at_);
    return true;
}

// "starting in 2nd ch from hook", "starting in 5th st", "start with a magic ring"
bool RemarkParser::try_start() {
    const std::size_t start = at_;
    if (!accept_any(starts)) return false;
    accept("in") || accept("at") || accept("with") || accept("from") || accept("by");
    accept("the") || accept("making") || accept("a") || accept("working");
    Where where;
    if (parse_ring(where, false)) return true;
    if (is_kind(TokenKind::ordinal)) {
        const int number = peek()->number;
        if (parse_ordinal(where) && where.place == Where::Place::from_hook) return true;
        if (is_kind(TokenKind::ordinal)) ++at_;
        if (where.place == Where::Place::next || accept_noun()) {
            syntax_.starts_at = number - 1;
            return true;
        }
    }
    // "start with 6 sc"
    if (starts_item()) return true;
    at_ = start;
    return false;
}

// "working along the other side of the chain"
bool RemarkParser::try_side() {
    std::size_t ahead = 0;
    constexpr std::size_t furthest = 5;
    while (ahead < furthest && is_kind(TokenKind::word, ahead) && match_any(rest(ahead), sides) == 0 &&
           !name_ahead(ahead))
        ++ahead;
    const int length = match_any(rest(ahead), sides);
    if (length == 0) return false;
    at_ += ahead + static_cast<std::size_t>(length);
    while (accept_one_of(side_tails)) {
    }
    syntax_.other_side = true;
    return true;
}

bool RemarkParser::take_round_number() {
    const bool more = is("more", 1);
    if (!is_number() || !is_round_word_at(more ? 2 : 1)) return false;
    syntax_.rounds = std::max(peek()->number, 1);
    at_ += more ? 3 : 2;
    return true;
}

bool RemarkParser::try_for_rounds() {
    const std::size_t start = at_;
    accept("for");
    while (accept("the") || accept("next") || accept("another") || accept("a") || accept("total") ||
           accept("of")) {
    }
    if (take_round_number()) return true;
    at_ = start;
    return false;
}

bool RemarkParser::try_ring() {
    const std::size_t start = at_;
    while (accept_one_of(ring_makers)) {
    }
    Where where;
    if (!parse_ring(where, false)) {
        at_ = start;
        return false;
    }
    accept("of") || accept("with");
    return true;
}

// --- brackets in which nothing is worked

bool RemarkParser::try_aside(NodeList& list) {
    constexpr std::size_t longest = 40;
    std::size_t end = at_ + 1;
    while (end < tokens_.size() && end < at_ + longest && !is_closer(tokens_[end]) &&
           !is_opener(tokens_[end]))
        ++end;
    if (end >= tokens_.size() || !is_closer(tokens_[end])) return false;
    const auto inside = std::span(tokens_).subspan(at_ + 1, end - at_ - 1);
    if (has_any_word(inside, {"count", "counts", "counted"})) return chain_remark(list, inside, end);
    if (inside.size() == 1 && yarn_of(inside[0], false) >= 0) {
        add_yarn(list, yarn_of(inside[0], false));
        at_ = end + 1;
        return true;
    }
    if (try_part_aside(list, inside.size(), end) || try_rounds_aside(inside, end)) return true;
    for (std::size_t i = 0; i < inside.size(); ++i)
        if (match_name(inside.subspan(i), options_.terms)) return false;
    const bool numbers =
        std::any_of(inside.begin(), inside.end(), [](const Token& t) { return t.kind == TokenKind::number; });
    const bool remarks =
        std::any_of(inside.begin(), inside.end(), [](const Token& t) { return is_note_word(t.text); });
    const Token* next = end + 1 < tokens_.size() ? &tokens_[end + 1] : nullptr;
    const bool repeated =
        next != nullptr && (next->is("x") || next->kind == TokenKind::number || next->is("*"));
    if (has_any_word(inside, {"*", "even", "times", "x", "twice"}) || (numbers && !remarks)) return false;
    if (!remarks && (repeated || has_any_word(inside, {","}))) return false;
    if (!inside.empty()) note(at_ + 1, end);
    at_ = end + 1;
    return true;
}

// "12 sc (3 rounds)", "12 sc (round 3)"
bool RemarkParser::try_rounds_aside(std::span<const Token> inside, std::size_t end) {
    if (inside.size() != 2) return false;
    const bool number_first = inside[0].kind == TokenKind::number && is_round_word(inside[1].text);
    const bool round_first = is_round_word(inside[0].text) && inside[1].kind == TokenKind::number;
    if (!number_first && !round_first) return false;
    if (number_first) syntax_.rounds = std::max(inside[0].number, 1);
    if (round_first) note(at_ + 1, end);
    at_ = end + 1;
    return true;
}

// "(BLO) sc around", "sc around (in back loops only)"
bool RemarkParser::try_part_aside(NodeList& list, std::size_t length, std::size_t end) {
    constexpr std::size_t longest = 5;
    if (length == 0 || length > longest) return false;
    const std::size_t start = at_++;
    accept("in") || accept("through") || accept("into");
    accept("the");
    Where where;
    if (!parse_part(where) || at_ != end) return back_to(start);
    Node node;
    node.what = PartChange{*where.part};
    const bool trails = !list.nodes.empty();
    list.nodes.insert(trails ? list.nodes.begin() : list.nodes.end(), std::move(node));
    at_ = end + 1;
    return true;
}

// "ch 3 (counts as dc)" is a double crochet; "ch 1 (does not count)" is none at all.
bool RemarkParser::chain_remark(NodeList& list, std::span<const Token> inside, std::size_t end) {
    Work* chain = list.nodes.empty() ? nullptr : std::get_if<Work>(&list.nodes.back().what);
    if (chain != nullptr && is_chain(*chain)) {
        if (has_any_word(inside, {"not", "doesn't", "doesnt", "never"})) {
            list.nodes.pop_back();
        } else {
            std::optional<Name> name;
            for (std::size_t i = 0; i < inside.size() && !name; ++i)
                name = match_name(inside.subspan(i), options_.terms);
            chain->members[0].stitch.kind = name ? name->stitch : StitchKind::single_crochet;
            chain->members[0].stitch.feet = 1;
            chain->members[0].own_part = false;
            chain->extent.number = 1;
        }
    }
    note(at_ + 1, end);
    at_ = end + 1;
    return true;
}

// --- the rest

void RemarkParser::note_from(std::size_t start) {
    at_ = std::max(at_, start + 1);
    while (!done() && !is(".") && !is(";") && !line_of_work_begins(at_)) {
        const bool count = is_opener(*peek()) && is_number(1);
        if (count || (is(",") && (starts_item(1) || (peek(1) != nullptr && is_opener(*peek(1)))))) break;
        ++at_;
    }
    note(start, at_);
}

// Whether a word of remarks stands in the rest of the clause. Phrases of one clause ask for the same words,
// so where none stands is remembered.
bool RemarkParser::note_word_ahead() {
    constexpr std::size_t furthest = 200;
    const std::size_t end = std::min(tokens_.size(), at_ + furthest);
    const bool asked = no_note_word_.first <= at_ && at_ <= no_note_word_.end;
    if (!asked) no_note_word_ = {at_, at_};
    for (std::size_t& i = no_note_word_.end; i < end; ++i) {
        if (tokens_[i].is(".") || tokens_[i].is(";") || tokens_[i].is(",")) break;
        if (is_note_word(tokens_[i].text)) return true;
    }
    return false;
}

void RemarkParser::unknown_phrase(bool is_note) {
    const std::size_t start = at_;
    if (is_note || note_word_ahead()) return note_from(start);
    do ++at_;
    while (is_kind(TokenKind::word) && !name_ahead() && !is_plain_word(peek()->text));
    report(ReadCode::unknown_words, span(start, at_), {said_from(start)});
    if (is_number() && !starts_item()) ++at_;
}

}  // namespace roundwright
