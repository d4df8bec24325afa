#pragma once

#include <memory>

#include <QPointF>
#include <QSizeF>
#include <QString>

#include "render/pages/outline.h"
#include "render/pages/page_context.h"

class QPainter;

namespace roundwright::render {

/// The drawing of one join, to pin by: the outline of the piece that is sewn to, its middle, the rounds on
/// both sides of the gap, and where the edge, seam or tip lies, in stitches from the middle or from each
/// other. Seen from the side that shows it best.
class JoinDrawing {
  public:
    JoinDrawing(const PageContext& context, const SewingStep& step, QSizeF room);

    /// "Head, from the front": what is drawn.
    [[nodiscard]] QString seen_words() const;
    [[nodiscard]] double height() const;
    /// Paints it in the middle of its room, from `top_left`.
    void paint(QPainter& painter, QPointF top_left) const;

  private:
    /// A line on the fabric, as it is seen; what is behind is left out.
    struct Line {
        std::vector<QPointF> points_mm;
        bool closed = false;
    };

    void choose_view();
    void find_lines();
    [[nodiscard]] double half_seam_mm() const;
    [[nodiscard]] Line line_on_fabric(double angle, double mirror) const;
    [[nodiscard]] std::optional<QPointF> seen(const SurfacePlace& place) const;
    [[nodiscard]] QPointF on_page(QPointF mm) const { return {mm.x() * scale_, mm.y() * scale_}; }
    [[nodiscard]] bool in_gap() const { return step_.place == SewnPlace::gap; }
    [[nodiscard]] std::size_t loop() const { return static_cast<std::size_t>(step_.round); }

    void paint_outline(QPainter& painter) const;
    void paint_rounds(QPainter& painter) const;
    void paint_lines(QPainter& painter) const;
    void paint_stitches(QPainter& painter) const;

    const PatternStudy* study_;
    SewingStep step_;
    QString onto_name_;
    std::shared_ptr<const PieceOutline> outline_;
    QSizeF room_;
    double scale_ = 1;
    int view_degrees_ = 0;  ///< 0: the front, 90: its right as the viewer of the front sees it, 180, -90
    std::vector<Line> lines_;
    std::vector<QPointF> middles_mm_;
};

}  // namespace roundwright::render
