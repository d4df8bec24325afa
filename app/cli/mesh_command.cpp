#include <QCoreApplication>

#include "app/cli/command.h"
#include "app/cli/command_line.h"
#include "app/cli/input_file.h"
#include "app/cli/output.h"
#include "app/cli/output_file.h"
#include "app/cli/shown_piece.h"
#include "core/mesh/write_glb.h"
#include "core/mesh/write_obj.h"
#include "core/mesh/write_stl.h"

namespace roundwright::app {
namespace {

QString tr(const char* text) { return QCoreApplication::translate("CommandLine", text); }

constexpr double gap_mm = 10;
constexpr int least_triangles = 100;
constexpr int most_triangles = 5'000'000;

const QStringList& endings() {
    static const QStringList all{QStringLiteral("obj"), QStringLiteral("stl"), QStringLiteral("glb")};
    return all;
}

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

/// The pieces in a row from left to right, each with what is fitted to it.
std::vector<NamedMesh> in_a_row(const Toy& toy, const std::vector<std::size_t>& pieces,
                                const std::vector<ShownPiece>& shown) {
    std::vector<NamedMesh> meshes;
    double edge = 0;
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        const auto [left, right] = extent_x(shown[i].surface.mesh);
        const Vec3 place(i == 0 ? 0 : edge + gap_mm - left, 0, 0);
        const std::string name = piece_name(toy, pieces[i]).toStdString();
        meshes.push_back({name, &shown[i].surface.mesh, place});
        for (const FeaturePart& part : shown[i].parts) {
            const std::string& feature =
                toy.pieces[pieces[i]].features[static_cast<std::size_t>(part.feature)].name;
            meshes.push_back({feature.empty() ? name + " feature" : feature, &part.mesh, place});
        }
        edge = place.x() + right;
    }
    return meshes;
}

std::string bytes_of(const QString& ending, const std::vector<NamedMesh>& meshes) {
    if (ending == QLatin1String("obj")) return write_obj(meshes);
    return ending == QLatin1String("stl") ? write_stl(meshes) : write_glb(meshes);
}

int write_mesh(const Arguments& arguments, const Toy& toy, const ShownOptions& options) {
    const auto pieces = pieces_wanted(arguments, toy);
    if (!pieces) return exit_bad_input;
    std::vector<ShownPiece> shown;
    for (const std::size_t piece : *pieces) {
        shown.push_back(shown_piece(toy, piece, options));
        if (!shown.back().empty()) continue;
        print_problem(tr("%1 has no shape to write.").arg(piece_name(toy, piece)));
        return exit_checks_failed;
    }
    const QString output = arguments.value(QStringLiteral("output"));
    const std::string bytes = bytes_of(ending_of(output), in_a_row(toy, *pieces, shown));
    return write_output(output, QByteArray(bytes.data(), static_cast<qsizetype>(bytes.size())));
}

int run(const Arguments& arguments) {
    ShownOptions options;
    options.relief = !arguments.has(QStringLiteral("smooth"));
    const auto triangles = whole_option(arguments, "triangles", static_cast<int>(options.most_triangles),
                                        least_triangles, most_triangles);
    if (!triangles || !output_is_named(arguments, endings())) return exit_bad_input;
    options.most_triangles = static_cast<std::size_t>(*triangles);
    return for_each_toy(arguments,
                        [&](const QString&, const Toy& toy) { return write_mesh(arguments, toy, options); });
}

constexpr Option options_of_mesh[] = {
    {"output", 'o', "OUT.obj|.stl|.glb", nullptr, "where it goes; the ending says the kind of file"},
    {"piece", 0, "PIECE", nullptr, "one piece, by number or name; without it, all in a row"},
    {"smooth", 0, nullptr, nullptr, "without the relief of the stitches"},
    {"triangles", 0, "NUMBER", nullptr, "at most so many a piece; the relief gets coarser"},
};

}  // namespace

const Command& mesh_command() {
    static const Command command{"mesh", "FILE", "write the stuffed shape as a 3D file", options_of_mesh,
                                 run};
    return command;
}

}  // namespace roundwright::app
