#include "core/language/round/yarn_parser.h"

#include <algorithm>
#include <array>
#include <unordered_set>

namespace roundwright {
namespace {

constexpr std::size_t most_yarns = 1'000;

constexpr auto note_words = std::to_array<std::string_view>(
    {"stuff",   "stuffing",  "stuffed", "fill",      "filling",  "eye",    "eyes",    "sew",     "sewing",
     "tail",    "insert",    "attach",  "embroider", "marker",   "weave",  "note",    "notes",   "continue",
     "begin",   "beginning", "place",   "placing",   "close",    "closed", "pull",    "cut",     "hole",
     "wire",    "safety",    "felt",    "button",    "you",      "your",   "will",    "should",  "here",
     "if",      "like",      "piece",   "pin",       "needle",   "yarn",   "hook",    "shape",   "wrong",
     "right",   "side",      "outside", "remember",  "don't",    "not",    "do",      "count",   "tie",
     "thread",  "leaving",   "leave",   "is",        "are",      "be",     "this",    "that",    "photo",
     "picture", "see",       "between", "apart",     "position", "mark",   "firmly",  "lightly", "nose",
     "mouth",   "start",     "bottom",  "top",       "head",     "body",   "color",   "colour",  "optional",
     "keep",    "hide",      "finish",  "finishing", "snip",     "trim",   "opening", "flatten", "fold",
     "ends",    "knot",      "secure",  "using",     "when",     "before", "after",   "while",   "rs",
     "ws"});
constexpr auto yarn_changes = std::to_array<std::string_view>(
    {"change to", "changing to", "switch to", "switching to", "change color to", "change colour to",
     "change yarn to", "change back to", "switch back to", "join in", "join", "change"});
constexpr auto yarn_uses = std::to_array<std::string_view>({"with", "using", "in"});
constexpr auto yarn_words =
    std::to_array<std::string_view>({"color", "colour", "yarn", "new", "the", "main"});

std::string lowered(std::string_view text) {
    std::string low(text);
    for (char& c : low)
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    return low;
}

}  // namespace

bool is_note_word(std::string_view text) {
    static const std::unordered_set<std::string_view> words(note_words.begin(), note_words.end());
    return words.count(text) > 0;
}

bool YarnParser::try_yarn(NodeList& list) {
    const std::size_t start = at_;
    bool new_name = false;
    const int yarn = yarn_verb(new_name) ? yarn_name(new_name) : -1;
    if (yarn < 0) {
        at_ = start;
        return false;
    }
    add_yarn(list, yarn);
    return true;
}

void YarnParser::add_yarn(NodeList& list, int yarn) {
    const auto size = static_cast<std::size_t>(yarn) + 1;
    if (yarns_.names.size() < size) yarns_.names.resize(size);
    Node node;
    node.what = YarnChange{yarn};
    list.nodes.push_back(std::move(node));
    syntax_.open = false;
}

bool YarnParser::yarn_verb(bool& new_name) {
    const bool change = accept_any(yarn_changes);
    const bool joined = change && tokens_[at_ - 1].is("join");
    const bool use = !change && accept_any(yarn_uses);
    bool word = false;
    while (!done() && is_one_of(peek()->text, yarn_words) && !is_separator(1)) {
        word = word || !is("the");
        ++at_;
    }
    new_name = (change && !joined) || (use && word);
    return change || use || word;
}

int YarnParser::yarn_name(bool new_name) {
    if (done()) return -1;
    if (is("cc") && is_number(1) && !peek(1)->spaced && peek(1)->number < static_cast<int>(most_yarns)) {
        at_ += 2;
        return tokens_[at_ - 1].number;
    }
    const bool numbered = is_number() && at_ > 0 && tokens_[at_ - 1].is("yarn");
    if (numbered && peek()->number >= 1 && peek()->number <= static_cast<int>(most_yarns))
        return tokens_[at_++].number - 1;
    for (std::size_t length = std::min<std::size_t>(3, tokens_.size() - at_); length >= 1; --length) {
        const bool before_word = is_kind(TokenKind::word, length);
        const int yarn = length == 1 ? yarn_of(*peek(), before_word) : named_yarn(said(rest().first(length)));
        if (yarn < 0 || !yarn_ends(length)) continue;
        at_ += length;
        accept("yarn");
        return yarn;
    }
    // "grey yarn" is a yarn whatever is said before it.
    const bool called_yarn =
        is_kind(TokenKind::word) && (is("yarn", 1) || (is_kind(TokenKind::word, 1) && is("yarn", 2)));
    return new_name || called_yarn ? add_named_yarn() : -1;
}

// "a" before a word is the article.
int YarnParser::yarn_of(const Token& token, bool before_word) const {
    if (token.kind != TokenKind::word) return -1;
    if (token.is("mc")) return 0;
    if (token.is("cc")) return 1;
    const bool letter =
        token.text.size() == 1 && token.text[0] >= 'a' && token.text[0] <= 'z' && !token.is("x");
    if (letter && !(token.raw == "a" && before_word)) return token.text[0] - 'a';
    return named_yarn(std::string(token.raw));
}

int YarnParser::named_yarn(const std::string& name) const {
    const std::string low = lowered(name);
    for (std::size_t i = 0; i < yarns_.names.size(); ++i)
        if (!yarns_.names[i].empty() && lowered(yarns_.names[i]) == low) return static_cast<int>(i);
    return -1;
}

// What follows a yarn's name is no more of a name.
bool YarnParser::yarn_ends(std::size_t length) const {
    const Token* next = peek(length);
    if (next == nullptr || next->kind != TokenKind::word) return true;
    return next->is("yarn") || is_plain_word(next->text) || name_ahead(length).has_value() ||
           next->is("at") || next->is("on") || next->is("for");
}

int YarnParser::add_named_yarn() {
    const bool names_yarn = is_kind(TokenKind::word) && !is_plain_word(peek()->text) && !name_ahead() &&
                            !is_note_word(peek()->text);
    if (!names_yarn || yarns_.names.size() >= most_yarns) return -1;
    std::size_t length = 1;
    while (length < 3 && !yarn_ends(length)) ++length;
    auto& names = yarns_.names;
    if (names.empty()) names.emplace_back();
    const bool first = yarns_.first_is_free && !worked_ && names.size() == 1 && names[0].empty();
    if (!first) names.emplace_back();
    names.back() = said(rest().first(length));
    at_ += length;
    accept("yarn");
    return static_cast<int>(names.size()) - 1;
}

}  // namespace roundwright
