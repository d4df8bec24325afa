#include <fstream>
#include <gtest/gtest.h>
#include <string>
#include <vector>

#include "core/language/pattern/read_pattern.h"
#include "core/rounds/piece_graph.h"

namespace roundwright {
namespace {

// Patterns as people write them, in tables of text beside this file that a person can read and check. Each
// case: "== what is told apart", the text as it stands, "-> counts of each piece", and each finding as
// "-> line:column code". A line that begins with "%%" is a comment.

using Lines = std::vector<std::string>;

struct Case {
    std::string name;
    std::string text;
    std::string counts;
    Lines findings;
};

std::vector<Case> cases_of(const std::string& file) {
    std::ifstream table(std::string(HANDS_FOLDER) + "/" + file);
    std::vector<Case> cases;
    for (std::string line; std::getline(table, line);) {
        const bool expected = line.starts_with("-> ");
        if (line.starts_with("== "))
            cases.push_back({line.substr(3), "", "", {}});
        else if (expected && line.find('_') == std::string::npos)
            cases.back().counts = line.substr(3);
        else if (expected)
            cases.back().findings.push_back(line.substr(3));
        else if (!line.starts_with("%%"))
            cases.back().text += line + "\n";
    }
    return cases;
}

std::string counts_of(const ReadPattern& read) {
    std::string all;
    for (const Piece& piece : read.pieces) {
        all += all.empty() ? "" : "; ";
        std::string counts;
        for (const int count : stitch_counts(piece_graph(piece).graph))
            counts += (counts.empty() ? "" : " ") + std::to_string(count);
        all += counts;
    }
    return all;
}

Lines findings_of(const ReadPattern& read) {
    Lines all;
    for (const ReadDiagnostic& d : read.diagnostics)
        all.push_back(std::to_string(d.where.line) + ":" + std::to_string(d.where.column) + " " +
                      std::string(read_code_name(d.code)));
    return all;
}

class Hands : public ::testing::TestWithParam<const char*> {};

TEST_P(Hands, AreRead) {
    const std::vector<Case> cases = cases_of(GetParam());
    ASSERT_FALSE(cases.empty()) << GetParam();
    for (const Case& one : cases) {
        const ReadPattern read = read_pattern(one.text);
        EXPECT_EQ(counts_of(read), one.counts) << one.name << "\n" << one.text;
        EXPECT_EQ(findings_of(read), one.findings) << one.name << "\n" << one.text;
        for (const Piece& piece : read.pieces) EXPECT_TRUE(piece_graph(piece).problems.empty()) << one.name;
    }
}

INSTANTIATE_TEST_SUITE_P(Tables, Hands,
                         ::testing::Values("hands.txt", "bad_rounds.txt", "whole_patterns.txt"));

}  // namespace
}  // namespace roundwright
