#include "core/document/json_parser.h"

#include <algorithm>
#include <array>
#include <string>

namespace roundwright {

namespace {

using Id = JsonTree::Id;

/// The bytes of UTF-8 after a first one, and what the first of them may be (The Unicode Standard, table 3-7).
struct Sequence {
    int bytes_after = 0;
    unsigned char least = 0x80;
    unsigned char most = 0xBF;
};

Sequence sequence_of(unsigned char first) {
    if (first >= 0xC2 && first <= 0xDF) return {1};
    if (first == 0xE0) return {2, 0xA0, 0xBF};
    if (first == 0xED) return {2, 0x80, 0x9F};
    if (first >= 0xE1 && first <= 0xEF) return {2};
    if (first == 0xF0) return {3, 0x90, 0xBF};
    if (first >= 0xF1 && first <= 0xF3) return {3};
    if (first == 0xF4) return {3, 0x80, 0x8F};
    return {};
}

bool is_digit(char c) { return c >= '0' && c <= '9'; }

/// Bytes that stand for themselves within a text.
constexpr auto plain_bytes = [] {
    std::array<bool, 256> plain{};
    for (std::size_t c = 0x20; c < 0x80; ++c) plain[c] = c != '"' && c != '\\';
    return plain;
}();

class Parser {
  public:
    Parser(std::string_view text, JsonTree& tree) : text_(text), tree_(tree) {}

    void document() {
        constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";
        if (text_.starts_with(byte_order_mark)) at_ = byte_order_mark.size();
        value(0, JsonTree::none, false);
        skip_spaces();
        if (at_ < text_.size()) fail("expected the end of the file");
    }

  private:
    [[noreturn]] void fail_as(DocumentFault fault, const std::string& what) const {
        throw DocumentError(fault, "", what, line_and_column(text_, at_));
    }
    [[noreturn]] void fail(const std::string& what) const {
        fail_as(at_ < text_.size() ? DocumentFault::damaged : DocumentFault::broken_off, "not JSON: " + what);
    }

    [[nodiscard]] bool ended() const { return at_ >= text_.size(); }
    [[nodiscard]] bool at(char c) const { return !ended() && text_[at_] == c; }

    void skip_spaces() {
        while (!ended() &&
               (text_[at_] == ' ' || text_[at_] == '\n' || text_[at_] == '\r' || text_[at_] == '\t'))
            ++at_;
    }

    void expect(char c) {
        if (!at(c)) fail(std::string("expected ") + c);
        ++at_;
    }

    Id value(int depth, Id key, bool key_escaped) {
        skip_spaces();
        if (ended()) fail("expected a value");
        if (tree_.count() >= most_values)
            fail_as(DocumentFault::too_many_values, "more values than a toy has");
        const char c = text_[at_];
        const Id made = tree_.add(kind_of(c), at_, key, key_escaped);
        if (c == '{' || c == '[')
            members(made, depth + 1);
        else if (c == '"')
            (void)text();
        else if (c == '-' || is_digit(c))
            number();
        else
            word(c == 't' ? "true" : c == 'f' ? "false" : "null");
        tree_.end_at(made, at_);
        return made;
    }

    static JsonKind kind_of(char first) {
        switch (first) {
            case '{':
                return JsonKind::object;
            case '[':
                return JsonKind::list;
            case '"':
                return JsonKind::text;
            case 't':
            case 'f':
                return JsonKind::flag;
            case 'n':
                return JsonKind::null;
            default:
                return JsonKind::number;
        }
    }

    void members(Id parent, int depth) {
        if (depth > deepest_nesting) fail_as(DocumentFault::too_deep, "nested too deeply");
        const bool object = text_[at_++] == '{';
        const char end = object ? '}' : ']';
        skip_spaces();
        Id last = JsonTree::none;
        while (!at(end)) {
            if (last != JsonTree::none) {
                expect(',');
                skip_spaces();
            }
            const Id child = object ? member(depth) : value(depth, JsonTree::none, false);
            tree_.append(parent, last, child);
            last = child;
            skip_spaces();
            if (!at(end) && !at(',')) fail(object ? "expected , or }" : "expected , or ]");
        }
        ++at_;
    }

    Id member(int depth) {
        const auto key = static_cast<Id>(at_);
        if (!at('"')) fail("expected a key");
        const bool escaped = text();
        skip_spaces();
        expect(':');
        return value(depth, key, escaped);
    }

    /// Returns whether there is an escape in it.
    bool text() {
        bool escaped = false;
        ++at_;
        for (;;) {
            while (!ended() && plain_bytes[static_cast<unsigned char>(text_[at_])]) ++at_;
            if (ended()) fail("a text does not end");
            if (text_[at_] == '"') break;
            if (text_[at_] == '\\') {
                escaped = true;
                escape();
            } else {
                utf8();
            }
        }
        ++at_;
        return escaped;
    }

    void escape() {
        ++at_;
        if (ended()) fail("a text does not end");
        if (!at('u')) {
            if (std::string_view("\"\\/bfnrt").find(text_[at_]) == std::string_view::npos)
                fail("no such escape");
            ++at_;
            return;
        }
        const unsigned code = code_unit();
        if (code >= 0xDC00 && code <= 0xDFFF) fail("half of a character");
        if (code < 0xD800 || code > 0xDBFF) return;
        expect('\\');
        if (!at('u')) fail("half of a character");
        const unsigned low = code_unit();
        if (low < 0xDC00 || low > 0xDFFF) fail("half of a character");
    }

    /// Reads "u" and four hexadecimal digits.
    unsigned code_unit() {
        ++at_;
        unsigned code = 0;
        for (int i = 0; i < 4; ++i, ++at_) {
            if (ended()) fail("a text does not end");
            const std::size_t digit = std::string_view("0123456789abcdef0123456789ABCDEF").find(text_[at_]);
            if (digit == std::string_view::npos) fail("expected a hexadecimal digit");
            code = code * 16 + static_cast<unsigned>(digit % 16);
        }
        return code;
    }

    void utf8() {
        Sequence sequence = sequence_of(static_cast<unsigned char>(text_[at_]));
        if (sequence.bytes_after == 0) fail("no UTF-8 text");
        ++at_;
        for (; sequence.bytes_after > 0; --sequence.bytes_after, ++at_) {
            const auto byte = static_cast<unsigned char>(ended() ? '\0' : text_[at_]);
            if (byte < sequence.least || byte > sequence.most) fail("no UTF-8 text");
            sequence.least = 0x80;
            sequence.most = 0xBF;
        }
    }

    void digits() {
        if (ended() || !is_digit(text_[at_])) fail("expected a digit");
        while (!ended() && is_digit(text_[at_])) ++at_;
    }

    void number() {
        if (at('-')) ++at_;
        if (at('0'))
            ++at_;
        else
            digits();
        if (at('.')) {
            ++at_;
            digits();
        }
        if (!at('e') && !at('E')) return;
        ++at_;
        if (at('+') || at('-')) ++at_;
        digits();
    }

    void word(std::string_view expected) {
        const std::size_t begin = at_;
        std::size_t same = 0;
        while (same < expected.size() && begin + same < text_.size() && text_[begin + same] == expected[same])
            ++same;
        at_ = begin + (begin + same < text_.size() && same < expected.size() ? 0 : same);
        if (same < expected.size()) fail("expected a value");
    }

    std::string_view text_;
    JsonTree& tree_;
    std::size_t at_ = 0;
};

}  // namespace

JsonTree parse_json(std::string_view text) {
    JsonTree tree(text);
    constexpr std::size_t bytes_a_value = 4;  // so that few files make the tree grow
    tree.reserve(std::min(most_values, text.size() / bytes_a_value + 1));
    Parser(text, tree).document();
    return tree;
}

LineAndColumn line_and_column(std::string_view text, std::size_t byte) {
    const std::string_view before = text.substr(0, byte);
    const std::size_t line_start = before.rfind('\n') + 1;  // npos + 1 is 0
    return {static_cast<int>(std::count(before.begin(), before.end(), '\n')) + 1,
            static_cast<int>(before.size() - line_start) + 1};
}

}  // namespace roundwright
