#pragma once

#include "core/language/round/group_parser.h"

namespace roundwright {

/// The first node that is worked: a colour or a loop named at the front of a round is no part of what is
/// repeated. 0 when there is none.
[[nodiscard]] std::size_t first_work(const std::vector<Node>& nodes);

/// Reads stars and what is repeated from them: "*sc, inc; rep from * around", "*2 sc, inc* x 6",
/// "rep rnds 3-4".
class RepeatParser : public GroupParser {
  public:
    using GroupParser::GroupParser;

  protected:
    bool try_star(NodeList& list);
    bool try_repeat(NodeList& list);
    /// "ditto", "same again": the round before.
    bool same_again(const NodeList& list);
    void close_stars(NodeList& list);
    /// The nodes since the last open star (of this sign, if one is given) become one group.
    void group_from_star(NodeList& list, std::string_view sign);
    static void group_from(NodeList& list, std::size_t from, TextSpan where);

  private:
    bool as_before();
    void repeat_end();
    bool try_round_reference();
    bool skip_repeat_object();
    void repeat_group(NodeList& list, bool star, std::size_t start);
    Node* group_to_repeat(NodeList& list, bool star, std::size_t start);
    void repeat_extent(Node& node, bool star);
};

}  // namespace roundwright
