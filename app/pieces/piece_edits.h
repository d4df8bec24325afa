#pragma once

#include "app/session/document_session.h"

namespace roundwright::app {

/// The edits of the toy's list of pieces and of one piece's making, each one undo step with a name. All but
/// `add` need a current piece.
class PieceEdits {
  public:
    explicit PieceEdits(DocumentSession& session) : session_(session) {}

    bool add();
    bool duplicate();
    bool rename(const QString& name);
    bool remove();
    bool move(int from, int to);
    bool set_start(const Start& start);
    /// On the edges of other pieces, with so many chains between them.
    bool begin_on_edges(int chains_between);
    bool set_end(End end);
    bool set_joining(Joining joining);
    bool set_starts_at_top(bool at_top);
    bool set_make(int make);

  private:
    bool insert(int at, const Piece& piece, const QString& text);
    [[nodiscard]] QString name() const;
    [[nodiscard]] std::size_t current() const;

    DocumentSession& session_;
};

/// The toy with a piece that came in at `at` sewn on where it may be meant to go, so that the toy stays
/// together; where no other piece has rounds there is no place yet.
[[nodiscard]] Toy with_a_first_place(Toy toy, std::size_t at);

/// A toy with one empty piece and one yarn, ready for the first round.
[[nodiscard]] Toy empty_toy();

}  // namespace roundwright::app
