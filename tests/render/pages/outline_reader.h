#pragma once

#include <memory>
#include <vector>

#include <QImage>
#include <QRectF>

#include "tests/render/pages/pdf_reader.h"

namespace roundwright::render::testing {

inline constexpr double dots_per_inch = 600;
inline constexpr double mm_per_dot = 25.4 / dots_per_inch;
inline constexpr double outline_width_mm = 25.4 / 72;  // the outline is drawn one point wide

/// The pages that carry an outline, each with the places of its label and of the words beside its bar, in
/// points.
struct OutlinePage {
    int page = 0;
    QRectF label;
    QRectF bar_words;
};

inline std::vector<OutlinePage> outline_pages(const PdfReader& pdf, const QString& label) {
    std::vector<OutlinePage> found;
    for (int i = 0; i < pdf.pages(); ++i) {
        const std::unique_ptr<Poppler::Page> page(pdf.document().page(i));
        const QList<QRectF> labels = page->search(label);
        const QList<QRectF> bars = page->search(QStringLiteral("50 mm (1.97 in)"));
        if (!labels.isEmpty() && !bars.isEmpty()) found.push_back({i, labels[0], bars[0]});
    }
    return found;
}

inline bool is_ink(QRgb pixel) {
    return qGray(pixel) < 62;
}  // the outline's own colour; thinner lines are lighter

/// Bounds of everything in ink on a part of a page, mm from the page's corner, to the outer edges of the
/// lines.
inline QRectF ink_bounds(const PdfReader& pdf, int number, const QRectF& points) {
    const std::unique_ptr<Poppler::Page> page(pdf.document().page(number));
    const double scale = dots_per_inch / 72;
    const QPoint corner(qRound(points.x() * scale), qRound(points.y() * scale));
    const QImage image = page->renderToImage(dots_per_inch, dots_per_inch, corner.x(), corner.y(),
                                             qRound(points.width() * scale), qRound(points.height() * scale));
    QRect bounds;
    for (int y = 0; y < image.height(); ++y) {
        for (int x = 0; x < image.width(); ++x) {
            if (is_ink(image.pixel(x, y))) bounds |= QRect(x, y, 1, 1);
        }
    }
    return {(bounds.x() + corner.x()) * mm_per_dot, (bounds.y() + corner.y()) * mm_per_dot,
            bounds.width() * mm_per_dot, bounds.height() * mm_per_dot};
}

}  // namespace roundwright::render::testing
