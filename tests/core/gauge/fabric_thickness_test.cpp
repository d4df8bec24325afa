#include "core/gauge/fabric_thickness.h"

#include <gtest/gtest.h>
#include <limits>

#include "core/gauge/gauge_source.h"
#include "core/gauge/usual_gauge.h"

namespace roundwright {
namespace {

double usual_stitch_mm(YarnWeight weight) {
    return gauge_from(EstimatedGauge{weight}, usual_hook_mm(weight))->stitch_width_mm;
}

// "About 2 to 3 mm in worsted": common practice, measured between the fingers.
TEST(FabricThickness, OfWorstedIsTwoToThreeMillimetres) {
    const FabricThickness worsted = fabric_thickness(YarnWeight::medium, 5.5);
    EXPECT_NEAR(worsted.mm, 25.4 / 10.5, 1e-12);  // Craft Yarn Council: 9 to 12 wraps per inch
    EXPECT_NEAR(worsted.mm, 2.5, 0.2);
    EXPECT_NEAR(worsted.error_mm, 0.6, 0.15);
}

TEST(FabricThickness, GrowsWithTheYarn) {
    double before = 0;
    for (int weight = 1; weight <= 7; ++weight) {
        const FabricThickness fabric = fabric_thickness(static_cast<YarnWeight>(weight),
                                                        usual_stitch_mm(static_cast<YarnWeight>(weight)));
        EXPECT_GT(fabric.mm, before) << weight;
        EXPECT_GT(fabric.error_mm, 0.2 * fabric.mm) << weight;
        EXPECT_LT(fabric.error_mm, fabric.mm) << weight;
        before = fabric.mm;
    }
}

// What stands in where only the stitch is known is the same, with the hooks that toys are worked with.
TEST(FabricThickness, OfTheStitchAloneIsThatOfTheUsualYarn) {
    for (const YarnWeight weight :
         {YarnWeight::light, YarnWeight::medium, YarnWeight::bulky, YarnWeight::super_bulky}) {
        const double stitch = usual_stitch_mm(weight);
        const FabricThickness fabric = fabric_thickness(weight, stitch);
        EXPECT_NEAR(fabric_thickness_in_stitches * stitch, fabric.mm, fabric.error_mm)
            << yarn_standard(weight).name;
    }
}

TEST(FabricThickness, StitchesBoundAYarnThatCannotBeTheirs) {
    EXPECT_NEAR(fabric_thickness(YarnWeight::medium, 20).mm, 5, 1e-12);
    EXPECT_NEAR(fabric_thickness(YarnWeight::bulky, 2).mm, 1.2, 1e-12);
    EXPECT_EQ(fabric_thickness(YarnWeight::bulky, 0), FabricThickness{});
    EXPECT_EQ(fabric_thickness(YarnWeight::bulky, std::numeric_limits<double>::quiet_NaN()),
              FabricThickness{});
}

}  // namespace
}  // namespace roundwright
