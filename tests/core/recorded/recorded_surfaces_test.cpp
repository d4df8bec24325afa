#include <gtest/gtest.h>

#include "core/mesh/ray_cast.h"
#include "core/mesh/stitch_cords.h"
#include "core/mesh/stitch_field.h"
#include "tests/core/recorded/mesh_summary.h"
#include "tests/core/recorded/varied_pieces.h"
#include "tests/support/recorded_text.h"

namespace roundwright::test {
namespace {

using testing::RecordedText;

StitchSurface drawn(std::size_t piece, Relief relief, std::size_t most_triangles) {
    RevolveOptions options;
    options.relief = relief;
    options.most_triangles = most_triangles;
    return surface_of(varied_pieces()[piece].toy, varied_studies()[piece], options);
}

void tell(RecordedText& text, const Vec3& place) { text << place.x() << place.y() << place.z(); }

void tell_stitches(RecordedText& text, const StitchSurface& surface) {
    text.line("first_of_round").each(surface.first_stitch_of_round);
    if (surface.first_pole) tell(text.line("first_pole"), *surface.first_pole);
    if (surface.last_pole) tell(text.line("last_pole"), *surface.last_pole);
    const std::size_t step = std::max<std::size_t>(1, surface.stitches.size() / 9);
    for (std::size_t i = 0; i < surface.stitches.size(); i += step) {
        const StitchPatch& stitch = surface.stitches[i];
        text.line("stitch") << stitch.round << stitch.stitch << static_cast<int>(stitch.kind)
                            << static_cast<int>(stitch.part) << stitch.brushed
                            << static_cast<int>(stitch.colour.red) << static_cast<int>(stitch.colour.blue);
        for (const Vec3& corner : stitch.corners) tell(text, corner);
        tell(text, stitch.normal);
    }
}

TEST(RecordedSurfaces, AreAsBefore) {
    struct Drawn {
        const char* name;
        Relief relief;
        std::size_t most_triangles;
    };
    constexpr Drawn ways[] = {{"plain", Relief::none, 200'000},
                              {"solid", Relief::solid, 12'000},
                              {"shaded", Relief::shaded, 20'000},
                              {"coarse", Relief::shaded, 260}};
    RecordedText text;
    for (std::size_t i = 0; i < varied_pieces().size(); ++i) {
        text.heading(varied_pieces()[i].name);
        for (const Drawn& way : ways) {
            const StitchSurface surface = drawn(i, way.relief, way.most_triangles);
            text.line(way.name);
            tell_mesh(text, surface.mesh);
            if (way.relief == Relief::none) tell_stitches(text, surface);
        }
    }
    testing::expect_as_recorded("surfaces.txt", text);
}

/// Waves of any number and height, one entry a loop or one a round, too many, too few and too high.
TEST(RecordedSurfaces, AreAsBeforeWithWavesOfTheirOwn) {
    struct Waves {
        std::vector<int> number;
        std::vector<double> height_mm;
    };
    const std::vector<Waves> all{{{0, 3, 5, 5, 0, 8, 8}, {0, 2, 4, 3, 9, 1, 40}},       // one a round
                                 {{4, 4, 6, 6, 0, 0, 7, 9}, {3, 3, 2, 5, 0, 1, 6, 6}},  // one a loop
                                 {{2, 2}, {5, 5, 5, 5}},
                                 {{2, 2, 2, 2}, {5}},
                                 {{0, 90, 90, 90, 3, 3, 3}, {0, 8, 8, 8, 60, 60, 60}},
                                 {{-3, -3, 4, 4, 4, 4, 4}, {5, 5, -5, 6, 6, 6, 6}}};
    RecordedText text;
    for (const char* name : {"disc", "ruffled rim", "two discs with a low wall",
                             "cape with a ruffle, from the top", "cylinder on a flat base"}) {
        const VariedPiece& varied = varied_piece(name);
        const VariedStudy& study =
            varied_studies()[static_cast<std::size_t>(&varied - varied_pieces().data())];
        text.heading(name);
        RevolveOptions options;
        options.most_triangles = 5'000;
        for (const Waves& waves : all) {
            const StitchSurface surface = revolve(varied.toy, varied.toy.pieces[0], study.graph.graph,
                                                  study.shape, waves.number, waves.height_mm, options);
            tell_mesh(text, surface.mesh);
            if (surface.stitches.empty()) continue;
            for (const Vec3& corner : surface.stitches.back().corners) tell(text, corner);
        }
    }
    testing::expect_as_recorded("waves.txt", text);
}

/// Cells of many rounds and stitches, down to the fewest that a piece can be drawn with.
TEST(RecordedSurfaces, AreAsBeforeWithFewTriangles) {
    RecordedText text;
    for (const char* name :
         {"cylinder on a flat base", "oval from the top", "ear sewn straight", "brushed all over"})
        for (const std::size_t most : {1, 40, 120, 700}) {
            const std::size_t piece = static_cast<std::size_t>(&varied_piece(name) - varied_pieces().data());
            text.heading(std::string(name) + ", " + std::to_string(most));
            tell_mesh(text, drawn(piece, Relief::shaded, most).mesh);
        }
    testing::expect_as_recorded("few_triangles.txt", text);
}

/// The finest relief, on a few pieces.
TEST(RecordedSurfaces, AreAsBeforeInFullRelief) {
    RecordedText text;
    for (const char* name : {"tall stitches", "bobbles and bars", "ruffled rim", "ear sewn straight"}) {
        const std::size_t piece = static_cast<std::size_t>(&varied_piece(name) - varied_pieces().data());
        text.heading(name);
        tell_mesh(text, drawn(piece, Relief::solid, 200'000).mesh);
    }
    testing::expect_as_recorded("full_relief.txt", text);
}

TEST(RecordedSurfaces, FacesOfStitchesAreAsBefore) {
    RecordedText text;
    for (std::size_t face = 0; face < stitch_faces; ++face) {
        const StitchField& field = stitch_field(static_cast<StitchFace>(face));
        text.heading("face " + std::to_string(face));
        for (const Cord& cord : cords_of(static_cast<StitchFace>(face)))
            text.line("cord") << cord.from_u << cord.from_v << cord.to_u << cord.to_v << cord.radius
                              << cord.over << cord.dip << cord.taper << cord.radius_at(0.2)
                              << cord.radius_at(0.6) << cord.over_at(0.3);
        for (int row = 5; row < StitchField::size; row += 15) {
            text.line("height");
            for (int column = 3; column < StitchField::size; column += 11)
                text << static_cast<double>(field.height[StitchField::at(column, row)]);
            text.line("twist");
            for (int column = 3; column < StitchField::size; column += 11)
                text << static_cast<double>(field.twist[StitchField::at(column, row)]);
        }
    }
    testing::expect_as_recorded("stitch_faces.txt", text);
}

TEST(RecordedSurfaces, RaysMeetThemAsBefore) {
    RecordedText text;
    for (std::size_t i = 0; i < varied_pieces().size(); i += 3) {
        const StitchSurface surface = drawn(i, Relief::solid, 6'000);
        if (surface.mesh.indices.empty()) continue;
        const RayCaster caster(surface.mesh);
        const double height = varied_studies()[i].shape.height_mm;
        text.heading(varied_pieces()[i].name);
        for (int k = 0; k < 12; ++k) {
            const Vec3 from(60 * std::sin(0.55 * k), height * (0.1 * k - 0.1) + 0.3, 60 * std::cos(0.55 * k));
            const Ray ray{from, Vec3(0.4 * std::sin(2.0 * k), height * 0.45, 0.7 * std::cos(1.0 * k)) - from};
            const auto hit = caster.first_hit(ray);
            if (!hit) {
                text.line("misses");
                continue;
            }
            text.line("meets") << static_cast<std::size_t>(hit->triangle) << static_cast<int>(hit->stitch)
                               << hit->from_outside << hit->t;
            tell(text, hit->point);
            tell(text, hit->normal);
        }
    }
    testing::expect_as_recorded("rays.txt", text);
}

}  // namespace
}  // namespace roundwright::test
