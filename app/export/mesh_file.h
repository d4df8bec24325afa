#pragma once

#include <optional>
#include <string>
#include <vector>

#include <QByteArray>
#include <QString>

#include "app/export/shown_piece.h"
#include "render/pages/pattern_options.h"

namespace roundwright::app {

/// The kinds of 3D file, by the ending of their names.
enum class MeshForm { obj, stl, glb };
[[nodiscard]] std::optional<MeshForm> mesh_form_of(const QString& ending);

struct MeshWanted {
    MeshForm form = MeshForm::obj;
    std::vector<std::size_t> pieces;
    ShownOptions options;  ///< of each piece; where all together would have more triangles than a file may
                           ///< (core/mesh/triangle_limits.h), the largest have fewer
};

struct MeshFile {
    std::string bytes;                           ///< none where a piece has no shape, or if stopped
    std::optional<std::size_t> piece_without{};  ///< the first piece that has no shape
    bool coarser = false;  ///< there were too many triangles for one file, and the relief is coarser for it
};

/// The same bytes for those who write files, good for as long as `file`.
[[nodiscard]] inline QByteArray bytes_of(const MeshFile& file) {
    return QByteArray::fromRawData(file.bytes.data(), static_cast<qsizetype>(file.bytes.size()));
}

/// Pieces of the toy in a row from left to right, each with what is fitted to it. They are made one after the
/// other, and no two are held at a time.
[[nodiscard]] MeshFile mesh_file(const Toy& toy, const MeshWanted& wanted,
                                 const render::Progress& progress = {});

/// The whole toy as it is sewn together, resting on a table at y = 0: every copy of every piece, each with
/// what is fitted to it.
[[nodiscard]] MeshFile toy_mesh_file(const Toy& toy, MeshForm form, const ShownOptions& options = {});

/// What each may have where all together may have `most`: what it wants, or, where that is too much, the same
/// as the others that want more.
[[nodiscard]] std::vector<std::size_t> shares_of(std::vector<std::size_t> wanted, std::size_t most);

}  // namespace roundwright::app
