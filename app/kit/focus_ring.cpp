#include "app/kit/focus_ring.h"

#include <utility>

#include <QAbstractItemView>
#include <QApplication>
#include <QEvent>
#include <QFocusFrame>
#include <QItemSelectionModel>
#include <QMenu>
#include <QMenuBar>
#include <QPaintEvent>
#include <QPainter>
#include <QTabBar>

#include "app/kit/look.h"

namespace roundwright::app {

namespace {

/// Where a ring goes, in the window's coordinates.
struct RingPlace {
    QRect rect;
    bool on_selected = false;  ///< with the second band
    int width = 0;             ///< of each
};

/// Rows that touch each other leave no room outside.
bool has_parts(const QWidget& widget) {
    return qobject_cast<const QAbstractItemView*>(&widget) || qobject_cast<const QTabBar*>(&widget);
}

QRect current_item(const QAbstractItemView& view) {
    const QModelIndex current = view.currentIndex();
    if (!current.isValid()) return {};
    QRect rect = view.visualRect(current);
    const bool by_cell = view.selectionBehavior() == QAbstractItemView::SelectItems ||
                         view.editTriggers() != QAbstractItemView::NoEditTriggers;
    if (!by_cell) {
        for (int column = 0; column < current.model()->columnCount(current.parent()); ++column)
            rect |= view.visualRect(current.siblingAtColumn(column));
    }
    rect &= view.viewport()->rect();
    return rect.isEmpty() ? QRect() : rect.translated(view.viewport()->mapTo(&view, QPoint()));
}

/// The part of the widget that keys act on, in its own coordinates; empty: all of it.
QRect part_of(const QWidget& widget) {
    if (const auto* view = qobject_cast<const QAbstractItemView*>(&widget)) return current_item(*view);
    const auto* tabs = qobject_cast<const QTabBar*>(&widget);
    return tabs == nullptr ? QRect() : tabs->tabRect(tabs->currentIndex()).intersected(tabs->rect());
}

bool is_selected(const QWidget& widget) {
    const auto* view = qobject_cast<const QAbstractItemView*>(&widget);
    return view != nullptr && view->selectionModel() != nullptr &&
           view->selectionModel()->isSelected(view->currentIndex());
}

/// What can be seen of the window where the widget is: areas that scroll cut off what is in them.
QRect seen_around(const QWidget& widget) {
    const QWidget& window = *widget.window();
    QRect seen = window.rect();
    for (const QWidget* at = widget.parentWidget(); at != nullptr && at != &window; at = at->parentWidget()) {
        const auto* area = qobject_cast<const QAbstractScrollArea*>(at->parentWidget());
        if (area == nullptr || area->viewport() != at) continue;
        seen &= QRect(at->mapTo(&window, QPoint()), at->size());
    }
    return seen;
}

RingPlace place_around(const QWidget& widget, int width) {
    const QRect part = part_of(widget);
    RingPlace place;
    const bool inside = !part.isEmpty();
    place.on_selected = inside && is_selected(widget);
    const QRect shape = inside ? part : widget.rect();
    const int outside = inside ? 0 : width;
    const QRect wanted = QRect(widget.mapTo(widget.window(), shape.topLeft()), shape.size())
                             .adjusted(-outside, -outside, outside, outside);
    place.rect = wanted & seen_around(widget);
    // Where it lies on the control, that one's own edge is under it and stands out less.
    const bool on_the_control = inside || place.rect != wanted;
    place.width = on_the_control ? width + 1 : width;
    return place;
}

/// Its frame draws a ring of its own, which stands out from whatever ground the shape has.
bool is_the_scene(const QWidget& widget) {
    return widget.parentWidget() != nullptr &&
           widget.parentWidget()->inherits("roundwright::render::SceneFrame");
}

/// Menus and lists that drop down show their current item in the full accent.
bool has_ring(const QWidget* widget) {
    return widget != nullptr && widget->isVisible() && widget->window()->windowType() != Qt::Popup &&
           !qobject_cast<const QMenu*>(widget) && !qobject_cast<const QMenuBar*>(widget) &&
           !widget->inherits("QWindowContainer") && !is_the_scene(*widget);
}

}  // namespace

/// Accessibility passes over focus frames, as over no other widget of this kind.
class RingWidget : public QFocusFrame {
  public:
    explicit RingWidget(QWidget* window) : QFocusFrame(window) {
        setAttribute(Qt::WA_TransparentForMouseEvents);
        setAttribute(Qt::WA_NoSystemBackground);
        setObjectName(QStringLiteral("focus-ring"));
    }
    void show_at(const RingPlace& place) {
        bands_ = {{Theme::colours().accent, place.width}};
        if (place.on_selected) bands_.emplace_back(palette().color(QPalette::HighlightedText), place.width);
        int all = 0;
        for (const auto& band : bands_) all += band.second;
        const QRect whole(QPoint(), place.rect.size());
        const QRegion mask = QRegion(whole) - QRegion(whole.adjusted(all, all, -all, -all));
        if (geometry() != place.rect) setGeometry(place.rect);
        if (mask != this->mask()) setMask(mask);
        raise();
        show();
        update();
    }

  protected:
    void paintEvent(QPaintEvent* /*event*/) override {
        QPainter painter(this);
        QRect rest = rect();
        for (const auto& [colour, width] : bands_) {
            const QRect inner = rest.adjusted(width, width, -width, -width);
            painter.setClipRegion(QRegion(rest) - QRegion(inner));
            painter.fillRect(rest, colour);
            rest = inner;
        }
    }

  private:
    std::vector<std::pair<QColor, int>> bands_;  ///< from outside
};

void FocusRing::follow_focus() {
    static QPointer<FocusRing> following;
    if (!following) following = new FocusRing(qApp);
}

FocusRing::FocusRing(QObject* parent) : QObject(parent) {
    place_later_.setSingleShot(true);
    connect(&place_later_, &QTimer::timeout, this, &FocusRing::place);
    connect(qApp, &QApplication::focusChanged, this, [this](QWidget*, QWidget* now) { follow(now); });
    follow(QApplication::focusWidget());
}

void FocusRing::follow(QWidget* widget) {
    for (const auto& one : watched_)
        if (one) one->removeEventFilter(this);
    watched_.clear();
    focused_ = widget;
    if (ring_ && (!widget || ring_->parentWidget() != widget->window())) delete ring_;
    if (widget) watch();
    place();
}

void FocusRing::watch() {
    const auto follow_moves_of = [this](QWidget* widget) {
        widget->installEventFilter(this);
        watched_.emplace_back(widget);
    };
    for (QWidget* at = focused_; at != nullptr; at = at->isWindow() ? nullptr : at->parentWidget())
        follow_moves_of(at);
    if (const auto* area = qobject_cast<QAbstractScrollArea*>(focused_)) follow_moves_of(area->viewport());
}

/// Whatever moves a row or a tab has it painted anew.
bool FocusRing::eventFilter(QObject* watched, QEvent* event) {
    switch (event->type()) {
        case QEvent::Paint:
            if (!focused_ || !has_parts(*focused_)) break;
            [[fallthrough]];
        case QEvent::Move:
        case QEvent::Resize:
        case QEvent::Show:
        case QEvent::Hide:
        case QEvent::ParentChange:
        case QEvent::PaletteChange:
        case QEvent::StyleChange:
            if (!place_later_.isActive()) place_later_.start(0);
            break;
        default:
            break;
    }
    return QObject::eventFilter(watched, event);
}

void FocusRing::place() {
    if (!has_ring(focused_)) {
        if (ring_) ring_->hide();
        return;
    }
    if (!ring_ || ring_->parentWidget() != focused_->window()) {
        delete ring_;
        ring_ = new RingWidget(focused_->window());
    }
    const RingPlace place = place_around(*focused_, ring_width());
    place.rect.isEmpty() ? ring_->hide() : ring_->show_at(place);
}

}  // namespace roundwright::app
