#pragma once

#include <cstdint>
#include <deque>
#include <map>
#include <memory>
#include <stop_token>

#include <QObject>

#include "core/study/studied_piece.h"
#include "render/background/background.h"

namespace roundwright::app {

/// One piece to work out, on a toy that nobody changes any more.
struct SolveRequest {
    std::uint64_t revision = 0;  ///< names the request; an answer to another one is stale
    std::shared_ptr<const Toy> toy;
    std::size_t piece = 0;
    std::shared_ptr<const SharedGraph> graph;  ///< of the piece; null: it is derived here
    StudiedPiece before;                       ///< the piece before the edit; its parts may be null
    std::shared_ptr<const PieceStudy> known;   ///< already right for this toy: only the surface is wanted
    bool surface_wanted = false;
    bool unstuffed = false;  ///< draw the piece as it is before stuffing
    std::size_t most_triangles = most_picture_triangles;
    /// Every stitch is wanted: where the round solver has only a round piece in the place of another, such as
    /// an oval, the first answer has them already, up to a size.
    bool every_stitch = false;
    Shared<ShapeStage> stitched_before;  ///< the last shape of every stitch; may be null
    bool urgent = false;  ///< the next key waits for its shape and surface; its checks come in a second step
};

struct SolveResult {
    std::uint64_t revision = 0;
    std::shared_ptr<const PieceStudy> study;
    std::shared_ptr<const PieceStudy> shown;  ///< of what the surface shows: `study`, or the piece unstuffed
    std::shared_ptr<const StitchSurface> surface;  ///< null if not wanted or no shape was found
    Shared<SurfaceStage> drawn;                    ///< the same with what it was made from
    bool has_checks = true;  ///< false: `study` has none yet; the same result comes again with them
    bool again = false;      ///< the second of two results: the surface is that of the first
};

/// Works out shapes, surfaces and checks in the background, so that typing never waits: what is urgent in the
/// lane of the next key, its checks and everything else, one at a time, in the other.
class BackgroundSolver : public QObject {
    Q_OBJECT
  public:
    explicit BackgroundSolver(QObject* parent = nullptr);

    void post(SolveRequest request);
    /// Drops a request, or stops it where it is being worked on; no answer to it comes.
    void cancel(std::uint64_t revision);
    [[nodiscard]] bool busy() const { return waiting_ > 0; }

  Q_SIGNALS:
    /// In the thread this object lives in. One result a request; an urgent one whose checks are wanted gives
    /// two, the first without them.
    void solved(const roundwright::app::SolveResult& result);
    void busy_changed(bool busy);
    /// Something could not be worked out, said in a sentence; a result without a study follows.
    void failed(const QString& why);

  private:
    /// A request for the slow lane; `begun` (may be null) has all but the checks.
    struct Later {
        SolveRequest request;
        std::shared_ptr<const SolveResult> begun;
    };

    void start_urgent(SolveRequest request);
    void start_later();
    void take_shape(const SolveRequest& request, SolveResult result);
    void take_last(SolveResult result);
    void take_failure(render::Background::Ticket ticket, const QString& why);
    bool drop_waiting(std::uint64_t revision);
    bool drop_running(std::uint64_t revision);
    void count(int change);

    render::Background background_;
    std::deque<Later> later_;
    std::map<std::uint64_t, render::Background::Ticket> tickets_;  ///< of revisions that are being worked on
    std::uint64_t running_later_ = 0;                              ///< a revision; 0: none
    int waiting_ = 0;
};

/// A request in one step: for tests and for whoever has a thread already.
[[nodiscard]] SolveResult solve_request(const SolveRequest& request, const std::stop_token& stop);

}  // namespace roundwright::app
