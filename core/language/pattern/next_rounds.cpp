#include "core/language/pattern/next_rounds.h"

#include <algorithm>

#include "core/base/limits.h"

namespace roundwright {
namespace {

constexpr std::size_t most_lines = 8;
constexpr std::size_t longest_round = 400;  // tokens

bool begins_a_piece(const PatternLine& line) {
    return !line.numbers.empty() && line.numbers.front().first <= 1;
}

// "sc around" fits whatever is below; "sc 12" does not.
bool says_loops(const std::vector<Node>& nodes) {
    return !nodes.empty() && std::none_of(nodes.begin(), nodes.end(), [](const Node& node) {
        const auto fills = [](const Extent& extent) { return extent.kind != Extent::Kind::times; };
        if (const auto* group = std::get_if<Group>(&node.what))
            return fills(group->extent) || !says_loops(group->body);
        const auto* work = std::get_if<Work>(&node.what);
        return work != nullptr && fills(work->extent);
    });
}

bool is_even(const ReadRound& read) {
    return read.made.loops_left == read.made.loops_below && read.syntax.rounds >= 1;
}

}  // namespace

NextRounds::NextRounds(std::span<const PatternLine> lines, Terms terms, const YarnTable& yarns, int& effort)
    : terms_(terms), yarns_(yarns), effort_(effort) {
    constexpr std::size_t furthest = 40;
    for (const PatternLine& line : lines.first(std::min(lines.size(), furthest))) {
        if (line.kind == LineKind::blank || line.kind == LineKind::text) continue;
        if (lines_.size() >= most_lines || begins_a_piece(line) || line.tokens.size() > longest_round) break;
        if (line.kind == LineKind::round && !line.tokens.empty()) lines_.push_back(&line);
    }
}

ReadRound NextRounds::read_on(const PatternLine& line, const RoundBelow& below, int loops) {
    RoundBelow on = below;
    on.loops = loops;
    on.into_ring = false;
    on.oval_chains = 0;
    RoundSetting setting = on.setting(0, terms_);
    setting.find_mends = false;
    setting.work.most_stitches = std::min(setting.work.most_stitches, std::max(effort_, 0));
    YarnTable yarns = yarns_;
    ReadRound read = read_round(line.tokens, setting, yarns);
    effort_ -= read.effort + 8 * static_cast<int>(line.tokens.size());
    return read;
}

NextRounds::Fit NextRounds::fit(RoundBelow below) {
    Fit fit;
    for (const PatternLine* line : lines_) {
        if (effort_ <= 0) break;
        const ReadRound read = read_on(*line, below, below.loops);
        if (read.syntax.repeats_from != 0) break;
        if (!read.proved()) {
            fit.fails = true;
            break;
        }
        fit.proved += read.stated || says_loops(read.syntax.nodes) ? 1 : 0;
        if (line->rounds > 1 && !is_even(read)) break;
        below.add(read.made, nullptr);
    }
    return fit;
}

std::optional<int> NextRounds::needed(const RoundBelow& below) {
    for (const PatternLine* line : lines_) {
        if (effort_ <= 0) return std::nullopt;
        if (const auto loops = loops_of(*line, below)) return loops;
        const ReadRound read = read_on(*line, below, std::max(below.loops, 12));
        if (!read.proved() || read.stated || !is_even(read) || read.syntax.repeats_from != 0)
            return std::nullopt;
    }
    return std::nullopt;
}

// Over how many stitches a round comes out.
std::optional<int> NextRounds::loops_of(const PatternLine& line, const RoundBelow& below) {
    constexpr int most = static_cast<int>(max_stitches_per_piece);
    const ReadRound first = read_on(line, below, 0);
    if (has_code(first, ReadCode::unknown_words) || first.syntax.repeats_from != 0) return std::nullopt;
    const int loops = first.taken;
    if (says_loops(first.syntax.nodes) && loops > 0 && loops <= most)
        return read_on(line, below, loops).proved() ? std::optional(loops) : std::nullopt;
    return first.stated ? loops_around(line, below, first) : std::nullopt;
}

// A round that is worked around makes b stitches of a loops in each repeat: from two that come out, the one
// with the stated count follows.
std::optional<int> NextRounds::loops_around(const PatternLine& line, const RoundBelow& below,
                                            const ReadRound& first) {
    const int wanted = first.stated->count;
    if (wanted < 1 || wanted > 2'000) return std::nullopt;
    std::vector<std::pair<int, int>> sound;  // loops, stitches
    for (int loops = wanted; loops < wanted + 60 && sound.size() < 2 && effort_ > 0; ++loops) {
        const ReadRound read = read_on(line, below, loops);
        if (read.proved()) return loops;
        const bool only_count =
            read.diagnostics.size() == 1 && read.diagnostics[0].code == ReadCode::count_differs;
        if (only_count) sound.emplace_back(loops, read.stitches);
    }
    if (sound.size() < 2) return std::nullopt;
    const int a = sound[1].first - sound[0].first;
    const int b = sound[1].second - sound[0].second;
    const int missing = wanted - sound[0].second;
    if (b == 0 || missing % b != 0) return std::nullopt;
    const int loops = sound[0].first + missing / b * a;
    return loops > 0 && read_on(line, below, loops).proved() ? std::optional(loops) : std::nullopt;
}

}  // namespace roundwright
