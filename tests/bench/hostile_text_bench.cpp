#include <benchmark/benchmark.h>
#include <string>

#include "core/base/limits.h"
#include "core/language/pattern/read_pattern.h"

namespace {

using namespace roundwright;

// Lines as long as any that is read; longer ones are refused and cost nothing.
std::string repeated(const std::string& part, std::size_t bytes) {
    std::string text;
    text.reserve(bytes + part.size());
    std::size_t line = 0;
    while (text.size() < bytes) {
        text += part;
        line = part.back() == '\n' ? 0 : line + part.size();
        if (line + part.size() < max_line_bytes) continue;
        text += '\n';
        line = 0;
    }
    return text;
}

struct Hostile {
    const char* name;
    std::string part;
};

/// Texts made to keep a reader busy: each is repeated up to a mebibyte.
const Hostile hostile[] = {
    {"full_pieces", "Rnd 1: 199999 sc in MR\n"},
    {"full_pieces_in_words", "Rnd 1: [sc 3, inc, ch 2] x 33333 (7)\n"},
    {"full_even_rounds", "Rnd 1: 600 sc in MR\nRnds 2-300: sc in each st around\n"},
    {"beyond_every_limit", "Rnd 1: 999999999 sc in MR\nRnd 2: [sc 9, inc] x 999999999 (7)\n"},
    {"nested_repeats", "[[[[[sc] x 99] x 99] x 99] x 99] x 99\n"},
    {"chains_without_loops", "Rnd 1: 6 sc in MR\nRnd 2: [ch 1] x 199999, sc around (6)\n"},
    {"faulty_rounds", "Rnd 1: 6 sc in MR (6)\nRnd 2: scc 4, [inc, dec x 8 6, sc 3 (99)\n"},
    {"faulty_full_rounds", "Rnd 1: 90000 sc in MR\nRnd 2: [sc 3, inc] x 20000 (7)\n"},
    {"ambiguous_words",
     "Rnd 1: 6 sc in MR\nRnd 2: 3 sc in next 3 sts, inc 3, dec 3, 3 sc in next 3 sts (9)\n"},
    {"open_brackets", "("},
    {"open_bracket_lines", "(\n"},
    {"open_stars", "*sc "},
    {"times_alone", "x 9 "},
    {"bare_stitches", "sc\n"},
    {"one_long_round", "sc 1, inc, "},
    {"round_numbers", "Rnd 1-2000: "},
    {"repeats_of_rounds", "Rnd 1: 6 sc in MR\nRnds 2-2000: rep rnd 1\n"},
    {"not_text", "\xff\xfe\x80"},
    {"prose", "hello there you\n"},
    {"headings", "Head (make 2)\n\n"},
    {"unread_lines", "12 things of 5\n"},
    {"pieces_like_others", "Head (make 2)\nwork as head\n"},
    {"long_pieces_like_others",
     "Head\nRnd 1: 6 sc in MR\nRnds 2-300: sc around\n\nLeg (make 2)\nwork as head to round 7\n"},
    {"remarks_before_stitches", "5. stuff it\nsc\n"},
    {"one_word", "s"},
    {"digits", "7"},
    {"closing_brackets", ")"},
    {"look_alike_letters", "\xD1\x95\xD1\x81 6, "},
    {"joined_legs", "Leg (make 2)\nRnd 1: 6 sc in MR\nRnd 2: sc 6 around leg 1, sc 6 around leg 2\n"},
    {"left_loops", "Rnd 1: 600 sc in MR\nRnd 2: sc around\nRnd 3: in the front loops of Rnd 1: sc around\n"},
    {"left_loop_lines", "Rnd 1: 6 sc in MR\nRnd 2: sc around\nJoin yarn to a front loop of Rnd 1.\n"},
    {"rows_through_both", "Rnd 1: 6 sc in MR\nfold flat, sc through both layers\n"},
    {"two_columns", "Rnd 1: 6 sc in MR     Rnd 2: 6 inc\nRnd 3: 12 sc          Rnd 4: 12 sc\n\n"},
    {"tags", "<b><p <i>"},
    {"named_characters", "&nbsp;&"},
    {"growing_rounds", "Rnd 1: 6 sc in MR\nRnd 2: inc x 6\nContinue increasing until rnd 2000.\n"},
    {"lists_of_rounds", "Rnd 1: 6 sc in MR\nRnds 2, 9, 11, 13, 15, 17, 19: sc around\n"}};

void hostile_1MiB(benchmark::State& state, const std::string& part) {
    constexpr std::size_t mebibyte = 1024 * 1024;
    const std::string text = repeated(part, mebibyte);
    for (auto _ : state) benchmark::DoNotOptimize(read_pattern(text));
}

const bool registered = [] {
    for (const Hostile& one : hostile)
        benchmark::RegisterBenchmark((std::string("hostile_1MiB/") + one.name).c_str(),
                                     [&one](benchmark::State& state) { hostile_1MiB(state, one.part); })
            ->Unit(benchmark::kMillisecond);
    return true;
}();

}  // namespace
