#pragma once

#include <memory>
#include <vector>

#include "render/chart/round_chart.h"
#include "render/pages/layout/block.h"
#include "render/pages/layout/paragraph.h"

namespace roundwright::render {

/// One drawing of the pattern, a chart or a sector of it, under its piece's name and its rounds.
class ChartSheet {
  public:
    /// At the scale of the options; no wider than `page_width`.
    ChartSheet(std::shared_ptr<const ChartLayout> layout, const ChartOptions& options, const QString& name,
               const QString& rounds, double page_width);

    /// Layout units.
    [[nodiscard]] double width() const { return width_; }
    [[nodiscard]] double caption_height() const;
    [[nodiscard]] double chart_height() const { return size_.height(); }

    /// The chart in the middle of a place of a width, below captions of a height.
    void paint(QPainter& painter, QPointF at, double width, double caption_height) const;

  private:
    std::shared_ptr<const ChartLayout> layout_;
    ChartOptions options_;
    QSizeF size_;
    double width_ = 0;
    std::vector<Paragraph> captions_;
};

/// Sheets side by side, as many as the width of the page takes.
[[nodiscard]] Blocks chart_rows(const std::vector<ChartSheet>& sheets, double page_width);

}  // namespace roundwright::render
