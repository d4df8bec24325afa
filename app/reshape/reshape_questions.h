#pragma once

#include <QWidget>

#include "app/kit/preferences.h"
#include "core/reshape/resize.h"
#include "core/toy/toy.h"

class QCheckBox;
class QComboBox;
class QDoubleSpinBox;
class QFormLayout;
class QLabel;
class QPushButton;
class QRadioButton;
class QSlider;
class QSpinBox;

namespace roundwright::app {

class LengthSpinBox;

/// What is asked of a piece.
enum class Wish { width, height, width_and_height, around, scale, yarn_and_hook, by_hand };

/// The left side of the reshape dialog: what is asked of a piece, how much of it is worked, and how tidy its
/// rounds are to be.
class ReshapeQuestions : public QWidget {
    Q_OBJECT
  public:
    ReshapeQuestions(const Preferences& preferences, const Toy& toy, const PieceForm& form,
                     QWidget* parent = nullptr);

    [[nodiscard]] Wish wish() const;
    void set_wish(Wish wish);
    /// The size wished for; nothing for yarn and hook, and by hand.
    [[nodiscard]] Target target() const;
    /// The toy in the yarn and with the hook wished for.
    [[nodiscard]] Toy worked_as() const;
    /// In another yarn, the rounds stay and not the size.
    [[nodiscard]] bool keeps_rounds() const;
    /// The other pieces are to become as much larger or smaller as this one.
    [[nodiscard]] bool for_all_pieces() const;
    [[nodiscard]] WorkedSoFar worked() const;
    [[nodiscard]] double tidiness() const;
    /// How far along the outline a handle takes its neighbours with it.
    [[nodiscard]] double reach_mm() const;
    /// The field that answers the question; null if that is not here.
    [[nodiscard]] QWidget* first_field() const;
    /// The maker is going through the wishes with the keys.
    [[nodiscard]] bool is_choosing() const;

  Q_SIGNALS:
    void wish_changed();
    /// An answer to anything else.
    void edited();
    void started_over();

  private:
    void make_sizes(const Preferences& preferences, const PieceForm& form);
    void make_yarn_and_hook();
    void make_wishes();
    void make_fields();
    QWidget* progress_part(const Piece& piece);
    QWidget* tidiness_part();
    void lay_out(const Piece& piece);
    void connect_all();
    void show_fields();
    void choose_weight();

    Toy toy_;
    PieceGraph graph_;
    WorkedSoFar worked_;

    QLabel* question_;
    QComboBox* wish_;
    QFormLayout* fields_;
    LengthSpinBox* width_;
    LengthSpinBox* height_;
    LengthSpinBox* around_;
    QDoubleSpinBox* scale_;
    QCheckBox* all_pieces_;
    QComboBox* weight_;
    QDoubleSpinBox* hook_;
    QRadioButton* keep_size_;
    QRadioButton* keep_rounds_;
    LengthSpinBox* reach_;
    QPushButton* start_over_;
    QSpinBox* worked_rounds_;
    QSpinBox* worked_stitches_;
    QSlider* tidiness_;
};

}  // namespace roundwright::app
