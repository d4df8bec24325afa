#pragma once

#include <Eigen/Core>
#include <array>
#include <cstdint>
#include <vector>

#include "core/mesh/stitch_cords.h"
#include "core/mesh/stitch_surface.h"

namespace roundwright::render {

/// What shading needs to know of a point of a stitch's face.
struct FabricPoint {
    float slope_u = 0;  ///< of the height across the face and up it, stitch widths a face
    float slope_v = 0;
    float open = 1;  ///< share of the sky that it sees over the cords about it
    float tone = 1;  ///< brightness of the yarn: plies and fibres
};

/// The fine relief of a face as a picture from which both ways of drawing shade: four bytes a texel for
/// slopes, openness and tone. Squares from `size` texels a side to one lie over each other, each half the one
/// before (a mip pyramid: Williams, SIGGRAPH 1983). A face repeats beyond its edges.
class FacePicture {
  public:
    static constexpr int size = 128;
    static constexpr int levels = 8;
    static constexpr int width = size;
    static constexpr int height = 2 * size;
    static constexpr float steepest = 4;  ///< slopes are held within -steepest..steepest

    /// Made when it is first asked for, and kept; any thread may ask.
    [[nodiscard]] static const FacePicture& of(StitchFace face);

    /// Between the four texels around, and between two levels. Level 0 is the finest.
    [[nodiscard]] FabricPoint at(float u, float v, float level) const;

    /// `width` x `height` texels; level l begins at row 2 size (1 - 2^-l).
    [[nodiscard]] const std::vector<std::uint8_t>& texels() const { return texels_; }

  private:
    explicit FacePicture(StitchFace face);
    void store(const std::vector<Eigen::Array4f>& square, int level);
    [[nodiscard]] Eigen::Array4f at_level(float u, float v, int level) const;

    std::vector<std::uint8_t> texels_;
    std::vector<Eigen::Array4f> numbers_;  ///< the same texels, 0..255 each, ready to be mixed
};

/// The pictures of the faces that a mesh shows, null for others. Makes those that are missing: whoever makes
/// a mesh in the background has them made there too.
[[nodiscard]] std::array<const FacePicture*, stitch_faces> face_pictures(const Mesh& mesh);

/// The pictures of all faces side by side, in the order of StitchFace.
[[nodiscard]] std::vector<std::uint8_t> texels_of_all_faces();

}  // namespace roundwright::render
