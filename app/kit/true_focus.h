#pragma once

#include <QAbstractItemView>
#include <QAccessible>
#include <QApplication>
#include <QFocusEvent>
#include <QTimer>

namespace roundwright::app {

/// A list or table that tells assistive technology where its current item is only while it has the keyboard,
/// and tells it when the keyboard comes. Qt's own sends a focus event whenever the current item changes, and
/// a screen reader follows that away from what is being typed. What Qt's lists and tables add to
/// `QAbstractItemView::currentChanged` is this event and nothing else.
template <class View>
class TrueFocus : public View {
  public:
    using View::View;

  protected:
    void currentChanged(const QModelIndex& current, const QModelIndex& previous) override {
        if (has_keyboard())
            View::currentChanged(current, previous);
        else
            QAbstractItemView::currentChanged(current, previous);
    }

    void focusInEvent(QFocusEvent* event) override {
        View::focusInEvent(event);
        // Qt tells of the widget itself once this has returned.
        QTimer::singleShot(0, this, [this] { tell_current(); });
    }

  private:
    /// A list of completions has the focus by proxy while another widget takes the keys.
    [[nodiscard]] bool has_keyboard() const { return QApplication::focusWidget() == this; }

    void tell_current() {
        const QModelIndex current = this->currentIndex();
        if (!QAccessible::isActive() || !has_keyboard() || !current.isValid()) return;
        auto* view = QAccessible::queryAccessibleInterface(this);
        auto* cells = view != nullptr ? view->tableInterface() : nullptr;
        auto* cell = cells != nullptr ? cells->cellAt(current.row(), current.column()) : nullptr;
        if (cell == nullptr) return;
        QAccessibleEvent event(cell, QAccessible::Focus);
        QAccessible::updateAccessibility(&event);
    }
};

}  // namespace roundwright::app
