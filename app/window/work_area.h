#pragma once

#include <QGridLayout>
#include <QSplitter>
#include <QWidget>

#include "app/shape/shape_panel.h"
#include "app/window/panel_column.h"

namespace roundwright::app {

/// Rounds and shape side by side over the line of next rounds, and the panels at the right of all three.
/// Where the window is too narrow for that, as with large type, the panels are a strip of signs, and one that
/// is opened takes the place of the rounds until it is folded, so that the shape shows what it does.
class WorkArea : public QWidget {
    Q_OBJECT
  public:
    struct Parts {
        QWidget* rounds;
        QWidget* picture;   ///< of the piece or the whole toy
        ShapePanel* shape;  ///< in the picture's place
        QWidget* next_rounds;
        PanelColumn* panels;
    };
    explicit WorkArea(const Parts& parts, QWidget* parent = nullptr);

    [[nodiscard]] QSplitter& columns() { return *columns_; }
    /// Whether a panel that is opened covers the rounds.
    [[nodiscard]] bool is_narrow() const { return narrow_; }
    /// Uncovers the rounds.
    void show_rounds();
    [[nodiscard]] QSize minimumSizeHint() const override;

  protected:
    void resizeEvent(QResizeEvent* event) override;
    void changeEvent(QEvent* event) override;

  private:
    [[nodiscard]] int narrowest_rounds() const;
    [[nodiscard]] int side_by_side() const;
    void arrange();
    void give_the_shape_its_room();
    void cover_or_show_rounds();

    Parts parts_;
    QSplitter* columns_;
    bool narrow_ = false;
};

/// A line as wide as its place.
[[nodiscard]] QWidget* ruled_line(QWidget* parent);

}  // namespace roundwright::app
