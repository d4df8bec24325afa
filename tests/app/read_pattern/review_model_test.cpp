#include "app/read_pattern/review_model.h"

#include <gtest/gtest.h>
#include <set>

#include <QAbstractItemModelTester>

#include "app/read_pattern/mends_model.h"

namespace roundwright::app {
namespace {

constexpr auto pattern_text =
    "Seal pup\n"                             // 1
    "Materials: grey yarn, 3 mm hook\n"      // 2
    "\n"                                     // 3
    "Head\n"                                 // 4
    "Rnd 1: 6 sc in magic ring (6)\n"        // 5
    "Rnd 2: inc\n"                           // 6
    "  around (12)\n"                        // 7
    "Rnd 3: [sc 1, inc] x 6 (20)\n"          // 8
    "Rnds 4-6: sc in each st around (18)\n"  // 9
    "Stuff lightly.\n"                       // 10
    "Rnd 7: flurble 3 wibbles twice (18)\n"  // 11
    "Tail: same as head\n"                   // 12
    "Assembly\n"                             // 13
    "Sew on the tail.\n";                    // 14

struct ReadModel {
    explicit ReadModel(const char* text) : pattern(read_pattern(text)) { model.set_pattern(pattern); }

    [[nodiscard]] QString words(int line, int column, int role = Qt::DisplayRole) const {
        return model.index(model.row_of_line(line), column).data(role).toString();
    }
    [[nodiscard]] QString heard(int line) const {
        return words(line, ReviewModel::place, Qt::AccessibleTextRole);
    }

    ReadPattern pattern;
    ReviewModel model;
    QAbstractItemModelTester tester{&model, QAbstractItemModelTester::FailureReportingMode::Fatal};
};

TEST(ReviewModel, EveryLineWithWordsHasItsLot) {
    const ReadModel read(pattern_text);
    std::set<int> shown;
    for (int row = 0; row < read.model.rowCount(); ++row) shown.insert(read.model.line(row));
    EXPECT_EQ(shown, (std::set<int>{1, 2, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14}));
    const auto lot = [&](int line) { return read.words(line, ReviewModel::lot).toStdString(); };
    EXPECT_EQ(lot(1), "title");
    EXPECT_EQ(lot(2), "materials");
    EXPECT_EQ(lot(4), "piece");
    EXPECT_EQ(lot(5), "round 1");
    EXPECT_EQ(lot(6), "round 2");
    EXPECT_EQ(lot(7), "part of round 2");
    EXPECT_EQ(lot(9), "rounds 4–6");
    EXPECT_EQ(lot(10), "note");
    EXPECT_EQ(lot(12), "rounds 1–7") << "the rounds of the head";
    EXPECT_EQ(lot(13), "heading");
    EXPECT_EQ(lot(14), "assembly");
}

TEST(ReviewModel, ALineIsHeardWithItsLotAndWhatWasFound) {
    const ReadModel read(pattern_text);
    EXPECT_EQ(read.heard(5).toStdString(), "Line 5, round 1, 6 stitches");
    EXPECT_EQ(read.heard(7).toStdString(), "Line 7, part of round 2");
    EXPECT_EQ(read.heard(14).toStdString(), "Line 14, assembly: Sew on the tail.");
    EXPECT_TRUE(read.heard(8).startsWith(QStringLiteral("Line 8, round 3, 18 stitches: The count says 20")))
        << read.heard(8).toStdString();
    EXPECT_EQ(read.words(8, ReviewModel::understood, Qt::AccessibleTextRole).left(20).toStdString(),
              "Line 8, understood, ");
    EXPECT_GE(read.model.finding(read.model.row_of_line(8)), 0);
    EXPECT_EQ(read.model.finding(read.model.row_of_line(5)), -1);
}

TEST(ReviewModel, WhatIsNotUnderstoodSaysWhy) {
    const ReadModel read("Head\nRnd 1: 6 sc in magic ring (6)\nReihe 7: 3 fM (18)\n");
    EXPECT_TRUE(read.heard(3).startsWith(QStringLiteral("Line 3, not understood: “Reihe 7: 3 fM (18)”")))
        << read.heard(3).toStdString();
}

TEST(ReviewModel, TwoRoundsOnOneLineBothHaveTheirRow) {
    const ReadModel read(
        "Head\nRnd 1: 6 sc in magic ring (6). Rnd 2: inc around (12).\nRnd 3: sc around (12)\n");
    std::multiset<int> lines;
    int rounds = 0;
    for (int row = 0; row < read.model.rowCount(); ++row) {
        lines.insert(read.model.line(row));
        rounds += read.model.index(row, ReviewModel::stitches).data().toString().isEmpty() ? 0 : 1;
    }
    int taken = 0;
    for (const ReadLine& line : read.pattern.lines) taken += line.first_round >= 0 ? 1 : 0;
    EXPECT_EQ(rounds, taken);
    EXPECT_GE(lines.count(2), 1U);
}

TEST(ReviewModel, ATextThatIsReadAnewIsAModelStill) {
    ReadModel read(pattern_text);
    for (const char* text : {"", "\n\n", "no rounds at all", pattern_text, "6, 12, 18"}) {
        read.pattern = read_pattern(text);
        read.model.set_pattern(read.pattern);
        for (int row = 0; row < read.model.rowCount(); ++row)
            for (int column = 0; column < read.model.columnCount(); ++column)
                EXPECT_FALSE(read.model.index(row, column).data(Qt::AccessibleTextRole).toString().isEmpty());
    }
}

TEST(MendsModel, EachMendSaysWhatItMakes) {
    MendsModel model;
    QAbstractItemModelTester tester(&model, QAbstractItemModelTester::FailureReportingMode::Fatal);
    model.set_mends(
        {{.code = MendCode::change_times, .arguments = {5, 6}, .edits = {}, .stitches = 18},
         {.code = MendCode::change_stated_count, .arguments = {18, 15}, .edits = {}, .stitches = 15}});
    ASSERT_EQ(model.rowCount(), 2);
    EXPECT_EQ(model.index(0).data().toString().toStdString(),
              "Should that be 6 times, not 5? It then has 18 stitches.");
    EXPECT_EQ(model.index(1).data().toString().toStdString(), "Should the count say 15?");
    model.set_mends({});
    EXPECT_EQ(model.rowCount(), 0);
}

}  // namespace
}  // namespace roundwright::app
