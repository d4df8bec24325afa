#pragma once

#include <optional>

#include <QScrollArea>

#include "render/pages/pattern_pages.h"

namespace roundwright::app {

/// The pages of a pattern one below the other, as they will be printed.
class PagesView : public QScrollArea {
    Q_OBJECT
  public:
    explicit PagesView(QWidget* parent = nullptr);

    void set_pages(const render::PatternPages& pages);
    [[nodiscard]] int page_count() const { return pages_ ? pages_->count() : 0; }
    [[nodiscard]] int current_page() const;
    void go_to(int page);
    /// Zoom factor by which a page is shown; 1 is its true size. 0: as wide as the view.
    void set_zoom(double zoom);
    void zoom_by(double factor);
    [[nodiscard]] double zoom() const;

  Q_SIGNALS:
    void page_changed(int page);

  protected:
    void resizeEvent(QResizeEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;

  private:
    class Sheet;
    void lay_out();
    [[nodiscard]] double fitting_zoom() const;

    std::optional<render::PatternPages> pages_;
    Sheet* sheet_;
    double zoom_ = 0;
    int last_page_ = 0;
};

}  // namespace roundwright::app
