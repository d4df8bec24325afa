#include "app/rounds/entry_reading.h"

#include <QCoreApplication>
#include <QStringList>

#include "core/language/round/round_entry.h"
#include "core/rounds/piece_graph.h"
#include "render/wording/limit_words.h"

namespace roundwright::app {
namespace {

struct EntryReadingText {
    Q_DECLARE_TR_FUNCTIONS(EntryReading)
};

QString run_words(int rounds, int stitches) {
    return rounds == 1
               ? QString::number(stitches)
               : EntryReadingText::tr("%n round(s) of %1", nullptr, static_cast<int>(rounds)).arg(stitches);
}

/// "18, 4 rounds of 24, 18" from the counts, runs of the same taken together.
QString counts_words(const std::vector<int>& counts) {
    constexpr qsizetype most_runs = 8;
    QStringList runs;
    for (std::size_t first = 0; first < counts.size();) {
        std::size_t last = first;
        while (last + 1 < counts.size() && counts[last + 1] == counts[first]) ++last;
        runs << run_words(static_cast<int>(last - first + 1), counts[first]);
        first = last + 1;
    }
    if (runs.size() > most_runs) {
        const QString end = runs.back();
        runs = runs.mid(0, most_runs - 1);
        runs << QStringLiteral("…") << end;
    }
    return runs.join(QStringLiteral(", "));
}

QString rounds_words(const std::vector<Round>& rounds, std::size_t there, const std::vector<int>& counts) {
    const int first = static_cast<int>(there) + 1;
    const int last = first + static_cast<int>(rounds.size()) - 1;
    const QString which = first == last ? EntryReadingText::tr("round %1").arg(first)
                                        : EntryReadingText::tr("rounds %1 to %2").arg(first).arg(last);
    return QStringLiteral("%1: %2").arg(which, counts_words(counts));
}

QString problem_words(const EntryProblem& problem, const QString& there) {
    switch (problem.code) {
        case EntryProblemCode::expected_count:
            return EntryReadingText::tr("“%1”: a count, +6, −6 or = goes here.").arg(there);
        case EntryProblemCode::expected_repeat:
            return EntryReadingText::tr("How many times? A number goes after the x.");
        case EntryProblemCode::expected_separator:
            return EntryReadingText::tr("A comma or a space goes before “%1”.").arg(there);
        case EntryProblemCode::count_too_small:
            return problem.number > 0 ? EntryReadingText::tr("“%1” leaves none of the %n stitch(es) below.",
                                                             nullptr, problem.number)
                                            .arg(there)
                                      : EntryReadingText::tr("A round has at least one stitch.");
        case EntryProblemCode::count_too_large:
            return most_stitches_words(problem.number);
        case EntryProblemCode::nothing_below:
            return EntryReadingText::tr("The first round has no round below: type its count, such as 6.");
        case EntryProblemCode::too_many_rounds:
            return most_rounds_words(problem.number);
    }
    return {};
}

/// A span in code points on one line of a text, as UTF-16 units from its start.
void place_problem(EntryReading& reading, const QString& text, const TextSpan& where) {
    qsizetype line_start = 0;
    for (int line = 1; line < where.line; ++line) line_start = text.indexOf(u'\n', line_start) + 1;
    const auto units = [&](int points) {
        const auto line = text.mid(line_start).toUcs4().mid(0, points);
        return static_cast<int>(
            QString::fromUcs4(reinterpret_cast<const char32_t*>(line.constData()), line.size()).size());
    };
    const int before = units(where.column - 1);
    reading.problem_at = static_cast<int>(line_start) + before;
    reading.problem_length = units(where.column - 1 + where.length) - before;
}

/// What the first of the rounds stands on.
RoundBelow below_rounds(const EntryPlace& place) {
    const Piece& piece = place.piece;
    const auto below = [&](const StitchGraph& graph) {
        return RoundBelow::before(piece, graph, piece.rounds.size());
    };
    return place.graph ? below(place.graph->get().graph) : below(piece_graph(piece).graph);
}

EntryReading read_counts(const QString& text, const EntryPlace& place) {
    const Piece& piece = place.piece;
    const auto entry =
        parse_round_entry(text.toStdString(), {below_rounds(place).loops, piece.rounds.size(), place.like});
    EntryReading reading;
    reading.rounds = entry.rounds;
    std::vector<int> counts;
    for (const auto& round : entry.rounds) counts.push_back(std::get<WorkedEvenly>(round.working).stitches);
    if (!counts.empty()) reading.understood = rounds_words(reading.rounds, piece.rounds.size(), counts);
    if (!entry.problems.empty()) {
        place_problem(reading, text, entry.problems.front().where);
        reading.problem =
            problem_words(entry.problems.front(), text.mid(reading.problem_at, reading.problem_length));
    }
    return reading;
}

EntryReading read_words(const QString& text, const EntryPlace& place) {
    EntryReading reading;
    RoundBelow below = below_rounds(place);
    std::vector<int> counts;
    YarnTable yarns{place.yarn_names};
    int unproved = 0;
    int stitches = 0;
    for (const auto& line : text.split(u'\n', Qt::SkipEmptyParts)) {
        if (line.trimmed().isEmpty()) continue;
        const auto cell = read_cell(place.like, below, line.trimmed().toStdString(), place.terms, yarns);
        below.add(cell.reading.made, std::get_if<WorkedEvenly>(&cell.round.working));
        counts.push_back(below.loops);
        reading.rounds.push_back(cell.round);
        stitches += cell.reading.stitches;
        if (!cell.reading.proved() && unproved == 0) unproved = static_cast<int>(reading.rounds.size());
    }
    reading.yarn_names = yarns.names;
    if (stitches == 0) {
        reading.rounds.clear();
        reading.problem = EntryReadingText::tr(
            "No stitches in these words. Type counts such as 24x4, or words such as [sc, inc] x 6.");
        return reading;
    }
    const auto there = place.piece.rounds.size();
    reading.understood = rounds_words(reading.rounds, there, counts);
    if (unproved > 0)
        reading.understood = EntryReadingText::tr("%1; round %2 does not work out yet")
                                 .arg(reading.understood)
                                 .arg(there + unproved);
    return reading;
}

}  // namespace

EntryReading read_entry(const QString& text, const EntryPlace& place) {
    if (text.trimmed().isEmpty()) return {};
    if (!looks_like_round_entry(text.toStdString())) return read_words(text, place);
    auto reading = read_counts(text, place);
    reading.yarn_names = place.yarn_names;
    return reading;
}

}  // namespace roundwright::app
