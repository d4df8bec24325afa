#pragma once

#include <span>
#include <utility>
#include <variant>
#include <vector>

#include "core/language/pattern/pattern_notes.h"
#include "core/language/pattern/reading_state.h"
#include "core/language/pattern/round_numbers.h"
#include "core/language/pattern/standing.h"

namespace roundwright {

/// Reads the rounds of one piece: numbered or not, in ranges and lists, and repeats of earlier ones.
class PieceReader {
  public:
    /// `piece` has its name and start; `first` is the line of its first round, which is yet to be added.
    /// Lines outlive the reader.
    PieceReader(ReadingState& state, Standing& standing, Piece piece, const PatternLine& first);
    /// `piece` has rounds already, those of another piece; `words` are theirs.
    PieceReader(ReadingState& state, Standing& standing, Piece piece,
                const ReadingState::WordsOfRounds& words);

    /// `after`: the lines of the text that come after it.
    void add(const PatternLine& line, std::span<const PatternLine> after);
    /// Dots stand for the rounds up to the next that is written out: they are worked even, or they go on
    /// growing as before, where the next round comes out on just that.
    void fill(const PatternLine& dots, std::span<const PatternLine> after);
    /// A note said in the piece.
    void hear(const NoteMeaning& meaning);

    void make_two() { piece_.make = 2; }
    /// The numbers of its rounds go on from those of another piece.
    void go_on_with_numbers() { begins_late_ = true; }

    bool numbered() const { return numbers_.numbered(); }
    /// The number that the next round should have.
    int next_number() const { return numbers_.next(); }
    const Piece& piece() const { return piece_; }
    /// Loops on the edge after each round.
    const std::vector<int>& loops_of_rounds() const { return loops_of_; }
    RoundTally tally() const;
    [[nodiscard]] ReadingState::WordsOfRounds take_words() { return std::move(words_of_); }
    const ReadingState::WordsOfRounds& words() const { return words_of_; }

    /// All of its rounds are another piece's.
    bool only_like_another() const { return like_rounds_ > 0 && piece_.rounds.size() == like_rounds_; }
    void show_likeness(const PatternLine& line, const std::string& other);
    /// Of the other piece's rounds the first `count`.
    void keep_rounds(int count);
    /// Another piece's rounds were not meant after all.
    void unread_likeness();

    /// Where the notes after the last round are kept.
    std::string& last_note() { return piece_.rounds.back().note; }

    /// The piece as it ends.
    [[nodiscard]] Piece finish();

  private:
    using TokenList = ReadingState::TokenList;

    void check_number(const PatternLine& line);
    void report_number(const PatternLine& line, ReadCode code, int expected, int found);
    void add_rounds(const PatternLine& line, const TokenList& words);
    void add_range(const PatternLine& line, const TokenList& words, ReadRound read, YarnTable yarns,
                   int rounds);
    ReadRound read_one_of(const std::vector<Token>& words, const ReadRound& first, int i, int rounds,
                          YarnTable& yarns);
    static void accept_sum(ReadRound& read, std::int64_t made);
    bool room_for_round(const PatternLine& line);
    static void cut(ReadLine& line, int at);
    std::size_t show_line(const PatternLine& line);
    void add_round(const ReadRound& read, const TokenList& words, std::size_t shown);
    void keep_round(const ReadRound& read, std::variant<WorkedEvenly, AsWritten> working, int yarn,
                    const TokenList& words, std::size_t shown);
    int room_for_stitches() const;
    std::variant<WorkedEvenly, AsWritten> settle(ReadRound& read, const std::vector<Token>& words);
    GoingOn going_on_from(ReadRound& read, const std::vector<Token>& words, const YarnTable& yarns);
    void report_later_rounds();
    void prefer_growth_of_before(const ReadRound& read, GoingOn& on) const;
    std::variant<WorkedEvenly, AsWritten> worked_evenly(ReadRound& read, const std::vector<Token>& words,
                                                        int stitches);
    void report_once(const ReadRound& read, const ReadLine& line, int round);
    void hear_notes(const RoundSyntax& syntax);
    void show(ReadLine& line, const ReadRound& read, int round);

    ReadRound even_round_of(int stitches) const;
    bool grow_on(const PatternLine& line, const ReadRound& read, int rounds);
    void add_filled(const PatternLine& dots, int rounds, int step);
    void repeat_rounds(const PatternLine& line, const ReadRound& read, int rounds);
    void add_repeated(const PatternLine& line, const TokenList& words,
                      const std::optional<StatedCount>& stated, const std::string& note, std::size_t shown);
    void unknown_round(const PatternLine& line, const ReadRound& read, int number, std::size_t shown);
    bool looks_closed() const;
    void stand_on_rounds();

    ReadingState& state_;
    Standing& standing_;
    Piece piece_;
    RoundNumbers numbers_;
    ReadingState::WordsOfRounds words_of_;
    std::size_t like_rounds_ = 0;  // the first rounds are another piece's
    std::size_t like_shown_ = 0;   // where that is shown
    std::vector<int> loops_of_;
    int most_loops_ = 0;
    int loops_before_ = 0;  // the last round was worked over
    int mended_ = 0;
    int refused_ = 0;
    bool begins_late_ = false;
    bool end_said_ = false;
    bool stuffing_said_ = false;
    bool round_limit_said_ = false;
    std::vector<ReadCode> said_;          // what has been said against the line that is being read
    std::span<const PatternLine> after_;  // the lines after it
    bool rounds_follow_ = false;          // after one that does not come out
    bool first_bad_ = false;              // of its line
    int goes_on_from_ = 0;  // of a range whose first round does not come out; 0: none has been met
};

}  // namespace roundwright
