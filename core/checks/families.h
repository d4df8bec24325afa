#pragma once

#include <vector>

#include "core/checks/check_input.h"

namespace roundwright {

/// The families of checks, one file each. Each adds what it finds to `checks`.

/// Counts that cannot be worked over the round below.
void check_counts(const CheckInput& input, std::vector<Check>& checks);
/// Written rounds that cannot be read or do not come out.
void check_words(const CheckInput& input, std::vector<Check>& checks);
/// Fabric with length to spare, or drawn together.
void check_fabric(const CheckInput& input, std::vector<Check>& checks);
/// Rounds marked "lies flat" that do not.
void check_flat_marks(const CheckInput& input, std::vector<Check>& checks);
/// Increases over each other that make corners of a flat edge.
void check_corners(const CheckInput& input, std::vector<Check>& checks);
/// What will show on the stuffed fabric: gaps, edges, necks that widen. Nothing where it lies limp.
void check_signs(const CheckInput& input, std::vector<Check>& checks);
/// Whether the end can be sewn straight.
void check_seam(const CheckInput& input, std::vector<Check>& checks);
/// Eyes and other features: whether they can be fitted, and sit well.
void check_features(const CheckInput& input, std::vector<Check>& checks);
/// A gauge that is not known.
void check_gauge(const CheckInput& input, std::vector<Check>& checks);
/// A shape that was not found.
void check_solver(const CheckInput& input, std::vector<Check>& checks);
/// Limits of the program.
void check_limits(const CheckInput& input, std::vector<Check>& checks);

}  // namespace roundwright
