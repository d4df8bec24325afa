#include "core/differences/round_differences.h"

#include <algorithm>
#include <unordered_map>

#include "core/rounds/piece_graph.h"

namespace roundwright {
namespace {

// A round worked otherwise weighs as much as one put in or taken out, so that a count that was changed is a
// change, and not a round that went and another that came. Marks decide between rounds that are worked alike.
constexpr int worked_otherwise = 4;
constexpr int marked_otherwise = 1;

std::string key_of(const Round& round) {
    if (const auto* written = std::get_if<AsWritten>(&round.working)) return "w" + written->words;
    const auto& even = std::get<WorkedEvenly>(round.working);
    std::string key = "e";
    for (const int part : {even.stitches, static_cast<int>(even.kind), static_cast<int>(even.part),
                           static_cast<int>(even.spacing)})
        key += std::to_string(part) + " ";
    return key;
}

/// A number for each round, the same for rounds that are worked alike.
class Workings {
  public:
    std::vector<int> of(const Piece& piece) {
        std::vector<int> numbers;
        for (const Round& round : piece.rounds)
            numbers.push_back(
                numbers_.try_emplace(key_of(round), static_cast<int>(numbers_.size())).first->second);
        return numbers;
    }

  private:
    std::unordered_map<std::string, int> numbers_;
};

bool is_worked_evenly(const Round& round) { return std::holds_alternative<WorkedEvenly>(round.working); }

/// Two states of a piece's rounds, pair by pair.
class RoundComparison {
  public:
    RoundComparison(const Piece& before, const Piece& after, const YarnsBecome& yarns)
        : before_(before),
          after_(after),
          yarns_(yarns),
          counts_before_(round_counts(before)),
          counts_after_(round_counts(after)) {}

    [[nodiscard]] std::vector<DifferenceCode> of(const AlignedPair& pair) const {
        if (!pair.before) return {DifferenceCode::rounds_new};
        if (!pair.after) return {DifferenceCode::rounds_gone};
        const Round& then = before_.rounds[*pair.before];
        const Round& now = after_.rounds[*pair.after];
        std::vector<DifferenceCode> codes;
        const bool same_count = counts_before_[*pair.before] == counts_after_[*pair.after];
        if (!(then.working == now.working))
            codes.push_back(same_count ? DifferenceCode::rounds_stitches : DifferenceCode::rounds_counts);
        if (becomes(then.yarn) != now.yarn) codes.push_back(DifferenceCode::rounds_yarn);
        if (then.note != now.note) codes.push_back(DifferenceCode::rounds_note);
        if (then.lies_flat != now.lies_flat) codes.push_back(DifferenceCode::rounds_flat_mark);
        return codes;
    }

    void add_counts(Difference& run, const AlignedPair& pair) const {
        if (pair.before) run.then.push_back(counts_before_[*pair.before]);
        if (pair.after) run.now.push_back(counts_after_[*pair.after]);
    }

  private:
    [[nodiscard]] std::optional<std::size_t> becomes(std::size_t yarn) const {
        return yarn < yarns_.size() ? yarns_[yarn] : std::nullopt;
    }

    const Piece& before_;
    const Piece& after_;
    const YarnsBecome& yarns_;
    std::vector<int> counts_before_;
    std::vector<int> counts_after_;
};

/// Runs of neighbours that share a difference, while pairs are taken in order.
class Runs {
  public:
    explicit Runs(const RoundComparison& comparison) : comparison_(comparison) {}

    void take(const AlignedPair& pair) {
        const auto codes = comparison_.of(pair);
        std::erase_if(open_,
                      [&](const auto& run) { return std::ranges::find(codes, run.first) == codes.end(); });
        for (const DifferenceCode code : codes) {
            const auto [run, is_new] = open_.try_emplace(code, differences_.size());
            if (is_new) begin(code, pair);
            Difference& difference = differences_[run->second];
            difference.last = round_of(pair);
            if (shows_counts(code)) comparison_.add_counts(difference, pair);
        }
    }

    [[nodiscard]] std::vector<Difference> all() && { return std::move(differences_); }

  private:
    static int round_of(const AlignedPair& pair) {
        return static_cast<int>(pair.after ? *pair.after : *pair.before);
    }
    static bool shows_counts(DifferenceCode code) {
        return code == DifferenceCode::rounds_new || code == DifferenceCode::rounds_gone ||
               code == DifferenceCode::rounds_counts;
    }
    void begin(DifferenceCode code, const AlignedPair& pair) {
        Difference difference;
        difference.code = code;
        difference.first = round_of(pair);
        differences_.push_back(std::move(difference));
    }

    const RoundComparison& comparison_;
    std::unordered_map<DifferenceCode, std::size_t> open_;
    std::vector<Difference> differences_;
};

}  // namespace

std::vector<int> round_counts(const Piece& piece) {
    std::vector<int> counts;
    if (std::ranges::all_of(piece.rounds, is_worked_evenly)) {
        for (const Round& round : piece.rounds)
            counts.push_back(std::get<WorkedEvenly>(round.working).stitches);
    } else {
        counts = stitch_counts(piece_graph(piece).graph);
        counts.resize(piece.rounds.size());
    }
    return counts;
}

std::vector<AlignedPair> aligned_rounds(const Piece& before, const Piece& after) {
    Workings workings;
    const auto then = workings.of(before);
    const auto now = workings.of(after);
    const auto change = [&](std::size_t i, std::size_t k) {
        if (then[i] != now[k]) return worked_otherwise;
        const Round& a = before.rounds[i];
        const Round& b = after.rounds[k];
        return a.note == b.note && a.lies_flat == b.lies_flat ? 0 : marked_otherwise;
    };
    return align(before.rounds.size(), after.rounds.size(), {change, worked_otherwise});
}

std::vector<Difference> round_differences(const Piece& before, const Piece& after, const YarnsBecome& yarns) {
    const RoundComparison comparison(before, after, yarns);
    Runs runs(comparison);
    for (const AlignedPair& pair : aligned_rounds(before, after)) runs.take(pair);
    return std::move(runs).all();
}

}  // namespace roundwright
