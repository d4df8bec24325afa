#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "core/language/pattern/read_pattern.h"
#include "core/language/pattern/write_pattern.h"
#include "core/rounds/piece_graph.h"
#include "tests/core/language/pattern/numbered_rounds.h"

// Whatever was read can be worked and written, every line is accounted for, and no numbered round is lost
// without a finding.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    using namespace roundwright;
    const std::string_view text(reinterpret_cast<const char*>(data), size);
    const ReadPattern pattern = read_pattern(text);
    for (const Piece& piece : pattern.pieces) {
        const PieceGraph made = piece_graph(piece);
        if (made.graph.rounds.size() != piece.rounds.size()) std::abort();
    }
    if (pattern.complete() && testing::rounds_read(pattern) < testing::numbered_rounds(text)) std::abort();
    for (const LineAccount& line : pattern.account)
        if (line.entry >= static_cast<int>(pattern.lines.size())) std::abort();
    constexpr std::size_t most_written = 512;
    if (size <= most_written) (void)write_toy(toy_of(pattern), Terms::uk);
    return 0;
}
