#include "core/language/pattern/read_counts.h"

#include <algorithm>

#include "core/language/round/round_entry.h"

namespace roundwright {
namespace {

class CountsReader {
  public:
    explicit CountsReader(const ReadOptions& options) {
        out_.terms = options.terms.value_or(Terms::us);
        out_.terms_sure = options.terms.has_value();
        out_.yarn_names = options.yarn_names;
        piece_.name = "Piece 1";
    }

    /// False where a line is no counts.
    bool read(const SourceLine& line) {
        EntryContext context;
        context.below = below_;
        context.rounds_there = piece_.rounds.size();
        const RoundEntry entry = parse_round_entry(line.raw, context);
        if (line.too_long || !entry.problems.empty()) return false;
        if (entry.rounds.empty()) {
            out_.account.push_back({ReadLineKind::note, -1});
            return true;
        }
        show(line, entry.rounds);
        piece_.rounds.insert(piece_.rounds.end(), entry.rounds.begin(), entry.rounds.end());
        return true;
    }

    std::optional<ReadPattern> take() {
        if (piece_.rounds.empty()) return std::nullopt;
        out_.tallies.push_back({static_cast<int>(piece_.rounds.size()), 0, 0});
        out_.pieces.push_back(std::move(piece_));
        return std::move(out_);
    }

  private:
    void show(const SourceLine& line, const std::vector<Round>& rounds) {
        std::vector<int> counts;
        for (const Round& round : rounds) counts.push_back(std::get<WorkedEvenly>(round.working).stitches);
        below_ = counts.back();
        ReadLine shown;
        shown.kind = ReadLineKind::round;
        shown.first_line = shown.last_line = line.number;
        shown.piece = 0;
        shown.first_round = static_cast<int>(piece_.rounds.size());
        shown.last_round = shown.first_round + static_cast<int>(rounds.size()) - 1;
        shown.stitches = below_;
        shown.understood = write_round_entry(counts);
        out_.account.push_back({shown.kind, static_cast<int>(out_.lines.size())});
        out_.lines.push_back(std::move(shown));
    }

    ReadPattern out_;
    Piece piece_;
    int below_ = 0;
};

}  // namespace

std::optional<ReadPattern> read_counts(const LexedText& text, const ReadOptions& options) {
    const auto& lines = text.lines();
    const auto counts_only = [](const SourceLine& line) { return looks_like_round_entry(line.raw); };
    if (!std::all_of(lines.begin(), lines.end(), counts_only)) return std::nullopt;
    CountsReader reader(options);
    for (const SourceLine& line : lines)
        if (!reader.read(line)) return std::nullopt;
    return reader.take();
}

}  // namespace roundwright
