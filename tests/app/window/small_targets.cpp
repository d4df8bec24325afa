#include "tests/app/window/small_targets.h"

#include <algorithm>
#include <vector>

#include <QAbstractButton>
#include <QAbstractItemView>
#include <QAbstractSlider>
#include <QAbstractSpinBox>
#include <QComboBox>
#include <QHeaderView>
#include <QLineEdit>
#include <QMenuBar>
#include <QScrollBar>
#include <QStyle>
#include <QStyleOptionSlider>
#include <QTabBar>

namespace roundwright::app {
namespace {

constexpr int least = 24;

struct Target {
    QRect place;  ///< in the window
    QString name;
};

/// Reads what a scroll bar would be drawn with.
class OpenScrollBar : public QScrollBar {
  public:
    static QRect thumb(const QScrollBar& bar) {
        QStyleOptionSlider option;
        (bar.*(&OpenScrollBar::initStyleOption))(&option);
        return bar.style()->subControlRect(QStyle::CC_ScrollBar, &option, QStyle::SC_ScrollBarSlider, &bar);
    }
    static bool has_arrows(const QScrollBar& bar) {
        QStyleOptionSlider option;
        (bar.*(&OpenScrollBar::initStyleOption))(&option);
        return !bar.style()
                    ->subControlRect(QStyle::CC_ScrollBar, &option, QStyle::SC_ScrollBarAddLine, &bar)
                    .isEmpty();
    }
};

class Finder {
  public:
    explicit Finder(const QWidget& window) : window_(window) {
        for (const auto* widget : window.findChildren<QWidget*>()) {
            const bool there = widget->isVisible() && widget->isEnabled() && widget->window() == &window;
            if (there && !widget->visibleRegion().isEmpty()) take(*widget);
        }
    }
    [[nodiscard]] const std::vector<Target>& targets() const { return targets_; }

  private:
    static bool is_part(const QWidget& widget) {
        const QWidget* parent = widget.parentWidget();
        return qobject_cast<const QAbstractSpinBox*>(parent) || qobject_cast<const QComboBox*>(parent) ||
               qobject_cast<const QLineEdit*>(parent) || qobject_cast<const QTabBar*>(parent) ||
               widget.objectName().startsWith(QStringLiteral("qt_"));
    }
    void add(const QWidget& widget, const QRect& part, const QString& what) {
        const QRect place(widget.mapTo(&window_, part.topLeft()), part.size());
        targets_.push_back(
            {place, QStringLiteral("%1 %2 “%3”: %4 x %5")
                        .arg(QLatin1String(widget.metaObject()->className()), what,
                             widget.accessibleName().isEmpty() ? widget.property("text").toString()
                                                               : widget.accessibleName())
                        .arg(part.width())
                        .arg(part.height())});
    }
    void take(const QWidget& widget) {
        if (is_part(widget)) return;
        if (const auto* bar = qobject_cast<const QScrollBar*>(&widget)) return take_bar(*bar);
        if (const auto* head = qobject_cast<const QHeaderView*>(&widget)) return take_sections(*head);
        if (const auto* view = qobject_cast<const QAbstractItemView*>(&widget)) return take_rows(*view);
        if (const auto* tabs = qobject_cast<const QTabBar*>(&widget)) {
            for (int at = 0; at < tabs->count(); ++at) add(*tabs, tabs->tabRect(at), tabs->tabText(at));
            return;
        }
        if (const auto* menus = qobject_cast<const QMenuBar*>(&widget)) {
            for (QAction* menu : menus->actions()) add(*menus, menus->actionGeometry(menu), menu->text());
            return;
        }
        const bool pressed =
            qobject_cast<const QAbstractButton*>(&widget) || qobject_cast<const QComboBox*>(&widget) ||
            qobject_cast<const QAbstractSpinBox*>(&widget) || qobject_cast<const QLineEdit*>(&widget) ||
            qobject_cast<const QAbstractSlider*>(&widget);
        if (pressed) add(widget, widget.rect(), {});
    }
    /// The thumb is as thick as the bar, and stands at the edge of what it scrolls, which wheel and keys do.
    void take_bar(const QScrollBar& bar) {
        if (bar.minimum() == bar.maximum()) return;
        QRect thumb = OpenScrollBar::thumb(bar);
        if (OpenScrollBar::has_arrows(bar))
            add(bar, QRect(0, 0, bar.width(), bar.width()), QStringLiteral("with arrows"));
        (bar.orientation() == Qt::Vertical ? thumb.setWidth(least) : thumb.setHeight(least));
        add(bar, thumb, QStringLiteral("thumb"));
    }
    void take_sections(const QHeaderView& head) {
        if (!head.sectionsClickable()) return;
        for (int at = 0; at < head.count(); ++at) {
            if (head.isSectionHidden(at)) continue;
            const QRect section = head.orientation() == Qt::Horizontal
                                      ? QRect(0, 0, head.sectionSize(at), head.height())
                                      : QRect(0, 0, head.width(), head.sectionSize(at));
            add(head, section, QStringLiteral("section"));
        }
    }
    void take_rows(const QAbstractItemView& view) {
        if (view.selectionMode() == QAbstractItemView::NoSelection || view.model() == nullptr) return;
        constexpr int rows_looked_at = 3;
        for (int row = 0; row < std::min(rows_looked_at, view.model()->rowCount(view.rootIndex())); ++row) {
            const QRect place = view.visualRect(view.model()->index(row, 0, view.rootIndex()));
            if (view.viewport()->rect().contains(place)) add(*view.viewport(), place, view.accessibleName());
        }
    }

    const QWidget& window_;
    std::vector<Target> targets_;
};

/// Room for a circle of 24 px about its middle beside all others.
bool has_room(const Target& target, const std::vector<Target>& all) {
    const QPointF middle = QRectF(target.place).center();
    return std::ranges::all_of(all, [&](const Target& other) {
        if (&other == &target || other.place == target.place) return true;
        const QRectF place(other.place);
        const double right = std::max({place.left() - middle.x(), middle.x() - place.right(), 0.0});
        const double down = std::max({place.top() - middle.y(), middle.y() - place.bottom(), 0.0});
        return right * right + down * down >= least * least / 4.0;
    });
}

}  // namespace

QStringList small_targets(const QWidget& window) {
    const Finder finder(window);
    QStringList small;
    for (const Target& target : finder.targets()) {
        const bool large = target.place.width() >= least && target.place.height() >= least;
        if (!large && !has_room(target, finder.targets())) small << target.name;
    }
    small.removeDuplicates();
    return small;
}

}  // namespace roundwright::app
