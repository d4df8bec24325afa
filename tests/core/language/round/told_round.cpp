#include "tests/core/language/round/told_round.h"

#include <array>
#include <cstdio>

#include "core/language/round/write.h"
#include "core/language/words/terms.h"
#include "tests/core/language/round/asked_again.h"

namespace roundwright::test {
namespace {

using testing::RecordedText;

std::string told(const GraphStitch& made, int next_foot) {
    const Stitch& stitch = made.stitch;
    std::string all(abbreviation(stitch.kind, Terms::us));
    if (stitch.part == LoopPart::front) all += "FLO";
    if (stitch.part == LoopPart::back) all += "BLO";
    if (stitch.invisible) all += "inv";
    if (stitch.feet != 1) all += "^" + std::to_string(stitch.feet);
    if (stitch.yarn != 0) all += "y" + std::to_string(stitch.yarn);
    if (stitch.same_foot) all += "+";
    if (!stitch.same_foot && stitch.feet > 0 && made.first_foot != next_foot)
        all += "@" + std::to_string(made.first_foot);
    return all;
}

const char* told(Severity severity) {
    return severity == Severity::error ? "error" : severity == Severity::warning ? "warning" : "note";
}

std::string told(TextSpan where) {
    return std::to_string(where.line) + ":" + std::to_string(where.column) + "+" +
           std::to_string(where.length);
}

void tell_syntax(RecordedText& text, const RoundSyntax& syntax) {
    text.line("  said:");
    if (syntax.ring) text << (*syntax.ring == RingKind::magic ? "magic ring" : "chain ring");
    if (syntax.into_ring) text << "into ring";
    if (syntax.foundation > 0) text << "foundation" << syntax.foundation;
    if (syntax.foundation_joined) text << "joined foundation";
    if (syntax.from_hook > 0) text << "from hook" << syntax.from_hook;
    if (syntax.other_side) text << "other side";
    if (syntax.joined) text << "joined";
    if (syntax.turned) text << "turned";
    if (syntax.finished) text << "finished";
    if (syntax.unworked) text << "rest unworked";
    if (syntax.open) text << "open";
    if (syntax.starts_at > 0) text << "starts at" << syntax.starts_at;
    if (syntax.rounds != 1) text << "rounds" << syntax.rounds;
    if (syntax.repeats_from != 0) text << "repeats" << syntax.repeats_from << syntax.repeats_to;
    if (syntax.choices > 0) text << "choices" << syntax.choices;
    text << "body" << syntax.body_end << "names" << syntax.names.size();
    for (const StatedCount& stated : syntax.stated) text << "states" << stated.count << told(stated.where);
}

}  // namespace

std::string told_stitches(const GraphRound& round) {
    constexpr int most_runs = 80;
    std::string all, last;
    int count = 0, next_foot = 0, runs = 0;
    const auto end_run = [&] {
        if (count == 0 || ++runs > most_runs) return;
        all += (all.empty() ? "" : " ") + (count > 1 ? std::to_string(count) + "*" : "") + last;
        count = 0;
    };
    for (const GraphStitch& made : round.stitches) {
        const std::string one = told(made, next_foot);
        if (one != last) end_run();
        last = one;
        ++count;
        next_foot = made.first_foot + made.stitch.feet;
    }
    end_run();
    return all + (runs > most_runs ? " ..." : "");
}

std::string told(const Argument& argument) {
    if (const auto* words = std::get_if<std::string>(&argument)) return "'" + shown(*words) + "'";
    if (const auto* whole = std::get_if<int>(&argument)) return std::to_string(*whole);
    const auto* length = std::get_if<Millimetres>(&argument);
    std::array<char, 32> digits{};
    std::snprintf(digits.data(), digits.size(), "%.6g", length ? length->value : std::get<double>(argument));
    return digits.data();
}

void tell(RecordedText& text, const ReadDiagnostic& diagnostic, std::string_view words) {
    text.line("  ") << read_code_name(diagnostic.code) << told(diagnostic.severity) << told(diagnostic.where)
                    << diagnostic.expected << diagnostic.found;
    for (const Argument& argument : diagnostic.arguments) text << told(argument);
    if (diagnostic.piece >= 0) text << "piece" << diagnostic.piece;
    if (diagnostic.round >= 0) text << "round" << diagnostic.round;
    if (diagnostic.more > 0) text << "and" << diagnostic.more << "more";
    for (const Mend& mend : diagnostic.mends) {
        text.line("    ") << mend_code_name(mend.code);
        for (const Argument& argument : mend.arguments) text << told(argument);
        if (words.size() < 200)
            text << "->" << shown(mended(words, mend));
        else
            for (const TextEdit& edit : mend.edits) text << told(edit.where) << "'" + edit.replacement + "'";
    }
}

void tell(RecordedText& text, const ReadRound& read, std::string_view words) {
    text.line(read.proved() ? "  proved:" : "  not proved:")
        << "takes" << read.taken << "makes" << read.stitches << "leaves" << read.made.loops_left << "over"
        << read.made.loops_below;
    if (read.made.first_below != 0) text << "from" << read.made.first_below;
    if (read.stated) text << "stated" << read.stated->count << told(read.stated->where);
    if (read.last_yarn != 0) text << "last yarn" << read.last_yarn;
    for (const bool choice : read.choices) text << (choice ? "second reading" : "first reading");
    text << "effort" << read.effort;
    text.line("  stitches:") << told_stitches(read.made);
    StitchGraph graph;
    graph.foundation_loops = read.made.loops_below;
    graph.rounds.push_back(read.made);
    text.line("  written:") << round_words(graph, 0, Terms::us) << "|" << round_words(graph, 0, Terms::uk);
    text.line("  kept:") << shown(read.words) << "|"
                         << shown(words_in_terms(read.words, Terms::us, Terms::uk));
    if (!read.note.empty()) text.line("  note:") << shown(read.note);
    tell_syntax(text, read.syntax);
    for (const ReadDiagnostic& diagnostic : read.diagnostics) tell(text, diagnostic, words);
}

}  // namespace roundwright::test
