#pragma once

#include <vector>

#include "app/kept/left_behind.h"

namespace roundwright::app {

/// What programs before this one left: a note in the state folder that names the copy, which lies beside the
/// toy's file (".NAME.kept") or in the state folder. A copy that no note of ours names is nobody's work: it
/// may have come with the toy.
[[nodiscard]] std::vector<LeftBehind> left_by_older_programs(const QString& state_folder, Disk& disk);

}  // namespace roundwright::app
