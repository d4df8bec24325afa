#pragma once

#include <memory>
#include <optional>
#include <stop_token>
#include <vector>

#include <QColor>
#include <QImage>
#include <QSize>

#include "core/mesh/stitch_surface.h"
#include "render/background/workers.h"
#include "render/raster/camera.h"
#include "render/raster/scene_part.h"

namespace roundwright::render {

/// A mesh with what the shading needs beside it.
struct ShadedMesh {
    const Mesh* mesh = nullptr;
    const std::vector<float>* lit = nullptr;  ///< one value a vertex; none: unlit
    Finish finish = Finish::yarn;
};

struct SoftwareScene {
    std::vector<ShadedMesh> meshes;
    const Mesh* ghost = nullptr;
    bool any_lit = false;
    double stitch_mm = 5;                             ///< typical side of a stitch
    QColor background;                                ///< may be transparent
    std::optional<QColor> rim;                        ///< a line of this colour around all that is solid
    double rim_px = 2;                                ///< its width in the picture
    std::vector<std::shared_ptr<const void>> owners;  ///< keep the above while it is drawn elsewhere
};

/// Points a pixel each way for a picture that stays.
inline constexpr int fine_samples = 4;

/// How a picture comes about.
struct DrawingRun {
    Lane lane = Lane::next_key;  ///< whose threads help, as far as they are free
    std::stop_token stop;        ///< once asked to stop, no picture is returned, soon
    /// With one sample a pixel, within a surface every other pixel is the mean of those beside it, as on a
    /// chequerboard: for a picture that another takes the place of in a moment. Outlines are the same.
    bool every_other_pixel = false;
};

/// Draws the scene with a depth buffer on the processor: what the graphics card would show, and the same on
/// every machine. Outlines are drawn with `samples` by `samples` points a pixel, 4 by 4 at most. The camera's
/// viewport is scaled to `size`. All cores draw.
[[nodiscard]] QImage draw_software_picture(const SoftwareScene& scene, Camera camera, QSize size, int samples,
                                           const DrawingRun& run = {});

/// What something in a picture stands on: nothing, or a table that shows by its soft shadow alone.
enum class Ground { none, shadow };

/// A picture of a piece by itself, or of a toy, fitted, seen from one side; needs no window.
[[nodiscard]] QImage picture_of(const StitchSurface& surface, const std::vector<ScenePart>& parts,
                                ViewDirection direction, QSize size, const QColor& background,
                                Ground ground = Ground::none);

}  // namespace roundwright::render
