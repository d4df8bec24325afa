#include "core/language/pattern/legend.h"

#include <algorithm>
#include <map>
#include <span>
#include <string_view>
#include <vector>

#include "core/language/pattern/find_terms.h"
#include "core/language/round/token_cursor.h"

namespace roundwright {
namespace {

using Tokens = std::span<const Token>;

struct Meaning {
    std::string_view word;  // as it is read
    bool by_colon = false;  // "X: sc" might be a heading; another one beside it tells
};
using Legend = std::map<std::string_view, Meaning, std::less<>>;

bool is_sign(const Token& token) { return token.is("=") || token.is(":") || (token.is("-") && token.spaced); }

bool parts(const Token& token) {
    return token.kind == TokenKind::mark && !is_opener(token) && !token.is("=") && !token.is("-") &&
           !token.is("*");
}

// A short word that means nothing yet.
bool may_be_defined(const Token& token) {
    constexpr std::size_t longest = 4;
    if (token.kind != TokenKind::word || token.text.size() > longest) return false;
    const Tokens alone(&token, 1);
    return !match_name(alone, Terms::us) && !match_name(alone, Terms::uk) && !is_plain_word(token.text) &&
           !is_round_word(token.text) && !token.is("mc") && !token.is("cc") && !token.is("yarn");
}

std::string_view read_as(const Name& name, Terms terms) {
    switch (name.what) {
        case NameKind::increase:
            return "inc";
        case NameKind::decrease:
            return "dec";
        case NameKind::invisible_decrease:
            return "invdec";
        case NameKind::skipping:
            return "sk";
        case NameKind::stitch:
            break;
    }
    return name.stitch == StitchKind::slip_stitch ? "slst" : abbreviation(name.stitch, terms);
}

// Rounds define nothing.
bool may_define(Tokens tokens) {
    if (tokens.size() < 3 || is_round_word(tokens[0].text) || tokens[0].kind == TokenKind::number)
        return false;
    return std::any_of(tokens.begin(), tokens.end(), is_sign);
}

class LegendReader {
  public:
    explicit LegendReader(Terms terms) : terms_(terms) {}

    void read(Tokens tokens) {
        constexpr std::size_t longest = 200;
        if (tokens.size() > longest || is_marked_note(tokens)) return;
        for (std::size_t at = 0; at + 2 < tokens.size(); ++at)
            if (at == 0 || parts(tokens[at - 1])) definition(tokens, at);
    }

    Legend take() {
        const bool several = legend_.size() > 1;
        std::erase_if(legend_, [&](const auto& one) {
            return one.second.by_colon && !several && one.first.size() > 1;
        });
        return std::move(legend_);
    }

  private:
    // "X = single crochet", "single crochet - X"
    void definition(Tokens tokens, std::size_t at) {
        if (may_be_defined(tokens[at]) && is_sign(tokens[at + 1])) {
            const auto name = match_name(tokens.subspan(at + 2), terms_);
            if (name && ends(tokens, at + 2 + static_cast<std::size_t>(name->length)))
                legend_.try_emplace(tokens[at].text, Meaning{read_as(*name, terms_), tokens[at + 1].is(":")});
            return;
        }
        const auto name = match_name(tokens.subspan(at), terms_);
        const std::size_t sign = at + (name ? static_cast<std::size_t>(name->length) : 0);
        if (!name || sign + 1 >= tokens.size() || !tokens[sign].is("=")) return;
        if (may_be_defined(tokens[sign + 1]) && ends(tokens, sign + 2))
            legend_.try_emplace(tokens[sign + 1].text, Meaning{read_as(*name, terms_), false});
    }

    static bool ends(Tokens tokens, std::size_t at) {
        return at >= tokens.size() || parts(tokens[at]) || is_opener(tokens[at]);
    }

    Terms terms_;
    Legend legend_;
};

bool is_count(Tokens tokens, std::size_t open) {
    return open + 2 < tokens.size() && tokens[open + 1].kind == TokenKind::number &&
           (is_closer(tokens[open + 2]) || is_noun(tokens[open + 2].text));
}

// A letter is a stitch where stitches stand: behind a number or a sign, and before one. "x" is one of times
// before a number and a bracket.
bool stands_for_a_stitch(Tokens tokens, std::size_t at) {
    const Token* before = at > 0 ? &tokens[at - 1] : nullptr;
    const Token* next = at + 1 < tokens.size() ? &tokens[at + 1] : nullptr;
    const bool number_before = before != nullptr && before->kind == TokenKind::number;
    if (tokens[at].is("x")) {
        if (next != nullptr && (next->kind == TokenKind::number || is_opener(*next)))
            return next->kind != TokenKind::number && is_count(tokens, at + 1);
        return before == nullptr || number_before || before->kind == TokenKind::mark;
    }
    if (tokens[at].text.size() > 1) return true;
    const bool led =
        before == nullptr || number_before || (before->kind == TokenKind::mark && !is_closer(*before));
    const bool ended = next == nullptr || next->kind != TokenKind::word || next->is("x") || next->is("in") ||
                       next->is("around") || next->is("into");
    return (led || before->is("next") || before->is("each")) && ended;
}

}  // namespace

void read_by_legend(LexedText& text, std::optional<Terms> terms) {
    std::vector<const SourceLine*> lines;
    for (const SourceLine& line : text.lines())
        if (may_define(line.tokens)) lines.push_back(&line);
    if (lines.empty()) return;
    if (!terms) terms = find_terms(text.lines()).terms;
    LegendReader reader(*terms);
    for (const SourceLine* line : lines) reader.read(line->tokens);
    const Legend legend = reader.take();
    if (legend.empty()) return;
    for (SourceLine& line : text.lines())
        for (std::size_t i = 0; i < line.tokens.size(); ++i) {
            const auto meant = legend.find(line.tokens[i].text);
            if (meant != legend.end() && stands_for_a_stitch(line.tokens, i))
                line.tokens[i].text = meant->second.word;
        }
}

}  // namespace roundwright
