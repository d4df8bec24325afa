#include <gtest/gtest.h>

#include "core/language/pattern/find_terms.h"
#include "core/language/pattern/pattern_notes.h"
#include "core/language/pattern/read_pattern.h"
#include "core/language/pattern/write_pattern.h"
#include "core/language/pattern/written_rounds.h"
#include "tests/core/language/round/asked_again.h"
#include "tests/core/language/round/told_round.h"

namespace roundwright::test {
namespace {

using testing::RecordedText;

constexpr const char* line_kinds[] = {"title",    "heading",    "terms",   "yarn",      "start",
                                      "round",    "note",       "section", "materials", "abbreviation",
                                      "assembly", "like_piece", "not_read"};

template <class Number>
void tell_if(RecordedText& text, const char* name, Number number, Number usual) {
    if (number != usual) text << name << number;
}

void tell_lines(RecordedText& text, const ReadPattern& read) {
    for (const ReadLine& line : read.lines) {
        text.line("  ") << line_kinds[static_cast<std::size_t>(line.kind)] << line.first_line;
        tell_if(text, "to line", line.last_line, line.first_line);
        tell_if(text, "of piece", line.piece, -1);
        tell_if(text, "round", line.first_round, -1);
        tell_if(text, "to round", line.last_round, line.first_round);
        tell_if(text, "makes", line.stitches, 0);
        if (!line.proved) text << "(not proved)";
        if (!line.understood.empty()) text << "=" << shown(line.understood);
    }
    text.line("  lines:");
    for (const LineAccount& line : read.account)
        text << std::string(line_kinds[static_cast<std::size_t>(line.kind)]) + "/" +
                    std::to_string(line.entry);
}

std::string told_start(const Start& start) {
    if (const auto* ring = std::get_if<ChainRing>(&start))
        return "chain ring " + std::to_string(ring->chains);
    if (const auto* tube = std::get_if<OpenTube>(&start)) return "tube " + std::to_string(tube->chains);
    if (const auto* oval = std::get_if<OvalChain>(&start)) return "oval " + std::to_string(oval->chains);
    return "magic ring";
}

std::string told_round(const Round& round) {
    std::string all;
    if (const auto* even = std::get_if<WorkedEvenly>(&round.working)) {
        all = std::to_string(even->stitches);
        if (even->kind != StitchKind::single_crochet) all += abbreviation(even->kind, Terms::us);
        if (even->part != LoopPart::both) all += even->part == LoopPart::back ? "BLO" : "FLO";
        if (even->spacing == Spacing::staggered) all += "staggered";
    } else {
        all = "'" + shown(std::get<AsWritten>(round.working).words) + "'";
    }
    if (round.yarn != 0) all += "y" + std::to_string(round.yarn);
    if (round.lies_flat) all += " flat";
    if (!round.note.empty()) all += " note '" + shown(round.note) + "'";
    return all;
}

void tell_piece(RecordedText& text, const Piece& piece) {
    constexpr const char* ends[] = {"drawn closed", "left open", "sewn straight"};
    constexpr const char* joinings[] = {"spiral", "joined", "rows"};
    text.line("  piece") << "'" + piece.name + "'" << told_start(piece.start)
                         << ends[static_cast<int>(piece.end)] << joinings[static_cast<int>(piece.joining)];
    tell_if(text, "make", piece.make, 1);
    tell_if(text, "stretch", piece.area_stretch, medium_stuffing_stretch);
    if (piece.starts_at_top) text << "starts at top";
    std::string last;
    int times = 0;
    const auto end_run = [&] {
        if (times > 0) text << last + (times > 1 ? " x" + std::to_string(times) : "") + ";";
        times = 0;
    };
    text.line("    ");
    for (const Round& round : piece.rounds) {
        const std::string now = told_round(round);
        if (now != last) end_run();
        last = now;
        ++times;
    }
    end_run();
}

void tell_text(RecordedText& text, const char* name, const std::string& said) {
    if (!said.empty()) text.line(name) << shown(said);
}

void answer_pattern(const Question& question, RecordedText& text) {
    ReadOptions options;
    if (question.heading.find(" in uk") != std::string::npos) options.terms = Terms::uk;
    if (question.heading.find(" in us") != std::string::npos) options.terms = Terms::us;
    if (question.heading.find(" has yarns") != std::string::npos) options.yarn_names = {"white", "", "grey"};
    const ReadPattern read = read_pattern(question.text + "\n", options);
    text.line("  reads as:") << (read.proved() ? "proved" : "not proved")
                             << (read.complete() ? "complete" : "not complete")
                             << terms_code(read.terms)
                             << (read.terms_sure ? "surely" : "perhaps");
    if (read.hook_mm) text << "hook" << *read.hook_mm;
    for (const std::string& name : read.yarn_names) text << "yarn '" + name + "'";
    tell_text(text, "  title:", read.title);
    tell_text(text, "  designer:", read.designer);
    tell_text(text, "  notes:", read.notes);
    tell_text(text, "  assembly:", read.assembly);
    tell_text(text, "  finishing:", read.finishing);
    tell_lines(text, read);
    for (const Piece& piece : read.pieces) tell_piece(text, piece);
    for (const ReadDiagnostic& diagnostic : read.diagnostics) tell(text, diagnostic, question.text);
}

void tell_written(RecordedText& text, const std::string& written) {
    std::string_view rest = written;
    while (!rest.empty()) {
        const std::size_t end = std::min(rest.find('\n'), rest.size());
        text.line("  | " + shown(rest.substr(0, end)));
        rest.remove_prefix(std::min(end + 1, rest.size()));
    }
}

void answer_written(const Question& question, RecordedText& text) {
    const Toy toy = toy_of(read_pattern(question.text + "\n"));
    tell_written(text, write_toy(toy, Terms::us));
    tell_written(text, write_toy(toy, Terms::uk));
    for (const Piece& piece : toy.pieces) {
        const PieceGraph graph = piece_graph(piece);
        text.line("  not repeatable in '" + piece.name + "':").each(rounds_not_repeatable(graph.graph));
        for (const RoundProblem& problem : graph.problems)
            text.line("  problem:") << problem.round << problem.where.line << problem.where.column
                                    << problem.where.length << problem.expected << problem.found
                                    << read_code_name(problem.code);
        for (const WrittenRounds& rounds : written_rounds(piece, graph, Terms::us, {1, 4}))
            text.line("  ") << written_line(rounds, piece.joining, "with A, ")
                            << (rounds.new_yarn ? "new yarn" : "") << (rounds.several_yarns ? "several" : "")
                            << (rounds.does_not_fit ? "does not fit" : "") << rounds.yarn;
    }
}

// The patterns are invented; their forms are those named in read_pattern_test.
TEST(RecordedPatterns, AreReadAsBefore) { expect_answers_as_recorded("read_patterns.txt", answer_pattern); }

TEST(RecordedPatterns, AreWrittenAsBefore) {
    expect_answers_as_recorded("written_patterns.txt", answer_written);
}

}  // namespace
}  // namespace roundwright::test
