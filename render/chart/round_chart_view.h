#pragma once

#include <QPointF>
#include <QWidget>

#include "render/chart/round_chart.h"

namespace roundwright::render {

/// A chart to look at: the wheel zooms about the pointer, a drag moves, a double click fits; plus, minus, 0
/// and the arrows do the same by keyboard. Colours follow the palette.
class RoundChartView : public QWidget {
    Q_OBJECT
  public:
    explicit RoundChartView(QWidget* parent = nullptr);

    /// Shows another chart; the view stays if it was moved, and fits if not. The options' target, scale,
    /// sector and paper colours are the view's own.
    void set_chart(ChartLayout layout, ChartOptions options);
    void set_lit_rounds(const std::vector<int>& rounds);
    void fit();
    void zoom(double factor);

    [[nodiscard]] QSize sizeHint() const override { return {420, 420}; }
    [[nodiscard]] QSize minimumSizeHint() const override { return {160, 160}; }

  Q_SIGNALS:
    void hovered(int round, int stitch);  ///< from 0; -1, -1: no stitch under the pointer
    void clicked(int round, int stitch);

  protected:
    void paintEvent(QPaintEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void mouseDoubleClickEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void leaveEvent(QEvent* event) override;

  private:
    [[nodiscard]] ChartOptions options_now() const;
    [[nodiscard]] std::optional<std::size_t> stitch_under(const QPointF& place) const;
    void zoom_about(const QPointF& place, double factor);
    void hover(std::optional<std::size_t> stitch);

    ChartLayout layout_;
    ChartOptions options_;
    double zoom_ = 1;  ///< of the fitted size
    QPointF moved_;
    QPointF pressed_, last_;
    bool dragging_ = false;
    std::optional<std::size_t> hovered_;
};

}  // namespace roundwright::render
