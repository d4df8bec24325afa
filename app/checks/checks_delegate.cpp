#include "app/checks/checks_delegate.h"

#include <algorithm>

#include <QAbstractItemView>
#include <QMouseEvent>
#include <QPainter>

#include "app/checks/checks_model.h"
#include "app/kit/theme.h"

namespace roundwright::app {
namespace {

QString cure_label(const QModelIndex& index) { return index.data(ChecksModel::cure_label_role).toString(); }

constexpr int margin = 12;
constexpr int gap = 10;
constexpr int wrapping = Qt::AlignLeft | Qt::AlignVCenter | Qt::TextWordWrap;

/// At least the 24 px of WCAG 2.2, 2.5.8.
int button_height(const QFontMetrics& metrics) { return std::max(metrics.height() + 8, 24); }

QRect button_rect(const QStyleOptionViewItem& option, const QString& label) {
    if (label.isEmpty()) return {option.rect.right(), option.rect.top(), 0, option.rect.height()};
    const int width = option.fontMetrics.horizontalAdvance(label) + 28;
    const int height = button_height(option.fontMetrics);
    return {option.rect.right() - width - gap, option.rect.center().y() - height / 2, width, height};
}

QRect sign_rect(const QStyleOptionViewItem& option) {
    const int side = option.fontMetrics.height();
    return {option.rect.left() + margin, option.rect.center().y() - side / 2, side, side};
}

QRect text_rect(const QStyleOptionViewItem& option, const QString& label) {
    const int left = sign_rect(option).right() + gap;
    return {left, option.rect.top(), button_rect(option, label).left() - gap - left, option.rect.height()};
}

void paint_button(QPainter* painter, const QStyleOptionViewItem& option, const QRect& rect,
                  const QString& label) {
    painter->setRenderHint(QPainter::Antialiasing);
    painter->setPen(QPen(Theme::colours().accent, 1));
    painter->setBrush(option.palette.color(QPalette::Base));
    painter->drawRoundedRect(QRectF(rect).adjusted(0.5, 0.5, -0.5, -0.5), 5, 5);
    painter->setPen(option.palette.color(QPalette::Link));
    painter->drawText(rect, Qt::AlignCenter, label);
}

}  // namespace

void ChecksDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                           const QModelIndex& index) const {
    painter->save();
    const bool selected = (option.state & QStyle::State_Selected) != 0;
    if (selected) painter->fillRect(option.rect, Theme::colours().soft_accent);
    const QString label = cure_label(index);
    index.data(Qt::DecorationRole).value<QIcon>().paint(painter, sign_rect(option));
    painter->setPen(option.palette.color(QPalette::Text));
    painter->drawText(text_rect(option, label), wrapping, index.data().toString());
    if (!label.isEmpty()) paint_button(painter, option, button_rect(option, label), label);
    painter->restore();
}

int ChecksDelegate::least_height(const QFontMetrics& metrics) { return button_height(metrics) + 8; }

QSize ChecksDelegate::sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const {
    constexpr int tallest = 10'000;
    QStyleOptionViewItem laid_out = option;
    const auto* view = qobject_cast<const QAbstractItemView*>(option.widget);
    const int width = view == nullptr ? option.rect.width() : view->viewport()->width();
    laid_out.rect = QRect(0, 0, std::max(width, 1), tallest);
    const QRect room = text_rect(laid_out, cure_label(index));
    const int words = option.fontMetrics.boundingRect(room, wrapping, index.data().toString()).height();
    return {laid_out.rect.width(), std::max(words + 8, least_height(option.fontMetrics))};
}

bool ChecksDelegate::editorEvent(QEvent* event, QAbstractItemModel* model, const QStyleOptionViewItem& option,
                                 const QModelIndex& index) {
    if (event->type() == QEvent::MouseButtonRelease) {
        const QString label = cure_label(index);
        const auto* mouse = static_cast<QMouseEvent*>(event);
        if (!label.isEmpty() && button_rect(option, label).contains(mouse->position().toPoint())) {
            Q_EMIT cure_clicked(index.row());
            return true;
        }
    }
    return QStyledItemDelegate::editorEvent(event, model, option, index);
}

}  // namespace roundwright::app
