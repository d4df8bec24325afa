#include <fstream>
#include <gtest/gtest.h>
#include <sstream>

#include "core/assembly/check_joins.h"
#include "core/assembly/toy_measures.h"
#include "core/document/json_document.h"
#include "core/study/toy_checks.h"
#include "tests/core/checks/checked_piece.h"

namespace roundwright {
namespace {

std::string sample_text(const std::string& name) {
    std::ifstream file(std::string(SAMPLES) + "/" + name, std::ios::binary);
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

std::vector<PieceStudy> study(const Toy& toy) {
    std::vector<PieceStudy> studies;
    for (std::size_t piece = 0; piece < toy.pieces.size(); ++piece)
        studies.push_back(study_piece(toy, piece));
    return studies;
}

class Sample : public testing::TestWithParam<const char*> {};

TEST_P(Sample, StandsInTheFileAsItIsWritten) {
    const std::string text = sample_text(GetParam());
    EXPECT_EQ(write_document(read_document(text).toy), text);
}

TEST_P(Sample, SaysThatItIsInvented) {
    EXPECT_NE(read_document(sample_text(GetParam())).toy.notes.find("invented"), std::string::npos);
}

TEST_P(Sample, ConvergesInEveryPiece) {
    for (const PieceStudy& piece : study(read_document(sample_text(GetParam())).toy)) {
        EXPECT_EQ(piece.measures().termination, Termination::converged);
    }
}

INSTANTIATE_TEST_SUITE_P(Harbour, Sample,
                         testing::Values("puffin.roundwright", "seal-pup.roundwright",
                                         "starfish.roundwright"),
                         [](const auto& tested) {
                             const std::string name = tested.param;
                             return name.substr(0, name.find_first_of("-."));
                         });

/// What stands and sits is sewn together whole, and nothing runs into another beyond its seam.
TEST_P(Sample, IsAWholeToyThatStands) {
    const Toy toy = read_document(sample_text(GetParam())).toy;
    const auto studies = study(toy);
    const AssembledToy made = assembled(toy, studies);
    EXPECT_GE(toy.pieces.size(), 4u);
    EXPECT_GE(made.placed.pieces.size(), 7u);
    EXPECT_TRUE(made.placed.problems.empty());
    const ToyMeasures measures = toy_measures(made, studies);
    EXPECT_TRUE(measures.complete);
    EXPECT_EQ(measures.apart, 0u);
    EXPECT_TRUE(measures.overlaps.empty());
    EXPECT_GT(measures.stable_degrees.likely, well_stable_degrees);
    EXPECT_GT(measures.height_mm.likely, 80);
    EXPECT_LT(measures.height_mm.likely, 160);
    EXPECT_TRUE(checks_of_joins(toy, studies).empty());
}

TEST(SealPup, HeadComesOutTooBigAndNothingElseIsWrong) {
    const auto studies = study(read_document(sample_text("seal-pup.roundwright")).toy);
    EXPECT_GT(studies.at(0).measures().width_mm, 60 * 1.15);  // its notes want 60 mm
    EXPECT_EQ(test::named(checks_of_toy(studies)), "");
}

TEST(Puffin, BodyIsRoundAndNothingIsWrong) {
    const auto studies = study(read_document(sample_text("puffin.roundwright")).toy);
    EXPECT_GT(studies.at(0).measures().width_mm, 0.6 * studies.at(0).measures().height_mm);
    const auto checks = checks_of_toy(studies);
    EXPECT_EQ(test::named(checks), "");
}

// Whoever opens one must not be met by a warning.
TEST_P(Sample, OpensWithoutAWarning) {
    for (const Check& check : checks_of_toy(study(read_document(sample_text(GetParam())).toy)))
        EXPECT_EQ(check.severity, Severity::note) << check_code_name(check.code);
}

TEST(Puffin, BellyAndCheeksLieFlatAsTheyAreMarked) {
    const auto studies = study(read_document(sample_text("puffin.roundwright")).toy);
    for (const std::size_t piece : {4u, 5u})
        for (const RoundLie& lie : studies.at(piece).lies()) EXPECT_EQ(lie.lie, Lie::lies_flat);
}

}  // namespace
}  // namespace roundwright
