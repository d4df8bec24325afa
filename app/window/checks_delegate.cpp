#include "app/window/checks_delegate.h"

#include <QApplication>
#include <QMouseEvent>
#include <QPainter>

#include "app/window/checks_model.h"
#include "app/window/theme.h"

namespace roundwright::app {
namespace {

QString cure_label(const QModelIndex& index) { return index.data(ChecksModel::cure_label_role).toString(); }

QRect button_rect(const QStyleOptionViewItem& option, const QString& label) {
    if (label.isEmpty()) return {option.rect.right(), option.rect.top(), 0, option.rect.height()};
    const int width = option.fontMetrics.horizontalAdvance(label) + 28;
    const int height = option.fontMetrics.height() + 8;
    return {option.rect.right() - width - 10, option.rect.center().y() - height / 2, width, height};
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

int ChecksDelegate::row_height(const QFontMetrics& metrics) { return 2 * metrics.lineSpacing() + 8; }

void ChecksDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                           const QModelIndex& index) const {
    painter->save();
    const bool selected = (option.state & QStyle::State_Selected) != 0;
    if (selected) painter->fillRect(option.rect, Theme::colours().soft_accent);
    const QString label = cure_label(index);
    const QRect button = button_rect(option, label);
    const int side = option.fontMetrics.height();
    const QRect sign(option.rect.left() + 12, option.rect.center().y() - side / 2, side, side);
    index.data(Qt::DecorationRole).value<QIcon>().paint(painter, sign);
    const QRect text(sign.right() + 10, option.rect.top(), button.left() - sign.right() - 20,
                     option.rect.height());
    painter->setPen(option.palette.color(QPalette::Text));
    painter->drawText(text, Qt::AlignLeft | Qt::AlignVCenter | Qt::TextWordWrap, index.data().toString());
    if (!label.isEmpty()) paint_button(painter, option, button, label);
    painter->restore();
}

QSize ChecksDelegate::sizeHint(const QStyleOptionViewItem& option, const QModelIndex&) const {
    return {200, row_height(option.fontMetrics)};
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
