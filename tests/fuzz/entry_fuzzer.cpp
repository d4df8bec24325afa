#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/limits.h"
#include "core/language/round/round_entry.h"

// Counts as they are typed: rounds stay within the limits, faults have a place in the text, one count by
// itself is what it is in a line, and what was understood reads the same when it is written.
namespace {

using namespace roundwright;

std::vector<int> counts_of(const std::vector<Round>& rounds) {
    std::vector<int> counts;
    for (const Round& round : rounds) counts.push_back(std::get<WorkedEvenly>(round.working).stitches);
    return counts;
}

void check_limits(const RoundEntry& entry, const EntryContext& context) {
    if (entry.rounds.size() + context.rounds_there > max_rounds_per_piece) std::abort();
    for (const int count : counts_of(entry.rounds))
        if (count < 1 || count > static_cast<int>(max_stitches_per_piece)) std::abort();
    for (const EntryProblem& problem : entry.problems)
        if (problem.where.line < 1 || problem.where.column < 1 || problem.where.length < 0) std::abort();
}

void check_written(const RoundEntry& entry, const EntryContext& context) {
    const std::vector<int> counts = counts_of(entry.rounds);
    const RoundEntry again = parse_round_entry(write_round_entry(counts), context);
    if (counts_of(again.rounds) != counts || !again.problems.empty()) std::abort();
}

void check_alone(std::string_view text, const RoundEntry& entry, const EntryContext& context) {
    const auto alone = parse_count_entry(text);
    if (!alone || alone->kind != CountEntry::Kind::count) return;
    const auto times = static_cast<std::size_t>(alone->times);
    if (times + context.rounds_there > max_rounds_per_piece) return;
    if (!entry.problems.empty() || counts_of(entry.rounds) != std::vector<int>(times, alone->value))
        std::abort();
}

}  // namespace

// The first two bytes are the edge below and the rounds that the piece has already.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    constexpr std::size_t settings = 2;
    constexpr std::size_t most = 100;
    if (size < settings || size > most) return 0;
    EntryContext context;
    context.below = data[0];
    context.rounds_there = std::size_t{data[1]} * 7;  // up to 1,785 of the 2,000 there may be
    const std::string_view text(reinterpret_cast<const char*>(data) + settings, size - settings);
    const RoundEntry entry = parse_round_entry(text, context);
    check_limits(entry, context);
    check_written(entry, context);
    check_alone(text, entry, context);
    if (looks_like_round_entry(text)) (void)parse_count_entry(text);
    return 0;
}
