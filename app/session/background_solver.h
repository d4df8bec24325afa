#pragma once

#include <condition_variable>
#include <cstdint>
#include <deque>
#include <memory>
#include <mutex>
#include <stop_token>
#include <thread>

#include <QObject>

#include "core/mesh/revolve.h"
#include "core/study/piece_study.h"

namespace roundwright::app {

/// One piece to work out, on a toy that nobody changes any more.
struct SolveRequest {
    std::uint64_t revision = 0;  ///< names the request; an answer to another one is stale
    std::shared_ptr<const Toy> toy;
    std::size_t piece = 0;
    std::shared_ptr<const SharedGraph> graph;  ///< of the piece; null: it is derived here
    std::shared_ptr<const PieceStudy> warm;    ///< of the piece before the edit; may be null
    std::shared_ptr<const PieceStudy> known;   ///< already right for this toy: only the surface is wanted
    bool surface_wanted = false;
    bool unstuffed = false;  ///< draw the piece as it is before stuffing
    std::size_t most_triangles = most_picture_triangles;
    bool urgent = false;  ///< goes before those that are not
};

struct SolveResult {
    std::uint64_t revision = 0;
    std::shared_ptr<const PieceStudy> study;
    std::shared_ptr<const PieceStudy> shown;  ///< of what the surface shows: `study`, or the piece unstuffed
    std::shared_ptr<const StitchSurface> surface;  ///< null if not wanted or no shape was found
};

/// Works out shapes, checks and surfaces on a thread of its own, so that typing never waits.
class BackgroundSolver : public QObject {
    Q_OBJECT
  public:
    explicit BackgroundSolver(QObject* parent = nullptr);
    ~BackgroundSolver() override;

    void post(SolveRequest request);
    /// Drops a request, or stops it where it is being worked on; no answer to it comes.
    void cancel(std::uint64_t revision);
    [[nodiscard]] bool busy() const { return waiting_ > 0; }

  Q_SIGNALS:
    /// In the thread this object lives in.
    void solved(const roundwright::app::SolveResult& result);
    void busy_changed(bool busy);

  private:
    void work(const std::stop_token& stop);
    void deliver(const SolveResult& result, bool cancelled);
    void count(int change);

    std::mutex mutex_;
    std::condition_variable_any wake_;
    std::deque<SolveRequest> queue_;
    std::uint64_t running_ = 0;
    std::stop_source running_stop_;
    int waiting_ = 0;
    std::jthread thread_;  // last: it uses all of the above
};

/// What the worker does with a request; here for tests and for the command line.
[[nodiscard]] SolveResult solve_request(const SolveRequest& request, const std::stop_token& stop);

}  // namespace roundwright::app
