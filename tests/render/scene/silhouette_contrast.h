#pragma once

#include <QImage>

namespace roundwright::test {

/// Of all places along the outline of a shape the least contrast to the ground (WCAG 2.2) that is seen there:
/// of the pixels three away at most. `on_clear_ground` shows the shape alone; `seen`, as large, is judged.
[[nodiscard]] double least_contrast_along(const QImage& on_clear_ground, const QImage& seen,
                                          const QColor& ground);

}  // namespace roundwright::test
