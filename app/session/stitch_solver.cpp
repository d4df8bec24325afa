#include "app/session/stitch_solver.h"

#include <algorithm>
#include <utility>

#include "render/raster/fabric_picture.h"

namespace roundwright::app {
namespace {

StitchResult worked_out(const StitchRequest& request, const std::stop_token& stop) {
    StitchResult result{
        request.revision,
        with_every_stitch(request.study, *request.toy, request.piece,
                          {.before = request.before, .most_stitches = most_stitches_solved, .stop = stop}),
        nullptr};
    if (result.found.refused() || !request.wanted || stop.stop_requested()) return result;
    result.drawn = with_surface(result.found.study, *request.toy, request.piece,
                                {request.study, request.study, request.drawn}, *request.wanted, stop)
                       .drawn;
    if (result.drawn)
        static_cast<void>(render::face_pictures(result.drawn->surface.mesh));  // not when first drawn
    return result;
}

}  // namespace

StitchSolver::StitchSolver(QObject* parent) : QObject(parent) {
    connect(&background_, &render::Background::failed, this, &StitchSolver::take_failure);
}

void StitchSolver::post(StitchRequest request) {
    if (request.first) return start(std::move(request));
    waiting_.push_back(std::move(request));
    start_next();
}

void StitchSolver::start(StitchRequest request) {
    const std::uint64_t revision = request.revision;
    tickets_[revision] = background_.start(
        render::Lane::longer,
        [this, request = std::move(request)](const render::TaskRun& run) -> render::Delivery {
            const StitchResult result = worked_out(request, run.stop);
            return [this, result] { take(result); };
        });
}

void StitchSolver::start_next() {
    if (running_ != 0 || waiting_.empty()) return;
    StitchRequest next = std::move(waiting_.front());
    waiting_.pop_front();
    running_ = next.revision;
    start(std::move(next));
}

void StitchSolver::take(const StitchResult& result) {
    forget(result.revision);
    Q_EMIT solved(result);
}

/// The piece keeps its round shape.
void StitchSolver::take_failure(render::Background::Ticket ticket, const QString& why) {
    const auto found = std::ranges::find(tickets_, ticket, [](const auto& entry) { return entry.second; });
    if (found == tickets_.end()) return;
    StitchResult nothing;
    nothing.revision = found->first;
    nothing.found.refusal = EveryStitchRefusal::not_solved;
    Q_EMIT failed(why);
    take(nothing);
}

void StitchSolver::forget(std::uint64_t revision) {
    tickets_.erase(revision);
    if (running_ == revision) running_ = 0;
    start_next();
}

void StitchSolver::cancel(std::uint64_t revision) {
    if (revision == 0) return;
    std::erase_if(waiting_, [&](const StitchRequest& each) { return each.revision == revision; });
    const auto running = tickets_.find(revision);
    if (running == tickets_.end()) return;
    background_.cancel(running->second);
    forget(revision);
}

}  // namespace roundwright::app
