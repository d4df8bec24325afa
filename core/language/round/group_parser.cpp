#include "core/language/round/group_parser.h"

#include <algorithm>
#include <array>

namespace roundwright {
namespace {

constexpr std::size_t most_in_shell = 1'000;
constexpr auto repeat_words = std::to_array<std::string_view>({"rep", "repeat", "repeats", "repeated"});

bool can_share_a_loop(const Node& node) {
    const auto* work = std::get_if<Work>(&node.what);
    return work != nullptr && !work->in_same && work->members[0].stitch.feet <= 1 &&
           work->members[0].stitch.kind != StitchKind::skip && work->extent.kind == Extent::Kind::times;
}

}  // namespace

void GroupParser::group_tail(Node& node) {
    Extent extent;
    // "] 8 6": an 8 struck for the sign of times.
    if (is_number() && peek()->raw == "8" && is_number(1)) lone_number();
    if (parse_times(extent, true)) {
        std::get<Group>(node.what).extent = extent;
        parse_where();
        return;
    }
    // "(sc, inc)* (18)"
    const bool star = is("*") && open_stars_ == 0 && !starts_item(1) &&
                      (peek(1) == nullptr || is_separator(1) || is_opener(*peek(1)) ||
                       is_one_of(peek(1)->text, repeat_words));
    if (star) {
        ++at_;
        if (done() || !is_one_of(peek()->text, repeat_words))
            return fill(std::get<Group>(node.what).extent, Where{});
        return;
    }
    const Where where = parse_where();
    if (where.says_place()) place_group(node, where);
    if (where.part) set_part(node, *where.part);
}

void GroupParser::place_group(Node& node, const Where& where) {
    if (where.place == Where::Place::ring) {
        Extent extent;
        if (parse_times(extent, true)) std::get<Group>(node.what).extent = extent;
        return;
    }
    const bool one_place =
        where.is_over_next() || where.place == Where::Place::same || where.place == Where::Place::from_hook;
    const auto& body = std::get<Group>(node.what).body;
    const bool fits = std::all_of(body.begin(), body.end(), can_share_a_loop);
    if (one_place || (where.place == Where::Place::each && fits)) return shell(node, where);
    fill(std::get<Group>(node.what).extent, where);
}

void GroupParser::set_part(Node& node, LoopPart part) {
    if (auto* group = std::get_if<Group>(&node.what)) {
        for (Node& inner : group->body) set_part(inner, part);
    } else if (auto* work = std::get_if<Work>(&node.what)) {
        for (Member& member : work->members)
            if (!member.own_part) member = {with_part(member.stitch, part), true};
    }
}

Stitch GroupParser::with_part(Stitch stitch, LoopPart part) {
    stitch.part = part;
    return stitch;
}

// "(sc, hdc, sc) in next st"
void GroupParser::shell(Node& node, const Where& where) {
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

void GroupParser::fill(Extent& extent, const Where& where) {
    extent.stated = true;
    extent.kind = where.to_last >= 0 ? Extent::Kind::to_last : Extent::Kind::around;
    extent.number = std::max(where.to_last, 0);
}

}  // namespace roundwright
