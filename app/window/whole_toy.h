#pragma once

#include <QObject>
#include <QStackedWidget>

#include "app/assembly/toy_actions.h"
#include "app/assembly/toy_panel.h"

class QMenu;

namespace roundwright::app {

class Announcer;
class FacePanel;
class FastEntryLine;
class PanelColumn;
class ShapePanel;
struct ShapeActions;

/// The whole toy in the window: while it is on show, its picture takes the place of the shape, and how it is
/// sewn together that of the rounds.
class WholeToy : public QObject {
    Q_OBJECT
  public:
    struct Parts {
        QWidget* rounds;  ///< the table with its buttons
        ShapePanel* shape;
        FastEntryLine* line;
    };
    WholeToy(DocumentSession& session, const Parts& parts, ShapeActions& shape_actions, QWidget* window);

    /// What stands in the place of rounds and joins, and of shape and toy.
    [[nodiscard]] QWidget* left() { return left_; }
    [[nodiscard]] QWidget* picture() { return picture_; }
    void fill_piece_menu(QMenu* menu);
    /// The keys that move an eye move the picked piece, and an eye that is picked opens its panel.
    void share_keys(FacePanel& face, PanelColumn& panels);
    void announce_to(Announcer& announcer);

    bool take_left();
    bool take_picture();
    void set_scene_colour(const QColor& colour);

    [[nodiscard]] ToyPanel& toy() { return *toy_; }
    [[nodiscard]] JoinsPanel& joins() { return *joins_; }
    [[nodiscard]] ToyState& state() { return *state_; }
    [[nodiscard]] ToyActions& actions() { return *actions_; }

  Q_SIGNALS:
    /// To the rounds of the piece that is picked.
    void rounds_wanted();
    /// Another field has come into the window.
    void scene_made();

  private:
    void follow(bool whole);
    void show_it(bool whole);
    [[nodiscard]] QString picked_in_words() const;

    DocumentSession& session_;
    Parts parts_;
    ShapeActions& shape_actions_;
    ToyState* state_;
    JoinsPanel* joins_;
    ToyPanel* toy_;
    ToyActions* actions_;
    QStackedWidget* left_;
    QStackedWidget* picture_;
};

}  // namespace roundwright::app
