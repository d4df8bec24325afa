#pragma once

#include <QWidget>

#include "app/kit/preferences.h"
#include "core/gauge/gauge_source.h"

class QCheckBox;
class QComboBox;
class QDoubleSpinBox;
class QLabel;
class QSpinBox;

namespace roundwright::app {

class LengthSpinBox;

/// What the maker says of where the gauge comes from: one page for each kind that has something to say. Each
/// shows a source without telling anyone, and says when the maker changed it. A measure of nought is not
/// measured yet: words stand in its place.

class SwatchPage : public QWidget {
    Q_OBJECT
  public:
    explicit SwatchPage(const Preferences& preferences);
    void show_source(const SwatchGauge& swatch);

  Q_SIGNALS:
    void edited(const roundwright::GaugeSource& source);

  private:
    void take();

    QDoubleSpinBox* stitches_;
    LengthSpinBox* width_;
    QDoubleSpinBox* rounds_;
    LengthSpinBox* height_;
    LengthSpinBox* error_;
    QDoubleSpinBox* hook_;
    QCheckBox* in_rows_;
};

class CirclePage : public QWidget {
    Q_OBJECT
  public:
    explicit CirclePage(const Preferences& preferences);
    void show_source(const CircleGauge& circle);

  Q_SIGNALS:
    void edited(const roundwright::GaugeSource& source);

  private:
    void take();

    QSpinBox* rounds_;
    QSpinBox* increases_;
    LengthSpinBox* across_;
    LengthSpinBox* error_;
    QComboBox* lie_;
    QDoubleSpinBox* hook_;
};

class GivenPage : public QWidget {
    Q_OBJECT
  public:
    explicit GivenPage(const Preferences& preferences);
    void show_source(const GivenGauge& given);

  Q_SIGNALS:
    void edited(const roundwright::GaugeSource& source);

  private:
    void take();

    QLabel* found_on_;
    LengthSpinBox* width_;
    LengthSpinBox* width_error_;
    LengthSpinBox* height_;
    LengthSpinBox* height_error_;
};

/// What a kind of source starts from: how a swatch or a gauge circle is usually worked, and nothing measured.
[[nodiscard]] SwatchGauge unmeasured_swatch(LengthUnit units);
[[nodiscard]] CircleGauge unmeasured_circle();
[[nodiscard]] GivenGauge unmeasured_stitch();

/// A paragraph of a panel.
[[nodiscard]] QLabel* remark(const QString& text);

}  // namespace roundwright::app
