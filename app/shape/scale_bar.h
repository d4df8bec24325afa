#pragma once

#include <QWidget>

#include "app/kit/preferences.h"

namespace roundwright::app {

/// A bar of a round length at the scale of the picture, with its length beside it.
class ScaleBar : public QWidget {
    Q_OBJECT
  public:
    explicit ScaleBar(Preferences& preferences, QWidget* parent = nullptr);

    void set_pixels_per_mm(double pixels_per_mm);
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override { return sizeHint(); }

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    void name_it();

    Preferences& preferences_;
    double pixels_per_mm_ = 0;
};

/// The longest of 1, 2, 5, 10, 20, 50 ... mm (or 1/8, 1/4, 1/2, 1, 2, 4 ... in) that fits `most_mm`.
[[nodiscard]] double scale_bar_length_mm(double most_mm, LengthUnit units);

}  // namespace roundwright::app
