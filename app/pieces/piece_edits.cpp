#include "app/pieces/piece_edits.h"

#include <algorithm>

#include <QCoreApplication>
#include <QRegularExpression>

#include "app/rounds/round_edits.h"
#include "core/assembly/first_joins.h"
#include "core/toy/edits.h"
#include "render/wording/plain_text.h"

namespace roundwright::app {
namespace {

struct PieceEditsText {
    Q_DECLARE_TR_FUNCTIONS(PieceEdits)
};

Piece empty_piece(int number) {
    Piece piece;
    piece.name = PieceEditsText::tr("Piece %1").arg(number).toStdString();
    return piece;
}

/// "Ear 2" beside "Ear", "Ear 3" beside that: the first number that no piece has.
QString numbered_name(const Toy& toy, const QString& name) {
    static const QRegularExpression number(QStringLiteral("\\s+\\d+$"));
    const QString stem = QString(name).remove(number);
    for (int i = 2;; ++i) {
        const QString numbered = PieceEditsText::tr("%1 %2").arg(stem).arg(i);
        const bool taken = std::ranges::any_of(toy.pieces, [&](const Piece& piece) {
            return QString::fromStdString(piece.name).compare(numbered, Qt::CaseInsensitive) == 0;
        });
        if (!taken) return numbered;
    }
}

}  // namespace

Toy with_a_first_place(Toy toy, std::size_t at) {
    for (std::size_t piece = 0; piece < toy.pieces.size(); ++piece)
        if (piece != at && !std::as_const(toy).pieces[piece].rounds.empty())
            return with_first_joins(std::move(toy), at);
    return toy;
}

Toy empty_toy() {
    Toy toy;
    Yarn yarn;
    yarn.name = PieceEditsText::tr("Main yarn").toStdString();
    yarn.colour = {186, 200, 205};
    toy.yarns.push_back(yarn);
    toy.pieces.push_back(empty_piece(1));
    return toy;
}

std::size_t PieceEdits::current() const { return static_cast<std::size_t>(session_.current_piece()); }

QString PieceEdits::name() const {
    return session_.piece() ? QString::fromStdString(session_.piece()->name) : QString();
}

bool PieceEdits::insert(int at, const Piece& piece, const QString& text) {
    auto edited = insert_piece(session_.said_toy(), static_cast<std::size_t>(at), piece);
    if (edited.refusal) {
        session_.refuse(refusal_words(*edited.refusal));
        return false;
    }
    Toy after = with_a_first_place(std::move(edited.value), static_cast<std::size_t>(at));
    if (!session_.edit(text, std::move(after))) return false;
    session_.set_current_piece(at);
    return true;
}

bool PieceEdits::add() {
    const int number = static_cast<int>(session_.said_toy().pieces.size()) + 1;
    return insert(session_.current_piece() + 1, empty_piece(number), PieceEditsText::tr("Add a piece"));
}

bool PieceEdits::duplicate() {
    Piece copy = *session_.piece();
    copy.name = numbered_name(session_.toy(), name()).toStdString();
    copy.worked = {};
    return insert(session_.current_piece() + 1, copy,
                  PieceEditsText::tr("Duplicate %1").arg(name_in_words(name())));
}

bool PieceEdits::rename(const QString& new_name) {
    return session_.edit_piece(
        PieceEditsText::tr("Rename %1 to %2").arg(name_in_words(name()), name_in_words(new_name.trimmed())),
        [&](Piece& piece) { piece.name = new_name.trimmed().toStdString(); });
}

bool PieceEdits::remove() {
    return session_.edit(
        PieceEditsText::tr("Delete %1").arg(name_in_words(name())),
        remove_piece(session_.said_toy(), static_cast<std::size_t>(session_.current_piece())));
}

bool PieceEdits::move(int from, int to) {
    const int count = static_cast<int>(session_.said_toy().pieces.size());
    if (from == to || std::min(from, to) < 0 || std::max(from, to) >= count) return false;
    const QString moved = name_in_words(session_.said_toy().pieces[static_cast<std::size_t>(from)].name);
    if (!session_.edit(
            PieceEditsText::tr("Move %1").arg(moved),
            move_piece(session_.said_toy(), static_cast<std::size_t>(from), static_cast<std::size_t>(to)))) {
        return false;
    }
    session_.set_current_piece(to);
    return true;
}

bool PieceEdits::set_start(const Start& start) {
    return session_.edit(PieceEditsText::tr("Change the start of %1").arg(name()),
                         begun_with(session_.said_toy(), current(), start));
}

bool PieceEdits::begin_on_edges(int chains_between) {
    return session_.edit(PieceEditsText::tr("Work %1 on the edges of others").arg(name()),
                         begun_on_edges(session_.said_toy(), current(), chains_between));
}

bool PieceEdits::set_end(End end) {
    const QString text =
        end == End::drawn_closed ? PieceEditsText::tr("Draw %1 closed") : PieceEditsText::tr("Leave %1 open");
    return session_.edit_piece(text.arg(name()), [&](Piece& piece) { piece.end = end; });
}

bool PieceEdits::set_joining(Joining joining) {
    return session_.edit_piece(PieceEditsText::tr("Change how rounds of %1 meet").arg(name()),
                               [&](Piece& piece) { piece.joining = joining; });
}

bool PieceEdits::set_starts_at_top(bool at_top) {
    const QString text =
        at_top ? PieceEditsText::tr("Start %1 at its top") : PieceEditsText::tr("Start %1 at its bottom");
    return session_.edit_piece(text.arg(name()), [&](Piece& piece) { piece.starts_at_top = at_top; });
}

bool PieceEdits::set_make(int make) {
    return session_.edit(PieceEditsText::tr("Make %1 %n time(s)", nullptr, make).arg(name()),
                         made_times(session_.said_toy(), current(), make));
}

}  // namespace roundwright::app
