#pragma once

#include <deque>
#include <string>
#include <vector>

#include "core/language/round/read_round.h"

namespace roundwright {

/// Tokens [first, first + length) replaced by `text`.
struct TokenEdit {
    std::size_t first = 0;
    std::size_t length = 0;
    std::string text;
};

/// Tries changes of a round's words: what comes out is kept as a mend.
class MendTrial {
  public:
    MendTrial(const ReadRound& read, const std::vector<Token>& tokens, const RoundSetting& setting,
              const YarnTable& yarns, MendBudget& budget);

  protected:
    /// Enough mends have been found, or too much has been spent on them.
    bool enough() const;
    ReadRound tried(std::vector<TokenEdit> edits);
    /// Keeps the edits as a mend when the round comes out with them; true when it is a new one.
    bool offer(MendCode code, std::vector<Argument> arguments, const std::vector<TokenEdit>& edits);
    std::vector<TokenEdit> without_count(std::vector<TokenEdit> edits) const;
    std::size_t body_end() const;
    bool has(ReadCode code) const;

    const ReadRound& read_;
    const std::vector<Token>& tokens_;
    RoundSetting setting_;
    bool ignore_count_ = false;  ///< the stated count is mended with the words
    MendBudget& budget_;
    std::vector<Mend> found_;
    std::vector<ReadRound> comes_to_;  ///< the round with each of them

  private:
    std::vector<Token> edited(std::vector<TokenEdit> edits);
    bool proves(const ReadRound& read) const;
    TextSpan place(const TokenEdit& edit) const;
    TextSpan after(std::size_t token) const;
    static bool opens(const std::string& text);
    std::string spaced(const TokenEdit& edit) const;
    TokenEdit no_count() const;

    const YarnTable& yarns_;
    std::deque<std::string> texts_;
    std::deque<LexedText> lexed_;
};

}  // namespace roundwright
