#pragma once

#include <cstdint>
#include <deque>
#include <map>
#include <memory>

#include <QObject>

#include "core/study/fabric_stage.h"
#include "core/study/studied_piece.h"
#include "render/background/background.h"

namespace roundwright::app {

/// A piece of which the round solver's shape is known, to be worked out stitch by stitch.
struct StitchRequest {
    std::uint64_t revision = 0;
    std::shared_ptr<const Toy> toy;
    std::size_t piece = 0;
    std::shared_ptr<const PieceStudy> study;
    Shared<ShapeStage> before;   ///< of every stitch, before the edit; may be null
    Shared<SurfaceStage> drawn;  ///< what is on show; may be null
    std::optional<SurfaceWanted> wanted;
    bool first = false;  ///< somebody looks at it: it waits for no other
};

struct StitchResult {
    std::uint64_t revision = 0;
    EveryStitchStudy found;
    Shared<SurfaceStage> drawn;  ///< null where it was refused, or not wanted
};

/// More than these many stitches keep their round shape: at 20,000 a solve takes some two seconds and 50 MB
/// (DEVELOPERS.md, Measured), and both grow faster than the stitches.
inline constexpr std::size_t most_stitches_solved = 20'000;

/// Works out shapes of every stitch in the background, behind the shapes that keys wait for: the piece that
/// somebody looks at at once, others one at a time.
class StitchSolver : public QObject {
    Q_OBJECT
  public:
    explicit StitchSolver(QObject* parent = nullptr);

    void post(StitchRequest request);
    /// Drops a request, or stops it where it is being worked on; no answer to it comes.
    void cancel(std::uint64_t revision);

  Q_SIGNALS:
    void solved(const roundwright::app::StitchResult& result);
    void failed(const QString& why);

  private:
    void start(StitchRequest request);
    void start_next();
    void take(const StitchResult& result);
    void take_failure(render::Background::Ticket ticket, const QString& why);
    void forget(std::uint64_t revision);

    render::Background background_;
    std::deque<StitchRequest> waiting_;
    std::map<std::uint64_t, render::Background::Ticket> tickets_;
    std::uint64_t running_ = 0;  ///< the one that waited its turn; 0: none
};

}  // namespace roundwright::app
