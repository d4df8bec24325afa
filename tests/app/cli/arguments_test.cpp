#include "app/cli/arguments.h"

#include <gtest/gtest.h>

namespace roundwright::app {
namespace {

constexpr Option options[] = {
    {"json", 0, nullptr, nullptr, ""},
    {"units", 0, "UNIT", "mm|in", ""},
    {"output", 'o', "FILE", nullptr, ""},
};

ParsedArguments parse(const QString& line) {
    return parse_arguments(line.split(QLatin1Char(' '), Qt::SkipEmptyParts), options);
}

QString problem(const QString& line) { return parse(line).problem.value_or(QString()); }

TEST(Arguments, OptionsAndOperandsInAnyOrder) {
    const Arguments arguments = parse(QStringLiteral("a --units in b -o x --json c")).arguments;
    EXPECT_EQ(arguments.operands(), (QStringList{"a", "b", "c"}));
    EXPECT_EQ(arguments.value("units"), "in");
    EXPECT_EQ(arguments.value("output"), "x");
    EXPECT_TRUE(arguments.has("json"));
    EXPECT_EQ(parse(QStringLiteral("--output=a=b")).arguments.value("output"), "a=b");
    EXPECT_EQ(parse(QStringLiteral("a")).arguments.value("units", "mm"), "mm");
}

TEST(Arguments, AfterTwoDashesAllAreOperands) {
    const ParsedArguments parsed = parse(QStringLiteral("--json -- --units -o"));
    EXPECT_EQ(parsed.problem, std::nullopt);
    EXPECT_EQ(parsed.arguments.operands(), (QStringList{"--units", "-o"}));
    EXPECT_EQ(parse(QStringLiteral("-")).arguments.operands(), QStringList{"-"});
}

TEST(Arguments, WhatIsNotUnderstoodIsSaid) {
    EXPECT_EQ(problem("--jason"), "There is no option --jason.");
    EXPECT_EQ(problem("-q"), "There is no option -q.");
    EXPECT_EQ(problem("--units ft"), "--units takes mm or in, not \"ft\".");
    EXPECT_EQ(problem("a --output"), "--output needs a value: FILE.");
    EXPECT_EQ(problem("--json=yes"), "--json takes no value.");
    EXPECT_EQ(problem("--first --second"), "There is no option --first.");
    EXPECT_EQ(problem("--json a"), "");
}

}  // namespace
}  // namespace roundwright::app
