#include "render/pages/layout/paragraph.h"

#include <algorithm>

#include <QFontMetricsF>
#include <QPainter>

#include "render/pages/layout/drawable_text.h"

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
    : style_(std::move(style)), text_(text), width_(width) {
    text_.replace(QLatin1Char('\n'), QChar::LineSeparator);
    if (style_.most_lines > 0) text_.truncate(style_.most_lines * characters_a_line);
    text_ = drawable(text_);
    if (style_.most_lines > 0) text_ = elided(*layout());
    const auto broken = layout();
    const int most = style_.most_lines > 0 ? style_.most_lines : broken->lineCount();
    lines_ = std::min(broken->lineCount(), most);
    for (int i = 0; i < lines_; ++i)
        natural_width_ = std::max(natural_width_, broken->lineAt(i).naturalTextWidth());
    first_baseline_ = (line_distance() + QFontMetricsF(style_.font).capHeight()) / 2;
}

std::shared_ptr<const QTextLayout> Paragraph::layout() const {
    auto layout = std::make_shared<QTextLayout>(text_, style_.font);
    layout->setTextOption(option_for(style_.alignment));
    set_lines(*layout, width_);
    return layout;
}

QString Paragraph::elided(const QTextLayout& layout) const {
    if (layout.lineCount() <= style_.most_lines) return text_;
    const QTextLine last = layout.lineAt(style_.most_lines - 1);
    const QString rest = text_.mid(last.textStart()).replace(QChar::LineSeparator, QLatin1Char(' '));
    return text_.left(last.textStart()) + QFontMetricsF(style_.font).elidedText(rest, Qt::ElideRight, width_);
}

double Paragraph::line_distance() const { return style_.font.pixelSize() * style_.leading; }

double Paragraph::height() const { return lines_ * line_distance(); }

void Paragraph::paint(QPainter& painter, QPointF top_left) const {
    painter.setPen(style_.colour);
    const auto broken = layout();
    for (int i = 0; i < lines_; ++i) {
        const QTextLine line = broken->lineAt(i);
        const double baseline = top_left.y() + i * line_distance() + first_baseline();
        line.draw(&painter, QPointF(top_left.x(), baseline - line.ascent() - line.y()));
    }
}

}  // namespace roundwright::render
