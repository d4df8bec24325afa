#pragma once

#include <optional>

#include <QDialog>

#include "app/session/document_session.h"
#include "core/reshape/forms.h"
#include "core/reshape/frog_back.h"
#include "render/background/background.h"

class QLabel;
class QListWidget;
class QPushButton;
class QRadioButton;

namespace roundwright::app {

class Announcer;
class FormFields;
class OutlineView;

/// A piece from a form with its finished sizes: ball, egg, pear and so on, as a new piece or in place of the
/// rounds of the current one. Accepted, it is one undo step.
class FormDialog : public QDialog {
    Q_OBJECT
  public:
    explicit FormDialog(DocumentSession& session, QWidget* parent = nullptr);

    [[nodiscard]] bool busy() const { return task_.busy(); }
    [[nodiscard]] QString answer() const;
    [[nodiscard]] QString frog_back() const;

    void accept() override;

  private:
    void build();
    QWidget* questions();
    void make_counts();
    void make_places();
    QWidget* answers();
    void connect_all();
    [[nodiscard]] FormCounts counts_wanted() const;
    [[nodiscard]] double area_stretch() const;
    void work_out();
    void take(Reshaped made);
    void show_nothing(const QString& why);
    void show_frog_back();
    void say_answer();
    bool put_in_place();
    bool add(const Piece& made);

    DocumentSession& session_;
    render::Background task_;
    std::optional<Reshaped> made_;
    std::optional<PieceForm> old_;  ///< the piece whose place it may take
    std::optional<FrogBack> back_;  ///< of that piece, where its place is taken

    Announcer* announcer_;
    QListWidget* kinds_;
    FormFields* fields_;
    QRadioButton* to_size_;
    QRadioButton* to_form_;
    QRadioButton* as_new_;
    QRadioButton* in_place_;
    OutlineView* outline_;
    QLabel* frog_back_;
    QLabel* answer_;
    QLabel* rounds_;
    QPushButton* apply_;
};

}  // namespace roundwright::app
