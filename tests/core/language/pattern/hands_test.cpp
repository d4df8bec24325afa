#include <gtest/gtest.h>
#include <string>
#include <vector>

#include "tests/core/language/pattern/table_of_texts.h"

namespace roundwright {
namespace {

using testing::WrittenText;

class Hands : public ::testing::TestWithParam<const char*> {};

TEST_P(Hands, AreRead) {
    const std::vector<WrittenText> texts =
        testing::table_of_texts(std::string(HANDS_FOLDER) + "/" + GetParam());
    ASSERT_FALSE(texts.empty()) << GetParam();
    for (const WrittenText& one : texts) {
        const ReadPattern read = read_pattern(one.text);
        EXPECT_EQ(testing::counts_read(read), one.counts) << one.name << "\n" << one.text;
        EXPECT_EQ(testing::findings_read(read), one.findings) << one.name << "\n" << one.text;
        for (const Piece& piece : read.pieces) EXPECT_TRUE(piece_graph(piece).problems.empty()) << one.name;
    }
}

INSTANTIATE_TEST_SUITE_P(Tables, Hands,
                         ::testing::Values("hands.txt", "bad_rounds.txt", "whole_patterns.txt"));

}  // namespace
}  // namespace roundwright
