#pragma once

#include <optional>
#include <set>
#include <tuple>
#include <vector>

#include <QObject>
#include <QTimer>

#include "app/kit/announcer.h"
#include "app/session/document_session.h"
#include "app/window/piece_news.h"

namespace roundwright::app {

class ChecksModel;
class FastEntryLine;
class RoundsView;

/// What the window says of the toy: what has changed since it was last said, once the hand rests. Typing on
/// puts it off, so that no keystroke is talked over.
class Announcements : public QObject {
    Q_OBJECT
  public:
    Announcements(DocumentSession& session, Announcer& announcer, const ChecksModel& checks,
                  FastEntryLine& line, RoundsView& rounds, QObject* parent);

  private:
    /// What tells a check from another while edits go on.
    using CheckKey = std::tuple<int, int, int>;
    struct CheckAsHeard {
        CheckKey key;
        int round;
        QString words;
    };

    void follow_line();
    void follow_words();
    void forget();
    void later() { rest_.start(); }
    void tell_news();
    void tell_what_is_typed();
    void tell_piece(const PieceAsHeard& now);
    void tell_size();
    void tell_checks(const std::vector<int>& rounds_told);
    [[nodiscard]] std::vector<CheckAsHeard> checks_now() const;
    [[nodiscard]] bool line_is_typed() const;

    DocumentSession& session_;
    Announcer& announcer_;
    const ChecksModel& checks_;
    FastEntryLine& line_;
    RoundsView& rounds_;
    QTimer rest_;
    std::optional<PieceAsHeard> piece_;  ///< nothing: what comes next is on show, and not new
    std::set<CheckKey> known_checks_;
    bool knows_checks_ = false;
    QString understood_;
    bool typed_ = false;  ///< what was typed was told as such, and so is what becomes of it
};

}  // namespace roundwright::app
