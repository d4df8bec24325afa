#pragma once

#include <cstdint>
#include <deque>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "core/language/terms/language.h"
#include "core/language/words/lexer.h"
#include "core/language/words/terms.h"

namespace roundwright {

/// What a phrase is, beyond its words.
enum class PhraseKind : std::uint8_t {
    words,
    stitch,  ///< "sc": may stand for `~`
    name,    ///< "inc", "dec": a number behind it is said before it in other languages
};

/// A part of a phrase as it is compared with a token.
struct PhrasePart {
    enum class Kind : std::uint8_t { word, number, mark, any_number, any_ordinal, stitch };
    Kind kind = Kind::word;
    int number = 0;
    std::string text;  ///< of a word in plain letters, of a mark
};

/// One way of saying one thing in English and in another language.
struct PhrasePair {
    PhraseKind kind = PhraseKind::words;
    std::vector<PhrasePart> english;
    std::vector<PhrasePart> said;
    std::string_view said_text;
    bool written = false;
};

/// Where a phrase was found.
struct PhraseMatch {
    const PhrasePair* pair = nullptr;
    std::size_t length = 0;              ///< tokens
    std::vector<const Token*> slots;     ///< what stands for its numbers and ordinals, in order
    const PhrasePair* stitch = nullptr;  ///< what stands for `~`
};

/// A language's phrases, to be found from either side.
class Phrasebook {
  public:
    /// `terms` must not be English.
    static const Phrasebook& of(Terms terms);

    explicit Phrasebook(const Language& language);
    Phrasebook(const Phrasebook&) = delete;
    Phrasebook& operator=(const Phrasebook&) = delete;

    /// The longest phrase of the language at the front of `tokens`; where two are as long, the one that
    /// stands first in the table.
    [[nodiscard]] std::optional<PhraseMatch> find_said(std::span<const Token> tokens) const;
    /// The longest English phrase that has words in the language.
    [[nodiscard]] std::optional<PhraseMatch> find_english(std::span<const Token> tokens) const;

    [[nodiscard]] const std::deque<PhrasePair>& pairs() const { return pairs_; }
    /// Single words of the language as they are written, for mending a slip of the pen.
    [[nodiscard]] std::span<const std::string_view> words() const { return words_; }

  private:
    enum class Side : std::uint8_t { said, english };
    using Index = std::unordered_map<std::string_view, std::vector<const PhrasePair*>>;

    void add(PhraseKind kind, std::string_view english, std::string_view said, bool written);
    void add_stitches(const Language& language);
    void index_english(const PhrasePair& pair);
    std::optional<PhraseMatch> find(std::span<const Token> tokens, Side side) const;
    void match(const PhrasePair& pair, std::span<const Token> tokens, Side side,
               std::optional<PhraseMatch>& best) const;
    std::size_t match_stitch(std::span<const Token> tokens, Side side, PhraseMatch& found) const;

    std::deque<PhrasePair> pairs_;  // indices point into it
    Index said_;
    Index english_;
    std::vector<std::string_view> words_;
};

/// The table of a language; `terms` must not be English.
[[nodiscard]] const Language& language_of(Terms terms);

}  // namespace roundwright
