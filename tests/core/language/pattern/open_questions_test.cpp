#include "core/language/pattern/open_questions.h"

#include <gtest/gtest.h>

namespace roundwright {
namespace {

using Kind = OpenQuestionKind;

Round even(int stitches) {
    Round round;
    round.working = WorkedEvenly{stitches};
    return round;
}

Toy whole_toy() {
    Toy toy;
    toy.title = "Buoy";
    toy.gauge = GivenGauge{{5, 5, 0, 0}, {}};
    toy.yarns = {{"Foam", {}, YarnWeight::light, 250.0, false, {}, {}}};
    Piece ball;
    ball.name = "Ball";
    ball.rounds = {even(6), even(12), even(6)};
    toy.pieces = {ball};
    return toy;
}

TEST(OpenQuestions, AWholePatternLeavesNone) { EXPECT_TRUE(open_questions(whole_toy()).empty()); }

TEST(OpenQuestions, ANewToyLeavesItsNameAndItsGauge) {
    Toy toy;
    toy.pieces.resize(1);
    const std::vector<OpenQuestion> expected{{Kind::title, 0}, {Kind::gauge, 0}, {Kind::no_rounds, 0}};
    EXPECT_EQ(open_questions(toy), expected);
}

TEST(OpenQuestions, SeveralPartsNeedWordsOnHowTheyGoTogether) {
    Toy toy = whole_toy();
    toy.pieces[0].make = 2;
    EXPECT_EQ(open_questions(toy), (std::vector<OpenQuestion>{{Kind::assembly, 0}}));
    toy.text.assembly = " \n";
    EXPECT_EQ(open_questions(toy).size(), 1u);
    toy.text.assembly = "Sew them together.";
    EXPECT_TRUE(open_questions(toy).empty());
}

TEST(OpenQuestions, OnlyAYarnThatIsUsedIsAskedAbout) {
    Toy toy = whole_toy();
    toy.yarns.push_back({"Tide", {}, YarnWeight::light, {}, false, {}, {}});
    EXPECT_TRUE(open_questions(toy).empty());
    toy.pieces[0].rounds[1].yarn = 1;
    EXPECT_EQ(open_questions(toy), (std::vector<OpenQuestion>{{Kind::yarn_length, 1}}));
}

TEST(OpenQuestions, RoundsThatDoNotComeOutAreNamedByTheirPiece) {
    Toy toy = whole_toy();
    Piece fin = toy.pieces[0];
    fin.rounds[1].working = AsWritten{"sc 9"};
    toy.pieces.push_back(fin);
    toy.text.assembly = "Sew them together.";
    EXPECT_EQ(open_questions(toy), (std::vector<OpenQuestion>{{Kind::rounds, 1}}));
}

}  // namespace
}  // namespace roundwright
