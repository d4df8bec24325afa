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
    for (const QChar c : text) {
        const bool line_end =
            c == QLatin1Char('\n') || c == QChar::LineSeparator || c == QChar::ParagraphSeparator;
        if (line_end)
            clean += QLatin1Char('\n');
        else if (c == QLatin1Char('\t'))
            clean += QLatin1Char(' ');
        else if (c.category() != QChar::Other_Control)
            clean += c;
    }
    return clean;
}

QString printable_line(const QString& text) { return printable(text).simplified(); }
QString printable_line(const std::string& utf8) { return printable_line(QString::fromStdString(utf8)); }

}  // namespace roundwright::render
