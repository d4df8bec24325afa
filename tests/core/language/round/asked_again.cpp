#include "tests/core/language/round/asked_again.h"

#include <algorithm>
#include <fstream>
#include <gtest/gtest.h>

namespace roundwright::test {
namespace {

std::string plain(std::string_view shown) {
    std::string text;
    for (std::size_t i = 0; i < shown.size(); ++i) {
        if (shown[i] != '\\' || i + 1 == shown.size()) {
            text += shown[i];
            continue;
        }
        const char sign = shown[++i];
        if (sign == 'x') {
            text += static_cast<char>(std::stoi(std::string(shown.substr(i + 1, 2)), nullptr, 16));
            i += 2;
        } else {
            text += sign == 't' ? '\t' : sign == 'r' ? '\r' : sign == 'n' ? '\n' : sign;
        }
    }
    return text;
}

// Bytes of the letter or sign of UTF-8 that stands at `at`; 0: none that can be shown as it is.
std::size_t letter_at(std::string_view text, std::size_t at) {
    const auto byte = [&](std::size_t i) {
        return i < text.size() ? static_cast<unsigned char>(text[i]) : 0u;
    };
    const unsigned first = byte(at);
    if (first < 0x80) return first >= 0x20 && first != 0x7F && first != '\\' ? 1 : 0;
    const std::size_t bytes = first >= 0xF0 && first < 0xF5   ? 4
                              : first >= 0xE0 && first < 0xF0 ? 3
                              : first >= 0xC2 && first < 0xE0 ? 2
                                                              : 0;
    for (std::size_t i = 1; i < bytes; ++i)
        if ((byte(at + i) & 0xC0u) != 0x80u) return 0;
    return bytes;
}

std::string escaped(unsigned char byte) {
    constexpr const char* digits = "0123456789ABCDEF";
    if (byte == '\n') return "\\n";
    if (byte == '\t') return "\\t";
    if (byte == '\r') return "\\r";
    if (byte == '\\') return "\\\\";
    return {'\\', 'x', digits[byte / 16], digits[byte % 16]};
}

}  // namespace

std::string shown(std::string_view text) {
    std::string all;
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t letter = letter_at(text, at);
        const auto byte = static_cast<unsigned char>(text[at]);
        if (letter > 0)
            all += text.substr(at, letter);
        else
            all += escaped(byte);
        at += std::max<std::size_t>(letter, 1);
    }
    return all;
}

std::vector<Question> questions_of(const std::string& file) {
    std::ifstream in(std::string(RECORDED) + "/" + file, std::ios::binary);
    std::vector<Question> questions;
    int lines = 0;
    for (std::string line; std::getline(in, line);) {
        if (line.starts_with("## ")) {
            questions.push_back({line.substr(3), ""});
            lines = 0;
        } else if (line.starts_with(">") && !questions.empty()) {
            std::string& text = questions.back().text;
            if (lines++ > 0) text += '\n';
            text += plain(line.size() > 1 ? line.substr(2) : "");
        }
    }
    return questions;
}

void expect_answers_as_recorded(const std::string& file,
                                const std::function<void(const Question&, testing::RecordedText&)>& answer) {
    testing::RecordedText now;
    const std::vector<Question> questions = questions_of(file);
    EXPECT_FALSE(questions.empty()) << file;
    for (const Question& question : questions) {
        now.heading(question.heading);
        std::string_view rest = question.text;
        for (;;) {
            const std::size_t end = rest.find('\n');
            now.line("> " + shown(rest.substr(0, end)));
            if (end == std::string_view::npos) break;
            rest.remove_prefix(end + 1);
        }
        answer(question, now);
    }
    testing::expect_as_recorded(file, now);
}

}  // namespace roundwright::test
