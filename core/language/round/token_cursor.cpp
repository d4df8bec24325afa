#include "core/language/round/token_cursor.h"

#include <array>
#include <cstdint>

namespace roundwright {
namespace {

constexpr auto nouns =
    std::to_array<std::string_view>({"st", "sts", "stitch", "stitches", "loop", "loops", "lp", "lps", "space",
                                     "spaces", "sp", "sps", "st's", "stiches"});
constexpr auto round_nouns =
    std::to_array<std::string_view>({"rnd", "rnds", "round", "rounds", "row", "rows", "rd", "rds", "r"});

}  // namespace

std::string_view closer_of(std::string_view opener) {
    return opener == "(" ? ")" : opener == "[" ? "]" : opener == "{" ? "}" : ">";
}

bool is_marked_note(std::span<const Token> tokens) {
    constexpr auto heads = std::to_array<std::string_view>({"note", "notes", "nb", "tip", "hint"});
    return tokens.size() > 1 && tokens[1].is(":") && is_one_of(tokens[0].text, heads);
}

bool is_noun(std::string_view text) { return is_one_of(text, nouns); }

bool is_round_word(std::string_view text) { return is_one_of(text, round_nouns); }

int times(int a, int b) {
    return static_cast<int>(std::min<std::int64_t>(std::int64_t{a} * b, largest_number));
}

std::string said(std::span<const Token> tokens) {
    std::string words;
    for (const Token& token : tokens) {
        if (token.spaced && !words.empty()) words += ' ';
        words += token.raw;
    }
    return words;
}

bool TokenCursor::starts_item(std::size_t ahead) const {
    if (name_ahead(ahead)) return true;
    if (!is_number(ahead)) return false;
    return name_ahead(ahead + (is("x", ahead + 1) ? 2 : 1)).has_value();
}

bool TokenCursor::is_separator(std::size_t ahead) const {
    const Token* token = peek(ahead);
    if (token == nullptr) return true;
    constexpr std::string_view marks = ",;.:&/+=\"'|-\\!#_";
    return token->kind == TokenKind::mark && token->text.size() == 1 &&
           marks.find(token->text[0]) != std::string_view::npos;
}

bool TokenCursor::is_sentence_end(std::size_t ahead) const {
    const Token* token = peek(ahead);
    return token == nullptr || token->is(".") || token->is(";") || token->is("!");
}

bool TokenCursor::accept_noun() {
    if (done() || !is_noun(peek()->text)) return false;
    ++at_;
    return true;
}

bool TokenCursor::accept_loop_name() {
    if (accept_noun()) return true;
    const auto name = name_ahead();
    if (!name || name->what != NameKind::stitch) return false;
    use_name(*name);
    at_ += static_cast<std::size_t>(name->length);
    accept_noun();
    return true;
}

void TokenCursor::use_name(const Name& name) {
    const auto length = static_cast<std::size_t>(name.length);
    if (name.what == NameKind::stitch) syntax_.names.push_back({at_, length, name.stitch});
    if (name.other_terms)
        report(ReadCode::other_terms, span(at_, at_ + length),
               {said(std::span(tokens_).subspan(at_, length))});
}

TextSpan TokenCursor::span(std::size_t from, std::size_t to) const {
    if (tokens_.empty()) return {};
    if (from >= tokens_.size()) {
        const TextSpan& last = tokens_.back().where;
        return {last.line, last.column + last.length, 0};
    }
    TextSpan where = tokens_[from].where;
    for (std::size_t i = from; i < std::min(to, tokens_.size()) && tokens_[i].where.line == where.line; ++i)
        where.length = tokens_[i].where.column + tokens_[i].where.length - where.column;
    return where;
}

void TokenCursor::report(ReadCode code, TextSpan where, std::vector<Argument> arguments, int expected,
                         int found, Severity severity) {
    constexpr std::size_t most = 50;  // of one round: a maker mends the first ones
    const bool known =
        std::any_of(syntax_.diagnostics.begin(), syntax_.diagnostics.end(),
                    [&](const ReadDiagnostic& d) { return d.code == code && d.where == where; });
    if (known || syntax_.diagnostics.size() >= most) return;
    syntax_.diagnostics.push_back({code, severity, where, -1, -1, expected, found, std::move(arguments), {}});
}

}  // namespace roundwright
