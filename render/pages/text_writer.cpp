#include "render/pages/text_writer.h"

#include <algorithm>

#include <QRegularExpression>

namespace roundwright::render {
namespace {

constexpr qsizetype line_length = 78;

/// Breaks at spaces; a word longer than a line keeps a line to itself.
QStringList wrapped(const QString& text, qsizetype width) {
    QStringList lines;
    QString line;
    for (const QString& word : text.split(QLatin1Char(' '), Qt::SkipEmptyParts)) {
        if (!line.isEmpty() && line.size() + 1 + word.size() > width) {
            lines += line;
            line.clear();
        }
        line += line.isEmpty() ? word : QLatin1Char(' ') + word;
    }
    lines += line;
    return lines;
}

QList<qsizetype> column_widths(const QStringList& head, const QList<QStringList>& rows) {
    QList<qsizetype> widths;
    for (qsizetype i = 0; i < head.size(); ++i) {
        qsizetype width = head[i].size();
        for (const QStringList& row : rows) width = std::max(width, row.value(i).size());
        widths += width;
    }
    return widths;
}

QString padded(const QStringList& cells, const QList<qsizetype>& widths) {
    QString line;
    for (qsizetype i = 0; i < cells.size(); ++i) line += cells[i].leftJustified(widths[i] + 2);
    while (line.endsWith(QLatin1Char(' '))) line.chop(1);
    return line;
}

QString markdown_row(const QStringList& cells) {
    QString line = QStringLiteral("|");
    for (const QString& cell : cells)
        line += QLatin1Char(' ') + markdown_escaped(cell) + QStringLiteral(" |");
    return line + QLatin1Char('\n');
}

}  // namespace

QString markdown_escaped(const QString& text) {
    static const QString marks = QStringLiteral("\\`*_[]<>|&~");
    static const QRegularExpression at_start(QStringLiteral("^(\\d{1,9}(?=[.)])|(?=[#+=-]))"));
    QString escaped;
    for (const QChar c : text) {
        if (marks.contains(c)) escaped += QLatin1Char('\\');
        escaped += c;
    }
    return escaped.replace(at_start, QStringLiteral("\\1\\"));
}

QString TextWriter::set(const QString& text) const { return plain() ? text : markdown_escaped(text); }

void TextWriter::underlined(const QString& text, QChar line) {
    text_ +=
        text + QLatin1Char('\n') + QString(std::min(text.size(), line_length), line) + QStringLiteral("\n\n");
}

void TextWriter::title(const QString& text) {
    if (plain()) return underlined(text, QLatin1Char('='));
    text_ += QStringLiteral("# ") + set(text) + QStringLiteral("\n\n");
}

void TextWriter::section(const QString& text) {
    if (plain()) return underlined(text, QLatin1Char('-'));
    text_ += QStringLiteral("## ") + set(text) + QStringLiteral("\n\n");
}

void TextWriter::part(const QString& text) {
    if (plain()) return underlined(text, QLatin1Char('~'));
    text_ += QStringLiteral("### ") + set(text) + QStringLiteral("\n\n");
}

void TextWriter::put(const QString& first, const QString& others, const QString& text) {
    const QStringList lines = plain() ? wrapped(text, line_length - first.size()) : QStringList{set(text)};
    for (qsizetype i = 0; i < lines.size(); ++i) {
        text_ += (i == 0 ? first : others) + lines[i] + QLatin1Char('\n');
    }
}

void TextWriter::paragraph(const QString& text) {
    if (text.isEmpty()) return;
    put({}, {}, text);
    text_ += QLatin1Char('\n');
}

void TextWriter::items(const QStringList& texts) {
    for (const QString& text : texts) put(QStringLiteral("- "), QStringLiteral("  "), text);
    if (!texts.isEmpty()) text_ += QLatin1Char('\n');
}

void TextWriter::steps(const QStringList& texts) {
    for (qsizetype i = 0; i < texts.size(); ++i) {
        const QString number = QStringLiteral("%1. ").arg(i + 1);
        put(number, QString(number.size(), QLatin1Char(' ')), texts[i]);
    }
    if (!texts.isEmpty()) text_ += QLatin1Char('\n');
}

void TextWriter::lines(const QStringList& texts) {
    if (!plain()) return items(texts);
    for (const QString& text : texts) put({}, QStringLiteral("    "), text);
    if (!texts.isEmpty()) text_ += QLatin1Char('\n');
}

void TextWriter::table(const QStringList& head, const QList<QStringList>& rows) {
    if (plain()) return plain_table(head, rows);
    text_ += markdown_row(head) + QLatin1Char('|') + QStringLiteral(" --- |").repeated(head.size()) +
             QLatin1Char('\n');
    for (const QStringList& row : rows) text_ += markdown_row(row);
    text_ += QLatin1Char('\n');
}

/// Columns under each other; where they would be wider than a line, a paragraph for every row.
void TextWriter::plain_table(const QStringList& head, const QList<QStringList>& rows) {
    const QList<qsizetype> widths = column_widths(head, rows);
    qsizetype last_column = 0;
    for (qsizetype i = 0; i + 1 < widths.size(); ++i) last_column += widths[i] + 2;
    if (last_column + 20 > line_length) {
        for (const QStringList& row : rows) put({}, QStringLiteral("    "), row.join(QStringLiteral(": ")));
        text_ += QLatin1Char('\n');
        return;
    }
    text_ += padded(head, widths) + QLatin1Char('\n');
    for (const QStringList& row : rows) {
        const QString before = padded(row.mid(0, row.size() - 1), widths).leftJustified(last_column);
        put(before, QString(last_column, QLatin1Char(' ')), row.last());
    }
    text_ += QLatin1Char('\n');
}

}  // namespace roundwright::render
