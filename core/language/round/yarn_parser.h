#pragma once

#include "core/language/round/stitch_parser.h"

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

/// Whether a word begins or marks a note ("stuff", "eyes", ...), and so names neither a stitch nor a yarn.
[[nodiscard]] bool is_note_word(std::string_view text);

/// Reads changes of yarn: "with B", "change to white", "in color C", "switch to MC".
class YarnParser : public StitchParser {
  public:
    YarnParser(const std::vector<Token>& tokens, const ParseOptions& options, YarnTable& yarns)
        : StitchParser(tokens, options), yarns_(yarns) {}

  protected:
    bool try_yarn(NodeList& list);
    int yarn_of(const Token& token, bool before_word) const;
    void add_yarn(NodeList& list, int yarn);

  private:
    bool yarn_verb(bool& new_name);
    int yarn_name(bool new_name);
    int named_yarn(const std::string& name) const;
    bool yarn_ends(std::size_t length) const;
    int add_named_yarn();

    YarnTable& yarns_;
};

}  // namespace roundwright
