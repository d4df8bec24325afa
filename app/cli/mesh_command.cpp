#include <QLocale>

#include "app/cli/command.h"
#include "app/cli/command_line.h"
#include "app/cli/command_line_text.h"
#include "app/cli/input_file.h"
#include "app/cli/option_values.h"
#include "app/cli/output.h"
#include "app/cli/output_file.h"
#include "app/export/mesh_file.h"

namespace roundwright::app {
namespace {

constexpr int least_triangles = 100;

const QStringList& endings() {
    static const QStringList all{QStringLiteral("obj"), QStringLiteral("stl"), QStringLiteral("glb")};
    return all;
}

int write_mesh(const Arguments& arguments, const QString& path, const Toy& toy, const ShownOptions& options) {
    const QString output = arguments.value(QStringLiteral("output"));
    const MeshForm form = mesh_form_of(ending_of(output)).value_or(MeshForm::obj);
    const MeshFile file = shows_whole_toy(arguments, toy)
                              ? toy_mesh_file(toy, form, options)
                              : mesh_file(toy, {form, pieces_wanted(arguments, toy), options});
    if (file.piece_without) {
        print_problem(CommandLine::tr("%1 has no shape to write.").arg(piece_name(toy, *file.piece_without)));
        return exit_checks_failed;
    }
    if (file.coarser)
        print_problem(CommandLine::tr("All pieces together may have %1 triangles, so their stitches are "
                                      "drawn more coarsely. For more detail, write one --piece at a time.")
                          .arg(QLocale().toString(static_cast<qulonglong>(most_triangles_at_all))));
    return write_output(arguments, path, output, bytes_of(file));
}

int run(const Arguments& arguments) {
    ShownOptions options;
    if (arguments.has(QStringLiteral("smooth"))) options.relief = Relief::none;
    const auto triangles = whole_option(arguments, "triangles", static_cast<int>(options.most_triangles),
                                        least_triangles, static_cast<int>(most_triangles_at_all));
    if (!triangles || !output_is_named(arguments, endings())) return exit_bad_input;
    options.most_triangles = static_cast<std::size_t>(*triangles);
    return for_each_toy(arguments, [&](const QString& path, const Toy& toy) {
        return write_mesh(arguments, path, toy, options);
    });
}

constexpr Option options_of_mesh[] = {
    {"output", 'o', "OUT.obj|.stl|.glb", nullptr,
     QT_TRANSLATE_NOOP("CommandLine", "where to save it; the ending sets the kind of file")},
    force_option,
    {"piece", 0, "PIECE", nullptr,
     QT_TRANSLATE_NOOP("CommandLine", "one piece, by number or name; otherwise the whole toy")},
    apart_option,
    {"smooth", 0, nullptr, nullptr, QT_TRANSLATE_NOOP("CommandLine", "without the relief of the stitches")},
    {"triangles", 0, "NUMBER", nullptr,
     QT_TRANSLATE_NOOP("CommandLine", "at most this many per piece; the relief gets coarser")},
    {"json", 0, nullptr, nullptr,
     QT_TRANSLATE_NOOP("CommandLine", "one JSON object, with the names of both files")},
};

}  // namespace

const Command& mesh_command() {
    static const Command command{"mesh", "FILE",
                                 QT_TRANSLATE_NOOP("CommandLine", "write the stuffed shape as a 3D file"),
                                 options_of_mesh, run};
    return command;
}

}  // namespace roundwright::app
