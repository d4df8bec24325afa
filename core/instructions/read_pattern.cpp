#include "core/instructions/read_pattern.h"

#include <algorithm>
#include <deque>
#include <map>
#include <memory>
#include <utility>

#include "core/base/limits.h"
#include "core/instructions/pattern_lines.h"
#include "core/instructions/pattern_notes.h"
#include "core/instructions/piece_graph.h"
#include "core/instructions/token_cursor.h"
#include "core/instructions/write.h"

namespace roundwright {
namespace {

using TokenList = std::shared_ptr<const std::vector<Token>>;

constexpr int most_rounds = static_cast<int>(max_rounds_per_piece);
constexpr std::size_t most_diagnostics = 10'000;

void add_line(std::string& text, const std::string& line) {
    if (!text.empty() && !line.empty()) text += '\n';
    text += line;
}

bool has_word(const std::vector<Token>& tokens, std::string_view word) {
    return std::any_of(tokens.begin(), tokens.end(), [&](const Token& t) { return t.is(word); });
}

struct Later {
    int last = 0;
    const PatternLine* line = nullptr;
};

/// The piece that is being read.
struct Current {
    Piece piece;
    bool numbered = true;
    int next_number = 1;
    std::map<int, TokenList> words_of;  // by the number that the text gives the round
    std::map<int, Later> later;         // rounds of "Rnds 7, 9 and 11" whose turn has not come, by the first
    int most_loops = 0;
};

/// Builds pieces from the lines of a pattern, one after the other.
class PatternReader {
  public:
    PatternReader(const LexedText& text, const ReadOptions& options) {
        const FoundTerms found = find_terms(text.lines());
        out_.terms = options.terms.value_or(found.terms);
        out_.terms_sure = options.terms.has_value() || found.sure;
        yarns_.names = options.yarn_names;
        yarns_.first_is_free = true;
        lines_ = pattern_lines(text, out_.terms, joined_);
        if (!options.terms) report_terms(found);
        if (text.not_utf8())
            report({ReadCode::not_utf8, Severity::warning, *text.not_utf8(), -1, -1, 0, 0, {}, {}});
    }

    ReadPattern run() {
        for (const PatternLine& line : lines_) {
            take(line);
            after_blank_ = line.kind == LineKind::blank;
        }
        end_piece(pending_.size());
        flush_pending(pending_.size());
        out_.yarn_names = yarns_.names;
        if (out_.pieces.empty())
            report({ReadCode::no_rounds, Severity::error, TextSpan{1, 1, 0}, -1, -1, 0, 0, {}, {}});
        std::stable_sort(out_.lines.begin(), out_.lines.end(),
                         [](const ReadLine& x, const ReadLine& y) { return x.first_line < y.first_line; });
        std::stable_sort(out_.diagnostics.begin(), out_.diagnostics.end(),
                         [](const ReadDiagnostic& x, const ReadDiagnostic& y) {
                             return std::pair(x.where.line, x.where.column) <
                                    std::pair(y.where.line, y.where.column);
                         });
        return std::move(out_);
    }

  private:
    // --- lines

    void take(const PatternLine& line) {
        if (line.kind == LineKind::blank) return;
        if (line.kind == LineKind::round && line.header.length > 0) return take_round(line);
        const bool works = line.kind != LineKind::text && !in_section_;
        if (!works || !take_work(line)) take_text(line);
    }

    // A line of stitches without a number: a start, a whole round of a pattern that numbers none, or a note.
    bool take_work(const PatternLine& line) {
        constexpr std::size_t longest = 400;
        if (line.tokens.size() > longest || is_definition(line.tokens)) return false;
        YarnTable yarns = yarns_;
        const ReadRound read = try_tokens(line.tokens, yarns);
        if (is_start(read)) return take_start(line, read);
        if (const int yarn = only_names_yarn(read); yarn >= 0) return take_yarn(line, yarn, yarns);
        if (!is_round(line, read)) {
            const bool left_out = piece_ && read.proved() && !has_code(read, ReadCode::unknown_words) &&
                                  !read.made.stitches.empty();
            if (left_out)
                report({ReadCode::line_not_understood,
                        Severity::note,
                        line.tokens[0].where,
                        piece_index(),
                        -1,
                        0,
                        0,
                        {line.raw},
                        {}});
            return false;
        }
        if (piece_ && read.syntax.into_ring && !piece_->piece.rounds.empty()) end_piece(heading_at());
        take_round(line);
        return true;
    }

    bool is_round(const PatternLine& line, const ReadRound& read) const {
        const bool words_known = !has_code(read, ReadCode::unknown_words) && !read.syntax.nodes.empty();
        const bool numbered = piece_ && piece_->numbered;
        if (started_ || !piece_)
            return words_known && (started_ || read.syntax.into_ring || read.syntax.foundation > 0);
        if (words_known && read.syntax.into_ring && (!numbered || !pending_.empty())) return true;
        if (words_known && read.proved() && read.syntax.rounds > 1) return true;
        return !numbered && ((words_known && read.proved()) || read.stated || line.counted);
    }

    // "sc = single crochet", "inc: 2 sc in next st", "MR - magic ring": what an abbreviation means.
    bool is_definition(const std::vector<Token>& tokens) const {
        const auto name = match_name(tokens, out_.terms);
        const std::size_t at = name ? static_cast<std::size_t>(name->length) : 1;
        if (at >= tokens.size()) return name.has_value();
        if (tokens[at].is("=")) return true;
        if (!tokens[at].is(":") && !(tokens[at].is("-") && tokens[at].spaced)) return false;
        const bool numbers = std::any_of(tokens.begin(), tokens.end(),
                                         [](const Token& t) { return t.kind == TokenKind::number; });
        return name ? !has_count(tokens) : !numbers;
    }

    static bool has_code(const ReadRound& read, ReadCode code) {
        return std::any_of(read.diagnostics.begin(), read.diagnostics.end(),
                           [&](const ReadDiagnostic& d) { return d.code == code; });
    }

    // --- starts: "Ch 7.", "Ch 4, sl st to form a ring", "Make a magic ring"

    // "Change to white.", "With grey yarn:"; -1 when stitches are made too.
    static int only_names_yarn(const ReadRound& read) {
        if (read.syntax.nodes.size() != 1 || has_code(read, ReadCode::unknown_words) || read.stated)
            return -1;
        const auto* change = std::get_if<YarnChange>(&read.syntax.nodes[0].what);
        return change == nullptr ? -1 : change->yarn;
    }

    bool take_yarn(const PatternLine& line, int yarn, const YarnTable& yarns) {
        yarns_ = yarns;
        next_yarn_ = yarn;
        return show_text(ReadLineKind::yarn, line, yarns_.names[static_cast<std::size_t>(yarn)]);
    }

    // Chains of words that make nothing else; 0: they make something else.
    static int only_chains(const ReadRound& read) {
        int chains = 0;
        for (const Node& node : read.syntax.nodes) {
            const auto* work = std::get_if<Work>(&node.what);
            if (work == nullptr || work->members[0].stitch.kind != StitchKind::chain) return 0;
            chains = std::min(chains + work->extent.number, static_cast<int>(max_stitches_per_piece));
        }
        return chains;
    }

    bool is_start(const ReadRound& read) const {
        if (has_code(read, ReadCode::unknown_words) || read.stated || read.syntax.turned) return false;
        if (piece_ && pending_.empty() && piece_->piece.rounds.size() < 2) return false;
        if (read.syntax.nodes.empty()) return read.syntax.foundation > 0 || read.syntax.into_ring;
        return only_chains(read) > 1;
    }

    bool take_start(const PatternLine& line, const ReadRound& read) {
        start_ = {};
        start_.line = &line;
        start_.chains = read.syntax.foundation > 0 ? read.syntax.foundation : only_chains(read);
        start_.ring = read.syntax.ring;
        start_.from_hook = read.syntax.from_hook;
        start_.both_sides = read.syntax.other_side;
        started_ = true;
        return true;
    }

    // --- rounds

    struct Started {
        const PatternLine* line = nullptr;
        int chains = 0;
        std::optional<RingKind> ring;
        int from_hook = 0;
        bool both_sides = false;
    };

    int piece_index() const { return static_cast<int>(out_.pieces.size()); }

    void take_round(const PatternLine& line) {
        if (full_) return;
        in_section_ = false;
        const int number = line.numbers.empty() ? 0 : line.numbers.front().first;
        const bool rounds_before = piece_ && !piece_->piece.rounds.empty();
        if (rounds_before && (number == 1 || (started_ && number == 0))) end_piece(heading_at());
        if (!piece_ && out_.pieces.size() >= max_pieces) return too_many_pieces(line);
        if (!piece_)
            begin_piece(line);
        else if (started_)
            drop_start();
        if (next_yarn_ >= 0) yarn_ = std::exchange(next_yarn_, -1);
        flush_pending(pending_.size());
        check_number(line);
        add_rounds(line);
    }

    // A chain that no first round follows was a note.
    void drop_start() {
        add_note(*start_.line);
        start_ = {};
        started_ = false;
    }

    void too_many_pieces(const PatternLine& line) {
        if (!full_)
            report({ReadCode::too_many_pieces,
                    Severity::error,
                    line.header,
                    -1,
                    -1,
                    static_cast<int>(max_pieces),
                    static_cast<int>(max_pieces) + 1,
                    {},
                    {}});
        full_ = true;
    }

    void check_number(const PatternLine& line) {
        Current& now = *piece_;
        if (line.numbers.empty()) {
            now.numbered = now.numbered && line.header.length > 0;
            return;
        }
        if (line.last_number < line.first_number)
            report_number(line, ReadCode::range_reversed, line.first_number, line.last_number,
                          Severity::warning);
        const int number = line.numbers.front().first;
        if (number == now.next_number || now.piece.rounds.empty()) return;
        const ReadCode code =
            number > now.next_number ? ReadCode::rounds_missing : ReadCode::round_out_of_order;
        report_number(line, code, now.next_number, number, Severity::warning);
        if (number > now.next_number) now.next_number = number;
    }

    void report_number(const PatternLine& line, ReadCode code, int expected, int found, Severity severity) {
        ReadDiagnostic d{code,
                         severity,
                         line.header,
                         piece_index(),
                         static_cast<int>(piece_->piece.rounds.size()),
                         expected,
                         found,
                         {},
                         {}};
        report(std::move(d));
    }

    // How many rounds a line stands for, and which of its numbers come later.
    int rounds_of(const PatternLine& line) {
        if (line.numbers.size() < 2) return std::max(line.rounds, 1);
        for (std::size_t i = 1; i < line.numbers.size(); ++i)
            piece_->later[line.numbers[i].first] = {line.numbers[i].last, &line};
        return line.numbers.front().size();
    }

    void add_rounds(const PatternLine& line) {
        Current& now = *piece_;
        auto words = std::make_shared<const std::vector<Token>>(line.tokens);
        int rounds = rounds_of(line);
        YarnTable yarns = yarns_;
        ReadRound read = read_here(*words, yarns);
        if (read.syntax.repeats_from != 0) return repeat_rounds(line, read, rounds);
        if (read.syntax.rounds > 1) rounds = std::max(rounds, read.syntax.rounds);
        if (line.row) now.piece.joining = Joining::rows;
        const std::size_t index = show_round(line);
        for (int i = 0; i < rounds; ++i) {
            if (!room_for_round(line)) break;
            const bool last = i + 1 == rounds;
            if (i > 0) yarns = yarns_;
            const bool changes =
                grows(read) || !read.proved() || read.last_yarn != yarn_ || read.syntax.stated.size() > 1;
            if (rounds > 1 && changes && (i > 0 || !last)) read = read_one_of(*words, read, i, rounds, yarns);
            if (i > 0) read.note.clear();
            yarns_ = std::move(yarns);
            add_round(read, words, index);
        }
        add_later();
    }

    static bool grows(const ReadRound& read) {
        return read.made.loops_below == 0 || read.made.loops_left != read.made.loops_below;
    }

    // One round of a range. A single count belongs to the last of them, several belong to one each.
    ReadRound read_one_of(const std::vector<Token>& words, const ReadRound& first, int i, int rounds,
                          YarnTable& yarns) {
        const auto& stated = first.syntax.stated;
        const bool listed = stated.size() == static_cast<std::size_t>(rounds);
        if (listed || i + 1 < rounds || stated.size() > 1) {
            const std::vector<Token> body(
                words.begin(),
                words.begin() + static_cast<std::ptrdiff_t>(std::min(first.syntax.body_end, words.size())));
            ReadRound read = read_here(body, yarns);
            if (listed) check_count(read, stated[static_cast<std::size_t>(i)]);
            read.note = first.note;
            read.syntax.stated = stated;
            read.syntax.body_end = first.syntax.body_end;
            return read;
        }
        return read_here(words, yarns);
    }

    static void check_count(ReadRound& read, const StatedCount& stated) {
        read.stated = stated;
        if (read.proved() && stated.count != read.stitches)
            read.diagnostics.push_back({ReadCode::count_differs,
                                        Severity::error,
                                        stated.where,
                                        -1,
                                        -1,
                                        stated.count,
                                        read.stitches,
                                        {},
                                        {}});
    }

    // Rounds of a list ("Rnds 7, 9 and 11") that come next.
    void add_later() {
        if (!piece_ || adding_later_) return;
        adding_later_ = true;
        while (piece_ && !piece_->later.empty() && piece_->later.begin()->first == piece_->next_number) {
            const auto [number, later] = *piece_->later.begin();
            piece_->later.erase(piece_->later.begin());
            PatternLine then = *later.line;
            then.numbers = {{number, later.last}};
            then.rounds = then.numbers.front().size();
            add_rounds(then);
        }
        adding_later_ = false;
    }

    bool room_for_round(const PatternLine& line) {
        if (!room_in_text(line)) return false;
        if (static_cast<int>(piece_->piece.rounds.size()) < most_rounds) return true;
        if (!round_limit_said_)
            report({ReadCode::too_many_rounds,
                    Severity::error,
                    line.header,
                    piece_index(),
                    -1,
                    most_rounds,
                    std::max(line.last_number, most_rounds + 1),
                    {},
                    {}});
        round_limit_said_ = true;
        return false;
    }

    // All the pieces of a text together.
    bool room_in_text(const PatternLine& line) {
        constexpr int rounds = static_cast<int>(max_rounds_per_text);
        constexpr int stitches = static_cast<int>(max_stitches_per_text);
        if (full_) return false;
        if (rounds_ < rounds && stitches_ < stitches) return true;
        const bool by_rounds = rounds_ >= rounds;
        report({by_rounds ? ReadCode::rounds_of_text : ReadCode::stitches_of_text,
                Severity::error,
                line.header,
                piece_index(),
                -1,
                by_rounds ? rounds : stitches,
                by_rounds ? rounds_ + 1 : stitches_,
                {},
                {}});
        full_ = true;
        return false;
    }

    std::size_t show_round(const PatternLine& line) {
        ReadLine shown;
        shown.kind = ReadLineKind::round;
        shown.first_line = line.first_line;
        shown.last_line = line.last_line;
        shown.piece = piece_index();
        shown.first_round = static_cast<int>(piece_->piece.rounds.size());
        shown.last_round = shown.first_round;
        out_.lines.push_back(shown);
        return out_.lines.size() - 1;
    }

    // Reads a round on what stands below. After a round that did not come out, what it states and what it
    // makes are both tried.
    ReadRound read_here(const std::vector<Token>& tokens, YarnTable& yarns) {
        const YarnTable before = yarns;
        ReadRound read = read_tokens(tokens, below_, yarns);
        if (read.proved() || other_loops_ < 0 || trial_effort_ < other_loops_) return read;
        RoundBelow other = below_;
        other.loops = other_loops_;
        YarnTable other_yarns = before;
        ReadRound again = read_tokens(tokens, other, other_yarns);
        trial_effort_ -= again.effort;
        if (!again.proved()) return read;
        below_ = other;
        yarns = other_yarns;
        return again;
    }

    ReadRound read_tokens(const std::vector<Token>& tokens, const RoundBelow& below, YarnTable& yarns) {
        RoundSetting setting = below.setting(yarn_, out_.terms);
        if (!piece_) {
            // A round that nothing is known to stand below can only begin a piece.
            setting.work.into_ring = true;
            setting.work.loops_below = 0;
        }
        setting.budget = &budget_;
        return read_round(tokens, setting, yarns);
    }

    // Lines that may be rounds are tried; what all the trials of a text may work is held, so that no text
    // keeps the reader waiting.
    ReadRound try_tokens(const std::vector<Token>& tokens, YarnTable& yarns) {
        RoundBelow below = below_;
        const int room = static_cast<int>(max_stitches_per_piece);
        below.stitches_so_far = std::max(below.stitches_so_far, room - std::max(0, trial_effort_));
        ReadRound read = read_tokens(tokens, below, yarns);
        trial_effort_ -= read.effort;
        return read;
    }

    void add_round(const ReadRound& read, const TokenList& words, std::size_t shown) {
        Current& now = *piece_;
        Round round;
        const int yarn = only_yarn(read.made).value_or(yarn_);
        round.yarn = static_cast<std::size_t>(yarn);
        round.working = working_of(read, below_, yarn);
        round.note = read.note;
        apply_notes(read.syntax.notes);
        if (read.syntax.joined && now.piece.joining == Joining::spiral) now.piece.joining = Joining::joined;
        const int index = static_cast<int>(now.piece.rounds.size());
        for (ReadDiagnostic d : read.diagnostics) {
            d.piece = piece_index();
            d.round = index;
            report(std::move(d));
        }
        show(out_.lines[shown], read, index);
        below_.add(read.made, std::get_if<WorkedEvenly>(&round.working));
        now.most_loops = std::max(now.most_loops, below_.loops);
        stand_on(read);
        yarn_ = read.last_yarn;
        yarns_.first_is_free = false;
        ++rounds_;
        stitches_ += static_cast<int>(read.made.stitches.size());
        now.words_of[now.next_number] = words;
        ++now.next_number;
        now.piece.rounds.push_back(std::move(round));
    }

    // The next round stands on what this one makes or, when it does not come out, on the count it states.
    void stand_on(const ReadRound& read) {
        other_loops_ = -1;
        if (read.proved()) return;
        const bool absurd = read.stitches > static_cast<int>(max_stitches_per_piece);
        const int made = absurd ? read.made.loops_left : read.stitches;
        below_.loops = made;
        if (!read.stated || read.stated->count == made ||
            read.stated->count > static_cast<int>(max_stitches_per_piece))
            return;
        other_loops_ = made;
        below_.loops = read.stated->count;
    }

    void show(ReadLine& line, const ReadRound& read, int index) {
        line.last_round = index;
        line.stitches = read.made.loops_left;
        line.proved = line.proved && read.proved();
        if (index == line.first_round)
            line.understood = round_words(read.made, index == 0, out_.terms, piece_->piece);
    }

    void report(ReadDiagnostic diagnostic) {
        if (out_.diagnostics.size() < most_diagnostics) out_.diagnostics.push_back(std::move(diagnostic));
    }

    // "Rnds 7-9: rep rnd 6", "Rnds 8-11: rep rnds 6 and 7"
    void repeat_rounds(const PatternLine& line, const ReadRound& read, int rounds) {
        Current& now = *piece_;
        int from = read.syntax.repeats_from;
        int to = read.syntax.repeats_to;
        if (from < 0) from = to = now.next_number - 1;
        const int length = to - from + 1;
        const std::size_t shown = show_round(line);
        if (length < 1 || now.words_of.count(from) == 0 || now.words_of.count(to) == 0)
            return unknown_round(line, read, from, shown);
        rounds = std::max(rounds, line.numbers.empty() ? length : rounds);
        if (read.syntax.rounds > 1) rounds = std::max(rounds, read.syntax.rounds);
        std::optional<StatedCount> stated = read.stated;
        for (int i = 0; i < rounds; ++i) {
            if (!room_for_round(line)) break;
            const auto words = now.words_of.find(from + i % length);
            if (words == now.words_of.end()) return unknown_round(line, read, from + i % length, shown);
            add_repeated(words->second, i + 1 == rounds ? stated : std::nullopt, i == 0 ? read.note : "",
                         shown);
        }
        add_later();
    }

    void add_repeated(const TokenList& words, const std::optional<StatedCount>& stated,
                      const std::string& note, std::size_t shown) {
        YarnTable yarns = yarns_;
        const RoundSyntax syntax = parse_round(*words, {out_.terms, below_.into_ring, below_.even}, yarns);
        const auto body = std::make_shared<const std::vector<Token>>(
            words->begin(),
            words->begin() + static_cast<std::ptrdiff_t>(std::min(syntax.body_end, words->size())));
        yarns = yarns_;
        ReadRound read = read_here(*body, yarns);
        yarns_ = std::move(yarns);
        read.note = note;
        if (stated) check_count(read, *stated);
        add_round(read, body, shown);
    }

    void unknown_round(const PatternLine& line, const ReadRound& read, int number, std::size_t shown) {
        ReadDiagnostic d{ReadCode::unknown_round,
                         Severity::error,
                         line.tokens.empty() ? line.header : line.tokens[0].where,
                         piece_index(),
                         static_cast<int>(piece_->piece.rounds.size()),
                         0,
                         number,
                         {},
                         {}};
        report(d);
        out_.lines[shown].proved = false;
        const auto nothing = std::make_shared<const std::vector<Token>>();
        ReadRound even = read;
        even.made = even_round({below_.loops, below_.even, LoopPart::both, Spacing::stacked}, below_.loops,
                               below_.phase, static_cast<std::uint16_t>(yarn_));
        even.stitches = even.made.loops_left;
        even.last_yarn = yarn_;
        even.diagnostics.clear();
        if (room_for_round(line)) add_round(even, nothing, shown);
    }

    // --- pieces

    void begin_piece(const PatternLine& line) {
        piece_.emplace();
        piece_->numbered = line.header.length > 0;
        piece_->next_number = line.numbers.empty() ? 1 : line.numbers.front().first;
        name_piece();
        find_start(line);
        below_ = RoundBelow::start(piece_->piece.start);
        other_loops_ = -1;
        yarn_ = 0;
        round_limit_said_ = false;
    }

    // How a piece starts is said by a line before it or by its first round.
    void find_start(const PatternLine& line) {
        YarnTable yarns = yarns_;
        const RoundSyntax syntax =
            parse_round(line.tokens, {out_.terms, true, StitchKind::single_crochet}, yarns);
        const int chains = syntax.foundation > 0 ? syntax.foundation : start_.chains;
        const int from_hook = std::max(syntax.from_hook, start_.from_hook);
        const std::optional<RingKind> ring = syntax.ring ? syntax.ring : start_.ring;
        const int worked =
            std::clamp(chains - std::max(0, from_hook - 1), 0, static_cast<int>(max_stitches_per_piece));
        Start& start = piece_->piece.start;
        if (chains == 0 || ring == RingKind::magic)
            start = MagicRing{};
        else if (ring == RingKind::chain && (syntax.into_ring || works_by_number(syntax)))
            start = ChainRing{chains};
        else if (worked <= 1)
            start = MagicRing{};  // a round worked into one chain draws as tight as a ring
        else if (syntax.other_side || start_.both_sides)
            start = OvalChain{worked};
        else
            start = OpenTube{worked};
        if (started_) show_start();
        start_ = {};
        started_ = false;
    }

    // "6 sc" works into a ring; "sc in each ch around" over its chains.
    static bool works_by_number(const RoundSyntax& syntax) {
        return std::all_of(syntax.nodes.begin(), syntax.nodes.end(), [](const Node& node) {
            const auto* work = std::get_if<Work>(&node.what);
            return work == nullptr || work->extent.kind == Extent::Kind::times;
        });
    }

    void show_start() {
        ReadLine shown;
        shown.kind = ReadLineKind::start;
        shown.first_line = start_.line->first_line;
        shown.last_line = start_.line->last_line;
        shown.piece = piece_index();
        shown.understood = start_words(piece_->piece, out_.terms);
        out_.lines.push_back(shown);
    }

    // Of the text that waits, the first `notes` lines still belong to the piece that ends.
    void end_piece(std::size_t notes) {
        if (!piece_) return;
        ending_ = true;
        flush_pending(notes);
        ending_ = false;
        Piece& piece = piece_->piece;
        if (!end_said_ && looks_closed(*piece_)) piece.end = End::drawn_closed;
        out_.pieces.push_back(std::move(piece));
        piece_.reset();
        end_said_ = false;
        other_loops_ = -1;
        below_ = {};
        below_.into_ring = true;
    }

    // Common practice: a round worked down to eight stitches or fewer is drawn closed.
    bool looks_closed(const Current& now) const {
        constexpr int most_drawn_closed = 8;
        return below_.loops <= most_drawn_closed && now.most_loops > below_.loops &&
               now.piece.joining != Joining::rows;
    }

    // --- text: headings, notes, yarns, terms

    struct Pending {
        const PatternLine* line = nullptr;
        std::optional<Heading> heading;
        int weight = 0;  // how surely it is a heading
    };

    void take_text(const PatternLine& line) {
        if (line.tokens.empty()) return;
        if (take_meta(line)) return;
        Pending pending;
        pending.line = &line;
        pending.heading = heading_of(line.tokens);
        if (pending.heading) weigh(pending);
        pending_.push_back(std::move(pending));
    }

    void weigh(Pending& pending) {
        const bool marked = pending.line->hashed || pending.heading->says_make;
        const bool first = pending_.empty() && !piece_;
        pending.weight = marked ? 3 : after_blank_ || first ? 2 : 1;
        if (pending.heading->section)
            in_section_ = true;
        else if (pending.weight > 1)
            in_section_ = false;
    }

    // The line that names the piece to come: the surest heading, the last of equals. The number of lines when
    // there is none.
    std::size_t heading_at() const {
        std::size_t best = pending_.size();
        for (std::size_t i = 0; i < pending_.size(); ++i) {
            const Pending& line = pending_[i];
            if (!could_name(line)) continue;
            if (best == pending_.size() || line.weight >= pending_[best].weight) best = i;
        }
        return best;
    }

    bool take_meta(const PatternLine& line) {
        if (const auto yarn = yarn_line(line.tokens); yarn && !yarn->name.empty()) {
            if (yarns_.names.size() <= static_cast<std::size_t>(yarn->yarn))
                yarns_.names.resize(static_cast<std::size_t>(yarn->yarn) + 1);
            yarns_.names[static_cast<std::size_t>(yarn->yarn)] = yarn->name;
            return show_text(ReadLineKind::yarn, line, yarn->name);
        }
        if (const auto hook = hook_line(line.tokens); hook && !piece_) {
            out_.hook_mm = *hook;
            return show_text(ReadLineKind::note, line, line.raw);
        }
        const bool said = line.tokens.size() <= 6 &&
                          (has_word(line.tokens, "us") || has_word(line.tokens, "uk")) &&
                          has_word(line.tokens, "terms");
        if (said) return show_text(ReadLineKind::terms, line, line.raw);
        if (!piece_ && line.tokens.size() > 2 && line.tokens[0].is("title") && line.tokens[1].is(":")) {
            out_.title = said_of(line, 2);
            return show_text(ReadLineKind::title, line, out_.title);
        }
        const bool by = line.tokens.size() > 2 && line.tokens[0].is("designed") && line.tokens[1].is("by") &&
                        !piece_ && out_.designer.empty();
        if (!by) return false;
        out_.designer = said_of(line, 2);
        return show_text(ReadLineKind::title, line, line.raw);
    }

    static std::string said_of(const PatternLine& line, std::size_t from) {
        return said(std::span(line.tokens).subspan(from));
    }

    bool show_text(ReadLineKind kind, const PatternLine& line, const std::string& text) {
        ReadLine shown;
        shown.kind = kind;
        shown.first_line = line.first_line;
        shown.last_line = line.last_line;
        shown.piece = piece_ ? piece_index() : -1;
        shown.understood = text;
        out_.lines.push_back(std::move(shown));
        return true;
    }

    // The first heading of all is the title, when another one names the piece.
    void name_piece() {
        if (out_.pieces.empty()) take_title();
        flush_pending(heading_at());
        Piece& piece = piece_->piece;
        std::vector<Pending> rest;
        for (Pending& line : pending_) {
            const bool names =
                line.heading && piece.name.empty() && !line.heading->name.empty() && !line.heading->section;
            const bool makes = line.heading && line.heading->says_make && line.heading->name.empty();
            if (names) piece.name = line.heading->name;
            if (line.heading && line.heading->says_make && (names || makes))
                piece.make = std::clamp(line.heading->make, 1, 1'000);
            if (names || makes)
                show_text(ReadLineKind::heading, *line.line, line.heading->name);
            else
                rest.push_back(std::move(line));
        }
        pending_ = std::move(rest);
        if (piece.name.empty()) piece.name = "Piece " + std::to_string(piece_index() + 1);
    }

    static bool could_name(const Pending& line) {
        return line.heading && !line.heading->section && !line.heading->name.empty();
    }

    void take_title() {
        const auto title = std::find_if(pending_.begin(), pending_.end(), could_name);
        if (!out_.title.empty() || title == pending_.end() || title->heading->says_make) return;
        const bool another = std::any_of(title + 1, pending_.end(), [](const Pending& line) {
            return could_name(line) && line.weight > 1;
        });
        if (!another) return;
        out_.title = title->heading->name;
        show_text(ReadLineKind::title, *title->line, out_.title);
        pending_.erase(title);
    }

    // Text lines become notes: of the piece they stand in, or of the toy when they stand before all pieces.
    void flush_pending(std::size_t count) {
        count = std::min(count, pending_.size());
        for (std::size_t i = 0; i < count; ++i) add_note(*pending_[i].line);
        pending_.erase(pending_.begin(), pending_.begin() + static_cast<std::ptrdiff_t>(count));
    }

    void add_note(const PatternLine& line) {
        const std::string text = note_text(line);
        show_text(ReadLineKind::note, line, text);
        const NoteMeaning meaning = meaning_of_note(line.tokens);
        Piece* piece = piece_ ? &piece_->piece : out_.pieces.empty() ? nullptr : &out_.pieces.back();
        if (piece_) apply(meaning, *piece);
        // In between rounds it matters where stuffing and fastening off are said.
        const bool anywhere = ending_ || meaning.eyes || (piece_ && piece_->piece.rounds.empty());
        if (piece_ && anywhere && says_only(meaning, text, out_.terms)) return;
        std::string& note =
            piece == nullptr || piece->rounds.empty() ? out_.notes : piece->rounds.back().note;
        add_line(note, text);
    }

    static std::string note_text(const PatternLine& line) {
        const bool marked = line.tokens.size() > 1 && line.tokens[0].is("note") && line.tokens[1].is(":");
        return said_of(line, marked ? 2 : 0);
    }

    void apply_notes(const std::vector<std::string>& notes) {
        for (const std::string& note : notes) {
            const LexedText text(note);
            for (const SourceLine& line : text.lines()) apply(meaning_of_note(line.tokens), piece_->piece);
        }
    }

    void apply(const NoteMeaning& meaning, Piece& piece) {
        if (meaning.area_stretch) piece.area_stretch = *meaning.area_stretch;
        if (meaning.joining) piece.joining = *meaning.joining;
        if (meaning.top_down) piece.starts_at_top = true;
        if (meaning.eyes) piece.features.push_back(*meaning.eyes);
        if (!meaning.end) return;
        piece.end = *meaning.end;
        end_said_ = true;
    }

    void report_terms(const FoundTerms& found) {
        if (found.guessed_from_ring)
            report({ReadCode::terms_guessed,
                    Severity::note,
                    TextSpan{1, 1, 0},
                    -1,
                    -1,
                    0,
                    0,
                    {std::string(out_.terms == Terms::us ? "us" : "uk")},
                    {}});
        if (found.mixed)
            report({ReadCode::terms_mixed,
                    Severity::warning,
                    *found.mixed,
                    -1,
                    -1,
                    0,
                    0,
                    {found.mixed_word},
                    {}});
    }

    ReadPattern out_;
    std::deque<std::string> joined_;
    std::vector<PatternLine> lines_;
    std::vector<Pending> pending_;  // text since the last round
    std::optional<Current> piece_;
    Started start_;
    bool started_ = false;
    RoundBelow below_{.into_ring = true};
    int other_loops_ = -1;  // what the round below may leave besides; -1: nothing else
    int yarn_ = 0;
    int next_yarn_ = -1;  // named by a line of its own; -1: none
    YarnTable yarns_;
    MendBudget budget_{1'500'000};
    int trial_effort_ = 1'000'000;  // stitches that may still be worked to find out what a line is
    int rounds_ = 0;                // of all pieces
    int stitches_ = 0;
    bool after_blank_ = false;
    bool in_section_ = false;
    bool full_ = false;
    bool end_said_ = false;
    bool ending_ = false;
    bool round_limit_said_ = false;
    bool adding_later_ = false;
};

}  // namespace

ReadPattern read_pattern(std::string_view utf8, const ReadOptions& options) {
    if (utf8.size() > max_file_bytes) {
        ReadPattern read;
        const auto bytes = static_cast<int>(std::min<std::size_t>(utf8.size(), largest_number));
        read.diagnostics.push_back({ReadCode::text_too_long,
                                    Severity::error,
                                    TextSpan{1, 1, 0},
                                    -1,
                                    -1,
                                    static_cast<int>(max_file_bytes),
                                    bytes,
                                    {},
                                    {}});
        return read;
    }
    const LexedText text(utf8);
    return PatternReader(text, options).run();
}

Toy toy_of(const ReadPattern& pattern, const Toy& base) {
    Toy toy = base;
    if (!pattern.title.empty()) toy.title = pattern.title;
    if (!pattern.designer.empty()) toy.designer = pattern.designer;
    if (pattern.hook_mm) toy.hook_mm = *pattern.hook_mm;
    if (!pattern.notes.empty()) toy.notes = pattern.notes;
    toy.pieces = pattern.pieces;
    std::size_t yarns = std::max<std::size_t>(pattern.yarn_names.size(), 1);
    for (const Piece& piece : toy.pieces)
        for (const Round& round : piece.rounds) yarns = std::max(yarns, round.yarn + 1);
    if (toy.yarns.size() < yarns) toy.yarns.resize(yarns);
    for (std::size_t i = 0; i < pattern.yarn_names.size(); ++i)
        if (!pattern.yarn_names[i].empty()) toy.yarns[i].name = pattern.yarn_names[i];
    return toy;
}

bool ReadPattern::proved() const {
    return std::none_of(diagnostics.begin(), diagnostics.end(),
                        [](const ReadDiagnostic& d) { return d.severity == Severity::error; });
}

}  // namespace roundwright
