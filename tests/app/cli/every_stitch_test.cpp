#include <fstream>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include <QFile>
#include <QImage>
#include <QTemporaryDir>

#include "core/document/json_document.h"
#include "tests/app/cli/run_program.h"

namespace roundwright {
namespace {

using namespace test;
using nlohmann::json;
using testing::HasSubstr;
using testing::Not;

class EveryStitchOnTheCommandLine : public testing::Test {
  protected:
    [[nodiscard]] QString path(const char* name) const { return folder_.filePath(QString::fromLatin1(name)); }

    QString file(const std::vector<int>& counts, const std::vector<std::string>& words, const Start& start,
                 double stretch) const {
        Toy toy;
        toy.title = "Harbour";
        toy.gauge = GivenGauge{{5, 5, 0, 0}};
        toy.pieces.push_back({});
        Piece piece = toy.pieces[0];
        piece.name = "Foot";
        piece.start = start;
        piece.joining = Joining::joined;
        piece.end = End::left_open;
        piece.area_stretch = stretch;
        for (const int count : counts) {
            WorkedEvenly evenly{count};
            evenly.spacing = Spacing::staggered;
            piece.rounds.emplace_back().working = evenly;
        }
        for (const std::string& round : words) piece.rounds.push_back({AsWritten{round}, 0, false, ""});
        toy.pieces[0] = piece;
        std::ofstream(path("foot.roundwright").toStdString(), std::ios::binary) << write_document(toy);
        return path("foot.roundwright");
    }

    [[nodiscard]] QString sole() const {
        return file({},
                    {"2 sc in next st, sc 6, 3 sc in next st, 2 sc in next st, sc 6, 3 sc in next st",
                     "inc, sc 8, inc x 3, sc 8, inc x 2"},
                    OvalChain{8}, 0);
    }

    static json shape_of(const QStringList& arguments) {
        const ProgramRun run = run_program(QStringList{"shape", "--json"} + arguments);
        EXPECT_EQ(run.exit_code, 0) << run.err;
        return json::parse(run.out)["pieces"][0];
    }

    QImage picture(const QStringList& arguments, const char* name) const {
        const ProgramRun run = run_program(QStringList{"image", "--view", "front", "--size", "200x200"} +
                                           arguments + QStringList{"-o", path(name)});
        EXPECT_EQ(run.exit_code, 0) << run.err;
        return QImage(path(name));
    }

  private:
    QTemporaryDir folder_;
};

TEST_F(EveryStitchOnTheCommandLine, ASoleHasItsThreeSizesAndLiesFlat) {
    const json foot = shape_of({"--every-stitch", sole()});
    EXPECT_EQ(foot["solve"], "every_stitch");
    EXPECT_NEAR(foot["width_mm"], 60, 3);
    EXPECT_NEAR(foot["depth_mm"], 20, 3.5);
    EXPECT_LT(foot["height_mm"], 1);
    EXPECT_FALSE(foot.contains("other_shapes"));
    EXPECT_EQ(shape_of({sole()})["solve"], "every_stitch") << "it is no round piece";
    const ProgramRun words = run_program({"shape", "--every-stitch", sole()});
    EXPECT_EQ(words.exit_code, 0);
    EXPECT_THAT(words.out, HasSubstr("Worked out stitch by stitch"));
    EXPECT_EQ(words.err, "");
}

TEST_F(EveryStitchOnTheCommandLine, ARuffleSaysHowElseItMayLie) {
    const QString ruffle = file({7, 14, 21, 28, 35, 42, 49, 56, 63}, {}, MagicRing{}, 0);
    const json other = shape_of({"--every-stitch", ruffle})["other_shapes"];
    ASSERT_FALSE(other.empty());
    EXPECT_EQ(other.back()["waves"], 0);
    EXPECT_THAT(run_program({"shape", "--every-stitch", ruffle}).out, HasSubstr("It may also lie"));
    EXPECT_THAT(run_program({"shape", ruffle}).out, Not(HasSubstr("It may also lie")));
}

TEST_F(EveryStitchOnTheCommandLine, ASlantIsSeenAndChangesNoSize) {
    const QString tube = file(std::vector<int>(10, 18), {}, OpenTube{18}, 0.04);
    const QImage usual = picture({"--every-stitch", tube}, "usual.png");
    EXPECT_EQ(picture({"--every-stitch", "--slant=0.2", tube}, "same.png"), usual);
    EXPECT_NE(picture({"--every-stitch", "--slant=0.6", tube}, "more.png"), usual);
    EXPECT_NE(picture({"--every-stitch", "--slant=-0.2", tube}, "left.png"), usual);
    const json upright = shape_of({"--every-stitch", "--slant", "0", tube});
    const json leaning = shape_of({"--every-stitch", "--slant", "0.6", tube});
    EXPECT_NEAR(leaning["width_mm"], upright["width_mm"], 0.3);
    EXPECT_NEAR(leaning["height_mm"], upright["height_mm"], 0.5);
    for (const char* odd : {"much", "1.5", "", "nan"}) {
        const ProgramRun run = run_program({"shape", "--every-stitch", "--slant", odd, tube});
        EXPECT_NE(run.exit_code, 0) << odd;
        EXPECT_THAT(run.err, HasSubstr("from -1 to 1")) << odd;
    }
}

TEST_F(EveryStitchOnTheCommandLine, WhatCannotBeSolvedSaysWhyAndKeepsItsRoundShape) {
    const QString bag = file({6, 12, 18, 18, 18, 18, 18, 18, 12, 6}, {}, MagicRing{}, 0);
    const ProgramRun run = run_program({"shape", "--json", "--every-stitch", bag});
    EXPECT_EQ(run.exit_code, 0);
    EXPECT_THAT(run.err,
                HasSubstr("not worked out stitch by stitch: without stuffing it lies in two layers"));
    EXPECT_EQ(json::parse(run.out)["pieces"][0]["solve"], "round");
}

}  // namespace
}  // namespace roundwright
