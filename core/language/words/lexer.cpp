#include "core/language/words/lexer.h"

#include <algorithm>
#include <array>

namespace roundwright {
namespace {

constexpr char32_t not_a_character = 0xFFFD;

/// One code point of UTF-8 (RFC 3629: no overlong forms, no surrogates, none above U+10FFFF).
struct Decoded {
    char32_t character = not_a_character;
    std::size_t bytes = 1;
    bool sound = false;
};

Decoded decode(std::string_view text) {
    const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
    if (byte(0) < 0x80) return {byte(0), 1, true};
    const std::size_t length = byte(0) >= 0xF0 ? 4 : byte(0) >= 0xE0 ? 3 : 2;
    if (byte(0) < 0xC2 || byte(0) > 0xF4 || text.size() < length) return {};
    char32_t character = byte(0) & (0x7Fu >> length);
    for (std::size_t i = 1; i < length; ++i) {
        if ((byte(i) & 0xC0u) != 0x80u) return {};
        character = character << 6u | (byte(i) & 0x3Fu);
    }
    constexpr std::array<char32_t, 5> least{0, 0, 0x80, 0x800, 0x10000};
    if (character < least[length] || character > 0x10FFFF || (character >= 0xD800 && character <= 0xDFFF))
        return {};
    return {character, length, true};
}

bool any_of(char32_t character, std::initializer_list<char32_t> set) {
    return std::find(set.begin(), set.end(), character) != set.end();
}

bool between(char32_t character, char32_t first, char32_t last) {
    return character >= first && character <= last;
}

/// What a character is read as: itself, or the plain sign it stands for; empty when it is passed over.
std::string_view plain_form(char32_t c) {
    if (between(c, 0x2010, 0x2015) || c == 0x2212) return "-";
    if (any_of(c, {0xD7, 0x2715, 0x2716, 0x2A2F, 0x2A09})) return "x";
    if (any_of(c, {0x2217, 0x204E, 0x2731, 0x066D})) return "*";
    if (any_of(c, {0x2018, 0x2019, 0x201A, 0x201B, 0x2032, 0x60, 0xB4})) return "'";
    if (any_of(c, {0x201C, 0x201D, 0x201E, 0x2033, 0xAB, 0xBB})) return "\"";
    if (any_of(c, {0x2022, 0x25CF, 0x25CB, 0x25AA, 0x25A0, 0x25E6, 0x2023, 0xB7, 0x2219, 0x25BA, 0x27A4,
                   0x25C6}))
        return "\xE2\x80\xA2";
    if (any_of(c, {0x2329, 0x27E8, 0x3008})) return "<";
    if (any_of(c, {0x232A, 0x27E9, 0x3009})) return ">";
    if (c == 0x2026) return ".";
    if (c == 0xFB00) return "ff";
    if (c == 0xFB01) return "fi";
    if (c == 0xFB02) return "fl";
    if (c == 0xFB03) return "ffi";
    if (c == 0xFB04) return "ffl";
    return {};
}

bool is_space(char32_t c) {
    return c == ' ' || c == '\t' || c == 0xA0 || between(c, 0x2000, 0x200A) ||
           any_of(c, {0x202F, 0x205F, 0x3000});
}
bool is_unseen(char32_t c) {
    return any_of(c, {0xAD, 0x200B, 0x200C, 0x200D, 0x2060, 0xFEFF}) || (c < 0x20 && c != '\t');
}
bool is_line_break(char32_t c) { return any_of(c, {'\n', '\r', 0x0B, 0x0C, 0x85, 0x2028, 0x2029}); }
// One-letter texts that outlive any token.
std::string_view ascii_sign(char c) {
    static const std::array<char, 128> signs = [] {
        std::array<char, 128> all{};
        for (std::size_t i = 0; i < all.size(); ++i) all[i] = static_cast<char>(i);
        return all;
    }();
    return {&signs[static_cast<unsigned char>(c)], 1};
}

bool is_digit(char c) { return c >= '0' && c <= '9'; }
bool is_ascii_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }

struct NumberWord {
    std::string_view word;
    int number;
};
constexpr std::array<NumberWord, 27> number_words{
    {{"one", 1},      {"two", 2},        {"three", 3},     {"four", 4},      {"five", 5},
     {"six", 6},      {"seven", 7},      {"eight", 8},     {"nine", 9},      {"ten", 10},
     {"eleven", 11},  {"twelve", 12},    {"thirteen", 13}, {"fourteen", 14}, {"fifteen", 15},
     {"sixteen", 16}, {"seventeen", 17}, {"eighteen", 18}, {"nineteen", 19}, {"twenty", 20},
     {"thirty", 30},  {"forty", 40},     {"fifty", 50},    {"sixty", 60},    {"seventy", 70},
     {"eighty", 80},  {"ninety", 90}}};
constexpr std::array<NumberWord, 12> ordinal_words{{{"first", 1},
                                                    {"second", 2},
                                                    {"third", 3},
                                                    {"fourth", 4},
                                                    {"fifth", 5},
                                                    {"sixth", 6},
                                                    {"seventh", 7},
                                                    {"eighth", 8},
                                                    {"ninth", 9},
                                                    {"tenth", 10},
                                                    {"eleventh", 11},
                                                    {"twelfth", 12}}};

template <std::size_t size>
int number_of(const std::array<NumberWord, size>& words, std::string_view word) {
    const auto found =
        std::find_if(words.begin(), words.end(), [&](const NumberWord& w) { return w.word == word; });
    return found == words.end() ? 0 : found->number;
}

bool is_ordinal_ending(int number, std::string_view ending) {
    const int tens = number % 100 / 10;
    const int ones = tens == 1 ? 0 : number % 10;
    return ending == (ones == 1 ? "st" : ones == 2 ? "nd" : ones == 3 ? "rd" : "th");
}

}  // namespace

class Lexer {
  public:
    Lexer(LexedText& out, std::string_view source, int first_line, std::size_t longest_line)
        : out_(out), source_(source), longest_line_(longest_line), line_(first_line) {
        out_.pool_.reserve(source.size() + 1);
    }

    void run() {
        start_line();
        while (at_ < source_.size()) step();
        end_word();
        end_line(at_);
    }

  private:
    enum class Shape { none, letters, digits };

    void step() {
        const Decoded next = decode(source_.substr(at_));
        if (is_line_break(next.character) && next.sound)
            break_line(next);
        else if (at_ - line_from_ < longest_line_)
            take(next);
        else
            pass_over(next);
    }

    void break_line(const Decoded& next) {
        end_word();
        end_line(at_);
        const bool pair = next.character == '\r' && at_ + 1 < source_.size() && source_[at_ + 1] == '\n';
        at_ += next.bytes + (pair ? 1 : 0);
        ++line_;
        start_line();
    }

    void pass_over(const Decoded& next) {
        shape_ = Shape::none;
        decimal_ = false;
        out_.lines_.back().too_long = true;
        tokens().clear();
        at_ += next.bytes;
    }

    void take(const Decoded& next) {
        if (is_space(next.character)) {
            end_word();
            spaced_ = true;
        } else if (!next.sound) {
            report_bad_byte();
            sign("?", next.bytes);
        } else if (!is_unseen(next.character)) {
            take_visible(next);
        }
        at_ += next.bytes;
        ++column_;
    }

    void take_visible(const Decoded& next) {
        char32_t character = next.character;
        if (between(character, 0xFF01, 0xFF5E)) character -= 0xFEE0;
        if (character < 0x80) return take_ascii(static_cast<char>(character), next.bytes);
        const std::string_view form = plain_form(character);
        if (form.empty())
            grow(Shape::letters, source_.substr(at_, next.bytes), next.bytes);
        else if (form.size() > 1 && form[0] == 'f')
            grow(Shape::letters, form, next.bytes);
        else if (form == "x")
            times_sign(next.bytes);
        else
            take_sign(form, next.bytes);
    }

    void take_ascii(char c, std::size_t bytes) {
        if (is_digit(c)) {
            grow(Shape::digits, {&c, 1}, bytes);
        } else if (is_ascii_letter(c)) {
            const char lower = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
            grow(Shape::letters, {&lower, 1}, bytes);
        } else {
            const std::string_view form = plain_form(static_cast<unsigned char>(c));
            take_sign(form.empty() ? ascii_sign(c) : form, bytes);
        }
    }

    void times_sign(std::size_t bytes) {
        end_word();
        grow(Shape::letters, "x", bytes);
        end_word();
    }

    // An apostrophe within a word and a point within a decimal number belong to them.
    void take_sign(std::string_view form, std::size_t bytes) {
        const char after = at_ + bytes < source_.size() ? source_[at_ + bytes] : ' ';
        if (form == "'" && shape_ == Shape::letters && is_ascii_letter(after))
            return grow(shape_, form, bytes);
        if (form == "." && shape_ == Shape::digits && is_digit(after)) {
            decimal_ = true;
            return grow(shape_, form, bytes);
        }
        sign(form, bytes);
    }

    void sign(std::string_view form, std::size_t bytes) {
        end_word();
        if (form == "*" && !tokens().empty() && tokens().back().is("*") && !spaced_) {
            Token& star = tokens().back();
            star.text = "**";
            ++star.where.length;
            return;
        }
        Token token;
        token.text = form;
        token.raw = source_.substr(at_, bytes);
        token.where = {line_, column_, 1};
        push(token);
    }

    void grow(Shape shape, std::string_view text, std::size_t bytes) {
        if (shape_ != Shape::none && shape_ != shape) end_word();
        if (shape_ == Shape::none) {
            word_from_ = at_;
            word_column_ = column_;
            pool_from_ = out_.pool_.size();
            shape_ = shape;
        }
        keep(text);
        word_end_ = at_ + bytes;
        word_end_column_ = column_ + 1;
    }

    std::string_view keep(std::string_view text) {
        const std::size_t from = out_.pool_.size();
        out_.pool_.append(text);
        return std::string_view(out_.pool_).substr(from);
    }

    void end_word() {
        if (shape_ == Shape::none) return;
        Token token;
        token.text = std::string_view(out_.pool_).substr(pool_from_);
        token.raw = source_.substr(word_from_, word_end_ - word_from_);
        token.where = {line_, word_column_, word_end_column_ - word_column_};
        token.kind = TokenKind::word;
        if (shape_ == Shape::digits && !decimal_) {
            token.kind = TokenKind::number;
            token.number = digits_value(token.text);
        } else if (shape_ == Shape::letters && !joins_ordinal(token)) {
            read_number_word(token);
        }
        shape_ = Shape::none;
        decimal_ = false;
        if (token.kind != TokenKind::mark) push(token);
    }

    static int digits_value(std::string_view text) {
        std::int64_t value = 0;
        for (char digit : text) value = std::min<std::int64_t>(value * 10 + (digit - '0'), largest_number);
        return static_cast<int>(value);
    }

    // "2" and "nd" become one token; `token` is spent.
    bool joins_ordinal(Token& token) {
        if (tokens().empty() || spaced_) return false;
        Token& last = tokens().back();
        if (last.kind != TokenKind::number || !is_ordinal_ending(last.number, token.text)) return false;
        last.kind = TokenKind::ordinal;
        last.text = {last.text.data(),
                     static_cast<std::size_t>(token.text.data() + token.text.size() - last.text.data())};
        last.raw = {last.raw.data(),
                    static_cast<std::size_t>(token.raw.data() + token.raw.size() - last.raw.data())};
        last.where.length += token.where.length;
        token.kind = TokenKind::mark;
        return true;
    }

    static void read_number_word(Token& token) {
        if (const int number = number_of(number_words, token.text); number > 0) {
            token.kind = TokenKind::number;
            token.number = number;
        } else if (const int place = number_of(ordinal_words, token.text); place > 0) {
            token.kind = TokenKind::ordinal;
            token.number = place;
        }
    }

    void push(Token token) {
        token.spaced = spaced_;
        spaced_ = false;
        tokens().push_back(token);
    }

    void start_line() {
        out_.lines_.push_back({{}, {}, line_, false});
        line_from_ = at_;
        column_ = 1;
        spaced_ = true;
    }

    void end_line(std::size_t end) { out_.lines_.back().raw = source_.substr(line_from_, end - line_from_); }

    void report_bad_byte() {
        if (!out_.not_utf8_) out_.not_utf8_ = TextSpan{line_, column_, 1};
    }

    std::vector<Token>& tokens() { return out_.lines_.back().tokens; }

    LexedText& out_;
    std::string_view source_;
    std::size_t longest_line_;
    std::size_t at_ = 0;
    std::size_t line_from_ = 0;
    int line_;
    int column_ = 1;
    bool spaced_ = true;
    Shape shape_ = Shape::none;
    bool decimal_ = false;
    std::size_t word_from_ = 0;
    std::size_t word_end_ = 0;
    std::size_t pool_from_ = 0;
    int word_column_ = 1;
    int word_end_column_ = 1;
};

LexedText::LexedText(std::string_view source, int first_line, std::size_t longest_line) {
    Lexer(*this, source, first_line, longest_line).run();
}

std::vector<Token> all_tokens(const LexedText& text) {
    std::vector<Token> tokens;
    for (const SourceLine& line : text.lines())
        tokens.insert(tokens.end(), line.tokens.begin(), line.tokens.end());
    return tokens;
}

}  // namespace roundwright
