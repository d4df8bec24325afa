#include "core/language/pattern/piece_reader.h"

#include <algorithm>
#include <cstdint>
#include <utility>

#include "core/base/limits.h"
#include "core/language/round/write.h"

namespace roundwright {
namespace {

constexpr int most_rounds = static_cast<int>(max_rounds_per_piece);

bool grows(const ReadRound& read) {
    return read.made.loops_below == 0 || read.made.loops_left != read.made.loops_below;
}

std::vector<Token> body_of(const std::vector<Token>& words, const RoundSyntax& syntax) {
    const auto end = static_cast<std::ptrdiff_t>(std::min(syntax.body_end, words.size()));
    return {words.begin(), words.begin() + end};
}

void check_count(ReadRound& read, const StatedCount& stated) {
    read.stated = stated;
    if (read.proved() && stated.count != read.stitches)
        read.diagnostics.push_back({.code = ReadCode::count_differs,
                                    .where = stated.where,
                                    .expected = stated.count,
                                    .found = read.stitches});
}

}  // namespace

PieceReader::PieceReader(ReadingState& state, Standing& standing, Piece piece, const PatternLine& first)
    : state_(state), standing_(standing), piece_(std::move(piece)), numbers_(first) {
    standing_.begin(piece_.start);
}

PieceReader::PieceReader(ReadingState& state, Standing& standing, Piece piece,
                         const ReadingState::WordsOfRounds& words)
    : state_(state), standing_(standing), piece_(std::move(piece)), numbers_(1), words_of_(words) {
    like_rounds_ = piece_.rounds.size();
    end_said_ = stuffing_said_ = true;
    state_.rounds += static_cast<int>(like_rounds_);
    stand_on_rounds();
}

void PieceReader::add(const PatternLine& line) {
    said_.clear();
    if (only_like_another()) end_said_ = false;
    check_number(line);
    add_rounds(line, TokenList(TokenList(), &line.tokens));
    while (const std::optional<PatternLine> later = numbers_.take_later()) {
        said_.clear();
        add_rounds(*later, std::make_shared<const std::vector<Token>>(later->tokens));
    }
}

// --- numbers

void PieceReader::check_number(const PatternLine& line) {
    if (line.numbers.empty()) return numbers_.note_header(line);
    if (line.last_number < line.first_number)
        report_number(line, ReadCode::range_reversed, line.first_number, line.last_number);
    const int number = line.numbers.front().first;
    const int rounds = line.last_number - line.first_number + 1;
    if (line.rounds_said > 0 && line.numbers.size() == 1 && rounds > 1 && rounds != line.rounds_said)
        report_number(line, ReadCode::rounds_differ, rounds, line.rounds_said);
    if (piece_.rounds.empty() && number > 1) report_number(line, ReadCode::rounds_missing, 1, number);
    if (number == numbers_.next() || piece_.rounds.empty()) return;
    const bool ahead = number > numbers_.next();
    report_number(line, ahead ? ReadCode::rounds_missing : ReadCode::round_out_of_order, numbers_.next(),
                  number);
    if (ahead) numbers_.leap_to(number);
}

void PieceReader::report_number(const PatternLine& line, ReadCode code, int expected, int found) {
    state_.report({.code = code,
                   .where = line.header,
                   .piece = state_.piece_index(),
                   .round = static_cast<int>(piece_.rounds.size()),
                   .expected = expected,
                   .found = found});
}

// --- limits

bool PieceReader::room_for_round(const PatternLine& line) {
    if (!state_.room_in_text(line)) return false;
    if (static_cast<int>(piece_.rounds.size()) < most_rounds) return true;
    if (!std::exchange(round_limit_said_, true))
        state_.report({.code = ReadCode::too_many_rounds,
                       .where = line.header,
                       .piece = state_.piece_index(),
                       .expected = most_rounds,
                       .found = std::max(line.last_number, most_rounds + 1)});
    return false;
}

// --- rounds of a line

void PieceReader::add_rounds(const PatternLine& line, const TokenList& words) {
    int rounds = numbers_.take(line);
    YarnTable yarns = state_.yarns;
    ReadRound read = standing_.read(line.tokens, yarns);
    if (read.syntax.repeats_from != 0) return repeat_rounds(line, read, rounds);
    if (read.syntax.rounds > 1) rounds = std::max(rounds, read.syntax.rounds);
    if (line.row) piece_.joining = Joining::rows;
    add_range(line, words, std::move(read), std::move(yarns), rounds);
}

void PieceReader::add_range(const PatternLine& line, const TokenList& words, ReadRound read, YarnTable yarns,
                            int rounds) {
    const std::size_t shown = show_line(line);
    const bool one_count = read.syntax.stated.size() == 1;
    bool counted = true;  // `read` was proved by the line's count
    for (int i = 0; i < rounds; ++i) {
        if (!room_for_round(line)) {
            cut(state_.out.lines[shown], i);
            break;
        }
        if (i > 0) yarns = state_.yarns;
        const bool last = i + 1 == rounds;
        const bool changes = grows(read) || !read.proved() || read.last_yarn != standing_.yarn() ||
                             read.syntax.stated.size() > 1;
        if (rounds > 1 && (changes || (last && one_count && !counted))) {
            read = read_one_of(*words, read, i, rounds, yarns);
            counted = last;
        }
        if (i > 0) read.note.clear();
        state_.yarns = std::move(yarns);
        add_round(read, words, shown);
    }
}

// One round of a range. A single count belongs to the last of them, several belong to one each.
ReadRound PieceReader::read_one_of(const std::vector<Token>& words, const ReadRound& first, int i, int rounds,
                                   YarnTable& yarns) {
    const auto& stated = first.syntax.stated;
    const bool listed = stated.size() == static_cast<std::size_t>(rounds);
    if (!listed && i + 1 == rounds && stated.size() < 2) return standing_.read(words, yarns);
    ReadRound read = standing_.read(body_of(words, first.syntax), yarns);
    if (listed) check_count(read, stated[static_cast<std::size_t>(i)]);
    read.note = first.note;
    read.syntax.stated = stated;
    read.syntax.body_end = first.syntax.body_end;
    return read;
}

// At a limit, before its round `at` from 0: what is left is not what the line says.
void PieceReader::cut(ReadLine& line, int at) {
    if (at == 0) line.left_out();
    line.proved = false;
}

std::size_t PieceReader::show_line(const PatternLine& line) {
    ReadLine& shown = state_.show(ReadLineKind::round, line, state_.piece_index(), "");
    shown.first_round = shown.last_round = static_cast<int>(piece_.rounds.size());
    return state_.out.lines.size() - 1;
}

void PieceReader::add_round(const ReadRound& read, const TokenList& words, std::size_t shown) {
    Round round;
    const int yarn = only_yarn(read.made).value_or(standing_.yarn());
    round.yarn = static_cast<std::size_t>(yarn);
    round.working = working_of(read, standing_.below(), yarn);
    round.note = read.note;
    for (const std::string& note : read.syntax.notes) {
        const LexedText text(note);
        for (const SourceLine& line : text.lines())
            for (const NoteMeaning& meaning : meanings_of_notes(line.tokens)) hear(meaning);
    }
    if (read.syntax.joined && piece_.joining == Joining::spiral) piece_.joining = Joining::joined;
    const int index = static_cast<int>(piece_.rounds.size());
    report_once(read, state_.out.lines[shown], index);
    show(state_.out.lines[shown], read, index);
    standing_.add(read, round);
    most_loops_ = std::max(most_loops_, read.made.loops_left);
    state_.yarns.first_is_free = false;
    ++state_.rounds;
    state_.stitches += static_cast<int>(read.made.stitches.size());
    words_of_[numbers_.next()] = words;
    numbers_.count_on();
    piece_.rounds.push_back(std::move(round));
}

// What is wrong in the words of a range is wrong in each of its rounds, and said for the first.
void PieceReader::report_once(const ReadRound& read, const ReadLine& line, int round) {
    for (ReadDiagnostic d : read.diagnostics) {
        const bool known = std::find(said_.begin(), said_.end(), d.code) != said_.end();
        if (round > line.first_round && known) continue;
        if (!known) said_.push_back(d.code);
        d.piece = state_.piece_index();
        d.round = round;
        state_.report(std::move(d));
    }
}

void PieceReader::show(ReadLine& line, const ReadRound& read, int round) {
    line.last_round = round;
    line.stitches = read.made.loops_left;
    line.proved = line.proved && read.proved();
    if (round == line.first_round)
        line.understood = round_words(read.made, round == 0, state_.out.terms, piece_);
}

// --- repeats: "Rnds 7-9: rep rnd 6", "Rnds 8-11: rep rnds 6 and 7"

void PieceReader::repeat_rounds(const PatternLine& line, const ReadRound& read, int rounds) {
    const bool before = read.syntax.repeats_from < 0;
    const int from = before ? numbers_.next() - 1 : read.syntax.repeats_from;
    const int length = (before ? from : read.syntax.repeats_to) - from + 1;
    const std::size_t shown = show_line(line);
    if (length < 1 || words_of_.count(from) == 0 || words_of_.count(from + length - 1) == 0)
        return unknown_round(line, read, from, shown);
    rounds = std::max({rounds, line.numbers.empty() ? length : rounds, read.syntax.rounds});
    for (int i = 0; i < rounds; ++i) {
        if (!room_for_round(line)) {
            cut(state_.out.lines[shown], i);
            break;
        }
        const auto words = words_of_.find(from + i % length);
        if (words == words_of_.end()) return unknown_round(line, read, from + i % length, shown);
        add_repeated(words->second, i + 1 == rounds ? read.stated : std::nullopt, i == 0 ? read.note : "",
                     shown);
    }
}

void PieceReader::add_repeated(const TokenList& words, const std::optional<StatedCount>& stated,
                               const std::string& note, std::size_t shown) {
    const RoundBelow& below = standing_.below();
    YarnTable yarns = state_.yarns;
    const RoundSyntax syntax = parse_round(*words, {state_.out.terms, below.into_ring, below.even}, yarns);
    const auto body = std::make_shared<const std::vector<Token>>(body_of(*words, syntax));
    yarns = state_.yarns;
    ReadRound read = standing_.read(*body, yarns);
    state_.yarns = std::move(yarns);
    read.note = note;
    if (stated) check_count(read, *stated);
    add_round(read, body, shown);
}

// In the place of a round that is not there, one worked even.
void PieceReader::unknown_round(const PatternLine& line, const ReadRound& read, int number,
                                std::size_t shown) {
    state_.report({.code = ReadCode::unknown_round,
                   .where = line.tokens.empty() ? line.header : line.tokens[0].where,
                   .piece = state_.piece_index(),
                   .round = static_cast<int>(piece_.rounds.size()),
                   .found = number});
    state_.out.lines[shown].proved = false;
    const RoundBelow& below = standing_.below();
    ReadRound even = read;
    even.made = even_round({below.loops, below.even, LoopPart::both, Spacing::stacked}, below.loops,
                           below.phase, static_cast<std::uint16_t>(standing_.yarn()));
    even.stitches = even.made.loops_left;
    even.last_yarn = standing_.yarn();
    even.diagnostics.clear();
    if (room_for_round(line)) add_round(even, std::make_shared<const std::vector<Token>>(), shown);
}

// --- notes and end

void PieceReader::hear(const NoteMeaning& meaning) {
    if (meaning.area_stretch && !(meaning.any_stuffing && stuffing_said_)) {
        piece_.area_stretch = *meaning.area_stretch;
        stuffing_said_ = true;
    }
    if (meaning.joining) piece_.joining = *meaning.joining;
    if (meaning.top_down) piece_.starts_at_top = true;
    if (meaning.eyes) piece_.features.push_back(*meaning.eyes);
    if (!meaning.end) return;
    piece_.end = *meaning.end;
    end_said_ = true;
}

// --- rounds of another piece

void PieceReader::stand_on_rounds() {
    const PieceGraph graph = piece_graph(piece_);
    standing_.begin(piece_.start);
    most_loops_ = 0;
    for (std::size_t i = 0; i < graph.graph.rounds.size(); ++i) {
        standing_.add(graph.graph.rounds[i], piece_.rounds[i]);
        most_loops_ = std::max(most_loops_, graph.graph.rounds[i].loops_left);
        state_.stitches += static_cast<int>(graph.graph.rounds[i].stitches.size());
    }
    numbers_.leap_to(static_cast<int>(piece_.rounds.size()) + 1);
}

void PieceReader::show_likeness(const PatternLine& line, const std::string& other) {
    ReadLine& shown = state_.show(ReadLineKind::like_piece, line, state_.piece_index(), other);
    like_shown_ = state_.out.lines.size() - 1;
    shown.first_round = 0;
    shown.last_round = static_cast<int>(piece_.rounds.size()) - 1;
    shown.stitches = standing_.below().loops;
}

void PieceReader::keep_rounds(int count) {
    if (count >= static_cast<int>(piece_.rounds.size())) return;
    piece_.rounds.resize(static_cast<std::size_t>(count));
    like_rounds_ = piece_.rounds.size();
    std::erase_if(piece_.features, [&](const Feature& feature) { return feature.round + 1 >= count; });
    stand_on_rounds();
    state_.out.lines[like_shown_].last_round = count - 1;
    state_.out.lines[like_shown_].stitches = standing_.below().loops;
}

void PieceReader::unread_likeness() { state_.out.lines[like_shown_].left_out(); }

Piece PieceReader::finish() {
    if (!end_said_ && looks_closed()) piece_.end = End::drawn_closed;
    standing_.end();
    return std::move(piece_);
}

// Common practice: a round worked down to eight stitches or fewer is drawn closed.
bool PieceReader::looks_closed() const {
    constexpr int most_drawn_closed = 8;
    const int loops = standing_.below().loops;
    return loops <= most_drawn_closed && most_loops_ > loops && piece_.joining != Joining::rows;
}

}  // namespace roundwright
