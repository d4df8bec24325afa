#pragma once

#include <functional>
#include <optional>
#include <vector>

#include <QWidget>

#include "app/assembly/toy_units.h"
#include "app/kit/length_spin_box.h"

class QCheckBox;
class QComboBox;
class QDoubleSpinBox;
class QFormLayout;
class QSpinBox;

namespace roundwright::app {

/// Where one unit of the toy is sewn on, and how, in fields.
class JoinFields : public QWidget {
    Q_OBJECT
  public:
    explicit JoinFields(const Preferences& preferences, QWidget* parent = nullptr);

    void show_unit(const Toy& toy, const ToyUnit& unit);

    using Edit = std::function<void(Join&)>;

  Q_SIGNALS:
    void onto_chosen(const std::optional<roundwright::PieceCopy>& onto);
    void pair_chosen(bool pair);
    void edited(const QString& step, const roundwright::app::JoinFields::Edit& edit,
                const QString& merge_key);

  private:
    void build();
    void connect_choices();
    void connect_numbers();
    void show_choices(const Toy& toy, const ToyUnit& unit);
    void show_join(const Toy& toy, const Join& join);
    [[nodiscard]] QDoubleSpinBox* degrees_box(double most);

    QFormLayout* form_;
    QComboBox* onto_;
    QCheckBox* pair_;
    QComboBox* end_;
    QComboBox* seam_;
    QSpinBox* round_;
    QCheckBox* around_;
    QDoubleSpinBox* right_;
    QDoubleSpinBox* turn_;
    QDoubleSpinBox* lean_;
    QDoubleSpinBox* lean_right_;
    LengthSpinBox* sink_;
    std::vector<std::optional<PieceCopy>> choices_;  ///< of `onto_`
};

}  // namespace roundwright::app
