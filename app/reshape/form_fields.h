#pragma once

#include <QWidget>

#include "app/kit/preferences.h"
#include "core/reshape/forms.h"

class QCheckBox;
class QFormLayout;

namespace roundwright::app {

class LengthSpinBox;

/// The sizes of a form: those that its kind has.
class FormFields : public QWidget {
    Q_OBJECT
  public:
    explicit FormFields(const Preferences& preferences, QWidget* parent = nullptr);

    /// The usual sizes of this kind, as wide as the form before it.
    void choose(FormKind kind);
    [[nodiscard]] Form form() const;

  Q_SIGNALS:
    void edited();

  private:
    void build(const Preferences& preferences);
    void show_sizes();
    void show_fields();

    Form form_;
    QFormLayout* layout_;
    LengthSpinBox* width_;
    LengthSpinBox* height_;
    LengthSpinBox* top_;
    LengthSpinBox* waist_;
    QCheckBox* tip_;
    QCheckBox* closed_;
};

}  // namespace roundwright::app
