#pragma once

#include <vector>

#include <QString>

#include "app/cli/arguments.h"
#include "core/study/fabric_stage.h"
#include "core/study/piece_study.h"

namespace roundwright::app {

inline constexpr Option every_stitch_option{
    "every-stitch", 0, nullptr, nullptr,
    QT_TRANSLATE_NOOP("CommandLine", "work the shape out stitch by stitch, where that can be done")};

inline constexpr Option slant_option{
    "slant", 0, "STITCHES", nullptr,
    QT_TRANSLATE_NOOP(
        "CommandLine",
        "with --every-stitch: how far your stitches drift to the right each round, 0.2 if not given")};
/// What it says, or the usual slant; throws a `Complaint` where it is no slant.
[[nodiscard]] double slant_wanted(const Arguments& arguments);

/// Gives every study that can have it its shape of every stitch; says on the standard error which cannot.
void solve_every_stitch(const QString& path, const Toy& toy, std::vector<PieceStudy>& studies,
                        double slant_stitches);

/// On the standard error: why a piece keeps its round shape.
void say_not_every_stitch(const QString& path, const Toy& toy, std::size_t piece, const FabricStage& refused);

}  // namespace roundwright::app
