#pragma once

#include <functional>
#include <vector>

#include "app/session/document_session.h"
#include "app/work_along/round_clock.h"
#include "core/rounds/piece_graph.h"

namespace roundwright::app {

/// The round being worked of the session's current piece, and what moves it on and back. Progress and times
/// are kept in the toy; every step can be undone.
class WorkInHand {
  public:
    WorkInHand(DocumentSession& session, RoundClock clock);

    /// Reads the piece again, after it or its rounds have changed.
    void read_piece();

    [[nodiscard]] int rounds() const { return static_cast<int>(counts_.size()); }
    [[nodiscard]] int round() const;  ///< the one being worked, from 0; `rounds()` when all are done
    [[nodiscard]] bool finished() const { return round() >= rounds(); }
    [[nodiscard]] int stitches_of(int round) const { return counts_[static_cast<std::size_t>(round)]; }
    [[nodiscard]] int stitches_worked() const { return worked().stitches; }
    [[nodiscard]] bool begun() const { return worked() != WorkedSoFar{}; }
    /// A round in the maker's terms: "[sc, inc] x 6".
    [[nodiscard]] QString words_of(int round) const;

    struct Share {
        int done = 0;
        int all = 0;
    };
    /// Of the stitches of the piece.
    [[nodiscard]] Share share_done() const;

    void finish_round();
    /// A round begun is begun again; else the one before is taken back.
    void go_back();
    /// The last stitch of a round finishes it.
    void count_stitch();
    /// From the start of a round that is the last stitch of the one before.
    void take_stitch_back();
    void begin_again();

    void measure_time(bool measure);
    [[nodiscard]] bool measures_time() const { return clock_.running(); }
    /// On the round in hand; 0 while nothing is measured.
    [[nodiscard]] double seconds() const { return clock_.running() ? clock_.seconds() : 0; }
    /// That the round before took; 0 if it was not measured.
    [[nodiscard]] double seconds_of_last_round() const;
    /// That the rounds still to be worked take; 0 if nothing was measured.
    [[nodiscard]] double seconds_to_go() const;
    void restart_clock() { clock_.restart(); }

  private:
    [[nodiscard]] const WorkedSoFar& worked() const;
    void set_stitches(int stitches);
    void change(const QString& step, const std::function<void(WorkedSoFar&)>& change,
                const QString& merge_key = {});

    DocumentSession& session_;
    RoundClock clock_;
    std::shared_ptr<const SharedGraph> graph_;
    std::vector<int> counts_;
};

}  // namespace roundwright::app
