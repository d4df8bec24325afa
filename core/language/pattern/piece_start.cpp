#include "core/language/pattern/piece_start.h"

#include <algorithm>

#include "core/base/limits.h"

namespace roundwright {
namespace {

constexpr int most_stitches = static_cast<int>(max_stitches_per_piece);

// Chains of words that make nothing else; 0: they make something else.
int only_chains(const ReadRound& read) {
    int chains = 0;
    for (const Node& node : read.syntax.nodes) {
        const auto* work = std::get_if<Work>(&node.what);
        if (work == nullptr || work->members[0].stitch.kind != StitchKind::chain) return 0;
        chains = std::min(chains + std::min(work->extent.number, most_stitches), most_stitches);
    }
    return chains;
}

bool says_only_a_start(const ReadRound& read) {
    if (has_code(read, ReadCode::unknown_words) || read.stated || read.syntax.turned) return false;
    if (read.syntax.nodes.empty()) return read.syntax.foundation > 0 || read.syntax.into_ring;
    return only_chains(read) > 1;
}

// "6 sc" works into a ring; "sc in each ch around" over its chains.
bool works_by_number(const RoundSyntax& syntax) {
    return std::all_of(syntax.nodes.begin(), syntax.nodes.end(), [](const Node& node) {
        const auto* work = std::get_if<Work>(&node.what);
        return work == nullptr || work->extent.kind == Extent::Kind::times;
    });
}

}  // namespace

std::optional<SaidStart> said_start(const PatternLine& line, const ReadRound& read) {
    if (!says_only_a_start(read)) return std::nullopt;
    SaidStart said;
    said.line = &line;
    said.chains = read.syntax.foundation > 0 ? read.syntax.foundation : only_chains(read);
    said.ring = read.syntax.ring;
    said.from_hook = read.syntax.from_hook;
    said.both_sides = read.syntax.other_side;
    return said;
}

Start start_of(const SaidStart& said, const RoundSyntax& first_round) {
    if (said.worked_on) return *said.worked_on;
    const int chains = first_round.foundation > 0 ? first_round.foundation : said.chains;
    const int from_hook = std::max(first_round.from_hook, said.from_hook);
    const std::optional<RingKind> ring = first_round.ring ? first_round.ring : said.ring;
    const int worked = std::clamp(chains - std::max(0, from_hook - 1), 0, most_stitches);
    if (chains == 0 || ring == RingKind::magic) return MagicRing{};
    if (ring == RingKind::chain && (first_round.into_ring || works_by_number(first_round)))
        return ChainRing{chains};
    if (worked <= 1) return MagicRing{};  // a round worked into one chain draws as tight as a ring
    if (first_round.other_side || said.both_sides) return OvalChain{worked};
    return OpenTube{worked};
}

}  // namespace roundwright
