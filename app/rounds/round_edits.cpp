#include "app/rounds/round_edits.h"

#include <algorithm>
#include <numeric>
#include <utility>

#include <QCoreApplication>

#include "app/rounds/round_counts.h"
#include "core/base/limits.h"
#include "render/wording/limit_words.h"
#include "render/wording/plain_text.h"
#include "render/wording/round_phrases.h"

namespace roundwright::app {
namespace {

struct RoundEditsText {
    Q_DECLARE_TR_FUNCTIONS(RoundEdits)
};

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
    if (entry.times > 1)
        return RoundEditsText::tr("Work %1 over %n round(s)", nullptr,
                                  static_cast<int>(rounds.size()) * entry.times)
            .arg(which);
    if (entry.kind == CountEntry::Kind::count)
        return RoundEditsText::tr("Set %1 to %n stitch(es)", nullptr, entry.value).arg(which);
    if (entry.value == 0) return RoundEditsText::tr("Work %1 even").arg(which);
    return RoundEditsText::tr("Set %1 to %2 stitches a round").arg(which, change_phrase(entry.value));
}

/// The piece with each of the rounds as often; the mark and the note stay with the first.
Edited<Piece> with_each_times(const Piece& piece, const std::vector<int>& rounds, int times) {
    const auto more = index(times - 1);
    if (piece.rounds.size() + rounds.size() * more > max_rounds_per_piece)
        return {piece, EditRefusal::too_many_rounds};
    Edited<Piece> edited{piece};
    for (auto round = rounds.rbegin(); more > 0 && round != rounds.rend(); ++round) {
        Round copy = piece.rounds[index(*round)];
        copy.lies_flat = false;
        copy.note.clear();
        edited = insert_rounds(edited.value, index(*round) + 1, std::vector<Round>(more, copy));
    }
    return edited;
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
            return most_rounds_words(max_rounds_per_piece);
        case EditRefusal::too_many_pieces:
            return most_pieces_words(max_pieces);
        case EditRefusal::too_many_joins:
            return most_joins_words(max_joins);
        case EditRefusal::too_many_stitches:
            return most_stitches_words(max_stitches_per_piece);
    }
    return {};
}

std::vector<int> RoundEdits::edges() const {
    const auto graph = session_.graph_of(session_.said_toy(), session_.current_piece());
    return edge_counts(graph->get().graph, current().rounds.size());
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

Edited<Toy> RoundEdits::edited(const RoundsEdit& edit, const std::vector<std::string>& yarn_names) const {
    Edited<Toy> toy = edit_rounds(session_.said_toy(), index(session_.current_piece()), edit);
    if (!toy.refusal) add_yarns(toy.value, yarn_names);
    return toy;
}

bool RoundEdits::put(const QString& text, const RoundsEdit& edit,
                     const std::vector<std::string>& yarn_names) {
    Edited<Toy> toy = edited(edit, yarn_names);
    if (toy.refusal) {
        session_.refuse(refusal_words(*toy.refusal));
        return false;
    }
    return session_.edit(text, std::move(toy.value));
}

Toy RoundEdits::toy_with(Piece piece, const std::vector<std::string>& yarn_names) const {
    Toy toy = session_.said_toy();
    toy.pieces[index(session_.current_piece())] = std::move(piece);
    add_yarns(toy, yarn_names);
    return toy;
}

Edited<Piece> RoundEdits::with_count(const std::vector<int>& rounds, const CountEntry& entry) const {
    return counted(current(), rounds, entry);
}

Edited<Piece> RoundEdits::counted(const Piece& from, const std::vector<int>& rounds,
                                  const CountEntry& entry) const {
    Edited<Piece> piece = with_each_times(from, rounds, entry.times);
    if (piece.refusal) return piece;
    const auto all = each_times(rounds, entry.times);
    if (entry.kind == CountEntry::Kind::count) return set_counts(piece.value, all, entry.value);
    return change_counts(piece.value, all, entry.value, entry.times > 1 ? edge_counts(piece.value) : edges());
}

bool RoundEdits::set_count(const std::vector<int>& rounds, const CountEntry& entry) {
    if (rounds.empty()) return false;
    const RoundsEdit edit = [&](const Piece& piece) { return counted(piece, rounds, entry); };
    if (!put(set_count_text(rounds, entry), edit)) return false;
    if (entry.times > 1) session_.select_rounds(each_times(rounds, entry.times));
    return true;
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
    return put(RoundEditsText::tr("Write round %1 in words").arg(round + 1), Edited<Piece>{std::move(piece)},
               yarns.names);
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
    return put(RoundEditsText::tr("Fix round %1").arg(round + 1), Edited<Piece>{std::move(piece)},
               yarns.names);
}

bool RoundEdits::work_evenly(const std::vector<int>& rounds) {
    return change_evenly(rounds, RoundEditsText::tr("Work %1 evenly").arg(rounds_phrase(rounds)),
                         [](WorkedEvenly&) {});
}

bool RoundEdits::set_stitch(const std::vector<int>& rounds, StitchKind kind, const QString& stitch_name) {
    return change_evenly(rounds, RoundEditsText::tr("Work %1 in %2").arg(rounds_phrase(rounds), stitch_name),
                         [kind](WorkedEvenly& working) { working.kind = kind; });
}

bool RoundEdits::set_loops(const std::vector<int>& rounds, LoopPart part, const QString& loops_name) {
    return change_evenly(rounds, RoundEditsText::tr("Work %1 into %2").arg(rounds_phrase(rounds), loops_name),
                         [part](WorkedEvenly& working) { working.part = part; });
}

bool RoundEdits::set_spacing(const std::vector<int>& rounds, Spacing spacing) {
    const QString text = spacing == Spacing::stacked ? RoundEditsText::tr("Stack the increases of %1")
                                                     : RoundEditsText::tr("Stagger the increases of %1");
    return change_evenly(rounds, text.arg(rounds_phrase(rounds)),
                         [spacing](WorkedEvenly& working) { working.spacing = spacing; });
}

bool RoundEdits::set_yarn(const std::vector<int>& rounds, std::size_t yarn) {
    const auto& yarns = session_.said_toy().yarns;
    const QString name = yarn < yarns.size() ? name_in_words(yarns[yarn].name) : QString();
    return change_each(rounds, RoundEditsText::tr("Work %1 in %2").arg(rounds_phrase(rounds), name),
                       [yarn](Round& round) { round.yarn = yarn; });
}

bool RoundEdits::set_flat_mark(const std::vector<int>& rounds, bool lies_flat) {
    const QString text =
        lies_flat ? RoundEditsText::tr("Mark %1 to lie flat") : RoundEditsText::tr("Let %1 rise");
    return change_each(rounds, text.arg(rounds_phrase(rounds)),
                       [lies_flat](Round& round) { round.lies_flat = lies_flat; });
}

bool RoundEdits::set_note(int round, const QString& note) {
    return change_each({round}, RoundEditsText::tr("Note on round %1").arg(round + 1),
                       [&](Round& changed) { changed.note = note.trimmed().toStdString(); });
}

bool RoundEdits::insert(int at, const std::vector<Round>& rounds, const QString& text,
                        const std::vector<std::string>& yarn_names) {
    const RoundsEdit edit = [&](const Piece& piece) { return insert_rounds(piece, index(at), rounds); };
    if (!put(text, edit, yarn_names)) return false;
    session_.select_rounds(run_of(at, rounds.size()));
    return true;
}

bool RoundEdits::replace(int first, int replaced, const std::vector<Round>& rounds, const QString& text) {
    const RoundsEdit edit = [&](const Piece& piece) {
        return replace_rounds(piece, index(first), index(replaced), rounds);
    };
    if (!put(text, edit)) return false;
    session_.select_rounds(run_of(first, rounds.size()));
    return true;
}

/// A row that is still being typed counts in what is shown and not yet in what is edited: its place is the
/// end.
int RoundEdits::place_in_said(int at) const {
    return std::clamp(at, 0, static_cast<int>(current().rounds.size()));
}

Round RoundEdits::like_round_before(int at) const {
    const auto& rounds = current().rounds;
    at = place_in_said(at);
    Round round = rounds.empty() ? Round{} : rounds[index(std::max(at - 1, 0))];
    evenly(round, edges()[index(std::max(at, rounds.empty() ? 0 : 1))]);
    round.lies_flat = false;
    round.note.clear();
    round.kept = {};
    return round;
}

std::optional<Toy> RoundEdits::with_inserted(int at, const std::vector<Round>& rounds,
                                             const std::vector<std::string>& yarn_names) const {
    const std::size_t place = index(place_in_said(at));
    auto grown = edited([&](const Piece& piece) { return insert_rounds(piece, place, rounds); }, yarn_names);
    if (grown.refusal) return std::nullopt;
    return std::move(grown.value);
}

std::vector<Round> RoundEdits::next_rounds(const CountEntry& entry) const {
    std::vector<Round> rounds;
    for (const int count : entered_counts(entry, edges().back())) {
        Round& round = rounds.emplace_back(like_round_before(static_cast<int>(current().rounds.size())));
        evenly(round, count).stitches = count;
    }
    return rounds;
}

bool RoundEdits::append_count(const CountEntry& entry) {
    const auto at = current().rounds.size();
    const auto rounds = next_rounds(entry);
    const QString text =
        rounds.size() == 1
            ? RoundEditsText::tr("Add round %1 of %n stitch(es)", nullptr,
                                 std::get<WorkedEvenly>(rounds.front().working).stitches)
                  .arg(at + 1)
            : RoundEditsText::tr("Add %1").arg(rounds_phrase(run_of(static_cast<int>(at), rounds.size())));
    return put(text, RoundsEdit([&](const Piece& piece) { return insert_rounds(piece, at, rounds); }));
}

std::optional<Toy> RoundEdits::with_appended(const CountEntry& entry) const {
    return with_inserted(static_cast<int>(current().rounds.size()), next_rounds(entry));
}

RoundEdits::Appended RoundEdits::appended(const QString& words) const {
    const auto at = current().rounds.size();
    YarnTable yarns = yarn_table(session_.said_toy());
    const Round like = like_round_before(static_cast<int>(at));
    const Round round =
        read_cell(like, below(at), words.trimmed().toStdString(), session_.preferences().terms(), yarns)
            .round;
    return {round, std::move(yarns.names)};
}

bool RoundEdits::append_words(const QString& words) {
    if (words.trimmed().isEmpty()) return false;
    const Appended made = appended(words);
    const std::size_t at = current().rounds.size();
    const RoundsEdit edit = [&](const Piece& piece) {
        return insert_rounds(piece, at, std::vector{made.round});
    };
    return put(RoundEditsText::tr("Add round %1").arg(at + 1), edit, made.yarn_names);
}

std::optional<Toy> RoundEdits::with_appended_words(const QString& words) const {
    if (words.trimmed().isEmpty()) return std::nullopt;
    const Appended made = appended(words);
    return with_inserted(static_cast<int>(current().rounds.size()), {made.round}, made.yarn_names);
}

bool RoundEdits::insert_even(int at) {
    return insert(at, {like_round_before(at)}, RoundEditsText::tr("Add a round"));
}

bool RoundEdits::remove(const std::vector<int>& rounds) {
    if (rounds.empty()) return false;
    const int left = static_cast<int>(current().rounds.size() - rounds.size());
    const RoundsEdit edit = [&](const Piece& piece) { return Edited<Piece>{remove_rounds(piece, rounds)}; };
    if (!put(RoundEditsText::tr("Delete %1").arg(rounds_phrase(rounds)), edit)) return false;
    const int next = std::min(rounds.front(), left - 1);
    session_.select_rounds(next < 0 ? std::vector<int>{} : std::vector<int>{next});
    return true;
}

bool RoundEdits::repeat(const std::vector<int>& rounds) {
    if (rounds.empty()) return false;
    const int at = rounds.back() + 1;
    const RoundsEdit edit = [&](const Piece& piece) { return duplicate_rounds(piece, rounds); };
    if (!put(RoundEditsText::tr("Repeat %1").arg(rounds_phrase(rounds)), edit)) return false;
    session_.select_rounds(run_of(at, rounds.size()));
    return true;
}

bool RoundEdits::move(const std::vector<int>& rounds, int by) {
    const int last = static_cast<int>(current().rounds.size()) - 1;
    if (rounds.empty() || rounds.front() + by < 0 || rounds.back() + by > last) return false;
    const QString text = by < 0 ? RoundEditsText::tr("Move %1 earlier") : RoundEditsText::tr("Move %1 later");
    if (!put(text.arg(rounds_phrase(rounds)), move_rounds(current(), rounds, by))) return false;
    auto selected = rounds;
    for (int& round : selected) round += by;
    session_.select_rounds(std::move(selected));
    return true;
}

}  // namespace roundwright::app
