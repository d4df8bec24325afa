#include "render/wording/join_place.h"

#include <algorithm>
#include <cmath>

#include <QCoreApplication>
#include <QLocale>

#include "render/wording/counted.h"
#include "render/wording/length_text.h"
#include "render/wording/piece_name.h"

namespace roundwright {
namespace {

struct JoinText {
    Q_DECLARE_TR_FUNCTIONS(Join)
};

/// "4", "4½": half stitches are what places are counted in.
QString stitches(double count) {
    if (count == std::floor(count)) return stitches_words(static_cast<int>(count));
    if (2 * count != std::floor(2 * count))
        return JoinText::tr("%1 stitches").arg(QLocale().toString(count, 'f', 2));
    const QString whole = count < 1 ? QString() : QString::number(std::floor(count));
    return JoinText::tr("%1½ stitches").arg(whole);
}

QString gap_words(const JoinPlace& place, int rounds) {
    if (place.round < 0) return JoinText::tr("at its start");
    if (place.round == rounds - 1) return JoinText::tr("at its end");
    return JoinText::tr("between rounds %1 and %2").arg(place.round + 1).arg(place.round + 2);
}

QString sideways_words(const JoinPlace& place) {
    if (place.around) return JoinText::tr("all the way round");
    if (place.stitches_right == 0) return JoinText::tr("in the middle of the face");
    return place.stitches_right > 0
               ? JoinText::tr("%1 right of the middle").arg(stitches(place.stitches_right))
               : JoinText::tr("%1 left of the middle").arg(stitches(-place.stitches_right));
}

int rounds_of(const Toy& toy, PieceId piece) {
    const auto index = toy.pieces.index_of(piece);
    return index ? static_cast<int>(toy.pieces[*index].rounds.size()) : 0;
}

QString degrees(double value) { return JoinText::tr("%1°").arg(std::lround(std::abs(value))); }

QStringList direction_words(const Join& join, LengthUnit units) {
    QStringList words;
    if (join.turn_degrees != 0)
        words << (join.turn_degrees > 0
                      ? JoinText::tr("turned %1 to the left").arg(degrees(join.turn_degrees))
                      : JoinText::tr("turned %1 to the right").arg(degrees(join.turn_degrees)));
    if (join.lean_degrees != 0)
        words << (join.lean_degrees > 0 ? JoinText::tr("leaning %1 up").arg(degrees(join.lean_degrees))
                                        : JoinText::tr("leaning %1 down").arg(degrees(join.lean_degrees)));
    if (join.lean_right_degrees != 0)
        words << (join.lean_right_degrees > 0
                      ? JoinText::tr("leaning %1 to the right").arg(degrees(join.lean_right_degrees))
                      : JoinText::tr("leaning %1 to the left").arg(degrees(join.lean_right_degrees)));
    if (join.sink_mm != 0)
        words << (join.sink_mm > 0
                      ? JoinText::tr("sunk in by %1").arg(fine_length_text(join.sink_mm, units))
                      : JoinText::tr("standing off by %1").arg(fine_length_text(-join.sink_mm, units)));
    return words;
}

QString seam_within(Seam seam) {
    switch (seam) {
        case Seam::edge:
            return JoinText::tr("open edge sewn on all round");
        case Seam::closed:
            return JoinText::tr("closed end sewn on where it touches");
        case Seam::straight:
            return JoinText::tr("edge flattened and sewn on straight");
        case Seam::hung:
            return JoinText::tr("hung on a stitch by its tip");
        case Seam::layers:
            return JoinText::tr("laid flat and sewn on around the edge");
        case Seam::worked_on:
            return JoinText::tr("worked on, without a seam");
    }
    return {};
}

}  // namespace

QString copy_name(const Toy& toy, const PieceCopy& copy) {
    const auto index = toy.pieces.index_of(copy.piece);
    if (!index) return JoinText::tr("a piece that is gone");
    const QString name = piece_name(toy, *index);
    return toy.pieces[*index].make > 1 || copy.copy > 0 ? JoinText::tr("%1 %2").arg(name).arg(copy.copy + 1)
                                                        : name;
}

QString join_title(const Toy& toy, const Join& join) {
    const QString onto = copy_name(toy, join.onto);
    const auto index = toy.pieces.index_of(join.piece.piece);
    if (!join.pair || !index) return JoinText::tr("%1 on %2").arg(copy_name(toy, join.piece), onto);
    const QString name = piece_name(toy, *index);
    if (toy.pieces[*index].make <= 2) return JoinText::tr("%1 ×2 on %2").arg(name, onto);
    return JoinText::tr("%1 %2 and %3 on %4")
        .arg(name, QString::number(join.piece.copy + 1), QString::number(join.piece.copy + 2), onto);
}

QString join_place_words(const Toy& toy, const Join& join) {
    const int rounds = rounds_of(toy, join.onto.piece);
    const QString gap = gap_words(join.at, rounds);
    const bool at_an_end = join.at.round < 0 || join.at.round == rounds - 1;
    return at_an_end ? gap : JoinText::tr("%1, %2").arg(gap, sideways_words(join.at));
}

QString join_words(const Toy& toy, const Join& join, LengthUnit units) {
    QStringList words{seam_within(join.seam), join_place_words(toy, join)};
    if (join.pair) words.insert(1, JoinText::tr("a mirrored pair"));
    words << direction_words(join, units);
    return words.join(QStringLiteral(", "));
}

QString seam_name(Seam seam) {
    switch (seam) {
        case Seam::edge:
            return JoinText::tr("Open edge, sewn on all round");
        case Seam::closed:
            return JoinText::tr("Closed end, sewn on where it touches");
        case Seam::straight:
            return JoinText::tr("Edge flattened, sewn on straight");
        case Seam::hung:
            return JoinText::tr("Hung on a stitch by its tip");
        case Seam::layers:
            return JoinText::tr("Laid flat, sewn on around the edge");
        case Seam::worked_on:
            return JoinText::tr("Worked on, without a seam");
    }
    return {};
}

QString join_fault_words(JoinFault fault) {
    switch (fault) {
        case JoinFault::no_such_piece:
            return JoinText::tr("one of the two pieces is gone");
        case JoinFault::no_such_copy:
            return JoinText::tr("not that many are made");
        case JoinFault::no_such_place:
            return JoinText::tr("the round it is sewn to is gone");
        case JoinFault::joined_twice:
            return JoinText::tr("this one is sewn on elsewhere already");
        case JoinFault::in_a_circle:
            return JoinText::tr("the pieces are sewn to each other in a circle");
        case JoinFault::no_shape:
            return JoinText::tr("one of the two pieces has no shape yet");
    }
    return {};
}

QString stance_name(Stance stance) {
    switch (stance) {
        case Stance::standing:
            return JoinText::tr("Standing");
        case Stance::sitting:
            return JoinText::tr("Sitting");
        case Stance::lying:
            return JoinText::tr("Lying");
    }
    return {};
}

}  // namespace roundwright
