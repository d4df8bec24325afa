#include "app/kit/scroll_to_fit.h"

#include <algorithm>

#include <QBoxLayout>
#include <QEvent>
#include <QScrollArea>
#include <QScrollBar>

#include "app/kit/room_on_screen.h"

namespace roundwright::app {
namespace {

/// As wide as its column and its scroll bar, whichever fields that shows.
class ScrolledColumn : public QScrollArea {
  public:
    explicit ScrolledColumn(QWidget* fields) {
        setFrameShape(QFrame::NoFrame);
        setWidgetResizable(true);
        setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
        setFocusPolicy(Qt::NoFocus);
        setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Expanding);
        setWidget(fields);
        fields->installEventFilter(this);
    }
    [[nodiscard]] QSize minimumSizeHint() const override {
        return {width_for_fields(), 4 * fontMetrics().lineSpacing()};
    }
    [[nodiscard]] QSize sizeHint() const override {
        return {width_for_fields(), widget()->sizeHint().height()};
    }

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override {
        if (event->type() == QEvent::LayoutRequest) updateGeometry();
        return QScrollArea::eventFilter(watched, event);
    }

    void resizeEvent(QResizeEvent* event) override {
        QScrollArea::resizeEvent(event);
        updateGeometry();
    }

  private:
    [[nodiscard]] int width_for_fields() const {
        const QSize wanted = widget()->sizeHint();
        const int bar = height() < wanted.height() ? verticalScrollBar()->sizeHint().width() : 0;
        return qBound(widget()->minimumWidth(), wanted.width(), widget()->maximumWidth()) + bar;
    }
};

/// Moves a row with its stretch, and keeps the order of the Tab key, which hangs on the window.
void move_row(QBoxLayout& from, QVBoxLayout& to) {
    const int stretch = from.stretch(0);
    QLayoutItem* item = from.takeAt(0);
    if (QLayout* rows = item->layout()) {
        to.addLayout(rows, stretch);
    } else if (QWidget* widget = item->widget()) {
        to.addWidget(widget, stretch, item->alignment());
        delete item;
    } else {
        to.addItem(item);
        to.setStretch(to.count() - 1, stretch);
    }
}

/// In the window's width as it is; words that wrap may need more height than its least size says.
QSize least_size(const QWidget& window) {
    const QSize least = window.minimumSizeHint().expandedTo(window.minimumSize());
    const int width = std::max(least.width(), window.width());
    if (window.layout() == nullptr || !window.layout()->hasHeightForWidth()) return least;
    return least.expandedTo({0, window.layout()->totalMinimumHeightForWidth(width)});
}

}  // namespace

void scroll_to_fit(QWidget& window) {
    const QSize room = room_on_screen(window, {QWIDGETSIZE_MAX, QWIDGETSIZE_MAX});
    auto* column = qobject_cast<QVBoxLayout*>(window.layout());
    if (column == nullptr || column->count() < 2) return;
    const QSize least = least_size(window);
    if (least.width() <= room.width() && least.height() <= room.height())
        return window.resize(window.size().expandedTo(least));
    const QSize wanted = window.sizeHint();
    auto* area = new QScrollArea;
    area->setFrameShape(QFrame::NoFrame);
    area->setWidgetResizable(true);
    area->setFocusPolicy(Qt::NoFocus);
    area->setWidget(new QWidget);
    auto* rows = new QVBoxLayout(area->widget());
    rows->setContentsMargins(0, 0, 0, 0);
    rows->setSpacing(column->spacing());
    column->insertWidget(column->count() - 1, area, 1);
    while (column->itemAt(0)->widget() != area) move_row(*column, *rows);
    column->activate();
    window.setMinimumSize(window.minimumSizeHint().boundedTo(room));
    const int bar = area->verticalScrollBar()->sizeHint().width();
    window.resize(QSize(wanted.width() + bar, wanted.height()).boundedTo(room));
}

QScrollArea* scrolled_column(QWidget* fields) { return new ScrolledColumn(fields); }

}  // namespace roundwright::app
