#include "app/window/work_area.h"

#include <algorithm>

#include <QEvent>
#include <QFrame>
#include <QHBoxLayout>
#include <QVBoxLayout>

namespace roundwright::app {

QWidget* ruled_line(QWidget* parent) {
    auto* line = new QFrame(parent);
    line->setFrameShape(QFrame::HLine);
    line->setFrameShadow(QFrame::Plain);
    line->setForegroundRole(QPalette::Mid);
    line->setFixedHeight(1);
    return line;
}

WorkArea::WorkArea(const Parts& parts, QWidget* parent)
    : QWidget(parent), parts_(parts), columns_(new QSplitter(Qt::Horizontal, this)) {
    columns_->addWidget(parts_.rounds);
    columns_->addWidget(parts_.picture);
    columns_->setChildrenCollapsible(false);
    columns_->setHandleWidth(1);
    columns_->setStretchFactor(0, 0);
    columns_->setStretchFactor(1, 1);

    auto* middle = new QWidget(this);
    auto* middle_layout = new QVBoxLayout(middle);
    middle_layout->setContentsMargins(0, 0, 0, 0);
    middle_layout->setSpacing(0);
    middle_layout->addWidget(columns_, 1);
    middle_layout->addWidget(ruled_line(middle));
    middle_layout->addWidget(parts_.next_rounds);

    auto* layout = new QHBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(0);
    layout->addWidget(middle, 1);
    layout->addWidget(parts_.panels);
    connect(parts_.panels, &PanelColumn::section_opened, this, &WorkArea::cover_or_show_rounds);
}

/// Where room is scarce, the words of a round get less of it.
int WorkArea::narrowest_rounds() const {
    constexpr int characters_less = 2;
    return parts_.rounds->minimumSizeHint().width() - characters_less * fontMetrics().averageCharWidth();
}

/// The least width of rounds, shape and panels beside each other.
int WorkArea::side_by_side() const {
    return parts_.rounds->minimumSizeHint().width() + parts_.shape->unfolded_width() +
           columns_->handleWidth() + parts_.panels->column_width();
}

QSize WorkArea::minimumSizeHint() const {
    const int shape = parts_.picture->minimumSizeHint().width();
    const int folded = narrowest_rounds() + columns_->handleWidth() + shape + parts_.panels->strip_width();
    const int height =
        std::max(parts_.rounds->minimumSizeHint().height(), parts_.picture->minimumSizeHint().height()) + 1 +
        parts_.next_rounds->minimumSizeHint().height();
    return {std::max(folded, shape + parts_.panels->column_width()),
            std::max(height, parts_.panels->minimumSizeHint().height())};
}

void WorkArea::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    arrange();
    layout()->activate();
    if (narrow_ && parts_.picture->width() < parts_.shape->unfolded_width()) give_the_shape_its_room();
}

void WorkArea::changeEvent(QEvent* event) {
    QWidget::changeEvent(event);
    if (event->type() == QEvent::FontChange || event->type() == QEvent::StyleChange) arrange();
}

void WorkArea::arrange() {
    const bool narrow = width() < side_by_side();
    if (narrow == narrow_) return;
    narrow_ = narrow;
    parts_.rounds->setMinimumWidth(narrow ? narrowest_rounds() : 0);
    parts_.panels->set_strip(narrow);
    cover_or_show_rounds();
    layout()->activate();
    if (!narrow) return;
    give_the_shape_its_room();
}

void WorkArea::give_the_shape_its_room() {
    columns_->setSizes({narrowest_rounds(), std::max(columns_->width() - narrowest_rounds(), 1)});
}

void WorkArea::cover_or_show_rounds() {
    parts_.rounds->setVisible(!narrow_ || parts_.panels->open_key().isEmpty());
}

void WorkArea::show_rounds() {
    if (narrow_) parts_.panels->fold_all();
}

}  // namespace roundwright::app
