#pragma once

#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "tests/support/recorded_text.h"

namespace roundwright::test {

/// A question of a recorded table and where it is asked: "## 12 us" and the words after ">", a line each.
/// What came of it stands below. To ask something more, add a heading and its words to the file and record
/// it.
struct Question {
    std::string heading;
    std::string text;  ///< lines parted by "\n"
};

/// The questions that stand in a file of tests/core/recorded.
[[nodiscard]] std::vector<Question> questions_of(const std::string& file);

/// Asks every question of the file again and holds the answers against those recorded.
void expect_answers_as_recorded(const std::string& file,
                                const std::function<void(const Question&, testing::RecordedText&)>& answer);

/// A text on one line, in which nothing is hidden: line ends, tabs and bytes that are no letters are escaped.
[[nodiscard]] std::string shown(std::string_view text);

}  // namespace roundwright::test
