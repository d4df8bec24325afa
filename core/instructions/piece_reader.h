#pragma once

#include <map>
#include <memory>

#include "core/instructions/pattern_notes.h"
#include "core/instructions/reading_state.h"
#include "core/instructions/round_numbers.h"
#include "core/instructions/standing.h"

namespace roundwright {

/// Reads the rounds of one piece: numbered or not, in ranges and lists, and repeats of earlier ones.
class PieceReader {
  public:
    /// `piece` has its name and start; `first` is the line of its first round, which is yet to be added.
    PieceReader(ReadingState& state, Standing& standing, Piece piece, const PatternLine& first);

    void add(const PatternLine& line);
    /// A note said in the piece.
    void hear(const NoteMeaning& meaning);

    bool numbered() const { return numbers_.numbered(); }
    const Piece& piece() const { return piece_; }
    /// Where the notes after the last round are kept.
    std::string& last_note() { return piece_.rounds.back().note; }

    /// The piece as it ends.
    [[nodiscard]] Piece finish();

  private:
    using TokenList = std::shared_ptr<const std::vector<Token>>;

    void check_number(const PatternLine& line);
    void report_number(const PatternLine& line, ReadCode code, int expected, int found);
    void add_rounds(const PatternLine& line);
    void add_range(const PatternLine& line, ReadRound read, YarnTable yarns, int rounds);
    ReadRound read_one_of(const std::vector<Token>& words, const ReadRound& first, int i, int rounds,
                          YarnTable& yarns);
    bool room_for_round(const PatternLine& line);
    bool room_in_text(const PatternLine& line);
    std::size_t show_line(const PatternLine& line);
    void add_round(const ReadRound& read, const TokenList& words, std::size_t shown);
    void report_once(const ReadRound& read, const ReadLine& line, int round);
    void show(ReadLine& line, const ReadRound& read, int round);

    void repeat_rounds(const PatternLine& line, const ReadRound& read, int rounds);
    void add_repeated(const TokenList& words, const std::optional<StatedCount>& stated,
                      const std::string& note, std::size_t shown);
    void unknown_round(const PatternLine& line, const ReadRound& read, int number, std::size_t shown);
    bool looks_closed() const;

    ReadingState& state_;
    Standing& standing_;
    Piece piece_;
    RoundNumbers numbers_;
    std::map<int, TokenList> words_of_;  // by the number that the text gives the round
    int most_loops_ = 0;
    bool end_said_ = false;
    bool round_limit_said_ = false;
    std::size_t line_begins_ = 0;  // first diagnostic of the line that is being read
};

}  // namespace roundwright
