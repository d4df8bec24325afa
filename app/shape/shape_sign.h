#pragma once

#include <QTimer>

#include "app/kit/still_label.h"
#include "app/session/document_session.h"

namespace roundwright::app {

/// Says which shape is on show, and why, where it is the round one. It holds still while keys come: a round
/// shape that a finer one follows within a moment is not mentioned, neither to the eye nor to a screen
/// reader.
class ShapeSign : public StillLabel {
    Q_OBJECT
  public:
    explicit ShapeSign(const DocumentSession& session, QWidget* parent = nullptr);

    void follow();

  private:
    [[nodiscard]] QString now() const;
    [[nodiscard]] bool is_passing() const;
    void tell();

    const DocumentSession& session_;
    QTimer later_;
    int piece_ = -1;
};

}  // namespace roundwright::app
