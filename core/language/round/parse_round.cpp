#include <algorithm>
#include <array>
#include <utility>

#include "core/language/round/repeat_parser.h"

namespace roundwright {
namespace {

constexpr int deepest_group = 24;

constexpr auto fillers = std::to_array<std::string_view>(
    {"and",     "then",  "work", "worked", "make",  "making",  "now",     "a",         "an",
     "the",     "also",  "only", "just",   "again", "loosely", "tightly", "carefully", "please",
     "put",     "so",    "more", "of",     "do",    "working", "crochet", "in",        "continue",
     "another", "usual", "as",   "for",    "begin", "next"});
constexpr auto evens = std::to_array<std::string_view>({"even",
                                                        "evenly",
                                                        "straight",
                                                        "plain",
                                                        "unchanged",
                                                        "as is",
                                                        "as it is",
                                                        "as they are",
                                                        "without increases",
                                                        "without increase",
                                                        "without increasing",
                                                        "without any increases",
                                                        "without inc",
                                                        "without decreases",
                                                        "without decreasing",
                                                        "without dec",
                                                        "without changes",
                                                        "without change",
                                                        "without shaping",
                                                        "no increases",
                                                        "no increase",
                                                        "no inc",
                                                        "no decreases",
                                                        "no change",
                                                        "no changes",
                                                        "no shaping"});

constexpr auto each_round = std::to_array<std::string_view>(
    {"each round", "every round", "each rnd", "every rnd", "each row", "every row", "in each round",
     "in every round", "in each rnd", "in every rnd", "per round", "per rnd", "for each round",
     "for every round", "on each round", "on every round", "in each row", "in every row"});
constexpr auto going_on_to =
    std::to_array<std::string_view>({"continue", "continuing", "keep", "keep on", "go on", "carry on",
                                     "continue with", "continue with the", "keep up the", "continue to"});
constexpr auto in_this_way = std::to_array<std::string_view>(
    {"in this manner", "in this way", "this way", "like this", "like that", "in the same way",
     "in the same manner", "as before", "as established", "as set", "in pattern", "the same way", "so",
     "in the established pattern", "in this pattern", "evenly", "at the same rate"});
constexpr auto growing =
    std::to_array<std::string_view>({"increasing", "increases", "increase", "adding", "inc"});
constexpr auto shrinking =
    std::to_array<std::string_view>({"decreasing", "decreases", "decrease", "dec", "reducing"});

class RoundParser final : public RepeatParser {
  public:
    using RepeatParser::RepeatParser;

    RoundSyntax run() {
        NodeList list;
        parse_list(list, "", 0);
        close_stars(list);
        syntax_.nodes = std::move(list.nodes);
        settle_leading_chain();
        settle_stitch_alone();
        syntax_.body_end = syntax_.stated.empty() ? work_end_ : std::min(work_end_, count_at_);
        tidy_names();
        return std::move(syntax_);
    }

  private:
    void parse_list(NodeList& list, std::string_view closer, int depth) {
        while (!done()) {
            if (is_closer(*peek())) {
                if (!closer.empty()) return;
                stray_closer(list);
                continue;
            }
            const std::size_t before = at_;
            step(list, depth);
            if (at_ == before) ++at_;
        }
    }

    // The opening bracket is missing: what has been read so far is taken to be inside.
    void stray_closer(NodeList& list) {
        const TextSpan where = peek()->where;
        report(ReadCode::bracket_not_opened, where, {std::string(peek()->text)});
        ++at_;
        if (list.nodes.empty() || list.nodes.size() <= first_work(list.nodes)) return;
        group_from(list, first_work(list.nodes), span(0, 1));
        std::get<Group>(list.nodes.back().what).closed = where;
        group_tail(list.nodes.back());
    }

    void step(NodeList& list, int depth) {
        if (is("\"") && same_again(list)) return;
        if (try_note() || try_count() || (!dots_ahead() && skip_separator())) return;
        if (after_count_ && !works_next()) {
            if (!try_remark(list)) note_from(at_);
            return;
        }
        says_work_ = true;
        if (!try_work(list, depth)) {
            if (accept_any(each_round) || accept_one_of(fillers)) return;
            if (is_number() && options_.numbers_are_stitches)
                bare_stitches(list);
            else if (is_number())
                lone_number();
            else
                unknown_phrase(after_count_);
        }
        if (says_work_) work_end_ = at_;
    }

    bool try_work(NodeList& list, int depth) {
        return try_dots(list) || try_growing(list) || try_evenly(list) || try_even(list) || try_star(list) ||
               try_repeat(list) || try_times_before(list, depth) || try_group(list, depth) ||
               try_yarn(list) || try_remark(list) || try_rounds(list) || try_ring() ||
               try_place_before(list, depth) || try_item(list, {}, {});
    }

    // "3, inc, 4": plain stitches.
    void bare_stitches(NodeList& list) {
        Work work;
        work.members.push_back({Stitch{.kind = options_.even}, false});
        work.extent = {Extent::Kind::times, true, peek()->number};
        work.where = peek()->where;
        ++at_;
        Node node;
        node.what = std::move(work);
        if (std::get<Work>(node.what).extent.number > 0) add(list, std::move(node));
    }

    void add(NodeList& list, Node node) {
        if (after_count_) {
            syntax_.stated.clear();
            after_count_ = false;
        }
        syntax_.open = false;
        worked_ = true;
        list.nodes.push_back(std::move(node));
    }

    bool skip_separator() {
        if (done() || !is_separator()) return false;
        last_separator_ = peek()->text[0];
        syntax_.open = is(",") || is("&") || is("+") || is(":");
        ++at_;
        return true;
    }

    // "Note: ..." runs to the end as it stands.
    bool try_note() {
        if (!is_marked_note(rest())) return false;
        note(std::min(at_ + 2, tokens_.size()), tokens_.size());
        at_ = tokens_.size();
        return true;
    }

    // After a count come notes; a stitch there means that the count was one in between.
    bool works_next() const {
        if (done()) return false;
        if (is("*") || is("**") || is_opener(*peek())) return true;
        const auto name = name_ahead();
        if (!name) return is_number() && starts_item();
        return !(name->what == NameKind::stitch &&
                 (name->stitch == StitchKind::slip_stitch || name->stitch == StitchKind::chain));
    }

    // --- brackets

    bool try_group(NodeList& list, int depth) {
        if (done() || !is_opener(*peek())) return false;
        if (try_aside(list)) return true;
        if (depth >= deepest_group) return skip_deep_group();
        const bool counted = std::exchange(after_count_, false);
        if (counted) syntax_.stated.clear();
        Node node;
        node.what = bracket(depth);
        group_tail(node);
        const auto* group = std::get_if<Group>(&node.what);
        if (group == nullptr || !group->body.empty()) list.nodes.push_back(std::move(node));
        syntax_.open = syntax_.open && done();
        return true;
    }

    Group bracket(int depth) {
        const Token& open = *peek();
        Group group;
        group.where = open.where;
        ++at_;
        const int stars = std::exchange(open_stars_, 0);
        NodeList inner;
        parse_list(inner, closer_of(open.text), depth + 1);
        close_stars(inner);
        open_stars_ = stars;
        group.body = std::move(inner.nodes);
        if (done()) {
            syntax_.open = true;
            report(ReadCode::bracket_not_closed, open.where, {std::string(open.text)});
            return group;
        }
        group.closed = peek()->where;
        if (!is(closer_of(open.text)))
            report(ReadCode::bracket_mismatched, peek()->where,
                   {std::string(open.text), std::string(peek()->text)}, 0, 0, Severity::warning);
        ++at_;
        syntax_.open = false;
        return group;
    }

    bool skip_deep_group() {
        report(ReadCode::nested_too_deep, peek()->where, {}, deepest_group);
        int depth = 0;
        do {
            if (is_opener(*peek())) ++depth;
            if (is_closer(*peek())) --depth;
            ++at_;
        } while (!done() && depth > 0);
        return true;
    }

    // "6 x [sc, inc]", "6 times (sc, inc)"
    bool try_times_before(NodeList& list, int depth) {
        if (!is_number()) return false;
        const std::size_t start = at_;
        const int number = peek()->number;
        ++at_;
        const bool said = accept("x") || accept("times") || accept("*");
        accept(":");
        if (done() || !is_opener(*peek())) return back_to(start);
        const std::size_t open = at_;
        const bool counts = is_bracketed_count();
        at_ = open;
        if (counts || (!said && is_number(1) && !name_ahead(2))) return back_to(start);
        if (number == 0) report(ReadCode::number_is_zero, span(start, open));
        const std::size_t before = list.nodes.size();
        if (!try_group(list, depth) || list.nodes.size() == before) return true;
        if (auto* group = std::get_if<Group>(&list.nodes.back().what);
            group != nullptr && !group->extent.stated)
            group->extent = {Extent::Kind::times, true, number};
        return true;
    }

    // --- places before what is worked: "in next st, 2 sc", "in MR: 6 sc", "in BLO:", "and in each ch across"

    bool try_place_before(NodeList& list, int depth) {
        const std::size_t start = at_;
        const Where where = parse_where();
        if (!where.said() || (tokens_[start].is("next") && at_ == start + 1)) return back_to(start);
        const bool apart = is_separator();
        if (where.place == Where::Place::ring) return true;
        if (where.part && !where.says_place()) return part_before(list, *where.part, apart);
        const std::size_t end = at_;
        while (accept(",") || accept(":") || accept("work") || accept("make") || accept("place")) {
        }
        if (!done() && is_opener(*peek()) && where.place != Where::Place::none && !count_ahead())
            return shell_after(list, where, depth);
        const bool again = apart && start > 0 && (tokens_[start - 1].is("and") || tokens_[start - 1].is("&"));
        if (where.place != Where::Place::none && starts_item() && !(again && !list.nodes.empty()) &&
            try_item(list, where, {}))
            return true;
        at_ = end;
        return work_again(list, where, start);
    }

    bool count_ahead() {
        const std::size_t open = at_;
        const bool counts = worked_ && is_bracketed_count();
        at_ = open;
        return counts;
    }

    bool part_before(NodeList& list, LoopPart part, bool apart) {
        if (!apart && starts_item() && try_item(list, {}, part)) return true;
        Node node;
        node.what = PartChange{part};
        // "sc around, working in back loops only": said of the whole round.
        const bool trails = worked_ && !list.nodes.empty() && (done() || is(".") || count_ahead_of_end());
        list.nodes.insert(trails ? list.nodes.begin() : list.nodes.end(), std::move(node));
        return true;
    }

    bool count_ahead_of_end() { return !done() && is_opener(*peek()) && count_ahead(); }

    bool shell_after(NodeList& list, const Where& where, int depth) {
        const std::size_t before = list.nodes.size();
        if (!try_group(list, depth) || list.nodes.size() == before) return true;
        const auto* group = std::get_if<Group>(&list.nodes.back().what);
        if (group != nullptr && !group->extent.stated) place_group(list.nodes.back(), where);
        return true;
    }

    bool work_again(NodeList& list, const Where& where, std::size_t start) {
        if (where.place == Where::Place::none) return around_alone(list, where, start);
        const Work* last = list.nodes.empty() ? nullptr : std::get_if<Work>(&list.nodes.back().what);
        if (last == nullptr) return back_to(start);
        Work work = *last;
        work.where = span(start, at_);
        work.in_same = where.place == Where::Place::same;
        work.in_last = where.last && where.loops == 1;
        work.extent = where.extent();
        Node node;
        node.what = std::move(work);
        add(list, std::move(node));
        return true;
    }

    // "*sc, inc; around", "sc 1, inc, around", "inc, around"
    bool around_alone(NodeList& list, const Where& where, std::size_t start) {
        if (list.nodes.empty()) return back_to(start);
        if (!list.stars.empty() && list.stars.back().from < list.nodes.size()) {
            group_from_star(list, "");
        } else if (auto* work = std::get_if<Work>(&list.nodes.back().what)) {
            const bool alone = first_work(list.nodes) == list.nodes.size() - 1;
            if (work->extent.kind != Extent::Kind::times) return true;
            if (alone && work->extent.number == 1) {
                work->extent = where.extent();
                return true;
            }
            group_from(list, first_work(list.nodes), span(0, 1));
        }
        auto* group = std::get_if<Group>(&list.nodes.back().what);
        if (group != nullptr && !group->extent.stated) fill(group->extent, where);
        return true;
    }

    // --- stitches and rounds

    // "inc to 18", "increase to 18 sts", "inc 6 evenly", "dec 3 sts evenly around": where is left to the
    // maker.
    bool try_evenly(NodeList& list) {
        if (worked_ || !list.nodes.empty()) return false;
        const std::size_t start = at_;
        int number = is_number() ? tokens_[at_++].number : 0;
        const auto name = name_ahead();
        const bool shapes = name && name->what != NameKind::stitch && name->what != NameKind::skipping;
        if (!shapes) return back_to(start);
        at_ += static_cast<std::size_t>(name->length);
        if (number == 0) accept("up");
        const bool to = number == 0 && accept("to");
        if ((to || number == 0) && is_number()) number = tokens_[at_++].number;
        accept_noun() || accept("times") || accept("x");
        const bool evenly = !to && number > 0 && (accept("evenly") || accept("even"));
        if (number == 0 || (!to && !evenly)) return back_to(start);
        if (to && !(done() || is_separator() || is_opener(*peek()))) return back_to(start);
        accept("spaced") || accept("distributed") || accept("spread");
        parse_where();
        const bool more = name->what == NameKind::increase;
        (to ? syntax_.evenly_to : syntax_.evenly_more) = to || more ? number : -number;
        worked_ = true;
        report(ReadCode::evenly_placed, span(start, at_), {}, 0, 0, Severity::note);
        return true;
    }

    // "Continue increasing in this manner", "keep decreasing like this until rnd 9", "... until you have 36
    // sts"
    bool try_growing(NodeList& list) {
        if (worked_ || !list.nodes.empty()) return false;
        const std::size_t start = at_;
        if (!accept_any(going_on_to)) return false;
        const bool more = accept_one_of(growing);
        if (!more && !accept_one_of(shrinking)) return back_to(start);
        accept("by") && is_number() && ++at_&& accept_noun();
        accept_any(each_round);
        while (accept_any(in_this_way) || accept_any(each_round)) {
        }
        if (!growing_end()) return back_to(start);
        syntax_.grows_on = more ? 1 : -1;
        return worked_ = true;
    }

    bool growing_end() {
        const std::size_t start = at_;
        if (done() || is_separator() || is_opener(*peek()) || is("=")) return true;
        if (!(accept("until") || accept("till") || accept("to") || accept("up") || accept("through")))
            return false;
        accept("to");
        while (accept("you") || accept("have") || accept("there") || accept("are") || accept("and") ||
               accept("including") || accept("the") || accept("end") || accept("of")) {
        }
        if (is_round_word_at(0) && is_number(1)) {
            syntax_.repeats_until = tokens_[at_ + 1].number;
            at_ += 2;
            return true;
        }
        if (!is_number()) return back_to(start);
        syntax_.stated = {{peek()->number, peek()->where}};
        count_at_ = start;
        after_count_ = true;
        ++at_;
        accept_noun();
        return true;
    }

    // "unchanged", "without increases"
    bool try_even(NodeList& list) { return match_any(rest(), evens) > 1 && try_rounds(list); }

    bool dots_ahead() const { return is("etc") || (is(".") && (is(".", 1) || peek()->raw.size() > 1)); }

    // "sc, inc ..", "sc, inc, etc.": on in this way.
    bool try_dots(NodeList& list) {
        if (!dots_ahead()) return false;
        const std::size_t start = at_;
        accept("etc");
        while (accept(".")) {
        }
        const bool ends = done() || is_opener(*peek()) || accept_around() || is_number();
        const bool filled = std::any_of(list.nodes.begin(), list.nodes.end(), [](const Node& node) {
            const auto* work = std::get_if<Work>(&node.what);
            const auto* group = std::get_if<Group>(&node.what);
            return (work != nullptr && work->extent.kind != Extent::Kind::times) ||
                   (group != nullptr && group->extent.stated);
        });
        if (!ends || filled || list.nodes.empty() || !worked_) return true;
        group_from(list, first_work(list.nodes), span(start, start + 1));
        fill(std::get<Group>(list.nodes.back().what).extent, Where{});
        return true;
    }

    bool try_item(NodeList& list, const Where& lead, std::optional<LoopPart> part) {
        const std::optional<Item> item = parse_item(lead, part);
        if (!item) return false;
        number_said_ = number_said_ || item->number() > 0 || item->where.number_said;
        if (item->where.place == Where::Place::from_hook) take_foundation(list);
        Node node = node_of(*item);
        const Extent& extent = std::get<Work>(node.what).extent;
        const bool nothing = extent.kind == Extent::Kind::times && extent.number == 0;
        if (nothing)
            report(ReadCode::number_is_zero, item->span);
        else if (!closes_over_all(list, *item))
            add(list, std::move(node));
        return true;
    }

    // "inc, sc 3 around" goes around with both; so may "sc 1, inc around".
    bool closes_over_all(NodeList& list, Item item) {
        if (!item.where.around || item.where.place != Where::Place::none || !list.stars.empty()) return false;
        const std::size_t first = first_work(list.nodes);
        const bool stitches = std::any_of(list.nodes.begin(), list.nodes.end(), [](const Node& node) {
            const auto* work = std::get_if<Work>(&node.what);
            return work != nullptr && work->members[0].stitch.kind != StitchKind::chain;
        });
        const bool by_number = std::all_of(list.nodes.begin(), list.nodes.end(), [](const Node& node) {
            const auto* work = std::get_if<Work>(&node.what);
            return work == nullptr || work->extent.kind == Extent::Kind::times;
        });
        if (!stitches || !by_number) return false;
        syntax_.around_may_be_all = true;
        if (!options_.around_is_all && item.trail == 0) return false;
        item.where.around = false;
        add(list, node_of(item));
        group_from(list, first, item.span);
        fill(std::get<Group>(list.nodes.back().what).extent, Where{});
        return true;
    }

    // "work even", "work 5 rounds even", "5 more rnds of sc"
    bool try_rounds(NodeList& list) {
        const std::size_t start = at_;
        accept("continue");
        accept("work") || accept("working") || accept("crochet") || accept("just");
        const bool numbered = take_round_number();
        if (numbered) accept("of") || accept("in");
        if (numbered && stitch_alone_ahead()) return around_with(list, start);
        if (numbered && starts_item()) return true;
        if (numbered && worked_ && (done() || is_separator() || is_opener(*peek()))) return true;
        if (!accept_any(evens) && !(numbered && is_sentence_end())) return back_to(start);
        accept_around();
        Work work;
        work.members.push_back({Stitch{.kind = options_.even}, false});
        work.extent = {Extent::Kind::around, true, 0};
        work.where = span(start, at_);
        Node node;
        node.what = std::move(work);
        add(list, std::move(node));
        return true;
    }

    // "5 more rounds in sc": one stitch and nothing besides.
    bool stitch_alone_ahead() const {
        const auto name = name_ahead();
        if (!name || name->what != NameKind::stitch || name->stitch == StitchKind::chain) return false;
        const auto end = static_cast<std::size_t>(name->length);
        return peek(end) == nullptr || is_separator(end) || is_opener(*peek(end));
    }

    bool around_with(NodeList& list, std::size_t start) {
        const Name name = *name_ahead();
        use_name(name);
        at_ += static_cast<std::size_t>(name.length);
        Work work;
        work.members.push_back({Stitch{.kind = name.stitch}, false});
        work.extent = {Extent::Kind::around, true, 0};
        work.where = span(start, at_);
        Node node;
        node.what = std::move(work);
        add(list, std::move(node));
        return true;
    }

    // A chain at the front of a joined or turned round lifts the hook and is no stitch; in a spiral it is
    // one.
    void settle_leading_chain() {
        const std::size_t first = first_work(syntax_.nodes);
        if (first + 1 >= syntax_.nodes.size()) return;
        Node& node = syntax_.nodes[first];
        Work* work = std::get_if<Work>(&node.what);
        if (work == nullptr || work->members[0].stitch.kind != StitchKind::chain || node.choice >= 0) return;
        node.other_work = *work;
        node.choice = choice();
        const bool lifts = syntax_.joined || syntax_.turned;
        (lifts ? *work : *node.other_work).extent.number = 0;
    }

    // "inc (12)", "sc": one stitch and not how often.
    void settle_stitch_alone() {
        if (syntax_.nodes.size() != 1) return;
        Work* work = std::get_if<Work>(&syntax_.nodes[0].what);
        if (work == nullptr || work->extent.kind != Extent::Kind::times || work->extent.number != 1 ||
            work->in_same || number_said_)
            return;
        syntax_.may_be_around = true;
        if (options_.alone_is_around) work->extent = {Extent::Kind::around, true, 0};
    }

    // A name may have been looked at twice.
    void tidy_names() {
        auto& names = syntax_.names;
        std::stable_sort(names.begin(), names.end(), [](const NameUse& a, const NameUse& b) {
            return a.first != b.first ? a.first < b.first : a.length > b.length;
        });
        names.erase(
            std::unique(names.begin(), names.end(),
                        [](const NameUse& a, const NameUse& b) { return b.first < a.first + a.length; }),
            names.end());
    }

    bool number_said_ = false;
    std::size_t work_end_ = 0;  // token after the last that says what is worked
};

}  // namespace

RoundSyntax parse_round(const std::vector<Token>& tokens, const ParseOptions& options, YarnTable& yarns) {
    return RoundParser(tokens, options, yarns).run();
}

}  // namespace roundwright
