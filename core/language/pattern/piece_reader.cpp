#include "core/language/pattern/piece_reader.h"

#include <algorithm>
#include <cstdint>
#include <utility>

#include "core/base/limits.h"
#include "core/language/pattern/doubtful_round.h"
#include "core/language/pattern/next_rounds.h"
#include "core/language/round/mends.h"
#include "core/language/round/token_cursor.h"
#include "core/language/round/write.h"
#include "core/language/words/one_line.h"

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

void PieceReader::add(const PatternLine& line, std::span<const PatternLine> after) {
    said_.clear();
    after_ = after;
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
    if (line.open_end) report_number(line, ReadCode::range_open, line.first_number, 0);
    if (line.last_number < line.first_number)
        report_number(line, ReadCode::range_reversed, line.first_number, line.last_number);
    const int number = line.numbers.front().first;
    const int rounds = line.last_number - line.first_number + 1;
    if (line.rounds_said > 0 && line.numbers.size() == 1 && rounds > 1 && rounds != line.rounds_said)
        report_number(line, ReadCode::rounds_differ, rounds, line.rounds_said);
    const bool goes_on = std::holds_alternative<WorkedOn>(piece_.start) || begins_late_;
    if (piece_.rounds.empty() && number > 1 && !goes_on)
        report_number(line, ReadCode::rounds_missing, 1, number);
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
    goes_on_from_ = 0;
    YarnTable yarns = state_.yarns;
    ReadRound read = standing_.read(line.tokens, yarns);
    for (ReadDiagnostic& d : read.diagnostics)
        if (line.tokens.empty()) d.where = line.header;
    if (read.syntax.repeats_from != 0) return repeat_rounds(line, read, rounds);
    if (read.syntax.grows_on != 0 && grow_on(line, read, rounds)) return;
    if (read.syntax.rounds > 1) rounds = std::max(rounds, read.syntax.rounds);
    if (line.row) piece_.joining = Joining::rows;
    add_range(line, words, std::move(read), std::move(yarns), rounds);
}

void PieceReader::add_range(const PatternLine& line, const TokenList& words, ReadRound read, YarnTable yarns,
                            int rounds) {
    const std::size_t shown = show_line(line);
    const bool one_count = read.syntax.stated.size() == 1;
    bool counted = true;  // `read` was proved by the line's count
    std::int64_t made = 0;
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
        made += read.stitches;
        if (last && i > 0) accept_sum(read, made);
        state_.yarns = std::move(yarns);
        add_round(read, words, shown);
    }
}

// "Rnds 3-5: sc around (36)" over 12 stitches: the count is that of all the rounds together.
void PieceReader::accept_sum(ReadRound& read, std::int64_t made) {
    if (!read.proved() && only_count_differs(read) && read.stated && read.stated->count == made)
        std::erase_if(read.diagnostics,
                      [](const ReadDiagnostic& d) { return d.code == ReadCode::count_differs; });
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
    const int yarn = only_yarn(read.made).value_or(standing_.yarn());
    if (read.proved()) return keep_round(read, working_of(read, standing_.below(), yarn), yarn, words, shown);
    ReadRound settled = read;
    auto working = settle(settled, *words);
    keep_round(settled, std::move(working), yarn, words, shown);
}

void PieceReader::keep_round(const ReadRound& read, std::variant<WorkedEvenly, AsWritten> working, int yarn,
                             const TokenList& words, std::size_t shown) {
    Round round;
    round.working = std::move(working);
    round.yarn = static_cast<std::size_t>(yarn);
    round.note = read.note;
    hear_notes(read.syntax);
    if (read.syntax.joined && piece_.joining == Joining::spiral) piece_.joining = Joining::joined;
    const int index = static_cast<int>(piece_.rounds.size());
    loops_before_ = standing_.below().loops;
    report_once(read, state_.out.lines[shown], index);
    show(state_.out.lines[shown], read, index);
    standing_.add(read, round);
    loops_of_.push_back(standing_.below().loops);
    most_loops_ = std::max(most_loops_, read.made.loops_left);
    state_.yarns.first_is_free = false;
    ++state_.rounds;
    state_.stitches += static_cast<int>(read.made.stitches.size());
    words_of_[numbers_.next()] = words;
    numbers_.count_on();
    piece_.rounds.push_back(std::move(round));
}

void PieceReader::hear_notes(const RoundSyntax& syntax) {
    for (const std::string& note : syntax.notes) {
        const LexedText text(note);
        for (const SourceLine& line : text.lines())
            for (const NoteMeaning& meaning : meanings_of_notes(line.tokens)) hear(meaning);
    }
}

// --- rounds that do not come out

// Takes a round that does not come out as its mend says, where that is sure, and else as so many stitches as
// the rounds after it go on from, worked evenly, with its words in the note: one bad round stays one.
std::variant<WorkedEvenly, AsWritten> PieceReader::settle(ReadRound& read, const std::vector<Token>& words) {
    const int yarn = standing_.yarn();
    const bool comes_out = only_count_differs(read) && !read.syntax.nodes.empty();
    GoingOn on = going_on_from(read, words, state_.yarns);
    const bool sure = on.confirmed || on.from == GoingOn::From::stated_count;
    std::variant<WorkedEvenly, AsWritten> working;
    if (comes_out && on.stitches == read.stitches) {
        on.mended = true;
        ReadRound as_worked = read;
        as_worked.diagnostics.clear();
        working = working_of(as_worked, standing_.below(), yarn);
    } else if (sure && !read.mended.empty() && read.mended.front().stitches == on.stitches) {
        on.mended = true;
        const std::string note = read.note;
        ReadRound mended = std::move(read.mended.front());
        working = working_of(mended, standing_.below(), only_yarn(mended.made).value_or(yarn));
        mended.diagnostics = std::move(read.diagnostics);
        read = std::move(mended);
    } else if (on.stitches > 0 && on.stitches <= room_for_stitches()) {
        working = worked_evenly(read, words, on.stitches);
    } else {
        working = AsWritten{read.words};
    }
    const auto worst = std::find_if(read.diagnostics.begin(), read.diagnostics.end(),
                                    [](const ReadDiagnostic& d) { return d.severity == Severity::error; });
    if (worst != read.diagnostics.end()) worst->goes_on = rounds_follow_ ? on : GoingOn{.mended = on.mended};
    ++(on.mended ? mended_ : refused_);
    read.mended.clear();
    return working;
}

GoingOn PieceReader::going_on_from(ReadRound& read, const std::vector<Token>& words, const YarnTable& yarns) {
    NextRounds next(after_, state_.out.terms, state_.yarns, state_.next_effort);
    rounds_follow_ = !next.none();
    first_bad_ = goes_on_from_ == 0;
    GoingOn on;
    if (goes_on_from_ > 0) {
        on = {GoingOn::From::next_rounds, goes_on_from_, false, false};
    } else {
        on = going_on(read, standing_.below(), next);
        prefer_growth_of_before(read, on);
        goes_on_from_ = on.stitches;
    }
    if (only_count_differs(read) && on.stitches != read.stitches) standing_.mend_words(read, words, yarns);
    put_first(read, on.stitches);
    return on;
}

// Where neither a count nor a round after it decides, the mend with which the piece grows by as many as
// before.
void PieceReader::prefer_growth_of_before(const ReadRound& read, GoingOn& on) const {
    if (on.confirmed || read.stated || piece_.rounds.size() < 2 || read.diagnostics.empty()) return;
    const int grown = 2 * standing_.below().loops - loops_before_;
    const auto& mends = read.diagnostics.front().mends;
    const bool grows_so =
        grown != standing_.below().loops &&
        std::any_of(mends.begin(), mends.end(), [&](const Mend& mend) { return mend.stitches == grown; });
    if (grows_so) on.stitches = grown;
}

int PieceReader::room_for_stitches() const {
    return static_cast<int>(max_stitches_per_piece) - standing_.below().stitches_so_far;
}

std::variant<WorkedEvenly, AsWritten> PieceReader::worked_evenly(ReadRound& read,
                                                                 const std::vector<Token>& words,
                                                                 int stitches) {
    const RoundBelow& below = standing_.below();
    const WorkedEvenly even{stitches, below.even, LoopPart::both, Spacing::stacked};
    read.made = even_round(even, below.loops, phase_of(even, below.loops, below.phase),
                           static_cast<std::uint16_t>(standing_.yarn()));
    read.stitches = read.made.loops_left;
    read.last_yarn = standing_.yarn();
    read.note = first_bad_ ? "As printed: " + on_one_line(said(words)) : "";
    return even;
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
    const int from = before ? numbers_.next() + read.syntax.repeats_from : read.syntax.repeats_from;
    const int length = (before ? numbers_.next() - 1 : read.syntax.repeats_to) - from + 1;
    const std::size_t shown = show_line(line);
    if (length < 1 || words_of_.count(from) == 0 || words_of_.count(from + length - 1) == 0)
        return unknown_round(line, read, from, shown);
    rounds = std::max({rounds, line.numbers.empty() ? length : rounds, read.syntax.rounds});
    if (read.syntax.repeats_until > 0)
        rounds = std::max(1, std::min(read.syntax.repeats_until, most_rounds + 1) - numbers_.next() + 1);
    else if (read.syntax.repeat_times > 0 && line.numbers.empty())
        rounds = static_cast<int>(
            std::min<std::int64_t>(std::int64_t{length} * read.syntax.repeat_times, most_rounds + 1));
    for (int i = 0; i < rounds; ++i) {
        if (!room_for_round(line)) {
            cut(state_.out.lines[shown], i);
            break;
        }
        const auto words = words_of_.find(from + i % length);
        if (words == words_of_.end()) return unknown_round(line, read, from + i % length, shown);
        add_repeated(line, words->second, i + 1 == rounds ? read.stated : std::nullopt,
                     i == 0 ? read.note : "", shown);
    }
}

void PieceReader::add_repeated(const PatternLine& line, const TokenList& words,
                               const std::optional<StatedCount>& stated, const std::string& note,
                               std::size_t shown) {
    const RoundBelow& below = standing_.below();
    YarnTable yarns = state_.yarns;
    const RoundSyntax syntax = parse_round(*words, {state_.out.terms, below.into_ring, below.even}, yarns);
    const auto body = std::make_shared<const std::vector<Token>>(body_of(*words, syntax));
    yarns = state_.yarns;
    ReadRound read = standing_.read(*body, yarns);
    state_.yarns = std::move(yarns);
    read.note = note;
    // What does not fit is the repeat; the words are sound where they stand.
    read.mended.clear();
    for (ReadDiagnostic& d : read.diagnostics) {
        d.where = line.tokens[0].where;
        d.mends.clear();
    }
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
    ReadRound even = even_round_of(standing_.below().loops);
    even.note = read.note;
    if (room_for_round(line)) add_round(even, std::make_shared<const std::vector<Token>>(), shown);
}

ReadRound PieceReader::even_round_of(int stitches) const {
    const RoundBelow& below = standing_.below();
    const WorkedEvenly even{stitches, below.even, LoopPart::both, Spacing::stacked};
    ReadRound read;
    read.made = even_round(even, below.loops, phase_of(even, below.loops, below.phase),
                           static_cast<std::uint16_t>(standing_.yarn()));
    read.stitches = read.made.loops_left;
    read.last_yarn = standing_.yarn();
    return read;
}

// --- "continue increasing in this manner", in a range, up to a round or up to a count

bool PieceReader::grow_on(const PatternLine& line, const ReadRound& read, int rounds) {
    const int step = piece_.rounds.size() > 1 ? standing_.below().loops - loops_before_ : 0;
    if (step * read.syntax.grows_on <= 0) return false;
    const int wanted = read.stated ? read.stated->count - standing_.below().loops : 0;
    if (read.syntax.repeats_until > 0)
        rounds = read.syntax.repeats_until - numbers_.next() + 1;
    else if (line.numbers.empty())
        rounds = wanted % step == 0 ? wanted / step : 0;
    if (rounds < 1 || rounds > most_rounds) return false;
    const std::size_t shown = show_line(line);
    const auto words = std::make_shared<const std::vector<Token>>();
    for (int i = 0; i < rounds && room_for_round(line); ++i) {
        const int stitches = standing_.below().loops + step;
        if (stitches < 1 || stitches > room_for_stitches()) break;
        ReadRound grown = even_round_of(stitches);
        if (i == 0) grown.note = read.note;
        if (read.stated && i + 1 == rounds) check_count(grown, *read.stated);
        add_round(grown, words, shown);
    }
    return true;
}

// --- dots

void PieceReader::fill(const PatternLine& dots, std::span<const PatternLine> after) {
    const auto next = std::find_if(after.begin(), after.end(),
                                   [](const PatternLine& line) { return line.header.length > 0; });
    const int rounds =
        next == after.end() || next->numbers.empty() ? 0 : next->numbers.front().first - numbers_.next();
    const bool grows_evenly = piece_.rounds.size() > 1;
    const int step = grows_evenly ? standing_.below().loops - loops_before_ : 0;
    NextRounds rest(after, state_.out.terms, state_.yarns, state_.next_effort);
    const auto fits = [&](int by) {
        RoundBelow on = standing_.below();
        on.loops += by * rounds;
        const NextRounds::Fit fit = on.loops > 0 ? rest.fit(on) : NextRounds::Fit{};
        return fit.proved;
    };
    if (rounds > 0 && rounds <= most_rounds) {
        const int even = fits(0);
        const int growing = step != 0 ? fits(step) : 0;
        if (even > 0 && even >= growing) return add_filled(dots, rounds, 0);
        if (growing > 0) return add_filled(dots, rounds, step);
    }
    state_.show(ReadLineKind::note, dots, state_.piece_index(), said(dots.tokens));
}

void PieceReader::add_filled(const PatternLine& dots, int rounds, int step) {
    state_.report({.code = ReadCode::rounds_filled,
                   .severity = Severity::note,
                   .where = dots.tokens[0].where,
                   .piece = state_.piece_index(),
                   .round = static_cast<int>(piece_.rounds.size()),
                   .expected = numbers_.next(),
                   .found = numbers_.next() + rounds - 1});
    const std::size_t shown = show_line(dots);
    const auto words = std::make_shared<const std::vector<Token>>();
    for (int i = 0; i < rounds && room_for_round(dots); ++i) {
        const int stitches = standing_.below().loops + step;
        if (stitches > room_for_stitches()) break;
        add_round(even_round_of(stitches), words, shown);
    }
}

// --- notes and end

void PieceReader::hear(const NoteMeaning& meaning) {
    if (meaning.area_stretch && !(meaning.any_stuffing && stuffing_said_)) {
        piece_.area_stretch = *meaning.area_stretch;
        stuffing_said_ = true;
    }
    if (meaning.stuffed_rounds) piece_.stuffed_rounds = meaning.stuffed_rounds;
    if (meaning.weight_grams) piece_.weight_grams = *meaning.weight_grams;
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
    loops_of_.clear();
    most_loops_ = 0;
    for (std::size_t i = 0; i < graph.graph.rounds.size(); ++i) {
        standing_.add(graph.graph.rounds[i], piece_.rounds[i]);
        loops_of_.push_back(standing_.below().loops);
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

RoundTally PieceReader::tally() const {
    return {static_cast<int>(piece_.rounds.size()) - mended_ - refused_, mended_, refused_};
}

// "Rnds 3 and 9: ..." where no round 8 comes.
void PieceReader::report_later_rounds() {
    while (const auto later = numbers_.take_last()) {
        PatternLine line = *later->second;
        report_number(line, ReadCode::round_not_taken, 0, later->first);
    }
}

Piece PieceReader::finish() {
    report_later_rounds();
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
