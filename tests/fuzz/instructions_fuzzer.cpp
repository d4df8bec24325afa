#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "core/language/pattern/read_pattern.h"
#include "core/language/pattern/write_pattern.h"
#include "core/rounds/piece_graph.h"
#include "tests/core/language/pattern/numbered_rounds.h"

// Whatever was read can be worked and written, every line is accounted for, and no numbered round is lost
// without a finding. Most inputs are short: what is odd is odd in a few lines, and many runs find more than
// long ones. One in sixteen of those that are worked is written too, chosen by its bytes.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    using namespace roundwright;
    constexpr std::size_t most = 1'024;
    if (size > most) return 0;
    const std::string_view text(reinterpret_cast<const char*>(data), size);
    const ReadPattern pattern = read_pattern(text);
    for (const Piece& piece : pattern.pieces) {
        const PieceGraph made = piece_graph(piece);
        if (made.graph.rounds.size() != piece.rounds.size()) std::abort();
    }
    if (pattern.complete() && testing::rounds_read(pattern) < testing::numbered_rounds(text)) std::abort();
    for (const LineAccount& line : pattern.account)
        if (line.entry >= static_cast<int>(pattern.lines.size())) std::abort();
    unsigned sum = 0;
    for (std::size_t i = 0; i < size; ++i) sum = sum * 31 + data[i];
    if (sum % 16 == 0) (void)write_toy(toy_of(pattern), Terms::uk);
    return 0;
}
