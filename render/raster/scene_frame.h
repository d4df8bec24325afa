#pragma once

#include <QWidget>

namespace roundwright::render {

/// Holds the view and draws the focus ring in a margin around it, where a native window inside cannot cover
/// it.
class SceneFrame : public QWidget {
    Q_OBJECT
  public:
    SceneFrame(QWidget* inner, QWidget* parent);

    void set_ring(bool shown);
    [[nodiscard]] bool ring() const { return ring_; }
    void set_fill(const QColor& colour);

    [[nodiscard]] QSize sizeHint() const override { return {640, 560}; }
    [[nodiscard]] QSize minimumSizeHint() const override { return {160, 140}; }

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    bool ring_ = false;
    QColor fill_;
};

}  // namespace roundwright::render
