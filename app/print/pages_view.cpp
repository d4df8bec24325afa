#include "app/print/pages_view.h"

#include <algorithm>

#include <QPaintEvent>
#include <QPainter>
#include <QScrollBar>
#include <QWheelEvent>

#include "app/kit/spoken_roles.h"
#include "render/wording/counted.h"

namespace roundwright::app {

namespace {

constexpr int gap = 16;
constexpr double least_zoom = 0.2;
constexpr double most_zoom = 4;

}  // namespace

class PagesView::Sheet : public QWidget {
  public:
    explicit Sheet(PagesView& view) : view_(view) {}

    [[nodiscard]] double pixels_per_unit() const {
        return view_.zoom() * view_.logicalDpiX() / render::units_per_inch;
    }

    [[nodiscard]] QRect page_rect(int page) const {
        const QSize size = (view_.pages_->size() * pixels_per_unit()).toSize();
        const int left = std::max(gap, (width() - size.width()) / 2);
        return {QPoint(left, gap + page * (size.height() + gap)), size};
    }

    [[nodiscard]] QSize wanted_size() const {
        const QRect last = page_rect(view_.page_count() - 1);
        return {last.width() + 2 * gap, last.bottom() + gap};
    }

  protected:
    void paintEvent(QPaintEvent* event) override {
        if (!view_.pages_) return;
        QPainter painter(this);
        painter.setRenderHint(QPainter::Antialiasing);
        for (int page = 0; page < view_.page_count(); ++page) {
            const QRect rect = page_rect(page);
            if (!rect.adjusted(-4, -4, 4, 4).intersects(event->rect())) continue;
            painter.fillRect(rect.translated(2, 2), QColor(0, 0, 0, 60));
            painter.fillRect(rect, Qt::white);
            painter.save();
            painter.setClipRect(rect);
            painter.translate(rect.topLeft());
            painter.scale(pixels_per_unit(), pixels_per_unit());
            view_.pages_->paint(painter, page);
            painter.restore();
        }
    }

  private:
    PagesView& view_;
};

PagesView::PagesView(QWidget* parent) : QScrollArea(parent), sheet_(new Sheet(*this)) {
    setWidget(sheet_);
    setAlignment(Qt::AlignHCenter);
    setBackgroundRole(QPalette::Mid);
    speak_as(*this, QAccessible::Document);
    setAccessibleName(tr("Pages of the pattern"));
    speak_as(*sheet_, QAccessible::Graphic);
    sheet_->setAccessibleName(tr("No pages yet"));
    connect(verticalScrollBar(), &QScrollBar::valueChanged, this, [this] {
        const int page = current_page();
        if (page != last_page_) Q_EMIT page_changed(last_page_ = page);
    });
}

void PagesView::set_pages(const render::PatternPages& pages) {
    const int place = verticalScrollBar()->value();
    pages_ = pages;
    lay_out();
    verticalScrollBar()->setValue(place);
    sheet_->setAccessibleName(tr("%1, %2").arg(pages.title(), pages_words(pages.count())));
    setAccessibleDescription(
        tr("%1, %2. To read the pattern as text, copy it: Pattern, Copy the whole toy as text.")
            .arg(pages.title(), pages_words(pages.count())));
}

int PagesView::current_page() const {
    if (!pages_) return 0;
    const int middle = verticalScrollBar()->value() + viewport()->height() / 2;
    for (int page = page_count() - 1; page > 0; --page) {
        if (sheet_->page_rect(page).top() <= middle) return page;
    }
    return 0;
}

void PagesView::go_to(int page) {
    if (!pages_ || page < 0 || page >= page_count()) return;
    verticalScrollBar()->setValue(sheet_->page_rect(page).top() - gap / 2);
}

double PagesView::fitting_zoom() const {
    if (!pages_) return 1;
    const double room = viewport()->width() - 2 * gap;
    return room / (pages_->size().width() / render::units_per_inch * logicalDpiX());
}

double PagesView::zoom() const {
    return std::clamp(zoom_ > 0 ? zoom_ : fitting_zoom(), least_zoom, most_zoom);
}

void PagesView::set_zoom(double zoom) {
    const int page = current_page();
    zoom_ = zoom;
    lay_out();
    go_to(page);
}

void PagesView::zoom_by(double factor) { set_zoom(std::clamp(zoom() * factor, least_zoom, most_zoom)); }

void PagesView::lay_out() {
    if (!pages_) return;
    sheet_->resize(sheet_->wanted_size().expandedTo({viewport()->width(), 0}));
    sheet_->update();
}

void PagesView::resizeEvent(QResizeEvent* event) {
    QScrollArea::resizeEvent(event);
    lay_out();
}

void PagesView::wheelEvent(QWheelEvent* event) {
    if ((event->modifiers() & Qt::ControlModifier) == 0) return QScrollArea::wheelEvent(event);
    zoom_by(event->angleDelta().y() > 0 ? 1.1 : 1 / 1.1);
    event->accept();
}

}  // namespace roundwright::app
