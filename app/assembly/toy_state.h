#pragma once

#include <set>

#include <QObject>

#include "app/session/document_session.h"

namespace roundwright::app {

/// How the whole toy is looked at: which copy is picked, which are hidden, how far they are moved apart.
/// Nothing of it is the toy's own, or can be undone.
class ToyState : public QObject {
    Q_OBJECT
  public:
    explicit ToyState(DocumentSession& session, QObject* parent = nullptr);

    /// A copy of the current piece.
    [[nodiscard]] PieceCopy picked() const { return picked_; }
    /// Makes its piece the current one.
    void pick(const PieceCopy& copy);

    [[nodiscard]] bool is_hidden(const PieceCopy& copy) const { return hidden_.contains(copy); }
    [[nodiscard]] bool any_hidden() const { return !hidden_.empty(); }
    void set_hidden(const std::vector<PieceCopy>& copies, bool hidden);
    void show_all();

    /// 0: together; 1: as far apart as goes.
    [[nodiscard]] double apart() const { return apart_; }
    void set_apart(double share);

  Q_SIGNALS:
    void picked_changed();
    void hidden_changed();
    void apart_changed();

  private:
    void follow(const ChangeSet& changes);
    void follow_current();
    void forget_gone();

    DocumentSession& session_;
    PieceCopy picked_;
    std::set<PieceCopy> hidden_;
    double apart_ = 0;
};

}  // namespace roundwright::app
