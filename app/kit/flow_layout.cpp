#include "app/kit/flow_layout.h"

#include <algorithm>

namespace roundwright::app {

FlowLayout::FlowLayout(QWidget* parent) : QLayout(parent) {}

FlowLayout::~FlowLayout() = default;

void FlowLayout::addItem(QLayoutItem* item) {
    items_.emplace_back(item);
    invalidate();
}

int FlowLayout::count() const { return static_cast<int>(items_.size()); }

QLayoutItem* FlowLayout::itemAt(int index) const {
    return index >= 0 && index < count() ? items_[static_cast<std::size_t>(index)].get() : nullptr;
}

QLayoutItem* FlowLayout::takeAt(int index) {
    if (index < 0 || index >= count()) return nullptr;
    QLayoutItem* taken = items_[static_cast<std::size_t>(index)].release();
    items_.erase(items_.begin() + index);
    invalidate();
    return taken;
}

int FlowLayout::heightForWidth(int width) const { return flow({0, 0, width, 0}, false); }

QSize FlowLayout::sizeHint() const {
    QSize row;
    for (const auto& item : items_) {
        if (item->isEmpty()) continue;
        const QSize size = item->sizeHint();
        row = {row.width() + size.width() + (row.width() > 0 ? spacing() : 0),
               std::max(row.height(), size.height())};
    }
    return with_margins(row);
}

QSize FlowLayout::minimumSize() const {
    QSize widest;
    for (const auto& item : items_)
        if (!item->isEmpty()) widest = widest.expandedTo(item->minimumSize());
    return with_margins(widest);
}

void FlowLayout::setGeometry(const QRect& place) {
    QLayout::setGeometry(place);
    flow(place, true);
}

QSize FlowLayout::with_margins(QSize size) const { return size.grownBy(contentsMargins()); }

int FlowLayout::flow(const QRect& place, bool places) const {
    const QMargins margins = contentsMargins();
    const QRect inner = place.marginsRemoved(margins);
    QPoint at = inner.topLeft();
    int row_height = 0;
    for (const auto& item : items_) {
        if (item->isEmpty()) continue;
        const QSize size = item->sizeHint();
        const bool first = at.x() == inner.left();
        if (!first && at.x() + size.width() > inner.left() + inner.width()) {
            at = {inner.left(), at.y() + row_height + spacing()};
            row_height = 0;
        }
        if (places) item->setGeometry(QRect(at, size));
        at.rx() += size.width() + spacing();
        row_height = std::max(row_height, size.height());
    }
    return at.y() + row_height - place.top() + margins.bottom();
}

}  // namespace roundwright::app
