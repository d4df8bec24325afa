#include "app/print/thumbnails_model.h"

#include <QPainter>

namespace roundwright::app {

namespace {
constexpr int picture_width = 110;
}

void ThumbnailsModel::set_pages(const render::PatternPages& pages, qreal device_pixel_ratio) {
    const int before = rowCount();
    const int after = pages.count();
    device_pixel_ratio_ = device_pixel_ratio;
    if (after > before) beginInsertRows({}, before, after - 1);
    if (after < before) beginRemoveRows({}, after, before - 1);
    pages_ = pages;
    pictures_.assign(static_cast<std::size_t>(after), QPixmap());
    if (after > before) endInsertRows();
    if (after < before) endRemoveRows();
    if (after > 0) Q_EMIT dataChanged(index(0), index(after - 1));
}

QSize ThumbnailsModel::picture_size() const {
    if (!pages_) return {picture_width, picture_width};
    return (pages_->size() * (picture_width / pages_->size().width())).toSize();
}

int ThumbnailsModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(pictures_.size());
}

QVariant ThumbnailsModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid)) return {};
    if (role == Qt::DisplayRole) return QString::number(index.row() + 1);
    if (role == Qt::AccessibleTextRole) return tr("Page %1").arg(index.row() + 1);
    if (role == Qt::TextAlignmentRole) return QVariant::fromValue(Qt::Alignment(Qt::AlignHCenter));
    if (role != Qt::DecorationRole) return {};
    QPixmap& kept = pictures_[static_cast<std::size_t>(index.row())];
    if (kept.isNull()) kept = picture(index.row());
    return kept;
}

QPixmap ThumbnailsModel::picture(int page) const {
    const QSize size = picture_size();
    QPixmap pixmap(size * device_pixel_ratio_);
    pixmap.setDevicePixelRatio(device_pixel_ratio_);
    pixmap.fill(Qt::white);
    QPainter painter(&pixmap);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.save();
    const double scale = size.width() / pages_->size().width();
    painter.scale(scale, scale);
    pages_->paint(painter, page);
    painter.restore();
    painter.setPen(QColor(0x9A, 0x9A, 0x94));
    painter.drawRect(QRectF(0.5, 0.5, size.width() - 1, size.height() - 1));
    return pixmap;
}

}  // namespace roundwright::app
