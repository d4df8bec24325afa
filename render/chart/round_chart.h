#pragma once

#include <functional>
#include <optional>
#include <vector>

#include <QByteArray>
#include <QColor>
#include <QRectF>
#include <QString>
#include <QTransform>

#include "core/base/colour.h"
#include "render/chart/chart_layout.h"
#include "render/chart/chart_symbols.h"

class QPainter;

namespace roundwright::render {

/// A part of a chart in the round: the `number`-th of `of` equal sectors; the whole for `of` 1.
struct ChartSector {
    int number = 0;
    int of = 1;
};

struct ChartOptions {
    QRectF target;                ///< in the painter's units; the chart is centred in it
    double units_per_stitch = 0;  ///< scale; 0: as large as the target allows
    ChartSector sector;
    CrossSymbol cross = CrossSymbol::upright;
    std::vector<Colour> yarns;    ///< symbols in these, darkened to 3:1 on white; empty: in two inks in turn
    std::vector<int> lit_rounds;  ///< from 0: on a tinted ground
    QColor text{44, 51, 58};
    QColor paper{255, 255, 255};
    QColor band{244, 241, 235};  ///< every other round's ground
    QColor lit{252, 226, 178};
};

/// Where a chart came to lie.
struct DrawnChart {
    QTransform to_painter;  ///< from the layout's units
    double units_per_stitch = 0;
    QRectF bounds;  ///< in the painter's units
};

[[nodiscard]] DrawnChart place_chart(const ChartLayout& layout, const ChartOptions& options);
DrawnChart draw_chart(QPainter& painter, const ChartLayout& layout, const ChartOptions& options);

/// The stitch whose symbol is at a place of the painter, an index into `layout.stitches`; none further away
/// than a stitch.
[[nodiscard]] std::optional<std::size_t> stitch_at(const ChartLayout& layout, const DrawnChart& drawn,
                                                   const QPointF& place);

/// How a chart is best laid on pages of a size: whole if a stitch is at least `least_units_per_stitch` then,
/// else in sectors. A chart that repeats shows one sector for all.
struct ChartPlan {
    int sectors = 1;
    int shown = 1;  ///< sectors to draw: 1 of a repeating chart, else all of them
    double units_per_stitch = 0;
};
[[nodiscard]] ChartPlan plan_chart(const ChartLayout& layout, const QSizeF& page,
                                   double least_units_per_stitch);

/// A key of symbols in columns, each with its words; gives the height it took. With `painter` null it only
/// measures.
double draw_chart_key(QPainter* painter, const QPaintDevice& device, const QFont& font, const QRectF& target,
                      const std::vector<ChartSymbol>& symbols,
                      const std::function<QString(ChartSymbol)>& words, const ChartOptions& options);

/// The bytes of an SVG file of a chart with its key below, 7 mm a stitch.
[[nodiscard]] QByteArray chart_svg(const ChartLayout& layout, const ChartOptions& options,
                                   const std::function<QString(ChartSymbol)>& words, const QString& title);

}  // namespace roundwright::render
