#include "core/language/pattern/note_keeper.h"

#include <algorithm>

#include "core/language/pattern/likeness.h"
#include "core/language/pattern/unread_work.h"
#include "core/language/round/token_cursor.h"
#include "core/language/words/in_language.h"
#include "core/language/words/one_line.h"

namespace roundwright {
namespace {

using Tokens = std::span<const Token>;

void add_line(std::string& text, const std::string& line) {
    if (!text.empty() && !line.empty()) text += '\n';
    text += line;
}

bool is_step(const WaitingLine& line) {
    if (line.line->bare) return true;
    const Tokens tokens = line.line->tokens;
    return tokens.size() > 1 && tokens[0].kind == TokenKind::number &&
           (tokens[1].is(".") || tokens[1].is(")"));
}

// A sentence that goes on from the line before begins with a small letter, or with a number where the line
// before has no end.
bool goes_on(const WaitingLine& before, const WaitingLine& line) {
    if (line.line->bulleted || line.line->first_line != before.line->last_line + 1) return false;
    if (is_marked_note(line.line->tokens)) return false;
    const char first = line.line->tokens.empty() ? ' ' : line.line->tokens[0].raw[0];
    if (first >= 'a' && first <= 'z') return true;
    const Tokens above = before.line->tokens;
    const bool open = !above.empty() && above.back().kind != TokenKind::mark;
    if (!open) return false;
    return first == '(' || (first >= '0' && first <= '9' && !is_step(line));
}

// Assembly is kept as steps, a paragraph each: numbers and bullets go, broken lines are joined.
void add_step(std::string& text, const WaitingLine& line) {
    const bool step = is_step(line);
    const std::string words = said(Tokens(line.line->tokens).subspan(step && !line.line->bare ? 2 : 0));
    const bool begins = text.empty() || step || line.line->bulleted || line.after_blank;
    text += text.empty() ? "" : begins ? "\n\n" : " ";
    text += words;
}

TextSpan whole_line(const PatternLine& line) {
    TextSpan where = line.tokens[0].where;
    for (const Token& token : line.tokens)
        if (token.where.line == where.line)
            where.length = token.where.column + token.where.length - where.column;
    return where;
}

ReadLineKind kind_of(const WaitingLine& line, Terms terms) {
    if (line.heading && line.heading->section != Section::none) return ReadLineKind::section;
    switch (line.section) {
        case Section::materials:
        case Section::gauge:
            return ReadLineKind::materials;
        case Section::abbreviations:
            return ReadLineKind::abbreviation;
        case Section::assembly:
        case Section::finishing:
            return ReadLineKind::assembly;
        case Section::none:
        case Section::rounds:
        case Section::remarks:
            break;
    }
    return is_definition(line.line->tokens, terms) ? ReadLineKind::abbreviation : ReadLineKind::note;
}

}  // namespace

// What stands behind "Note:" is the maker's, to the letter.
std::string words_of(const PatternLine& line) {
    const Tokens words = note_words(line.tokens);
    const std::size_t colon = line.raw.find(':');
    if (line.bare) return line.raw;
    if (words.size() == line.tokens.size() || colon == std::string::npos) return said(words);
    return on_one_line(std::string_view(line.raw).substr(colon + 1));
}

// Cut between characters of UTF-8.
std::string shortened(const std::string& text) {
    constexpr std::size_t longest = 80;
    if (text.size() <= longest) return text;
    std::size_t end = longest;
    while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0u) == 0x80u) --end;
    return text.substr(0, end) + "\xE2\x80\xA6";
}

Tokens note_words(Tokens tokens) {
    const bool marked = tokens.size() > 1 && tokens[0].is("note") && tokens[1].is(":");
    return tokens.subspan(marked ? 2 : 0);
}

bool is_definition(Tokens tokens, Terms terms) {
    if (tokens.size() > 1 && tokens[0].is("picot") && (tokens[1].is(":") || tokens[1].is("="))) return true;
    const auto name = match_name(tokens, terms);
    const std::size_t at = name ? static_cast<std::size_t>(name->length) : 1;
    if (at >= tokens.size()) return name.has_value();
    if (tokens[at].is("=")) return true;
    if (!tokens[at].is(":") && !(tokens[at].is("-") && tokens[at].spaced)) return false;
    const bool numbers =
        std::any_of(tokens.begin(), tokens.end(), [](const Token& t) { return t.kind == TokenKind::number; });
    return name ? !has_count(tokens) : !numbers;
}

void NoteKeeper::keep(const std::vector<WaitingLine>& lines, PieceReader* piece, bool ending) {
    if (piece != nullptr) hear(lines, piece);
    const std::vector<bool> known = lines_of_known_sentences(lines);
    for (std::size_t i = 0; i < lines.size(); ++i) keep_line(lines[i], piece, ending, known[i]);
}

// How a piece is joined is said in a sentence with stitches, which a narrow page breaks anywhere.
std::vector<bool> NoteKeeper::lines_of_known_sentences(const std::vector<WaitingLine>& lines) const {
    std::vector<bool> known(lines.size(), false);
    for (std::size_t from = 0, end = 0; from < lines.size(); from = end) {
        std::string paragraph;
        std::vector<std::size_t> begins;
        for (end = from; end == from || (end < lines.size() && goes_on(lines[end - 1], lines[end])); ++end) {
            if (end > from) paragraph += ' ';
            begins.push_back(paragraph.size());
            paragraph += said(lines[end].line->tokens);
        }
        if (end == from + 1) continue;
        for (const std::string& sentence :
             {joining_words(Joining::joined, state_.out.terms),
              joining_words(Joining::rows, state_.out.terms), said_in(spiral_words, state_.out.terms),
              std::string(spiral_words)}) {
            const std::size_t at = paragraph.find(sentence);
            if (at == std::string::npos) continue;
            for (std::size_t i = from; i < end; ++i) {
                const std::size_t next = i + 1 < end ? begins[i + 1 - from] : paragraph.size();
                if (begins[i - from] < at + sentence.size() && next > at) known[i] = true;
            }
        }
    }
    return known;
}

// Of the text under headings only what finishes a pattern of one piece is about the piece.
void NoteKeeper::hear(const std::vector<WaitingLine>& lines, PieceReader* piece) const {
    std::vector<Token> paragraph;
    const auto heard = [&] {
        for (const NoteMeaning& meaning : meanings_of_notes(paragraph)) piece->hear(meaning);
        paragraph.clear();
    };
    const bool only_piece = state_.out.pieces.empty();
    for (std::size_t i = 0; i < lines.size(); ++i) {
        if (i > 0 && !goes_on(lines[i - 1], lines[i])) heard();
        const Section section = lines[i].section;
        if (lines[i].told) continue;
        if (section != Section::none && !(section == Section::finishing && only_piece)) continue;
        const Tokens words = note_words(lines[i].line->tokens);
        paragraph.insert(paragraph.end(), words.begin(), words.end());
    }
    heard();
}

void NoteKeeper::keep_line(const WaitingLine& waiting, PieceReader* piece, bool ending, bool known_sentence) {
    const PatternLine& line = *waiting.line;
    const Tokens words = note_words(line.tokens);
    const bool remark = is_marked_note(line.tokens);
    const std::string text = words_of(line);
    const NoteMeaning meaning = meaning_of_note(words);
    const bool known = !remark && says_only(meaning, text, state_.out.terms);
    const bool told = !known && !known_sentence && tell(waiting, meaning);
    ReadLine& shown = state_.show(told ? ReadLineKind::not_read : kind_of(waiting, state_.out.terms), line,
                                  piece != nullptr ? state_.piece_index() : -1, text);
    shown.proved = !told;
    // In between rounds it matters where stuffing and fastening off are said.
    const bool anywhere = ending || meaning.eyes || (piece != nullptr && piece->piece().rounds.empty());
    if (piece != nullptr && anywhere && known) return;
    put(waiting, text, piece);
}

void NoteKeeper::put(const WaitingLine& waiting, const std::string& text, PieceReader* piece) {
    ReadPattern& out = state_.out;
    const bool heads = waiting.heading && waiting.heading->section != Section::none;
    const bool worked = piece != nullptr && !piece->piece().rounds.empty();
    if (waiting.section == Section::assembly || waiting.section == Section::finishing) {
        if (!heads) add_step(waiting.section == Section::assembly ? out.assembly : out.finishing, waiting);
    } else if (waiting.section != Section::none) {
        if (!heads || (!worked && out.pieces.empty())) add_line(out.notes, text);
    } else if (worked) {
        add_line(piece->last_note(), text);
    } else if (piece == nullptr && !out.pieces.empty() && !out.pieces.back().rounds.empty()) {
        add_line(out.pieces.back().rounds.back().note, text);
    } else {
        add_line(out.notes, text);
    }
}

// Whether rounds may be lost in a line, or numbers; then it is told.
bool NoteKeeper::tell(const WaitingLine& waiting, const NoteMeaning& meaning) {
    if (waiting.told) return true;
    const PatternLine& line = *waiting.line;
    if (is_marked_note(line.tokens)) return false;
    ReadDiagnostic told{
        .code = ReadCode::line_not_understood, .where = whole_line(line), .piece = state_.piece_index()};
    if (waiting.heading && waiting.heading->says_make && !waiting.heading->name.empty()) {
        told.code = ReadCode::piece_without_rounds;
        told.arguments = {waiting.heading->name};
        state_.report(std::move(told));
        return true;
    }
    const Terms terms = state_.out.terms;
    const bool section = waiting.section != Section::none || is_definition(line.tokens, terms);
    if (meaning.joining && !has_count(line.tokens)) return false;
    WorkSign sign = section ? work_sign_in_section(line.tokens, terms) : work_sign(line.tokens, terms);
    if (!section && mentions_likeness(line.tokens, state_.names_of_pieces)) sign = WorkSign::work;
    if (sign == WorkSign::none) return false;
    if (sign == WorkSign::mention) {
        told.code = ReadCode::remark_not_read;
        told.severity = Severity::warning;
    }
    told.arguments = {shortened(line.raw)};
    state_.report(std::move(told));
    return true;
}

}  // namespace roundwright
