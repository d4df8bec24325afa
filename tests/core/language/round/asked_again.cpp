#include "tests/core/language/round/asked_again.h"

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

}  // namespace

std::string shown(std::string_view text) {
    std::string all;
    for (const char c : text) {
        const auto byte = static_cast<unsigned char>(c);
        if (c == '\n')
            all += "\\n";
        else if (c == '\t')
            all += "\\t";
        else if (c == '\r')
            all += "\\r";
        else if (c == '\\')
            all += "\\\\";
        else if (byte < 0x20 || byte == 0x7F) {
            constexpr const char* digits = "0123456789ABCDEF";
            all += {'\\', 'x', digits[byte / 16], digits[byte % 16]};
        } else
            all += c;
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

void expect_answers_as_recorded(
    const std::string& file,
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
