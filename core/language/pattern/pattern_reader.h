#pragma once

#include <deque>
#include <optional>
#include <string>
#include <vector>

#include "core/language/pattern/find_terms.h"
#include "core/language/pattern/joined_edges.h"
#include "core/language/pattern/likeness.h"
#include "core/language/pattern/note_keeper.h"
#include "core/language/pattern/piece_reader.h"
#include "core/language/pattern/piece_start.h"
#include "core/language/pattern/waiting_text.h"

namespace roundwright {

/// Builds pieces from the lines of a pattern, one after the other, and decides what each line is.
class PatternReader {
  public:
    /// `language`: the one that the text was in before its words were read as English; none: it was English.
    PatternReader(const LexedText& text, const ReadOptions& options,
                  const std::optional<FoundTerms>& language);

    [[nodiscard]] ReadPattern run();

  private:
    void take(const PatternLine& line);
    bool take_ring_alone(const PatternLine& line);
    void fill_dots(const PatternLine& line);
    bool take_rounds_of_another(const PatternLine& line);
    bool is_first_round(const PatternLine& line) const;
    bool take_work(const PatternLine& line);
    bool take_worked_on(const PatternLine& line);
    std::string in_english(const PatternLine& line) const;
    bool only_a_name(const PatternLine& line) const;
    bool nothing_before() const;
    bool is_step(const PatternLine& line) const;
    bool is_round(const PatternLine& line, const ReadRound& read) const;
    bool may_start() const;
    bool take_yarn(const PatternLine& line, int yarn, const YarnTable& yarns);
    bool take_yarn_change(const PatternLine& line);

    std::span<const NamedEdge> edges();
    void begin_edge();
    bool begins_on_edges(const PatternLine& line);
    bool take_joining(const PatternLine& line);
    bool take_left_loops(const PatternLine& line);
    bool begins_in_left_loops(const PatternLine& line);
    void hear_second(const PatternLine& line);
    bool fills_the_gap(const PatternLine& line) const;
    bool take_closing_row(const PatternLine& line);
    int loops_of_round(int number) const;
    void tell_left_loops(const PatternLine& line, int loops);
    PatternLine& own(const PatternLine& line);

    bool take_likeness(const PatternLine& line);
    bool unknown_piece(const PatternLine& line, const Likeness& like);
    bool begin_like(const PatternLine& line, const Likeness& like, int other);
    void settle_likeness(const PatternLine& line);

    void take_round(const PatternLine& line);
    void keep_start_as_note(const SaidStart& start);
    bool begins_a_piece(const PatternLine& line) const;
    void begin_piece(const PatternLine& line);
    Start find_start(const PatternLine& line) const;
    void name(Piece& piece);
    void take_title();
    void too_many_pieces(const PatternLine& line);
    void end_piece(std::size_t notes);

    void take_text(const PatternLine& line);
    bool take_meta(const PatternLine& line);
    bool take_yarn_name(const PatternLine& line);
    bool take_lettered_yarns(const PatternLine& line);
    bool take_materials(const PatternLine& line);
    bool take_gauge(const PatternLine& line);
    bool take_title_line(const PatternLine& line);
    void name_yarn(const YarnLine& yarn);
    void add_notes(std::size_t count, bool ending = false);
    void report_text(const LexedText& text);
    bool show(ReadLineKind kind, const PatternLine& line, const std::string& text);
    void report_terms(const FoundTerms& found);

    bool in_piece_with_rounds() const { return piece_ && !piece_->piece().rounds.empty(); }

    ReadingState state_;
    Standing standing_{state_};
    NoteKeeper notes_{state_};
    std::vector<NamedEdge> edges_;  // of the pieces that have begun, the last for the one on the hook
    std::vector<int> loops_of_last_piece_;
    std::deque<std::string> joined_;
    std::vector<PatternLine> lines_;
    WaitingText waiting_;
    std::optional<PieceReader> piece_;
    std::optional<SaidStart> start_;
    bool any_likeness_ = false;               // in the text
    const PatternLine* dots_ = nullptr;       // "...": rounds that are not written out
    const PatternLine* like_line_ = nullptr;  // that said of the piece which one it is like
    int next_yarn_ = -1;                      // named by a line of its own; -1: none
    bool after_blank_ = false;
    int last_line_ = 0;  // of the text
};

}  // namespace roundwright
