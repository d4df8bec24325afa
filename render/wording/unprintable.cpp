#include "render/wording/unprintable.h"

namespace roundwright {
namespace {

/// Accents over one letter; no script stacks more, and a heap of them would run off the page.
constexpr int most_stacked_marks = 6;

bool is_stacked(QChar c) {
    return c.category() == QChar::Mark_NonSpacing || c.category() == QChar::Mark_Enclosing;
}

bool is_joiner(QChar c) { return c == QChar(0x200C) || c == QChar(0x200D); }

bool joins(QChar c) { return c.unicode() > 0x7E && !is_unprintable(c.unicode()); }

bool is_line_end(QChar c) {
    const char16_t u = c.unicode();
    return (u >= 0x0A && u <= 0x0D) || u == 0x85 || u == 0x2028 || u == 0x2029;
}

}  // namespace

bool is_unprintable(char32_t u) {
    return u < 0x20 || (u >= 0x7F && u < 0xA0) || u == 0x061C || (u >= 0x200B && u <= 0x200F) ||
           (u >= 0x2028 && u <= 0x202E) || (u >= 0x2061 && u <= 0x206F) || u == 0xFEFF;
}

bool joins_letters(const QString& text, qsizetype at) {
    return is_joiner(text[at]) && at > 0 && at + 1 < text.size() && joins(text[at - 1]) &&
           joins(text[at + 1]);
}

QString with_line_feeds(QString text) {
    text.replace(QLatin1String("\r\n"), QLatin1String("\n"));
    for (QChar& c : text) {
        if (is_line_end(c)) c = u'\n';
    }
    return text;
}

QString without_stacked_marks(const QString& text) {
    QString clean;
    clean.reserve(text.size());
    int marks = 0;
    for (const QChar c : text) {
        marks = is_stacked(c) ? marks + 1 : 0;
        if (marks <= most_stacked_marks) clean += c;
    }
    return clean;
}

}  // namespace roundwright
