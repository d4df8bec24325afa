#include "core/language/round/stitch_parser.h"

#include <algorithm>
#include <cstdint>

namespace roundwright {
namespace {

constexpr int most_in_one_loop = 1'000;
constexpr int most_together = 60'000;  // Stitch::feet holds it

int small_number(std::string_view word) {
    return word == "once" ? 1 : word == "twice" ? 2 : word == "thrice" ? 3 : 0;
}

bool is_shaping(const Name& name) {
    return name.what == NameKind::increase || name.what == NameKind::decrease ||
           name.what == NameKind::invisible_decrease;
}

bool is_chain(const Item& item) {
    return item.name.what == NameKind::stitch && item.name.stitch == StitchKind::chain && item.together == 0;
}

}  // namespace

std::optional<Item> StitchParser::parse_item(const Where& lead, std::optional<LoopPart> part) {
    const std::size_t start = at_;
    Item item;
    if (!item_head(item)) {
        at_ = start;
        return std::nullopt;
    }
    item_tail(item);
    item.span = span(start, at_);
    if (!item.where.says_place()) item.where = merged(lead, item.where);
    if (!item.where.part) item.where.part = part;
    return item;
}

bool StitchParser::item_head(Item& item) {
    const auto first = name_ahead();
    if ((is("invisible") || is("inv")) && !first) {
        ++at_;
        item.invisible = true;
    }
    if (is_number()) {
        item.lead = peek()->number;
        const TextSpan where = peek()->where;
        ++at_;
        accept("x");
        accept("more");
        accept("-");
        if (item.lead == 0 && name_ahead()) report(ReadCode::number_is_zero, where);
    }
    parse_part(item.where);
    const auto name = name_ahead();
    if (!name) return number_in_each(item) || lone_ring_number(item);
    take_name(item, *name);
    return true;
}

// "2 in each (12)": of the stitch that is worked anyway.
bool StitchParser::number_in_each(Item& item) {
    constexpr int most = 9;
    if (item.lead < 1 || item.lead > most || !is("in") || !(is("each", 1) || is("every", 1))) return false;
    item.name = Name{NameKind::stitch, options_.even, true, false, 0};
    return true;
}

// "MR 6": the trade leaves out that these are single crochets.
bool StitchParser::lone_ring_number(Item& item) {
    if (item.lead == 0 || worked_ || !options_.into_ring || !syntax_.ring) return false;
    return is_separator() || is_opener(*peek());
}

void StitchParser::take_name(Item& item, const Name& name) {
    item.name = name;
    use_name(name);
    const std::size_t end = at_ + static_cast<std::size_t>(name.length);
    if (!name.of_its_own) {
        std::vector<Argument> arguments{said(std::span(tokens_).subspan(at_, end - at_))};
        if (name.stitch != StitchKind::bobble)
            arguments.emplace_back(std::string(abbreviation(name.stitch, options_.terms)));
        report(ReadCode::unnamed_stitch, span(at_, end), std::move(arguments), 0, 0, Severity::note);
    }
    at_ = end;
    if (name.what == NameKind::stitch && other_terms_beside(item)) return;
    const std::size_t joint = is("-") ? 1 : 0;
    const auto second = name_ahead(joint);
    if (name.what != NameKind::stitch || !second) return;
    const bool bobble = second->what == NameKind::stitch && second->stitch == StitchKind::bobble;
    if (!is_shaping(*second) && !bobble) return;
    at_ += joint;
    take_second_name(item, name.stitch, *second);
}

// "dc/sc", "sc (dc)": one stitch by its names in both terms.
bool StitchParser::other_terms_beside(Item& item) {
    const bool bracket = is("(") && is(")", 2);
    if (!bracket && !is("/")) return false;
    const std::size_t before = at_ - 1;
    const auto in = [&](std::size_t at, Terms terms) -> std::optional<StitchKind> {
        const auto name = match_name(std::span(tokens_).subspan(at, at < tokens_.size() ? 1 : 0), terms);
        if (!name || name->what != NameKind::stitch || name->other_terms) return std::nullopt;
        return name->stitch;
    };
    for (const auto& [first, second] : {std::pair(Terms::us, Terms::uk), std::pair(Terms::uk, Terms::us)}) {
        const auto stitch = in(before, first);
        if (!stitch || stitch != in(at_ + 1, second) || tokens_[before].is(tokens_[at_ + 1].text)) continue;
        item.name.stitch = *stitch;
        auto& reported = syntax_.diagnostics;
        std::erase_if(reported, [&](const ReadDiagnostic& d) {
            return d.code == ReadCode::other_terms && d.where == tokens_[before].where;
        });
        if (!syntax_.names.empty() && syntax_.names.back().first == before)
            syntax_.names.back() = {before, bracket ? 4u : 3u, *stitch};
        at_ += bracket ? 3 : 2;
        return true;
    }
    return false;
}

// "hdc inc", "sc dec", "5-dc bobble"
void StitchParser::take_second_name(Item& item, StitchKind first, const Name& second) {
    if (is_shaping(second))
        item.shaped = first;
    else
        item.lead = 0;
    item.name = second;
    at_ += static_cast<std::size_t>(second.length);
}

void StitchParser::item_tail(Item& item) {
    accept_noun();
    // A post stitch is worked around the stitch below: "fpdc around next st".
    if (is("around") && (is("next", 1) || is("each", 1) || is("every", 1) || is("following", 1))) ++at_;
    if (!item.name.of_its_own && is("around") && (is("the", 1) || is("post", 1) || is("posts", 1))) {
        at_ += is("the", 1) ? 2 : 1;
        if (accept("post") || accept("posts")) accept("of"), accept("the");
    }
    parse_part(item.where);
    parse_together(item);
    trailing_number(item);
    if (item.together == 0) parse_together(item);
    item.where = merged(item.where, parse_where());
    if (item.together == 0 && (accept("tog") || accept("together"))) {
        item.together = std::clamp(item.where.loops, 2, most_together);
        item.where = Where{.part = item.where.part};
    }
    Extent extent;
    if (parse_times(extent, false)) item.times = extent.number;
    item.where = merged(item.where, parse_where());
}

// "sc2tog", "sc 2 tog", "2 sc tog", "sc 2 sts together", "sc the next 2 sts together"
void StitchParser::parse_together(Item& item) {
    const std::size_t start = at_;
    accept("the");
    accept("next");
    if (is_number()) {
        const int number = tokens_[at_++].number;
        accept_noun();
        if (accept("tog") || accept("together")) return set_together(item, number, start);
    }
    at_ = start;
    if (!accept("tog") && !accept("together")) return;
    const int number = item.lead > 1 ? item.lead : 2;
    item.lead = 0;
    set_together(item, number, start);
}

void StitchParser::set_together(Item& item, int number, std::size_t start) {
    if (number > most_together)
        report(ReadCode::number_too_large, span(start, at_), {}, most_together, number);
    if (number < 1) report(ReadCode::number_is_zero, span(start, at_));
    item.together = std::clamp(number, 1, most_together);
}

void StitchParser::trailing_number(Item& item) {
    if (item.lead > 0) return;
    const std::size_t joint = is_chain(item) && is("-") && !peek()->spaced ? 1 : 0;  // "ch-3"
    if (!is_number(joint) || is_round_word_at(joint + 1)) return;
    const std::size_t after = joint + 1;
    if (is("x", after) || is("times", after) || is("time", after) ||
        (is("more", after) && is("times", after + 1)))
        return;
    at_ += joint;
    item.trail = peek()->number;
    if (item.trail == 0) report(ReadCode::number_is_zero, peek()->where);
    ++at_;
    accept_noun();
}

bool StitchParser::parse_times(Extent& extent, bool after_bracket) {
    const std::size_t start = at_;
    const bool bracket = !done() && is_opener(*peek());
    const std::string_view closer = bracket ? closer_of(peek()->text) : std::string_view();
    if (bracket) ++at_;
    accept("for");
    accept("a");
    if (accept("total")) accept("of");
    int number = 0;
    bool more = false;
    if (!times_number(number, more, after_bracket && !bracket) || (bracket && !accept(closer))) {
        at_ = start;
        return false;
    }
    if (number == 0) report(ReadCode::number_is_zero, span(start, at_));
    extent = {Extent::Kind::times, true, std::min(number, largest_number - 1) + (more ? 1 : 0)};
    return true;
}

bool StitchParser::times_number(int& number, bool& more, bool bare) {
    if (done()) return false;
    number = small_number(peek()->text);
    if (number > 0) {
        ++at_;
        more = accept_more();
        return true;
    }
    const bool star = is("*") && (bare || (open_stars_ == 0 && !starts_item(1)));
    if ((is("x") || star) && is_number(1)) {
        number = peek(1)->number;
        at_ += 2;
        more = accept_more();
        return true;
    }
    if (!is_number()) return false;
    number = peek()->number;
    const bool crossed = is("x", 1) && !is_number(2) && !name_ahead(2);
    if (crossed || is("times", 1) || is("time", 1) || (is("more", 1) && is("times", 2))) {
        ++at_;
        more = accept_more();
        return true;
    }
    const bool alone =
        is_separator(1) || is_opener(*peek(1)) || is_closer(*peek(1)) || is("around", 1) || is("*", 1);
    if (!bare || !alone) return false;
    ++at_;
    return true;
}

bool StitchParser::accept_more() {
    bool more = false;
    while (!done()) {
        if (accept("more") || accept("additional") || accept("further"))
            more = true;
        else if (!(accept("times") || accept("time") || accept("x")))
            break;
    }
    return more;
}

// --- from what is said to what is worked

Node StitchParser::node_of(const Item& item) {
    Node node;
    const NameKind what = item.name.what;
    if (what == NameKind::skipping)
        node.what = skipped(item);
    else if (is_chain(item))
        node.what = chained(item);
    else if (item.together > 0 || what == NameKind::decrease || what == NameKind::invisible_decrease)
        build_decrease(node, item);
    else if (what == NameKind::increase)
        build_increase(node, item);
    else
        build_plain(node, item);
    return node;
}

Work StitchParser::work_of(const Item& item, Stitch stitch, int copies) {
    if (copies > most_in_one_loop)
        report(ReadCode::number_too_large, item.span, {}, most_in_one_loop, copies);
    if (item.where.part) stitch.part = *item.where.part;
    Work work;
    work.where = item.span;
    work.in_last = item.where.last && item.where.loops == 1;
    work.in_same = item.where.place == Where::Place::same;
    work.members.assign(static_cast<std::size_t>(std::clamp(copies, 1, most_in_one_loop)),
                        Member{stitch, item.where.part.has_value()});
    return work;
}

Extent StitchParser::extent_of(const Item& item, int number) {
    if (item.where.fills()) return item.where.extent();
    return {Extent::Kind::times, true, times(number, item.times)};
}

Work StitchParser::skipped(const Item& item) {
    Stitch stitch;
    stitch.kind = StitchKind::skip;
    Work work = work_of(item, stitch, 1);
    work.members[0] = {stitch, true};
    work.in_same = false;
    const int number = item.where.is_over_next() ? item.where.loops : item.number();
    work.extent = extent_of(item, std::max(number, 1));
    return work;
}

Work StitchParser::chained(const Item& item) {
    Stitch stitch;
    stitch.kind = StitchKind::chain;
    stitch.feet = 0;
    Work work = work_of(item, stitch, 1);
    work.members[0] = {stitch, true};
    work.in_same = false;
    work.extent = {Extent::Kind::times, true, times(std::max(item.number(), 1), item.times)};
    return work;
}

void StitchParser::build_decrease(Node& node, const Item& item) {
    Stitch stitch;
    stitch.kind = item.shaped.value_or(item.name.stitch);
    stitch.feet = static_cast<std::uint16_t>(item.together > 0 ? item.together : 2);
    stitch.invisible = item.invisible || item.name.what == NameKind::invisible_decrease;
    int number = std::max(item.number(), 1);
    if (item.where.is_over_next() && item.number() == 0 && item.where.loops % stitch.feet == 0)
        number = item.where.loops / stitch.feet;
    Work work = work_of(item, stitch, 1);
    work.extent = extent_of(item, number);
    node.what = std::move(work);
    const bool could_be_feet = item.trail > 2 && item.trail <= most_together && item.together == 0;
    if (!could_be_feet || item.where.says_place()) return;
    stitch.feet = static_cast<std::uint16_t>(item.trail);
    or_else(node, item, stitch, 1, 1);
}

void StitchParser::build_increase(Node& node, const Item& item) {
    Stitch stitch;
    stitch.kind = item.shaped.value_or(StitchKind::single_crochet);
    const bool loops_said = item.where.is_over_next() &&
                            (item.where.number_said || item.where.place == Where::Place::each_of_next);
    Work work = work_of(item, stitch, 2);
    work.extent = extent_of(item, loops_said ? item.where.loops : std::max(item.number(), 1));
    node.what = std::move(work);
    if (item.trail > 2 && item.trail <= most_in_one_loop && !item.where.says_place())
        or_else(node, item, stitch, item.trail, 1);
}

void StitchParser::build_plain(Node& node, const Item& item) {
    Stitch stitch;
    stitch.kind = item.name.stitch;
    const int number = std::max(item.number(), 1);
    int copies = 1;
    int loops = number;
    if (item.where.is_over_next()) {
        loops = item.where.loops;
        const bool once_each = item.where.place == Where::Place::next && number == loops && loops > 1;
        copies = once_each ? 1 : number;
        if (once_each) or_else(node, item, stitch, number, loops);
    } else if (item.where.fills() || item.where.place == Where::Place::same ||
               item.where.place == Where::Place::from_hook) {
        copies = number;
        loops = 1;
    }
    Work work = work_of(item, stitch, copies);
    work.extent = extent_of(item, loops);
    node.what = std::move(work);
}

// What the same words mean in another hand.
void StitchParser::or_else(Node& node, const Item& item, const Stitch& stitch, int copies, int loops) {
    if (copies > most_in_one_loop) return;
    node.other_work = work_of(item, stitch, copies);
    node.other_work->extent = extent_of(item, loops);
    node.choice = choice();
}

}  // namespace roundwright
