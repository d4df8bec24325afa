#pragma once

#include <cstdint>
#include <initializer_list>
#include <string>
#include <string_view>

namespace roundwright::testing {

/// Results written as lines of words and numbers that a person can read and check, to be held against what
/// was recorded before. Numbers have eight significant digits; what is below 1e-9 is nought.
class RecordedText {
  public:
    RecordedText& heading(std::string_view words);
    /// Begins a line.
    RecordedText& line(std::string_view name);
    RecordedText& operator<<(double value);
    RecordedText& operator<<(int value);
    RecordedText& operator<<(long value);
    RecordedText& operator<<(std::size_t value);
    RecordedText& operator<<(std::uint32_t value);
    RecordedText& operator<<(bool value);
    RecordedText& operator<<(std::string_view word);
    RecordedText& operator<<(const char* word) { return *this << std::string_view(word); }
    template <class Values>
    RecordedText& each(const Values& values) {
        for (const auto& value : values) *this << value;
        return *this;
    }
    [[nodiscard]] const std::string& text() const { return text_; }

  private:
    std::string text_;
};

/// How far two numbers may lie apart and still be the same result: the compilers that the program is built
/// with round differently, and a solve ends within 1e-9 of its scale.
struct RecordedTolerance {
    double relative = 2e-6;
    double absolute = 2e-6;
};

/// Fails where `now` differs from the file of this name in tests/core/recorded: line by line, words exactly
/// and numbers within the tolerance. With ROUNDWRIGHT_RECORD=1 in the environment the file is written anew
/// instead (read what `git diff` says then).
void expect_as_recorded(const std::string& file, const RecordedText& now, RecordedTolerance tolerance = {});

}  // namespace roundwright::testing
