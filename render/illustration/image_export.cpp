#include "render/illustration/image_export.h"

#include <algorithm>
#include <cmath>
#include <new>

#include <QBuffer>
#include <QPainter>
#include <QSvgGenerator>

#include "core/base/units.h"
#include "render/drawing/xml_text.h"

namespace roundwright::render {
namespace {

constexpr double svg_units_per_mm = 100;

QRectF inner(const QSizeF& size, double margin_share) {
    const double margin = margin_share * std::min(size.width(), size.height());
    return QRectF(QPointF(), size).adjusted(margin, margin, -margin, -margin);
}

}  // namespace

QImage piece_image(const StitchSurface& surface, DrawOptions drawing, const ImageOptions& options) {
    QImage image(options.pixels.expandedTo({1, 1}), QImage::Format_ARGB32_Premultiplied);
    if (image.isNull()) throw std::bad_alloc();  // Qt says it so
    image.fill(options.background.isValid() ? options.background : QColor(Qt::transparent));
    drawing.target = inner(image.size(), options.margin_share);
    drawing.units_per_mm = 0;
    QPainter painter(&image);
    draw_piece(painter, surface, drawing);
    painter.end();
    if (!options.title.isEmpty()) image.setText(QStringLiteral("Title"), options.title);
    return image;
}

QByteArray piece_png(const StitchSurface& surface, const DrawOptions& drawing, const ImageOptions& options) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    piece_image(surface, drawing, options).save(&buffer, "PNG");
    return bytes;
}

QByteArray piece_svg(const StitchSurface& surface, DrawOptions drawing, const ImageOptions& options) {
    drawing.units_per_mm = svg_units_per_mm;
    const QRectF piece = place_piece(surface, drawing).bounds;
    const double margin = options.margin_share * std::min(piece.width(), piece.height());
    const QSize size(static_cast<int>(std::ceil(piece.width() + 2 * margin)),
                     static_cast<int>(std::ceil(piece.height() + 2 * margin)));
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    QSvgGenerator generator;
    generator.setOutputDevice(&buffer);
    generator.setResolution(static_cast<int>(std::lround(mm_per_inch * svg_units_per_mm)));
    generator.setSize(size);
    generator.setViewBox(QRect(QPoint(), size));
    generator.setTitle(xml_text(options.title));
    drawing.target = QRectF(QPointF(), size);
    QPainter painter(&generator);
    if (options.background.isValid()) painter.fillRect(drawing.target, options.background);
    draw_piece(painter, surface, drawing);
    painter.end();
    return bytes;
}

}  // namespace roundwright::render
