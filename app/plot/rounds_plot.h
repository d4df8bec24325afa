#pragma once

#include <memory>
#include <optional>

#include <QWidget>

#include "app/session/document_session.h"

namespace roundwright::app {

/// Along the rounds of the current piece: how wide it is, how it grows against what lies flat, and how far
/// the fabric is stretched; with the limits drawn in. Pointing names a round, a click or the arrow keys
/// select it.
class RoundsPlot : public QWidget {
    Q_OBJECT
  public:
    explicit RoundsPlot(DocumentSession& session, QWidget* parent = nullptr);

    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;
    /// The round drawn at this x; nothing off the plot.
    [[nodiscard]] std::optional<int> round_at(double x) const;
    [[nodiscard]] double x_of(int round) const;

  protected:
    void paintEvent(QPaintEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void leaveEvent(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    bool event(QEvent* event) override;

  private:
    void show_study();
    void describe();
    [[nodiscard]] QRectF strip_area(int strip) const;
    void draw_columns(QPainter& painter) const;
    void draw_numbers(QPainter& painter) const;

    DocumentSession& session_;
    std::shared_ptr<const PieceStudy> study_;
    int hovered_ = -1;
};

}  // namespace roundwright::app
