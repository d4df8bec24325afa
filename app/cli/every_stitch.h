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

/// Gives every study that can have it its shape of every stitch; says on the standard error which cannot.
void solve_every_stitch(const QString& path, const Toy& toy, std::vector<PieceStudy>& studies);

/// On the standard error: why a piece keeps its round shape.
void say_not_every_stitch(const QString& path, const Toy& toy, std::size_t piece, const FabricStage& refused);

}  // namespace roundwright::app
