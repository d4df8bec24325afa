#include "app/rounds/round_edits.h"

#include <algorithm>
#include <numeric>
#include <utility>

#include <QCoreApplication>

#include "app/rounds/round_counts.h"
#include "app/rounds/round_phrases.h"
#include "core/base/limits.h"

namespace roundwright::app {
namespace {

QString tr(const char* text) { return QCoreApplication::translate("RoundEdits", text); }

/// Yarns that words name and the toy does not have yet are like its first.
void add_yarns(Toy& toy, const std::vector<std::string>& names) {
    for (std::size_t yarn = toy.yarns.size(); yarn < names.size(); ++yarn) {
        Yarn added = toy.yarns.empty() ? Yarn{} : toy.yarns.front();
        added.name = names[yarn];
        toy.yarns.push_back(added);
    }
}

std::size_t index(int round) { return static_cast<std::size_t>(round); }

std::vector<int> run_of(int first, std::size_t count) {
    std::vector<int> rounds(count);
    std::iota(rounds.begin(), rounds.end(), first);
    return rounds;
}

/// The round as an evenly worked one; one in words gets the count it comes to.
WorkedEvenly& evenly(Round& round, int count) {
    if (!std::holds_alternative<WorkedEvenly>(round.working)) {
        WorkedEvenly working;
        working.stitches = std::max(count, 1);
        round.working = working;
    }
    return std::get<WorkedEvenly>(round.working);
}

QString set_count_text(const std::vector<int>& rounds, const CountEntry& entry) {
    const QString which = rounds_phrase(rounds);
    if (entry.kind == CountEntry::Kind::count) return tr("Set %1 to %2 stitches").arg(which).arg(entry.value);
    if (entry.value == 0) return tr("Work %1 even").arg(which);
    return tr("Set %1 to %2 stitches a round").arg(which, change_phrase(entry.value));
}

}  // namespace

YarnTable yarn_table(const Toy& toy) {
    YarnTable table;
    for (const auto& yarn : toy.yarns) table.names.push_back(yarn.name);
    return table;
}

QString refusal_words(EditRefusal refusal) {
    switch (refusal) {
        case EditRefusal::too_many_rounds:
            return tr("A piece has at most %1 rounds.").arg(max_rounds_per_piece);
        case EditRefusal::too_many_pieces:
            return tr("A toy has at most %1 pieces.").arg(max_pieces);
        case EditRefusal::too_many_stitches:
            return tr("A piece has at most %1 stitches.").arg(max_stitches_per_piece);
    }
    return {};
}

std::vector<int> RoundEdits::edges() const {
    return edge_counts(session_.graph_of(session_.said_toy(), session_.current_piece())->get().graph);
}

RoundBelow RoundEdits::below(std::size_t round) const {
    const auto graph = session_.graph_of(session_.said_toy(), session_.current_piece());
    return RoundBelow::before(current(), graph->get().graph, round);
}

Piece RoundEdits::reworded(int round, const std::string& words, Terms terms, YarnTable& yarns) const {
    Piece piece = current();
    Round& changed = piece.rounds[index(round)];
    changed = read_cell(changed, below(index(round)), words, terms, yarns).round;
    return piece;
}

bool RoundEdits::put(const QString& text, Piece piece) {
    return session_.edit_piece(text, [&](Piece& current_piece) { current_piece = std::move(piece); });
}

bool RoundEdits::put(const QString& text, Edited<Piece> piece, const std::vector<std::string>& yarn_names) {
    if (piece.refusal) {
        session_.refuse(refusal_words(*piece.refusal));
        return false;
    }
    return session_.edit(text, toy_with(std::move(piece.value), yarn_names));
}

Toy RoundEdits::toy_with(Piece piece, const std::vector<std::string>& yarn_names) const {
    Toy toy = session_.said_toy();
    toy.pieces[index(session_.current_piece())] = std::move(piece);
    add_yarns(toy, yarn_names);
    return toy;
}

Edited<Piece> RoundEdits::with_count(const std::vector<int>& rounds, const CountEntry& entry) const {
    if (entry.kind == CountEntry::Kind::count) return set_counts(current(), rounds, entry.value);
    return change_counts(current(), rounds, entry.value, edges());
}

bool RoundEdits::set_count(const std::vector<int>& rounds, const CountEntry& entry) {
    return !rounds.empty() && put(set_count_text(rounds, entry), with_count(rounds, entry));
}

bool RoundEdits::change_each(const std::vector<int>& rounds, const QString& text,
                             const std::function<void(Round&)>& change) {
    Piece piece = current();
    for (const int round : rounds) change(piece.rounds[index(round)]);
    return put(text, std::move(piece));
}

bool RoundEdits::change_evenly(const std::vector<int>& rounds, const QString& text,
                               const std::function<void(WorkedEvenly&)>& change) {
    const auto counts = edges();
    Piece piece = current();
    for (const int round : rounds) change(evenly(piece.rounds[index(round)], counts[index(round) + 1]));
    return put(text, std::move(piece));
}

bool RoundEdits::set_words(int round, const QString& words) {
    if (words.trimmed().isEmpty()) return work_evenly({round});
    YarnTable yarns = yarn_table(session_.said_toy());
    Piece piece = reworded(round, words.trimmed().toStdString(), session_.preferences().terms(), yarns);
    return put(tr("Write round %1 in words").arg(round + 1), Edited<Piece>{std::move(piece)}, yarns.names);
}

Toy RoundEdits::with_words(int round, const QString& words) const {
    YarnTable yarns = yarn_table(session_.said_toy());
    Piece piece = reworded(round, words.trimmed().toStdString(), session_.preferences().terms(), yarns);
    return toy_with(std::move(piece), yarns.names);
}

std::optional<ReadDiagnostic> RoundEdits::mendable(int round) const {
    if (!session_.piece() || round < 0 || index(round) >= current().rounds.size()) return std::nullopt;
    const auto* written = std::get_if<AsWritten>(&current().rounds[index(round)].working);
    if (!written) return std::nullopt;
    YarnTable yarns = yarn_table(session_.said_toy());
    for (ReadDiagnostic& found :
         read_cell(current().rounds[index(round)], below(index(round)), written->words, Terms::us, yarns)
             .reading.diagnostics)
        if (found.severity == Severity::error && !found.mends.empty()) return found;
    return std::nullopt;
}

bool RoundEdits::mend(int round) {
    const auto what = mendable(round);
    if (!what) return false;
    const auto& words = std::get<AsWritten>(current().rounds[index(round)].working).words;
    YarnTable yarns = yarn_table(session_.said_toy());
    Piece piece = reworded(round, mended(words, what->mends.front()), Terms::us, yarns);
    return put(tr("Fix round %1").arg(round + 1), Edited<Piece>{std::move(piece)}, yarns.names);
}

bool RoundEdits::work_evenly(const std::vector<int>& rounds) {
    return change_evenly(rounds, tr("Work %1 evenly").arg(rounds_phrase(rounds)), [](WorkedEvenly&) {});
}

bool RoundEdits::set_stitch(const std::vector<int>& rounds, StitchKind kind, const QString& stitch_name) {
    return change_evenly(rounds, tr("Work %1 in %2").arg(rounds_phrase(rounds), stitch_name),
                         [kind](WorkedEvenly& working) { working.kind = kind; });
}

bool RoundEdits::set_loops(const std::vector<int>& rounds, LoopPart part, const QString& loops_name) {
    return change_evenly(rounds, tr("Work %1 into %2").arg(rounds_phrase(rounds), loops_name),
                         [part](WorkedEvenly& working) { working.part = part; });
}

bool RoundEdits::set_spacing(const std::vector<int>& rounds, Spacing spacing) {
    const QString text =
        spacing == Spacing::stacked ? tr("Stack the increases of %1") : tr("Stagger the increases of %1");
    return change_evenly(rounds, text.arg(rounds_phrase(rounds)),
                         [spacing](WorkedEvenly& working) { working.spacing = spacing; });
}

bool RoundEdits::set_yarn(const std::vector<int>& rounds, std::size_t yarn) {
    const auto& yarns = session_.said_toy().yarns;
    const QString name = yarn < yarns.size() ? QString::fromStdString(yarns[yarn].name) : QString();
    return change_each(rounds, tr("Work %1 in %2").arg(rounds_phrase(rounds), name),
                       [yarn](Round& round) { round.yarn = yarn; });
}

bool RoundEdits::set_flat_mark(const std::vector<int>& rounds, bool lies_flat) {
    const QString text = lies_flat ? tr("Mark %1 to lie flat") : tr("Let %1 rise");
    return change_each(rounds, text.arg(rounds_phrase(rounds)),
                       [lies_flat](Round& round) { round.lies_flat = lies_flat; });
}

bool RoundEdits::set_note(int round, const QString& note) {
    return change_each({round}, tr("Note on round %1").arg(round + 1),
                       [&](Round& changed) { changed.note = note.trimmed().toStdString(); });
}

bool RoundEdits::insert(int at, const std::vector<Round>& rounds, const QString& text,
                        const std::vector<std::string>& yarn_names) {
    if (!put(text, insert_rounds(current(), index(at), rounds), yarn_names)) return false;
    session_.select_rounds(run_of(at, rounds.size()));
    return true;
}

bool RoundEdits::replace(int first, int replaced, const std::vector<Round>& rounds, const QString& text) {
    if (!put(text, replace_rounds(current(), index(first), index(replaced), rounds))) return false;
    session_.select_rounds(run_of(first, rounds.size()));
    return true;
}

Round RoundEdits::like_round_before(int at) const {
    const auto& rounds = current().rounds;
    Round round = rounds.empty() ? Round{} : rounds[index(std::max(at - 1, 0))];
    evenly(round, edges()[index(std::max(at, rounds.empty() ? 0 : 1))]);
    round.lies_flat = false;
    round.note.clear();
    return round;
}

std::optional<Toy> RoundEdits::with_inserted(int at, const std::vector<Round>& rounds,
                                             const std::vector<std::string>& yarn_names) const {
    auto grown = insert_rounds(current(), index(at), rounds);
    if (grown.refusal) return std::nullopt;
    return toy_with(std::move(grown.value), yarn_names);
}

Round RoundEdits::next_round(const CountEntry& entry) const {
    Round round = like_round_before(static_cast<int>(current().rounds.size()));
    const int count = entered_count(entry, edges().back());
    evenly(round, count).stitches = count;
    return round;
}

bool RoundEdits::append_count(const CountEntry& entry) {
    const auto at = current().rounds.size();
    const Round round = next_round(entry);
    return put(
        tr("Add round %1 of %2 stitches").arg(at + 1).arg(std::get<WorkedEvenly>(round.working).stitches),
        insert_rounds(current(), at, std::vector{round}));
}

std::optional<Toy> RoundEdits::with_appended(const CountEntry& entry) const {
    return with_inserted(static_cast<int>(current().rounds.size()), {next_round(entry)});
}

RoundEdits::Appended RoundEdits::appended(const QString& words) const {
    const auto at = current().rounds.size();
    YarnTable yarns = yarn_table(session_.said_toy());
    const Round like = like_round_before(static_cast<int>(at));
    const Round round =
        read_cell(like, below(at), words.trimmed().toStdString(), session_.preferences().terms(), yarns)
            .round;
    auto grown = insert_rounds(current(), at, std::vector{round});
    return {std::move(grown), std::move(yarns.names)};
}

bool RoundEdits::append_words(const QString& words) {
    if (words.trimmed().isEmpty()) return false;
    Appended made = appended(words);
    return put(tr("Add round %1").arg(current().rounds.size() + 1), std::move(made.piece), made.yarn_names);
}

std::optional<Toy> RoundEdits::with_appended_words(const QString& words) const {
    Appended made = appended(words);
    if (words.trimmed().isEmpty() || made.piece.refusal) return std::nullopt;
    return toy_with(std::move(made.piece.value), made.yarn_names);
}

bool RoundEdits::insert_even(int at) { return insert(at, {like_round_before(at)}, tr("Add a round")); }

bool RoundEdits::remove(const std::vector<int>& rounds) {
    if (rounds.empty()) return false;
    const int left = static_cast<int>(current().rounds.size() - rounds.size());
    if (!put(tr("Delete %1").arg(rounds_phrase(rounds)), remove_rounds(current(), rounds))) return false;
    const int next = std::min(rounds.front(), left - 1);
    session_.select_rounds(next < 0 ? std::vector<int>{} : std::vector<int>{next});
    return true;
}

bool RoundEdits::repeat(const std::vector<int>& rounds) {
    if (rounds.empty()) return false;
    const int at = rounds.back() + 1;
    if (!put(tr("Repeat %1").arg(rounds_phrase(rounds)), duplicate_rounds(current(), rounds))) return false;
    session_.select_rounds(run_of(at, rounds.size()));
    return true;
}

bool RoundEdits::move(const std::vector<int>& rounds, int by) {
    const int last = static_cast<int>(current().rounds.size()) - 1;
    if (rounds.empty() || rounds.front() + by < 0 || rounds.back() + by > last) return false;
    const QString text = by < 0 ? tr("Move %1 earlier") : tr("Move %1 later");
    if (!put(text.arg(rounds_phrase(rounds)), move_rounds(current(), rounds, by))) return false;
    auto selected = rounds;
    for (int& round : selected) round += by;
    session_.select_rounds(std::move(selected));
    return true;
}

}  // namespace roundwright::app
