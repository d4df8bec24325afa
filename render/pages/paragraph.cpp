#include "render/pages/paragraph.h"

#include <algorithm>

#include <QFontMetricsF>
#include <QPainter>

namespace roundwright::render {
namespace {

QTextOption option_for(Qt::Alignment alignment) {
    QTextOption option(alignment);
    option.setWrapMode(QTextOption::WrapAtWordBoundaryOrAnywhere);
    option.setTextDirection(Qt::LayoutDirectionAuto);
    option.setUseDesignMetrics(true);
    return option;
}

void set_lines(QTextLayout& layout, double width) {
    layout.beginLayout();
    for (QTextLine line = layout.createLine(); line.isValid(); line = layout.createLine()) {
        line.setLineWidth(width);
    }
    layout.endLayout();
}

/// A text so long that it could never be printed in full is cut before it is measured.
constexpr qsizetype characters_a_line = 400;

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

Paragraph::Paragraph(const QString& text, double width, ParagraphStyle style)
    : style_(std::move(style)), layout_(std::make_shared<QTextLayout>()) {
    QString set = text;
    set.replace(QLatin1Char('\n'), QChar::LineSeparator);
    if (style_.most_lines > 0) set.truncate(style_.most_lines * characters_a_line);
    layout_->setFont(style_.font);
    layout_->setTextOption(option_for(style_.alignment));
    break_lines(set, width);
}

void Paragraph::break_lines(const QString& text, double width) {
    layout_->setText(text);
    set_lines(*layout_, width);
    if (style_.most_lines == 0 || layout_->lineCount() <= style_.most_lines) return;
    const QTextLine last = layout_->lineAt(style_.most_lines - 1);
    const QString rest = text.mid(last.textStart()).replace(QChar::LineSeparator, QLatin1Char(' '));
    const QString elided = QFontMetricsF(style_.font).elidedText(rest, Qt::ElideRight, width);
    layout_->setText(text.left(last.textStart()) + elided);
    set_lines(*layout_, width);
}

double Paragraph::line_distance() const { return style_.font.pixelSize() * style_.leading; }

int Paragraph::lines() const {
    return style_.most_lines > 0 ? std::min(layout_->lineCount(), style_.most_lines) : layout_->lineCount();
}

double Paragraph::height() const { return lines() * line_distance(); }

double Paragraph::natural_width() const {
    double widest = 0;
    for (int i = 0; i < lines(); ++i) widest = std::max(widest, layout_->lineAt(i).naturalTextWidth());
    return widest;
}

double Paragraph::first_baseline() const {
    const QFontMetricsF metrics(style_.font);
    return (line_distance() + metrics.capHeight()) / 2;
}

void Paragraph::paint(QPainter& painter, QPointF top_left) const {
    painter.setPen(style_.colour);
    for (int i = 0; i < lines(); ++i) {
        const QTextLine line = layout_->lineAt(i);
        const double baseline = top_left.y() + i * line_distance() + first_baseline();
        line.draw(&painter, QPointF(top_left.x(), baseline - line.ascent() - line.y()));
    }
}

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

}  // namespace roundwright::render
