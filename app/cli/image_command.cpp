#include <QColor>
#include <QImage>
#include <QRegularExpression>

#include "app/cli/command.h"
#include "app/cli/command_line.h"
#include "app/cli/command_line_text.h"
#include "app/cli/every_stitch.h"
#include "app/cli/input_file.h"
#include "app/cli/option_values.h"
#include "app/cli/output.h"
#include "app/cli/output_file.h"
#include "app/export/picture_file.h"
#include "render/wording/printable.h"

namespace roundwright::app {
namespace {

std::optional<QSize> pixels_wanted(const QString& text) {
    static const QRegularExpression pattern(QStringLiteral("^([0-9]{1,4})x([0-9]{1,4})$"));
    const auto match = pattern.match(text);
    const QSize pixels(match.captured(1).toInt(), match.captured(2).toInt());
    const bool good = match.hasMatch() && !pixels.isEmpty() && pixels.width() <= most_picture_pixels &&
                      pixels.height() <= most_picture_pixels;
    return good ? std::optional(pixels) : std::nullopt;
}

std::optional<PictureWanted> picture_wanted(const Arguments& arguments) {
    PictureWanted picture;
    const QString view = arguments.value(QStringLiteral("view"), QStringLiteral("three-quarter"));
    for (const PictureView& seen : picture_views()) {
        if (view == QLatin1String(seen.name)) picture.view = seen;
    }
    const bool listing = arguments.has(QStringLiteral("listing"));
    if (listing) picture.ground = render::Ground::shadow;
    const QString usual = QStringLiteral("%1x%1").arg(listing ? listing_pixels : 1200);
    const auto pixels = pixels_wanted(arguments.value(QStringLiteral("size"), usual));
    if (!pixels) {
        print_problem(CommandLine::tr("--size takes pixels such as 1200x900, at most %1 a side.")
                          .arg(most_picture_pixels));
        return std::nullopt;
    }
    picture.pixels = *pixels;
    if (arguments.has(QStringLiteral("background"))) {
        picture.background = QColor(arguments.value(QStringLiteral("background")));
    }
    if (!picture.background.isValid()) {
        print_problem(CommandLine::tr("--background takes a colour such as #f4efe6."));
        return std::nullopt;
    }
    return picture;
}

int write_picture(const Arguments& arguments, const QString& path, const ShownPiece& shown,
                  const PictureWanted& picture, const QString& title) {
    const QString output = arguments.value(QStringLiteral("output"));
    const bool vector = ending_of(output) == QLatin1String("svg");
    return write_output(arguments, path, output,
                        vector ? picture_svg(shown, picture, title) : png_bytes(picture_of(shown, picture)));
}

int draw_piece(const Arguments& arguments, const QString& path, const Toy& toy,
               const PictureWanted& picture) {
    const std::size_t piece = pieces_wanted(arguments, toy).front();
    ShownOptions wanted = for_pictures;
    wanted.every_stitch = arguments.has(QStringLiteral("every-stitch"));
    wanted.slant_stitches = slant_wanted(arguments);
    const ShownPiece shown = shown_piece(toy, piece, wanted);
    if (shown.refused) say_not_every_stitch(path, toy, piece, *shown.refused);
    if (shown.empty()) {
        print_problem(CommandLine::tr("%1 has no shape to draw.").arg(piece_name(toy, piece)));
        return exit_checks_failed;
    }
    return write_picture(arguments, path, shown, picture, printable_name(own_piece_name(toy, piece)));
}

int draw_toy(const Arguments& arguments, const QString& path, const Toy& toy, const PictureWanted& picture) {
    const ShownPiece shown = as_one(shown_toy(toy, for_pictures));
    if (shown.empty()) {
        print_problem(CommandLine::tr("The toy has no shape to draw."));
        return exit_checks_failed;
    }
    return write_picture(arguments, path, shown, picture, printable_name(own_toy_name(toy)));
}

int draw(const Arguments& arguments, const QString& path, const Toy& toy, const PictureWanted& picture) {
    return shows_whole_toy(arguments, toy) ? draw_toy(arguments, path, toy, picture)
                                           : draw_piece(arguments, path, toy, picture);
}

int run(const Arguments& arguments) {
    if (!output_is_named(arguments, {QStringLiteral("png"), QStringLiteral("svg")})) return exit_bad_input;
    const auto picture = picture_wanted(arguments);
    if (!picture) return exit_bad_input;
    return for_each_toy(
        arguments, [&](const QString& path, const Toy& toy) { return draw(arguments, path, toy, *picture); });
}

constexpr Option options_of_image[] = {
    every_stitch_option,
    {"output", 'o', "OUT.png|.svg", nullptr,
     QT_TRANSLATE_NOOP("CommandLine", "where to save it: a picture, or a drawing at full size")},
    force_option,
    {"piece", 0, "PIECE", nullptr,
     QT_TRANSLATE_NOOP("CommandLine", "one piece, by number or name; otherwise the whole toy")},
    apart_option,
    {"listing", 0, nullptr, nullptr,
     QT_TRANSLATE_NOOP("CommandLine", "square, 2,000 pixels, on a soft shadow: for a shop's listing")},
    {"view", 0, "VIEW", "front|side|back|top|bottom|three-quarter",
     QT_TRANSLATE_NOOP("CommandLine", "the side to show")},
    slant_option,
    {"size", 0, "WIDTHxHEIGHT", nullptr,
     QT_TRANSLATE_NOOP("CommandLine", "pixels of a picture; otherwise 1200x1200")},
    {"background", 0, "COLOUR", nullptr,
     QT_TRANSLATE_NOOP("CommandLine", "such as #f4efe6; otherwise transparent")},
    {"json", 0, nullptr, nullptr,
     QT_TRANSLATE_NOOP("CommandLine", "one JSON object, with the names of both files")},
};

}  // namespace

const Command& image_command() {
    static const Command command{
        "image",          "FILE", QT_TRANSLATE_NOOP("CommandLine", "draw the toy or a piece as a picture"),
        options_of_image, run,    true};
    return command;
}

}  // namespace roundwright::app
