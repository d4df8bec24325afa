#include "render/wording/printable.h"

namespace roundwright {
namespace {

/// Accents over one letter; no script stacks more, and a heap of them would run off the page.
constexpr int most_stacked_marks = 6;

bool is_stacked(QChar c) {
    return c.category() == QChar::Mark_NonSpacing || c.category() == QChar::Mark_Enclosing;
}

/// Every line end as one, a tab as a space, a control character as nothing.
QChar printed_as(QChar c) {
    if (c == QLatin1Char('\n') || c == QChar::LineSeparator || c == QChar::ParagraphSeparator) {
        return QLatin1Char('\n');
    }
    if (c == QLatin1Char('\t')) return QLatin1Char(' ');
    return c.category() == QChar::Other_Control ? QChar() : c;
}

}  // namespace

QString printable(const QString& text) {
    QString clean;
    clean.reserve(text.size());
    int marks = 0;
    for (const QChar c : text) {
        const QChar shown = printed_as(c);
        marks = is_stacked(c) ? marks + 1 : 0;
        if (!shown.isNull() && marks <= most_stacked_marks) clean += shown;
    }
    return clean;
}

QString printable_line(const QString& text) { return printable(text).simplified(); }
QString printable_line(const std::string& utf8) { return printable_line(QString::fromStdString(utf8)); }

}  // namespace roundwright
