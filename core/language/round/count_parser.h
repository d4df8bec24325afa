#pragma once

#include "core/language/round/remark_parser.h"

namespace roundwright {

/// Reads the count that a round states: "(18)", "[18 sts]", "- 18 sts", "18 sts", "= 18".
class CountParser : public RemarkParser {
  public:
    using RemarkParser::RemarkParser;

  protected:
    bool try_count();
    /// Whether a bracket that states a count stands at the cursor; the cursor goes past it.
    bool is_bracketed_count();
    void lone_number();

    char last_separator_ = ' ';
    bool after_count_ = false;
    std::size_t count_at_ = 0;  ///< token at which the stated count begins

  private:
    bool bracketed_count();
    bool count_or_word(std::vector<StatedCount>& counts);
    bool take_chains(std::vector<StatedCount>& counts);
    bool bare_count();
    bool accept_counted_name();
    bool says_how_often() const;
    bool says_where() const;
};

}  // namespace roundwright
