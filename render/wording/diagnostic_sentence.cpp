#include "render/wording/diagnostic_sentence.h"

#include <cmath>

#include <QCoreApplication>
#include <QLocale>

#include "render/wording/counted.h"
#include "render/wording/limit_words.h"
#include "render/wording/plain_text.h"
#include "render/wording/terms_words.h"

namespace roundwright {
namespace {

struct ReadingText {
    Q_DECLARE_TR_FUNCTIONS(Reading)
};

QString number(int count) { return QLocale().toString(count); }

/// An argument as it is said: a number, or the maker's own word.
QString said(const std::vector<Argument>& arguments, std::size_t index) {
    if (index >= arguments.size()) return {};
    const Argument& argument = arguments[index];
    if (const auto* count = std::get_if<int>(&argument)) return number(*count);
    if (const auto* text = std::get_if<std::string>(&argument)) return name_in_words(*text);
    if (const auto* value = std::get_if<double>(&argument)) return QLocale().toString(*value);
    return QLocale().toString(std::get<Millimetres>(argument).value);
}

/// Terms that an argument names by their code.
QString terms_of(const ReadDiagnostic& found, std::size_t index) {
    const auto* code =
        index < found.arguments.size() ? std::get_if<std::string>(&found.arguments[index]) : nullptr;
    const auto terms = code == nullptr ? std::nullopt : terms_of_code(*code);
    return terms ? terms_in_words(*terms) : QString();
}

int count_at(const std::vector<Argument>& arguments, std::size_t index) {
    if (index >= arguments.size()) return 0;
    const auto* count = std::get_if<int>(&arguments[index]);
    return count == nullptr ? 0 : *count;
}

QString loops_do_not_fit(const ReadDiagnostic& found) {
    const int apart = std::abs(found.expected - found.found);
    const QString sentence = found.found < found.expected
                                 ? ReadingText::tr("There are %1 below and the words use %2: %3 left over.")
                                 : ReadingText::tr("There are %1 below and the words use %2: %3 too few.");
    return sentence.arg(stitches_words(found.expected), number(found.found), number(apart));
}

/// What is wrong with the proof of a round.
QString proof_words(const ReadDiagnostic& found) {
    switch (found.code) {
        case ReadCode::loops_do_not_fit:
            return loops_do_not_fit(found);
        case ReadCode::count_differs:
            return ReadingText::tr("The count says %1, but the words make %2.")
                .arg(number(found.expected), number(found.found));
        case ReadCode::repeat_does_not_fit:
            return ReadingText::tr("A repeat of %1 does not fit evenly into %2.")
                .arg(stitches_words(found.expected), number(found.found));
        case ReadCode::not_enough_left:
            return ReadingText::tr("This stops %1 before the end, but only %2 are left.")
                .arg(stitches_words(found.expected), number(found.found));
        case ReadCode::nothing_to_fill:
            return ReadingText::tr("There is nothing here to work around.");
        case ReadCode::no_stitch_before:
            return ReadingText::tr("There is no stitch before this to work into again.");
        default:
            return {};
    }
}

/// What is wrong with its words.
QString word_words(const ReadDiagnostic& found) {
    const QString word = said(found.arguments, 0);
    switch (found.code) {
        case ReadCode::no_stitches:
            return ReadingText::tr("There are no stitches here.");
        case ReadCode::unknown_words:
            return ReadingText::tr("“%1” is not a stitch or word known here.").arg(word);
        case ReadCode::other_terms:
            return ReadingText::tr("“%1” is from the other set of terms, US or UK.").arg(word);
        case ReadCode::number_alone:
            return ReadingText::tr("It is not clear what the %1 counts.").arg(word);
        case ReadCode::number_is_zero:
            return ReadingText::tr("0 stitches leave nothing to work.");
        case ReadCode::number_too_large:
            return ReadingText::tr("%1 is more than the limit of %2, so %2 was taken instead.")
                .arg(number(found.found), number(found.expected));
        case ReadCode::bracket_not_closed:
            return ReadingText::tr("There is no closing bracket for %1.").arg(word);
        case ReadCode::bracket_not_opened:
            return ReadingText::tr("There is no opening bracket for %1.").arg(word);
        case ReadCode::bracket_mismatched:
            return ReadingText::tr("The bracket %1 is closed by %2.").arg(word, said(found.arguments, 1));
        case ReadCode::star_missing:
            return ReadingText::tr("There is no * to repeat from.");
        case ReadCode::nested_too_deep:
            return ReadingText::tr("Repeats are nested more than %1 deep.").arg(number(found.expected));
        case ReadCode::not_one_stitch:
            return ReadingText::tr("These cannot all be worked into one stitch.");
        case ReadCode::unnamed_stitch:
            if (found.arguments.size() > 1)
                return ReadingText::tr("“%1” is counted like %2.").arg(word, said(found.arguments, 1));
            return ReadingText::tr("“%1” was read as a bobble.").arg(word);
        case ReadCode::evenly_placed:
            return ReadingText::tr("It does not say where, so they are spaced evenly.");
        default:
            return {};
    }
}

/// What is wrong with the numbers of rounds.
QString numbering_words(const ReadDiagnostic& found) {
    switch (found.code) {
        case ReadCode::round_out_of_order:
            return ReadingText::tr("Round %1 should come here, not round %2.")
                .arg(number(found.expected), number(found.found));
        case ReadCode::rounds_missing:
            return ReadingText::tr(
                       "Round %1 should come here, but the numbers jump to %2. Is something missing?")
                .arg(number(found.expected), number(found.found));
        case ReadCode::range_reversed:
            return ReadingText::tr("Rounds %1 to %2 run backwards.")
                .arg(number(found.expected), number(found.found));
        case ReadCode::unknown_round:
            return ReadingText::tr("There is no round %1 before this one.").arg(number(found.found));
        case ReadCode::rounds_differ:
            return ReadingText::tr("The numbers make %1, but the line says %2.")
                .arg(rounds_words(found.expected), number(found.found));
        case ReadCode::range_open:
            return ReadingText::tr(
                       "It does not say where the rounds from %1 on end. One was taken; how many are there?")
                .arg(number(found.expected));
        case ReadCode::rounds_filled:
            return found.expected == found.found
                       ? ReadingText::tr("Round %1 is not written out; it was worked like those around it.")
                             .arg(number(found.expected))
                       : ReadingText::tr(
                             "Rounds %1 to %2 are not written out; they were worked like those around them.")
                             .arg(number(found.expected), number(found.found));
        case ReadCode::round_not_taken:
            return ReadingText::tr("Round %1 is in the text, but in no piece.").arg(number(found.found));
        default:
            return {};
    }
}

/// What is wrong with the pattern around the rounds.
QString pattern_words(const ReadDiagnostic& found) {
    const QString word = said(found.arguments, 0);
    switch (found.code) {
        case ReadCode::closed_flat:
            return ReadingText::tr(
                "These stitches close the piece flat, through both layers. The toy keeps that as the piece’s "
                "end, sewn straight across, and not as a round.");
        case ReadCode::loops_left_over:
            return ReadingText::tr(
                       "This is worked into loops that were left before (“%1”). The piece begins as a "
                       "ring of %2 chains here; join it to its place in the toy.")
                .arg(word, number(found.found));
        case ReadCode::line_not_understood:
            return ReadingText::tr("“%1” may be a round, but could not be read. It is kept as a note.")
                .arg(word);
        case ReadCode::remark_not_read:
            return ReadingText::tr("Not all numbers or stitches in “%1” could be read. It is kept as a note.")
                .arg(word);
        case ReadCode::unknown_piece:
            return ReadingText::tr("No piece before this one is called “%1”.").arg(word);
        case ReadCode::piece_without_rounds:
            return ReadingText::tr("No rounds follow “%1”.").arg(word);
        case ReadCode::terms_guessed:
            return ReadingText::tr("Read in %1.").arg(terms_of(found, 0));
        case ReadCode::terms_mixed:
            if (found.arguments.size() > 2)
                return ReadingText::tr("“%1” is of %2, but the pattern is in %3.")
                    .arg(word, terms_of(found, 1), terms_of(found, 2));
            return ReadingText::tr("“%1” mixes US and UK terms.").arg(word);
        case ReadCode::no_rounds:
            return ReadingText::tr("No rounds were found in this text.");
        default:
            return {};
    }
}

/// Where the program ends.
QString limit_words(const ReadDiagnostic& found) {
    switch (found.code) {
        case ReadCode::too_many_stitches:
            return ReadingText::tr("%1 This round was cut there.").arg(most_stitches_words(found.expected));
        case ReadCode::too_many_rounds:
            return ReadingText::tr("%1 The rest was left out.").arg(most_rounds_words(found.expected));
        case ReadCode::too_many_pieces:
            return most_pieces_words(found.expected);
        case ReadCode::rounds_of_text:
            return ReadingText::tr("Only the first %1 of a text are read; the rest was left out.")
                .arg(rounds_words(found.expected));
        case ReadCode::stitches_of_text:
            return ReadingText::tr("Only the first %1 of a text are read; the rest was left out.")
                .arg(stitches_words(found.expected));
        case ReadCode::text_too_long:
            return ReadingText::tr("The text has %1 bytes, and the limit is %2. No pattern is that long.")
                .arg(number(found.found), number(found.expected));
        case ReadCode::line_too_long:
            return ReadingText::tr("This line has %1 bytes, and the limit is %2. It was left out.")
                .arg(number(found.found), number(found.expected));
        case ReadCode::not_utf8:
            return ReadingText::tr("This is not text in UTF-8.");
        default:
            return {};
    }
}

/// What the rounds after one that does not come out go on from.
QString going_on_words(const GoingOn& on) {
    const QString stitches = stitches_words(on.stitches);
    using From = GoingOn::From;
    switch (on.from) {
        case From::not_said:
            return {};
        case From::stated_count:
            return on.confirmed
                       ? ReadingText::tr("The next rounds need %1, the count given here.").arg(stitches)
                       : ReadingText::tr("The next rounds go on from %1, the count given here.")
                             .arg(stitches);
        case From::words:
            return on.confirmed
                       ? ReadingText::tr("The next rounds need %1.").arg(stitches)
                       : ReadingText::tr("The next rounds go on from %1, as the words say.").arg(stitches);
        case From::next_rounds:
            return ReadingText::tr("The next rounds need %1.").arg(stitches);
        case From::round_below:
            return ReadingText::tr("The next rounds go on from %1, as before this round.").arg(stitches);
    }
    return {};
}

}  // namespace

QString diagnostic_sentence(const ReadDiagnostic& diagnostic) {
    for (const auto words : {proof_words, word_words, numbering_words, pattern_words, limit_words}) {
        QString sentence = words(diagnostic);
        if (sentence.isEmpty()) continue;
        const QString on = going_on_words(diagnostic.goes_on);
        if (!on.isEmpty()) sentence += QLatin1Char(' ') + on;
        return diagnostic.more > 0
                   ? ReadingText::tr("%1 (And %2 more like this.)").arg(sentence, number(diagnostic.more))
                   : sentence;
    }
    return {};
}

QString mend_question(const Mend& mend) {
    const QString first = said(mend.arguments, 0);
    const QString second = said(mend.arguments, 1);
    switch (mend.code) {
        case MendCode::change_stated_count:
            return ReadingText::tr("Should the count say %1?").arg(second);
        case MendCode::change_number:
            return ReadingText::tr("Should that be %1, not %2?").arg(second, first);
        case MendCode::change_times:
            return ReadingText::tr("Should that be %Ln time(s), not %1?", nullptr,
                                   count_at(mend.arguments, 1))
                .arg(first);
        case MendCode::add_times:
            return ReadingText::tr("Repeat it %Ln time(s)?", nullptr, count_at(mend.arguments, 0));
        case MendCode::times_sign:
            return ReadingText::tr("Does “%1” mean “times”: %Ln time(s)?", nullptr,
                                   count_at(mend.arguments, 1))
                .arg(first);
        case MendCode::add_stitches:
            return ReadingText::tr("Add %1?").arg(stitches_words(count_at(mend.arguments, 0)));
        case MendCode::remove_words:
            return ReadingText::tr("Leave out “%1”?").arg(first);
        case MendCode::change_stitch:
        case MendCode::spell:
            return ReadingText::tr("Should that be “%1”, not “%2”?").arg(second, first);
        case MendCode::close_bracket:
            return ReadingText::tr("Close it with %1?").arg(first);
        case MendCode::open_bracket:
            return ReadingText::tr("Open it with %1?").arg(first);
        case MendCode::add_brackets:
            return ReadingText::tr("Put it in brackets, %Ln time(s)?", nullptr, count_at(mend.arguments, 0));
        case MendCode::space_evenly:
            return ReadingText::tr("Work %1, evenly spaced?")
                .arg(stitches_words(count_at(mend.arguments, 0)));
        case MendCode::renumber:
            return ReadingText::tr("Call it round %1?").arg(second);
        case MendCode::bracket_count:
            return ReadingText::tr("Is %1 the stitch count?").arg(first);
    }
    return {};
}

QString mend_made_words(const Mend& mend) {
    const QString first = said(mend.arguments, 0);
    const QString second = said(mend.arguments, 1);
    switch (mend.code) {
        case MendCode::change_stated_count:
            return ReadingText::tr("The count now says %1 instead of %2.").arg(second, first);
        case MendCode::change_number:
            return ReadingText::tr("It now says %1 instead of %2.").arg(second, first);
        case MendCode::change_times:
            return ReadingText::tr("It is now %Ln time(s) instead of %1.", nullptr,
                                   count_at(mend.arguments, 1))
                .arg(first);
        case MendCode::add_times:
            return ReadingText::tr("It is now repeated %Ln time(s).", nullptr, count_at(mend.arguments, 0));
        case MendCode::times_sign:
            return ReadingText::tr("“%1” now says %Ln time(s).", nullptr, count_at(mend.arguments, 1))
                .arg(first);
        case MendCode::add_stitches:
            return ReadingText::tr("Added %1.").arg(stitches_words(count_at(mend.arguments, 0)));
        case MendCode::remove_words:
            return ReadingText::tr("Left out “%1”.").arg(first);
        case MendCode::change_stitch:
        case MendCode::spell:
            return ReadingText::tr("It now says “%1” instead of “%2”.").arg(second, first);
        case MendCode::close_bracket:
            return ReadingText::tr("Closed it with %1.").arg(first);
        case MendCode::open_bracket:
            return ReadingText::tr("Opened it with %1.").arg(first);
        case MendCode::add_brackets:
            return ReadingText::tr("Put it in brackets, %Ln time(s).", nullptr, count_at(mend.arguments, 0));
        case MendCode::space_evenly:
            return ReadingText::tr("It is now %1, evenly spaced.")
                .arg(stitches_words(count_at(mend.arguments, 0)));
        case MendCode::renumber:
            return ReadingText::tr("It is now round %1.").arg(second);
        case MendCode::bracket_count:
            return ReadingText::tr("%1 is now the stitch count.").arg(first);
    }
    return {};
}

QString mend_label(const Mend& mend) {
    const QString first = said(mend.arguments, 0);
    const QString second = said(mend.arguments, 1);
    switch (mend.code) {
        case MendCode::change_stated_count:
            return ReadingText::tr("Count %1").arg(second);
        case MendCode::change_number:
        case MendCode::change_stitch:
        case MendCode::spell:
            return ReadingText::tr("Use %1").arg(second);
        case MendCode::change_times:
        case MendCode::times_sign:
            return ReadingText::tr("%Ln time(s)", nullptr, count_at(mend.arguments, 1));
        case MendCode::add_times:
        case MendCode::add_brackets:
            return ReadingText::tr("%Ln time(s)", nullptr, count_at(mend.arguments, 0));
        case MendCode::add_stitches:
            return ReadingText::tr("Add %1").arg(first);
        case MendCode::remove_words:
            return ReadingText::tr("Leave out");
        case MendCode::close_bracket:
            return ReadingText::tr("Close");
        case MendCode::open_bracket:
            return ReadingText::tr("Open");
        case MendCode::space_evenly:
            return ReadingText::tr("Space evenly");
        case MendCode::renumber:
            return ReadingText::tr("Round %1").arg(second);
        case MendCode::bracket_count:
            return ReadingText::tr("Count %1").arg(first);
    }
    return {};
}

}  // namespace roundwright
