#include <fstream>
#include <gtest/gtest.h>
#include <string>
#include <vector>

#include "core/language/round/read_round.h"

namespace roundwright {
namespace {

// The table stands beside this file, for a person to read and check.
std::vector<std::string> columns_of(const std::string& line) {
    const std::string bar = " | ";
    std::vector<std::string> columns;
    std::size_t from = 0;
    for (std::size_t at = line.find(bar); at != std::string::npos; at = line.find(bar, from)) {
        columns.push_back(line.substr(from, at - from));
        from = at + bar.size();
    }
    columns.push_back(line.substr(std::min(from, line.size())));
    return columns;
}

ReadRound read_over(int below, const std::string& words) {
    RoundSetting setting;
    setting.work.loops_below = below;
    YarnTable yarns;
    return read_round(words, setting, yarns);
}

TEST(FaultyRounds, AreNamedWithPlaceAndMend) {
    std::ifstream table(FAULTY_ROUNDS);
    int rows = 0;
    for (std::string line; std::getline(table, line);) {
        if (line.starts_with("%%")) continue;
        const std::vector<std::string> columns = columns_of(line);
        ASSERT_EQ(columns.size(), 4u) << line;
        const int below = std::stoi(columns[0]);
        const ReadRound read = read_over(below, columns[1]);
        ASSERT_FALSE(read.diagnostics.empty()) << line;
        const ReadDiagnostic& first = read.diagnostics[0];
        EXPECT_EQ(std::string(read_code_name(first.code)) + " " + std::to_string(first.where.column) + "+" +
                      std::to_string(first.where.length),
                  columns[2])
            << line;
        EXPECT_EQ(first.mends.empty() ? "" : mended(columns[1], first.mends[0]), columns[3]) << line;
        for (const Mend& mend : first.mends) {
            const ReadRound again = read_over(below, mended(columns[1], mend));
            EXPECT_TRUE(again.proved()) << line << "\n" << mended(columns[1], mend);
            EXPECT_EQ(again.stitches, mend.stitches) << line;
        }
        ++rows;
    }
    EXPECT_GT(rows, 140);
}

}  // namespace
}  // namespace roundwright
