#include <fstream>
#include <gtest/gtest.h>
#include <sstream>

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

TEST(SealPup, HeadComesOutTooBigAndNothingElseIsWrong) {
    const auto studies = study(read_document(sample_text("seal-pup.roundwright")).toy);
    EXPECT_GT(studies.at(0).measures().width_mm, 60 * 1.15);  // its notes want 60 mm
    EXPECT_EQ(test::named(checks_of_toy(studies)), "");
}

TEST(Puffin, BodyIsRoundAndNothingIsWrong) {
    const auto studies = study(read_document(sample_text("puffin.roundwright")).toy);
    EXPECT_GT(studies.at(0).measures().width_mm, 0.6 * studies.at(0).measures().height_mm);
    const auto checks = checks_of_toy(studies);
    ASSERT_EQ(test::named(checks), "widening_neck round 19; ");
    EXPECT_EQ(checks[0].severity, Severity::note);
}

// Whoever opens one must not be met by a warning.
TEST_P(Sample, OpensWithoutAWarning) {
    for (const Check& check : checks_of_toy(study(read_document(sample_text(GetParam())).toy)))
        EXPECT_EQ(check.severity, Severity::note) << check_code_name(check.code);
}

TEST(Starfish, BaseLiesFlatAsItIsMarked) {
    const auto studies = study(read_document(sample_text("starfish.roundwright")).toy);
    for (const RoundLie& lie : studies.at(0).lies()) EXPECT_EQ(lie.lie, Lie::lies_flat);
}

}  // namespace
}  // namespace roundwright
