#pragma once

#include <set>

#include <QObject>

#include "app/kit/notice_bar.h"
#include "app/session/document_session.h"

namespace roundwright::app {

/// Asks for the measures of the first piece that is finished, in a notice: when a piece comes to its last
/// round here, and nothing was measured on a finished piece of the toy yet. "Not now" holds for that piece.
class FinishedPieceNotice : public QObject {
    Q_OBJECT
  public:
    FinishedPieceNotice(DocumentSession& session, NoticeBar& notices, QObject* parent);

  Q_SIGNALS:
    /// The maker wants to measure it; it is the current piece.
    void wanted();

  private:
    void begin();
    void follow_toy();
    void ask(PieceId piece);
    void take_down();
    [[nodiscard]] std::set<PieceId> finished_pieces() const;

    DocumentSession& session_;
    NoticeBar& notices_;
    std::set<PieceId> finished_;  ///< as of the last look
    std::set<PieceId> put_off_;
    PieceId asked_ = PieceId::none;
};

}  // namespace roundwright::app
