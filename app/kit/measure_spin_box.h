#pragma once

#include <QDoubleSpinBox>

namespace roundwright::app {

/// A figure that is measured or counted. At its least value words may stand in its place ("not measured"):
/// they are no place to type a number into, and are typed over.
class MeasureSpinBox : public QDoubleSpinBox {
    Q_OBJECT
  public:
    explicit MeasureSpinBox(QWidget* parent = nullptr);

  protected:
    void focusInEvent(QFocusEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    [[nodiscard]] bool shows_words() const;

    bool clicked_into_ = false;
};

}  // namespace roundwright::app
