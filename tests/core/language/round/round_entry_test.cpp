#include "core/language/round/round_entry.h"

#include <gtest/gtest.h>
#include <random>

#include "core/base/limits.h"

namespace roundwright {

void PrintTo(const EntryProblem& problem, std::ostream* out) {
    *out << "problem " << static_cast<int>(problem.code) << " at " << problem.where.line << ":"
         << problem.where.column << "+" << problem.where.length << " (" << problem.number << ")";
}

namespace {

using Code = EntryProblemCode;

EntryContext on(int below, std::size_t rounds_there = 0) {
    EntryContext context;
    context.below = below;
    context.rounds_there = rounds_there;
    return context;
}

std::vector<int> counts(const RoundEntry& entry) {
    std::vector<int> all;
    for (const Round& round : entry.rounds) all.push_back(std::get<WorkedEvenly>(round.working).stitches);
    return all;
}

struct Understood {
    std::string text;
    int below;
    std::vector<int> counts;
};

TEST(RoundEntry, IsUnderstood) {
    const std::vector<Understood> cases{
        {"", 0, {}},
        {" ,;\n\t ", 0, {}},
        {"6", 0, {6}},
        {"6, 12, 18, 24x4, 18", 0, {6, 12, 18, 24, 24, 24, 24, 18}},
        {"6 12 18", 0, {6, 12, 18}},
        {"6\r\n12\n18", 0, {6, 12, 18}},
        {"6;12,,18,", 0, {6, 12, 18}},
        {"+6x4", 6, {12, 18, 24, 30}},
        {"6, +6x2, =x3, -6", 0, {6, 12, 18, 18, 18, 18, 12}},
        {"=", 30, {30}},
        {"=x5", 18, {18, 18, 18, 18, 18}},
        {"24 x 4", 0, {24, 24, 24, 24}},
        {"24*2 24X2 24\u00d72", 0, {24, 24, 24, 24, 24, 24}},
        {"\u22126", 18, {12}},
        {"\u20136x2, \u2013 1", 18, {12, 6, 5}},
        {"+ 6, - 6", 6, {12, 6}},
        {"200000", 0, {200'000}},
        {"12\u00a018", 0, {12, 18}},
        {"-5", 6, {1}},
    };
    for (const Understood& expected : cases) {
        const RoundEntry entry = parse_round_entry(expected.text, on(expected.below));
        EXPECT_EQ(counts(entry), expected.counts) << expected.text;
        EXPECT_EQ(entry.problems, std::vector<EntryProblem>{}) << expected.text;
    }
}

struct Misunderstood {
    std::string text;
    int below;
    std::vector<int> counts;
    EntryProblem problem;
};

TEST(RoundEntry, ProblemsHaveTheirPlaceAndTheRestIsStillUnderstood) {
    const std::vector<Misunderstood> cases{
        {"6, twelve, 18", 0, {6, 18}, {Code::expected_count, {1, 4, 1}, 0}},
        {"6, +, 18", 0, {6, 18}, {Code::expected_count, {1, 5, 1}, 0}},
        {"6, 12x, 18", 0, {6, 18}, {Code::expected_repeat, {1, 7, 1}, 0}},
        {"6, 12x", 0, {6}, {Code::expected_repeat, {1, 7, 0}, 0}},
        {"6, 12x0, 18", 0, {6, 18}, {Code::expected_repeat, {1, 8, 1}, 0}},
        {"x4", 6, {}, {Code::expected_count, {1, 1, 1}, 0}},
        {"6-12, 18", 0, {18}, {Code::expected_separator, {1, 2, 1}, 0}},
        {"24x4x2", 0, {}, {Code::expected_separator, {1, 5, 1}, 0}},
        {"6.5", 0, {}, {Code::expected_separator, {1, 2, 1}, 0}},
        {"6\n12\n  +q", 0, {6, 12}, {Code::expected_count, {3, 4, 1}, 0}},
        {"\u00e9\u00e9 6 b", 0, {6}, {Code::expected_count, {1, 1, 1}, 0}},
        {"\u22126x\u00e9", 12, {}, {Code::expected_repeat, {1, 4, 1}, 0}},
        {"+6", 0, {}, {Code::nothing_below, {1, 1, 2}, 0}},
        {"=x5, 6", 0, {6}, {Code::nothing_below, {1, 1, 3}, 0}},
        {"-6", 6, {}, {Code::count_too_small, {1, 1, 2}, 6}},
        {"6, -2x3", 0, {6, 4, 2}, {Code::count_too_small, {1, 4, 4}, 2}},
        {"0", 6, {}, {Code::count_too_small, {1, 1, 1}, 6}},
        {"200001", 0, {}, {Code::count_too_large, {1, 1, 6}, 200'000}},
        {"99999999999999999999999", 0, {}, {Code::count_too_large, {1, 1, 23}, 200'000}},
    };
    for (const Misunderstood& expected : cases) {
        const RoundEntry entry = parse_round_entry(expected.text, on(expected.below));
        EXPECT_EQ(counts(entry), expected.counts) << expected.text;
        ASSERT_FALSE(entry.problems.empty()) << expected.text;
        EXPECT_EQ(entry.problems.front(), expected.problem) << expected.text;
    }
}

TEST(RoundEntry, StopsAtTheMostRounds) {
    EXPECT_EQ(parse_round_entry("6x2000", on(0)).problems.size(), 0);
    const RoundEntry over = parse_round_entry("6x999999999999", on(0, 1'990));
    EXPECT_EQ(over.rounds.size(), 10);
    ASSERT_EQ(over.problems.size(), 1);
    EXPECT_EQ(over.problems.front(), (EntryProblem{Code::too_many_rounds, {1, 1, 14}, 2'000}));
}

TEST(RoundEntry, TakesStitchAndYarnFromTheRoundItGoesOnFrom) {
    EntryContext context = on(6);
    context.like.working =
        WorkedEvenly{6, StitchKind::half_double_crochet, LoopPart::back, Spacing::staggered};
    context.like.yarn = 2;
    context.like.lies_flat = true;
    context.like.note = "eyes here";
    const RoundEntry entry = parse_round_entry("+6", context);
    ASSERT_EQ(entry.rounds.size(), 1);
    const Round expected{
        WorkedEvenly{12, StitchKind::half_double_crochet, LoopPart::back, Spacing::staggered}, 2, false, ""};
    EXPECT_EQ(entry.rounds.front(), expected);
}

TEST(RoundEntry, OneCountByItself) {
    using Kind = CountEntry::Kind;
    struct Typed {
        const char* text;
        CountEntry entry;
    };
    for (const auto& [text, entry] : std::vector<Typed>{
             {"30", {Kind::count, 30, 1}},
             {" 7\t", {Kind::count, 7, 1}},
             {"+6", {Kind::change, 6, 1}},
             {"+0", {Kind::change, 0, 1}},
             {"- 6", {Kind::change, -6, 1}},
             {"\u22126", {Kind::change, -6, 1}},
             {"\u20136", {Kind::change, -6, 1}},
             {"=", {Kind::change, 0, 1}},
             {"24x4", {Kind::count, 24, 4}},
             {"24 X 4", {Kind::count, 24, 4}},
             {"24*4", {Kind::count, 24, 4}},
             {"24\u00d74", {Kind::count, 24, 4}},
             {"+6 x 3", {Kind::change, 6, 3}},
             {"\u20136\u00d73", {Kind::change, -6, 3}},
             {"=x5", {Kind::change, 0, 5}},
             {"200000x2000", {Kind::count, 200'000, 2'000}},
             {"-200000", {Kind::change, -200'000, 1}},
         })
        EXPECT_EQ(parse_count_entry(text), entry) << text;
    for (const char* text :
         {"",    " ",  "0",     "0x2",    "six",     "+",       "--6",    "+-6",         "6x",
          "6x0", "x6", "6x4x2", "200001", "+200001", "-200001", "6x2001", "99999999999", "6x99999999999",
          "1.5", "=6", "6,",    ",6",     "6;",      "6 12",    "6\n12"})
        EXPECT_EQ(parse_count_entry(text), std::nullopt) << text;
}

// What can be typed for one round is what can be typed among others.
TEST(RoundEntry, OneCountIsWhatItIsInALine) {
    const std::string signs[] = {"6", "12", "+", "-", "\u2013", "\u2212", "=", "x", "*", "\u00d7", " ", "2"};
    std::mt19937 random(17);
    for (int i = 0; i < 4'000; ++i) {
        std::string text;
        for (auto parts = 1 + random() % 4; parts > 0; --parts) text += signs[random() % std::size(signs)];
        const auto one = parse_count_entry(text);
        if (!one || one->value < -1'000 || one->value > 1'000 || one->times > 50) continue;
        std::vector<int> expected;
        for (int below = 60'000, k = 0; k < one->times; ++k)
            expected.push_back(below =
                                   one->kind == CountEntry::Kind::count ? one->value : below + one->value);
        const RoundEntry line = parse_round_entry(text, on(60'000));
        EXPECT_EQ(counts(line), expected) << text;
        EXPECT_TRUE(line.problems.empty()) << text;
    }
}

TEST(RoundEntry, WordsAreToldFromCounts) {
    for (const char* text : {"", "6, 12", "+6x4\n=x5", "24\u00d74"})
        EXPECT_TRUE(looks_like_round_entry(text)) << text;
    for (const char* text : {"sc 6", "6 sc", "R1: 6", "[inc] 6 times", "\u00e9"}) {
        EXPECT_FALSE(looks_like_round_entry(text)) << text;
    }
}

TEST(RoundEntry, WrittenCountsComeBack) {
    EXPECT_EQ(write_round_entry(std::vector<int>{6, 12, 18, 18}), "6, 12, 18x2");
    EXPECT_EQ(write_round_entry(std::vector<int>{}), "");
    std::mt19937 random(3);
    for (int i = 0; i < 500; ++i) {
        std::vector<int> written(random() % 12);
        for (int& count : written) count = static_cast<int>(random() % 4) * 6 + 6;
        EXPECT_EQ(counts(parse_round_entry(write_round_entry(written), on(0))), written);
    }
}

// Any bytes at all give rounds within the limits and problems with places.
TEST(RoundEntry, AnyBytesAreTaken) {
    const std::string signs = "0123456789+-=x*,; \n\t\xC3\x97\xE2\x88\x92q\xff";
    std::mt19937 random(11);
    for (int i = 0; i < 20'000; ++i) {
        std::string text(random() % 30, ' ');
        for (char& c : text) c = signs[random() % signs.size()];
        const RoundEntry entry = parse_round_entry(text, on(static_cast<int>(random() % 30)));
        ASSERT_LE(entry.rounds.size(), max_rounds_per_piece);
        for (const int count : counts(entry)) ASSERT_TRUE(count >= 1 && count <= 200'000) << text;
        for (const EntryProblem& problem : entry.problems) ASSERT_GE(problem.where.column, 1) << text;
    }
}

}  // namespace
}  // namespace roundwright
