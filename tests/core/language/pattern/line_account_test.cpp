#include <gtest/gtest.h>
#include <random>
#include <regex>
#include <sstream>
#include <string>
#include <vector>

#include "core/base/limits.h"
#include "core/language/pattern/read_pattern.h"
#include "tests/core/language/pattern/numbered_rounds.h"
#include "tests/support/random_cases.h"

namespace roundwright {
namespace {

std::vector<ReadLineKind> kinds_of(const ReadPattern& read) {
    std::vector<ReadLineKind> kinds;
    for (const LineAccount& line : read.account) kinds.push_back(line.kind);
    return kinds;
}

TEST(LineAccount, HasEveryLineOfTheText) {
    using enum ReadLineKind;
    const ReadPattern read = read_pattern(
        "Otter\nDesigned by nobody\nUS terms\n\nMaterials\nYarn A: brown\n2 buttons\n\nLeft paw\nCh 7.\n"
        "Row 1: sc in 2nd ch from hook,\nsc in next 5 ch (6)\nRest a while.\n12 odd things\n\n"
        "Right paw: same as left paw\n\nAssembly\nSew on.\n");
    EXPECT_EQ(kinds_of(read),
              (std::vector<ReadLineKind>{title, title,      terms, note,    section,  yarn, materials,
                                         note,  heading,    start, round,   round,    note, not_read,
                                         note,  like_piece, note,  section, assembly, note}));
    for (const LineAccount& line : read.account)
        EXPECT_TRUE(line.entry < 0 || read.lines.at(static_cast<std::size_t>(line.entry)).kind == line.kind);
    EXPECT_EQ(read.account.at(3).entry, -1);  // blank
    EXPECT_EQ(read.assembly, "Sew on.");
    EXPECT_FALSE(read.complete());
    EXPECT_TRUE(read.proved());
}

TEST(LineAccount, MarksTheWholeLineThatWasNotRead) {
    const ReadPattern read = read_pattern("Head\nRnd 1: 6 sc in MR (6)\nReihe 2: 6 fM (6)\n");
    EXPECT_EQ(read.diagnostics.at(0).where, (TextSpan{3, 1, 17}));
}

TEST(LineAccount, TellsTheRoundsAfterALimitToo) {
    std::string text =
        "Rnd 1: 6 sc in MR\nRnds 2-2000: sc around\nRnd 2001: sc around\nRnd 2002: sc around\n";
    const ReadPattern read = read_pattern(text);
    EXPECT_EQ(read.account.at(3).kind, ReadLineKind::not_read);
    EXPECT_FALSE(read.proved());
}

TEST(LineAccount, SaysTheFirstFewOfAKindAndHowManyMore) {
    std::string text = "Head\nRnd 1: 6 sc in MR (6)\n";
    for (int i = 0; i < 3'000; ++i) text += "Kerros " + std::to_string(i) + ": kaikki ks (6)\n";
    const ReadPattern read = read_pattern(text);
    ASSERT_GE(read.diagnostics.size(), 2u);
    EXPECT_LE(read.diagnostics.size(), 40u);
    int all = 0;
    for (const ReadDiagnostic& d : read.diagnostics) all += 1 + d.more;
    EXPECT_EQ(all, 3'000);
}

TEST(LineAccount, LinesAndTextsThatAreTooLongAreToldAndNotRead) {
    const std::string ball = "Rnd 1: 6 sc in MR (6)\nRnd 2: inc around (12)\n";
    const ReadPattern line = read_pattern(ball + "Rnd 3: " + std::string(max_line_bytes, 'x') + "\n");
    ASSERT_EQ(line.diagnostics.size(), 1u);
    EXPECT_EQ(line.diagnostics[0].code, ReadCode::line_too_long);
    EXPECT_EQ(line.diagnostics[0].where.line, 3);
    EXPECT_EQ(line.pieces.at(0).rounds.size(), 2u);
    EXPECT_EQ(line.account.at(2).kind, ReadLineKind::not_read);
    const ReadPattern text = read_pattern(std::string(max_text_bytes + 1, 's'));
    ASSERT_EQ(text.diagnostics.size(), 1u);
    EXPECT_EQ(text.diagnostics[0].code, ReadCode::text_too_long);
}

// --- properties over texts mixed at random from lines that people write

class MixedText {
  public:
    explicit MixedText(unsigned seed) : engine_(seed) {}

    std::string text() {
        std::string text;
        const int lines = between(1, 30);
        for (int i = 0; i < lines; ++i) text += line() + (between(0, 9) == 0 ? "\r\n" : "\n");
        return text;
    }

  private:
    std::string line() {
        static const std::vector<std::string> heads{"Rnd ", "Rnd ", "Rnd ", "Round ",
                                                    "R",    "Row ", "",     "Rnds "};
        static const std::vector<std::string> signs{":", ":", ".", " -", ")", " -:", ""};
        static const std::vector<std::string> works{" 6 sc in MR (6)",
                                                    " inc around (12)",
                                                    " sc around",
                                                    " [sc, inc] x 6 (18)",
                                                    " sc in next 3 sts,",
                                                    " *sc, inc",
                                                    " stuff firmly.",
                                                    " as rnd 2",
                                                    " dec x 6 (6)",
                                                    "",
                                                    " 3 fM, 1 Zun",
                                                    " sc around for 3 rounds",
                                                    " rep rnd 1-2",
                                                    " place eyes",
                                                    " ((sc)"};
        static const std::vector<std::string> others{"",
                                                     "Head",
                                                     "Legs (make 2)",
                                                     "work as arms",
                                                     "Arms",
                                                     "Right ear: same as left ear",
                                                     "Notes",
                                                     "Materials",
                                                     "Assembly",
                                                     "(18)",
                                                     "sc 3",
                                                     "Fasten off.",
                                                     "Ch 7.",
                                                     "# Tail",
                                                     "=====",
                                                     "-----",
                                                     "12",
                                                     "Last rnd: dec around",
                                                     "Left ear",
                                                     "inc = 2 sc in next st",
                                                     "Next 3 rnds: sc around",
                                                     "\xff",
                                                     "Work even for 4 rounds.",
                                                     "- sc around"};
        if (between(0, 99) < 35) return pick(others);
        const int number = between(0, 5) == 0 ? between(0, 40) : next_++;
        std::string text = pick(heads) + std::to_string(number);
        if (between(0, 5) == 0)
            text += pick({"-", " to ", " and ", ". - "}) + std::to_string(next_ += between(0, 4));
        return text + pick(signs) + pick(works);
    }

    int between(int least, int most) { return std::uniform_int_distribution<int>(least, most)(engine_); }
    std::string pick(const std::vector<std::string>& choices) {
        return choices[static_cast<std::size_t>(between(0, static_cast<int>(choices.size()) - 1))];
    }

    std::mt19937 engine_;
    int next_ = 1;
};

TEST(LineAccount, NoTextHasMoreNumberedRoundsThanWereReadWithoutAFinding) {
    const int cases = testing::random_cases(100'000);
    for (int seed = 0; seed < cases; ++seed) {
        const std::string text = MixedText(static_cast<unsigned>(seed)).text();
        const ReadPattern read = read_pattern(text);
        if (!read.complete()) continue;
        ASSERT_GE(testing::rounds_read(read), testing::numbered_rounds(text)) << "seed " << seed << "\n"
                                                                              << text;
    }
}

TEST(LineAccount, LeavesOutNoLineOfAnyText) {
    const int cases = testing::random_cases(100'000);
    for (int seed = 0; seed < cases; ++seed) {
        const std::string text = MixedText(static_cast<unsigned>(seed)).text();
        const ReadPattern read = read_pattern(text);
        std::istringstream lines(text);
        std::string line;
        for (std::size_t i = 0; std::getline(lines, line); ++i) {
            const bool words = line.find_first_not_of("\r -=#(") != std::string::npos;
            ASSERT_LT(i, read.account.size()) << "seed " << seed << "\n" << text;
            ASSERT_TRUE(read.account[i].entry >= 0 || !words) << "seed " << seed << " line " << i + 1 << "\n"
                                                              << text;
        }
    }
}

}  // namespace
}  // namespace roundwright
