#include "tests/app/kit/seen_ring.h"

#include <QAbstractItemView>
#include <QTabBar>

#include "render/drawing/contrast.h"

namespace roundwright::app {
namespace {

constexpr double enough = 3;     // WCAG 2.2, 1.4.11 and 2.4.13
constexpr int thickness_px = 2;  // 2.4.13: the area of a perimeter this thick

}  // namespace

int clearly_changed(const QImage& without, const QImage& with, const QRect& area) {
    int count = 0;
    const QRect within = area.intersected(without.rect());
    for (int y = within.top(); y <= within.bottom(); ++y)
        for (int x = within.left(); x <= within.right(); ++x)
            count += render::contrast_ratio(without.pixelColor(x, y), with.pixelColor(x, y)) >= enough;
    return count;
}

int perimeter_area(const QSize& size) {
    return 2 * thickness_px * (size.width() + size.height()) - 4 * thickness_px * thickness_px;
}

QRect acted_on(const QWidget& control) {
    if (const auto* tabs = qobject_cast<const QTabBar*>(&control)) return tabs->tabRect(tabs->currentIndex());
    const auto* view = qobject_cast<const QAbstractItemView*>(&control);
    if (view == nullptr || !view->currentIndex().isValid()) return control.rect();
    const QRect item = view->visualRect(view->currentIndex()).intersected(view->viewport()->rect());
    return item.translated(view->viewport()->mapTo(view, QPoint()));
}

}  // namespace roundwright::app
