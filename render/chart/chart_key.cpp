#include <algorithm>
#include <cmath>
#include <functional>

#include <QBuffer>
#include <QFontMetricsF>
#include <QPainter>
#include <QSvgGenerator>

#include "core/base/units.h"
#include "render/chart/round_chart.h"
#include "render/drawing/xml_text.h"

namespace roundwright::render {
namespace {

constexpr double svg_units_per_mm = 100, svg_mm_per_stitch = 7;
constexpr double line_width = 0.065;

void draw_sample(QPainter& painter, const QPointF& middle, double size, ChartSymbol symbol,
                 const ChartOptions& options) {
    QTransform place;
    place.translate(middle.x(), middle.y());
    place.scale(size, -size);
    const SymbolPaths paths = sample_of(symbol, options.cross);
    painter.strokePath(place.map(paths.lines),
                       QPen(options.text, size * line_width, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.fillPath(place.map(paths.fills), options.text);
}

}  // namespace

double draw_chart_key(QPainter* painter, const QPaintDevice& device, const QFont& font, const QRectF& target,
                      const std::vector<ChartSymbol>& symbols,
                      const std::function<QString(ChartSymbol)>& words, const ChartOptions& options) {
    if (symbols.empty()) return 0;
    const QFontMetricsF metrics(font, &device);
    const double line = 1.7 * metrics.height(), symbol_room = 2.2 * metrics.height();
    double widest = 0;
    for (const auto symbol : symbols) widest = std::max(widest, metrics.horizontalAdvance(words(symbol)));
    const double column = symbol_room + widest + metrics.height();
    const auto columns = static_cast<std::size_t>(std::clamp(std::floor(target.width() / column), 1.0, 4.0));
    const std::size_t lines = (symbols.size() + columns - 1) / columns;
    for (std::size_t k = 0; painter && k < symbols.size(); ++k) {
        const QPointF corner = target.topLeft() + QPointF(static_cast<double>(k / lines) * target.width() /
                                                              static_cast<double>(columns),
                                                          static_cast<double>(k % lines) * line);
        draw_sample(*painter, corner + QPointF(symbol_room / 2, line / 2), 1.15 * metrics.height(),
                    symbols[k], options);
        painter->setFont(font);
        painter->setPen(options.text);
        painter->drawText(QRectF(corner + QPointF(symbol_room, 0),
                                 QSizeF(target.width() / static_cast<double>(columns) - symbol_room, line)),
                          Qt::AlignVCenter | Qt::AlignLeft, words(symbols[k]));
    }
    return static_cast<double>(lines) * line;
}

QByteArray chart_svg(const ChartLayout& layout, const ChartOptions& given,
                     const std::function<QString(ChartSymbol)>& words, const QString& title) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    QSvgGenerator generator;
    generator.setOutputDevice(&buffer);
    generator.setResolution(static_cast<int>(std::lround(mm_per_inch * svg_units_per_mm)));
    ChartOptions options = given;
    options.units_per_stitch = svg_mm_per_stitch * svg_units_per_mm;
    const QRectF chart = place_chart(layout, options).bounds;
    const double margin = options.units_per_stitch;
    const double width = std::max(chart.width() + 2 * margin, 110 * svg_units_per_mm);
    QFont font(QStringLiteral("DejaVu Sans"), 9);
    const auto symbols = symbols_used(layout);
    const QRectF key_room(margin, 0, width - 2 * margin, 0);
    const double key = draw_chart_key(nullptr, generator, font, key_room, symbols, words, options);
    const QSize size(static_cast<int>(std::ceil(width)),
                     static_cast<int>(std::ceil(chart.height() + 3 * margin + key)));
    generator.setSize(size);
    generator.setViewBox(QRect(QPoint(), size));
    generator.setTitle(xml_text(title));
    QPainter painter(&generator);
    painter.fillRect(QRectF(QPointF(), size), options.paper);
    painter.setFont(font);
    options.target = QRectF(0, margin, width, chart.height());
    draw_chart(painter, layout, options);
    draw_chart_key(&painter, generator, font, key_room.translated(0, chart.height() + 2 * margin), symbols,
                   words, options);
    painter.end();
    return bytes;
}

}  // namespace roundwright::render
