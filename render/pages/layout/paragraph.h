#pragma once

#include <memory>
#include <vector>

#include <QColor>
#include <QFont>
#include <QString>
#include <QTextLayout>

#include "render/pages/layout/page_style.h"

class QPainter;

namespace roundwright::render {

/// How a paragraph is set.
struct ParagraphStyle {
    QFont font = body_font();
    QColor colour = page_colour::ink;
    double leading = 1.45;  ///< distance of baselines over the font's size
    Qt::Alignment alignment = Qt::AlignLeft;
    int most_lines = 0;  ///< 0: as many as it takes; the last one ends in an ellipsis if text is left over
};

/// Lines that a name of the maker's may take up.
inline constexpr int most_name_lines = 3;

/// Text broken into lines of one width. Its words are drawn as text, so they can be searched and copied.
/// Right-to-left text starts from the right; words longer than a line break where they must.
class Paragraph {
  public:
    Paragraph(const QString& text, double width, ParagraphStyle style = {});

    [[nodiscard]] double height() const;
    [[nodiscard]] double natural_width() const { return natural_width_; }  ///< of the widest line
    [[nodiscard]] int lines() const { return lines_; }
    void paint(QPainter& painter, QPointF top_left) const;

    /// From the top to the first baseline, to stand in line with text beside it.
    [[nodiscard]] double first_baseline() const { return first_baseline_; }

  private:
    /// The broken lines, with the fonts of the thread that asks: Qt keeps fonts by thread, and they go with
    /// it.
    [[nodiscard]] std::shared_ptr<const QTextLayout> layout() const;
    [[nodiscard]] QString elided(const QTextLayout& layout) const;
    [[nodiscard]] double line_distance() const;

    ParagraphStyle style_;
    QString text_;
    double width_ = 0;
    int lines_ = 0;
    double natural_width_ = 0;
    double first_baseline_ = 0;
};

}  // namespace roundwright::render
