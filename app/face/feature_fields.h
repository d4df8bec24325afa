#pragma once

#include <functional>

#include <QWidget>

#include "core/face/place_feature.h"
#include "core/toy/feature.h"

class QCheckBox;
class QComboBox;
class QDoubleSpinBox;
class QFormLayout;
class QPushButton;
class QSpinBox;

namespace roundwright::app {

/// The fields of one feature: its place, size and looks. What the maker changes goes out as an edit.
class FeatureFields : public QWidget {
    Q_OBJECT
  public:
    using Edit = std::function<void(Feature&)>;

    explicit FeatureFields(QWidget* parent = nullptr);

    void show_feature(const Feature& feature);

  Q_SIGNALS:
    /// `step`: a name for undo. Edits with the same key that follow each other are one step; empty: never.
    void edited(const QString& step, const FeatureFields::Edit& edit, const QString& merge_key);
    void spacing_wanted(EyeSpacing spacing);

  private:
    void build();
    [[nodiscard]] QWidget* spacing_buttons();
    void connect_place();
    void connect_size();
    void connect_looks();
    void take_width();
    void choose_colour();
    void show_rows(const Feature& feature);

    Feature shown_;
    QFormLayout* form_;
    QSpinBox* round_;
    QCheckBox* pair_;
    QSpinBox* apart_;
    QDoubleSpinBox* right_;
    QSpinBox* end_round_;
    QDoubleSpinBox* end_right_;
    QComboBox* width_;
    QDoubleSpinBox* height_;
    QPushButton* colour_;
    QCheckBox* lids_;
    QWidget* spacings_;
};

}  // namespace roundwright::app
