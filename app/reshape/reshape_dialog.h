#pragma once

#include <memory>
#include <optional>

#include <QDialog>

#include "app/reshape/reshape_answer.h"
#include "app/reshape/reshape_questions.h"
#include "app/session/document_session.h"
#include "core/reshape/sculpt.h"
#include "render/background/background.h"

class QLabel;
class QPushButton;
class QVBoxLayout;

namespace roundwright::app {

class Announcer;
class HandSculpting;
class PreviewStack;
class ReshapeAnswers;

/// New rounds for the current piece: for a size, for another yarn or hook, or for an outline drawn by hand.
/// Old and new are laid over each other, the rounds stand side by side, and a line says what to undo of what
/// is worked. Accepted, it is one undo step; nothing changes before.
class ReshapeDialog : public QDialog {
    Q_OBJECT
  public:
    explicit ReshapeDialog(DocumentSession& session, QWidget* parent = nullptr);

    void set_wish(Wish wish) { questions_->set_wish(wish); }
    [[nodiscard]] bool busy() const { return task_.busy(); }
    [[nodiscard]] QString answer() const;
    [[nodiscard]] QString frog_back() const;
    [[nodiscard]] PreviewStack& preview() { return *preview_; }

    void accept() override;

  private:
    void build();
    [[nodiscard]] bool has_room_for_three() const;
    [[nodiscard]] QWidget* picture_over_answers();
    QVBoxLayout* picture();
    void connect_all();
    [[nodiscard]] bool by_hand() const { return questions_->wish() == Wish::by_hand; }
    void change_wish();
    void show_legend();
    void ask();
    [[nodiscard]] ReshapeQuestion question() const;
    void take(ReshapeAnswer answer);
    void take_sculpted(const Sculpted& sculpted);
    void start_by_hand();
    void propose(ReshapeProposal proposal);
    void show_nothing(const QString& why);
    [[nodiscard]] QString answer_words() const;
    [[nodiscard]] QString remarks() const;
    [[nodiscard]] bool same_rounds() const;  ///< in another yarn
    void show_proposal();

    DocumentSession& session_;
    int piece_;
    std::shared_ptr<const PieceForm> form_;
    std::optional<ReshapeProposal> proposal_;
    std::optional<double> off_line_mm_;  ///< of a proposal by hand, from the line drawn
    render::Background task_;

    Announcer* announcer_;
    ReshapeQuestions* questions_;
    ReshapeAnswers* answers_;
    PreviewStack* preview_;
    HandSculpting* sculpting_;
    QLabel* handle_words_;
    QLabel* legend_;
    QPushButton* as_fabric_;
    QPushButton* apply_;
};

}  // namespace roundwright::app
