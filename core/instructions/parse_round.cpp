#include <array>
#include <iterator>
#include <utility>

#include "core/instructions/remark_parser.h"

namespace roundwright {
namespace {

constexpr int deepest_group = 24;
constexpr std::size_t most_in_shell = 1'000;

constexpr auto fillers = std::to_array<std::string_view>(
    {"and",     "then",  "work", "worked", "make",  "making",  "now",     "a",         "an",
     "the",     "also",  "only", "just",   "again", "loosely", "tightly", "carefully", "please",
     "put",     "so",    "more", "of",     "do",    "working", "crochet", "in",        "continue",
     "another", "usual", "as",   "for",    "begin", "next"});
constexpr auto repeat_words =
    std::to_array<std::string_view>({"rep", "repeat", "reps", "repeats", "repeating", "repeated"});
constexpr auto repeat_objects = std::to_array<std::string_view>(
    {"from",        "between", "the",       "instructions", "pattern", "steps", "sequence", "brackets",
     "parentheses", "bet",     "inside",    "within",       "these",   "this",  "stars",    "asterisks",
     "asterisk",    "star",    "section",   "to",           "in",      "and",   "first",    "beg",
     "last",        "all",     "beginning", "it",           "that"});
constexpr auto evens = std::to_array<std::string_view>({"even", "evenly", "straight", "plain"});
constexpr auto note_heads = std::to_array<std::string_view>({"note", "notes", "nb", "tip", "hint"});

bool is_work(const Node& node) {
    return std::holds_alternative<Work>(node.what) || std::holds_alternative<Group>(node.what);
}

// A colour or a loop named at the front of a round is no part of what is repeated.
std::size_t first_work(const std::vector<Node>& nodes) {
    const auto found = std::find_if(nodes.begin(), nodes.end(), is_work);
    return found == nodes.end() ? 0 : static_cast<std::size_t>(found - nodes.begin());
}

bool can_share_a_loop(const Node& node) {
    const auto* work = std::get_if<Work>(&node.what);
    return work != nullptr && !work->in_same && work->members[0].stitch.feet <= 1 &&
           work->members[0].stitch.kind != StitchKind::skip && work->extent.kind == Extent::Kind::times;
}

class RoundParser : public RemarkParser {
  public:
    using RemarkParser::RemarkParser;

    RoundSyntax run() {
        NodeList list;
        parse_list(list, "", 0);
        close_stars(list);
        syntax_.nodes = std::move(list.nodes);
        settle_leading_chain();
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
        if (try_note() || try_count() || skip_separator()) return;
        if (after_count_ && !works_next()) {
            if (!try_remark(list)) note_from(at_);
            return;
        }
        says_work_ = true;
        if (!try_work(list, depth)) {
            if (accept_one_of(fillers)) return;
            if (is_number())
                lone_number();
            else
                unknown_phrase(after_count_);
        }
        if (says_work_) work_end_ = at_;
    }

    bool try_work(NodeList& list, int depth) {
        return try_star(list) || try_repeat(list) || try_times_before(list, depth) ||
               try_group(list, depth) || try_yarn(list) || try_remark(list) || try_rounds(list) ||
               try_ring() || try_place_before(list, depth) || try_item(list, {}, {});
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
        if (done() || !is_one_of(peek()->text, note_heads) || !is(":", 1)) return false;
        note(std::min(at_ + 2, tokens_.size()), tokens_.size());
        at_ = tokens_.size();
        return true;
    }

    void lone_number() {
        report(ReadCode::number_alone, peek()->where, {peek()->number});
        ++at_;
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

    // --- stated counts: "(18)", "[18 sts]", "- 18 sts", "18 sts", "= 18"

    bool try_count() {
        if (done()) return false;
        const std::size_t start = at_;
        const std::vector<StatedCount> before = syntax_.stated;
        if (!(is_opener(*peek()) ? bracketed_count() : bare_count())) {
            at_ = start;
            syntax_.stated = before;
            return false;
        }
        count_at_ = start;
        after_count_ = true;
        syntax_.open = false;
        return true;
    }

    bool bracketed_count() {
        const std::string_view closer = closer_of(peek()->text);
        ++at_;
        while (accept("=") || accept("-") || accept("total") || accept(":") || accept("sts") ||
               accept("count")) {
        }
        std::vector<StatedCount> counts;
        while (is_number()) {
            counts.push_back({peek()->number, peek()->where});
            ++at_;
            if (accept_counted_name() && !worked_) return false;
            if (!(accept(",") || accept("-") || accept("&") || accept("and") || accept("/"))) break;
        }
        while (accept("in") || accept("total") || accept("around") || accept("now") || accept(".") ||
               accept("each")) {
        }
        if (counts.empty() || !accept(closer) || says_how_often() || says_where()) return false;
        syntax_.stated = std::move(counts);
        return true;
    }

    // In a bracket "18 sc" states a count; "2 inc" does not.
    bool accept_counted_name() {
        if (accept_noun()) return true;
        const auto name = name_ahead();
        if (!name || name->what != NameKind::stitch || name->stitch == StitchKind::chain) return false;
        return accept_loop_name();
    }

    bool says_how_often() const {
        if (is("*")) return is_number(1);
        return is("x") || is("times") || is("twice") || is("thrice") || is("once") ||
               (is_number() && (is("times", 1) || is("x", 1)));
    }

    bool says_where() const {
        return is("in") || is("into") || is("around") || is("across") || is("over") || is("each");
    }

    bool bare_count() {
        const bool dashed = accept("-") || accept("=");
        const bool total = accept("total");
        if (total) accept(":") || accept("of") || accept("=");
        if (!is_number() || !worked_) return false;
        const StatedCount count{peek()->number, peek()->where};
        ++at_;
        const bool noun = accept_noun();
        const bool named = !noun && (dashed || total) && accept_counted_name();
        while (accept("in") || accept("total")) {
        }
        const bool ends = is_sentence_end() || (is(",") && noun);
        const bool led =
            dashed || total || last_separator_ == '.' || last_separator_ == ':' || last_separator_ == '|';
        if (!ends || !(noun || named || led)) return false;
        syntax_.stated = {count};
        return true;
    }

    // --- stars and repeats

    bool try_star(NodeList& list) {
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

    // The nodes since the last open star (of this sign, if one is given) become one group.
    void group_from_star(NodeList& list, std::string_view sign) {
        std::size_t star = list.stars.size() - 1;
        while (!sign.empty() && star > 0 && list.stars[star].sign != sign) --star;
        const NodeList::Star from = list.stars[star];
        open_stars_ -= static_cast<int>(list.stars.size() - star);
        list.stars.resize(star);
        group_from(list, from.from, from.where);
    }

    static void group_from(NodeList& list, std::size_t from, TextSpan where) {
        Group group;
        group.where = where;
        const auto first = list.nodes.begin() + static_cast<std::ptrdiff_t>(from);
        group.body.assign(std::make_move_iterator(first), std::make_move_iterator(list.nodes.end()));
        list.nodes.resize(from);
        Node node;
        node.what = std::move(group);
        list.nodes.push_back(std::move(node));
    }

    void close_stars(NodeList& list) {
        while (!list.stars.empty()) {
            if (list.stars.back().from < list.nodes.size()) {
                group_from_star(list, "");
            } else {
                list.stars.pop_back();
                --open_stars_;
            }
        }
    }

    bool try_repeat(NodeList& list) {
        const std::size_t start = at_;
        if (is("as") || (is("same") && is("as", 1)))
            return accept("same"), accept("as"), try_round_reference() || back_to(start);
        if (!accept_one_of(repeat_words)) return false;
        accept(".");
        if (try_round_reference()) return true;
        // "rep (sc, inc) 6 times": the words after the bracket say how often.
        if (!done() && is_opener(*peek()) && peek(1) != nullptr && !is_closer(*peek(1))) return true;
        const bool star = skip_repeat_object();
        repeat_group(list, star, start);
        return true;
    }

    // "rep rnd 3", "repeat rounds 3-4", "as rnd 6", "rep last rnd"
    bool try_round_reference() {
        const std::size_t start = at_;
        while (accept("the") || accept("as") || accept("instructions") || accept("from") || accept("for")) {
        }
        const bool last = accept("last") || accept("previous") || accept("prev");
        if (!is_round_word_at(0)) return back_to(start);
        ++at_;
        accept(".");
        worked_ = worked_ || last;
        if (last) syntax_.repeats_from = syntax_.repeats_to = -1;
        if (last || !is_number()) return last || back_to(start);
        syntax_.repeats_from = syntax_.repeats_to = tokens_[at_++].number;
        if (accept("-") || accept("and") || accept("&") || accept("to") || accept("through")) {
            if (is_round_word_at(0)) ++at_;
            if (is_number()) syntax_.repeats_to = tokens_[at_++].number;
        }
        worked_ = true;
        return true;
    }

    // "from * to *", "between stars", "instructions in brackets", "[ ]"; true when a star is named.
    bool skip_repeat_object() {
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

    void repeat_group(NodeList& list, bool star, std::size_t start) {
        Node* node = group_to_repeat(list, star, start);
        Node spare;
        spare.what = Group{};
        if (node == nullptr) node = &spare;
        Group& group = std::get<Group>(node->what);
        if (group.closed.length == 0) group.closed = span(start, start + 1);
        repeat_extent(*node, star);
        list.closed_star = static_cast<std::size_t>(-1);
    }

    Node* group_to_repeat(NodeList& list, bool star, std::size_t start) {
        if (!list.nodes.empty() && list.closed_star == list.nodes.size() - 1) return &list.nodes.back();
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
    void repeat_extent(Node& node, bool star) {
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

    static void fill(Extent& extent, const Where& where) {
        extent.stated = true;
        extent.kind = where.to_last >= 0 ? Extent::Kind::to_last : Extent::Kind::around;
        extent.number = std::max(where.to_last, 0);
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

    // What follows a bracket: how often, or in which stitch.
    void group_tail(Node& node) {
        Extent extent;
        // "] 8 6": an 8 struck for the sign of times.
        if (is_number() && peek()->raw == "8" && is_number(1)) lone_number();
        if (parse_times(extent, true)) {
            std::get<Group>(node.what).extent = extent;
            parse_where();
            return;
        }
        const Where where = parse_where();
        if (where.says_place()) place_group(node, where);
        if (where.part) set_part(node, *where.part);
    }

    void place_group(Node& node, const Where& where) {
        if (where.place == Where::Place::ring) {
            Extent extent;
            if (parse_times(extent, true)) std::get<Group>(node.what).extent = extent;
            return;
        }
        const bool one_place = where.is_over_next() || where.place == Where::Place::same ||
                               where.place == Where::Place::from_hook;
        const auto& body = std::get<Group>(node.what).body;
        const bool fits = std::all_of(body.begin(), body.end(), can_share_a_loop);
        if (one_place || (where.place == Where::Place::each && fits)) return shell(node, where);
        fill(std::get<Group>(node.what).extent, where);
    }

    static void set_part(Node& node, LoopPart part) {
        if (auto* group = std::get_if<Group>(&node.what)) {
            for (Node& inner : group->body) set_part(inner, part);
        } else if (auto* work = std::get_if<Work>(&node.what)) {
            for (Member& member : work->members)
                if (!member.own_part) member = {with_part(member.stitch, part), true};
        }
    }

    static Stitch with_part(Stitch stitch, LoopPart part) {
        stitch.part = part;
        return stitch;
    }

    // "(sc, hdc, sc) in next st"
    void shell(Node& node, const Where& where) {
        const Group group = std::move(std::get<Group>(node.what));
        Work work;
        work.where = group.where;
        for (const Node& part : group.body) {
            if (!can_share_a_loop(part)) {
                report(ReadCode::not_one_stitch, group.where);
                node.what = group;
                return;
            }
            const Work& one = std::get<Work>(part.what);
            for (int i = 0; i < one.extent.number && work.members.size() < most_in_shell; ++i)
                work.members.insert(work.members.end(), one.members.begin(), one.members.end());
        }
        if (work.members.empty()) {
            node.what = group;
            return;
        }
        work.in_same = where.place == Where::Place::same;
        work.in_last = where.last && where.loops == 1;
        work.extent = where.extent();
        Extent extent;
        if (parse_times(extent, true)) work.extent.number = times(work.extent.number, extent.number);
        node.what = std::move(work);
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
        const bool counts = try_count_only();
        at_ = open;
        if (counts || (!said && is_number(1) && !name_ahead(2))) return back_to(start);
        const std::size_t before = list.nodes.size();
        if (!try_group(list, depth) || list.nodes.size() == before) return true;
        if (auto* group = std::get_if<Group>(&list.nodes.back().what);
            group != nullptr && !group->extent.stated)
            group->extent = {Extent::Kind::times, true, number};
        return true;
    }

    bool try_count_only() {
        const std::vector<StatedCount> before = syntax_.stated;
        const bool counts = bracketed_count();
        syntax_.stated = before;
        return counts;
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
        if (!done() && is_opener(*peek()) && where.place != Where::Place::none)
            return shell_after(list, where, depth);
        const bool again = apart && start > 0 && (tokens_[start - 1].is("and") || tokens_[start - 1].is("&"));
        if (where.place != Where::Place::none && starts_item() && !(again && !list.nodes.empty()) &&
            try_item(list, where, {}))
            return true;
        at_ = end;
        return work_again(list, where, start);
    }

    bool part_before(NodeList& list, LoopPart part, bool apart) {
        if (!apart && starts_item() && try_item(list, {}, part)) return true;
        Node node;
        node.what = PartChange{part};
        list.nodes.push_back(std::move(node));
        return true;
    }

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

    bool try_item(NodeList& list, const Where& lead, std::optional<LoopPart> part) {
        const std::optional<Item> item = parse_item(lead, part);
        if (!item) return false;
        if (item->where.place == Where::Place::from_hook) take_foundation(list);
        Node node = node_of(*item);
        const Extent& extent = std::get<Work>(node.what).extent;
        const bool nothing = extent.kind == Extent::Kind::times && extent.number == 0;
        if (nothing)
            report(ReadCode::number_is_zero, item->span);
        else
            add(list, std::move(node));
        return true;
    }

    // "work even", "work 5 rounds even", "5 more rnds of sc"
    bool try_rounds(NodeList& list) {
        const std::size_t start = at_;
        accept("continue");
        accept("work") || accept("working");
        const bool numbered = take_round_number();
        if (numbered) accept("of") || accept("in");
        if (numbered && starts_item()) return true;
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

    char last_separator_ = ' ';
    bool after_count_ = false;
    std::size_t count_at_ = 0;  // token at which the stated count begins
    std::size_t work_end_ = 0;  // token after the last that says what is worked
};

}  // namespace

RoundSyntax parse_round(const std::vector<Token>& tokens, const ParseOptions& options, YarnTable& yarns) {
    return RoundParser(tokens, options, yarns).run();
}

}  // namespace roundwright
