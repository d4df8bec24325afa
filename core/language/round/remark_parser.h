#pragma once

#include "core/language/round/yarn_parser.h"

namespace roundwright {

/// Reads what is neither a stitch nor a yarn: joins, turns, markers, starts, fastening off, notes.
class RemarkParser : public YarnParser {
  public:
    using YarnParser::YarnParser;

  protected:
    bool try_remark(NodeList& list);
    /// "(counts as dc)", "(right side)", "(B)": a bracket in which nothing is worked.
    bool try_aside(NodeList& list);
    /// "MR", "magic ring,", "make a magic ring with"
    bool try_ring();
    /// "for 5 rounds"
    bool try_for_rounds();
    bool take_round_number();
    /// "ch 7, sc in 2nd ch from hook", "ch 24, join": a chain and nothing else so far is the foundation.
    bool take_foundation(NodeList& list);
    void note(std::size_t from, std::size_t to);
    /// The rest of a sentence, up to what is worked or counted again, is a note.
    void note_from(std::size_t start);
    void unknown_phrase(bool is_note);

    bool says_work_ = true;  ///< false: what was read last is a note

  private:
    std::size_t clause_end(bool at_comma) const;
    bool line_of_work_begins(std::size_t at) const;
    bool says_manner();
    bool try_picot();
    bool try_rounds_aside(std::span<const Token> inside, std::size_t end);
    bool try_part_aside(NodeList& list, std::size_t length, std::size_t end);
    bool try_spelled_picot(const NodeList& list);
    [[nodiscard]] std::size_t closed_chain_ahead() const;
    bool remark(std::size_t start);
    bool finish(std::size_t start);
    bool turn(NodeList& list);
    bool is_joining_slip_stitch(const NodeList& list);
    bool join(NodeList& list, std::size_t start);
    bool leave(std::size_t start);
    bool try_start();
    bool try_side();
    bool chain_remark(NodeList& list, std::span<const Token> inside, std::size_t end);
    bool note_word_ahead();

    struct Range {
        std::size_t first = 0;
        std::size_t end = 0;
    };
    Range no_note_word_;
};

}  // namespace roundwright
