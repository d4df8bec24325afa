#include "app/export/mesh_file.h"

#include <algorithm>
#include <memory>
#include <numeric>
#include <utility>

#include "core/mesh/files/write_glb.h"
#include "core/mesh/files/write_obj.h"
#include "core/mesh/files/write_stl.h"
#include "core/study/study_surface.h"
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

std::unique_ptr<MeshWriter> writer_of(MeshForm form) {
    switch (form) {
        case MeshForm::obj:
            return obj_writer();
        case MeshForm::stl:
            return stl_writer();
        case MeshForm::glb:
            return glb_writer();
    }
    return nullptr;
}

/// Names and adds a piece with what is fitted to it.
class Adder {
  public:
    Adder(const Toy& toy, MeshWriter& writer) : toy_(toy), writer_(writer) {}

    void add(std::size_t piece, const ShownPiece& shown, const std::string& name, const Vec3& place) {
        writer_.add({name, &shown.surface.mesh, place});
        for (const FeaturePart& part : shown.parts) {
            const std::string& feature =
                toy_.pieces[piece].features[static_cast<std::size_t>(part.feature)].name;
            writer_.add({feature.empty() ? name + " feature"
                                         : printable_name(QString::fromStdString(feature)).toStdString(),
                         &part.mesh, place});
        }
    }

    [[nodiscard]] std::string name_of(std::size_t piece) const {
        return printable_name(own_piece_name(toy_, piece)).toStdString();
    }

  private:
    const Toy& toy_;
    MeshWriter& writer_;
};

/// Places pieces side by side.
class Row {
  public:
    Row(const Toy& toy, MeshWriter& writer) : adder_(toy, writer) {}

    void add(std::size_t piece, const ShownPiece& shown) {
        const auto [left, right] = extent_x(shown.surface.mesh);
        const Vec3 place(std::exchange(empty_, false) ? 0 : edge_ + gap_mm - left, 0, 0);
        adder_.add(piece, shown, adder_.name_of(piece), place);
        edge_ = place.x() + right;
    }

  private:
    Adder adder_;
    double edge_ = 0;
    bool empty_ = true;
};

/// Triangles that each piece would have by itself. Where there are few pieces, nobody needs to know.
std::vector<std::size_t> wishes(const Toy& toy, const MeshWanted& wanted, const render::Progress& progress) {
    const std::size_t most = wanted.options.most_triangles;
    std::vector<std::size_t> triangles(wanted.pieces.size(), most);
    if (most * wanted.pieces.size() <= most_triangles_at_all) return triangles;
    for (std::size_t k = 0; k < triangles.size() && !progress.stop.stop_requested(); ++k) {
        const std::size_t piece = wanted.pieces[k];
        triangles[k] = shown_triangles(toy, piece, wanted.options);
    }
    return triangles;
}

}  // namespace

std::vector<std::size_t> shares_of(std::vector<std::size_t> wanted, std::size_t most) {
    std::vector<std::size_t> sorted = wanted;
    std::ranges::sort(sorted);
    for (std::size_t k = 0; k < sorted.size(); ++k) {
        const std::size_t share = most / (sorted.size() - k);
        if (sorted[k] > share) {
            for (std::size_t& each : wanted) each = std::min(each, share);
            return wanted;
        }
        most -= sorted[k];
    }
    return wanted;
}

std::optional<MeshForm> mesh_form_of(const QString& ending) {
    if (ending == QLatin1String("obj")) return MeshForm::obj;
    if (ending == QLatin1String("stl")) return MeshForm::stl;
    if (ending == QLatin1String("glb")) return MeshForm::glb;
    return std::nullopt;
}

MeshFile mesh_file(const Toy& toy, const MeshWanted& wanted, const render::Progress& progress) {
    const auto wished = wishes(toy, wanted, progress);
    const auto shares = shares_of(wished, most_triangles_at_all);
    MeshFile file;
    file.coarser = shares != wished;
    const auto writer = writer_of(wanted.form);
    if (file.coarser) writer->expect(std::accumulate(shares.begin(), shares.end(), std::size_t{0}));
    Row row(toy, *writer);
    for (std::size_t k = 0; k < wanted.pieces.size(); ++k) {
        if (progress.stop.stop_requested()) return {};
        ShownOptions options = wanted.options;
        options.most_triangles = std::min(options.most_triangles, shares[k]);
        const ShownPiece shown = shown_piece(toy, wanted.pieces[k], options);
        if (shown.empty()) return {{}, wanted.pieces[k]};
        row.add(wanted.pieces[k], shown);
        if (progress.report) progress.report(static_cast<int>(k + 1), static_cast<int>(shares.size()));
    }
    file.bytes = writer->finish();
    return file;
}

MeshFile toy_mesh_file(const Toy& toy, MeshForm form, const ShownOptions& options) {
    MeshFile file;
    for (std::size_t piece = 0; piece < toy.pieces.size(); ++piece)
        if (!study_shape(toy, piece).measures().converged()) return {{}, piece};
    const auto writer = writer_of(form);
    Adder adder(toy, *writer);
    for (const ShownCopy& copy : shown_toy(toy, options)) {
        const bool several = toy.pieces[copy.piece].make > 1;
        const std::string number = several ? " " + std::to_string(copy.copy + 1) : std::string();
        adder.add(copy.piece, copy.shown, adder.name_of(copy.piece) + number, Vec3::Zero());
    }
    file.bytes = writer->finish();
    return file;
}

}  // namespace roundwright::app
