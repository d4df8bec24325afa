#pragma once

#include <optional>
#include <vector>

#include <QByteArray>

#include "app/export/shown_piece.h"

namespace roundwright::app {

/// The kinds of 3D file, by the ending of their names.
enum class MeshForm { obj, stl, glb };
[[nodiscard]] std::optional<MeshForm> mesh_form_of(const QString& ending);

/// Pieces of the toy in a row from left to right, each with what is fitted to it. `shown` goes with `pieces`,
/// one each, none empty.
[[nodiscard]] QByteArray mesh_file(MeshForm form, const Toy& toy, const std::vector<std::size_t>& pieces,
                                   const std::vector<ShownPiece>& shown);

}  // namespace roundwright::app
