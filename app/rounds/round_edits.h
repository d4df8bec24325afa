#pragma once

#include <functional>
#include <vector>

#include "app/rounds/count_entry.h"
#include "app/session/document_session.h"
#include "core/rounds/piece_graph.h"
#include "core/toy/join_edits.h"

namespace roundwright::app {

/// The edits of the current piece's rounds, each one undo step with a name. Rounds count from 0; lists of
/// them are ascending. False: nothing changed. All need a current piece.
class RoundEdits {
  public:
    explicit RoundEdits(DocumentSession& session) : session_(session) {}

    /// Sets counts; a change is taken from the round below each, so that +6 over four rounds grows by 24. An
    /// entry of several times makes each round as many (`each_times`).
    bool set_count(const std::vector<int>& rounds, const CountEntry& entry);
    /// The piece `set_count` would make; for a preview.
    [[nodiscard]] Edited<Piece> with_count(const std::vector<int>& rounds, const CountEntry& entry) const;
    /// Words in the terms the maker prefers; words that come to an even round make it one, and empty words
    /// work it evenly with the count it had.
    bool set_words(int round, const QString& words);
    /// The toy `set_words` would make; for a preview.
    [[nodiscard]] Toy with_words(int round, const QString& words) const;
    /// Makes the likeliest mend of a round's words; false when nothing is wrong, or no mend is known.
    bool mend(int round);
    /// The mend that `mend` would make, with what it mends.
    [[nodiscard]] std::optional<ReadDiagnostic> mendable(int round) const;
    bool work_evenly(const std::vector<int>& rounds);
    bool set_stitch(const std::vector<int>& rounds, StitchKind kind, const QString& stitch_name);
    bool set_loops(const std::vector<int>& rounds, LoopPart part, const QString& loops_name);
    bool set_spacing(const std::vector<int>& rounds, Spacing spacing);
    bool set_yarn(const std::vector<int>& rounds, std::size_t yarn);
    bool set_flat_mark(const std::vector<int>& rounds, bool lies_flat);
    bool set_note(int round, const QString& note);

    /// Puts rounds in before round `at` and selects them. `yarn_names` are all that the rounds count on:
    /// those beyond the toy's are added to it.
    bool insert(int at, const std::vector<Round>& rounds, const QString& text,
                const std::vector<std::string>& yarn_names = {});
    /// The toy that `insert` would make; nothing where it would be over a limit. For a trial.
    [[nodiscard]] std::optional<Toy> with_inserted(int at, const std::vector<Round>& rounds,
                                                   const std::vector<std::string>& yarn_names = {}) const;
    bool append_count(const CountEntry& entry);
    [[nodiscard]] std::optional<Toy> with_appended(const CountEntry& entry) const;
    bool append_words(const QString& words);
    [[nodiscard]] std::optional<Toy> with_appended_words(const QString& words) const;
    /// A new round, worked even on the one before it.
    bool insert_even(int at);
    bool remove(const std::vector<int>& rounds);
    bool repeat(const std::vector<int>& rounds);
    /// One place earlier (-1) or later (+1); the rounds stay selected.
    bool move(const std::vector<int>& rounds, int by);

    /// Rounds in the place of others, as a check's cure or a reshape has them.
    bool replace(int first, int replaced, const std::vector<Round>& rounds, const QString& text);

    /// What a new round at `at` takes its stitch, loops and yarn from: worked even on the one before.
    [[nodiscard]] Round like_round_before(int at) const;

  private:
    /// As it was said: an edit starts from no preview.
    [[nodiscard]] const Piece& current() const {
        return session_.said_toy().pieces[static_cast<std::size_t>(session_.current_piece())];
    }
    [[nodiscard]] int place_in_said(int at) const;
    /// Stitches on its edge below the first round and after each.
    [[nodiscard]] std::vector<int> edges() const;
    /// What round `round` of it stands on.
    [[nodiscard]] RoundBelow below(std::size_t round) const;
    /// It with other words for a round.
    [[nodiscard]] Piece reworded(int round, const std::string& words, Terms terms, YarnTable& yarns) const;
    bool put(const QString& text, Piece piece);
    bool put(const QString& text, Edited<Piece> piece, const std::vector<std::string>& yarn_names = {});
    /// With the joins onto the piece, which stay in their gaps.
    bool put(const QString& text, const RoundsEdit& edit, const std::vector<std::string>& yarn_names = {});
    [[nodiscard]] Edited<Toy> edited(const RoundsEdit& edit,
                                     const std::vector<std::string>& yarn_names = {}) const;
    [[nodiscard]] Edited<Piece> counted(const Piece& piece, const std::vector<int>& rounds,
                                        const CountEntry& entry) const;
    [[nodiscard]] Toy toy_with(Piece piece, const std::vector<std::string>& yarn_names) const;
    /// A round more, worked as the words say, and the names of the yarns it then counts on.
    struct Appended {
        Round round;
        std::vector<std::string> yarn_names;
    };
    [[nodiscard]] std::vector<Round> next_rounds(const CountEntry& entry) const;
    [[nodiscard]] Appended appended(const QString& words) const;
    bool change_each(const std::vector<int>& rounds, const QString& text,
                     const std::function<void(Round&)>& change);
    bool change_evenly(const std::vector<int>& rounds, const QString& text,
                       const std::function<void(WorkedEvenly&)>& change);

    DocumentSession& session_;
};

/// The names of the toy's yarns, as words of rounds know them.
[[nodiscard]] YarnTable yarn_table(const Toy& toy);

/// Why an edit cannot be made, in words.
[[nodiscard]] QString refusal_words(EditRefusal refusal);

}  // namespace roundwright::app
