#pragma once

#include <algorithm>
#include <span>
#include <string>
#include <vector>

#include "core/language/round/round_syntax.h"
#include "core/language/words/lexer.h"
#include "core/language/words/vocabulary.h"

namespace roundwright {

[[nodiscard]] inline bool is_one_of(std::string_view text, std::span<const std::string_view> words) {
    return std::find(words.begin(), words.end(), text) != words.end();
}
/// "Note: ...": what is said there is a remark, whatever it says.
[[nodiscard]] bool is_marked_note(std::span<const Token> tokens);
[[nodiscard]] inline bool is_opener(const Token& token) {
    return token.is("(") || token.is("[") || token.is("{") || token.is("<");
}
[[nodiscard]] inline bool is_closer(const Token& token) {
    return token.is(")") || token.is("]") || token.is("}") || token.is(">");
}
[[nodiscard]] std::string_view closer_of(std::string_view opener);

[[nodiscard]] inline bool has_word(std::span<const Token> tokens, std::string_view word) {
    return std::any_of(tokens.begin(), tokens.end(), [&](const Token& token) { return token.is(word); });
}
[[nodiscard]] inline bool has_any_word(std::span<const Token> tokens,
                                       std::initializer_list<std::string_view> words) {
    return std::any_of(words.begin(), words.end(),
                       [&](std::string_view word) { return has_word(tokens, word); });
}

/// "st", "sts", "loop", ...
[[nodiscard]] bool is_noun(std::string_view text);
/// "rnd", "round", "row", ...
[[nodiscard]] bool is_round_word(std::string_view text);

/// Product of two numbers of a text, held at `largest_number`.
[[nodiscard]] int times(int a, int b);

/// The tokens of a round as they are written, spaces where there were any.
[[nodiscard]] std::string said(std::span<const Token> tokens);

/// A place in the tokens of a round and what has been found up to it. The readers of places, stitches and
/// remarks are built on it, one on the other.
class TokenCursor {
  public:
    TokenCursor(const std::vector<Token>& tokens, const ParseOptions& options)
        : tokens_(tokens), options_(options) {}

  protected:
    bool done() const { return at_ >= tokens_.size(); }
    std::span<const Token> rest(std::size_t ahead = 0) const {
        return std::span(tokens_).subspan(std::min(at_ + ahead, tokens_.size()));
    }
    const Token* peek(std::size_t ahead = 0) const {
        return at_ + ahead < tokens_.size() ? &tokens_[at_ + ahead] : nullptr;
    }
    bool is(std::string_view text, std::size_t ahead = 0) const {
        const Token* token = peek(ahead);
        return token != nullptr && token->is(text);
    }
    bool is_kind(TokenKind kind, std::size_t ahead = 0) const {
        const Token* token = peek(ahead);
        return token != nullptr && token->kind == kind;
    }
    bool is_number(std::size_t ahead = 0) const { return is_kind(TokenKind::number, ahead); }
    bool is_round_word_at(std::size_t ahead) const {
        const Token* token = peek(ahead);
        return token != nullptr && is_round_word(token->text);
    }
    bool accept(std::string_view text) {
        if (!is(text)) return false;
        ++at_;
        return true;
    }
    bool accept_one_of(std::span<const std::string_view> words) {
        if (done() || !is_one_of(peek()->text, words)) return false;
        ++at_;
        return true;
    }
    bool accept_any(const Phrases& phrases) {
        const int length = match_any(rest(), phrases);
        at_ += static_cast<std::size_t>(length);
        return length > 0;
    }

    bool back_to(std::size_t start) {
        at_ = start;
        return false;
    }

    std::optional<Name> name_ahead(std::size_t ahead = 0) const {
        return match_name(rest(ahead), options_.terms);
    }
    bool starts_item(std::size_t ahead = 0) const;
    bool is_separator(std::size_t ahead = 0) const;
    bool is_sentence_end(std::size_t ahead = 0) const;

    bool accept_noun();
    /// A noun, or a stitch's name used for the loop it left: "in next 3 sc".
    bool accept_loop_name();
    void use_name(const Name& name);

    TextSpan span(std::size_t from, std::size_t to) const;
    std::string said_from(std::size_t from) const {
        return said(std::span(tokens_).subspan(from, at_ - from));
    }
    void report(ReadCode code, TextSpan where, std::vector<Argument> arguments = {}, int expected = 0,
                int found = 0, Severity severity = Severity::error);

    const std::vector<Token>& tokens_;
    const ParseOptions& options_;
    std::size_t at_ = 0;
    RoundSyntax syntax_;
};

}  // namespace roundwright
