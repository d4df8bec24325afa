#include "core/language/words/in_language.h"

#include <algorithm>
#include <array>
#include <vector>

#include "core/language/words/letters.h"
#include "core/language/words/phrasebook.h"

namespace roundwright {
namespace {

using Kind = PhrasePart::Kind;
using Tokens = std::span<const Token>;

std::string ordinal(int number) {
    const int ones = number % 100 / 10 == 1 ? 0 : number % 10;
    return std::to_string(number) + (ones == 1 ? "st" : ones == 2 ? "nd" : ones == 3 ? "rd" : "th");
}

std::size_t letters(std::string_view text) {
    return static_cast<std::size_t>(std::count_if(
        text.begin(), text.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0u) != 0x80u; }));
}

// Bytes of the first `count` letters.
std::size_t bytes_of(std::string_view text, std::size_t count) {
    std::size_t at = 0;
    for (; at < text.size() && count > 0; --count) do
            ++at;
        while (at < text.size() && (static_cast<unsigned char>(text[at]) & 0xC0u) == 0x80u);
    return at;
}

/// Cuts written words into as many pieces as English has words.
class Pieces {
  public:
    Pieces(Tokens written, std::size_t wanted) {
        for (const Token& token : written) pieces_.push_back(token);
        while (pieces_.size() > wanted && pieces_.size() > 1) join_last();
        for (std::size_t at = pieces_.size(); at > 0 && pieces_.size() < wanted; --at) part(at - 1, wanted);
    }

    std::vector<Token> take() { return std::move(pieces_); }

  private:
    void join_last() {
        const Token last = pieces_.back();
        pieces_.pop_back();
        Token& joined = pieces_.back();
        joined.raw = {joined.raw.data(),
                      static_cast<std::size_t>(last.raw.data() + last.raw.size() - joined.raw.data())};
        joined.where.length = last.where.column + last.where.length - joined.where.column;
    }

    void part(std::size_t at, std::size_t wanted) {
        while (pieces_.size() < wanted && letters(pieces_[at].raw) > 1) {
            Token& head = pieces_[at];
            Token tail = head;
            const std::size_t bytes = bytes_of(head.raw, letters(head.raw) - 1);
            tail.raw = head.raw.substr(bytes);
            head.raw = head.raw.substr(0, bytes);
            --head.where.length;
            tail.where.column += head.where.length;
            tail.where.length = 1;
            tail.spaced = tail.tabbed = false;
            pieces_.insert(pieces_.begin() + static_cast<std::ptrdiff_t>(at) + 1, tail);
        }
    }

    std::vector<Token> pieces_;
};

/// Reads one line's tokens in a language as English.
class LineReader {
  public:
    LineReader(LexedText& text, const Phrasebook& book, Tokens tokens)
        : text_(text), book_(book), tokens_(tokens) {}

    std::vector<Token> read() {
        while (at_ < tokens_.size()) {
            const auto found = is_yarn_letter() ? std::nullopt : book_.find_said(tokens_.subspan(at_));
            if (!found || !put(*found)) out_.push_back(tokens_[at_++]);
        }
        return std::move(out_);
    }

  private:
    // "mit M": the letter of a yarn, whatever else it stands for.
    bool is_yarn_letter() const {
        constexpr std::array<std::string_view, 4> before{"with", "yarn", "color", "to"};
        const Token& token = tokens_[at_];
        const bool letter = token.raw.size() == 1 && token.raw[0] >= 'A' && token.raw[0] <= 'Z';
        if (!letter || out_.empty()) return false;
        const bool ends = at_ + 1 >= tokens_.size() || tokens_[at_ + 1].kind == TokenKind::mark;
        return ends && out_.back().renamed &&
               std::find(before.begin(), before.end(), out_.back().text) != before.end();
    }

    // The full point of an abbreviation belongs to it where the line goes on in the same sentence.
    std::size_t with_point(std::size_t length) const {
        const std::size_t point = at_ + length;
        if (point + 1 >= tokens_.size() || !tokens_[point].is(".") || tokens_[point].spaced) return length;
        if (tokens_[point - 1].kind != TokenKind::word) return length;
        const Token& next = tokens_[point + 1];
        const char begins = next.raw[0];
        const bool capital = begins >= 'A' && begins <= 'Z';
        return capital && !book_.find_said(tokens_.subspan(point + 1)) ? length : length + 1;
    }

    bool put(const PhraseMatch& found) {
        std::vector<Token> english = english_tokens(found);
        const std::size_t length = with_point(found.length);
        const std::vector<Token> pieces = Pieces(tokens_.subspan(at_, length), english.size()).take();
        if (pieces.size() != english.size()) return false;
        for (std::size_t i = 0; i < english.size(); ++i) {
            english[i].raw = pieces[i].raw;
            english[i].where = pieces[i].where;
            english[i].spaced = pieces[i].spaced;
            english[i].tabbed = pieces[i].tabbed;
            english[i].renamed = true;
            out_.push_back(english[i]);
        }
        at_ += length;
        return true;
    }

    std::vector<Token> english_tokens(const PhraseMatch& found) {
        std::vector<Token> tokens;
        std::size_t slot = 0;
        for (const PhrasePart& part : found.pair->english) {
            if (part.kind == Kind::stitch) {
                for (const PhrasePart& name : found.stitch->english) tokens.push_back(token_of(name));
            } else if (part.kind == Kind::any_number) {
                tokens.push_back(*found.slots.at(slot++));
            } else if (part.kind == Kind::any_ordinal) {
                Token token = *found.slots.at(slot++);
                token.kind = TokenKind::ordinal;
                token.text = text_.keep(ordinal(token.number));
                tokens.push_back(token);
            } else {
                tokens.push_back(token_of(part));
            }
        }
        return tokens;
    }

    Token token_of(const PhrasePart& part) {
        Token token;
        token.kind = part.kind == Kind::mark     ? TokenKind::mark
                     : part.kind == Kind::number ? TokenKind::number
                                                 : TokenKind::word;
        token.number = part.number;
        token.text =
            part.kind == Kind::number ? text_.keep(std::to_string(part.number)) : std::string_view(part.text);
        return token;
    }

    LexedText& text_;
    const Phrasebook& book_;
    Tokens tokens_;
    std::size_t at_ = 0;
    std::vector<Token> out_;
};

/// Says English tokens in a language.
class Sayer {
  public:
    Sayer(const Phrasebook& book, Tokens tokens) : book_(book), tokens_(tokens) {}

    std::string say() {
        while (at_ < tokens_.size()) {
            const Token& token = tokens_[at_];
            if (token.spaced && !said_.empty()) said_ += ' ';
            if (const auto found = book_.find_english(tokens_.subspan(at_)))
                put(*found);
            else
                said_ += tokens_[at_++].raw;
        }
        return std::move(said_);
    }

  private:
    void put(const PhraseMatch& found) {
        const bool begins = at_ == 0 || tokens_[at_ - 1].is(".");
        const std::string_view raw = tokens_[at_].raw;
        const bool capital =
            raw.size() > 1 && raw[0] >= 'A' && raw[0] <= 'Z' && !(raw[1] >= 'A' && raw[1] <= 'Z');
        std::string words = words_of(found);
        const std::size_t behind = at_ + found.length;
        const bool counts = counted_behind(found, behind);
        if (begins && capital && !counts) words = capitalised(std::move(words));
        said_ += counts ? std::string(tokens_[behind].raw) + " " + words : words;
        at_ = behind + (counts ? 1 : 0);
    }

    // "sc 3" is "3 fM".
    bool counted_behind(const PhraseMatch& found, std::size_t behind) const {
        if (found.pair->kind == PhraseKind::words || behind >= tokens_.size()) return false;
        if (tokens_[behind].kind != TokenKind::number) return false;
        if (at_ > 0 && tokens_[at_ - 1].kind == TokenKind::number) return false;
        if (behind + 1 >= tokens_.size()) return true;
        const Token& next = tokens_[behind + 1];
        return !next.is("x") && !next.is("times") && !next.is("tog") && !next.is("more") &&
               !book_.find_english(tokens_.subspan(behind + 1)).has_value();
    }

    std::string words_of(const PhraseMatch& found) const {
        std::string words;
        std::size_t slot = 0;
        for (const char c : found.pair->said_text) {
            if (c == '#')
                words += number_of(*found.slots.at(slot++));
            else if (c == '~')
                words += found.stitch->said_text;
            else
                words += c;
        }
        return words;
    }

    static std::string number_of(const Token& token) {
        return token.kind == TokenKind::ordinal ? std::to_string(token.number) : std::string(token.raw);
    }

    const Phrasebook& book_;
    Tokens tokens_;
    std::size_t at_ = 0;
    std::string said_;
};

bool stands_close(const Token& token, const Token& before) {
    static constexpr std::string_view closers = ",.:;)]}";
    const bool close = token.kind == TokenKind::mark && closers.find(token.text[0]) != std::string_view::npos;
    return close || before.is("(") || before.is("[") || before.is("{");
}

}  // namespace

void read_as_english(LexedText& text, Terms terms) {
    if (is_english(terms)) return;
    const Phrasebook& book = Phrasebook::of(terms);
    for (SourceLine& line : text.lines()) line.tokens = LineReader(text, book, line.tokens).read();
}

std::string said_in(std::string_view english, Terms terms) {
    if (is_english(terms)) return std::string(english);
    const LexedText text(english);
    return Sayer(Phrasebook::of(terms), all_tokens(text)).say();
}

std::string english_of(Tokens tokens) {
    std::string words;
    for (std::size_t i = 0; i < tokens.size(); ++i) {
        const Token& token = tokens[i];
        const bool spaced =
            i > 0 &&
            (token.renamed || tokens[i - 1].renamed ? !stands_close(token, tokens[i - 1]) : token.spaced);
        if (spaced) words += ' ';
        words += token.renamed ? token.text : token.raw;
    }
    return words;
}

}  // namespace roundwright
