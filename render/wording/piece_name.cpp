#include "render/wording/piece_name.h"

#include <QCoreApplication>

namespace roundwright {

QString piece_name(const Toy& toy, std::size_t piece) {
    const QString name = QString::fromStdString(toy.pieces[piece].name);
    return name.isEmpty() ? QCoreApplication::translate("PieceName", "piece %1").arg(piece + 1) : name;
}

}  // namespace roundwright
