#pragma once

#include <QWidget>

#include "app/session/document_session.h"

class QCheckBox;
class QComboBox;
class QDoubleSpinBox;
class QLabel;
class QSpinBox;
class QStackedWidget;

namespace roundwright::app {

class LengthSpinBox;

/// Where the gauge comes from, and what it comes to: width and height of a stitch, with their range.
class GaugePanel : public QWidget {
    Q_OBJECT
  public:
    explicit GaugePanel(DocumentSession& session, QWidget* parent = nullptr);

  private:
    QWidget* swatch_page();
    QWidget* circle_page();
    QWidget* estimate_page();
    QWidget* given_page();

    void choose_source(int index);
    void take_swatch();
    void take_circle();
    void take_given();
    void set_source(const GaugeSource& source);
    void show_toy();
    void show_pages();
    void show_result();

    DocumentSession& session_;
    QComboBox* source_;
    QStackedWidget* pages_;
    QLabel* result_;

    QDoubleSpinBox* swatch_stitches_;
    LengthSpinBox* swatch_width_;
    QDoubleSpinBox* swatch_rounds_;
    LengthSpinBox* swatch_height_;
    QCheckBox* swatch_in_rows_;
    QDoubleSpinBox* swatch_hook_;

    QSpinBox* circle_rounds_;
    QSpinBox* circle_increases_;
    LengthSpinBox* circle_across_;
    QComboBox* circle_lie_;
    QDoubleSpinBox* circle_hook_;

    LengthSpinBox* given_width_;
    LengthSpinBox* given_height_;
};

}  // namespace roundwright::app
