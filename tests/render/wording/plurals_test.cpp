#include "render/wording/plurals.h"

#include <gtest/gtest.h>

#include <QCoreApplication>

#include "render/wording/counted.h"
#include "render/wording/limit_words.h"
#include "render/wording/us_spelling.h"

namespace roundwright {
namespace {

std::string said(const char* source, int count) {
    return english_plural(QString::fromUtf8(source), count).toStdString();
}

TEST(Plurals, EnglishHasOneFormForOneAndOneForTheRest) {
    EXPECT_EQ(said("%n stitch(es)", 1), "%n stitch");
    EXPECT_EQ(said("%n stitch(es)", 2), "%n stitches");
    EXPECT_EQ(said("%n round(s)", 0), "%n rounds");
    EXPECT_EQ(said("round(s) %1: (it is/they are) worked evenly", 1), "round %1: it is worked evenly");
    EXPECT_EQ(said("round(s) %1: (it is/they are) worked evenly", 3), "rounds %1: they are worked evenly");
    EXPECT_EQ(said("Insert %1 (%2 in all)", 1), "Insert %1 (%2 in all)") << "other brackets stay";
}

TEST(Plurals, EveryApplicationHasThem) {
    EXPECT_EQ(stitches_words(1).toStdString(), "1 stitch");
    EXPECT_EQ(rounds_words(12).toStdString(), "12 rounds");
    EXPECT_EQ(QCoreApplication::translate("Any", "%n file(s)", nullptr, 1).toStdString(), "1 file");
    EXPECT_EQ(QCoreApplication::translate("Any", "Any file(s)").toStdString(), "Any file(s)")
        << "nothing is counted";
}

TEST(Plurals, AreSpeltAsInTheStatesToo) {
    EXPECT_EQ(UsSpelling().translate("YarnPanel", "%n colour(s)", nullptr, 1).toStdString(), "%n color");
    EXPECT_EQ(UsSpelling().translate("YarnPanel", "%n colour(s)", nullptr, 4).toStdString(), "%n colors");
    EXPECT_TRUE(UsSpelling().translate("YarnPanel", "%n yarn(s)", nullptr, 4).isNull()) << "as in English";
}

TEST(Limits, AreSaidOneWay) {
    EXPECT_EQ(most_pieces_words(200).toStdString(), "A toy has at most 200 pieces.");
    EXPECT_EQ(most_stitches_words(1).toStdString(), "A piece has at most 1 stitch.");
}

}  // namespace
}  // namespace roundwright
