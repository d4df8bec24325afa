#pragma once

#include <deque>
#include <optional>
#include <string>
#include <vector>

#include "core/instructions/find_terms.h"
#include "core/instructions/piece_reader.h"
#include "core/instructions/piece_start.h"
#include "core/instructions/waiting_text.h"

namespace roundwright {

/// Builds pieces from the lines of a pattern, one after the other, and decides what each line is.
class PatternReader {
  public:
    PatternReader(const LexedText& text, const ReadOptions& options);

    [[nodiscard]] ReadPattern run();

  private:
    void take(const PatternLine& line);
    bool take_work(const PatternLine& line);
    bool is_round(const PatternLine& line, const ReadRound& read) const;
    bool may_start() const;
    bool take_yarn(const PatternLine& line, int yarn, const YarnTable& yarns);
    void pass_over(const PatternLine& line, const ReadRound& read);

    void take_round(const PatternLine& line);
    void begin_piece(const PatternLine& line);
    Start find_start(const PatternLine& line) const;
    void name(Piece& piece);
    void take_title();
    void too_many_pieces(const PatternLine& line);
    void end_piece(std::size_t notes);

    void take_text(const PatternLine& line);
    bool take_meta(const PatternLine& line);
    bool take_yarn_name(const PatternLine& line);
    bool take_title_line(const PatternLine& line);
    void add_notes(std::size_t count, bool ending = false);
    void add_note(const PatternLine& line, bool ending = false);
    bool show(ReadLineKind kind, const PatternLine& line, const std::string& text);
    void report_terms(const FoundTerms& found);

    bool in_piece_with_rounds() const { return piece_ && !piece_->piece().rounds.empty(); }

    ReadingState state_;
    Standing standing_{state_};
    std::deque<std::string> joined_;
    std::vector<PatternLine> lines_;
    WaitingText waiting_;
    std::optional<PieceReader> piece_;
    std::optional<SaidStart> start_;
    int next_yarn_ = -1;  // named by a line of its own; -1: none
    bool after_blank_ = false;
};

}  // namespace roundwright
