#include "tests/support/recorded_text.h"

#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <gtest/gtest.h>
#include <optional>
#include <sstream>
#include <vector>

namespace roundwright::testing {
namespace {

constexpr int most_differences_shown = 12;

std::vector<std::string> lines_of(const std::string& text) {
    std::vector<std::string> lines;
    std::istringstream in(text);
    for (std::string line; std::getline(in, line);) lines.push_back(line);
    return lines;
}

std::vector<std::string> words_of(const std::string& line) {
    std::vector<std::string> words;
    std::istringstream in(line);
    for (std::string word; in >> word;) words.push_back(word);
    return words;
}

std::optional<double> number(const std::string& word) {
    char* end = nullptr;
    const double value = std::strtod(word.c_str(), &end);
    if (end == word.c_str() || *end != '\0') return std::nullopt;
    return value;
}

bool same_word(const std::string& a, const std::string& b, const RecordedTolerance& tolerance) {
    if (a == b) return true;
    const auto x = number(a), y = number(b);
    if (!x || !y) return false;
    const double allowed =
        std::max(tolerance.absolute, tolerance.relative * std::max(std::abs(*x), std::abs(*y)));
    return std::abs(*x - *y) <= allowed;
}

bool same_line(const std::string& a, const std::string& b, const RecordedTolerance& tolerance) {
    const auto x = words_of(a), y = words_of(b);
    if (x.size() != y.size()) return false;
    for (std::size_t i = 0; i < x.size(); ++i)
        if (!same_word(x[i], y[i], tolerance)) return false;
    return true;
}

std::string differences(const std::string& recorded, const std::string& now,
                        const RecordedTolerance& tolerance) {
    const auto then = lines_of(recorded), today = lines_of(now);
    std::string told, heading;
    int shown = 0;
    for (std::size_t i = 0; i < std::max(then.size(), today.size()); ++i) {
        const std::string a = i < then.size() ? then[i] : "(no line)",
                          b = i < today.size() ? today[i] : "(no line)";
        if (a.starts_with("## ")) heading = a;
        if (same_line(a, b, tolerance)) continue;
        if (++shown > most_differences_shown) return told + "and more\n";
        told +=
            heading + ", line " + std::to_string(i + 1) + "\n  recorded: " + a + "\n  now:      " + b + "\n";
    }
    return told;
}

std::string read_file(const std::string& path) {
    std::ifstream file(path, std::ios::binary);
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

}  // namespace

RecordedText& RecordedText::heading(std::string_view words) {
    text_ += text_.empty() ? "## " : "\n\n## ";
    text_ += words;
    return *this;
}

RecordedText& RecordedText::line(std::string_view name) {
    if (!text_.empty()) text_ += '\n';
    text_ += name;
    return *this;
}

RecordedText& RecordedText::operator<<(double value) {
    char digits[40];
    std::snprintf(digits, sizeof digits, " %.8g", std::abs(value) < 1e-9 ? 0.0 : value);
    text_ += digits;
    return *this;
}

RecordedText& RecordedText::operator<<(int value) { return *this << static_cast<long>(value); }

RecordedText& RecordedText::operator<<(long value) {
    text_ += ' ' + std::to_string(value);
    return *this;
}

RecordedText& RecordedText::operator<<(std::size_t value) {
    text_ += ' ' + std::to_string(value);
    return *this;
}

RecordedText& RecordedText::operator<<(std::uint32_t value) {
    return *this << static_cast<std::size_t>(value);
}

RecordedText& RecordedText::operator<<(bool value) { return *this << (value ? "yes" : "no"); }

RecordedText& RecordedText::operator<<(std::string_view word) {
    text_ += ' ';
    text_ += word;
    return *this;
}

void expect_as_recorded(const std::string& file, const RecordedText& now, RecordedTolerance tolerance) {
    const std::string path = std::string(RECORDED) + "/" + file;
    if (const char* record = std::getenv("ROUNDWRIGHT_RECORD"); record != nullptr && *record == '1') {
        std::ofstream(path, std::ios::binary) << now.text() << '\n';
        return;
    }
    const std::string told = differences(read_file(path), now.text(), tolerance);
    EXPECT_EQ(told, "") << file
                        << " differs. If the change is meant, run core_tests with ROUNDWRIGHT_RECORD=1, "
                        << "read the difference, and commit it with its reason.";
}

}  // namespace roundwright::testing
