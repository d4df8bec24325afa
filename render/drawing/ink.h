#pragma once

#include <QColor>

namespace roundwright::render {

/// A colour darkened (or, on dark paper, lightened) until it stands out from the paper by this contrast ratio
/// (WCAG 2.1), its hue kept.
[[nodiscard]] QColor readable_ink(const QColor& colour, const QColor& paper, double contrast);

}  // namespace roundwright::render
