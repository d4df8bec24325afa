#include "render/wording/reshape_words.h"

#include <gtest/gtest.h>

#include <QLocale>

namespace roundwright {
namespace {

FrogBack back(int keep, int part, int undo, int stitches) {
    FrogBack made;
    made.keep_rounds = keep;
    made.keep_stitches = part;
    made.undo_rounds = undo;
    made.undo_stitches = stitches;
    return made;
}

TEST(FrogBackWords, SayWhatToKeepAndWhatToUndo) {
    EXPECT_EQ(frog_back_words(back(4, 0, 7, 186)).toStdString(),
              "Keep rounds 1 to 4, undo 7 rounds (186 stitches).");
    EXPECT_EQ(frog_back_words(back(1, 0, 1, 1)).toStdString(), "Keep round 1, undo 1 round (1 stitch).");
    EXPECT_EQ(frog_back_words(back(0, 0, 3, 36)).toStdString(),
              "Keep nothing: undo all 3 rounds (36 stitches).");
    EXPECT_EQ(frog_back_words(back(5, 0, 0, 0)).toStdString(), "Keep rounds 1 to 5 and go on from there.");
    EXPECT_EQ(frog_back_words(back(4, 9, 0, 0)).toStdString(),
              "Keep rounds 1 to 4 and the 9 stitches of round 5 and go on from there.");
    EXPECT_EQ(frog_back_words(back(0, 0, 0, 0)).toStdString(), "");
}

TEST(FreedYarnWords, GiveMetresOrYardsWithTheirRange) {
    FrogBack made = back(1, 0, 2, 20);
    made.undo_yarn_mm = {{5600, 4300, 6800}};
    EXPECT_EQ(freed_yarn_words(made, LengthUnit::millimetres).toStdString(),
              "That frees about 5.6 m of yarn (4.3 m to 6.8 m).");
    EXPECT_EQ(freed_yarn_words(made, LengthUnit::inches).toStdString(),
              "That frees about 6.1 yd of yarn (4.7 yd to 7.4 yd).");
    EXPECT_EQ(freed_yarn_words(back(3, 0, 0, 0), LengthUnit::millimetres).toStdString(), "");
}

TEST(OutcomeWords, EveryCodeThatTheMakerSeesHasWords) {
    for (int code = 0; code < static_cast<int>(ReshapeCode::cancelled); ++code) {
        Reshaped made;
        made.code = static_cast<ReshapeCode>(code);
        EXPECT_FALSE(outcome_words(made, LengthUnit::millimetres).isEmpty()) << code;
        EXPECT_FALSE(reshape_code_name(made.code).empty()) << code;
    }
}

Reshaped reached(const Size& size, const Size& asked) {
    Reshaped made;
    made.code = ReshapeCode::met;
    made.wanted = asked;
    made.form.shape.width_mm = size.width_mm;
    made.form.shape.height_mm = size.height_mm;
    return made;
}

TEST(OutcomeWords, SayWhatWasAskedForAndHowFarOffItIs) {
    const auto words = [](const Size& size, const Size& asked, LengthUnit units) {
        return outcome_words(reached(size, asked), units)
            .replace(QChar(0xa0), QLatin1Char(' '))
            .toStdString();
    };
    const auto ends_with = [](const std::string& text, const std::string& end) {
        return text.size() >= end.size() && text.substr(text.size() - end.size()) == end;
    };
    const auto mm = LengthUnit::millimetres;
    EXPECT_TRUE(ends_with(words({57.2, 52.9}, {48, 44.1}, mm),
                          "That is 9 mm wider and 9 mm taller than you asked for (48 mm wide, 44 mm tall)."))
        << words({57.2, 52.9}, {48, 44.1}, mm);
    EXPECT_TRUE(ends_with(words({48.2, 42.9}, {48, 44.1}, mm),
                          "That is 1 mm shorter than you asked for (48 mm wide, 44 mm tall)."));
    EXPECT_TRUE(ends_with(words({48.2, 44.3}, {48, 44.1}, mm), "Just the size you asked for."));
    EXPECT_NE(words({57.2, 52.9}, {50.8, 50.8}, LengthUnit::inches).find("\u00bc in wider"),
              std::string::npos)
        << words({57.2, 52.9}, {50.8, 50.8}, LengthUnit::inches);
}

TEST(RewrittenWords, NameTheRounds) {
    EXPECT_EQ(rewritten_words({}).toStdString(), "");
    EXPECT_TRUE(rewritten_words({4}).contains(QStringLiteral("round 5 no longer")));
    EXPECT_TRUE(rewritten_words({0, 4}).contains(QStringLiteral("rounds 1, 5 no longer")));
}

TEST(MissedWords, NameThePieces) {
    Toy toy;
    toy.pieces.resize(3);
    toy.pieces[1].name = "Fin";
    EXPECT_EQ(missed_words(toy, {}).toStdString(), "");
    EXPECT_TRUE(missed_words(toy, {1}).endsWith(QStringLiteral(": Fin.")))
        << missed_words(toy, {1}).toStdString();
    EXPECT_TRUE(missed_words(toy, {1, 2}).contains(QStringLiteral("Fin, ")));
}

TEST(OffLineWords, SayHowNearTheRoundsComeToALine) {
    EXPECT_EQ(off_line_words(0.4, LengthUnit::millimetres).toStdString(), "It follows the line closely.");
    EXPECT_TRUE(
        off_line_words(2.2, LengthUnit::millimetres).contains(QStringLiteral("2\u00a0mm off the line")));
}

TEST(FormWords, EveryFormHasAName) {
    for (int kind = 0; kind <= static_cast<int>(FormKind::half_ball); ++kind)
        EXPECT_FALSE(form_name(static_cast<FormKind>(kind)).isEmpty());
}

}  // namespace
}  // namespace roundwright
