#pragma once

#include <optional>

#include <QDialog>

#include "app/session/document_session.h"
#include "core/reshape/frog_back.h"
#include "core/reshape/piece_form.h"

class QComboBox;
class QLabel;
class QPushButton;
class QSpinBox;

namespace roundwright::app {

class OutlineView;

/// Works two pieces of the toy as one: the current one up to its neck, then the other from its neck on.
/// Accepted, it is one undo step; the other piece stays as it is.
class JoinDialog : public QDialog {
    Q_OBJECT
  public:
    explicit JoinDialog(DocumentSession& session, QWidget* parent = nullptr);

    [[nodiscard]] QString frog_back() const;

    void accept() override;

  private:
    void build();
    void choose_other();
    void work_out();

    DocumentSession& session_;
    PieceForm first_;
    std::optional<PieceForm> other_;
    std::optional<Piece> joined_;
    FrogBack back_;

    QComboBox* others_;
    QSpinBox* neck_;
    OutlineView* outline_;
    QLabel* frog_back_;
    QLabel* answer_;
    QPushButton* apply_;
};

}  // namespace roundwright::app
