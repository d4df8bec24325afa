#include "core/language/round/repeat_parser.h"

#include <algorithm>
#include <array>
#include <iterator>

namespace roundwright {
namespace {

constexpr auto repeat_words =
    std::to_array<std::string_view>({"rep", "repeat", "reps", "repeats", "repeating", "repeated"});
constexpr auto repeat_objects = std::to_array<std::string_view>(
    {"from",        "between", "the",       "instructions", "pattern", "steps", "sequence", "brackets",
     "parentheses", "bet",     "inside",    "within",       "these",   "this",  "stars",    "asterisks",
     "asterisk",    "star",    "section",   "to",           "in",      "and",   "first",    "beg",
     "last",        "all",     "beginning", "it",           "that"});

constexpr auto going_on = std::to_array<std::string_view>(
    {"continue this way", "continue like this", "continue in this way", "continue in this manner",
     "continue in pattern", "continue in the same way", "continue the same way", "continue so",
     "continue as set", "continue this pattern", "continue the pattern", "keep going", "and so on",
     "go on like this", "go on in this way", "continue as established", "in this manner", "this way"});

bool is_work(const Node& node) {
    return std::holds_alternative<Work>(node.what) || std::holds_alternative<Group>(node.what);
}

}  // namespace

std::size_t first_work(const std::vector<Node>& nodes) {
    const auto found = std::find_if(nodes.begin(), nodes.end(), is_work);
    return found == nodes.end() ? 0 : static_cast<std::size_t>(found - nodes.begin());
}

bool RepeatParser::try_star(NodeList& list) {
    if (!is("*") && !is("**")) return false;
    const Token& star = *peek();
    const auto open = std::find_if(list.stars.rbegin(), list.stars.rend(),
                                   [&](const NodeList::Star& other) { return other.sign == star.text; });
    const bool closes = open != list.stars.rend() && open->from < list.nodes.size();
    ++at_;
    if (!closes) {
        list.stars.push_back({star.text, list.nodes.size(), star.where});
        ++open_stars_;
        return true;
    }
    group_from_star(list, star.text);
    std::get<Group>(list.nodes.back().what).closed = star.where;
    list.closed_star = list.nodes.size() - 1;
    group_tail(list.nodes.back());
    return true;
}

void RepeatParser::group_from_star(NodeList& list, std::string_view sign) {
    std::size_t star = list.stars.size() - 1;
    while (!sign.empty() && star > 0 && list.stars[star].sign != sign) --star;
    const NodeList::Star from = list.stars[star];
    open_stars_ -= static_cast<int>(list.stars.size() - star);
    list.stars.resize(star);
    group_from(list, from.from, from.where);
}

void RepeatParser::group_from(NodeList& list, std::size_t from, TextSpan where) {
    Group group;
    group.where = where;
    const auto first = list.nodes.begin() + static_cast<std::ptrdiff_t>(from);
    group.body.assign(std::make_move_iterator(first), std::make_move_iterator(list.nodes.end()));
    list.nodes.resize(from);
    Node node;
    node.what = std::move(group);
    list.nodes.push_back(std::move(node));
}

void RepeatParser::close_stars(NodeList& list) {
    while (!list.stars.empty()) {
        if (list.stars.back().from < list.nodes.size()) {
            group_from_star(list, "");
        } else {
            list.stars.pop_back();
            --open_stars_;
        }
    }
}

bool RepeatParser::try_repeat(NodeList& list) {
    const std::size_t start = at_;
    if (is("as") || is("like") || is("see") || (is("same") && is("as", 1)))
        return accept("same"), accept("as") || accept("like") || accept("see"),
               as_before() || try_round_reference() || back_to(start);
    if (same_again(list)) return true;
    if (worked_ && accept_any(going_on)) return repeat_group(list, false, start), true;
    if (!accept_one_of(repeat_words)) return false;
    accept(".");
    if (try_round_reference()) return true;
    // "rep (sc, inc) 6 times": the words after the bracket say how often.
    const std::size_t bracket = at_;
    const bool counted = !done() && is_opener(*peek()) && is_bracketed_count();
    at_ = bracket;
    if (!counted && !done() && is_opener(*peek()) && peek(1) != nullptr && !is_closer(*peek(1))) return true;
    const bool star = skip_repeat_object();
    repeat_group(list, star, start);
    return true;
}

// "ditto", "same again", and the sign that repeats what stands above: the round before.
bool RepeatParser::same_again(const NodeList& list) {
    static constexpr auto words =
        std::to_array<std::string_view>({"ditto", "idem", "same", "same again", "the same", "the same again",
                                         "same as before", "same as above", "as above", "again"});
    if (worked_ || !list.nodes.empty()) return false;
    const bool begins = is("same") || is("ditto") || is("idem") || is("the") || is("again") || is("\"");
    if (!begins) return false;
    const std::size_t start = at_;
    if (!accept_any(words) && !accept("\"")) return false;
    if (!(done() || is_opener(*peek()) || is(".") || is("-") || is("="))) return back_to(start);
    syntax_.repeats_from = syntax_.repeats_to = -1;
    return worked_ = true;
}

// "as before"
bool RepeatParser::as_before() {
    if (!accept("before")) return false;
    syntax_.repeats_from = syntax_.repeats_to = -1;
    return worked_ = true;
}

// "... up to round 10", "... 3 more times"
void RepeatParser::repeat_end() {
    const std::size_t start = at_;
    accept("up") || accept("until") || accept("till") || accept("til") || accept("through");
    accept("to");
    accept("and") && accept("including");
    accept("the");
    if (at_ > start && is_round_word_at(0) && is_number(1)) {
        syntax_.repeats_until = tokens_[at_ + 1].number;
        at_ += 2;
        return;
    }
    at_ = start;
    accept("for");
    Extent extent;
    const std::size_t times = at_;
    if (parse_times(extent, false)) {
        const bool more =
            has_any_word(std::span(tokens_).subspan(times, at_ - times), {"more", "additional", "further"});
        syntax_.repeat_times = extent.number - (more ? 1 : 0);
    } else
        at_ = start;
}

// "rep rnd 3", "repeat rounds 3-4", "as rnd 6", "rep last rnd"
bool RepeatParser::try_round_reference() {
    const std::size_t start = at_;
    while (accept("the") || accept("as") || accept("instructions") || accept("from") || accept("for")) {
    }
    const bool last = accept("last") || accept("previous") || accept("prev");
    const bool several = last && is_number() && is_round_word_at(1);
    const int rounds = several ? std::clamp(tokens_[at_++].number, 1, largest_number) : 1;
    if (!is_round_word_at(0)) return back_to(start);
    ++at_;
    accept(".");
    worked_ = worked_ || last;
    if (last) {
        syntax_.repeats_from = -rounds;
        syntax_.repeats_to = -1;
        repeat_end();
        return true;
    }
    if (!is_number()) return back_to(start);
    syntax_.repeats_from = syntax_.repeats_to = tokens_[at_++].number;
    if (accept("-") || accept("and") || accept("&") || accept("to") || accept("through")) {
        if (is_round_word_at(0)) ++at_;
        if (is_number()) syntax_.repeats_to = tokens_[at_++].number;
    }
    worked_ = true;
    repeat_end();
    return true;
}

// "from * to *", "between stars", "instructions in brackets", "[ ]"; true when a star is named.
bool RepeatParser::skip_repeat_object() {
    bool star = false;
    while (!done()) {
        if (is("to") && (is("end", 1) || is("last", 1) || is("the", 1))) break;
        if (is("*") || is("**")) {
            if (star && is_number(1)) break;
            star = true;
            ++at_;
        } else if (is_opener(*peek()) && peek(1) != nullptr && is_closer(*peek(1))) {
            at_ += 2;
        } else {
            const bool named = is("star") || is("stars") || is("asterisk") || is("asterisks");
            if (!accept_one_of(repeat_objects)) break;
            star = star || named;
        }
    }
    return star;
}

void RepeatParser::repeat_group(NodeList& list, bool star, std::size_t start) {
    Node* node = group_to_repeat(list, star, start);
    Node spare;
    spare.what = Group{};
    if (node == nullptr) node = &spare;
    Group& group = std::get<Group>(node->what);
    if (group.closed.length == 0) group.closed = span(start, start + 1);
    repeat_extent(*node, star);
    list.closed_star = static_cast<std::size_t>(-1);
}

Node* RepeatParser::group_to_repeat(NodeList& list, bool star, std::size_t start) {
    // "*sc, 2 sc* in next st" has become one unit of work, no group.
    const bool closed = !list.nodes.empty() && list.closed_star == list.nodes.size() - 1 &&
                        std::holds_alternative<Group>(list.nodes.back().what);
    if (closed) return &list.nodes.back();
    if (!list.stars.empty() && list.stars.back().from < list.nodes.size()) {
        group_from_star(list, "");
        return &list.nodes.back();
    }
    if (star) report(ReadCode::star_missing, span(start, at_));
    if (list.nodes.empty()) return nullptr;
    const auto* last = std::get_if<Group>(&list.nodes.back().what);
    if (last == nullptr || last->extent.stated) group_from(list, first_work(list.nodes), span(0, 1));
    return &list.nodes.back();
}

// Craft Yarn Council: "*A; rep from * 4 more times" works A five times, "[A] 6 times" works it six times.
// Without "more", hands differ: a star's number counts the repeats after the first, a bracket's counts
// them all, unless only the other reading proves.
void RepeatParser::repeat_extent(Node& node, bool star) {
    Extent& extent = std::get<Group>(node.what).extent;
    extent.stated = true;
    const bool crossed = accept("x") || accept("*");
    if (is("for") && try_for_rounds()) return fill(extent, {});
    accept("for") || accept("a") || accept("another");
    int number = is_number() ? peek()->number : is("once") ? 1 : is("twice") ? 2 : is("thrice") ? 3 : 0;
    if (number == 0) return fill(extent, parse_where());
    ++at_;
    number = std::min(number, largest_number - 1);
    const bool more = accept_more();
    extent.number = number + (more || (star && !crossed) ? 1 : 0);
    if (more) return;
    node.choice = choice();
    node.other_times = extent.number == number ? number + 1 : number;
}

}  // namespace roundwright
