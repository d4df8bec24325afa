#include <gtest/gtest.h>
#include <span>
#include <sstream>

#include "core/language/pattern/said_numbers.h"
#include "core/language/round/even_spacing.h"
#include "core/language/round/write.h"
#include "core/language/words/fold.h"
#include "core/language/words/lexer.h"
#include "core/language/words/vocabulary.h"
#include "tests/core/language/round/asked_again.h"

namespace roundwright::test {
namespace {

using testing::RecordedText;

constexpr const char* token_kinds[] = {"word", "number", "ordinal", "mark"};
constexpr const char* name_kinds[] = {"stitch", "increase", "decrease", "invisible decrease", "skipping"};

std::string place(TextSpan where) {
    return std::to_string(where.line) + ":" + std::to_string(where.column) + "+" +
           std::to_string(where.length);
}

void tell(RecordedText& text, const Token& token) {
    text.line("  ") << place(token.where) << token_kinds[static_cast<int>(token.kind)]
                    << "'" + shown(token.text) + "'";
    if (token.raw != token.text) text << "from '" + shown(token.raw) + "'";
    if (token.number != 0) text << "is" << token.number;
    if (token.spaced) text << "spaced";
}

void answer_tokens(const Question& question, RecordedText& text) {
    const LexedText lexed(question.text, 1, question.heading == "short lines" ? 20 : std::string_view::npos);
    for (const SourceLine& line : lexed.lines()) {
        text.line("  line") << line.number << (line.too_long ? "too long" : "");
        for (const Token& token : line.tokens) tell(text, token);
    }
    if (lexed.not_utf8()) text.line("  no UTF-8 at") << place(*lexed.not_utf8());
}

void answer_names(const Question& question, RecordedText& text) {
    const LexedText lexed(question.text);
    const std::vector<Token> tokens = all_tokens(lexed);
    for (const Terms terms : {Terms::us, Terms::uk}) {
        const auto name = match_name(std::span(tokens), terms);
        text.line(terms == Terms::us ? "  us:" : "  uk:");
        if (name)
            text << name_kinds[static_cast<int>(name->what)] << abbreviation(name->stitch, Terms::us)
                 << (name->of_its_own ? "" : "a near relation") << (name->other_terms ? "of the others" : "")
                 << "tokens" << name->length;
        const std::string& word = question.text;
        text << "nearest '" + std::string(nearest_known_word(word, terms)) + "'"
             << (is_plain_word(word) ? "plain" : "");
    }
}

void tell(RecordedText& text, const std::vector<Fold>& folds, const std::string& items) {
    for (const Fold& fold : folds) {
        if (fold.item >= 0) {
            text << std::string(1, static_cast<char>(fold.item)) +
                        (fold.count > 1 ? std::to_string(fold.count) : "");
            continue;
        }
        text << "(";
        tell(text, fold.body, items);
        text << ")" + std::to_string(fold.count);
    }
}

// Letters stand for stitches; capitals for those that take more room in writing.
void answer_folds(const Question& question, RecordedText& text) {
    std::vector<int> width(128, 3);
    for (int capital = 'A'; capital <= 'Z'; ++capital) width[static_cast<std::size_t>(capital)] = 12;
    const std::vector<int> items(question.text.begin(), question.text.end());
    text.line("  ");
    tell(text, fold_repeats(items, width), question.text);
}

void answer_said(const Question& question, RecordedText& text) {
    for (const SaidNumbers& said : said_numbers(question.text)) {
        text.line(said.unit == SaidNumbers::Unit::rounds ? "  rounds" : "  stitches")
            << "'" + shown(question.text.substr(said.at, said.length)) + "'";
        std::vector<int> others;
        for (const SaidNumbers::Number& number : said.numbers) {
            text << number.value;
            others.push_back(number.value + 10);
        }
        text << "->"
             << "'" + shown(said_with(question.text, said, others)) + "'";
        others.assign(1, 22);
        text << "->"
             << "'" + shown(said_with(question.text, said, others)) + "'";
        others.assign(9, 3);
        text << "->"
             << "'" + shown(said_with(question.text, said, others)) + "'";
    }
}

// "over 6": each count from 1 to what is asked, in both phases.
void answer_even(const Question& question, RecordedText& text) {
    std::istringstream words(question.heading);
    std::string over;
    int below = 0;
    words >> over >> below;
    const int most = std::stoi(question.text);
    for (int count = 1; count <= most; ++count) {
        text.line(" ") << count << (is_repeatable(below, count) ? "one group" : "with a rest")
                       << (has_places(below, count) ? "shows" : "");
        for (const SpacingPhase phase : {SpacingPhase::at_end, SpacingPhase::at_middle}) {
            WorkedEvenly even;
            even.stitches = count;
            const GraphRound round = even_round(even, below, phase, 0);
            const auto again = as_worked_evenly(round, SpacingPhase::at_end, 0);
            text << "|" << round_words(round, false, Terms::us, Piece{});
            if (again) text << (again->spacing == Spacing::staggered ? "staggered" : "stacked");
        }
    }
}

TEST(RecordedWords, AreCutAsBefore) { expect_answers_as_recorded("tokens.txt", answer_tokens); }

TEST(RecordedWords, NameWhatTheyNamedBefore) { expect_answers_as_recorded("names.txt", answer_names); }

TEST(RecordedWords, FoldAsBefore) { expect_answers_as_recorded("folds.txt", answer_folds); }

TEST(RecordedWords, SayTheSameNumbersAsBefore) {
    expect_answers_as_recorded("numbers_in_sentences.txt", answer_said);
}

TEST(RecordedWords, SpaceEvenlyAsBefore) { expect_answers_as_recorded("even_rounds.txt", answer_even); }

}  // namespace
}  // namespace roundwright::test
