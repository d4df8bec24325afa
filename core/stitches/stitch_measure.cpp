#include "core/stitches/stitch_measure.h"

#include <array>

namespace roundwright {
namespace {

struct Measure {
    double height;
    double width;
    double yarn;
};

// In the order of StitchKind. A bobble is five double crochets drawn together, each but for its last over.
constexpr std::array<Measure, 8> measures{{
    {0.0, 1.0, 0.4},   // chain
    {0.25, 1.0, 0.6},  // slip stitch
    {1.0, 1.0, 1.0},   // single crochet
    {1.5, 1.0, 1.5},   // half double crochet
    {2.0, 1.0, 2.0},   // double crochet
    {3.0, 1.0, 2.6},   // treble crochet
    {1.0, 1.0, 7.0},   // bobble
    {0.0, 0.0, 0.0},   // skip
}};

constexpr double yarn_of_a_foot_more = 0.4;

const Measure& measure(StitchKind kind) { return measures.at(static_cast<std::size_t>(kind)); }

}  // namespace

double height_in_sc(StitchKind kind) { return measure(kind).height; }

double width_in_sc(StitchKind kind) { return measure(kind).width; }

double yarn_in_sc(StitchKind kind) { return measure(kind).yarn; }

double yarn_in_sc(const Stitch& stitch) {
    const int more = stitch.feet > 1 && stitch.kind != StitchKind::skip ? stitch.feet - 1 : 0;
    return yarn_in_sc(stitch.kind) + more * yarn_of_a_foot_more;
}

}  // namespace roundwright
