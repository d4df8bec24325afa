#include <algorithm>
#include <gtest/gtest.h>
#include <sstream>
#include <vector>

#include "core/document/json_document.h"
#include "tests/core/language/round/asked_again.h"

namespace roundwright::test {
namespace {

constexpr const char* faults[] = {"not a toy", "broken off",      "damaged",     "too large",
                                  "too deep",  "too many values", "wrong value", "doubled key"};

std::vector<std::string> lines_of(const std::string& text) {
    std::vector<std::string> lines;
    std::istringstream in(text);
    for (std::string line; std::getline(in, line);) lines.push_back(line);
    return lines;
}

/// Answers with what is written of a document that was read: all of the first, and of the others the lines
/// that the first has not.
class Answers {
  public:
    void operator()(const Question& question, testing::RecordedText& text) {
        try {
            tell(read_document(question.text), text);
        } catch (const DocumentError& error) {
            text.line("  cannot be read:")
                << faults[static_cast<int>(error.fault())] << "'" + error.path() + "'" << error.line()
                << error.column() << shown(error.what());
        }
    }

  private:
    void tell(const ReadDocument& read, testing::RecordedText& text) {
        text.line("  read: version") << read.version << (read.newer ? "newer" : "");
        for (const UnreadKey& key : read.unread)
            text.line("  kept:") << key.place << "'" + key.likely + "'" << key.more;
        const auto lines = lines_of(write_document(read.toy));
        for (const std::string& line : lines)
            if (std::find(first_.begin(), first_.end(), line) == first_.end()) text.line("  |" + shown(line));
        if (first_.empty()) first_ = lines;
        text.line("  lines") << lines.size();
    }

    std::vector<std::string> first_;
};

TEST(RecordedDocuments, AreReadAndWrittenAsBefore) { expect_answers_as_recorded("documents.txt", Answers()); }

}  // namespace
}  // namespace roundwright::test
