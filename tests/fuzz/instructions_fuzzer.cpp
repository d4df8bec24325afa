#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "core/language/pattern/read_pattern.h"
#include "core/language/pattern/write_pattern.h"
#include "core/rounds/piece_graph.h"
#include "tests/core/language/pattern/numbered_rounds.h"
#include "tests/fuzz/share_of_inputs.h"

// Whatever was read can be worked and written, every line is accounted for, and no numbered round is lost
// without a finding. Mends take five times as long as all the rest and are found for a share of the inputs
// (round_words_fuzzer tries them one by one); writing, too.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    using namespace roundwright;
    constexpr std::size_t most = 1'024;
    if (size > most) return 0;
    const std::string_view text(reinterpret_cast<const char*>(data), size);
    const testing::Share share(text);
    ReadOptions options;
    options.find_mends = share.is_first_of(32);
    const ReadPattern pattern = read_pattern(text, options);
    for (const Piece& piece : pattern.pieces) {
        const PieceGraph made = piece_graph(piece);
        if (made.graph.rounds.size() != piece.rounds.size()) std::abort();
    }
    if (pattern.complete() && testing::rounds_read(pattern) < testing::numbered_rounds(text)) std::abort();
    for (const LineAccount& line : pattern.account)
        if (line.entry >= static_cast<int>(pattern.lines.size())) std::abort();
    if (share.is_second_of(32)) (void)write_toy(toy_of(pattern), Terms::uk);
    return 0;
}
