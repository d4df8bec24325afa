#include "render/wording/printable.h"

namespace roundwright {
namespace {

/// Accents over one letter; no script stacks more, and a heap of them would run off the page.
constexpr int most_stacked_marks = 6;

bool is_stacked(QChar c) {
    return c.category() == QChar::Mark_NonSpacing || c.category() == QChar::Mark_Enclosing;
}

/// What overrides or embeds the direction of what follows, beyond the maker's own text.
bool turns_text(QChar c) {
    return (c.unicode() >= 0x202A && c.unicode() <= 0x202E) ||
           (c.unicode() >= 0x2066 && c.unicode() <= 0x2069);
}

/// Every line end as one, a tab as a space, a control character as nothing.
QChar printed_as(QChar c) {
    if (c == QLatin1Char('\n') || c == QChar::LineSeparator || c == QChar::ParagraphSeparator) {
        return QLatin1Char('\n');
    }
    if (c == QLatin1Char('\t')) return QLatin1Char(' ');
    return c.category() == QChar::Other_Control || turns_text(c) ? QChar() : c;
}

}  // namespace

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

QString printable(const QString& text) {
    QString clean;
    clean.reserve(text.size());
    for (const QChar c : text) {
        const QChar shown = printed_as(c);
        if (!shown.isNull()) clean += shown;
    }
    return without_stacked_marks(clean);
}

QString printable_line(const QString& text) { return printable(text).simplified(); }
QString printable_name(const QString& name) {
    return printable(name).replace(QLatin1Char('\n'), QLatin1Char(' '));
}
QString printable_line(const std::string& utf8) { return printable_line(QString::fromStdString(utf8)); }

}  // namespace roundwright
