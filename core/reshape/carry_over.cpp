#include "core/reshape/carry_over.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace roundwright {
namespace {

int loops_below(const StitchGraph& graph, std::size_t round) {
    return round == 0 ? graph.foundation_loops : graph.rounds[round - 1].loops_left;
}

bool is_full(const StitchGraph& graph, std::size_t round) {
    return graph.rounds[round].loops_below == loops_below(graph, round);
}

// New round, past those kept, nearest to the middle of the old rounds first..last.
std::size_t nearest(const std::vector<int>& sources, int first, int last, std::size_t kept) {
    const double middle = (first + last) / 2.0;
    const auto from = sources.begin() + static_cast<std::ptrdiff_t>(std::min(kept, sources.size() - 1));
    const auto off = [middle](int source) { return std::abs(source - middle); };
    return static_cast<std::size_t>(std::ranges::min_element(from, sources.end(), {}, off) - sources.begin());
}

// New round that stands for an old one: itself if kept, the middle one of those that come from it, or the
// nearest.
std::size_t successor(const std::vector<int>& sources, int old, std::size_t kept) {
    if (static_cast<std::size_t>(old) < kept) return static_cast<std::size_t>(old);
    const auto [first, last] = std::equal_range(sources.begin() + kept, sources.end(), old);
    if (first == last) return nearest(sources, old, old, kept);
    return static_cast<std::size_t>((first - sources.begin()) + (last - first - 1) / 2);
}

class Carrier {
  public:
    Carrier(const Piece& old, const StitchGraph& graph, const std::vector<int>& counts, int foundation,
            const std::vector<int>& sources, std::size_t kept)
        : old_(old),
          graph_(graph),
          counts_(counts),
          foundation_(foundation),
          sources_(sources),
          kept_(std::min(kept, old.rounds.size())) {}

    CarriedOver run() {
        result_.piece = old_;
        set_start();
        result_.piece.rounds.clear();
        for (std::size_t i = 0; i < counts_.size(); ++i) result_.piece.rounds.push_back(round(i));
        restore_lost_bands();
        carry_marks();
        carry_stuffing();
        for (Feature& feature : result_.piece.features) carry(feature);
        list_rewritten();
        return std::move(result_);
    }

  private:
    void set_start() {
        if (auto* ring = std::get_if<ChainRing>(&result_.piece.start)) ring->chains = foundation_;
        if (auto* tube = std::get_if<OpenTube>(&result_.piece.start)) tube->chains = foundation_;
        if (auto* oval = std::get_if<OvalChain>(&result_.piece.start)) oval->chains = foundation_ / 2;
    }

    int below(std::size_t i) const {
        if (i > 0) return counts_[i - 1];
        return std::holds_alternative<ChainRing>(old_.start) ? 0 : foundation_;
    }

    // Worked over as many loops into as many stitches as before, its own words still come out.
    bool words_fit(std::size_t i) const {
        const auto source = static_cast<std::size_t>(sources_[i]);
        return is_full(graph_, source) && graph_.rounds[source].loops_left == counts_[i] &&
               loops_below(graph_, source) == below(i);
    }

    Round round(std::size_t i) const {
        const auto source = static_cast<std::size_t>(sources_[i]);
        Round made = old_.rounds[source];
        made.note.clear();
        if (i < kept_) return made;
        if (auto* even = std::get_if<WorkedEvenly>(&made.working)) {
            even->stitches = counts_[i];
        } else if (!words_fit(i)) {
            WorkedEvenly mostly = worked_mostly(graph_.rounds[source]);
            mostly.stitches = counts_[i];
            made.working = mostly;
        }
        return made;
    }

    struct Band {
        int first = 0;
        int last = 0;
        int heirs = 0;  // new rounds that come from it
    };

    std::vector<Band> bands() const {
        std::vector<Band> bands;
        for (int r = 0; r < static_cast<int>(old_.rounds.size()); ++r) {
            if (r == 0 || old_.rounds[r].yarn != old_.rounds[r - 1].yarn) bands.push_back({r, r, 0});
            bands.back().last = r;
        }
        for (Band& band : bands)
            band.heirs = static_cast<int>(std::count_if(sources_.begin(), sources_.end(), [&](int source) {
                return source >= band.first && source <= band.last;
            }));
        return bands;
    }

    bool has_yarn(std::size_t yarn) const {
        return std::any_of(result_.piece.rounds.begin(), result_.piece.rounds.end(),
                           [yarn](const Round& round) { return round.yarn == yarn; });
    }

    // A band that is less than half a round high now gets the nearest round that another band can spare.
    void restore_lost_bands() {
        auto all = bands();
        for (const Band& lost : all) {
            if (lost.heirs > 0) continue;
            const std::size_t heir = nearest(sources_, lost.first, lost.last, kept_);
            if (heir < kept_) continue;
            const auto owner = std::find_if(all.begin(), all.end(), [&](const Band& band) {
                return sources_[heir] >= band.first && sources_[heir] <= band.last;
            });
            const std::size_t yarn = old_.rounds[lost.first].yarn;
            if (owner->heirs < 2 && has_yarn(yarn)) continue;
            --owner->heirs;
            result_.piece.rounds[heir].yarn = yarn;
        }
    }

    void carry_marks() {
        for (std::size_t r = 0; r < old_.rounds.size(); ++r) {
            Round& heir = result_.piece.rounds[successor(sources_, int(r), kept_)];
            if (old_.rounds[r].lies_flat) heir.lies_flat = true;
            if (old_.rounds[r].note.empty()) continue;
            if (!heir.note.empty()) heir.note += "; ";
            heir.note += old_.rounds[r].note;
        }
    }

    // From the first of the new rounds that come from a stuffed one to the last of them.
    void carry_stuffing() {
        if (!old_.stuffed_rounds || sources_.empty()) return;
        const RoundSpan& stuffed = *old_.stuffed_rounds;
        const int end = static_cast<int>(counts_.size()) - 1;
        const auto comes_from = [&](int source) { return source >= stuffed.first && source <= stuffed.last; };
        const auto first = std::ranges::find_if(sources_, comes_from);
        if (first == sources_.end()) {
            const int instead = std::min(carried_round(stuffed.first), end);
            result_.piece.stuffed_rounds = RoundSpan{instead, instead};
            return;
        }
        int last = end;
        while (!comes_from(sources_[static_cast<std::size_t>(last)])) --last;
        result_.piece.stuffed_rounds = RoundSpan{static_cast<int>(first - sources_.begin()), last};
    }

    int carried_round(int round) const {
        return static_cast<int>(
            successor(sources_, std::clamp(round, 0, static_cast<int>(old_.rounds.size()) - 1), kept_));
    }

    // The same angle about the axis, in stitches of the new round.
    double turned(double stitches, int old_round, int new_round) const {
        const int last = static_cast<int>(graph_.rounds.size()) - 1;
        const int before = graph_.rounds[static_cast<std::size_t>(std::clamp(old_round, 0, last))].loops_left;
        return before > 0 ? stitches * counts_[static_cast<std::size_t>(new_round)] / before : stitches;
    }

    static double half_stitches(double stitches) { return std::round(2 * stitches) / 2; }

    void carry(Feature& feature) const {
        const int round = carried_round(feature.round);
        const int end = carried_round(feature.end_round);
        feature.stitches_apart =
            std::max(1, int(std::lround(turned(feature.stitches_apart, feature.round, round))));
        feature.stitches_right = half_stitches(turned(feature.stitches_right, feature.round, round));
        feature.end_stitches_right =
            half_stitches(turned(feature.end_stitches_right, feature.end_round, end));
        feature.round = round;
        feature.end_round = end;
    }

    void list_rewritten() {
        std::vector<bool> lost(old_.rounds.size());
        for (std::size_t r = 0; r < lost.size(); ++r)
            lost[r] = std::holds_alternative<AsWritten>(old_.rounds[r].working);
        for (std::size_t i = 0; i < counts_.size(); ++i)
            if (std::holds_alternative<AsWritten>(result_.piece.rounds[i].working)) lost[sources_[i]] = false;
        for (std::size_t r = 0; r < lost.size(); ++r)
            if (lost[r]) result_.rewritten.push_back(int(r));
    }

    const Piece& old_;
    const StitchGraph& graph_;
    const std::vector<int>& counts_;
    int foundation_;
    const std::vector<int>& sources_;
    std::size_t kept_;
    CarriedOver result_;
};

}  // namespace

std::vector<int> rounds_at_same_height(const std::vector<double>& ends_at, int rounds, double old_rounds) {
    std::vector<int> sources;
    for (std::size_t i = 0; i < ends_at.size(); ++i) {
        const double middle = ((i > 0 ? ends_at[i - 1] : 0) + ends_at[i]) / 2 * old_rounds;
        sources.push_back(std::clamp(int(std::floor(middle)), 0, rounds - 1));
    }
    return sources;
}

WorkedEvenly worked_mostly(const GraphRound& round) {
    std::array<int, 8> kinds{};
    std::array<int, 3> parts{};
    for (const GraphStitch& made : round.stitches) {
        if (loops_left(made.stitch) == 0 || made.stitch.kind == StitchKind::chain) continue;
        ++kinds[static_cast<std::size_t>(made.stitch.kind)];
        ++parts[static_cast<std::size_t>(made.stitch.part)];
    }
    WorkedEvenly even;
    const auto most = [](const auto& tally) { return std::max_element(tally.begin(), tally.end()); };
    if (*most(kinds) > 0) {
        even.kind = static_cast<StitchKind>(most(kinds) - kinds.begin());
        even.part = static_cast<LoopPart>(most(parts) - parts.begin());
    }
    return even;
}

CarriedOver carry_over(const Piece& old, const StitchGraph& graph, const std::vector<int>& counts,
                       int foundation, const std::vector<int>& sources, std::size_t kept) {
    return Carrier(old, graph, counts, foundation, sources, kept).run();
}

}  // namespace roundwright
