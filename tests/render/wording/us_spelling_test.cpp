#include "render/wording/us_spelling.h"

#include <gtest/gtest.h>

namespace roundwright {
namespace {

QString spelt(const char* context, const char* source) {
    return UsSpelling().translate(context, source, nullptr, -1);
}

TEST(UsSpelling, ColoursAndMetresAreSpeltAsInTheStates) {
    EXPECT_EQ(spelt("YarnPanel", "C&olour").toStdString(), "C&olor");
    EXPECT_EQ(spelt("MeshDialog", "GLB, with colours").toStdString(), "GLB, with colors");
    EXPECT_EQ(spelt("PictureDialog", "A colour…").toStdString(), "A color…");
    EXPECT_EQ(spelt("PreferenceActions", "&Millimetres").toStdString(), "&Millimeters");
}

TEST(UsSpelling, LeavesTheRestAndThePagesAlone) {
    EXPECT_TRUE(spelt("YarnPanel", "&Hook").isNull());
    EXPECT_TRUE(spelt("Pattern", "Colour").isNull()) << "a page is spelt by its terms";
    EXPECT_TRUE(spelt("YarnPanel", nullptr).isNull());
}

TEST(UsSpelling, IsForSystemsInUsEnglish) {
    EXPECT_TRUE(wants_us_spelling({QStringLiteral("en-US"), QStringLiteral("en")}));
    EXPECT_TRUE(wants_us_spelling({QStringLiteral("en-Latn-US")}));
    EXPECT_FALSE(wants_us_spelling({QStringLiteral("en-GB"), QStringLiteral("en-US")}));
    EXPECT_FALSE(wants_us_spelling({QStringLiteral("es-US")}));
    EXPECT_FALSE(wants_us_spelling({}));
}

}  // namespace
}  // namespace roundwright
