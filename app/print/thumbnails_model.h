#pragma once

#include <optional>
#include <vector>

#include <QAbstractListModel>
#include <QPixmap>

#include "render/pages/pattern_pages.h"

namespace roundwright::app {

/// A small picture of every page of a pattern, drawn when it is first looked at.
class ThumbnailsModel : public QAbstractListModel {
    Q_OBJECT
  public:
    explicit ThumbnailsModel(QObject* parent = nullptr) : QAbstractListModel(parent) {}

    void set_pages(const render::PatternPages& pages, qreal device_pixel_ratio);
    [[nodiscard]] QSize picture_size() const;

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;

  private:
    [[nodiscard]] QPixmap picture(int page) const;

    std::optional<render::PatternPages> pages_;
    qreal device_pixel_ratio_ = 1;
    mutable std::vector<QPixmap> pictures_;
};

}  // namespace roundwright::app
