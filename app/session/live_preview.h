#pragma once

#include <cstdint>
#include <utility>

#include "app/session/document_session.h"

namespace roundwright::app {

/// A change that is shown while it is being made (a drag, a slider) and becomes one undo step at its end.
/// Given up, or just destroyed, it leaves the toy as it was.
class LivePreview {
  public:
    LivePreview(DocumentSession& session, QString text)
        : session_(session), text_(std::move(text)), ticket_(session.begin_preview()) {}
    ~LivePreview() { roll_back(); }
    LivePreview(const LivePreview&) = delete;
    LivePreview& operator=(const LivePreview&) = delete;

    void show(Toy toy) { session_.show_preview(ticket_, std::move(toy)); }
    void commit() { session_.commit_preview(ticket_, text_); }
    void roll_back() { session_.roll_back_preview(ticket_); }

  private:
    DocumentSession& session_;
    QString text_;
    std::uint64_t ticket_;
};

}  // namespace roundwright::app
