#include "render/wording/piece_name.h"

#include <QCoreApplication>

#include "render/wording/plain_text.h"

namespace roundwright {

QString piece_name(const Toy& toy, std::size_t piece) {
    return toy.pieces[piece].name.empty() ? own_piece_name(toy, piece)
                                          : name_in_words(toy.pieces[piece].name);
}

QString own_piece_name(const Toy& toy, std::size_t piece) {
    const QString name = QString::fromStdString(toy.pieces[piece].name);
    return name.isEmpty() ? QCoreApplication::translate("PieceName", "piece %1").arg(piece + 1) : name;
}

QString own_toy_name(const Toy& toy) { return QString::fromStdString(toy.title); }

}  // namespace roundwright
