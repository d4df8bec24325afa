#pragma once

#include <optional>
#include <vector>

#include <QColor>
#include <QImage>

namespace roundwright::render {

/// Of a rim on the screen, logical px.
inline constexpr double rim_width_px = 2;

/// What a shape is told from its surroundings by: its ground, and a line around it where no ground does.
struct Standing {
    QColor ground;
    std::optional<QColor> rim{};

    bool operator==(const Standing&) const = default;
};

/// The ground of render/raster/standing_out.h where the outline stands out from that at 3 to 1; else, as with
/// yarn of dark and light in one piece, the usual ground and a rim on it.
[[nodiscard]] Standing standing_of(const std::vector<double>& luminances, const QColor& usual);

/// Dark on light and light on dark, at 4.5 to 1: the line's outer edge is half as strong as its middle.
[[nodiscard]] QColor rim_on(const QColor& ground);

/// The picture laid on the ground (which may be clear too), with a line this wide outside of all that is
/// solid in it. What is translucent, as the comparison surface, gets none.
[[nodiscard]] QImage with_rim(const QImage& on_clear_ground, const QColor& rim, double width_px,
                              const QColor& ground);

}  // namespace roundwright::render
