#pragma once

#include "core/instructions/stitch_parser.h"

namespace roundwright {

/// Nodes of a bracket or of a round while they are being read, with the stars that stand open in it.
struct NodeList {
    struct Star {
        std::string_view sign;
        std::size_t from = 0;
        TextSpan where;
    };
    std::vector<Node> nodes;
    std::vector<Star> stars;
    std::size_t closed_star = static_cast<std::size_t>(-1);  ///< the node a closing star has just made
};

/// Reads what is not a stitch: yarns, joins, turns, markers, starts, fastening off, notes.
class RemarkParser : public StitchParser {
  public:
    RemarkParser(const std::vector<Token>& tokens, const ParseOptions& options, YarnTable& yarns)
        : StitchParser(tokens, options), yarns_(yarns) {}

  protected:
    bool try_yarn(NodeList& list);
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
    bool yarn_verb(bool& new_name);
    int yarn_name(bool new_name);
    int yarn_of(const Token& token, bool before_word) const;
    int named_yarn(const std::string& name) const;
    bool yarn_ends(std::size_t length) const;
    int add_named_yarn();
    void add_yarn(NodeList& list, int yarn);

    std::size_t clause_end(bool at_comma) const;
    bool remark(std::size_t start);
    bool finish(std::size_t start);
    bool turn(NodeList& list);
    bool is_joining_slip_stitch(const NodeList& list);
    bool join(NodeList& list, std::size_t start);
    bool leave(std::size_t start);
    bool try_start();
    bool try_side();
    bool chain_remark(NodeList& list, std::span<const Token> inside, std::size_t end);

    YarnTable& yarns_;
};

}  // namespace roundwright
