#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>

#include "core/language/pattern/read_pattern.h"
#include "core/language/pattern/write_pattern.h"
#include "core/rounds/piece_graph.h"
#include "tests/core/language/pattern/numbered_rounds.h"
#include "tests/fuzz/share_of_inputs.h"

namespace {

/// The text with two digits of every number. "Rnds 1-777: x" is read seven hundred times, and one such input
/// takes as long as a thousand others.
std::string with_short_numbers(std::string_view text) {
    std::string shorter;
    std::size_t digits = 0;
    for (const char c : text) {
        digits = c >= '0' && c <= '9' ? digits + 1 : 0;
        if (digits <= 2) shorter += c;
    }
    return shorter;
}

}  // namespace

// Whatever was read can be worked and written, every line is accounted for, and no numbered round is lost
// without a finding. What takes long is done for a share of the inputs: mends, which take five times as long
// as all the rest (round_words_fuzzer tries them one by one), writing, and large numbers.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    using namespace roundwright;
    constexpr std::size_t most = 1'024;
    if (size > most) return 0;
    const std::string_view bytes(reinterpret_cast<const char*>(data), size);
    const testing::Share share(bytes);
    const std::string text = share.is_third_of(32) ? std::string(bytes) : with_short_numbers(bytes);
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
    if (share.is_second_of(32)) (void)write_toy(toy_of(pattern), all_terms[size % all_terms.size()]);
    return 0;
}
