#include "app/assembly/join_edits.h"

#include <algorithm>
#include <cmath>

#include <QCoreApplication>

#include "app/assembly/first_places.h"
#include "core/assembly/first_joins.h"
#include "core/assembly/move_join.h"
#include "core/rounds/piece_graph.h"
#include "render/wording/join_place.h"

namespace roundwright::app {
namespace {

struct JoinEditsText {
    Q_DECLARE_TR_FUNCTIONS(JoinEdits)
};

constexpr double most_lean_degrees = 90;

double leant(double degrees, double by) {
    return std::clamp(degrees + by, -most_lean_degrees, most_lean_degrees);
}

const Join* join_of(const Toy& toy, const PieceCopy& copy) {
    const auto found = std::ranges::find_if(toy.joins, [&](const Join& join) {
        return join.piece == copy ||
               (join.pair && join.piece.piece == copy.piece && join.piece.copy + 1 == copy.copy);
    });
    return found == toy.joins.end() ? nullptr : &*found;
}

}  // namespace

bool is_sewn_to(const Toy& toy, PieceCopy copy, const PieceCopy& ancestor) {
    // A circle that stands in a file already is not followed for ever.
    for (std::size_t step = 0; step <= toy.joins.size(); ++step) {
        if (copy == ancestor) return true;
        const Join* join = join_of(toy, copy);
        if (join == nullptr) return false;
        copy = join->onto;
    }
    return true;
}

double within_a_turn(double degrees) { return std::remainder(degrees, 360.0); }

QString JoinEdits::name(const PieceCopy& copy) const { return copy_name(session_.said_toy(), copy); }

bool JoinEdits::sew(const ToyUnit& unit, std::optional<PieceCopy> onto) {
    Toy after = session_.said_toy();
    const PieceCopy piece = unit.copies.front();
    if (!onto) {
        if (!unit.join || *unit.join >= after.joins.size()) return false;
        after.joins.erase(after.joins.begin() + static_cast<std::ptrdiff_t>(*unit.join));
        return session_.edit(JoinEditsText::tr("Take %1 off").arg(name(piece)), std::move(after));
    }
    Join join = first_place(after, piece, *onto);
    if (unit.join && *unit.join < after.joins.size()) {
        Join& said = after.joins[*unit.join];
        said.onto = *onto;
        said.at = join.at;
    } else {
        join.pair = false;
        after.joins.push_back(join);
    }
    return session_.edit(JoinEditsText::tr("Sew %1 to %2").arg(name(piece), name(*onto)), std::move(after));
}

bool JoinEdits::change(std::size_t join, const QString& text, const std::function<void(Join&)>& change,
                       const QString& merge_key) {
    Toy after = session_.said_toy();
    if (join >= after.joins.size()) return false;
    change(after.joins[join]);
    const QString key = merge_key.isEmpty() ? merge_key : QStringLiteral("%1 %2").arg(merge_key).arg(join);
    return session_.edit(text, std::move(after), key);
}

bool JoinEdits::set_pair(std::size_t join, bool pair) {
    Toy after = session_.said_toy();
    if (join >= after.joins.size()) return false;
    Join& said = after.joins[join];
    said.pair = pair;
    const auto index = after.pieces.index_of(said.piece.piece);
    if (pair && index && std::as_const(after).pieces[*index].make < said.piece.copy + 2)
        after.pieces[*index].make = said.piece.copy + 2;
    return session_.edit(pair ? JoinEditsText::tr("Make %1 a pair").arg(name(said.piece))
                              : JoinEditsText::tr("Make %1 single").arg(name(said.piece)),
                         std::move(after));
}

bool JoinEdits::nudge(std::size_t join, int rounds, double stitches_right) {
    const Toy& toy = session_.said_toy();
    if (join >= toy.joins.size()) return false;
    const auto onto = toy.pieces.index_of(toy.joins[join].onto.piece);
    if (!onto) return false;
    const auto stitches = stitch_counts(session_.graph_of(toy, static_cast<int>(*onto))->get().graph);
    return change(
        join, JoinEditsText::tr("Move %1").arg(name(toy.joins[join].piece)),
        [&](Join& moved) {
            moved.at = nudged(moved.at, rounds, stitches_right, stitches);
            if (stitches_right != 0) moved.at.around = false;
        },
        QStringLiteral("nudge-join"));
}

bool JoinEdits::turn(std::size_t join, double degrees) {
    if (join >= session_.said_toy().joins.size()) return false;
    return change(
        join, JoinEditsText::tr("Turn %1").arg(name(session_.said_toy().joins[join].piece)),
        [&](Join& turned) { turned.turn_degrees = within_a_turn(turned.turn_degrees + degrees); },
        QStringLiteral("turn-join"));
}

bool JoinEdits::lean(std::size_t join, double degrees, double right_degrees) {
    if (join >= session_.said_toy().joins.size()) return false;
    return change(
        join, JoinEditsText::tr("Lean %1").arg(name(session_.said_toy().joins[join].piece)),
        [&](Join& changed) {
            changed.lean_degrees = leant(changed.lean_degrees, degrees);
            changed.lean_right_degrees = leant(changed.lean_right_degrees, right_degrees);
        },
        QStringLiteral("lean-join"));
}

bool JoinEdits::set_stance(Stance stance) {
    Toy after = session_.said_toy();
    after.stance = stance;
    return session_.edit(JoinEditsText::tr("Stance: %1").arg(stance_name(stance)), std::move(after));
}

bool JoinEdits::put_together() {
    return session_.edit(JoinEditsText::tr("Put the toy together"),
                         roundwright::put_together(session_.said_toy()));
}

}  // namespace roundwright::app
