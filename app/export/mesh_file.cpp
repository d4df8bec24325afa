#include "app/export/mesh_file.h"

#include <algorithm>
#include <utility>

#include "core/mesh/files/write_glb.h"
#include "core/mesh/files/write_obj.h"
#include "core/mesh/files/write_stl.h"
#include "render/wording/piece_name.h"
#include "render/wording/printable.h"

namespace roundwright::app {
namespace {

constexpr double gap_mm = 10;

/// Leftmost and rightmost point of a mesh.
std::pair<double, double> extent_x(const Mesh& mesh) {
    double left = 0;
    double right = 0;
    for (std::size_t i = 0; i < mesh.positions.size(); i += 3) {
        left = std::min<double>(left, mesh.positions[i]);
        right = std::max<double>(right, mesh.positions[i]);
    }
    return {left, right};
}

std::vector<NamedMesh> in_a_row(const Toy& toy, const std::vector<std::size_t>& pieces,
                                const std::vector<ShownPiece>& shown) {
    std::vector<NamedMesh> meshes;
    double edge = 0;
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        const auto [left, right] = extent_x(shown[i].surface.mesh);
        const Vec3 place(i == 0 ? 0 : edge + gap_mm - left, 0, 0);
        const std::string name = printable_name(own_piece_name(toy, pieces[i])).toStdString();
        meshes.push_back({name, &shown[i].surface.mesh, place});
        for (const FeaturePart& part : shown[i].parts) {
            const std::string& feature =
                toy.pieces[pieces[i]].features[static_cast<std::size_t>(part.feature)].name;
            meshes.push_back({feature.empty() ? name + " feature"
                                              : printable_name(QString::fromStdString(feature)).toStdString(),
                              &part.mesh, place});
        }
        edge = place.x() + right;
    }
    return meshes;
}

std::string bytes_of(MeshForm form, const std::vector<NamedMesh>& meshes) {
    switch (form) {
        case MeshForm::obj:
            return write_obj(meshes);
        case MeshForm::stl:
            return write_stl(meshes);
        case MeshForm::glb:
            return write_glb(meshes);
    }
    return {};
}

}  // namespace

std::optional<MeshForm> mesh_form_of(const QString& ending) {
    if (ending == QLatin1String("obj")) return MeshForm::obj;
    if (ending == QLatin1String("stl")) return MeshForm::stl;
    if (ending == QLatin1String("glb")) return MeshForm::glb;
    return std::nullopt;
}

QByteArray mesh_file(MeshForm form, const Toy& toy, const std::vector<std::size_t>& pieces,
                     const std::vector<ShownPiece>& shown) {
    return QByteArray::fromStdString(bytes_of(form, in_a_row(toy, pieces, shown)));
}

}  // namespace roundwright::app
