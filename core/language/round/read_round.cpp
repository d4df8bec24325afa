#include "core/language/round/read_round.h"

#include <algorithm>

#include "core/language/round/mends.h"
#include "core/language/round/token_cursor.h"
#include "core/language/words/in_language.h"

namespace roundwright {
namespace {

bool is_error(const ReadDiagnostic& d) { return d.severity == Severity::error; }

bool any_error(const std::vector<ReadDiagnostic>& diagnostics) {
    return std::any_of(diagnostics.begin(), diagnostics.end(), is_error);
}

// The count of a partial round may be that of its own stitches or of the whole edge.
bool count_agrees(const StatedCount& stated, const WorkedRound& worked) {
    return stated.count == worked.made || stated.count == worked.round.loops_left;
}

bool comes_out(const RoundSyntax& syntax, const WorkedRound& worked) {
    return worked.problems.empty() && (syntax.stated.empty() || count_agrees(syntax.stated.back(), worked));
}

struct Reading {
    std::vector<bool> choices;
    WorkedRound worked;
    int effort = 0;  ///< of all the readings tried
};

// Where honest hands differ, the reading that proves is the right one: first as it stands, then with one
// question answered otherwise, then with all of them.
Reading best_reading(const RoundSyntax& syntax, const WorkSetting& setting) {
    constexpr int most_flips = 12;
    constexpr int most_effort = 1'000'000;
    std::vector<bool> plain(static_cast<std::size_t>(syntax.choices), false);
    Reading first{plain, work_round(syntax, plain, setting)};
    first.effort = first.worked.effort;
    if (comes_out(syntax, first.worked) || syntax.choices == 0) return first;
    const int flips = std::min({syntax.choices, most_flips, most_effort / std::max(first.effort, 1)});
    int effort = first.effort;
    for (int flip = 0; flip <= flips; ++flip) {
        std::vector<bool> choices = plain;
        if (flip < flips)
            choices[flip] = true;
        else
            choices.assign(choices.size(), true);
        Reading other{choices, work_round(syntax, choices, setting)};
        other.effort = effort += other.worked.effort;
        if (comes_out(syntax, other.worked)) return other;
    }
    first.effort = effort;
    return first;
}

// A round in the plain hand, or in another where only that comes out.
struct Understood {
    RoundSyntax syntax;
    Reading reading;
    YarnTable yarns;
};

bool any_error(const RoundSyntax& syntax) { return any_error(syntax.diagnostics); }

std::vector<ParseOptions> other_hands(const RoundSyntax& plain, const ParseOptions& options) {
    std::vector<ParseOptions> hands;
    const auto with = [&](bool around, bool numbers, bool same, bool alone) {
        ParseOptions hand = options;
        hand.around_is_all = around;
        hand.numbers_are_stitches = numbers;
        hand.same_is_next = same;
        hand.alone_is_around = alone;
        hands.push_back(hand);
    };
    if (plain.may_be_around) with(false, false, false, true);
    if (plain.around_may_be_all) with(true, false, false, false);
    if (plain.may_be_bare_numbers) with(true, true, false, false), with(false, true, false, false);
    if (plain.same_may_be_next) with(false, false, true, false);
    return hands;
}

// A number at the end that is just the count: "[sc, inc] x 6, 18".
void take_last_number(Understood& read) {
    const auto& last = read.syntax.last_number;
    if (!last || last->count != read.reading.worked.made || !read.reading.worked.problems.empty()) return;
    std::erase_if(read.syntax.diagnostics, [&](const ReadDiagnostic& d) {
        return d.code == ReadCode::number_alone && d.where == last->where;
    });
    read.syntax.stated = {*last};
}

Understood understood(const std::vector<Token>& tokens, const RoundSetting& setting, const YarnTable& yarns) {
    constexpr int most_effort = 1'000'000;
    const ParseOptions options{setting.terms, setting.work.into_ring, setting.even};
    Understood plain{{}, {}, yarns};
    plain.syntax = parse_round(tokens, options, plain.yarns);
    plain.reading = best_reading(plain.syntax, setting.work);
    take_last_number(plain);
    if (!any_error(plain.syntax) && comes_out(plain.syntax, plain.reading.worked)) return plain;
    for (const ParseOptions& hand : other_hands(plain.syntax, options)) {
        // A count bears them out; "sc 1, inc around" needs none.
        const bool needs_count = !hand.around_is_all || hand.numbers_are_stitches;
        if (plain.syntax.stated.empty() && needs_count) continue;
        if (plain.reading.effort > most_effort) break;
        Understood other{{}, {}, yarns};
        other.syntax = parse_round(tokens, hand, other.yarns);
        other.reading = best_reading(other.syntax, setting.work);
        other.reading.effort = plain.reading.effort += other.reading.effort;
        const bool counted =
            !other.syntax.stated.empty() || (hand.around_is_all && !hand.numbers_are_stitches);
        if (counted && !any_error(other.syntax) && comes_out(other.syntax, other.reading.worked))
            return other;
    }
    return plain;
}

bool works_anything(const std::vector<Node>& nodes) {
    return std::any_of(nodes.begin(), nodes.end(), [](const Node& node) {
        if (const auto* group = std::get_if<Group>(&node.what)) return works_anything(group->body);
        return std::holds_alternative<Work>(node.what);
    });
}

bool works_anything(const RoundSyntax& syntax) {
    return syntax.evenly_to != 0 || syntax.evenly_more != 0 || works_anything(syntax.nodes);
}

// Words that were not understood do no harm in a round that comes out and states its count.
void settle_unknown_words(ReadRound& read, bool fits) {
    for (ReadDiagnostic& d : read.diagnostics)
        if (d.code == ReadCode::unknown_words && fits)
            d.severity = read.stated ? Severity::note : Severity::warning;
}

std::string joined(const std::vector<std::string>& notes) {
    std::string all;
    for (const std::string& note : notes) {
        if (note.empty()) continue;
        if (!all.empty()) all += all.back() == '.' ? " " : ". ";
        all += note;
    }
    return all;
}

std::string renamed(const std::vector<Token>& tokens, std::size_t end, const std::vector<NameUse>& names,
                    Terms to) {
    std::string words;
    std::size_t name = 0;
    for (std::size_t i = 0; i < end; ++i) {
        if (tokens[i].spaced && !words.empty()) words += ' ';
        while (name < names.size() && names[name].first < i) ++name;
        if (name < names.size() && names[name].first == i) {
            words += abbreviation(names[name].kind, to);
            i += names[name].length - 1;
        } else {
            words += tokens[i].raw;
        }
    }
    return words;
}

std::string trimmed(std::string words) {
    while (!words.empty() && (words.back() == ' ' || words.back() == ',' || words.back() == ';' ||
                              words.back() == '.' || words.back() == '-' || words.back() == ':'))
        words.pop_back();
    return words;
}

std::string us_words(const std::vector<Token>& tokens, const RoundSyntax& syntax, Terms terms) {
    const std::size_t end = std::min(syntax.body_end, tokens.size());
    if (!is_english(terms)) return trimmed(english_of(std::span(tokens).first(end)));
    return trimmed(
        renamed(tokens, end, terms == Terms::us ? std::vector<NameUse>{} : syntax.names, Terms::us));
}

void prove(ReadRound& read, const std::vector<Token>& tokens) {
    // Skips alone leave nothing to go on from.
    const bool leaves = read.made.loops_left > 0;
    const bool worked = works_anything(read.syntax) && leaves;
    if (!worked && read.syntax.repeats_from == 0 && !any_error(read.diagnostics)) {
        const TextSpan where = tokens.empty() ? TextSpan{} : tokens.front().where;
        read.diagnostics.push_back({ReadCode::no_stitches, Severity::error, where, -1, -1, 0, 0, {}, {}});
    }
    if (read.stated && !any_error(read.diagnostics) && read.stated->count != read.stitches &&
        read.stated->count != read.made.loops_left)
        read.diagnostics.push_back({ReadCode::count_differs,
                                    Severity::error,
                                    read.stated->where,
                                    -1,
                                    -1,
                                    read.stated->count,
                                    read.stitches,
                                    {},
                                    {}});
}

}  // namespace

bool has_code(const ReadRound& read, ReadCode code) {
    return std::any_of(read.diagnostics.begin(), read.diagnostics.end(),
                       [&](const ReadDiagnostic& d) { return d.code == code; });
}

bool ReadRound::proved() const { return !any_error(diagnostics); }

ReadRound read_round(const std::vector<Token>& tokens, const RoundSetting& setting, YarnTable& yarns) {
    ReadRound read;
    Understood found = understood(tokens, setting, yarns);
    yarns = std::move(found.yarns);
    read.syntax = std::move(found.syntax);
    Reading reading = std::move(found.reading);
    read.effort = reading.effort;
    read.choices = std::move(reading.choices);
    read.made = std::move(reading.worked.round);
    read.taken = reading.worked.taken;
    read.stitches = reading.worked.made;
    read.last_yarn = reading.worked.last_yarn;
    if (!read.syntax.stated.empty()) read.stated = read.syntax.stated.back();
    read.diagnostics = read.syntax.diagnostics;
    const auto& problems = reading.worked.problems;
    const bool worked = works_anything(read.syntax);
    settle_unknown_words(read,
                         worked && problems.empty() && (!read.stated || read.stated->count == read.stitches));
    // Loops that do not come out after words that were not understood are no fault of their own.
    if (worked && !any_error(read.diagnostics))
        read.diagnostics.insert(read.diagnostics.end(), problems.begin(), problems.end());
    prove(read, tokens);
    read.words = us_words(tokens, read.syntax, setting.terms);
    read.note = joined(read.syntax.notes);
    if (setting.find_mends && !read.proved()) find_mends(read, tokens, setting, yarns);
    return read;
}

ReadRound read_round(std::string_view words, const RoundSetting& setting, YarnTable& yarns) {
    LexedText text(words);
    read_as_english(text, setting.terms);
    return read_round(all_tokens(text), setting, yarns);
}

std::string words_in_terms(std::string_view words, Terms from, Terms to) {
    if (from == to) return std::string(words);
    LexedText text(words);
    read_as_english(text, from);
    const std::vector<Token> tokens = all_tokens(text);
    if (!is_english(from)) return words_in_terms(english_of(tokens), Terms::us, to);
    YarnTable yarns;
    const RoundSyntax syntax = parse_round(tokens, {from, true, StitchKind::single_crochet}, yarns);
    return said_in(renamed(tokens, tokens.size(), syntax.names, english_behind(to)), to);
}

}  // namespace roundwright
