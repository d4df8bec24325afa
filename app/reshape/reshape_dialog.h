#pragma once

#include <memory>
#include <optional>

#include <QDialog>

#include "app/reshape/latest_task.h"
#include "app/reshape/reshape_answer.h"
#include "app/session/document_session.h"
#include "core/reshape/continue_from_here.h"
#include "core/reshape/reshape_toy.h"
#include "core/reshape/sculpt.h"

class QComboBox;
class QDoubleSpinBox;
class QFormLayout;
class QLabel;
class QPushButton;
class QSlider;
class QSpinBox;
class QTableView;

namespace roundwright::app {

class LengthSpinBox;
class PreviewStack;
class RoundsComparisonModel;
class WaysModel;

/// What is asked of a piece.
enum class Wish { width, height, width_and_height, around, scale, hook, by_hand };

/// New rounds for the current piece: for a size, for another hook, or for an outline drawn by hand. Old and
/// new are laid over each other, the rounds stand side by side, and a line says what to undo of what is
/// worked. Accepted, it is one undo step; nothing changes before.
class ReshapeDialog : public QDialog {
    Q_OBJECT
  public:
    explicit ReshapeDialog(DocumentSession& session, QWidget* parent = nullptr);

    void set_wish(Wish wish);
    [[nodiscard]] bool busy() const { return task_.busy(); }
    [[nodiscard]] QString answer() const;
    [[nodiscard]] QString frog_back() const;
    [[nodiscard]] PreviewStack& preview() { return *preview_; }

    void accept() override;

  private:
    void build();
    QWidget* questions();
    void make_sizes();
    void make_other_wishes();
    void make_fields();
    QWidget* progress_part();
    QWidget* tidiness_part();
    QWidget* answers();
    void connect_all();
    void show_fields();
    [[nodiscard]] Wish wish() const;
    [[nodiscard]] Target target() const;
    [[nodiscard]] WorkedSoFar worked() const;
    [[nodiscard]] ReshapeOptions options() const;
    void work_out();
    void take(ReshapeAnswer answer);
    void propose(ReshapeProposal proposal);
    void choose_way(int row);
    void show_proposal();
    void show_nothing(const QString& why);

    // By hand.
    void begin_drawing();
    void draw(const Silhouette& outline);
    void drag_to(const Vec2& by_mm);
    void nudge(const Vec2& by_mm);

    DocumentSession& session_;
    int piece_;
    std::shared_ptr<const PieceForm> form_;
    std::optional<SculptStart> sculpt_;
    Silhouette drag_base_;
    std::optional<Shape> drawn_shape_;
    std::optional<ReshapeProposal> proposal_;
    LatestTask task_;

    QComboBox* wish_;
    QLabel* question_;
    QFormLayout* fields_;
    LengthSpinBox* width_;
    LengthSpinBox* height_;
    LengthSpinBox* around_;
    QDoubleSpinBox* scale_;
    QDoubleSpinBox* hook_;
    LengthSpinBox* reach_;
    QPushButton* start_over_;
    QSlider* tidiness_;
    QSpinBox* worked_rounds_;
    QSpinBox* worked_stitches_;
    PreviewStack* preview_;
    QPushButton* as_fabric_;
    QLabel* handle_words_;
    QLabel* answer_;
    QLabel* frog_back_;
    QLabel* more_;
    QLabel* ways_title_;
    QTableView* ways_;
    WaysModel* ways_model_;
    QTableView* rounds_;
    RoundsComparisonModel* rounds_model_;
    QPushButton* apply_;
};

}  // namespace roundwright::app
