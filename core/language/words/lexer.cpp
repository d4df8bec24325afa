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
    if (between(c, 0x2010, 0x2015) || between(c, 0x2500, 0x2501) || c == 0x2212 || c == 0x301C || c == 0xFF5E)
        return "-";
    if (any_of(c, {0x2192, 0x21D2, 0x21E8, 0x279C, 0x279D, 0x2799, 0x27A1, 0x2794, 0x27F6})) return "=";
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
    if (between(c, 0x2600, 0x27BF) || between(c, 0x2B00, 0x2BFF) || between(c, 0x25A0, 0x25FF) ||
        between(c, 0x1F300, 0x1FAFF))
        return "\xE2\x80\xA2";  // an ornament
    return {};
}

/// What a byte of Windows-1252 stands for, where it is a sign that patterns use.
char32_t windows_sign(unsigned char byte) {
    switch (byte) {
        case 0x85:
            return 0x2026;
        case 0x91:
        case 0x92:
            return 0x2019;
        case 0x93:
        case 0x94:
            return 0x201D;
        case 0x95:
            return 0x2022;
        case 0x96:
        case 0x97:
            return 0x2013;
        case 0xA0:
        case 0xAB:
        case 0xB4:
        case 0xB7:
        case 0xBB:
        case 0xBC:
        case 0xBD:
        case 0xBE:
        case 0xD7:
            return byte;
        default:
            return not_a_character;
    }
}

/// A number in a circle, in brackets or with a point as one character; 0: it is none.
int number_sign(char32_t c) {
    if (between(c, 0x2460, 0x2473)) return static_cast<int>(c - 0x2460) + 1;
    if (between(c, 0x2474, 0x2487)) return static_cast<int>(c - 0x2474) + 1;
    if (between(c, 0x2488, 0x249B)) return static_cast<int>(c - 0x2488) + 1;
    if (between(c, 0x2776, 0x277F)) return static_cast<int>(c - 0x2776) + 1;
    if (between(c, 0x2780, 0x2789)) return static_cast<int>(c - 0x2780) + 1;
    if (between(c, 0x278A, 0x2793)) return static_cast<int>(c - 0x278A) + 1;
    return 0;
}

std::string_view fraction(char32_t c) {
    return c == 0xBC ? ".25" : c == 0xBD ? ".5" : c == 0xBE ? ".75" : std::string_view();
}

/// The Latin letter that a Cyrillic or Greek one looks like, in lower case; 0: none.
char latin_look(char32_t c) {
    struct Look {
        char32_t from;
        char to;
    };
    // Source: Unicode Technical Standard 39, confusables.txt (from memory); the letters of stitches' names.
    static constexpr std::array<Look, 46> looks{
        {{0x430, 'a'}, {0x410, 'a'}, {0x435, 'e'}, {0x415, 'e'}, {0x43E, 'o'}, {0x41E, 'o'}, {0x440, 'p'},
         {0x420, 'p'}, {0x441, 'c'}, {0x421, 'c'}, {0x443, 'y'}, {0x423, 'y'}, {0x445, 'x'}, {0x425, 'x'},
         {0x456, 'i'}, {0x406, 'i'}, {0x455, 's'}, {0x405, 's'}, {0x458, 'j'}, {0x408, 'j'}, {0x501, 'd'},
         {0x4BB, 'h'}, {0x41A, 'k'}, {0x43A, 'k'}, {0x41C, 'm'}, {0x422, 't'}, {0x412, 'b'}, {0x41D, 'h'},
         {0x51B, 'q'}, {0x51D, 'w'}, {0x4CF, 'l'}, {0x391, 'a'}, {0x392, 'b'}, {0x395, 'e'}, {0x397, 'h'},
         {0x399, 'i'}, {0x39A, 'k'}, {0x39C, 'm'}, {0x39D, 'n'}, {0x39F, 'o'}, {0x3BF, 'o'}, {0x3A1, 'p'},
         {0x3A4, 't'}, {0x3A5, 'y'}, {0x3A7, 'x'}, {0x3BD, 'v'}}};
    const auto found = std::find_if(looks.begin(), looks.end(), [&](const Look& l) { return l.from == c; });
    return found == looks.end() ? '\0' : found->to;
}

bool is_digit(char c) { return c >= '0' && c <= '9'; }
bool is_ascii_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }
bool is_space(char32_t c) {
    return c == ' ' || c == '\t' || c == 0xA0 || between(c, 0x2000, 0x200A) ||
           any_of(c, {0x202F, 0x205F, 0x3000});
}
bool is_unseen(char32_t c) {
    return any_of(c,
                  {0xAD, 0x200B, 0x200C, 0x200D, 0x200E, 0x200F, 0x2060, 0xFEFF, 0xFE0E, 0xFE0F, 0x20E3}) ||
           (c < 0x20 && c != '\t');
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

/// Markup that came along with a text from a page: a tag is a space, a named character what it stands for.
struct Markup {
    std::size_t bytes = 0;  ///< 0: there is none
    char32_t character = ' ';
};

Markup tag_at(std::string_view text) {
    static constexpr std::array<std::string_view, 27> tags{
        "b",  "i",    "u",      "br",    "p",    "li",    "ul",    "ol",  "td",
        "tr", "th",   "table",  "tbody", "div",  "em",    "h1",    "h2",  "h3",
        "h4", "span", "strong", "hr",    "font", "thead", "small", "sup", "sub"};
    std::size_t at = 1;
    if (at < text.size() && text[at] == '/') ++at;
    const std::size_t from = at;
    std::string name;
    constexpr std::size_t longest_name = 8;
    while (at < text.size() && name.size() < longest_name &&
           (is_ascii_letter(text[at]) || is_digit(text[at])))
        name += static_cast<char>(text[at++] | 0x20);
    if (at == from || std::find(tags.begin(), tags.end(), name) == tags.end()) return {};
    constexpr std::size_t longest = 200;
    const std::size_t end = text.substr(0, longest).find_first_of("<>\n\r", at);
    const bool ends = end != std::string_view::npos && text[end] == '>';
    const bool attributes = ends && end > at && text[at] != ' ' && text[at] != '/';
    return ends && !attributes ? Markup{end + 1, ' '} : Markup{};
}

// Source: HTML Living Standard, named character references (those that patterns use).
Markup named_character_at(std::string_view text) {
    struct Named {
        std::string_view name;
        char32_t character;
    };
    static constexpr std::array<Named, 16> all{{{"&nbsp;", 0xA0},
                                                {"&amp;", '&'},
                                                {"&lt;", '<'},
                                                {"&gt;", '>'},
                                                {"&quot;", '"'},
                                                {"&apos;", '\''},
                                                {"&#39;", '\''},
                                                {"&#160;", 0xA0},
                                                {"&times;", 0xD7},
                                                {"&#215;", 0xD7},
                                                {"&hellip;", 0x2026},
                                                {"&ndash;", 0x2013},
                                                {"&mdash;", 0x2014},
                                                {"&frac12;", 0xBD},
                                                {"&frac14;", 0xBC},
                                                {"&bull;", 0x2022}}};
    for (const Named& one : all)
        if (text.starts_with(one.name)) return {one.name.size(), one.character};
    return {};
}

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
        : out_(out), source_(source), longest_line_(longest_line), line_(first_line) {}

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
            tabbed_ = tabbed_ || next.character == '\t';
        } else if (!next.sound) {
            report_bad_byte();
            take_bad_byte(next);
        } else if (!is_unseen(next.character)) {
            take_visible(next);
        }
        at_ += next.bytes;
        ++column_;
    }

    // Old files are in Windows-1252 (ISO 8859-1 with more signs).
    void take_bad_byte(const Decoded& next) {
        const char32_t character = windows_sign(static_cast<unsigned char>(source_[at_]));
        if (is_space(character)) {
            end_word();
            spaced_ = true;
        } else if (character == not_a_character) {
            sign("?", next.bytes);
        } else {
            take_visible({character, next.bytes, true});
        }
    }

    void take_visible(const Decoded& next) {
        char32_t character = next.character;
        if (between(character, 0xFF01, 0xFF5E)) character -= 0xFEE0;
        if (character < 0x80) return take_ascii(static_cast<char>(character), next.bytes);
        if (const int number = number_sign(character); number > 0) return take_number(number, next.bytes);
        if (const std::string_view part = fraction(character); !part.empty()) {
            if (shape_ != Shape::digits || decimal_) end_word();
            decimal_ = true;
            return grow(Shape::digits, part, next.bytes);
        }
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

    // The bytes of markup count as columns, as they do in the text.
    bool take_markup(char c) {
        const std::string_view rest = source_.substr(at_);
        const Markup markup = c == '<' ? tag_at(rest) : c == '&' ? named_character_at(rest) : Markup{};
        if (markup.bytes == 0) return false;
        if (is_space(markup.character)) {
            end_word();
            spaced_ = true;
        } else if (markup.character < 0x80) {
            sign(ascii_sign(static_cast<char>(markup.character)), markup.bytes);
        } else {
            take_visible({markup.character, markup.bytes, true});
        }
        at_ += markup.bytes - 1;
        column_ += static_cast<int>(markup.bytes) - 1;
        return true;
    }

    void take_ascii(char c, std::size_t bytes) {
        if (is_digit(c)) {
            grow(Shape::digits, {&c, 1}, bytes);
        } else if (is_ascii_letter(c)) {
            const char lower = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
            grow(Shape::letters, {&lower, 1}, bytes);
        } else if (bytes == 1 && (c == '<' || c == '&') && take_markup(c)) {
            return;
        } else {
            const std::string_view form = plain_form(static_cast<unsigned char>(c));
            take_sign(form.empty() ? ascii_sign(c) : form, bytes);
        }
    }

    void take_number(int number, std::size_t bytes) {
        end_word();
        spaced_ = true;
        grow(Shape::digits, std::to_string(number), bytes);
        end_word();
        spaced_ = true;
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
        if (form == ">" && !tokens().empty() && !spaced_ &&
            (tokens().back().is("-") || tokens().back().is("="))) {
            Token& arrow = tokens().back();
            arrow.text = "=";
            ++arrow.where.length;
            return;
        }
        if (form == "-" && !tokens().empty() && tokens().back().is("<") && !spaced_) {
            Token& arrow = tokens().back();  // "<- check this" points back
            arrow.text = "-";
            ++arrow.where.length;
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
            word_.clear();
            shape_ = shape;
        }
        word_ += text;
        word_end_ = at_ + bytes;
        word_end_column_ = column_ + 1;
    }

    std::string_view keep(std::string_view text) { return out_.keep(text); }

    void end_word() {
        if (shape_ == Shape::none) return;
        Token token;
        token.text = keep(shape_ == Shape::letters && !is_ascii(word_) ? look_alike(word_) : word_);
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
        if (token.kind == TokenKind::word) return push_word(token);
        if (token.kind != TokenKind::mark) push(token);
    }

    // "scblo" is a stitch and the loop it is worked in.
    void push_word(const Token& token) {
        constexpr std::size_t loop = 3;
        const std::size_t size = token.text.size();
        const auto is = [](std::string_view text, std::initializer_list<std::string_view> words) {
            return std::find(words.begin(), words.end(), text) != words.end();
        };
        const bool joined =
            size > loop + 1 && size == token.raw.size() &&
            is(token.text.substr(size - loop), {"blo", "flo", "tbl", "tfl"}) &&
            is(token.text.substr(0, size - loop), {"sc", "hdc", "dc", "tr", "htr", "inc", "dec"});
        if (!joined) return push(token);
        Token stitch = token;
        stitch.text = token.text.substr(0, size - loop);
        stitch.raw = token.raw.substr(0, size - loop);
        stitch.where.length -= static_cast<int>(loop);
        push(stitch);
        Token part = token;
        part.text = token.text.substr(size - loop);
        part.raw = token.raw.substr(size - loop);
        part.where.column += stitch.where.length;
        part.where.length = static_cast<int>(loop);
        push(part);
    }

    static bool is_ascii(std::string_view text) {
        return std::all_of(text.begin(), text.end(),
                           [](char c) { return static_cast<unsigned char>(c) < 0x80; });
    }

    // A word in which every foreign letter looks like a Latin one is read with those.
    static std::string look_alike(const std::string& word) {
        const std::string_view text = word;
        std::string latin;
        for (std::size_t at = 0; at < text.size();) {
            const Decoded next = decode(text.substr(at));
            const char look =
                next.character < 0x80 ? static_cast<char>(next.character) : latin_look(next.character);
            if (look == '\0') return word;
            latin += look;
            at += next.bytes;
        }
        return latin;
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
        last.text = keep(std::string(last.text) + std::string(token.text));
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
        token.tabbed = tabbed_;
        spaced_ = tabbed_ = false;
        tokens().push_back(token);
    }

    void start_line() {
        out_.lines_.push_back({{}, {}, line_, false});
        line_from_ = at_;
        column_ = 1;
        spaced_ = true;
        tabbed_ = false;
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
    bool tabbed_ = false;
    Shape shape_ = Shape::none;
    bool decimal_ = false;
    std::size_t word_from_ = 0;
    std::size_t word_end_ = 0;
    std::string word_;  // as it is read so far
    int word_column_ = 1;
    int word_end_column_ = 1;
};

LexedText::LexedText(std::string_view source, int first_line, std::size_t longest_line)
    : pool_(source.size() + 1) {
    Lexer(*this, source, first_line, longest_line).run();
}

std::string_view LexedText::keep(std::string_view text) {
    auto* kept = static_cast<char*>(pool_.allocate(text.size(), 1));
    std::copy(text.begin(), text.end(), kept);
    return {kept, text.size()};
}

std::vector<Token> all_tokens(const LexedText& text) {
    std::vector<Token> tokens;
    for (const SourceLine& line : text.lines())
        tokens.insert(tokens.end(), line.tokens.begin(), line.tokens.end());
    return tokens;
}

}  // namespace roundwright
