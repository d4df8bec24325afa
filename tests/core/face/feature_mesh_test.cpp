#include "core/face/feature_mesh.h"

#include <algorithm>
#include <gtest/gtest.h>

#include "tests/core/face/known_shapes.h"
#include "tests/core/mesh/mesh_measures.h"

namespace roundwright {
namespace {

using test::closed_ball;

TEST(FeatureMesh, EveryPartIsClosedAndFacesOut) {
    const FaceSurface sphere(closed_ball(), test::sphere_shape(40, 15));
    const auto counts = test::constant_counts(15, 36);
    for (auto kind : {FeatureKind::safety_eye, FeatureKind::safety_nose, FeatureKind::felt_disc,
                      FeatureKind::embroidered_eye, FeatureKind::stitched_line}) {
        Feature feature;
        feature.kind = kind;
        feature.round = 7;
        feature.width_mm = 14;
        feature.height_mm = 10;
        feature.lids = true;
        feature.end_round = 4;
        feature.end_stitches_right = 6;
        const auto parts = feature_parts({feature}, sphere, counts, 2.5);
        EXPECT_FALSE(parts.empty());
        for (const FeaturePart& part : parts) {
            const test::MeshMeasures measures = test::measure(part.mesh);
            EXPECT_GT(measures.volume_mm3, 0) << static_cast<int>(kind);
            EXPECT_EQ(measures.odd_edges, 0u) << static_cast<int>(kind);
            EXPECT_TRUE(measures.finite);
            EXPECT_TRUE(measures.unit_normals);
        }
    }
}

TEST(FeatureMesh, AnEyeHasItsTrueSizeAndItsWasherInside) {
    const FaceSurface sphere(closed_ball(), test::sphere_shape(40, 15));
    const auto counts = test::constant_counts(15, 36);
    Feature eye;
    eye.pair = false;
    eye.round = 7;
    eye.width_mm = eye.height_mm = 12;
    const auto parts = feature_parts({eye}, sphere, counts, 2.5);
    ASSERT_EQ(parts.size(), 2u);
    float left = 0;
    float right = 0;
    for (std::size_t k = 0; k < parts[0].mesh.vertex_count(); ++k) {
        left = std::min(left, parts[0].mesh.positions[3 * k]);
        right = std::max(right, parts[0].mesh.positions[3 * k]);
    }
    EXPECT_NEAR(right - left, 12, 1e-4);
    EXPECT_FALSE(parts[0].inside);
    EXPECT_TRUE(parts[1].inside);
    for (std::size_t k = 0; k < parts[1].mesh.vertex_count(); ++k)
        EXPECT_LT(parts[1].mesh.positions[3 * k + 2], 40);
}

}  // namespace
}  // namespace roundwright
